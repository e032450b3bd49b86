/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bit order: which of two bits serves a cut better, by their plans.
 */
#pragma once

#include "plan/plan.h"

/* The worst grade of the edges that will be seen (or will not), 0 when there are none. */
int spelch_bit_order_worst (const SpelchPlan *plan, bool seen);

/* Less than 0 when @a serves better than @b, more than 0 when worse, 0 when alike. What may be cut comes
 * before what must not; then what meets the grades @part accepts within all limits, by time; then by seen
 * edges, hidden edges, time; at last by id. */
int spelch_bit_order_compare (const SpelchPart *part, const SpelchBit *bit_a, const SpelchPlan *a,
                              const SpelchBit *bit_b, const SpelchPlan *b);

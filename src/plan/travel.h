/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Travel: how far the bit goes in a pass, and how long a cut takes.
 */
#pragma once

#include "plan/case.h"

/* Way of one pass in one cut, mm: tracks side by side along a straight way, loops one inside the other in a
 * pocket or a blind hole. A hole as wide as the bit is only plunged: 0. */
double spelch_travel_of_pass (const SpelchCase *c, const SpelchPass *pass);

/* Time for one piece, s: all passes, tracks, entries and pecks, of every cut of this kind in the piece. 0
 * without feed. */
double spelch_travel_time (const SpelchCase *c, const SpelchPass *passes, guint n, const SpelchEntry *entry,
                           double feed_mm_min);

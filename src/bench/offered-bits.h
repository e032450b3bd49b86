/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Offered bits: those there are to choose from for a part: its own, then those of the drawer, without retired
 * ones, whose ids the part doesn't use.
 */
#pragma once

#include "bench/shelf.h"
#include "shop/part.h"

/* @part may be NULL; so may @drawer, for the starter set. */
guint spelch_offered_count (const SpelchPart *part, SpelchShelf *drawer);

/* The @n-th of them, or NULL; owned by the part or the drawer. */
const SpelchBit *spelch_offered_nth (const SpelchPart *part, SpelchShelf *drawer, guint n);

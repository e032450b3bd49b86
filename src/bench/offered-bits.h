/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Offered bits: those there are to choose from for a part: its own, then those of the drawer, without retired
 * ones, whose ids the part doesn't use. Where they stand is looked up once, so that a drawer of thousands can
 * be gone through.
 */
#pragma once

#include "bench/shelf.h"
#include "shop/part.h"

/* All 0 at first. */
typedef struct
{
  const SpelchPart *part; /* looked up for these */
  const SpelchBit *shop;
  guint n_shop;
  GArray *places; /* guint: of the drawer's; NULL: not looked up */
} SpelchOffered;

/* After a change of the part or the drawer, and in the end. */
void spelch_offered_forget (SpelchOffered *offered);

/* @part may be NULL; so may @drawer, for the starter set. */
guint spelch_offered_count (SpelchOffered *offered, const SpelchPart *part, SpelchShelf *drawer);

/* The @n-th of them, or NULL; owned by the part or the drawer. */
const SpelchBit *spelch_offered_nth (SpelchOffered *offered, const SpelchPart *part, SpelchShelf *drawer,
                                     guint n);

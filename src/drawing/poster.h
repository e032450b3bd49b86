/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Poster: the five kinds of bit over one cut, for the wall of a workshop: what each does to both faces, as
 * the model has it, and when to use which.
 */
#pragma once

#include "plan/words.h"

#include <cairo.h>

/* A2, landscape, in points. */
#define SPELCH_POSTER_WIDTH  1683.8
#define SPELCH_POSTER_HEIGHT 1190.6

#define SPELCH_POSTER_BITS (SPELCH_N_BIT_KINDS + 1)

typedef struct
{
  const SpelchConstants *constants;
  const SpelchPart *part;
  const SpelchCut *cut;
  const SpelchBit
      *bits[SPELCH_POSTER_BITS]; /* straight, up-cut, down-cut, compression, compression with a short tip */
  SpelchNumbers numbers;
  const char *family; /* of the letters; NULL: SPELCH_FAMILY */
} SpelchPoster;

/* The bits of a list that stand for their kinds, as wide as each other where there are such; false where a
 * kind is missing. Owned by the list. */
bool spelch_poster_choose (SpelchPoster *poster, const SpelchBit *bits, guint n);

/* The whole page, in points from its upper left corner. */
void spelch_poster_draw (cairo_t *cr, const SpelchPoster *poster);

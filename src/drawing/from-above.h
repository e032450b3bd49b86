/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * From above: a picture to scale of the board on its bed or table, looked at from above whatever side the
 * motor is on: what is cut away, the way of the bit with the direction of feed and of turn, the tabs at their
 * places, what is waste, and what keeps the work down. Its words stand in a column at its right, each with a
 * line to what it names. In units of its lettering, y down.
 */
#pragma once

#include "drawing/lettering.h"
#include "drawing/scene.h"

typedef enum
{
  SPELCH_FROM_ABOVE_WASTE,
  SPELCH_FROM_ABOVE_PIECE, /* what stays */
  SPELCH_FROM_ABOVE_TABS,
  SPELCH_FROM_ABOVE_FEED,
  SPELCH_FROM_ABOVE_TURN,
  SPELCH_FROM_ABOVE_HOLD, /* clamps, vacuum, screws */
  SPELCH_FROM_ABOVE_FENCE,
  SPELCH_FROM_ABOVE_GRAIN, /* where nothing is told of how it is held */
  SPELCH_N_FROM_ABOVES,
} SpelchFromAboveKind;

#define SPELCH_FROM_ABOVE_TABS_MOST 64 /* that are drawn */

typedef struct _SpelchFromAbove SpelchFromAbove;

/* Of @cut with @bit as @plan has it, into @rect; words at @size, smaller where they don't fit. @palette and
 * @lettering must outlive it. */
SpelchFromAbove *spelch_from_above_new (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit,
                                        const SpelchPlan *plan, SpelchRect rect, double size,
                                        const SpelchNumbers *numbers, SpelchLettering *lettering,
                                        const SpelchPalette *palette);
void spelch_from_above_free (SpelchFromAbove *from_above);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchFromAbove, spelch_from_above_free)

/* Where it was laid out, in the coordinates of @cr. */
void spelch_from_above_draw (const SpelchFromAbove *from_above, cairo_t *cr);

/* Where a word stands, what it says, and the place in the picture that it names; the words are owned by
 * @from_above. False when it has none of that kind. */
bool spelch_from_above_label (const SpelchFromAbove *from_above, SpelchFromAboveKind kind, SpelchRect *rect,
                              const char **words, double *x, double *y);

/* The room of the drawing itself, left of the words. */
SpelchRect spelch_from_above_drawing (const SpelchFromAbove *from_above);

/* The piece, mm, and a place on it in the picture: from its left end and its front edge. */
void spelch_from_above_piece (const SpelchFromAbove *from_above, double *length, double *width);
void spelch_from_above_place (const SpelchFromAbove *from_above, double across, double up, double *x,
                              double *y);

/* The middle of the @i-th tab on the bit's way, mm from the piece's left front corner; false past the last.
 */
bool spelch_from_above_tab (const SpelchFromAbove *from_above, guint i, double *across, double *up);

/* Which way the bit leaves the place where it is drawn, seen from above: degrees, counter-clockwise from the
 * picture's right; of the board where that is moved. */
double spelch_from_above_feed (const SpelchFromAbove *from_above);

/* What the picture shows in a sentence or two, for people who can't see it. Free with g_free(). */
char *spelch_from_above_describe (const SpelchFromAbove *from_above);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Labels: finds places for words on a drawing so that they never overlap one another. It knows rectangles
 * only.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>

#include "drawing/scene.h"

#define SPELCH_MAX_TAKEN 100

/* Places already given away, inside an area. */
typedef struct
{
  SpelchRect area;
  guint n;
  SpelchRect taken[SPELCH_MAX_TAKEN];
} SpelchPlacer;

/* Forgets all that was taken; words find places within @area. */
void spelch_placer_init (SpelchPlacer *placer, SpelchRect area);

/* Marks @rect as taken. */
void spelch_placer_take (SpelchPlacer *placer, SpelchRect rect);

/* Slides @rect up or down from where it is, at most to @highest and @lowest for its top, to the nearest free
 * place, and takes that. False, with nothing taken or moved, when there is none. */
bool spelch_placer_slide (SpelchPlacer *placer, SpelchRect *rect, double highest, double lowest);

/* Places @n labels of equal height under one another, in the order given, each as near its wished top as the
 * others allow, with @gap between them, from @highest (top of the first) to @lowest (bottom of the last).
 * When they don't all fit in a column, more columns are used: @columns[i] says which, from 0. */
void spelch_placer_spread (const double *wished, guint n, double height, double gap, double highest,
                           double lowest, double *tops, guint *columns);

/* The same about one of them, @held, that stands where it wishes: the others give way to it. */
void spelch_placer_spread_around (const double *wished, guint n, guint held, double height, double gap,
                                  double highest, double lowest, double *tops, guint *columns);

bool spelch_rect_overlap (SpelchRect a, SpelchRect b);
SpelchRect spelch_rect_union (SpelchRect a, SpelchRect b); /* an empty rectangle adds nothing */
SpelchRect spelch_rect_whole (SpelchRect rect);            /* grown to whole units */

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exercise picture: what a question is about, the board with its cut and the bit or bits beside it, to one
 * scale; nothing in it gives the answer away.
 */
#pragma once

#include "drawing/lettering.h"
#include "plan/posed.h"
#include "plan/words.h"

/* Draws it within width x height from the current origin: the side view, where neither a bit, nor a depth,
 * nor a way up is asked for; else the board as it stands on the machine, the bits with their tips level with
 * its far face; bits to choose from are lettered A, B, C in the order of the choices. */
void spelch_exercise_picture_draw (cairo_t *cr, const SpelchPosed *posed, double width, double height,
                                   SpelchLook look, SpelchLettering *lettering);

/* Whether a picture from above belongs to the question: it is asked whether the work stays put. */
bool spelch_exercise_picture_has_above (const SpelchPosed *posed);

/* The work of such a question from above, within width x height from the current origin: what keeps it down,
 * tabs and the bit's way, with words at @size. */
void spelch_exercise_picture_draw_above (cairo_t *cr, const SpelchPosed *posed, double width, double height,
                                         double size, SpelchLook look, const SpelchNumbers *numbers,
                                         SpelchLettering *lettering);

/* The same in words. Free with g_free(). */
char *spelch_exercise_picture_describe_above (const SpelchPosed *posed, const SpelchNumbers *numbers);

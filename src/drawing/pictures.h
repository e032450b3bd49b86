/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pictures: the small drawings in the window: a bit in the drawer, a cut as a section of its board.
 */
#pragma once

#include "drawing/palette.h"
#include "plan/plan.h"
#include "shop/part.h"

#include <cairo.h>

/* Draws @bit with its tip at (x, y), motor above (below when @turned_over), @scale picture units per mm. The
 * shank is drawn for @shank_mm above the flutes at most, and ends in a break line. @turned: rad. */
void spelch_picture_bit (cairo_t *cr, const SpelchBit *bit, double x, double y, double scale, double shank_mm,
                         bool turned_over, double turned, const SpelchPalette *palette);

/* Where the cut is in that section, from its left end, and how deep; of a picture with the motor above. */
void spelch_picture_opening (const SpelchPart *part, const SpelchCut *cut, double bit_diameter, double width,
                             double height, double *from, double *to, double *depth);

/* Draws a true section of the board with the cut taken out, filling width x height with a line-width's
 * margin. */
void spelch_picture_cut (cairo_t *cr, const SpelchPart *part, const SpelchCut *cut, double bit_diameter,
                         double width, double height, const SpelchPalette *palette);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shelf pictures: a bit lying in the drawer, a board as its layer stack, a machine as a small section; for
 * the lists of what a shop keeps and for the editors.
 */
#pragma once

#include "drawing/palette.h"
#include "shop/board.h"
#include "shop/machine.h"

#include <cairo.h>

/* Draws @bit lying with its tip at (x, y) and its shank to the right, of which @shank_mm are shown; @scale
 * picture units per mm. */
void spelch_picture_bit_lying (cairo_t *cr, const SpelchBit *bit, double x, double y, double scale,
                               double shank_mm, const SpelchPalette *palette);

/* Draws the stack of @board, face a up, @width wide with its upper left corner at (x, y), seen along the
 * board's length. */
void spelch_picture_board (cairo_t *cr, const SpelchBoard *board, double x, double y, double width,
                           double scale, const SpelchPalette *palette);

/* Draws a section of @machine that fills width x height: the motor on its side, the collet with a bit, the
 * board, and what it rests on. Not to scale. */
void spelch_picture_machine (cairo_t *cr, const SpelchMachine *machine, double width, double height,
                             const SpelchPalette *palette);

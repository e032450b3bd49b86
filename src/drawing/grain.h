/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Grain: how a layer of a board looks where it is cut through. The same layer at the same place always looks
 * the same.
 */
#pragma once

#include "drawing/palette.h"
#include "shop/board.h"

#include <cairo.h>

/* Fills the layer between y0 and y1, from x0 to x1. @angle: between the grain and the line of sight, 0 (grain
 * runs toward the viewer) to pi/2 (grain lies in the picture). @index tells layers apart. @at_face: depth of
 * y0 and of y1 below the nearer face as a share of the board, 0 to 0.5 (particleboard is finer at its faces).
 */
void spelch_grain_draw (cairo_t *cr, const SpelchLayer *layer, guint index, double angle, double x0,
                        double y0, double x1, double y1, const double at_face[2],
                        const SpelchPalette *palette);

/* The colour a layer is filled with. */
const SpelchColour *spelch_grain_colour (const SpelchLayer *layer, double angle,
                                         const SpelchPalette *palette);

/* A number from 0 to 1 that depends only on the three. */
double spelch_grain_chance (guint a, guint b, guint c);

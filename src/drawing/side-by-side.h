/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Side by side: a cut made with two to four bits, drawn to one scale in columns with their boards level;
 * under each the same rows of numbers, and how the faces would come out at every depth of the first pass.
 */
#pragma once

#include "drawing/scene.h"
#include "plan/compare.h"

#define SPELCH_SIDE_BY_SIDE_WIDTH  1360
#define SPELCH_SIDE_BY_SIDE_HEIGHT 960

/* Draws it on the whole of @view's width and height; of the rest of @view its look, numbers, family and text
 * count. @scans: of each of the @columns. */
void spelch_side_by_side_draw (cairo_t *cr, const SpelchPart *part, const SpelchCut *cut,
                               const GArray *columns, const SpelchScan *scans, const SpelchView *view);

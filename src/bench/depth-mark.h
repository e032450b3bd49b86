/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Depth mark: the handle of a quantity in the side view. A range for assistive technology (value, limits, a
 * name that carries the verdict), drawn as a pill; dragged with the pointer or moved by keys the way they
 * point on screen.
 */
#pragma once

#include "bench/quantity.h"
#include "drawing/palette.h"

G_BEGIN_DECLS

#define SPELCH_TYPE_DEPTH_MARK (spelch_depth_mark_get_type ())
G_DECLARE_FINAL_TYPE (SpelchDepthMark, spelch_depth_mark, SPELCH, DEPTH_MARK, GtkRange)

/* Keeps a reference to @quantity, and gives it without one. */
SpelchDepthMark *spelch_depth_mark_new (SpelchQuantity *quantity);
SpelchQuantity *spelch_depth_mark_get_quantity (SpelchDepthMark *self);

/* How a move on screen becomes a value: mm of value for each pixel to the right and for each pixel down. */
void spelch_depth_mark_set_scale (SpelchDepthMark *self, double per_right, double per_down);

/* @palette must outlive the mark. */
void spelch_depth_mark_set_palette (SpelchDepthMark *self, const SpelchPalette *palette);

/* Whether the bit stands at this mark's pass. */
void spelch_depth_mark_set_shown (SpelchDepthMark *self, bool shown);

/* The steps of a drag, for a view that lets the bit itself be dragged: the mark takes the focus and moves by
 * the way of the pointer since the beginning, in pixels. */
bool spelch_depth_mark_is_dragged (SpelchDepthMark *self);
void spelch_depth_mark_drag_begin (SpelchDepthMark *self);
void spelch_depth_mark_drag_to (SpelchDepthMark *self, double dx, double dy);
void spelch_depth_mark_drag_end (SpelchDepthMark *self, bool keep);

/* The one of @marks, children of @view, that a finger at (x, y) of it means: the nearest, up to a fingertip's
 * half beside it; NULL where none is so near. */
SpelchDepthMark *spelch_depth_mark_near (const GPtrArray *marks, GtkWidget *view, double x, double y);

G_END_DECLS

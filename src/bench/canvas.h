/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Canvas: a picture that is drawn on again and again while a render node shows it. Cairo copies a surface
 * that a node has recorded as soon as it is drawn on; but the pixels of a node that is replaced in the same
 * frame aren't wanted any longer. So there are two surfaces over the same pixels: one to draw on, one for
 * nodes to show.
 */
#pragma once

#include <cairo.h>

typedef struct
{
  cairo_surface_t *drawn, *shown; /* NULL: none yet */
} SpelchCanvas;

/* Clear, of @width x @height units with @pixels for each; @format: of 32 bits a pixel. */
SpelchCanvas spelch_canvas_new (cairo_format_t format, int width, int height, int pixels);
void spelch_canvas_clear (SpelchCanvas *canvas);

/* To draw on; cairo_destroy() it. Every node that shows the canvas must be replaced afterwards. */
cairo_t *spelch_canvas_draw (const SpelchCanvas *canvas);

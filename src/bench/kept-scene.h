/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Kept scene: the render nodes of a scene, kept from frame to frame so that the renderer repaints only what
 * changed. GTK compares the nodes of two frames; a node that is the same object costs nothing. It gives up,
 * and repaints everything, when the difference comes to more than 30 rectangles; so all that moves with the
 * bit is one node.
 */
#pragma once

#include "bench/canvas.h"
#include "drawing/scene.h"

#include <gtk/gtk.h>

/* A layer as a surface. */
typedef struct
{
  cairo_surface_t *surface;
  guint64 key;
  SpelchRect bounds; /* where it stood when it was drawn */
  int pixels;        /* for each unit */
} SpelchKeptSurface;

typedef struct
{
  GskRenderNode *still, *moving, *words;
  guint64 still_key, words_key;
  guint64 moving_keys[SPELCH_N_LAYERS];
  SpelchRect moving_bounds[SPELCH_N_LAYERS];
  SpelchRect still_bounds;
  SpelchCanvas canvas; /* of what stands still */
  int pixels;
  SpelchKeptSurface bit; /* the bit is drawn once and moved */
} SpelchKeptScene;

/* An opaque picture as a node of which a repaint touches only the tiles that it meets. */
GskRenderNode *spelch_kept_tiles (cairo_surface_t *picture, double width, double height);

/* Adds the scene's layers, but for the marks, to @snapshot. @pixels: the widget's scale factor. */
void spelch_kept_scene_append (SpelchKeptScene *kept, GtkSnapshot *snapshot, const SpelchScene *scene,
                               int pixels);

/* Three short lines on the shank, which say that the bit can be taken hold of; within a view of @height. */
void spelch_kept_scene_append_grip (GtkSnapshot *snapshot, const SpelchScene *scene,
                                    const SpelchPalette *palette, int height);

void spelch_kept_scene_clear (SpelchKeptScene *kept);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Kept layer: a layer of the side view as a render node that stays the same object as long as its picture
 * does, so that the renderer repaints nothing there. Heavy layers are rasterised once into a surface the node
 * paints; a layer whose picture only moved is moved.
 */
#pragma once

#include "drawing/scene.h"

#include <gtk/gtk.h>

typedef enum
{
  SPELCH_KEEP_STROKES, /* a recording, drawn again when it is repainted: for light layers */
  SPELCH_KEEP_OPAQUE,  /* an opaque surface: for what fills the picture */
  SPELCH_KEEP_CLEAR,   /* a surface with transparency: for the bit */
} SpelchKeepAs;

typedef struct
{
  GskRenderNode *node;
  guint64 key;
  SpelchRect bounds; /* where it was when it was drawn */
  int pixels;        /* for each unit */
} SpelchKeptLayer;

/* Adds the layer to @snapshot, drawing it anew only when it changed. @pixels: the widget's scale factor. */
void spelch_kept_layer_append (SpelchKeptLayer *kept, GtkSnapshot *snapshot, const SpelchScene *scene,
                               SpelchSceneLayer layer, SpelchKeepAs as, int pixels);

void spelch_kept_layer_clear (SpelchKeptLayer *kept);

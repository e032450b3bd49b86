/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/kept-layer.h"

static cairo_surface_t *
rasterise (const SpelchScene *scene, SpelchSceneLayer layer, SpelchKeepAs as, SpelchRect bounds, int pixels)
{
  cairo_format_t format = as == SPELCH_KEEP_OPAQUE ? CAIRO_FORMAT_RGB24 : CAIRO_FORMAT_ARGB32;
  cairo_surface_t *surface
      = cairo_image_surface_create (format, (int)bounds.width * pixels, (int)bounds.height * pixels);
  cairo_surface_set_device_scale (surface, pixels, pixels);
  cairo_t *cr = cairo_create (surface);
  cairo_translate (cr, -bounds.x, -bounds.y);
  spelch_scene_draw_layer (scene, layer, cr);
  cairo_destroy (cr);
  return surface;
}

static GskRenderNode *
draw (const SpelchScene *scene, SpelchSceneLayer layer, SpelchKeepAs as, SpelchRect bounds, int pixels)
{
  graphene_rect_t area
      = GRAPHENE_RECT_INIT ((float)bounds.x, (float)bounds.y, (float)bounds.width, (float)bounds.height);
  GskRenderNode *node = gsk_cairo_node_new (&area);
  cairo_t *cr = gsk_cairo_node_get_draw_context (node);
  if (as == SPELCH_KEEP_STROKES)
    spelch_scene_draw_layer (scene, layer, cr);
  else
    {
      cairo_surface_t *surface = rasterise (scene, layer, as, bounds, pixels);
      cairo_set_source_surface (cr, surface, bounds.x, bounds.y);
      cairo_paint (cr);
      cairo_surface_destroy (surface);
    }
  cairo_destroy (cr);
  return node;
}

/* The same picture, though perhaps elsewhere. */
static bool
still_good (const SpelchKeptLayer *kept, guint64 key, SpelchRect bounds, int pixels)
{
  return kept->node != NULL && kept->key == key && kept->pixels == pixels
         && kept->bounds.width == bounds.width && kept->bounds.height == bounds.height;
}

void
spelch_kept_layer_append (SpelchKeptLayer *kept, GtkSnapshot *snapshot, const SpelchScene *scene,
                          SpelchSceneLayer layer, SpelchKeepAs as, int pixels)
{
  SpelchRect bounds = spelch_scene_bounds (scene, layer);
  guint64 key = spelch_scene_key (scene, layer);
  if (bounds.width < 1 || bounds.height < 1)
    return;
  if (!still_good (kept, key, bounds, pixels))
    {
      spelch_kept_layer_clear (kept);
      *kept = (SpelchKeptLayer){ draw (scene, layer, as, bounds, pixels), key, bounds, pixels };
    }
  double dx = bounds.x - kept->bounds.x, dy = bounds.y - kept->bounds.y;
  gtk_snapshot_save (snapshot);
  if (dx != 0 || dy != 0)
    gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float)dx, (float)dy));
  gtk_snapshot_append_node (snapshot, kept->node);
  gtk_snapshot_restore (snapshot);
}

void
spelch_kept_layer_clear (SpelchKeptLayer *kept)
{
  g_clear_pointer (&kept->node, gsk_render_node_unref);
}

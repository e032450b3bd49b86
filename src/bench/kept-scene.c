/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/kept-scene.h"

#include <math.h>
#include <stdbool.h>

#define GRIP_WIDTH  18
#define GRIP_HEIGHT 12
#define TILE        80 /* units; a repaint touches only the tiles of the still picture that it meets */

static const SpelchSceneLayer MOVING[]
    = { SPELCH_LAYER_KERF, SPELCH_LAYER_BIT, SPELCH_LAYER_SHEAR, SPELCH_LAYER_EDGES };

static bool
is_empty (SpelchRect rect)
{
  return rect.width < 1 || rect.height < 1;
}

static bool
same_rect (SpelchRect a, SpelchRect b)
{
  return a.x == b.x && a.y == b.y && a.width == b.width && a.height == b.height;
}

static SpelchRect
joined (SpelchRect a, SpelchRect b)
{
  if (is_empty (a))
    return b;
  if (is_empty (b))
    return a;
  double x = MIN (a.x, b.x), y = MIN (a.y, b.y);
  return (SpelchRect){ x, y, MAX (a.x + a.width, b.x + b.width) - x,
                       MAX (a.y + a.height, b.y + b.height) - y };
}

static graphene_rect_t
to_graphene (SpelchRect rect)
{
  return GRAPHENE_RECT_INIT ((float)rect.x, (float)rect.y, (float)rect.width, (float)rect.height);
}

/* ---- What stands still ---- */

/* Whether the tile is of one colour all over. */
static bool
is_plain (cairo_surface_t *picture, const graphene_rect_t *tile, GdkRGBA *colour)
{
  double pixels = 1;
  cairo_surface_get_device_scale (picture, &pixels, NULL);
  gsize scale = (gsize)pixels, stride = (gsize)cairo_image_surface_get_stride (picture) / sizeof (guint32);
  gsize width = (gsize)tile->size.width * scale, height = (gsize)tile->size.height * scale;
  const guint32 *first = (const guint32 *)(const void *)cairo_image_surface_get_data (picture)
                         + (gsize)tile->origin.y * scale * stride + (gsize)tile->origin.x * scale;
  guint32 rgb = *first & 0xffffff;
  for (gsize y = 0; y < height; y++)
    for (gsize x = 0; x < width; x++)
      if ((first[y * stride + x] & 0xffffff) != rgb)
        return false;
  *colour
      = (GdkRGBA){ (float)(rgb >> 16) / 255, (float)(rgb >> 8 & 0xff) / 255, (float)(rgb & 0xff) / 255, 1 };
  return true;
}

static GskRenderNode *
tile_node (cairo_surface_t *surface, double x, double y, double width, double height)
{
  graphene_rect_t tile = GRAPHENE_RECT_INIT ((float)x, (float)y, (float)width, (float)height);
  GdkRGBA colour;
  if (is_plain (surface, &tile, &colour))
    return gsk_color_node_new (&colour, &tile); /* which is painted without being blended */
  GskRenderNode *node = gsk_cairo_node_new (&tile);
  cairo_t *cr = gsk_cairo_node_get_draw_context (node);
  cairo_set_source_surface (cr, surface, 0, 0);
  cairo_paint (cr);
  cairo_destroy (cr);
  return node;
}

GskRenderNode *
spelch_kept_tiles (cairo_surface_t *picture, double width, double height)
{
  g_autoptr (GPtrArray) tiles = g_ptr_array_new_with_free_func ((GDestroyNotify)gsk_render_node_unref);
  for (double y = 0; y < height; y += TILE)
    for (double x = 0; x < width; x += TILE)
      g_ptr_array_add (tiles, tile_node (picture, x, y, MIN (TILE, width - x), MIN (TILE, height - y)));
  return gsk_container_node_new ((GskRenderNode **)tiles->pdata, tiles->len);
}

/* The layer is opaque and covers all of what was there. */
static GskRenderNode *
still_node (SpelchKeptScene *kept, const SpelchScene *scene, SpelchRect bounds, int pixels)
{
  if (kept->canvas.drawn == NULL || kept->pixels != pixels || !same_rect (bounds, kept->still_bounds))
    {
      spelch_canvas_clear (&kept->canvas);
      kept->canvas = spelch_canvas_new (CAIRO_FORMAT_RGB24, (int)bounds.width, (int)bounds.height, pixels);
    }
  cairo_t *cr = spelch_canvas_draw (&kept->canvas);
  spelch_scene_draw_layer (scene, SPELCH_LAYER_STILL, cr);
  cairo_destroy (cr);
  return spelch_kept_tiles (kept->canvas.shown, bounds.width, bounds.height);
}

static GskRenderNode *
words_node (const SpelchScene *scene, SpelchRect bounds)
{
  graphene_rect_t area = to_graphene (bounds);
  GskRenderNode *node = gsk_cairo_node_new (&area);
  cairo_t *cr = gsk_cairo_node_get_draw_context (node);
  spelch_scene_draw_layer (scene, SPELCH_LAYER_WORDS, cr);
  cairo_destroy (cr);
  return node;
}

/* ---- What moves ---- */

static cairo_surface_t *
rasterise (const SpelchScene *scene, SpelchSceneLayer layer, SpelchRect bounds, int pixels)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int)bounds.width * pixels,
                                                         (int)bounds.height * pixels);
  cairo_surface_set_device_scale (surface, pixels, pixels);
  cairo_t *cr = cairo_create (surface);
  cairo_translate (cr, -bounds.x, -bounds.y);
  spelch_scene_draw_layer (scene, layer, cr);
  cairo_destroy (cr);
  return surface;
}

static void
keep_bit (SpelchKeptSurface *bit, const SpelchScene *scene, int pixels)
{
  SpelchRect bounds = spelch_scene_bounds (scene, SPELCH_LAYER_BIT);
  guint64 key = spelch_scene_key (scene, SPELCH_LAYER_BIT);
  bool good = bit->surface != NULL && bit->key == key && bit->pixels == pixels
              && bit->bounds.width == bounds.width && bit->bounds.height == bounds.height;
  if (good)
    return;
  g_clear_pointer (&bit->surface, cairo_surface_destroy);
  *bit = (SpelchKeptSurface){ rasterise (scene, SPELCH_LAYER_BIT, bounds, pixels), key, bounds, pixels };
}

static void
draw_moving (SpelchKeptScene *kept, const SpelchScene *scene, SpelchSceneLayer layer, cairo_t *cr, int pixels)
{
  SpelchRect bounds = spelch_scene_bounds (scene, layer);
  if (is_empty (bounds))
    return;
  if (layer != SPELCH_LAYER_BIT)
    {
      spelch_scene_draw_layer (scene, layer, cr);
      return;
    }
  keep_bit (&kept->bit, scene, pixels);
  cairo_set_source_surface (cr, kept->bit.surface, bounds.x, bounds.y);
  cairo_paint (cr);
}

static GskRenderNode *
moving_node (SpelchKeptScene *kept, const SpelchScene *scene, int pixels)
{
  SpelchRect bounds = { 0 };
  for (guint i = 0; i < G_N_ELEMENTS (MOVING); i++)
    bounds = joined (bounds, spelch_scene_bounds (scene, MOVING[i]));
  graphene_rect_t area = to_graphene (bounds);
  GskRenderNode *node = gsk_cairo_node_new (&area);
  cairo_t *cr = gsk_cairo_node_get_draw_context (node);
  for (guint i = 0; i < G_N_ELEMENTS (MOVING); i++)
    draw_moving (kept, scene, MOVING[i], cr, pixels);
  cairo_destroy (cr);
  return node;
}

/* Whether anything that moves is another picture or elsewhere; remembers what it is now. */
static bool
has_moved (SpelchKeptScene *kept, const SpelchScene *scene)
{
  bool moved = kept->moving == NULL;
  for (guint i = 0; i < G_N_ELEMENTS (MOVING); i++)
    {
      SpelchSceneLayer layer = MOVING[i];
      SpelchRect bounds = spelch_scene_bounds (scene, layer);
      guint64 key = spelch_scene_key (scene, layer);
      moved = moved || key != kept->moving_keys[layer] || !same_rect (bounds, kept->moving_bounds[layer]);
      kept->moving_keys[layer] = key;
      kept->moving_bounds[layer] = bounds;
    }
  return moved;
}

/* ---- All ---- */

static void
renew (SpelchKeptScene *kept, const SpelchScene *scene, int pixels)
{
  bool other_pixels = kept->pixels != pixels;
  SpelchRect still = spelch_scene_bounds (scene, SPELCH_LAYER_STILL);
  guint64 still_key = spelch_scene_key (scene, SPELCH_LAYER_STILL);
  guint64 words_key = spelch_scene_key (scene, SPELCH_LAYER_WORDS);
  bool moved = has_moved (kept, scene) || other_pixels;
  if (kept->still == NULL || other_pixels || kept->still_key != still_key
      || !same_rect (still, kept->still_bounds))
    {
      g_clear_pointer (&kept->still, gsk_render_node_unref);
      kept->still = still_node (kept, scene, still, pixels);
    }
  if (moved)
    {
      g_clear_pointer (&kept->moving, gsk_render_node_unref);
      kept->moving = moving_node (kept, scene, pixels);
    }
  if (kept->words == NULL || kept->words_key != words_key)
    {
      g_clear_pointer (&kept->words, gsk_render_node_unref);
      kept->words = words_node (scene, spelch_scene_bounds (scene, SPELCH_LAYER_WORDS));
    }
  kept->pixels = pixels;
  kept->still_key = still_key;
  kept->still_bounds = still;
  kept->words_key = words_key;
}

void
spelch_kept_scene_append (SpelchKeptScene *kept, GtkSnapshot *snapshot, const SpelchScene *scene, int pixels)
{
  renew (kept, scene, pixels);
  gtk_snapshot_append_node (snapshot, kept->still);
  gtk_snapshot_append_node (snapshot, kept->moving);
  gtk_snapshot_append_node (snapshot, kept->words);
}

void
spelch_kept_scene_append_grip (GtkSnapshot *snapshot, const SpelchScene *scene, const SpelchPalette *palette,
                               int height)
{
  SpelchRect bit = spelch_scene_bit (scene);
  bool motor_below = spelch_scene_y (scene, 1) < spelch_scene_y (scene, 0);
  double x = floor (bit.x + bit.width / 2 - GRIP_WIDTH / 2.0);
  double y = motor_below ? bit.y + bit.height - 10 - GRIP_HEIGHT : bit.y + 10;
  y = CLAMP (floor (y), 0, height - GRIP_HEIGHT);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot,
                                           &GRAPHENE_RECT_INIT ((float)x, (float)y, GRIP_WIDTH, GRIP_HEIGHT));
  cairo_set_source_rgba (cr, palette->ink.r, palette->ink.g, palette->ink.b, 0.7);
  cairo_set_line_width (cr, 1.5);
  for (int i = 0; i < 3; i++)
    {
      cairo_move_to (cr, x + 1, y + 1.5 + i * 4);
      cairo_line_to (cr, x + GRIP_WIDTH - 1, y + 1.5 + i * 4);
    }
  cairo_stroke (cr);
  cairo_destroy (cr);
}

void
spelch_kept_scene_clear (SpelchKeptScene *kept)
{
  g_clear_pointer (&kept->still, gsk_render_node_unref);
  g_clear_pointer (&kept->moving, gsk_render_node_unref);
  g_clear_pointer (&kept->words, gsk_render_node_unref);
  g_clear_pointer (&kept->bit.surface, cairo_surface_destroy);
  spelch_canvas_clear (&kept->canvas);
}

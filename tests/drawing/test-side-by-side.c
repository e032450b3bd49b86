/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bits side by side as a picture: each board at the same height and scale, whatever the bit's length.
 */
#include "scene-kit.h"

#include "drawing/side-by-side.h"
#include "drawing/side-scenes.h"
#include "files/shop-data.h"

#include <math.h>

static const char *const IDS[]
    = { "compression-6.35x22", "down-cut-6.35x25", "up-cut-6.35x25", "straight-6.35x25" };

static void
take_bits (const SpelchBit *bits[4])
{
  guint n;
  const SpelchBit *starter = spelch_shop_bits (&n);
  for (guint i = 0; i < 4; i++)
    for (guint j = 0; j < n; j++)
      if (g_str_equal (starter[j].id, IDS[i]))
        bits[i] = &starter[j];
}

/* Whether a pixel of the picture is nearer to the ground than to anything on it. */
static bool
is_ground (cairo_surface_t *image, int x, int y)
{
  const SpelchColour *ground = &spelch_palette (SPELCH_LOOK_LIGHT)->ground;
  Pixel pixel = pixel_at (image, x, y);
  return fabs (pixel.r / 255.0 - ground->r) + fabs (pixel.g / 255.0 - ground->g)
             + fabs (pixel.b / 255.0 - ground->b)
         < 0.02;
}

/* From the top: where the board's near face is met near its left-hand end, which nothing stands on. */
static int
board_top (cairo_surface_t *image, int x)
{
  for (int y = 110; y < SPELCH_SIDE_BY_SIDE_HEIGHT; y++)
    if (!is_ground (image, x, y) && !is_ground (image, x, y + 8))
      return y;
  return 0;
}

static void
test_level (void)
{
  g_auto (Case) c;
  case_demo (&c);
  const SpelchBit *bits[4];
  SpelchScan scans[4];
  take_bits (bits);
  g_autoptr (GArray) columns = spelch_compare (spelch_shop_constants (), c.part, &c.cut, bits, 4, false);
  for (guint i = 0; i < 4; i++)
    scans[i]
        = spelch_compare_scan (spelch_shop_constants (), c.part, &g_array_index (columns, SpelchCompared, i));
  SpelchView view = c.view;
  view.width = SPELCH_SIDE_BY_SIDE_WIDTH;
  view.height = SPELCH_SIDE_BY_SIDE_HEIGHT;
  view.text = 1;
  view.look = SPELCH_LOOK_LIGHT;
  cairo_surface_t *image
      = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int)view.width, (int)view.height);
  cairo_t *cr = cairo_create (image);
  spelch_side_by_side_draw (cr, c.part, &c.cut, columns, scans, &view);
  cairo_destroy (cr);
  cairo_surface_flush (image);
  /* Margin and row names take 174, and each column a quarter of the rest; its board begins a fifth across.
   */
  double column = (view.width - 198) / 4;
  int top = board_top (image, (int)(174 + 0.235 * column));
  g_assert_cmpint (top, >, 150);
  for (int i = 1; i < 4; i++)
    g_assert_cmpint (ABS (board_top (image, (int)(174 + (i + 0.235) * column)) - top), <=, 1);
  cairo_surface_destroy (image);
}

/* The scene's own pictures, before anything is rastered: one scale, and each board's near face at the same
 * height. */
static void
test_scenes (void)
{
  const SpelchBit *bits[4];
  g_auto (Case) c;
  case_demo (&c);
  take_bits (bits);
  g_autoptr (GArray) columns = spelch_compare (spelch_shop_constants (), c.part, &c.cut, bits, 4, false);
  SpelchView view = c.view;
  view.width = 290;
  view.height = 240;
  g_autoptr (SpelchSideScenes) scenes = spelch_side_scenes_new (c.part, columns, &view);
  const SpelchScene *first = spelch_side_scenes_get (scenes, 0);
  double level = spelch_scene_y (first, 0) + spelch_side_scenes_shift (scenes, 0);
  for (guint i = 1; i < 4; i++)
    {
      const SpelchScene *scene = spelch_side_scenes_get (scenes, i);
      g_assert_cmpfloat_with_epsilon (spelch_scene_scale (scene), spelch_scene_scale (first), 1e-9);
      g_assert_cmpfloat_with_epsilon (spelch_scene_y (scene, 0) + spelch_side_scenes_shift (scenes, i), level,
                                      1.0);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/side-by-side/level", test_level);
  g_test_add_func ("/side-by-side/scenes", test_scenes);
  return g_test_run ();
}

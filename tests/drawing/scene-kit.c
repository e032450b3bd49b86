/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "scene-kit.h"

#include "files/shop-data.h"

#include <string.h>

void
case_demo (Case *c)
{
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();

  memset (c, 0, sizeof *c);
  c->part = spelch_part_copy (demo);
  c->cut = c->part->cuts[0];
  case_take_bit (c, "compression-6.35x22");
  c->view
      = (SpelchView){ .width = 758, .height = 668, .text = 1, .look = SPELCH_LOOK_LIGHT, .shown_pass = 1 };
  c->view.numbers = (SpelchNumbers){ SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };
  case_plan (c);
}

void
case_clear (Case *c)
{
  g_clear_pointer (&c->part, spelch_part_unref);
}

void
case_take_machine (Case *c, const char *id)
{
  guint n;
  const SpelchMachine *machines = spelch_shop_machines (&n);

  for (guint i = 0; i < n; i++)
    if (strcmp (machines[i].id, id) == 0)
      {
        c->part->machine = machines[i];
        return;
      }
  g_assert_not_reached ();
}

void
case_take_board (Case *c, const char *id)
{
  guint n;
  const SpelchBoard *boards = spelch_shop_boards (&n);

  for (guint i = 0; i < n; i++)
    if (strcmp (boards[i].id, id) == 0)
      {
        c->part->board = boards[i];
        return;
      }
  g_assert_not_reached ();
}

void
case_take_bit (Case *c, const char *id)
{
  guint n;
  const SpelchBit *bits = spelch_shop_bits (&n);

  for (guint i = 0; i < n; i++)
    if (strcmp (bits[i].id, id) == 0)
      {
        c->bit = bits[i];
        return;
      }
  g_assert_not_reached ();
}

static bool
by_chance (double share)
{
  return g_test_rand_double () < share;
}

/* Depths of up to @most passes held by hand, anywhere. */
static void
hold_passes (Case *c, int most, double deepest)
{
  int n = g_test_rand_int_range (0, most + 1);

  c->cut.held.n_passes = (guint)n;
  for (int i = 0; i < n; i++)
    c->cut.held.passes[i] = spelch_length_mm (deepest * (i + g_test_rand_double_range (0.1, 1.0)) / (n + 1));
}

static void
random_cut (Case *c, double thickness)
{
  c->cut.kind = (SpelchCutKind)g_test_rand_int_range (SPELCH_CUT_OUTLINE, SPELCH_CUT_HOLE + 1);
  c->cut.through = c->cut.kind == SPELCH_CUT_OUTLINE || c->cut.kind == SPELCH_CUT_TRIM || by_chance (0.3);
  c->cut.depth = spelch_length_mm (thickness * g_test_rand_double_range (0.05, 0.95));
  c->cut.width = spelch_length_mm (c->cut.kind == SPELCH_CUT_OUTLINE ? 0 : g_test_rand_double_range (2, 90));
  c->cut.kept = (SpelchWall)g_test_rand_int_range (SPELCH_WALL_LEFT, SPELCH_WALL_BOTH + 1);
  c->cut.way_up = by_chance (0.5) ? SPELCH_FACE_A : SPELCH_FACE_B;
  c->cut.seen_a = by_chance (0.6);
  c->cut.seen_b = by_chance (0.4);
  c->cut.path_deg = g_test_rand_double_range (0, 180);
  c->cut.tabs.count = by_chance (0.5) ? 4 : 0;
  c->cut.backer = spelch_length_mm (by_chance (0.2) ? g_test_rand_double_range (3, 18) : 0);
  c->cut.held.allowance_held = by_chance (0.3);
  c->cut.held.allowance = spelch_length_mm (g_test_rand_double_range (0, 1.5));
  hold_passes (c, by_chance (0.1) ? SPELCH_MAX_PASSES - 2 : 4, c->cut.through ? thickness : c->cut.depth.mm);
}

static void
random_view (Case *c)
{
  static const char *const FAMILIES[] = { NULL, "DejaVu Sans", "serif" };

  c->view
      = (SpelchView){ .width = g_test_rand_int_range (420, 1100),
                      .height = g_test_rand_int_range (420, 900),
                      .text = by_chance (0.5) ? 1.0 : 1.0 + 0.2 * g_test_rand_int_range (1, 6),
                      .look = (SpelchLook)g_test_rand_int_range (SPELCH_LOOK_LIGHT, SPELCH_LOOK_PAPER + 1),
                      .family = FAMILIES[g_test_rand_int_range (0, G_N_ELEMENTS (FAMILIES))],
                      .with_marks = by_chance (0.7),
                      .turned = g_test_rand_double_range (0, 6.283) };
  c->view.numbers = (SpelchNumbers){ by_chance (0.5) ? SPELCH_UNIT_MM : SPELCH_UNIT_INCH,
                                     by_chance (0.5) ? SPELCH_INCH_FRACTION : SPELCH_INCH_DECIMAL,
                                     by_chance (0.5) ? '.' : ',' };
}

void
case_random (Case *c)
{
  guint n_boards, n_machines, n_bits;
  const SpelchBoard *boards = spelch_shop_boards (&n_boards);
  const SpelchMachine *machines = spelch_shop_machines (&n_machines);
  const SpelchBit *bits = spelch_shop_bits (&n_bits);

  case_demo (c);
  c->part->board = boards[g_test_rand_int_range (0, (int)n_boards)];
  c->part->machine = machines[g_test_rand_int_range (0, (int)n_machines)];
  c->bit = bits[g_test_rand_int_range (0, (int)n_bits)];
  random_cut (c, spelch_board_thickness (&c->part->board));
  random_view (c);
  case_plan (c);
  c->view.shown_pass = (guint)g_test_rand_int_range (1, (int)MAX (c->plan.n_passes, 1) + 1);
}

void
case_demo_scored (Case *c)
{
  case_demo (c);
  case_take_bit (c, "down-cut-6.35x25");
  c->part->bits[c->part->n_bits - 1] = c->bit;
  case_take_bit (c, "up-cut-12.7x38");
  spelch_plan_make_two (spelch_shop_constants (), c->part, &c->cut, &c->bit,
                        &c->part->bits[c->part->n_bits - 1], &c->plan);
}

void
case_plan (Case *c)
{
  spelch_plan_make (spelch_shop_constants (), c->part, &c->cut, &c->bit, &c->plan);
}

SpelchScene *
case_scene (Case *c)
{
  return spelch_scene_new (c->part, &c->cut, &c->bit, &c->plan, &c->view);
}

cairo_surface_t *
layer_image (const SpelchScene *scene, SpelchSceneLayer layer)
{

  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, (int)scene->view.width + 1,
                                                       (int)scene->view.height + 1);
  cairo_t *cr = cairo_create (image);

  spelch_scene_draw_layer (scene, layer, cr);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_destroy (cr);
  cairo_surface_flush (image);
  return image;
}

Pixel
pixel_at (cairo_surface_t *image, int x, int y)
{
  const guchar *row;
  guint32 pixel;

  if (x < 0 || y < 0 || x >= cairo_image_surface_get_width (image)
      || y >= cairo_image_surface_get_height (image))
    return (Pixel){ 0, 0, 0, 0 };
  row = cairo_image_surface_get_data (image) + (gsize)y * (gsize)cairo_image_surface_get_stride (image);
  memcpy (&pixel, row + 4 * (gsize)x, sizeof pixel);
  return (Pixel){ (int)(pixel >> 24), (int)(pixel >> 16 & 255), (int)(pixel >> 8 & 255), (int)(pixel & 255) };
}

SpelchRect
ink_of (cairo_surface_t *image)
{
  int width = cairo_image_surface_get_width (image), height = cairo_image_surface_get_height (image);
  int x0 = width, x1 = -1, y0 = height, y1 = -1;

  for (int y = 0; y < height; y++)
    {
      const guint32 *row
          = (const guint32 *)(const void *)(cairo_image_surface_get_data (image)
                                            + (gsize)y * (gsize)cairo_image_surface_get_stride (image));

      for (int x = 0; x < width; x++)
        if (row[x] != 0)
          {
            x0 = MIN (x0, x);
            x1 = MAX (x1, x);
            y0 = MIN (y0, y);
            y1 = MAX (y1, y);
          }
    }
  if (x1 < 0)
    return (SpelchRect){ 0, 0, 0, 0 };
  return (SpelchRect){ x0, y0, x1 - x0 + 1, y1 - y0 + 1 };
}

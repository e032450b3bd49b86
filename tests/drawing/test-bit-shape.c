/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The drawn edges against the projection of a helix on a cylinder, x = R sin(theta), theta growing by 2 pi
 * over the lead pi D / tan(beta): textbook geometry, worked here again from those two formulas and not from
 * the program's own.
 */
#include "scene-kit.h"

#include "drawing/pictures.h"

#include <math.h>

static SpelchFlutes
flutes_of (double diameter, double helix_deg, double turn_over, double length, int edges)
{
  return (SpelchFlutes){ .diameter = diameter,
                         .helix = helix_deg * M_PI / 180,
                         .turn_over = turn_over,
                         .length = length,
                         .edges_up = edges,
                         .edges_down = edges };
}

/* theta at height s, for an edge that begins at the tip at angle @begin. */
static double
theta_at (const SpelchFlutes *f, double begin, double s)
{
  double lead = M_PI * f->diameter / tan (f->helix);
  double up = MIN (s, f->turn_over), down = s - up;

  return begin + 2 * M_PI * (up - down) / lead;
}

static void
assert_edge (const SpelchFlutes *f, int k, double from, double to, double turned)
{
  SpelchEdgePoint points[512];
  int n = spelch_bit_edge_points (f, k, from, to, 0.21, turned, points, G_N_ELEMENTS (points));
  int edges = from < f->turn_over ? f->edges_up : f->edges_down;

  for (int i = 0; i < n; i++)
    {
      double theta = theta_at (f, 2 * M_PI * k / edges - turned, points[i].s);

      g_assert_cmpfloat_with_epsilon (points[i].x, f->diameter / 2 * sin (theta), 1e-9);
      g_assert_cmpfloat (cos (theta), >=, -1e-9);
      g_assert_true (points[i].s >= from - 1e-12 && points[i].s <= to + 1e-12);
    }
}

static void
test_points (void)
{
  for (int round = 0; round < 500; round++)
    {
      double diameter = g_test_rand_double_range (1, 30), length = g_test_rand_double_range (5, 60);
      double turn_over = g_test_rand_double_range (-0.3, 1.3) * length;
      SpelchFlutes f = flutes_of (diameter, g_test_rand_double_range (9, 55), CLAMP (turn_over, 0, length),
                                  length, g_test_rand_int_range (1, 5));
      double turned = g_test_rand_double_range (-20, 20);

      for (int k = 0; k < f.edges_up; k++)
        {
          if (f.turn_over > 0)
            assert_edge (&f, k, 0, MIN (f.turn_over, length), turned);
          if (f.turn_over < length)
            assert_edge (&f, k, f.turn_over, length, turned);
        }
    }
}

/* Over one lead an edge is seen for half a turn: the visible stretches add up to half the lead, and each that
 * isn't cut off begins and ends on the silhouette. */
static void
test_half_is_seen (void)
{
  SpelchFlutes f = flutes_of (6.35, 30, 100, 100, 1);
  double lead = M_PI * 6.35 / tan (M_PI / 6), seen = 0;
  SpelchEdgePoint points[2000];
  int n = spelch_bit_edge_points (&f, 0, 0, lead, 0.05, 1.0, points, G_N_ELEMENTS (points));

  for (int i = 0; i < n; i++)
    {
      bool last = i + 1 == n || points[i + 1].first;

      if (!last)
        seen += points[i + 1].s - points[i].s;
      if ((points[i].first && points[i].s > 0) || (last && points[i].s < lead - 1e-9))
        g_assert_cmpfloat_with_epsilon (fabs (points[i].x), 6.35 / 2, 1e-9);
    }
  g_assert_cmpfloat_with_epsilon (seen, lead / 2, 1e-9);
}

/* Rising to the right is right-hand; at the turn-over the slope changes sign and the edge doesn't jump. */
static void
test_slopes (void)
{
  SpelchFlutes f = flutes_of (12.7, 30, 15.9, 35, 2);
  SpelchEdgePoint up[256], down[256];
  int n_up = spelch_bit_edge_points (&f, 0, 0, 15.9, 0.3, 0, up, G_N_ELEMENTS (up));
  int n_down = spelch_bit_edge_points (&f, 0, 15.9, 35, 0.3, 0, down, G_N_ELEMENTS (down));

  g_assert_cmpint (n_up, >, 10);
  g_assert_cmpint (n_down, >, 10);
  for (int i = 1; i < n_up; i++)
    if (!up[i].first)
      g_assert_cmpfloat (up[i].x, >, up[i - 1].x);
  for (int i = 1; i < n_down; i++)
    if (!down[i].first)
      g_assert_cmpfloat (down[i].x, <, down[i - 1].x);
  g_assert_cmpfloat_with_epsilon (up[n_up - 1].x, down[0].x, 1e-9);
}

/* Zones are the verdict's own: at every height the drawn zone and the hand asked for agree. */
static void
test_zones (void)
{
  for (int round = 0; round < 500; round++)
    {
      double length = g_test_rand_double_range (5, 60);
      SpelchFlutes f = flutes_of (8, g_test_rand_double_range (0, 45),
                                  g_test_rand_double_range (0, 1.2) * length, length, 2);
      SpelchZone zones[3];
      int n;

      f.overlap = g_test_rand_double_range (0, 3);
      n = spelch_bit_zones (&f, zones);
      g_assert_cmpint (n, >=, 1);
      g_assert_cmpfloat (zones[0].from, ==, 0);
      g_assert_cmpfloat (zones[n - 1].to, ==, length);
      for (int i = 0; i < n; i++)
        {
          double s = g_test_rand_double_range (zones[i].from, zones[i].to);

          g_assert_cmpint (spelch_flute_hand_at (&f, s), ==, zones[i].hand);
          if (i > 0)
            g_assert_cmpfloat (zones[i].from, ==, zones[i - 1].to);
        }
    }
}

/* ---- On the canvas ---- */

/* Where the cutting edge crosses a row: the darkest pixel well inside the outline. -1 when none is dark
 * enough. */
static double
edge_in_row (cairo_surface_t *image, double left, double right, double y)
{
  double best = -1;
  int darkest = 110;

  for (int x = (int)ceil (left); x < (int)right; x++)
    {
      Pixel p = pixel_at (image, x, (int)y);

      if (p.a == 255 && p.r < darkest)
        {
          darkest = p.r;
          best = x + 0.5;
        }
    }
  return best;
}

/* Follows the edge that starts in the middle of the tip of an up-cut bit, and returns its slope in the
 * picture: units to the right for each unit up. On the way compares it with R sin(theta). @toward_motor: -1
 * up, +1 down. */
static double
slope_on_canvas (Case *c, double toward_motor)
{
  g_autoptr (SpelchScene) scene = NULL;
  cairo_surface_t *image;
  double scale, radius, lead, first = -1, last = -1, from = 0.06, to = 0.15;

  c->view.turned = 0;
  case_plan (c);
  scene = case_scene (c);
  scale = spelch_scene_scale (scene);
  radius = c->plan.flutes.diameter / 2;
  lead = M_PI * c->plan.flutes.diameter / tan (c->plan.flutes.helix);
  image = layer_image (scene, SPELCH_LAYER_BIT);
  for (double share = from; share <= to + 1e-9; share += 0.01)
    {
      double y = scene->tip_y + toward_motor * share * lead * scale;
      double x
          = edge_in_row (image, scene->axis_x - radius * scale + 4, scene->axis_x + radius * scale - 4, y);
      /* Turned over by 180 degrees, what was to the right of the axis is to its left. */
      double expected = scene->axis_x - toward_motor * radius * scale * sin (2 * M_PI * share);

      g_assert_cmpfloat (x, >, 0);
      g_assert_cmpfloat_with_epsilon (x, expected, 2.0);
      first = first < 0 ? x : first;
      last = x;
    }
  cairo_surface_destroy (image);
  return (last - first) / ((to - from) * lead * scale) * -toward_motor;
}

static void
test_table_is_turned (void)
{
  g_auto (Case) c = { 0 };
  double gantry, table;

  case_demo (&c);
  case_take_bit (&c, "up-cut-6.35x25");
  gantry = slope_on_canvas (&c, -1);
  case_take_machine (&c, "router-table");
  table = slope_on_canvas (&c, 1);
  /* Right-hand flutes rise to the right, in both: rotated, not mirrored. "Rise" is up the picture in both. */
  g_assert_cmpfloat (gantry, >, 0.3);
  g_assert_cmpfloat (table, >, 0.3);
}

/* A bit from the drawer turned over is the same picture turned by 180 degrees. */
static void
test_picture_is_turned (void)
{
  guint n = 0;
  SpelchBit bit;
  g_auto (Case) c = { 0 };
  cairo_surface_t *images[2];

  case_demo (&c);
  bit = c.bit;
  for (n = 0; n < 2; n++)
    {
      cairo_t *cr;

      images[n] = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 80, 240);
      cr = cairo_create (images[n]);
      spelch_picture_bit (cr, &bit, 40, n == 0 ? 200 : 40, 6, 4, n == 1, 0.4,
                          spelch_palette (SPELCH_LOOK_LIGHT));
      cairo_destroy (cr);
      cairo_surface_flush (images[n]);
    }
  for (int y = 0; y < 240; y++)
    for (int x = 0; x < 80; x++)
      {
        Pixel a = pixel_at (images[0], x, y), b = pixel_at (images[1], 79 - x, 239 - y);

        g_assert_cmpint (ABS (a.r - b.r), <=, 24);
        g_assert_cmpint (ABS (a.a - b.a), <=, 24);
      }
  cairo_surface_destroy (images[0]);
  cairo_surface_destroy (images[1]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bit-shape/points", test_points);
  g_test_add_func ("/bit-shape/half-is-seen", test_half_is_seen);
  g_test_add_func ("/bit-shape/slopes", test_slopes);
  g_test_add_func ("/bit-shape/zones", test_zones);
  g_test_add_func ("/bit-shape/canvas/table-is-turned", test_table_is_turned);
  g_test_add_func ("/bit-shape/canvas/picture-is-turned", test_picture_is_turned);
  return g_test_run ();
}

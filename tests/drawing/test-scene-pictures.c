/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What comes out on the canvas: ink stays in its layer's bounds, the kerf is as wide and deep as it is,
 * layers as thick as they are, splinters where an edge tears and not where it is clean. Text is left out by
 * looking beside it.
 */
#include "scene-kit.h"

#include "drawing/pictures.h"

#include <math.h>
#include <string.h>

static void
test_ink_in_bounds (void)
{
  for (int round = 0; round < 120; round++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) scene = NULL;

      case_random (&c);
      scene = case_scene (&c);
      for (int layer = SPELCH_LAYER_KERF; layer < SPELCH_N_LAYERS; layer++)
        {
          cairo_surface_t *image = layer_image (scene, (SpelchSceneLayer)layer);
          SpelchRect ink = ink_of (image), bounds = spelch_scene_bounds (scene, (SpelchSceneLayer)layer);

          if (ink.width > 0
              && (ink.x < bounds.x || ink.y < bounds.y || ink.x + ink.width > bounds.x + bounds.width
                  || ink.y + ink.height > bounds.y + bounds.height))
            g_error ("layer %d of %s: ink %g %g %g x %g, bounds %g %g %g x %g", layer, c.bit.id, ink.x, ink.y,
                     ink.width, ink.height, bounds.x, bounds.y, bounds.width, bounds.height);
          cairo_surface_destroy (image);
        }
    }
}

/* Bounds are tight, so that little is drawn again: not more than a few units beyond the ink. */
static void
test_bounds_are_tight (void)
{
  g_auto (Case) c = { 0 };
  g_autoptr (SpelchScene) scene = NULL;
  static const SpelchSceneLayer LAYERS[] = { SPELCH_LAYER_KERF, SPELCH_LAYER_BIT, SPELCH_LAYER_SHEAR };

  case_demo (&c);
  scene = case_scene (&c);
  for (guint i = 0; i < G_N_ELEMENTS (LAYERS); i++)
    {
      cairo_surface_t *image = layer_image (scene, LAYERS[i]);
      SpelchRect ink = ink_of (image), bounds = spelch_scene_bounds (scene, LAYERS[i]);

      g_assert_cmpfloat (bounds.width - ink.width, <, 14);
      g_assert_cmpfloat (bounds.height - ink.height, <, 14);
      cairo_surface_destroy (image);
    }
}

static bool
is_colour (Pixel p, const SpelchColour *colour, int within)
{
  return abs (p.r - (int)lround (colour->r * 255)) <= within
         && abs (p.g - (int)lround (colour->g * 255)) <= within
         && abs (p.b - (int)lround (colour->b * 255)) <= within;
}

/* The run of ground colour through (x, y), across or down. */
static int
run_of_ground (cairo_surface_t *image, const SpelchScene *scene, int x, int y, bool across)
{
  int n = 0;

  for (int way = -1; way <= 1; way += 2)
    for (int i = way < 0 ? 1 : 0; i < 1000; i++)
      {
        Pixel p = pixel_at (image, across ? x + way * i : x, across ? y : y + way * i);

        if (p.a == 0 || !is_colour (p, &scene->palette->ground, 2))
          break;
        n++;
      }
  return n;
}

static void
test_kerf_is_true (void)
{
  static const char *const BITS[] = { "compression-6.35x22", "compression-12.7x35", "down-cut-9.5x25" };

  for (guint i = 0; i < G_N_ELEMENTS (BITS); i++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) scene = NULL;
      cairo_surface_t *image;
      double scale, tip;

      case_demo (&c);
      case_take_bit (&c, BITS[i]);
      c.cut.held.n_passes = 1;
      c.cut.held.passes[0] = spelch_length_mm (7.0);
      case_plan (&c);
      scene = case_scene (&c);
      scale = spelch_scene_scale (scene);
      tip = spelch_scene_y (scene, 7.0);
      image = layer_image (scene, SPELCH_LAYER_KERF);
      /* Walls are drawn outside the kerf, so the ground is as wide as the bit, and as deep as the tip is. */
      g_assert_cmpfloat_with_epsilon (run_of_ground (image, scene, (int)scene->axis_x, (int)(tip - 3), true),
                                      c.bit.diameter.mm * scale, 2.2);
      g_assert_cmpfloat_with_epsilon (run_of_ground (image, scene, (int)scene->axis_x, (int)(tip - 3), false),
                                      7.0 * scale, 2.6);
      cairo_surface_destroy (image);
    }
}

/* A dado wider than the bit is as wide as it is told. */
static void
test_dado_is_true (void)
{
  g_auto (Case) c = { 0 };
  g_autoptr (SpelchScene) scene = NULL;
  cairo_surface_t *image;

  case_demo (&c);
  c.cut.kind = SPELCH_CUT_DADO;
  c.cut.through = false;
  c.cut.kept = SPELCH_WALL_BOTH;
  c.cut.width = spelch_length_mm (15.0);
  c.cut.depth = spelch_length_mm (6.0);
  case_plan (&c);
  scene = case_scene (&c);
  image = layer_image (scene, SPELCH_LAYER_KERF);
  g_assert_cmpfloat_with_epsilon (
      run_of_ground (image, scene, (int)scene->frame.origin_x, (int)(spelch_scene_y (scene, 1.0)), true),
      15.0 * spelch_scene_scale (scene), 2.2);
  cairo_surface_destroy (image);
}

/* A pass before the finishing one leaves its allowance standing on the wall that stays, and only there; the
 * finishing pass takes it off. */
static void
test_allowance_stands (void)
{
  g_auto (Case) c = { 0 };
  double walls[2];

  case_demo (&c);
  c.cut.kept = SPELCH_WALL_LEFT;
  c.cut.held.allowance_held = true;
  c.cut.held.allowance = spelch_length_mm (0.8);
  case_plan (&c);
  g_assert_true (c.plan.passes[c.plan.n_passes - 1].finishing);
  for (int finished = 0; finished < 2; finished++)
    {
      g_autoptr (SpelchScene) scene = NULL;
      cairo_surface_t *image;
      int x, y;

      c.view.shown_pass = finished ? c.plan.n_passes : 1;
      scene = case_scene (&c);
      image = layer_image (scene, SPELCH_LAYER_KERF);
      x = (int)scene->axis_x;
      y = (int)spelch_scene_y (scene, 4.0);
      while (pixel_at (image, x, y).a > 0 && is_colour (pixel_at (image, x, y), &scene->palette->ground, 2))
        x--;
      walls[finished] = x;
      cairo_surface_destroy (image);
      if (finished)
        g_assert_cmpfloat_with_epsilon (walls[0] - walls[1], 0.8 * spelch_scene_scale (scene), 1.6);
    }
}

/* Plies as thick as they are: going down the board the fill changes colour at each glue line, and nowhere
 * else. */
static void
test_layers_are_true (void)
{
  g_auto (Case) c = { 0 };
  g_autoptr (SpelchScene) scene = NULL;
  cairo_surface_t *image;
  double depth = 0;

  case_demo (&c);
  scene = case_scene (&c);
  image = layer_image (scene, SPELCH_LAYER_STILL);
  for (guint i = 0; i < scene->board.n_layers; i++)
    {
      double thickness = scene->board.layers[i].thickness.mm;
      const SpelchColour *own = i % 2 == 0 ? &scene->palette->long_grain : &scene->palette->end_grain;
      int y0 = (int)ceil (spelch_scene_y (scene, depth) + 1),
          y1 = (int)floor (spelch_scene_y (scene, depth + thickness) - 1);
      int filled = 0, looked = 0;

      /* An outline crosses its face ply, whose long grain then lies in the picture; the next ply shows its
       * end. */
      for (int x = 500; x < 600; x++)
        for (int y = y0; y < y1; y++)
          {
            looked++;
            filled += is_colour (pixel_at (image, x, y), own, 3);
          }
      g_assert_cmpint (filled * 10, >, looked * 5);
      depth += thickness;
    }
  cairo_surface_destroy (image);
}

/* A melamine skin of a few tenths stays visible: at least 1.2 units of its colour. */
static void
test_skin_is_seen (void)
{
  g_auto (Case) c = { 0 };
  g_autoptr (SpelchScene) scene = NULL;
  cairo_surface_t *image;
  double skin = 0;

  case_demo (&c);
  case_take_board (&c, "melamine-particleboard-18");
  c.view.height = 340;
  c.view.width = 400;
  case_plan (&c);
  scene = case_scene (&c);
  g_assert_cmpint (scene->board.layers[0].material, ==, SPELCH_MATERIAL_LAMINATE);
  image = layer_image (scene, SPELCH_LAYER_STILL);
  for (int y = (int)scene->frame.near_y; y < (int)scene->frame.near_y + 6; y++)
    {
      /* How much darker than the board: the face line is darker still. */
      Pixel p = pixel_at (image, (int)scene->frame.board_right - 30, y);

      skin += CLAMP ((scene->palette->fibreboard.r * 255 - p.r)
                         / ((scene->palette->fibreboard.r - scene->palette->laminate.r) * 255),
                     0, 1);
    }
  g_assert_cmpfloat (skin, >=, 1.2);
  cairo_surface_destroy (image);
}

/* How much is drawn over the face on one side of the cut, in units of area. */
static double
ink_over_face (const SpelchScene *scene, bool far)
{
  cairo_surface_t *image = layer_image (scene, SPELCH_LAYER_EDGES);
  double face = far ? scene->frame.far_y : scene->frame.near_y,
         out = far ? scene->frame.turn : -scene->frame.turn, ink = 0;

  for (int x = 0; x < (int)scene->view.width; x++)
    for (int i = 3; i < 40; i++)
      ink += pixel_at (image, x, (int)(face + out * i)).a / 255.0;
  cairo_surface_destroy (image);
  return ink;
}

static void
set_grades (Case *c, int motor, int far)
{
  for (guint i = 0; i < c->plan.n_edges; i++)
    {
      c->plan.edges[i].grade = c->plan.edges[i].side == SPELCH_SIDE_MOTOR ? motor : far;
      c->plan.edges[i].stays = true;
    }
}

/* Splinters point away from the board on either side, grow with the grade, and there are none on a clean
 * edge. */
static void
test_splinters (void)
{
  static const char *const MACHINES[] = { "medium-gantry", "router-table" };
  static const char *const BOARDS[] = { "birch-ply-18", "melamine-mdf-18", "mdf-18" };

  for (guint m = 0; m < G_N_ELEMENTS (MACHINES) * G_N_ELEMENTS (BOARDS); m++)
    {
      double last[2] = { 0, 0 };

      for (int grade = 1; grade <= 5; grade++)
        for (int far = 0; far < 2; far++)
          {
            g_auto (Case) c = { 0 };
            g_autoptr (SpelchScene) scene = NULL;
            double ink;

            case_demo (&c);
            case_take_machine (&c, MACHINES[m % 2]);
            case_take_board (&c, BOARDS[m / 2]);
            case_plan (&c);
            set_grades (&c, far ? 1 : grade, far ? grade : 1);
            scene = case_scene (&c);
            ink = ink_over_face (scene, far);
            if (grade == 1)
              g_assert_cmpfloat (ink, ==, 0);
            else
              g_assert_cmpfloat (ink, >, last[far] * 1.15);
            g_assert_cmpfloat (ink_over_face (scene, !far), ==, 0);
            g_assert_cmpint (scene->labels[SPELCH_LABEL_CAPTION].layout != NULL, ==, grade > 1);
            last[far] = ink;
          }
    }
}

/* Each wall that stays gets its own. */
static void
test_both_walls (void)
{
  for (int kept = SPELCH_WALL_LEFT; kept <= SPELCH_WALL_BOTH; kept++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) scene = NULL;
      cairo_surface_t *image;
      double left = 0, right = 0;
      int y;

      case_demo (&c);
      c.cut.kept = (SpelchWall)kept;
      case_plan (&c);
      for (guint i = 0; i < c.plan.n_edges; i++)
        c.plan.edges[i].grade = 5;
      scene = case_scene (&c);
      image = layer_image (scene, SPELCH_LAYER_EDGES);
      y = (int)scene->frame.near_y - 3;
      for (int x = 1; x < 40; x++)
        {
          double half = c.plan.flutes.diameter / 2 * spelch_scene_scale (scene);

          left += pixel_at (image, (int)(scene->axis_x - half - x), y).a;
          right += pixel_at (image, (int)(scene->axis_x + half + x), y).a;
        }
      g_assert_cmpint (left > 0, ==, kept != SPELCH_WALL_RIGHT);
      g_assert_cmpint (right > 0, ==, kept != SPELCH_WALL_LEFT);
      cairo_surface_destroy (image);
    }
}

/* ---- Small pictures ---- */

/* Share of the picture's middle row, or of a row near the top, that is empty. */
static double
empty_share (cairo_surface_t *image, int y)
{
  int width = cairo_image_surface_get_width (image), empty = 0;

  for (int x = 2; x < width - 2; x++)
    empty += pixel_at (image, x, y).a < 128;
  return (double)empty / (width - 4);
}

static void
test_cut_picture (void)
{
  g_auto (Case) c = { 0 };
  double mm = 30.0 / 18.0;
  static const SpelchCutKind KINDS[] = { SPELCH_CUT_OUTLINE, SPELCH_CUT_DADO, SPELCH_CUT_RABBET };

  case_demo (&c);
  for (guint i = 0; i < G_N_ELEMENTS (KINDS); i++)
    {
      cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 182, 32);
      cairo_t *cr = cairo_create (image);
      double width = KINDS[i] == SPELCH_CUT_OUTLINE ? 12.7 : 20.0;

      c.cut.kind = KINDS[i];
      c.cut.through = KINDS[i] == SPELCH_CUT_OUTLINE;
      c.cut.depth = spelch_length_mm (9);
      c.cut.width = spelch_length_mm (KINDS[i] == SPELCH_CUT_OUTLINE ? 0 : width);
      spelch_picture_cut (cr, c.part, &c.cut, 12.7, 182, 32, spelch_palette (SPELCH_LOOK_LIGHT));
      cairo_destroy (cr);
      cairo_surface_flush (image);
      /* Near the top as wide as the cut; below the floor only a through cut is open. */
      g_assert_cmpfloat_with_epsilon (empty_share (image, 5), width * mm / 180, 0.025);
      g_assert_cmpfloat_with_epsilon (empty_share (image, 26), c.cut.through ? width * mm / 180 : 0, 0.025);
      cairo_surface_destroy (image);
    }
}

/* An opening right through is only gone round: one bit wide beside either wall the board is gone, and what
 * lies between stays; a narrow one is all gone. */
static void
test_core_stays (void)
{
  const double widths[] = { 60, 12 };
  for (guint i = 0; i < G_N_ELEMENTS (widths); i++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) scene = NULL;
      case_demo (&c);
      c.cut.kind = SPELCH_CUT_POCKET;
      c.cut.width = spelch_length_mm (widths[i]);
      c.cut.length = spelch_length_mm (2 * (widths[i] + 80));
      case_take_bit (&c, "compression-6.35x22");
      case_plan (&c);
      scene = case_scene (&c);
      cairo_surface_t *image = layer_image (scene, SPELCH_LAYER_KERF);
      const SpelchSpan *span = &scene->opening.spans[scene->shown];
      int y = (int)spelch_scene_y (scene, span->depth / 2);
      const double across[] = { scene->opening.left + 3, (scene->opening.left + scene->opening.right) / 2,
                                scene->opening.right - 3 };
      bool core = i == 0;
      for (guint k = 0; k < 3; k++)
        {
          double x = scene->frame.origin_x + across[k] * spelch_scene_scale (scene);
          bool gone = pixel_at (image, (int)x, y).a > 0;
          g_assert_cmpint (gone, ==, k != 1 || !core);
        }
      g_assert_cmpint (scene->plan.setting_out.drops_out, ==, core);
      cairo_surface_destroy (image);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pictures/ink-in-bounds", test_ink_in_bounds);
  g_test_add_func ("/pictures/bounds-are-tight", test_bounds_are_tight);
  g_test_add_func ("/pictures/kerf", test_kerf_is_true);
  g_test_add_func ("/pictures/dado", test_dado_is_true);
  g_test_add_func ("/pictures/allowance", test_allowance_stands);
  g_test_add_func ("/pictures/layers", test_layers_are_true);
  g_test_add_func ("/pictures/skin", test_skin_is_seen);
  g_test_add_func ("/pictures/splinters", test_splinters);
  g_test_add_func ("/pictures/both-walls", test_both_walls);
  g_test_add_func ("/pictures/cut", test_cut_picture);
  g_test_add_func ("/pictures/core", test_core_stays);
  return g_test_run ();
}

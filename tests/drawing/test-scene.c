/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The side view as numbers: scale and coordinates, what a drag changes and what it leaves, and marks.
 */
#include "files/shop-data.h"
#include "scene-kit.h"

#include <math.h>
#include <string.h>

/* ---- Coordinates ---- */

static void
assert_inverse (const SpelchScene *scene)
{
  for (int i = 0; i < 20; i++)
    {
      double mm = g_test_rand_double_range (-30, 60);

      g_assert_cmpfloat_with_epsilon (spelch_scene_depth (scene, spelch_scene_y (scene, mm)), mm, 1e-9);
      g_assert_cmpfloat_with_epsilon (spelch_scene_across (scene, spelch_scene_x (scene, mm)), mm, 1e-9);
    }
  g_assert_cmpfloat (spelch_scene_scale (scene), >, 0);
}

static void
test_coordinates (void)
{
  for (int round = 0; round < 100; round++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) scene = NULL;
      bool below;

      case_random (&c);
      scene = case_scene (&c);
      below = c.part->machine.kind == SPELCH_MACHINE_TABLE;
      assert_inverse (scene);
      /* Motor below: depths grow upwards and right of the axis is to its left, turned by 180 degrees. */
      g_assert_cmpint (spelch_scene_y (scene, 1) > spelch_scene_y (scene, 0), ==, !below);
      g_assert_cmpint (spelch_scene_x (scene, 1) > spelch_scene_x (scene, 0), ==, !below);
      g_assert_cmpfloat_with_epsilon (fabs (spelch_scene_y (scene, 1) - spelch_scene_y (scene, 0)),
                                      fabs (spelch_scene_x (scene, 1) - spelch_scene_x (scene, 0)), 1e-9);
    }
}

/* Whatever is drawn of bit and board stays inside the picture from the raised bit down to the deepest tip. */
static void
test_fits (void)
{
  for (int round = 0; round < 300; round++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) scene = NULL;
      double half, above, below, deepest;

      case_random (&c);
      c.view.width = MAX (c.view.width, 600);
      c.view.height = MAX (c.view.height, 600);
      c.view.text = MIN (c.view.text, 1.4);
      scene = case_scene (&c);
      spelch_bit_shape_extent (&scene->shape, &half, &above, &below);
      deepest = c.plan.through ? c.plan.thickness + c.plan.overcut : c.plan.thickness;
      for (int end = 0; end < 2; end++)
        {
          double y = spelch_scene_y (scene, end == 0 ? 0 : deepest), tip = y + scene->frame.turn * below;
          double collet = y - scene->frame.turn * above;

          g_assert_true (tip >= 0 && tip <= c.view.height);
          g_assert_true (collet >= 0 && collet <= c.view.height);
        }
      g_assert_true (scene->axis_x - half >= 0 && scene->axis_x + half <= c.view.width);
    }
}

/* ---- Drags ---- */

/* One of each kind. */
static const char *const MACHINES[] = { "medium-gantry", "router-table", "plunge-router" };

static void
hold_first_pass (Case *c, double depth)
{
  c->cut.held.n_passes = 1;
  c->cut.held.passes[0] = spelch_length_mm (depth);
  case_plan (c);
}

static void
test_pass_drag (void)
{
  for (guint m = 0; m < G_N_ELEMENTS (MACHINES); m++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) first = NULL;

      case_demo (&c);
      case_take_machine (&c, MACHINES[m]);
      hold_first_pass (&c, 3.0);
      first = case_scene (&c);
      for (double depth = 3.2; depth < 16; depth += 0.1)
        {
          g_autoptr (SpelchScene) scene = NULL;
          SpelchRect bit, before = spelch_scene_bounds (first, SPELCH_LAYER_BIT);

          hold_first_pass (&c, depth);
          scene = case_scene (&c);
          bit = spelch_scene_bounds (scene, SPELCH_LAYER_BIT);
          g_assert_cmpfloat (spelch_scene_scale (scene), ==, spelch_scene_scale (first));
          g_assert_cmpfloat (spelch_scene_y (scene, 0), ==, spelch_scene_y (first, 0));
          g_assert_cmpuint (spelch_scene_key (scene, SPELCH_LAYER_STILL), ==,
                            spelch_scene_key (first, SPELCH_LAYER_STILL));
          g_assert_cmpuint (spelch_scene_key (scene, SPELCH_LAYER_BIT), ==,
                            spelch_scene_key (first, SPELCH_LAYER_BIT));
          g_assert_cmpuint (spelch_scene_key (scene, SPELCH_LAYER_KERF), !=,
                            spelch_scene_key (first, SPELCH_LAYER_KERF));
          g_assert_cmpuint (spelch_scene_key (scene, SPELCH_LAYER_SHEAR), !=,
                            spelch_scene_key (first, SPELCH_LAYER_SHEAR));
          /* Its picture has moved by whole units, the way the tip has. */
          g_assert_cmpfloat (bit.width, ==, before.width);
          g_assert_cmpfloat (bit.height, ==, before.height);
          g_assert_cmpfloat (bit.x, ==, before.x);
          g_assert_cmpfloat_with_epsilon (bit.y - before.y,
                                          spelch_scene_y (scene, depth) - spelch_scene_y (scene, 3.0), 1.0);
        }
    }
}

static void
measure_board (Case *c, double thickness)
{
  c->part->board.measured = spelch_length_mm (thickness);
  case_plan (c);
}

/* The motor-side face stays, the scale too, and the far face goes as far as the board grows; but never out of
 * the picture. A scene that holds nothing is as large as fits. */
static void
test_thickness_drag (void)
{
  for (guint m = 0; m < G_N_ELEMENTS (MACHINES); m++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) first = NULL;

      case_demo (&c);
      case_take_machine (&c, MACHINES[m]);
      measure_board (&c, 18);
      first = case_scene (&c);
      c.view.hold = spelch_scene_hold (first);
      for (double thickness = 9; thickness < 60; thickness += 0.5)
        {
          g_autoptr (SpelchScene) scene = NULL;
          double scale, far;

          measure_board (&c, thickness);
          scene = case_scene (&c);
          scale = spelch_scene_scale (scene);
          far = spelch_scene_y (scene, thickness);
          g_assert_cmpfloat (spelch_scene_y (scene, 0), ==, spelch_scene_y (first, 0));
          g_assert_cmpfloat (scale, <=, spelch_scene_scale (first));
          if (thickness <= 19)
            g_assert_cmpfloat (scale, ==, spelch_scene_scale (first));
          g_assert_true (far > 20 && far < c.view.height - 20); /* so that its name has room */
          g_assert_cmpfloat (far, ==, scene->frame.far_y);
          g_assert_cmpfloat (scene->frame.far_rest, >=, 0);
        }
      measure_board (&c, 36);
      c.view.hold = (SpelchSceneHold){ 0 };
      g_autoptr (SpelchScene) settled = case_scene (&c);
      g_assert_cmpfloat (spelch_scene_scale (settled), <, spelch_scene_scale (first));
    }
}

/* The label that is dragged keeps its place beside its line, past the others, which give way. */
static void
test_mark_drag (void)
{
  g_auto (Case) c = { 0 };
  g_autoptr (SpelchScene) first = NULL;
  SpelchRect begun, other;

  case_demo (&c);
  c.cut.held.allowance_held = true;
  hold_first_pass (&c, 9);
  first = case_scene (&c);
  c.view.hold = spelch_scene_hold (first);
  spelch_scene_hold_mark (first, SPELCH_MARK_PASS, 1, &c.view.hold);
  g_assert_true (spelch_scene_mark (first, SPELCH_MARK_PASS, 1, &begun));
  for (double depth = 6; depth < 12; depth += 0.1)
    {
      g_autoptr (SpelchScene) scene = NULL;
      SpelchRect now;

      hold_first_pass (&c, depth);
      scene = case_scene (&c);
      g_assert_true (spelch_scene_mark (scene, SPELCH_MARK_PASS, 1, &now));
      g_assert_true (spelch_scene_mark (scene, SPELCH_MARK_ALLOWANCE, 0, &other));
      g_assert_cmpfloat_with_epsilon (now.y - begun.y,
                                      spelch_scene_y (scene, depth) - spelch_scene_y (first, 9), 1e-6);
      g_assert_false (spelch_rect_overlap (now, other));
    }
}

/* What is held belongs to one bit and one size of picture. */
static void
test_hold_of_another (void)
{
  g_auto (Case) c = { 0 };
  g_autoptr (SpelchScene) first = NULL, free_one = NULL, held = NULL;

  case_demo (&c);
  first = case_scene (&c);
  c.view.height -= 100;
  free_one = case_scene (&c);
  c.view.hold = spelch_scene_hold (first);
  held = case_scene (&c);
  g_assert_cmpfloat (spelch_scene_scale (held), ==, spelch_scene_scale (free_one));
  g_assert_cmpfloat (spelch_scene_y (held, 0), ==, spelch_scene_y (free_one, 0));
}

/* Kept pictures of equal keys are equal: the STILL and BIT layers before and after a drag, pixel by pixel. */
static void
test_keys_tell_the_truth (void)
{
  g_auto (Case) c = { 0 };
  g_autoptr (SpelchScene) a = NULL, b = NULL;
  cairo_surface_t *images[2];
  SpelchRect from, to;

  case_demo (&c);
  hold_first_pass (&c, 5.0);
  a = case_scene (&c);
  hold_first_pass (&c, 9.7);
  b = case_scene (&c);
  images[0] = layer_image (a, SPELCH_LAYER_STILL);
  images[1] = layer_image (b, SPELCH_LAYER_STILL);
  g_assert_cmpint (memcmp (cairo_image_surface_get_data (images[0]), cairo_image_surface_get_data (images[1]),
                           (gsize)cairo_image_surface_get_stride (images[0])
                               * (gsize)cairo_image_surface_get_height (images[0])),
                   ==, 0);
  cairo_surface_destroy (images[0]);
  cairo_surface_destroy (images[1]);

  images[0] = layer_image (a, SPELCH_LAYER_BIT);
  images[1] = layer_image (b, SPELCH_LAYER_BIT);
  from = spelch_scene_bounds (a, SPELCH_LAYER_BIT);
  to = spelch_scene_bounds (b, SPELCH_LAYER_BIT);
  for (int y = 0; y < (int)from.height; y++)
    for (int x = 0; x < (int)from.width; x++)
      {
        Pixel p = pixel_at (images[0], (int)from.x + x, (int)from.y + y),
              q = pixel_at (images[1], (int)to.x + x, (int)to.y + y);

        g_assert_cmpint (ABS (p.r - q.r) + ABS (p.g - q.g) + ABS (p.b - q.b) + ABS (p.a - q.a), <=, 8);
      }
  cairo_surface_destroy (images[0]);
  cairo_surface_destroy (images[1]);
}

static guint64
key_after (Case *c, SpelchSceneLayer layer)
{
  g_autoptr (SpelchScene) scene = NULL;

  case_plan (c);
  scene = case_scene (c);
  return spelch_scene_key (scene, layer);
}

/* What shows in a layer changes its key. */
static void
test_keys_change (void)
{
  for (int what = 0; what < 7; what++)
    {
      g_auto (Case) c = { 0 };
      guint64 still, bit;
      bool changes_bit = what != 3;

      case_demo (&c);
      still = key_after (&c, SPELCH_LAYER_STILL);
      bit = key_after (&c, SPELCH_LAYER_BIT);
      switch (what)
        {
        case 0:
          c.part->board.measured = spelch_length_mm (17.6);
          break;
        case 1:
          case_take_bit (&c, "up-cut-6.35x25");
          break;
        case 2:
          c.view.look = SPELCH_LOOK_DARK;
          break;
        case 3:
          c.view.numbers.unit = SPELCH_UNIT_INCH;
          break;
        case 4:
          c.view.text = 1.3;
          break;
        case 5:
          case_take_machine (&c, "router-table");
          break;
        default:
          c.view.height = 700;
          break;
        }
      g_assert_cmpuint (key_after (&c, SPELCH_LAYER_STILL), !=, still);
      if (changes_bit)
        g_assert_cmpuint (key_after (&c, SPELCH_LAYER_BIT), !=, bit);
      else
        g_assert_cmpuint (key_after (&c, SPELCH_LAYER_BIT), ==, bit);
    }
}

static void
test_turning_changes_the_bit_only (void)
{
  g_auto (Case) c = { 0 };

  case_demo (&c);
  for (int layer = 0; layer < SPELCH_N_LAYERS; layer++)
    {
      guint64 before, after;

      c.view.turned = 0;
      before = key_after (&c, (SpelchSceneLayer)layer);
      c.view.turned = 0.3;
      after = key_after (&c, (SpelchSceneLayer)layer);
      g_assert_cmpint (before != after, ==, layer == SPELCH_LAYER_BIT);
    }
}

/* The same input gives the same drawing. */
static void
test_keys_repeat (void)
{
  for (int round = 0; round < 50; round++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) a = NULL, b = NULL;

      case_random (&c);
      a = case_scene (&c);
      b = case_scene (&c);
      for (int layer = 0; layer < SPELCH_N_LAYERS; layer++)
        g_assert_cmpuint (spelch_scene_key (a, (SpelchSceneLayer)layer), ==,
                          spelch_scene_key (b, (SpelchSceneLayer)layer));
    }
}

/* ---- Marks ---- */

static void
test_marks (void)
{
  g_auto (Case) c = { 0 };
  g_autoptr (SpelchScene) scene = NULL;
  SpelchRect first, last, thickness;
  double x0, x1, y;

  case_demo (&c);
  hold_first_pass (&c, 6.0);
  scene = case_scene (&c);
  g_assert_cmpuint (c.plan.n_passes, ==, 2);
  g_assert_true (spelch_scene_mark (scene, SPELCH_MARK_PASS, 1, &first));
  g_assert_false (spelch_scene_mark (scene, SPELCH_MARK_PASS, 2, &last));
  g_assert_true (spelch_scene_mark (scene, SPELCH_MARK_OVERCUT, 0, &last));
  g_assert_true (spelch_scene_mark (scene, SPELCH_MARK_THICKNESS, 0, &thickness));
  g_assert_false (spelch_scene_mark (scene, SPELCH_MARK_ALLOWANCE, 0, &last));
  /* Where nothing is in the way a mark stands at its own depth, and its line always does. */
  g_assert_cmpfloat_with_epsilon (first.y + first.height / 2, spelch_scene_y (scene, 6.0), 0.5);
  g_assert_true (spelch_scene_mark_line (scene, SPELCH_MARK_PASS, 1, &x0, &x1, &y));
  g_assert_cmpfloat_with_epsilon (y, spelch_scene_y (scene, 6.0), 1e-9);
  g_assert_cmpfloat_with_epsilon (x1, spelch_scene_x (scene, c.plan.flutes.diameter / 2), 5.0);
  g_assert_cmpfloat (x0, <=, first.x);

  c.cut.held.allowance_held = true;
  case_plan (&c);
  g_clear_pointer (&scene, spelch_scene_free);
  scene = case_scene (&c);
  g_assert_true (spelch_scene_mark (scene, SPELCH_MARK_ALLOWANCE, 0, &last));
}

/* ---- Words ---- */

static void
test_description (void)
{
  g_auto (Case) c = { 0 };
  g_autoptr (SpelchScene) torn = NULL, clean = NULL;
  g_autofree char *torn_text = NULL, *clean_text = NULL;

  case_demo (&c);
  hold_first_pass (&c, 6.0);
  torn = case_scene (&c);
  torn_text = spelch_scene_describe (torn);
  hold_first_pass (&c, 9.2);
  clean = case_scene (&c);
  clean_text = spelch_scene_describe (clean);
  g_assert_nonnull (strstr (torn_text, "6.0 mm"));
  g_assert_nonnull (strstr (torn_text, "torn"));
  g_assert_nonnull (strstr (clean_text, "9.2 mm"));
  g_assert_null (strstr (clean_text, "torn"));
  g_assert_true (g_utf8_validate (torn_text, -1, NULL));
}

/* Asked before it is shown: however the edges come out and wherever a face would be clean, it looks the same,
 * and words about it are left out. */
static void
test_asking (void)
{
  for (int round = 0; round < 60; round++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) scene = NULL, other = NULL, shown = NULL;
      g_autofree char *asked = NULL, *told = NULL;

      case_random (&c);
      c.view.asking = true;
      scene = case_scene (&c);
      asked = spelch_scene_describe (scene);
      for (guint i = 0; i < c.plan.n_edges; i++)
        c.plan.edges[i].grade = c.plan.edges[i].grade == 0 ? 0 : 6 - c.plan.edges[i].grade;
      c.plan.windows.robust.first_pass.empty = !c.plan.windows.robust.first_pass.empty;
      c.plan.windows.nominal.first_pass = (SpelchRange){ 1.2, 3.4, false };
      other = spelch_scene_new (c.part, &c.cut, &c.bit, &c.plan, &c.view);
      for (int layer = 0; layer < SPELCH_N_LAYERS; layer++)
        g_assert_cmpuint (spelch_scene_key (scene, (SpelchSceneLayer)layer), ==,
                          spelch_scene_key (other, (SpelchSceneLayer)layer));
      c.view.asking = false;
      shown = spelch_scene_new (c.part, &c.cut, &c.bit, &c.plan, &c.view);
      told = spelch_scene_describe (shown);
      g_assert_cmpuint (spelch_scene_key (scene, SPELCH_LAYER_STILL), !=,
                        spelch_scene_key (shown, SPELCH_LAYER_STILL));
      g_assert_cmpuint (strlen (asked), <, strlen (told));
      g_assert_true (g_str_has_prefix (told, asked));
    }
}

/* A scoring pass is drawn, and described, with the bit that makes it, the next one with the other. */
static void
test_scored (void)
{
  for (guint pass = 1; pass <= 2; pass++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) scene = NULL;
      g_autofree char *told = NULL;

      case_demo_scored (&c);
      c.view.shown_pass = pass;
      scene = case_scene (&c);
      told = spelch_scene_describe (scene);
      g_assert_cmpint (strstr (told, "shear down") != NULL, ==, pass == 1);
      g_assert_cmpint (strstr (told, "shear up") != NULL, ==, pass == 2);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scene/coordinates", test_coordinates);
  g_test_add_func ("/scene/scored", test_scored);
  g_test_add_func ("/scene/fits", test_fits);
  g_test_add_func ("/scene/drag/pass", test_pass_drag);
  g_test_add_func ("/scene/drag/thickness", test_thickness_drag);
  g_test_add_func ("/scene/drag/mark", test_mark_drag);
  g_test_add_func ("/scene/drag/another", test_hold_of_another);
  g_test_add_func ("/scene/keys/true", test_keys_tell_the_truth);
  g_test_add_func ("/scene/keys/change", test_keys_change);
  g_test_add_func ("/scene/keys/turning", test_turning_changes_the_bit_only);
  g_test_add_func ("/scene/keys/repeat", test_keys_repeat);
  g_test_add_func ("/scene/marks", test_marks);
  g_test_add_func ("/scene/description", test_description);
  g_test_add_func ("/scene/asking", test_asking);
  return g_test_run ();
}

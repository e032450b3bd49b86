/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture of slow motion as numbers: chips on the edges that carry them, the board's rise, the marker on
 * the force; what is repainted and what isn't; and films of it.
 */
#include "scene-kit.h"

#include "drawing/film.h"
#include "drawing/motion-scene.h"
#include "files/shop-data.h"

#include <gif_lib.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

typedef struct
{
  SpelchMotion *motion;
  SpelchMotionScene *scene;
  SpelchMotionFrame *frame;
  int height;
} Moving;

static void
moving_clear (Moving *moving)
{
  g_clear_pointer (&moving->scene, spelch_motion_scene_free);
  g_clear_pointer (&moving->motion, g_free);
  g_clear_pointer (&moving->frame, g_free);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Moving, moving_clear)

/* False when nothing of the case moves. */
static bool
moving_make (Moving *moving, const Case *c, guint pass)
{
  moving->motion = spelch_motion_new (spelch_shop_constants (), c->part, &c->cut, &c->bit, &c->plan);
  moving->frame = g_new0 (SpelchMotionFrame, 1);
  if (moving->motion->n_passes == 0)
    return false;
  moving->height = (int)c->view.height;
  moving->scene
      = spelch_motion_scene_new (c->part, &c->cut, &c->bit, &c->plan, moving->motion, pass, &c->view, 1);
  return true;
}

static void
case_with (Case *c, const char *bit)
{
  case_demo (c);
  case_take_bit (c, bit);
  case_plan (c);
}

static cairo_surface_t *
picture (Moving *moving, guint pass, double turned, bool blurred)
{
  const SpelchScene *side = spelch_motion_scene_side (moving->scene);
  cairo_surface_t *surface
      = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)side->view.width, moving->height);
  cairo_t *cr = cairo_create (surface);

  spelch_motion_at (moving->motion, pass, turned, moving->frame);
  spelch_motion_scene_draw (moving->scene, cr, moving->frame, blurred);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  return surface;
}

static bool
is_within (SpelchRect rect, int x, int y)
{
  return x >= rect.x && x < rect.x + rect.width && y >= rect.y && y < rect.y + rect.height;
}

/* How many pixels differ, and how many of them stand in no part of what moves. */
static int
differing (cairo_surface_t *a, cairo_surface_t *b, const Moving *moving, int *outside)
{
  int n = 0, width = cairo_image_surface_get_width (a), height = cairo_image_surface_get_height (a);
  SpelchRect bounds[SPELCH_MOTION_N_PARTS];

  for (int part = 0; moving != NULL && part < SPELCH_MOTION_N_PARTS; part++)
    bounds[part] = spelch_motion_scene_bounds (moving->scene, (SpelchMotionPart)part, moving->frame);
  for (int y = 0; y < height; y++)
    for (int x = 0; x < width; x++)
      {
        Pixel p = pixel_at (a, x, y), q = pixel_at (b, x, y);
        bool in = false;

        if (p.r == q.r && p.g == q.g && p.b == q.b)
          continue;
        n++;
        for (int part = 0; moving != NULL && part < SPELCH_MOTION_N_PARTS; part++)
          in |= is_within (bounds[part], x, y);
        if (outside != NULL)
          *outside += !in;
      }
  return n;
}

/* ---- Chips ---- */

/* The outermost chip that slides along its flute stands on a drawn edge: some edge, at the chip's height and
 * drawn as the bit is, has its x. */
static void
test_chips_on_edges (void)
{
  static const char *const BITS[] = { "up-cut-6.35x25", "down-cut-6.35x25", "compression-6.35x22" };
  int met = 0;

  for (guint b = 0; b < G_N_ELEMENTS (BITS); b++)
    {
      g_auto (Case) c = { 0 };
      g_auto (Moving) m = { 0 };
      const SpelchFlutes *flutes;

      case_with (&c, BITS[b]);
      g_assert_true (moving_make (&m, &c, 0));
      flutes = &m.motion->passes[0].force.flutes;
      for (double turned = 2; turned < 12; turned += 0.37)
        {
          const SpelchMotionPass *pass = &m.motion->passes[0];

          spelch_motion_at (m.motion, 0, turned, m.frame);
          for (guint i = 0; i < m.frame->n_chips; i++)
            {
              const SpelchMotionChip *chip = &m.frame->chips[i];
              double x, y, nearest = HUGE_VAL;

              if (chip->rests || chip->rise == 0 || chip->depth < 0 || !chip->in_front)
                continue;
              spelch_motion_scene_chip (m.scene, chip, &x, &y);
              g_assert_cmpfloat_with_epsilon (
                  y, spelch_scene_y (spelch_motion_scene_side (m.scene), chip->depth), 1e-9);
              for (int k = 0; k < spelch_flute_edges_at (flutes, 0); k++)
                for (int copy = 0; copy < 4; copy++)
                  {
                    bool front;
                    double edge = spelch_flute_edge_x (flutes, k, pass->depth - chip->depth,
                                                       turned + G_PI_2 - 0.12 * copy, &front);

                    if (front)
                      nearest = fmin (nearest, fabs (edge * (0.94 - 0.17 * copy) - chip->across));
                  }
              g_assert_cmpfloat (nearest, <, 1e-6);
              met++;
            }
        }
    }
  g_assert_cmpint (met, >, 200);
}

/* ---- Board and force ---- */

static void
test_lift (void)
{
  static const struct
  {
    const char *bit;
    int way;
  } BITS[] = { { "up-cut-6.35x25", 1 }, { "down-cut-6.35x25", -1 }, { "straight-6.35x25", 0 } };

  for (guint b = 0; b < G_N_ELEMENTS (BITS); b++)
    {
      g_auto (Case) c = { 0 };
      g_auto (Moving) m = { 0 };
      double most = 0, lift_of_most = 0;

      case_with (&c, BITS[b].bit);
      g_assert_true (moving_make (&m, &c, 0));
      for (double turned = 0; turned < 6.28; turned += 0.1)
        {
          double lift;

          spelch_motion_at (m.motion, 0, turned, m.frame);
          lift = spelch_motion_scene_lift (m.scene, &m.frame->axial);
          g_assert_cmpfloat (lift * BITS[b].way, >=, 0);
          if (fabs (m.frame->axial.mid) > most)
            {
              most = fabs (m.frame->axial.mid);
              lift_of_most = lift;
            }
        }
      g_assert_cmpint ((lift_of_most > 0) - (lift_of_most < 0), ==, BITS[b].way);
    }
}

/* The marker runs over the trace from left to right, a turn at a time, higher where the force lifts more. */
static void
test_marker (void)
{
  g_auto (Case) c = { 0 };
  g_auto (Moving) m = { 0 };
  double x, y, before = -1, zero, first;

  case_demo (&c);
  g_assert_true (moving_make (&m, &c, 0));
  spelch_motion_scene_marker (m.scene, 0, 0, &first, &zero);
  for (double turned = 0; turned <= 2 * G_PI; turned += 0.05)
    {
      double higher, same;

      spelch_motion_scene_marker (m.scene, turned, 1, &x, &y);
      spelch_motion_scene_marker (m.scene, turned, 1.2, &same, &higher);
      g_assert_cmpfloat (x, >, before);
      g_assert_true (y < zero && higher < y && same == x);
      before = x;
      spelch_motion_scene_marker (m.scene, turned + 4 * G_PI, 1, &same, &higher);
      if (turned > 0)
        g_assert_cmpfloat_with_epsilon (same, x, 1e-6);
    }
}

/* ---- Pictures ---- */

/* What is drawn of an instant differs from what stands still in the moving parts only; the same instant gives
 * the same picture, whatever was drawn between. */
static void
test_repainted (void)
{
  static const char *const MACHINES[] = { NULL, "router-table", "trim-router" };

  for (guint i = 0; i < G_N_ELEMENTS (MACHINES); i++)
    {
      g_auto (Case) c = { 0 };
      g_auto (Moving) m = { 0 };
      cairo_surface_t *a, *b, *again, *still;
      int outside = 0;

      case_demo (&c);
      if (MACHINES[i] != NULL)
        case_take_machine (&c, MACHINES[i]);
      case_plan (&c);
      if (!moving_make (&m, &c, 0))
        continue;
      still = spelch_motion_scene_still (m.scene);
      b = picture (&m, 0, 8.3, false);
      a = picture (&m, 0, 7.1, false);
      g_assert_cmpint (differing (a, b, NULL, NULL), >, 500);
      g_assert_cmpint (differing (a, still, &m, &outside), >, 500);
      g_assert_cmpint (outside, ==, 0);
      again = picture (&m, 0, 7.1, false);
      g_assert_cmpint (differing (a, again, NULL, NULL), ==, 0);
      cairo_surface_destroy (a);
      cairo_surface_destroy (b);
      cairo_surface_destroy (again);
    }
}

/* A part whose number is the same shows the same. */
static void
test_values (void)
{
  g_auto (Case) c = { 0 };
  g_auto (Moving) m = { 0 };
  int same = 0;

  case_demo (&c);
  g_assert_true (moving_make (&m, &c, 0));
  for (int part = 0; part < SPELCH_MOTION_N_PARTS; part++)
    for (double turned = 2; turned < 2.2; turned += 0.02)
      {
        cairo_surface_t *shown[2];
        double value[2];

        for (int i = 0; i < 2; i++)
          {
            cairo_t *cr;

            shown[i] = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)c.view.width, m.height);
            cr = cairo_create (shown[i]);
            spelch_motion_at (m.motion, 0, turned + 0.004 * i, m.frame);
            value[i] = spelch_motion_scene_value (m.scene, (SpelchMotionPart)part, m.frame, false);
            spelch_motion_scene_draw_part (m.scene, (SpelchMotionPart)part, cr, m.frame, false);
            cairo_destroy (cr);
          }
        if (value[0] == value[1])
          g_assert_cmpint (differing (shown[0], shown[1], NULL, NULL), ==, 0);
        same += value[0] == value[1];
        cairo_surface_destroy (shown[0]);
        cairo_surface_destroy (shown[1]);
      }
  g_assert_cmpint (same, >, 3);
}

/* A scoring pass is drawn with the bit that makes it, the next one with the other. */
static void
test_scored (void)
{
  for (guint pass = 0; pass < 2; pass++)
    {
      g_auto (Case) c = { 0 };
      g_auto (Moving) m = { 0 };
      const SpelchFlutes *drawn;

      case_demo_scored (&c);
      g_assert_true (moving_make (&m, &c, pass));
      drawn = &spelch_motion_scene_side (m.scene)->shape.flutes;
      g_assert_cmpfloat_with_epsilon (drawn->diameter, pass == 0 ? 6.35 : 12.7, 1e-9);
      g_assert_cmpint (spelch_flute_sign_at (drawn, 1), ==, pass == 0 ? -1 : 1);
      cairo_surface_destroy (picture (&m, pass, 7, false));
    }
}

/* Evenly blurred, nothing flickers: the turn makes no difference once the splinters are there. */
static void
test_blurred (void)
{
  g_auto (Case) c = { 0 };
  g_auto (Moving) m = { 0 };
  cairo_surface_t *a, *b, *sharp;

  case_with (&c, "up-cut-6.35x25");
  g_assert_true (moving_make (&m, &c, 0));
  a = picture (&m, 0, 9.1, true);
  b = picture (&m, 0, 10.7, true);
  sharp = picture (&m, 0, 9.1, false);
  g_assert_cmpint (differing (a, b, NULL, NULL), ==, 0);
  g_assert_cmpint (differing (a, sharp, NULL, NULL), >, 500);
  cairo_surface_destroy (a);
  cairo_surface_destroy (b);
  cairo_surface_destroy (sharp);
}

/* Hand, helix, flutes, feed and pass change the picture. */
static void
test_changes (void)
{
  cairo_surface_t *pictures[6];

  for (guint i = 0; i < G_N_ELEMENTS (pictures); i++)
    {
      g_auto (Case) c = { 0 };
      g_auto (Moving) m = { 0 };

      case_with (&c, "up-cut-6.35x25");
      c.cut.held.n_passes = 1;
      c.cut.held.passes[0] = spelch_length_mm (9);
      c.cut.held.speed_rpm = 18000;
      c.cut.held.feed_mm_min = i == 4 ? 2400 : 3000;
      c.bit.kind = i == 1 ? SPELCH_BIT_DOWN_CUT : SPELCH_BIT_UP_CUT;
      c.bit.helix_deg += i == 2 ? 5 : 0;
      c.bit.edges += i == 3;
      case_plan (&c);
      g_assert_true (moving_make (&m, &c, i == 5));
      pictures[i] = picture (&m, i == 5, 7.1, false);
    }
  for (guint i = 0; i < G_N_ELEMENTS (pictures); i++)
    for (guint j = 0; j < i; j++)
      {
        g_assert_cmpint (differing (pictures[i], pictures[j], NULL, NULL), >, 100);
      }
  for (guint i = 0; i < G_N_ELEMENTS (pictures); i++)
    cairo_surface_destroy (pictures[i]);
}

/* Whatever the case: finite, opaque, in one piece. */
static void
test_any_case (void)
{
  int moved = 0;

  for (int round = 0; round < 60; round++)
    {
      g_auto (Case) c = { 0 };
      g_auto (Moving) m = { 0 };

      case_random (&c);
      if (!moving_make (&m, &c, (guint)g_test_rand_int_range (0, 4)))
        continue;
      cairo_surface_destroy (picture (&m, (guint)g_test_rand_int_range (0, 4),
                                      g_test_rand_double_range (0, 25), round % 3 == 0));
      g_assert_cmpint (spelch_motion_scene_enlarged (m.scene, false), >=, 1);
      g_assert_cmpint (spelch_motion_scene_enlarged (m.scene, true), >=, 1);
      moved++;
    }
  g_assert_cmpint (moved, >, 20);
}

/* ---- Films ---- */

static char *
folder_new (void)
{
  return g_dir_make_tmp ("spelch-film-XXXXXX", NULL);
}

static guint
run_film (const Case *c, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchFilm) film = spelch_film_new (spelch_shop_constants (), c->part, &c->cut, &c->bit,
                                                 &c->plan, 0, &c->view, path, true, &error);

  g_assert_no_error (error);
  while (!spelch_film_is_done (film))
    {
      spelch_film_step (film, &error);
      g_assert_no_error (error);
    }
  g_assert_cmpuint (spelch_film_made (film), ==, spelch_film_count (film));
  return spelch_film_count (film);
}

/* Read by the library as any program would: as many pictures, of that size, with those times, over and over;
 * the first is all of the picture. */
static void
test_gif (void)
{
  g_auto (Case) c = { 0 };
  g_autofree char *folder = folder_new (), *path = g_build_filename (folder, "pass.gif", NULL);
  GraphicsControlBlock control;
  GifFileType *gif;
  guint count;

  case_demo (&c);
  count = run_film (&c, path);
  gif = DGifOpenFileName (path, NULL);
  g_assert_nonnull (gif);
  g_assert_cmpint (DGifSlurp (gif), ==, GIF_OK);
  g_assert_cmpint (gif->SWidth, ==, (int)c.view.width);
  g_assert_cmpint (gif->SHeight, ==, (int)c.view.height);
  g_assert_cmpuint ((guint)gif->ImageCount, ==, count);
  g_assert_cmpuint (count, ==, 2 * SPELCH_MOTION_TURNS * SPELCH_FILM_GIF_PER_TOOTH);
  g_assert_cmpint (gif->SavedImages[0].ImageDesc.Width, ==, gif->SWidth);
  g_assert_cmpint (gif->SavedImages[0].ImageDesc.Height, ==, gif->SHeight);
  for (int i = 0; i < gif->ImageCount; i++)
    {
      g_assert_cmpint (DGifSavedExtensionToGCB (gif, i, &control), ==, GIF_OK);
      g_assert_cmpint (control.DelayTime * SPELCH_FILM_GIF_PER_TOOTH, ==, 100);
    }
  DGifCloseFile (gif, NULL);
  g_remove (path);
  g_rmdir (folder);
}

/* Each picture is the frame the window shows. */
static void
test_series (void)
{
  g_auto (Case) c = { 0 };
  g_auto (Moving) m = { 0 };
  g_autofree char *folder = folder_new (), *path = g_build_filename (folder, "pass.png", NULL);
  g_autoptr (GError) error = NULL;
  guint count;

  case_demo (&c);
  count = run_film (&c, path);
  g_assert_true (moving_make (&m, &c, 0));
  for (guint i = 0; i < count; i++)
    {
      g_autofree char *name = g_strdup_printf ("%s/pass-%03u.png", folder, i + 1);

      if (i % 7 == 3)
        {
          double turned = spelch_motion_tooth (&m.motion->passes[0]) * i / SPELCH_FILM_PNG_PER_TOOTH;
          cairo_surface_t *saved = cairo_image_surface_create_from_png (name);
          cairo_surface_t *shown = picture (&m, 0, turned, false);

          g_assert_cmpint (differing (saved, shown, NULL, NULL), ==, 0);
          cairo_surface_destroy (saved);
          cairo_surface_destroy (shown);
        }
      g_assert_true (g_file_test (name, G_FILE_TEST_EXISTS));
    }
  /* A second one leaves the first alone. */
  g_assert_null (spelch_film_new (spelch_shop_constants (), c.part, &c.cut, &c.bit, &c.plan, 0, &c.view, path,
                                  true, &error));
  g_assert_error (error, SPELCH_FILM_ERROR, SPELCH_FILM_ERROR_WRITE);
  g_assert_nonnull (strstr (error->message, "pass-001.png is there already"));
  for (guint i = 0; i < count; i++)
    {
      g_autofree char *name = g_strdup_printf ("%s/pass-%03u.png", folder, i + 1);

      g_remove (name);
    }
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

static void
assert_refused (const Case *c, const char *path, SpelchFilmError code, const char *words)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchFilm) film = spelch_film_new (spelch_shop_constants (), c->part, &c->cut, &c->bit,
                                                 &c->plan, 0, &c->view, path, true, &error);

  while (film != NULL && error == NULL && !spelch_film_is_done (film))
    spelch_film_step (film, &error);
  g_assert_error (error, SPELCH_FILM_ERROR, (int)code);
  g_assert_nonnull (strstr (error->message, words));
}

static void
test_refused (void)
{
  g_auto (Case) c = { 0 };

  case_demo (&c);
  c.view.width = c.view.height = 240;
  assert_refused (&c, "/tmp/pass.webp", SPELCH_FILM_ERROR_INPUT, "must end in .gif");
  assert_refused (&c, "/nowhere/pass.gif", SPELCH_FILM_ERROR_WRITE, "pass.gif");
  assert_refused (&c, "/nowhere/pass.png", SPELCH_FILM_ERROR_WRITE, "pass-001.png");
  c.view.width = c.view.height = 1e4;
  assert_refused (&c, "/tmp/pass.gif", SPELCH_FILM_ERROR_INPUT, "too large");
  c.view.width = c.view.height = 240;
  c.plan.n_passes = 0;
  assert_refused (&c, "/tmp/pass.gif", SPELCH_FILM_ERROR_INPUT, "nothing to show");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/motion-scene/chips-on-edges", test_chips_on_edges);
  g_test_add_func ("/motion-scene/lift", test_lift);
  g_test_add_func ("/motion-scene/marker", test_marker);
  g_test_add_func ("/motion-scene/repainted", test_repainted);
  g_test_add_func ("/motion-scene/values", test_values);
  g_test_add_func ("/motion-scene/scored", test_scored);
  g_test_add_func ("/motion-scene/blurred", test_blurred);
  g_test_add_func ("/motion-scene/changes", test_changes);
  g_test_add_func ("/motion-scene/any-case", test_any_case);
  g_test_add_func ("/film/gif", test_gif);
  g_test_add_func ("/film/series", test_series);
  g_test_add_func ("/film/refused", test_refused);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Labels of whole scenes: in any picture none covers another, nor a line that ends there; those of depths
 * stand in the depths' order; and in a picture of ordinary size none is left out.
 */
#include "scene-kit.h"

#include <math.h>
#include <string.h>

static const char *
name_of (const SpelchScene *scene, guint i)
{
  return i < SPELCH_N_LABELS ? pango_layout_get_text (scene->labels[i].layout)
                             : pango_layout_get_text (scene->marks[i - SPELCH_N_LABELS].layout);
}

static void
assert_apart (const SpelchScene *scene)
{
  SpelchRect rects[SPELCH_N_LABELS + SPELCH_MAX_MARKS];
  guint which[SPELCH_N_LABELS + SPELCH_MAX_MARKS], n = 0;

  for (guint i = 0; i < SPELCH_N_LABELS; i++)
    if (scene->labels[i].layout != NULL)
      {
        rects[n] = scene->labels[i].box;
        which[n++] = i;
      }
  for (guint i = 0; i < scene->n_marks; i++)
    {
      rects[n] = scene->marks[i].box;
      which[n++] = SPELCH_N_LABELS + i;
    }
  for (guint i = 0; i < n; i++)
    for (guint j = 0; j < i; j++)
      if (spelch_rect_overlap (rects[i], rects[j]))
        g_error ("“%s” and “%s” overlap in a picture of %.0f x %.0f, text %.2f, %s, %s, %s",
                 name_of (scene, which[i]), name_of (scene, which[j]), scene->view.width, scene->view.height,
                 scene->view.text, scene->bit.id, scene->board.id,
                 scene->machine == SPELCH_MACHINE_TABLE ? "table" : "no table");
}

#ifdef __SANITIZE_ADDRESS__
#define ROUNDS 300 /* for what they do to memory that is enough */
#else
#define ROUNDS 2000
#endif

static void
test_labels_never_overlap (void)
{
  for (int round = 0; round < ROUNDS; round++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) scene = NULL;

      case_random (&c);
      scene = case_scene (&c);
      assert_apart (scene);
    }
}

/* At the size of the reference picture nothing has to be left out. */
static void
test_all_labels_shown (void)
{
  static const SpelchLabelId ALWAYS[]
      = { SPELCH_LABEL_NEAR_FACE,   SPELCH_LABEL_FAR_FACE,    SPELCH_LABEL_FAR_REST,
          SPELCH_LABEL_SCALE,       SPELCH_LABEL_MOTOR,       SPELCH_LABEL_TURN_OVER,
          SPELCH_LABEL_LOWER_SHEAR, SPELCH_LABEL_UPPER_SHEAR, SPELCH_LABEL_FIRST_WINDOW,
          SPELCH_LABEL_LAST_WINDOW };
  g_auto (Case) c = { 0 };

  case_demo (&c);
  for (double depth = 1; depth < 17; depth += 0.25)
    {
      g_autoptr (SpelchScene) scene = NULL;

      c.cut.held.n_passes = 1;
      c.cut.held.passes[0] = spelch_length_mm (depth);
      case_plan (&c);
      scene = case_scene (&c);
      for (guint i = 0; i < G_N_ELEMENTS (ALWAYS); i++)
        if (scene->labels[ALWAYS[i]].layout == NULL)
          g_error ("label %d is missing at a depth of %.2f mm", ALWAYS[i], depth);
    }
}

/* Words of two windows that want the same place stand in the order of their depths. */
static void
assert_in_order (const SpelchScene *scene)
{
  const SpelchWindows *w = &scene->plan.windows;
  const SpelchRange *first = w->robust.first_pass.empty ? &w->nominal.first_pass : &w->robust.first_pass;
  const SpelchRange *last = w->robust.last_tip.empty ? &w->nominal.last_tip : &w->robust.last_tip;
  const SpelchLabel *of_first = &scene->labels[SPELCH_LABEL_FIRST_WINDOW];
  const SpelchLabel *of_last = &scene->labels[SPELCH_LABEL_LAST_WINDOW];
  if (of_first->layout == NULL || of_last->layout == NULL || fabs (last->from - first->from) < 0.01)
    return;
  double way = scene->frame.turn * (last->from - first->from);
  g_assert_cmpfloat ((of_last->box.y - of_first->box.y) * way, >, 0);
}

/* A board 19.1 mm thick whose first pass is clean from 17.2 mm on: beside the far face there is room for one
 * of the two only. */
static void
test_windows_in_order (void)
{
  g_auto (Case) demo = { 0 };
  g_autoptr (SpelchScene) scene = NULL;
  case_demo (&demo);
  for (double up = 4; up < 17; up += 0.25)
    {
      g_clear_pointer (&scene, spelch_scene_free);
      demo.bit.up_shear = spelch_length_mm (up);
      case_plan (&demo);
      scene = case_scene (&demo);
      assert_in_order (scene);
    }
  for (int round = 0; round < ROUNDS; round++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) any = NULL;
      case_random (&c);
      any = case_scene (&c);
      assert_in_order (any);
    }
}

static void
assert_clear_of (const SpelchScene *scene, SpelchRect line, const char *what)
{
  static const SpelchLabelId MOVED[]
      = { SPELCH_LABEL_TURN_OVER, SPELCH_LABEL_LOWER_SHEAR, SPELCH_LABEL_UPPER_SHEAR, SPELCH_LABEL_TABS };
  for (guint i = 0; i < G_N_ELEMENTS (MOVED); i++)
    {
      const SpelchLabel *label = &scene->labels[MOVED[i]];
      if (label->layout != NULL && spelch_rect_overlap (label->box, line))
        g_error ("“%s” stands across the %s in a picture of %.0f x %.0f, text %.2f, %s",
                 name_of (scene, MOVED[i]), what, scene->view.width, scene->view.height, scene->view.text,
                 scene->bit.id);
    }
}

/* Neither the end of a router's base or table runs through words about the bit, nor the lines that part a
 * shortened opening. */
static void
test_lines_kept_clear (void)
{
  for (int round = 0; round < ROUNDS; round++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) scene = NULL;
      case_random (&c);
      scene = case_scene (&c);
      const SpelchFrame *f = &scene->frame;
      double top = f->turn > 0 ? f->near_y - f->near_rest : f->near_y;
      if (f->near_rest > 0 && !scene->view.on_paper)
        for (int side = -1; side <= 1; side += 2)
          assert_clear_of (scene, (SpelchRect){ f->origin_x + side * f->throat, top, 0.01, f->near_rest },
                           "end of what lies on the board");
      if (!scene->view.on_paper)
        assert_clear_of (scene, spelch_scene_shortening (scene), "lines of the opening");
    }
}

/* The words of a drawing are those it shows: every label and mark that has a place, the rule's numbers beside
 * them, and none that a small picture leaves out. Drawn for eyes, they are gathered nowhere. */
static void
test_words_gathered (void)
{
  g_auto (Case) c = { 0 };
  case_demo (&c);
  c.view.with_marks = true;
  g_autoptr (SpelchScene) scene = case_scene (&c);
  g_autoptr (GString) words = g_string_new (NULL);
  spelch_scene_gather (scene, words);
  guint n = 0;
  for (guint i = 0; i < SPELCH_N_LABELS + scene->n_marks; i++)
    if (i >= SPELCH_N_LABELS || scene->labels[i].layout != NULL)
      {
        n++;
        g_assert_nonnull (strstr (words->str, name_of (scene, i)));
      }
  g_assert_cmpuint (n, >, 4);
  g_assert_nonnull (strstr (words->str, "up-shear"));
  g_assert_nonnull (strstr (words->str, "down-shear"));

  c.view.without_words = true;
  g_autoptr (SpelchScene) small = case_scene (&c);
  g_autoptr (GString) few = g_string_new (NULL);
  spelch_scene_gather (small, few);
  g_assert_null (strstr (few->str, "up-shear"));
  g_assert_cmpuint (few->len, <, words->len);

  gsize before = words->len;
  cairo_surface_t *image = layer_image (scene, SPELCH_LAYER_WORDS);
  cairo_surface_destroy (image);
  g_assert_cmpuint (words->len, ==, before);
}

/* Words of the two zones never stand the wrong way over one another, which would say the contrary. */
static void
test_zones_in_order (void)
{
  for (int round = 0; round < ROUNDS; round++)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) scene = NULL;
      case_random (&c);
      c.view.corner_unused = round % 2 == 0;
      scene = case_scene (&c);
      const SpelchLabel *lower = &scene->labels[SPELCH_LABEL_LOWER_SHEAR];
      const SpelchLabel *upper = &scene->labels[SPELCH_LABEL_UPPER_SHEAR];
      if (lower->layout != NULL && upper->layout != NULL)
        g_assert_cmpfloat ((upper->box.y - lower->box.y) * scene->frame.turn, <=, 0);
    }
}

/* Where a window's words have a place of their own above a low picture, the names of both faces find room. */
static void
test_faces_named (void)
{
  for (double height = 200; height < 400; height += 10)
    {
      g_auto (Case) c = { 0 };
      g_autoptr (SpelchScene) scene = NULL;
      case_demo (&c);
      c.view.width = 640;
      c.view.height = height;
      c.view.corner_unused = true;
      case_plan (&c);
      scene = case_scene (&c);
      g_assert_nonnull (scene->labels[SPELCH_LABEL_NEAR_FACE].layout);
      g_assert_nonnull (scene->labels[SPELCH_LABEL_FAR_FACE].layout);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scene/labels/never-overlap", test_labels_never_overlap);
  g_test_add_func ("/scene/labels/all-shown", test_all_labels_shown);
  g_test_add_func ("/scene/labels/windows-in-order", test_windows_in_order);
  g_test_add_func ("/scene/labels/lines-kept-clear", test_lines_kept_clear);
  g_test_add_func ("/scene/labels/words-gathered", test_words_gathered);
  g_test_add_func ("/scene/labels/zones-in-order", test_zones_in_order);
  g_test_add_func ("/scene/labels/faces-named", test_faces_named);
  return g_test_run ();
}

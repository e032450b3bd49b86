/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The side views of all exercises, asked and answered, in pictures from narrow to wide and in the language of
 * the program: words stand in lines of more than a word, off the lines of the faces and of what the board
 * lies on, off its ends, within the picture and apart; the chevrons stand on the board or off it, never
 * astride its end.
 */
#include "../language.h"

#include "drawing/exercise-picture.h"
#include "files/practice-data.h"
#include "scene-kit.h"
#include "files/shop-data.h"
#include "shop/change.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

static const double SIZES[][3]
    = { { 260, 340, 1 }, { 420, 340, 1 }, { 500, 340, 1 }, { 720, 480, 1 }, { 520, 480, 2 } };

/* The part as it is asked or answered, an open first pass at some depth. */
static void
take_posed (Case *c, const SpelchPosed *posed, bool asking)
{
  c->part = spelch_part_copy (posed->part);
  SpelchChange change = { .what = SPELCH_CHANGE_FIRST_PASS, .number = fmax (posed->depth_most * 0.4, 1) };
  if (posed->by_depth)
    spelch_change_apply (&change, c->part);
  c->cut = c->part->cuts[0];
  if (posed->exercise->asks == SPELCH_ASKS_BIT && posed->right >= 0)
    g_strlcpy (c->cut.bit, posed->choices[posed->right], sizeof c->cut.bit);
  c->bit = c->part->bits[spelch_part_find_bit (c->part, c->cut.bit)];
  c->view = (SpelchView){ .shown_pass = 1, .look = SPELCH_LOOK_LIGHT, .one_pass = true, .asking = asking };
  c->view.numbers = (SpelchNumbers){ SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };
  case_plan (c);
}

static void
complain (const SpelchScene *scene, const SpelchLabel *label, const char *what)
{
  g_error ("%s, %.0f wide, text %.1f: “%s” %s", scene->bit.id, scene->view.width, scene->view.text,
           pango_layout_get_text (label->layout), what);
}

static bool
crosses (SpelchRect r, double y, double from, double to)
{
  return r.y < y - 0.5 && r.y + r.height > y + 0.5 && r.x < to && r.x + r.width > from;
}

static void
check_lines (const SpelchScene *scene, const SpelchLabel *label, SpelchRect r)
{
  const SpelchFrame *f = &scene->frame;
  const double lines[]
      = { f->near_y, f->far_y, f->near_rest > 0 ? f->near_y - f->turn * f->near_rest : f->near_y,
          f->far_y + f->turn * f->backer, f->far_y + f->turn * (f->backer + f->far_rest) };
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    if (crosses (r, lines[i], f->board_left, f->board_right))
      complain (scene, label, i < 2 ? "covers a face" : "crosses the edge of what the board lies on");
  double top = MIN (f->near_y, f->far_y), bottom = MAX (f->near_y, f->far_y);
  for (int end = 0; end < 2; end++)
    {
      double x = end ? f->board_right : f->board_left;
      if (r.x < x - 0.5 && r.x + r.width > x + 0.5 && r.y < bottom && r.y + r.height > top)
        complain (scene, label, "covers the board's end");
    }
}

/* Lines may be as many as the words themselves ask for, and one more. */
static void
check_wrapped (const SpelchScene *scene, const SpelchLabel *label)
{
  int asked = 1;
  for (const char *at = pango_layout_get_text (label->layout); (at = strchr (at, '\n')) != NULL; at++)
    asked++;
  const char *words = pango_layout_get_text (label->layout);
  for (GSList *line = pango_layout_get_lines_readonly (label->layout); line != NULL; line = line->next)
    {
      int begins = ((PangoLayoutLine *)line->data)->start_index;
      if (begins > 0 && strchr (" \n-", words[begins - 1]) == NULL)
        complain (scene, label, "is broken within a word");
    }
  if (pango_layout_get_line_count (label->layout) > asked + 1)
    complain (scene, label, "is broken into single words");
}

static void
check_scene (const SpelchScene *scene)
{
  for (guint i = 0; i < SPELCH_N_LABELS; i++)
    {
      const SpelchLabel *label = &scene->labels[i];
      SpelchRect r = spelch_label_outer (label);
      bool note = i >= SPELCH_LABEL_FIRST_NOTE && i <= SPELCH_LABEL_LAST_NOTE;
      if (label->layout == NULL)
        continue;
      if (r.x < 0 || r.y < 0 || r.x + r.width > scene->view.width || r.y + r.height > scene->view.height)
        complain (scene, label, "leaves the picture");
      check_lines (scene, label, r);
      if (!note)
        check_wrapped (scene, label);
      for (guint j = 0; j < i; j++)
        if (scene->labels[j].layout != NULL && spelch_rect_overlap (label->box, scene->labels[j].box))
          complain (scene, label, "overlaps other words");
      for (guint j = 0; j < scene->n_marks; j++)
        if (spelch_rect_overlap (label->box, scene->marks[j].box))
          complain (scene, label, "overlaps a mark");
    }
  for (guint i = 0; i < scene->n_marks; i++)
    {
      SpelchRect r = scene->marks[i].box;
      g_assert_cmpfloat (r.x + r.width, <=, scene->view.width);
      for (guint j = 0; j < i; j++)
        g_assert_false (spelch_rect_overlap (r, scene->marks[j].box));
    }
}

static void
check_chevrons (const SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  SpelchRect r = scene->chevrons;
  double top = MIN (f->near_y, f->far_y), bottom = MAX (f->near_y, f->far_y);
  if (r.height <= 0 || r.y > bottom || r.y + r.height < top)
    return;
  g_assert_false (r.x < f->board_left && r.x + r.width > f->board_left);
  g_assert_cmpfloat (r.x, >=, 0);
}

/* Of the passes one is marked, clear of the board and its splinters where there is room. */
static void
check_marks (const SpelchScene *scene)
{
  guint passes = 0;
  for (guint i = 0; i < scene->n_marks; i++)
    {
      const SpelchMark *mark = &scene->marks[i];
      if (mark->kind == SPELCH_MARK_THICKNESS)
        continue;
      passes++;
      if (scene->view.width >= 400 * scene->view.text)
        g_assert_cmpfloat (mark->box.x, >, scene->frame.board_right);
    }
  g_assert_cmpuint (passes, ==, 1);
}

/* An edge that tears whatever the depth has no words of any depth beside it; an earlier cut shows in the
 * spoilboard. */
static void
check_told (const SpelchScene *scene, const SpelchPart *part)
{
  const SpelchEdge *motor = spelch_plan_worst (&scene->plan, SPELCH_SIDE_MOTOR);
  bool torn = motor != NULL && motor->grade >= 2,
       before = part->machine.spoilboard == SPELCH_SPOILBOARD_CUT_HERE_BEFORE;
  if (torn && scene->plan.windows.robust.first_pass.from < 0.05)
    g_assert_null (scene->labels[SPELCH_LABEL_FIRST_WINDOW].layout);
  if (part->machine.kind == SPELCH_MACHINE_GANTRY && scene->plan.through && scene->cut.backer.mm <= 0)
    g_assert_cmpint (spelch_scene_groove (scene).height > 0, ==, before);
}

static void
check_posed (const SpelchPosed *posed)
{
  for (guint s = 0; s < G_N_ELEMENTS (SIZES); s++)
    for (int asking = 0; asking < 2; asking++)
      {
        g_auto (Case) c = { 0 };
        take_posed (&c, posed, asking == 1);
        c.view.width = SIZES[s][0];
        c.view.height = SIZES[s][1];
        c.view.text = SIZES[s][2];
        if (c.plan.n_passes == 0)
          continue;
        g_autoptr (SpelchScene) scene = case_scene (&c);
        check_scene (scene);
        check_chevrons (scene);
        check_marks (scene);
        check_told (scene, c.part);
      }
}

static void
test_side_views (void)
{
  const GPtrArray *all = spelch_shop_exercises ();
  g_assert_cmpuint (all->len, >=, 45);
  for (guint i = 0; i < all->len; i++)
    for (int follow_up = 0; follow_up < 2; follow_up++)
      {
        g_autoptr (SpelchPosed) posed
            = spelch_posed_new (spelch_shop_constants (), all->pdata[i], 7, follow_up == 1);
        g_test_message ("%s", posed->exercise->id);
        check_posed (posed);
      }
}

/* Nothing of a question's picture is cut off: a picture with room around it has its ink where the other one
 * has, and none in the margin. */
static void
test_pictures (void)
{
  static const double WIDTHS[] = { 150, 260, 420, 720 };
  const GPtrArray *all = spelch_shop_exercises ();
  SpelchLettering *lettering = spelch_lettering_new (NULL, 1);
  for (guint i = 0; i < all->len; i++)
    for (guint w = 0; w < G_N_ELEMENTS (WIDTHS); w++)
      {
        g_autoptr (SpelchPosed) posed = spelch_posed_new (spelch_shop_constants (), all->pdata[i], 7, false);
        double width = WIDTHS[w], height = w == 0 ? 96 : width * 0.55;
        cairo_rectangle_t ink;
        cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
        cairo_t *cr = cairo_create (surface);
        spelch_exercise_picture_draw (cr, posed, width, height, SPELCH_LOOK_LIGHT, lettering);
        cairo_recording_surface_ink_extents (surface, &ink.x, &ink.y, &ink.width, &ink.height);
        if (ink.x < -0.01 || ink.y < -0.01 || ink.x + ink.width > width + 0.01
            || ink.y + ink.height > height + 0.01)
          g_error ("%s, %.0f x %.0f: drawn from %.1f, %.1f to %.1f, %.1f", posed->exercise->id, width, height,
                   ink.x, ink.y, ink.x + ink.width, ink.y + ink.height);
        cairo_destroy (cr);
        cairo_surface_destroy (surface);
      }
  spelch_lettering_unref (lettering);
}

int
main (int argc, char **argv)
{
  take_language ();
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exercise-scenes/side-views", test_side_views);
  g_test_add_func ("/exercise-scenes/pictures", test_pictures);
  return g_test_run ();
}

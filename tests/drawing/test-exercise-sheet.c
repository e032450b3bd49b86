/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exercise sheets: on either paper and for every exercise, in millimetres and inches, nothing is drawn nearer
 * to an edge than the margin, and a page holds more than one question.
 */
#include "drawing/exercise-sheet.h"
#include "files/practice-data.h"
#include "files/shop-data.h"

#include <cairo.h>

/* A line and the foot of a letter may stand over by this, pt. */
#define OVER 1.0

static GPtrArray *
pose_all (guint32 seed)
{
  const GPtrArray *exercises = spelch_shop_exercises ();
  GPtrArray *posed = g_ptr_array_new_with_free_func ((GDestroyNotify)spelch_posed_free);
  for (guint i = 0; i < exercises->len; i++)
    for (int follow_up = 0; follow_up < 2; follow_up++)
      g_ptr_array_add (
          posed, spelch_posed_new (spelch_shop_constants (), exercises->pdata[i], seed, follow_up == 1));
  return posed;
}

static SpelchExerciseSheet
sheet_of (SpelchPaper paper, bool answers)
{
  static const char *const english[] = { "en", NULL };
  return (SpelchExerciseSheet){ .paper = paper,
                                .answers = answers,
                                .seed = 5,
                                .numbers = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' },
                                .languages = english,
                                .source = spelch_shop_constant_source };
}

/* Draws all pages one over the other and gives what they cover. */
static guint
draw (const SpelchExerciseSheet *sheet, SpelchPosed *const *posed, guint n, cairo_rectangle_t *ink)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  guint pages = spelch_exercise_sheet_draw (cr, sheet, posed, n);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_recording_surface_ink_extents (surface, &ink->x, &ink->y, &ink->width, &ink->height);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return pages;
}

static void
test_margins (void)
{
  g_autoptr (GPtrArray) posed = pose_all (5);
  for (int paper = SPELCH_PAPER_A4; paper <= SPELCH_PAPER_LETTER; paper++)
    for (int answers = 0; answers < 2; answers++)
      {
        SpelchExerciseSheet sheet = sheet_of ((SpelchPaper)paper, answers == 1);
        cairo_rectangle_t ink;
        double width, height;
        spelch_paper_size (sheet.paper, &width, &height);
        guint pages = draw (&sheet, (SpelchPosed *const *)posed->pdata, posed->len, &ink);
        g_test_message ("%u pages: %.1f %.1f %.1f %.1f", pages, ink.x, ink.y, ink.x + ink.width,
                        ink.y + ink.height);
        g_assert_cmpfloat (ink.x, >=, SPELCH_SHEET_MARGIN - OVER);
        g_assert_cmpfloat (ink.y, >=, SPELCH_SHEET_MARGIN - OVER);
        g_assert_cmpfloat (ink.x + ink.width, <=, width - SPELCH_SHEET_MARGIN + OVER);
        g_assert_cmpfloat (ink.y + ink.height, <=, height - SPELCH_SHEET_MARGIN + OVER);
        g_assert_cmpuint (pages, >, 1);
        g_assert_cmpuint (pages, <, posed->len / 2);
      }
}

/* Every question fits on a page by itself, so none is cut off at the foot of one. */
static void
test_each_fits (void)
{
  g_autoptr (GPtrArray) posed = pose_all (6);
  for (guint i = 0; i < posed->len; i += 2)
    for (int answers = 0; answers < 2; answers++)
      {
        SpelchExerciseSheet sheet = sheet_of (SPELCH_PAPER_LETTER, answers == 1);
        cairo_rectangle_t ink;
        sheet.numbers.unit = SPELCH_UNIT_INCH;
        g_assert_cmpuint (draw (&sheet, (SpelchPosed *const *)posed->pdata + i, 2, &ink), ==, 1);
        g_assert_cmpfloat (ink.y + ink.height, <=, 792 - SPELCH_SHEET_MARGIN + OVER);
      }
}

static void
test_paper (void)
{
  double width, height;
  spelch_paper_size (SPELCH_PAPER_A4, &width, &height);
  g_assert_cmpfloat_with_epsilon (width, 210 / 25.4 * 72, 0.01);
  g_assert_cmpfloat_with_epsilon (height, 297 / 25.4 * 72, 0.01);
  spelch_paper_size (SPELCH_PAPER_LETTER, &width, &height);
  g_assert_cmpfloat (width, ==, 8.5 * 72);
  g_assert_cmpfloat (height, ==, 11 * 72);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exercise-sheet/margins", test_margins);
  g_test_add_func ("/exercise-sheet/each-fits", test_each_fits);
  g_test_add_func ("/exercise-sheet/paper", test_paper);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exercise sheets: on either paper and for every exercise, in millimetres and inches, nothing is drawn nearer
 * to an edge than the margin, and a page holds more than one question.
 */
#include "drawing/exercise-sheet.h"
#include "files/practice-data.h"
#include "files/shop-data.h"

#include <cairo.h>
#include <string.h>

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
                                .languages = english };
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

/* On an image nothing is cleared between pages. */
static cairo_surface_t *
image_of (SpelchExerciseSheet sheet, const GPtrArray *posed, guint first, guint last)
{
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, 595, 842);
  cairo_t *cr = cairo_create (image);
  for (sheet.only = first; sheet.only <= last; sheet.only++)
    spelch_exercise_sheet_draw (cr, &sheet, (SpelchPosed *const *)posed->pdata, posed->len);
  cairo_destroy (cr);
  cairo_surface_flush (image);
  return image;
}

static bool
same_image (cairo_surface_t *a, cairo_surface_t *b)
{
  gsize size = (gsize)cairo_image_surface_get_stride (a) * (gsize)cairo_image_surface_get_height (a);
  return memcmp (cairo_image_surface_get_data (a), cairo_image_surface_get_data (b), size) == 0;
}

/* A printer asks for page by page: all of them come to the whole, and no two are alike. */
static void
test_page_by_page (void)
{
  g_autoptr (GPtrArray) posed = pose_all (7);
  SpelchExerciseSheet sheet = sheet_of (SPELCH_PAPER_A4, false);
  guint in_pdf = 0;
  g_autoptr (GBytes) pdf
      = spelch_exercise_sheet_pdf (&sheet, (SpelchPosed *const *)posed->pdata, posed->len, &in_pdf);
  sheet.only = SPELCH_SHEET_COUNT;
  guint pages = spelch_exercise_sheet_draw (NULL, &sheet, (SpelchPosed *const *)posed->pdata, posed->len);
  g_assert_cmpuint (pages, ==, in_pdf);
  g_assert_true (memcmp (g_bytes_get_data (pdf, NULL), "%PDF", 4) == 0);
  cairo_surface_t *whole = image_of (sheet, posed, 0, 0), *one_by_one = image_of (sheet, posed, 1, pages);
  cairo_surface_t *first = image_of (sheet, posed, 1, 1), *second = image_of (sheet, posed, 2, 2);
  g_assert_true (same_image (whole, one_by_one));
  g_assert_false (same_image (first, second));
  g_assert_false (same_image (first, whole));
  cairo_surface_destroy (whole);
  cairo_surface_destroy (one_by_one);
  cairo_surface_destroy (first);
  cairo_surface_destroy (second);
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
  g_test_add_func ("/exercise-sheet/page-by-page", test_page_by_page);
  g_test_add_func ("/exercise-sheet/paper", test_paper);
  return g_test_run ();
}

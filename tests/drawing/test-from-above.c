/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The work from above: to scale, tabs where the rule sets them out, the bit going round and turning the way
 * it does on the machine, and words that stand clear of the drawing and of one another at any size.
 */
#include "drawing/from-above.h"
#include "drawing/exercise-picture.h"
#include "drawing/labels.h"
#include "files/practice-data.h"
#include "files/shop-data.h"
#include "plan/posed.h"

#include <math.h>
#include <string.h>

typedef struct
{
  SpelchPart *part;
  SpelchPlan plan;
  SpelchLettering *lettering;
} Work;

static void
work_clear (Work *work)
{
  g_clear_pointer (&work->part, spelch_part_unref);
  g_clear_pointer (&work->lettering, spelch_lettering_unref);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Work, work_clear)

static SpelchPosed *
pose (const char *id, bool follow_up)
{
  const GPtrArray *all = spelch_shop_exercises ();
  for (guint i = 0; i < all->len; i++)
    if (g_str_equal (((SpelchExercise *)all->pdata[i])->id, id))
      return spelch_posed_new (spelch_shop_constants (), all->pdata[i], 3, follow_up);
  g_error ("no exercise is called %s", id);
}

/* The part of an exercise, to be changed. */
static Work
work_of (const char *id)
{
  g_autoptr (SpelchPosed) posed = pose (id, false);
  return (Work){ .part = spelch_part_copy (posed->part), .lettering = spelch_lettering_new (NULL, 1) };
}

static SpelchFromAbove *
look (Work *work, double width, double height, double size)
{
  const SpelchCut *cut = &work->part->cuts[0];
  const SpelchBit *bit = &work->part->bits[spelch_part_find_bit (work->part, cut->bit)];
  SpelchNumbers numbers = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };
  spelch_plan_make (spelch_shop_constants (), work->part, cut, bit, &work->plan);
  return spelch_from_above_new (work->part, cut, bit, &work->plan, (SpelchRect){ 0, 0, width, height }, size,
                                &numbers, work->lettering, spelch_palette (SPELCH_LOOK_PAPER));
}

static void
assert_tab (const SpelchFromAbove *f, guint i, double across, double up)
{
  double x, y;
  g_assert_true (spelch_from_above_tab (f, i, &x, &y));
  g_assert_cmpfloat_with_epsilon (x, across, 0.01);
  g_assert_cmpfloat_with_epsilon (y, up, 0.01);
}

/* By hand: a piece of 120 x 80 with a bit of 6 mm. Each tab goes to the side with the fewest for its length,
 * so the first two to the long sides, the third to a short one, each in its middle; the bit's middle runs 3
 * mm outside. Conventional with a motor above is against the clock round a piece. */
static void
test_tabs (void)
{
  g_auto (Work) work = work_of ("hold-tabs");
  double x, y;
  SpelchBit *bit = &work.part->bits[0];
  bit->diameter = spelch_length_mm (6);
  work.part->cuts[0].tabs.count = 3;
  g_autoptr (SpelchFromAbove) f = look (&work, 500, 260, 12);
  assert_tab (f, 0, 60, -3);
  assert_tab (f, 1, 123, 40);
  assert_tab (f, 2, 60, 83);
  g_assert_false (spelch_from_above_tab (f, 3, &x, &y));
  /* At the right front corner, from where it goes up the right side. */
  g_assert_cmpfloat_with_epsilon (fabs (remainder (spelch_from_above_feed (f), 90)), 0, 0.01);

  /* The right wall kept is climb: with the clock, from the right front corner to the left. */
  work.part->cuts[0].kept = SPELCH_WALL_RIGHT;
  g_autoptr (SpelchFromAbove) climb = look (&work, 500, 260, 12);
  assert_tab (climb, 0, 60, -3);
  assert_tab (climb, 1, -3, 40);
  g_assert_cmpfloat_with_epsilon (fabs (spelch_from_above_feed (climb)), 180, 0.01);

  work.part->cuts[0].tabs.count = 0;
  g_autoptr (SpelchFromAbove) none = look (&work, 500, 260, 12);
  g_assert_false (spelch_from_above_tab (none, 0, &x, &y));
}

/* What was measured on the page over what it stands for is the same both ways. */
static void
test_scale (void)
{
  static const char *const IDS[]
      = { "hold-tabs", "hold-side", "hold-clamps", "hold-tilts", "hold-router-table" };
  for (guint i = 0; i < G_N_ELEMENTS (IDS); i++)
    {
      g_auto (Work) work = work_of (IDS[i]);
      g_autoptr (SpelchFromAbove) f = look (&work, 500, 260, 12);
      double length, width, x0, y0, x1, y1;
      spelch_from_above_piece (f, &length, &width);
      spelch_from_above_place (f, 0, 0, &x0, &y0);
      spelch_from_above_place (f, length, width, &x1, &y1);
      g_assert_cmpfloat_with_epsilon (length, work.part->length.mm, 1e-9);
      g_assert_cmpfloat_with_epsilon (width, work.part->width.mm, 1e-9);
      g_assert_cmpfloat (x1, >, x0 + 50);
      g_assert_cmpfloat_with_epsilon ((x1 - x0) / length, (y0 - y1) / width, 1e-9);
    }
}

static const char *
words_of (const SpelchFromAbove *f, SpelchFromAboveKind kind)
{
  SpelchRect rect;
  const char *words;
  double x, y;
  return spelch_from_above_label (f, kind, &rect, &words, &x, &y) ? words : NULL;
}

/* A right-hand bit turns with the clock under a motor above, and seen from above against it on a table, where
 * the board is pushed from the right to the left past the fence. */
static void
test_turn (void)
{
  g_auto (Work) above = work_of ("hold-clamps");
  g_auto (Work) table = work_of ("hold-router-table");
  g_autoptr (SpelchFromAbove) f = look (&above, 500, 260, 12);
  g_autoptr (SpelchFromAbove) t = look (&table, 500, 260, 12);
  g_assert_cmpstr (words_of (f, SPELCH_FROM_ABOVE_TURN), ==, "the bit turns with the clock");
  g_assert_cmpstr (words_of (t, SPELCH_FROM_ABOVE_TURN), ==, "the bit turns against the clock");
  g_assert_cmpfloat_with_epsilon (fabs (spelch_from_above_feed (t)), 180, 0.01);
  g_assert_cmpfloat_with_epsilon (spelch_from_above_feed (f), 90, 0.01); /* across the board's length */
  g_assert_cmpstr (words_of (f, SPELCH_FROM_ABOVE_HOLD), ==, "clamps: one drawn for all");
  g_assert_null (words_of (f, SPELCH_FROM_ABOVE_WASTE)); /* a groove leaves none */
  g_assert_null (words_of (f, SPELCH_FROM_ABOVE_FENCE));
  g_assert_nonnull (words_of (t, SPELCH_FROM_ABOVE_FENCE));
  g_autofree char *told = spelch_from_above_describe (f);
  g_assert_nonnull (strstr (told, "clamps"));
}

/* What is left of a field of vacuum is a corner; a large one lies amid the piece. */
static void
test_corner (void)
{
  g_auto (Work) work = work_of ("hold-side");
  double areas[] = { 3000, 150000 }, x, y, left, right, front, back;
  for (guint i = 0; i < G_N_ELEMENTS (areas); i++)
    {
      SpelchRect rect;
      const char *words;
      work.part->holding.area_mm2 = areas[i];
      g_autoptr (SpelchFromAbove) f = look (&work, 500, 260, 12);
      spelch_from_above_place (f, 0, 0, &left, &front);
      spelch_from_above_place (f, work.part->length.mm, work.part->width.mm, &right, &back);
      g_assert_true (spelch_from_above_label (f, SPELCH_FROM_ABOVE_HOLD, &rect, &words, &x, &y));
      g_assert_cmpfloat (x, >, left + (right - left) * 0.7);
      /* The label names its front right: high up in the corner, low down where it lies in the middle. */
      if (i == 0)
        g_assert_cmpfloat (y, <, (front + back) / 2);
      else
        g_assert_cmpfloat (y, >, (front + back) / 2);
    }
}

/* Where the grain of solid wood decides, a question shows how the fibres lie, and nothing of what holds it.
 */
static void
test_grain (void)
{
  SpelchNumbers numbers = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };
  g_autoptr (SpelchPosed) oak = pose ("tears-oak-grain", false);
  g_autoptr (SpelchPosed) mdf = pose ("tears-mdf-up-cut", false);
  g_assert_true (spelch_exercise_picture_has_above (oak));
  g_assert_false (spelch_exercise_picture_has_above (mdf));
  g_autofree char *told = spelch_exercise_picture_describe_above (oak, &numbers);
  g_assert_nonnull (strstr (told, "fibres"));
  g_assert_null (strstr (told, "vacuum"));
}

static SpelchRect
ink_of (const SpelchFromAbove *f)
{
  SpelchRect ink;
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (surface);
  spelch_from_above_draw (f, cr);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_recording_surface_ink_extents (surface, &ink.x, &ink.y, &ink.width, &ink.height);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return ink;
}

static void
assert_laid (const SpelchFromAbove *f, const char *id, double width, double height)
{
  SpelchRect rects[SPELCH_N_FROM_ABOVES], drawing = spelch_from_above_drawing (f), ink = ink_of (f);
  guint n = 0;
  for (int i = 0; i < SPELCH_N_FROM_ABOVES; i++)
    {
      const char *words;
      double x, y;
      if (!spelch_from_above_label (f, (SpelchFromAboveKind)i, &rects[n], &words, &x, &y))
        continue;
      if (spelch_rect_overlap (rects[n], drawing))
        g_error ("%s, %.0f x %.0f: “%s” stands on the drawing", id, width, height, words);
      for (guint j = 0; j < n; j++)
        if (spelch_rect_overlap (rects[n], rects[j]))
          g_error ("%s, %.0f x %.0f: “%s” overlaps", id, width, height, words);
      if (!spelch_rect_overlap ((SpelchRect){ x, y, 0.01, 0.01 }, drawing))
        g_error ("%s, %.0f x %.0f: “%s” names nothing in the drawing", id, width, height, words);
      n++;
    }
  if (ink.x < -1 || ink.y < -1 || ink.x + ink.width > width + 1 || ink.y + ink.height > height + 1)
    g_error ("%s: drawn to %.1f %.1f %.1f %.1f in %.0f x %.0f", id, ink.x, ink.y, ink.x + ink.width,
             ink.y + ink.height, width, height);
}

static void
test_words (void)
{
  static const double SIZES[][3]
      = { { 500, 260, 12 }, { 400, 240, 12 }, { 260, 200, 12 }, { 420, 480, 24 }, { 150, 112, 6.6 } };
  const GPtrArray *all = spelch_shop_exercises ();
  guint n = 0;
  for (guint i = 0; i < all->len; i++)
    {
      const SpelchExercise *exercise = all->pdata[i];
      g_auto (Work) work = work_of (exercise->id);
      if (spelch_part_find_bit (work.part, work.part->cuts[0].bit) < 0)
        continue; /* a bit is asked for */
      for (guint s = 0; s < G_N_ELEMENTS (SIZES); s++, n++)
        {
          g_autoptr (SpelchFromAbove) f = look (&work, SIZES[s][0], SIZES[s][1], SIZES[s][2]);
          assert_laid (f, exercise->id, SIZES[s][0], SIZES[s][1]);
        }
    }
  g_assert_cmpuint (n, >, 100);
}

/* Every kind of cut, each with a motor above and below. */
static void
test_kinds (void)
{
  for (int kind = SPELCH_CUT_OUTLINE; kind <= SPELCH_CUT_HOLE; kind++)
    for (int hold = SPELCH_HOLD_UNTOLD; hold <= SPELCH_HOLD_HANDS; hold++)
      for (int table = 0; table < 2; table++)
        {
          g_auto (Work) work = work_of (table ? "hold-router-table" : "hold-clamps");
          SpelchCut *cut = &work.part->cuts[0];
          cut->kind = (SpelchCutKind)kind;
          cut->width = spelch_length_mm (kind == SPELCH_CUT_OUTLINE ? 0 : 20);
          cut->every_direction = kind == SPELCH_CUT_TRIM && hold == SPELCH_HOLD_SCREWS;
          work.part->holding.method = (SpelchHold)hold;
          g_autoptr (SpelchFromAbove) f = look (&work, 400, 240, 12);
          assert_laid (f, spelch_code_of (&SPELCH_CUT_KIND_CODES, kind), 400, 240);
        }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/from-above/tabs", test_tabs);
  g_test_add_func ("/from-above/scale", test_scale);
  g_test_add_func ("/from-above/turn", test_turn);
  g_test_add_func ("/from-above/corner", test_corner);
  g_test_add_func ("/from-above/grain", test_grain);
  g_test_add_func ("/from-above/words", test_words);
  g_test_add_func ("/from-above/kinds", test_kinds);
  return g_test_run ();
}

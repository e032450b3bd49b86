/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The chart of grades by depth of the first pass: where its lines run and turn, what is shaded and marked, by
 * the scan and by the clean window that the plan works out in another way.
 */
#include "scene-kit.h"

#include "drawing/grade-chart.h"
#include "files/shop-data.h"
#include "plan/words-compare.h"

#include <math.h>
#include <string.h>

typedef struct
{
  SpelchBit bit;
  GArray *columns;
  SpelchScan scan;
  SpelchView view;
  SpelchGradeChart *chart;
} Chart;

static void
chart_make (Chart *made, Case *c, const char *id)
{
  case_take_bit (c, id);
  made->bit = c->bit;
  const SpelchBit *bits[] = { &made->bit, &made->bit };
  made->columns = spelch_compare (spelch_shop_constants (), c->part, &c->cut, bits, 2, false);
  const SpelchCompared *one = &g_array_index (made->columns, SpelchCompared, 0);
  made->scan = spelch_compare_scan (spelch_shop_constants (), c->part, one);
  made->view = (SpelchView){ .width = 280, .height = 128, .text = 1, .numbers = { .decimal_sign = '.' } };
  made->chart = spelch_grade_chart_new (one, &made->scan, &made->view);
}

static void
chart_clear (Chart *made)
{
  spelch_grade_chart_free (made->chart);
  g_array_unref (made->columns);
}

static const SpelchPlan *
plan_of (const Chart *made)
{
  return &g_array_index (made->columns, SpelchCompared, 0).plan;
}

/* The line's height where the depth is @mm: its own place in the pictures is kept apart by less than a
 * quarter of a grade. */
static double
grade_at (const Chart *made, SpelchSide side, double mm)
{
  guint n;
  const SpelchChartPoint *line = spelch_grade_chart_line (made->chart, side, &n);
  double x = spelch_grade_chart_x (made->chart, mm), y = line[0].y;
  for (guint i = 1; i < n; i++)
    if (line[i - 1].x <= x + 1e-9 && x <= line[i].x + 1e-9 && line[i - 1].y == line[i].y)
      y = line[i].y;
  double one = spelch_grade_chart_y (made->chart, 2) - spelch_grade_chart_y (made->chart, 1);
  return 1 + (y - spelch_grade_chart_y (made->chart, 1)) / one;
}

static void
test_axes (void)
{
  g_auto (Case) c;
  Chart made;
  case_demo (&c);
  chart_make (&made, &c, "compression-6.35x22");
  SpelchRect plot = spelch_grade_chart_plot (made.chart);
  double deepest = plan_of (&made)->passes[plan_of (&made)->n_passes - 1].tip_mm;
  g_assert_cmpfloat_with_epsilon (spelch_grade_chart_x (made.chart, 0), plot.x, 1e-9);
  g_assert_cmpfloat_with_epsilon (spelch_grade_chart_x (made.chart, deepest), plot.x + plot.width, 1e-9);
  g_assert_cmpfloat_with_epsilon (spelch_grade_chart_x (made.chart, deepest / 4), plot.x + plot.width / 4,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (spelch_grade_chart_y (made.chart, 1), plot.y, 1e-9);
  g_assert_cmpfloat_with_epsilon (spelch_grade_chart_y (made.chart, 5), plot.y + plot.height, 1e-9);
  g_assert_cmpfloat (plot.x, >, 30); /* the words at the axis */
  g_assert_cmpfloat (plot.x + plot.width, <=, made.view.width);
  g_assert_cmpfloat (plot.y + plot.height, <=, made.view.height - 30); /* depths and names below */
  g_assert_cmpfloat (plot.width, >, made.view.width / 2);
  chart_clear (&made);
}

/* Every depth that was tried stands at its own grade on either line. */
static void
test_lines (void)
{
  static const char *const IDS[]
      = { "compression-6.35x22", "down-cut-6.35x25", "up-cut-6.35x25", "straight-6.35x25" };
  for (guint b = 0; b < G_N_ELEMENTS (IDS); b++)
    {
      g_auto (Case) c;
      Chart made;
      case_demo (&c);
      chart_make (&made, &c, IDS[b]);
      g_assert_cmpuint (made.scan.n, >, 20);
      for (guint i = 0; i < made.scan.n; i++)
        {
          double mm = made.scan.step_mm * (i + 1);
          bool turns = (i > 0 && made.scan.motor[i] > made.scan.motor[i - 1])
                       || (i + 1 < made.scan.n && made.scan.motor[i + 1] < made.scan.motor[i]);
          if (!turns)
            g_assert_cmpfloat_with_epsilon (grade_at (&made, SPELCH_SIDE_MOTOR, mm), made.scan.motor[i],
                                            0.25);
          g_assert_cmpfloat_with_epsilon (grade_at (&made, SPELCH_SIDE_FAR, mm), made.scan.far[i], 0.25);
        }
      chart_clear (&made);
    }
}

/* A line goes down before the depth at which the face is worse and up only at the depth at which it is
 * better; the demo's compression bit turns clean once the motor side's window opens, which the plan works out
 * from the turn-over's height. */
static void
test_turn (void)
{
  g_auto (Case) c;
  Chart made;
  guint n;
  double from, to;
  case_demo (&c);
  chart_make (&made, &c, "compression-6.35x22");
  const SpelchWindow *window = &plan_of (&made)->windows.nominal;
  g_assert_true (spelch_grade_chart_clean (made.chart, &from, &to));
  g_assert_cmpfloat (from, >=, window->first_pass.from - 1e-6);
  g_assert_cmpfloat (from, <, window->first_pass.from + 0.01 + 1e-6);
  g_autofree char *said
      = spelch_words_scan (&g_array_index (made.columns, SpelchCompared, 0), &made.scan, &made.view.numbers);
  g_autofree char *depth = spelch_words_at_least (&made.view.numbers, window->first_pass.from);
  g_assert_nonnull (strstr (said, depth)); /* to the tenth, as the reasons tell it */
  g_assert_cmpfloat (to, <=, made.scan.n * made.scan.step_mm + 1e-9);
  const SpelchChartPoint *line = spelch_grade_chart_line (made.chart, SPELCH_SIDE_MOTOR, &n);
  double clean = spelch_grade_chart_x (made.chart, from);
  bool rises_there = false;
  for (guint i = 1; i < n; i++)
    {
      g_assert_cmpfloat (line[i].x, >=, line[i - 1].x);
      g_assert_true (line[i].x == line[i - 1].x || line[i].y == line[i - 1].y);
      rises_there |= fabs (line[i].x - clean) < 1e-9 && line[i].y < line[i - 1].y;
    }
  g_assert_true (rises_there);
  chart_clear (&made);
}

/* An up-cut pulls the motor-side veneer out at any depth: nothing is shaded. A blind cut opens one face. */
static void
test_none (void)
{
  g_auto (Case) c;
  Chart made;
  double from, to;
  guint n;
  case_demo (&c);
  chart_make (&made, &c, "up-cut-6.35x25");
  g_assert_false (spelch_grade_chart_clean (made.chart, &from, &to));
  chart_clear (&made);
  int dado = spelch_part_find_cut (c.part, "shelf-dado");
  g_assert_cmpint (dado, >=, 0);
  c.cut = c.part->cuts[dado];
  chart_make (&made, &c, "down-cut-6.35x25");
  g_assert_nonnull (spelch_grade_chart_line (made.chart, SPELCH_SIDE_MOTOR, &n));
  g_assert_null (spelch_grade_chart_line (made.chart, SPELCH_SIDE_FAR, &n));
  g_assert_cmpuint (n, ==, 0);
  chart_clear (&made);
}

/* The sentence says the same. */
static void
test_words (void)
{
  const SpelchNumbers numbers = { .decimal_sign = '.' };
  SpelchCompared one = { 0 };
  SpelchScan scan = { .step_mm = 0.5, .n = 8 };
  const guint8 motor[] = { 4, 4, 4, 4, 1, 1, 1, 1 }, far[] = { 1, 1, 1, 1, 1, 1, 1, 1 };
  one.cut.seen_a = true;
  memcpy (scan.motor, motor, sizeof motor);
  memcpy (scan.far, far, sizeof far);
  g_autofree char *words = spelch_words_scan (&one, &scan, &numbers);
  g_assert_cmpstr (words, ==, "Show face: clean from 2.5 mm. Hidden face: clean at every depth.");
  scan.motor[1] = 1;
  g_autofree char *twice = spelch_words_scan (&one, &scan, &numbers);
  g_assert_cmpstr (twice, ==,
                   "Show face: clean at 1.0 mm and from 2.5 mm. Hidden face: clean at every depth.");
  for (guint i = 0; i < scan.n; i++)
    {
      scan.motor[i] = i < 3 ? 3 : 5;
      scan.far[i] = 0;
    }
  g_autofree char *never = spelch_words_scan (&one, &scan, &numbers);
  g_assert_cmpstr (never, ==, "Show face: at best fuzzy grain, up to 1.5 mm.");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/grade-chart/axes", test_axes);
  g_test_add_func ("/grade-chart/lines", test_lines);
  g_test_add_func ("/grade-chart/turn", test_turn);
  g_test_add_func ("/grade-chart/none", test_none);
  g_test_add_func ("/grade-chart/words", test_words);
  return g_test_run ();
}

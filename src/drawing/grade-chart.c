/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/grade-chart.h"

#include "plan/words-compare.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define SIZE    11.0 /* of words, before the view's text */
#define LINE    2.0
#define APART   1.7 /* of the line's own place, so that two at one grade are both seen */
#define GAP     5.0
#define SAMPLE  24.0 /* of a line, beside its name */
#define DOT     3.4
#define MARK    4.5
#define HEIGHT  118.0
#define N_SIDES 2

struct _SpelchGradeChart
{
  SpelchView view;
  const SpelchPalette *palette;
  SpelchLettering *lettering;
  SpelchScan scan;
  char *best, *worst; /* words at the axis */
  char *names[N_SIDES];
  guint n_points[N_SIDES];
  SpelchChartPoint *points[N_SIDES];
  int planned_grades[N_SIDES];
  double planned_mm, deepest_mm;
  guint clean_from, clean_to; /* indices; alike: none */
  SpelchRect plot;
  double gutter;    /* of the words at the axis */
  bool names_below; /* one another */
};

/* ---- Words ---- */

static PangoLayout *
set_words (const SpelchGradeChart *chart, const char *words, bool strong, double wrap, double *width,
           double *height)
{
  PangoLayout *layout
      = spelch_lettering_set (chart->lettering, words, SIZE,
                              strong ? SPELCH_LETTERS_STRONG : SPELCH_LETTERS_PLAIN, wrap, PANGO_ALIGN_LEFT);
  spelch_lettering_measure (layout, width, height);
  return layout;
}

static double
width_of (const SpelchGradeChart *chart, const char *words)
{
  double width, height;
  g_autoptr (PangoLayout) layout = set_words (chart, words, false, 0, &width, &height);
  return width;
}

static double
line_height (const SpelchGradeChart *chart)
{
  double width, height;
  g_autoptr (PangoLayout) layout = set_words (chart, "Mg", false, 0, &width, &height);
  return height;
}

static double
write_words (const SpelchGradeChart *chart, cairo_t *cr, const char *words, bool strong, double x, double y)
{
  double width, height;
  g_autoptr (PangoLayout) layout = set_words (chart, words, strong, 0, &width, &height);
  spelch_lettering_draw (cr, layout, x, y, strong ? &chart->palette->ink : &chart->palette->ink_soft);
  return width;
}

/* ---- Geometry ---- */

double
spelch_grade_chart_x (const SpelchGradeChart *chart, double depth_mm)
{
  return chart->plot.x + chart->plot.width * depth_mm / fmax (chart->deepest_mm, 1e-3);
}

double
spelch_grade_chart_y (const SpelchGradeChart *chart, double grade)
{
  return chart->plot.y + chart->plot.height * (grade - 1) / 4;
}

SpelchRect
spelch_grade_chart_plot (const SpelchGradeChart *chart)
{
  return chart->plot;
}

static const guint8 *
grades_of (const SpelchGradeChart *chart, int side)
{
  return side == SPELCH_SIDE_MOTOR ? chart->scan.motor : chart->scan.far;
}

static bool
is_cut (const SpelchGradeChart *chart, int side)
{
  return chart->scan.n > 0 && grades_of (chart, side)[0] > 0;
}

static void
add_point (SpelchGradeChart *chart, int side, double depth_mm, int grade)
{
  double apart = side == SPELCH_SIDE_MOTOR ? -APART : APART;
  chart->points[side][chart->n_points[side]++]
      = (SpelchChartPoint){ spelch_grade_chart_x (chart, depth_mm),
                            spelch_grade_chart_y (chart, grade) + apart };
}

static void
make_line (SpelchGradeChart *chart, int side)
{
  const guint8 *grades = grades_of (chart, side);
  chart->points[side] = g_new (SpelchChartPoint, 2 * chart->scan.n + 2);
  add_point (chart, side, chart->scan.step_mm, grades[0]);
  for (guint i = 1; i < chart->scan.n; i++)
    {
      /* the worse grade holds in between */
      double turn = grades[i] < grades[i - 1] ? spelch_scan_from (&chart->scan, i)
                                              : spelch_scan_to (&chart->scan, i - 1);
      if (grades[i] == grades[i - 1])
        continue;
      add_point (chart, side, turn, grades[i - 1]);
      add_point (chart, side, turn, grades[i]);
    }
  add_point (chart, side, chart->scan.n * chart->scan.step_mm, grades[chart->scan.n - 1]);
}

const SpelchChartPoint *
spelch_grade_chart_line (const SpelchGradeChart *chart, SpelchSide side, guint *n)
{
  *n = chart->n_points[side];
  return chart->points[side];
}

static bool
is_clean (const SpelchGradeChart *chart, guint i)
{
  bool any = false;
  for (int side = 0; side < N_SIDES; side++)
    {
      if (is_cut (chart, side) && grades_of (chart, side)[i] != 1)
        return false;
      any |= is_cut (chart, side);
    }
  return any;
}

static void
find_clean (SpelchGradeChart *chart)
{
  for (guint from = 0, to; from < chart->scan.n; from = MAX (to, from + 1))
    {
      for (to = from; to < chart->scan.n && is_clean (chart, to); to++)
        ;
      if (to - from > chart->clean_to - chart->clean_from)
        {
          chart->clean_from = from;
          chart->clean_to = to;
        }
    }
}

bool
spelch_grade_chart_clean (const SpelchGradeChart *chart, double *from, double *to)
{
  bool any = chart->clean_to > chart->clean_from;
  *from = any ? spelch_scan_from (&chart->scan, chart->clean_from) : 0;
  *to = any ? spelch_scan_to (&chart->scan, chart->clean_to - 1) : 0;
  return any;
}

double
spelch_grade_chart_height (double text)
{
  return HEIGHT * text;
}

/* ---- Laying out ---- */

/* The words at the axis stand a word to a line where that makes more room for the lines. */
static double
widest_word (const SpelchGradeChart *chart)
{
  g_autofree char *both = g_strconcat (chart->best, " ", chart->worst, NULL);
  g_auto (GStrv) words = g_strsplit (both, " ", -1);
  double widest = 0;
  for (guint i = 0; words[i] != NULL; i++)
    widest = fmax (widest, width_of (chart, words[i]));
  return widest;
}

static void
lay_out (SpelchGradeChart *chart)
{
  double text = chart->view.text, high = line_height (chart), names = 0;
  chart->gutter = widest_word (chart) + 1;
  for (int side = 0; side < N_SIDES; side++)
    if (is_cut (chart, side))
      names += SAMPLE * text + GAP + width_of (chart, chart->names[side]) + 3 * GAP;
  chart->plot.x = chart->gutter + 2 * GAP;
  chart->plot.width = fmax (chart->view.width - chart->plot.x - 2 * GAP, 10);
  chart->names_below = names > chart->view.width - chart->plot.x;
  chart->plot.y = high + GAP;
  chart->plot.height
      = fmax (chart->view.height - chart->plot.y - (chart->names_below ? 3 : 2) * high - 5 * GAP, 10);
}

static void
take_words (SpelchGradeChart *chart, const SpelchCompared *one)
{
  SpelchFacing near = spelch_plan_facing (&one->plan, SPELCH_SIDE_MOTOR);
  SpelchFacing far = spelch_plan_facing (&one->plan, SPELCH_SIDE_FAR);
  SpelchFacing facing = !is_cut (chart, SPELCH_SIDE_FAR) ? near : far;
  if (is_cut (chart, SPELCH_SIDE_MOTOR) && near != facing)
    facing = SPELCH_FACING_PLY; /* whose words are for any */
  for (int side = 0; side < N_SIDES; side++)
    if (is_cut (chart, side))
      chart->names[side] = spelch_words_face_alone (&one->plan, &one->cut, (SpelchSide)side);
  chart->best = g_strdup (spelch_words_grade (1, facing));
  chart->worst = g_strdup (spelch_words_grade (5, facing));
}

SpelchGradeChart *
spelch_grade_chart_new (const SpelchCompared *one, const SpelchScan *scan, const SpelchView *view)
{
  SpelchGradeChart *chart = g_new0 (SpelchGradeChart, 1);
  const SpelchPlan *plan = &one->plan;
  chart->view = *view;
  chart->view.family = NULL; /* not ours to keep */
  chart->palette = spelch_palette (view->look);
  chart->lettering = spelch_lettering_new (view->family, view->text);
  chart->scan = *scan;
  chart->planned_mm = plan->n_passes > 0 ? plan->passes[0].tip_mm : 0;
  chart->deepest_mm
      = fmax (plan->n_passes > 0 ? plan->passes[plan->n_passes - 1].tip_mm : 0, scan->n * scan->step_mm);
  chart->planned_grades[SPELCH_SIDE_MOTOR] = (int)one->values[SPELCH_ROW_MOTOR_EDGE].value;
  chart->planned_grades[SPELCH_SIDE_FAR] = (int)one->values[SPELCH_ROW_FAR_EDGE].value;
  take_words (chart, one);
  lay_out (chart);
  for (int side = 0; side < N_SIDES; side++)
    if (is_cut (chart, side))
      make_line (chart, side);
  find_clean (chart);
  return chart;
}

void
spelch_grade_chart_free (SpelchGradeChart *chart)
{
  for (int side = 0; side < N_SIDES; side++)
    {
      g_free (chart->names[side]);
      g_free (chart->points[side]);
    }
  g_free (chart->best);
  g_free (chart->worst);
  spelch_lettering_unref (chart->lettering);
  g_free (chart);
}

/* ---- Drawing ---- */

static void
stroke_level (const SpelchGradeChart *chart, cairo_t *cr, int grade, const SpelchColour *colour)
{
  double y = floor (spelch_grade_chart_y (chart, grade)) + 0.5;
  spelch_colour_set (cr, colour, 1);
  cairo_set_line_width (cr, 1);
  cairo_move_to (cr, chart->plot.x, y);
  cairo_line_to (cr, chart->plot.x + chart->plot.width, y);
  cairo_stroke (cr);
}

static void
draw_clean (const SpelchGradeChart *chart, cairo_t *cr)
{
  double from, to, width, height;
  if (!spelch_grade_chart_clean (chart, &from, &to))
    return;
  bool to_the_end = chart->clean_to == chart->scan.n;
  double left = spelch_grade_chart_x (chart, chart->clean_from == 0 ? 0 : from);
  double right = spelch_grade_chart_x (chart, to_the_end ? chart->deepest_mm : to);
  spelch_colour_set (cr, &chart->palette->ink, 0.09);
  cairo_rectangle (cr, left, chart->plot.y, fmax (right - left, 1), chart->plot.height);
  cairo_fill (cr);
  g_autofree char *where
      = spelch_words_stretch (&chart->scan, chart->clean_from, chart->clean_to, &chart->view.numbers);
  g_autofree char *words = g_strdup_printf ("%s %s", chart->best, where);
  g_autoptr (PangoLayout) layout = set_words (chart, words, true, 0, &width, &height);
  double most = chart->plot.x + chart->plot.width - width;
  double x = fmax (fmin (left, most), 0);
  spelch_lettering_draw (cr, layout, x, chart->plot.y - GAP - height, &chart->palette->ink);
}

static void
draw_axis_words (const SpelchGradeChart *chart, cairo_t *cr)
{
  const char *words[] = { chart->best, chart->worst };
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    {
      double width, height;
      g_autoptr (PangoLayout) layout = set_words (chart, words[i], false, chart->gutter, &width, &height);
      double y = spelch_grade_chart_y (chart, i == 0 ? 1 : 5);
      spelch_lettering_draw (cr, layout, fmax (chart->plot.x - 2 * GAP - width, 0), y - height / 2,
                             &chart->palette->ink_soft);
    }
}

/* The first pass as it is planned, with the ends of the depth where there is room for them. */
static void
draw_depths (const SpelchGradeChart *chart, cairo_t *cr)
{
  double x = spelch_grade_chart_x (chart, chart->planned_mm), width, height;
  double left = chart->plot.x, right = left + chart->plot.width;
  double y = chart->plot.y + chart->plot.height, below = y + GAP + MARK;
  g_autofree char *depth = spelch_words_length (&chart->view.numbers, chart->planned_mm);
  g_autofree char *deepest = spelch_words_length (&chart->view.numbers, chart->deepest_mm);
  g_autofree char *words = g_strdup_printf (_ ("first pass %s"), depth);
  g_autoptr (PangoLayout) layout = set_words (chart, words, true, 0, &width, &height);
  double at = fmax (fmin (x - width / 2, right + GAP - width), 0);
  spelch_colour_set (cr, &chart->palette->ink, 1);
  cairo_set_line_width (cr, 1);
  cairo_move_to (cr, floor (x) + 0.5, chart->plot.y);
  cairo_line_to (cr, floor (x) + 0.5, y);
  cairo_stroke (cr);
  cairo_move_to (cr, floor (x) + 0.5, y + 1.5);
  cairo_rel_line_to (cr, MARK, 1.6 * MARK);
  cairo_rel_line_to (cr, -2 * MARK, 0);
  cairo_fill (cr);
  spelch_lettering_draw (cr, layout, at, below, &chart->palette->ink);
  if (at > left + width_of (chart, "0") + GAP)
    write_words (chart, cr, "0", false, left, below);
  double end = right + GAP - width_of (chart, deepest);
  if (at + width + GAP < end)
    write_words (chart, cr, deepest, false, end, below);
}

static void
style_line (const SpelchGradeChart *chart, cairo_t *cr, int side)
{
  const double dashes[] = { 5, 3 };
  bool motor = side == SPELCH_SIDE_MOTOR;
  spelch_colour_set (cr, motor ? &chart->palette->ink : &chart->palette->ink_soft, 1);
  cairo_set_line_width (cr, LINE);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_dash (cr, dashes, motor ? 0 : 2, 0);
}

static void
draw_line (const SpelchGradeChart *chart, cairo_t *cr, int side)
{
  style_line (chart, cr, side);
  cairo_new_path (cr); /* words leave a point */
  for (guint i = 0; i < chart->n_points[side]; i++)
    cairo_line_to (cr, chart->points[side][i].x, chart->points[side][i].y);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

/* The grade the plan gives, on the mark of its first pass: full for the motor side, hollow for the far one.
 */
static void
draw_planned (const SpelchGradeChart *chart, cairo_t *cr, int side)
{
  bool motor = side == SPELCH_SIDE_MOTOR;
  double across = motor ? -1.4 * DOT : 1.4 * DOT;
  if (chart->planned_grades[side] < 1)
    return;
  cairo_new_path (cr);
  cairo_arc (cr, floor (spelch_grade_chart_x (chart, chart->planned_mm)) + 0.5 + across,
             spelch_grade_chart_y (chart, chart->planned_grades[side]) + (motor ? -APART : APART), DOT, 0,
             2 * G_PI);
  spelch_colour_set (cr, motor ? &chart->palette->ink : &chart->palette->ground, 1);
  cairo_fill_preserve (cr);
  spelch_colour_set (cr, &chart->palette->ink, 1);
  cairo_set_line_width (cr, 1.4);
  cairo_stroke (cr);
}

static void
draw_names (const SpelchGradeChart *chart, cairo_t *cr)
{
  double x = chart->plot.x, high = line_height (chart);
  double y = chart->view.height - (chart->names_below ? 2 : 1) * high - 1;
  for (int side = 0; side < N_SIDES; side++)
    {
      if (!is_cut (chart, side))
        continue;
      style_line (chart, cr, side);
      cairo_move_to (cr, x, floor (y + high / 2));
      cairo_rel_line_to (cr, SAMPLE * chart->view.text, 0);
      cairo_stroke (cr);
      cairo_set_dash (cr, NULL, 0, 0);
      double wide = SAMPLE * chart->view.text + GAP;
      wide += write_words (chart, cr, chart->names[side], false, x + wide, y) + 3 * GAP;
      x += chart->names_below ? 0 : wide;
      y += chart->names_below ? high : 0;
    }
}

void
spelch_grade_chart_draw (SpelchGradeChart *chart, cairo_t *cr)
{
  cairo_save (cr);
  draw_clean (chart, cr);
  for (int grade = 1; grade <= 5; grade++)
    stroke_level (chart, cr, grade, grade == 5 ? &chart->palette->ink_soft : &chart->palette->line_soft);
  draw_axis_words (chart, cr);
  if (chart->planned_mm > 0)
    draw_depths (chart, cr);
  for (int side = 0; side < N_SIDES; side++)
    if (is_cut (chart, side))
      draw_line (chart, cr, side);
  for (int side = 0; side < N_SIDES; side++)
    if (is_cut (chart, side))
      draw_planned (chart, cr, side);
  draw_names (chart, cr);
  cairo_restore (cr);
}

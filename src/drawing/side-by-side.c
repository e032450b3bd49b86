/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/side-by-side.h"

#include "drawing/grade-chart.h"
#include "drawing/side-scenes.h"
#include "plan/words-compare.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MARGIN   24
#define NAMES    150 /* of the rows */
#define TITLE    17
#define SENTENCE 15
#define BODY     12.5
#define ROW      25
#define BETWEEN  16 /* charts */
#define BEST     "● "
#define WORST    "○ "

typedef struct
{
  cairo_t *cr;
  const SpelchView *view;
  const SpelchPalette *palette;
  SpelchLettering *lettering;
  double column; /* width of one */
} Sheet;

static double
left_of (const Sheet *sheet, guint i)
{
  return MARGIN + NAMES + i * sheet->column;
}

/* Writes words in a box of some width; gives their height. */
static double
write_words (const Sheet *sheet, const char *words, double size, SpelchLetters letters, double x, double y,
             double width, PangoAlignment align, const SpelchColour *colour)
{
  double wide, high;
  g_autoptr (PangoLayout) layout
      = spelch_lettering_set (sheet->lettering, words, size, letters, width, align);
  spelch_lettering_measure (layout, &wide, &high);
  if (align == PANGO_ALIGN_CENTER)
    x += MAX ((width - wide) / 2, 0);
  spelch_lettering_draw (sheet->cr, layout, x, y, colour);
  return high;
}

/* ---- Head ---- */

static double
draw_head (const Sheet *sheet, const SpelchPart *part, const SpelchCut *cut, const GArray *columns)
{
  double y = MARGIN, width = sheet->view->width - 2 * MARGIN;
  g_auto (GStrv) differs = spelch_words_differs (columns, part);
  g_autofree char *setting = spelch_words_setting (part, &sheet->view->numbers);
  g_autofree char *what = g_strdup_printf (_ ("%s: %s. %s"), part->name, cut->name, setting);
  const SpelchPalette *p = sheet->palette;
  for (guint i = 0; differs[i] != NULL; i++)
    y += write_words (sheet, differs[i], i == 0 ? TITLE : SENTENCE,
                      i == 0 ? SPELCH_LETTERS_STRONG : SPELCH_LETTERS_PLAIN, MARGIN, y, width,
                      PANGO_ALIGN_LEFT, i == 0 ? &p->ink : &p->ink_soft)
         + 4;
  for (guint i = 0; i < columns->len; i++)
    {
      const SpelchCompared *one = &g_array_index (columns, SpelchCompared, i);
      if (spelch_compared_may_be_cut (one))
        continue;
      g_autofree char *words = spelch_words_refusal (one, &sheet->view->numbers);
      y += write_words (sheet, words, SENTENCE, SPELCH_LETTERS_STRONG, MARGIN, y, width, PANGO_ALIGN_LEFT,
                        &p->ink)
           + 4;
    }
  return y
         + write_words (sheet, what, BODY, SPELCH_LETTERS_PLAIN, MARGIN, y, width, PANGO_ALIGN_LEFT,
                        &p->ink_soft)
         + MARGIN / 2.0;
}

static double
draw_names (const Sheet *sheet, const GArray *columns, double y)
{
  double most = 0;
  for (guint i = 0; i < columns->len; i++)
    most = MAX (most, write_words (sheet, g_array_index (columns, SpelchCompared, i).bit->name, SENTENCE,
                                   SPELCH_LETTERS_STRONG, left_of (sheet, i) + 8, y, sheet->column - 16,
                                   PANGO_ALIGN_CENTER, &sheet->palette->ink));
  return y + most;
}

/* ---- Drawings ---- */

static void
draw_scenes (const Sheet *sheet, const SpelchPart *part, const GArray *columns, double y, double height)
{
  SpelchView view = *sheet->view;
  view.width = floor (sheet->column);
  view.height = floor (height);
  g_autoptr (SpelchSideScenes) scenes = spelch_side_scenes_new (part, columns, &view);
  for (guint i = 0; i < columns->len; i++)
    {
      cairo_save (sheet->cr);
      cairo_translate (sheet->cr, floor (left_of (sheet, i)), floor (y));
      spelch_side_scenes_draw (scenes, i, sheet->cr);
      cairo_restore (sheet->cr);
    }
}

/* ---- Charts ---- */

static void
draw_charts (const Sheet *sheet, const GArray *columns, const SpelchScan *scans, double y)
{
  SpelchView view = *sheet->view;
  view.width = sheet->column - BETWEEN;
  view.height = spelch_grade_chart_height (view.text);
  for (guint i = 0; i < columns->len; i++)
    {
      g_autoptr (SpelchGradeChart) chart
          = spelch_grade_chart_new (&g_array_index (columns, SpelchCompared, i), &scans[i], &view);
      cairo_save (sheet->cr);
      cairo_translate (sheet->cr, floor (left_of (sheet, i)), floor (y));
      spelch_grade_chart_draw (chart, sheet->cr);
      cairo_restore (sheet->cr);
    }
  write_words (sheet, _ ("By depth of the first pass, with everything exact"), BODY, SPELCH_LETTERS_PLAIN,
               MARGIN, y, NAMES - MARGIN / 2.0, PANGO_ALIGN_LEFT, &sheet->palette->ink_soft);
}

/* ---- Rows ---- */

static guint
count_rows (const GArray *columns)
{
  guint n = 0;
  for (int row = 0; row < SPELCH_N_ROWS; row++)
    n += spelch_compare_tells (columns, (SpelchRow)row);
  return n;
}

static void
draw_value (const Sheet *sheet, const SpelchCompared *one, SpelchRow row, guint i, double y)
{
  SpelchStanding standing = one->values[row].standing;
  g_autofree char *words = spelch_words_compared (one, row, &sheet->view->numbers);
  g_autofree char *marked = g_strconcat (standing == SPELCH_STANDING_BEST    ? BEST
                                         : standing == SPELCH_STANDING_WORST ? WORST
                                                                             : "",
                                         words, NULL);
  write_words (sheet, marked, BODY,
               standing == SPELCH_STANDING_BEST ? SPELCH_LETTERS_STRONG : SPELCH_LETTERS_PLAIN,
               left_of (sheet, i), y, sheet->column, PANGO_ALIGN_CENTER, &sheet->palette->ink);
}

/* Gives where they end. */
static double
draw_rows (const Sheet *sheet, const GArray *columns, double y)
{
  double right = sheet->view->width - MARGIN, row_height = ROW * sheet->view->text;
  for (int row = 0; row < SPELCH_N_ROWS; row++)
    {
      if (!spelch_compare_tells (columns, (SpelchRow)row))
        continue;
      spelch_colour_set (sheet->cr, &sheet->palette->line_soft, 1);
      cairo_set_line_width (sheet->cr, 1);
      cairo_move_to (sheet->cr, MARGIN, floor (y) + 0.5);
      cairo_line_to (sheet->cr, right, floor (y) + 0.5);
      cairo_stroke (sheet->cr);
      g_autofree char *name = spelch_words_row_of (columns, (SpelchRow)row);
      write_words (sheet, name, BODY, SPELCH_LETTERS_PLAIN, MARGIN, y + 4, NAMES, PANGO_ALIGN_LEFT,
                   &sheet->palette->ink_soft);
      for (guint i = 0; i < columns->len; i++)
        draw_value (sheet, &g_array_index (columns, SpelchCompared, i), (SpelchRow)row, i, y + 4);
      y += row_height;
    }
  return y;
}

static void
draw_foot (const Sheet *sheet, double y)
{
  write_words (sheet, _ ("●\u00a0best in the row, ○\u00a0worst. Forces, power and heat are estimates."),
               BODY - 1, SPELCH_LETTERS_PLAIN, MARGIN, y, sheet->view->width - 2 * MARGIN, PANGO_ALIGN_LEFT,
               &sheet->palette->ink_soft);
}

void
spelch_side_by_side_draw (cairo_t *cr, const SpelchPart *part, const SpelchCut *cut, const GArray *columns,
                          const SpelchScan *scans, const SpelchView *view)
{
  Sheet sheet = { .cr = cr,
                  .view = view,
                  .palette = spelch_palette (view->look),
                  .lettering = spelch_lettering_new (view->family, view->text),
                  .column = (view->width - 2 * MARGIN - NAMES) / columns->len };
  spelch_colour_set (cr, &sheet.palette->ground, 1);
  cairo_paint (cr);
  double y = draw_names (&sheet, columns, draw_head (&sheet, part, cut, columns));
  double charts = spelch_grade_chart_height (view->text) + MARGIN, foot = ROW * view->text + MARGIN / 2.0;
  double rows = count_rows (columns) * ROW * view->text + MARGIN / 2.0 + charts + foot;
  draw_scenes (&sheet, part, columns, y, view->height - rows - y);
  y = draw_rows (&sheet, columns, view->height - rows);
  draw_charts (&sheet, columns, scans, y + MARGIN / 2.0);
  draw_foot (&sheet, view->height - foot);
  spelch_lettering_unref (sheet.lettering);
}

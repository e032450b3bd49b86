/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch compare: a cut with two to four bits, side by side.
 */
#include "command/asked.h"
#include "command/commands.h"
#include "command/figures.h"
#include "command/picture-file.h"

#include "drawing/side-by-side.h"
#include "files/shop-data.h"
#include "plan/words-compare.h"

#include <glib/gi18n.h>

#define BETWEEN 2 /* characters between columns */

static const SpelchCompared *
column (const GArray *columns, guint i)
{
  return &g_array_index (columns, SpelchCompared, i);
}

/* ---- Table ---- */

/* A value with the sign of its standing: + best, - worst. */
static char *
cell (const SpelchCompared *one, SpelchRow row, const SpelchNumbers *numbers)
{
  g_autofree char *words = spelch_words_compared (one, row, numbers);
  SpelchStanding standing = one->values[row].standing;
  return g_strdup_printf ("%s%s",
                          standing == SPELCH_STANDING_BEST    ? "+ "
                          : standing == SPELCH_STANDING_WORST ? "- "
                                                              : "  ",
                          words);
}

static void
add_padded (GString *text, const char *words, glong width)
{
  g_string_append_printf (text, "%s%*s", words, (int)MAX (width - g_utf8_strlen (words, -1), 0), "");
}

static glong
widest (const GArray *columns, guint i, const SpelchNumbers *numbers)
{
  glong width = g_utf8_strlen (column (columns, i)->bit->name, -1) + 2;
  for (int row = 0; row < SPELCH_N_ROWS; row++)
    {
      g_autofree char *words = cell (column (columns, i), (SpelchRow)row, numbers);
      width = MAX (width, g_utf8_strlen (words, -1));
    }
  return width + BETWEEN;
}

static glong
widest_name (void)
{
  glong width = 0;
  for (int row = 0; row < SPELCH_N_ROWS; row++)
    width = MAX (width, g_utf8_strlen (spelch_words_row ((SpelchRow)row), -1));
  return width + BETWEEN;
}

static void
end_line (GString *text)
{
  while (g_str_has_suffix (text->str, " "))
    g_string_truncate (text, text->len - 1);
  g_string_append_c (text, '\n');
}

static void
add_rows (GString *text, const GArray *columns, const SpelchNumbers *numbers)
{
  glong widths[SPELCH_COMPARE_MOST], names = widest_name ();
  add_padded (text, "", names);
  for (guint i = 0; i < columns->len; i++)
    {
      g_autofree char *name = g_strdup_printf ("  %s", column (columns, i)->bit->name);
      widths[i] = widest (columns, i, numbers);
      add_padded (text, name, widths[i]);
    }
  end_line (text);
  for (int row = 0; row < SPELCH_N_ROWS; row++)
    {
      if (!spelch_compare_tells (columns, (SpelchRow)row))
        continue;
      add_padded (text, spelch_words_row ((SpelchRow)row), names);
      for (guint i = 0; i < columns->len; i++)
        {
          g_autofree char *words = cell (column (columns, i), (SpelchRow)row, numbers);
          add_padded (text, words, widths[i]);
        }
      end_line (text);
    }
}

static void
add_refusals (GString *text, const GArray *columns, const SpelchNumbers *numbers)
{
  for (guint i = 0; i < columns->len; i++)
    {
      const SpelchCompared *one = column (columns, i);
      if (spelch_compared_may_be_cut (one))
        continue;
      g_autofree char *words = spelch_words_refusal (one, numbers);
      g_string_append_printf (text, "%s\n", words);
    }
}

static char *
table (const SpelchPart *part, const SpelchCut *cut, const GArray *columns, const SpelchNumbers *numbers)
{
  GString *text = g_string_new (NULL);
  g_autofree char *setting = spelch_words_setting (part, numbers);
  g_auto (GStrv) differs = spelch_words_differs (columns, part);
  g_string_append_printf (text, _ ("%s: %s\n%s\n\n"), part->name, cut->name, setting);
  for (guint i = 0; differs[i] != NULL; i++)
    g_string_append_printf (text, "%s\n", differs[i]);
  add_refusals (text, columns, numbers);
  g_string_append_c (text, '\n');
  add_rows (text, columns, numbers);
  g_string_append_printf (text, "\n%s\n%s\n", _ ("+ marks the best in a row, - the worst."),
                          _ ("Forces, power and heat are estimates."));
  return g_string_free (text, FALSE);
}

/* ---- JSON ---- */

static void
write_grades (SpelchWriter *w, const char *member, const guint8 *grades, guint n)
{
  g_autofree double *values = g_new (double, MAX (n, 1));
  for (guint i = 0; i < n; i++)
    values[i] = grades[i];
  spelch_writer_numbers_told (w, member, values, n);
}

static void
write_column (SpelchWriter *w, const SpelchPart *part, const SpelchCompared *one)
{
  SpelchScan scan = spelch_compare_scan (spelch_shop_constants (), part, one);
  spelch_writer_open_item (w, NULL, false);
  spelch_writer_text (w, "bit", one->bit->id);
  spelch_writer_code (w, "verdict", &SPELCH_VERDICT_CODES, (int)one->plan.verdict);
  spelch_writer_flag (w, "keeps_seen", spelch_compared_keeps (one, part, true));
  spelch_writer_flag (w, "keeps_hidden", spelch_compared_keeps (one, part, false));
  spelch_writer_open_list (w, "rows");
  for (int row = 0; row < SPELCH_N_ROWS; row++)
    {
      const SpelchComparedValue *value = &one->values[row];
      g_autofree char *words = spelch_words_compared (one, (SpelchRow)row, &SPELCH_FIGURE_NUMBERS);
      spelch_writer_open_item (w, NULL, true);
      spelch_writer_code (w, "row", &SPELCH_ROW_CODES, row);
      spelch_figure_write_if (w, "value", value->told, value->value);
      spelch_writer_text (w, "words", words);
      spelch_writer_code (w, "standing", &SPELCH_STANDING_CODES, (int)value->standing);
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
  spelch_figure_write (w, "scan_step_mm", scan.step_mm);
  write_grades (w, "motor_grades", scan.motor, scan.n);
  write_grades (w, "far_grades", scan.far, scan.n);
  spelch_writer_close (w);
}

static char *
json (const SpelchPart *part, const SpelchCut *cut, const GArray *columns, bool tied)
{
  SpelchWriter *w = spelch_figures_begin (part);
  g_auto (GStrv) differs = spelch_words_differs (columns, part);
  spelch_writer_text (w, "cut", cut->id);
  spelch_writer_flag (w, "tied", tied);
  spelch_writer_texts (w, "differs", (const char *const *)differs);
  spelch_writer_open_list (w, "columns");
  for (guint i = 0; i < columns->len; i++)
    write_column (w, part, column (columns, i));
  spelch_writer_close (w);
  return spelch_writer_end (w);
}

/* ---- Picture ---- */

typedef struct
{
  const SpelchPart *part;
  const SpelchCut *cut;
  const GArray *columns;
  SpelchScan scans[SPELCH_COMPARE_MOST];
  SpelchView view;
} Picture;

static void
draw_picture (cairo_t *cr, gconstpointer data)
{
  const Picture *picture = data;
  spelch_side_by_side_draw (cr, picture->part, picture->cut, picture->columns, picture->scans,
                            &picture->view);
}

static int
write_picture (const SpelchAsked *asked, Picture *picture)
{
  g_autoptr (GError) error = NULL;
  if (!spelch_picture_file_view (asked, SPELCH_SIDE_BY_SIDE_WIDTH, SPELCH_SIDE_BY_SIDE_HEIGHT, &picture->view,
                                 &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  for (guint i = 0; i < picture->columns->len; i++)
    picture->scans[i]
        = spelch_compare_scan (spelch_shop_constants (), picture->part, column (picture->columns, i));
  return spelch_picture_file_write (asked->output, &picture->view, draw_picture, picture);
}

/* ---- Command ---- */

static int
status_of (const GArray *columns)
{
  for (guint i = 0; i < columns->len; i++)
    if (spelch_compared_may_be_cut (column (columns, i)))
      return SPELCH_EXIT_DONE;
  return SPELCH_EXIT_DO_NOT_CUT;
}

static int
show (const SpelchAsked *asked, const SpelchPart *part, const SpelchCut *cut, const SpelchNumbers *numbers)
{
  const SpelchBit *bits[SPELCH_COMPARE_MOST];
  guint n = g_strv_length (asked->bits);
  for (guint i = 0; i < n; i++)
    bits[i] = &part->bits[spelch_part_find_bit (part, asked->bits[i])];
  g_autoptr (GArray) columns = spelch_compare (spelch_shop_constants (), part, cut, bits, n, asked->tied);
  if (asked->output != NULL)
    {
      int status = write_picture (asked, &(Picture){ .part = part, .cut = cut, .columns = columns });
      return status == SPELCH_EXIT_DONE ? status_of (columns) : status;
    }
  g_autofree char *text
      = asked->json ? json (part, cut, columns, asked->tied) : table (part, cut, columns, numbers);
  g_print ("%s", text);
  return status_of (columns);
}

int
spelch_command_compare (int argc, char **argv)
{
  g_auto (SpelchAsked) asked = { 0 };
  g_auto (SpelchQuestions) questions = { 0 };
  int status = SPELCH_EXIT_DONE;
  if (!spelch_asked_open (&asked, "compare",
                          _ ("Says what a cut comes to with two to four bits, and what sets them apart."),
                          SPELCH_ASKING_COMPARISON, argc, argv, &questions, &status))
    return status;
  return show (&asked, questions.part, &questions.part->cuts[questions.cuts[0]], &questions.numbers);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/exercise-sheet.h"

#include "drawing/exercise-picture.h"
#include "plan/words-posed.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>
#include <math.h>

#define MARGIN       SPELCH_SHEET_MARGIN
#define TITLE        15.0
#define HEADING      10.5
#define BODY         9.0
#define SMALL        8.0
#define LEADING      3.0
#define BOX          7.5
#define BOX_ROOM     14.0
#define LABEL        86.0 /* width of the labels of what is given */
#define LOOK         SPELCH_LOOK_PAPER
#define PICTURE      150.0
#define PICTURE_TALL 96.0
#define ABOVE_TALL   112.0 /* the picture from above */
#define ABOVE_SIZE   6.6
#define GUTTER       16.0
#define BETWEEN      16.0 /* two questions */
#define FOOT         14.0
#define GROWN_MOST   1.5 /* of pictures, where a page has room left */
#define GROWN_STEP   0.1

/* What draws, or only measures. */
typedef struct
{
  cairo_t *cr;
  const SpelchExerciseSheet *sheet;
  const SpelchPalette *palette;
  SpelchLettering *lettering;
  double width, height; /* of the paper */
  double grown;         /* of pictures; 1 and more */
  bool draws;
} Pen;

/* Writes words in a box that wide; gives their height. */
static double
write_words (const Pen *pen, const char *words, double size, SpelchLetters letters, double x, double y,
             double width, bool soft)
{
  double wide, high;
  if (*words == '\0')
    return 0;
  g_autoptr (PangoLayout) layout
      = spelch_lettering_set (pen->lettering, words, size, letters, width, PANGO_ALIGN_LEFT);
  spelch_lettering_measure (layout, &wide, &high);
  if (pen->draws)
    spelch_lettering_draw (pen->cr, layout, x, y, soft ? &pen->palette->ink_soft : &pen->palette->ink);
  return high;
}

/* The same, and takes @words. */
static double
write_taken (const Pen *pen, char *words, double size, SpelchLetters letters, double x, double y,
             double width)
{
  g_autofree char *taken = words;
  double high = write_words (pen, taken, size, letters, x, y, width, false);
  return high > 0 ? high + LEADING : 0;
}

static void
rule (const Pen *pen, double x0, double x1, double y, double line)
{
  if (!pen->draws)
    return;
  spelch_colour_set (pen->cr, &pen->palette->ink_soft, 1);
  cairo_set_line_width (pen->cr, line);
  cairo_move_to (pen->cr, x0, y);
  cairo_line_to (pen->cr, x1, y);
  cairo_stroke (pen->cr);
}

static void
box (const Pen *pen, double x, double y)
{
  if (!pen->draws)
    return;
  spelch_colour_set (pen->cr, &pen->palette->ink, 1);
  cairo_set_line_width (pen->cr, 0.8);
  cairo_rectangle (pen->cr, x + 0.5, y + 2, BOX, BOX);
  cairo_stroke (pen->cr);
}

/* ---- A question ---- */

/* Whether a fact stands among those, word for word. */
static bool
is_among (const GArray *facts, const SpelchFact *fact)
{
  for (guint i = 0; facts != NULL && i < facts->len; i++)
    {
      const SpelchFact *one = &g_array_index (facts, SpelchFact, i);
      if (g_str_equal (one->label, fact->label) && g_str_equal (one->value, fact->value))
        return true;
    }
  return false;
}

/* What is given; of a follow-up only what isn't as @before it, nor said to be changed. */
static double
write_facts (const Pen *pen, const SpelchPosed *posed, const SpelchPosed *before, double x, double y,
             double width)
{
  g_autoptr (GArray) facts = spelch_words_facts (posed, &pen->sheet->numbers);
  g_autoptr (GArray) known = before != NULL ? spelch_words_facts (before, &pen->sheet->numbers) : NULL;
  const char *changed = spelch_words_change_name (posed->exercise->follow_up.change.what);
  double top = y;
  for (guint i = 0; i < facts->len; i++)
    {
      const SpelchFact *fact = &g_array_index (facts, SpelchFact, i);
      if (is_among (known, fact) || (before != NULL && g_str_equal (fact->label, changed)))
        continue;
      double label = write_words (pen, fact->label, SMALL, SPELCH_LETTERS_PLAIN, x, y, LABEL - 6, true);
      double value
          = write_words (pen, fact->value, SMALL, SPELCH_LETTERS_PLAIN, x + LABEL, y, width - LABEL, false);
      y += fmax (label, value) + 1;
    }
  return y > top ? y - top + LEADING : 0;
}

/* "A  up-cut bit, …" where bits are lettered. */
static char *
choice_words (const Pen *pen, const SpelchPosed *posed, guint i)
{
  g_autofree char *words = spelch_words_posed_choice (posed, i, &pen->sheet->numbers);
  return posed->exercise->asks == SPELCH_ASKS_BIT ? g_strdup_printf ("%c: %s", 'A' + (int)i, words)
                                                  : g_steal_pointer (&words);
}

/* The same with what it means at the machine, which the first question says for its follow-up too. */
static char *
choice_in_full (const Pen *pen, const SpelchPosed *posed, guint i)
{
  const char *meaning = posed->follow_up ? "" : spelch_words_posed_meaning (posed, i);
  g_autofree char *words = choice_words (pen, posed, i);
  return *meaning == '\0' ? g_steal_pointer (&words) : g_strdup_printf ("%s: %s", words, meaning);
}

static double
wide_of (const Pen *pen, const char *words)
{
  double wide, high;
  g_autoptr (PangoLayout) layout
      = spelch_lettering_set (pen->lettering, words, BODY, SPELCH_LETTERS_PLAIN, 0, PANGO_ALIGN_LEFT);
  spelch_lettering_measure (layout, &wide, &high);
  return wide;
}

/* Whether all choices fit in a row. */
static bool
fit_in_row (const Pen *pen, const SpelchPosed *posed, double width)
{
  double wide = 0;
  for (guint i = 0; i < posed->n_choices; i++)
    {
      g_autofree char *words = choice_in_full (pen, posed, i);
      wide += BOX_ROOM + wide_of (pen, words) + (i > 0 ? GUTTER : 0);
    }
  return wide <= width;
}

/* In how many columns the choices stand, the rows as even as may be; bits never stand side by side. */
static guint
count_columns (const Pen *pen, const SpelchPosed *posed, double width)
{
  double widest = 0;
  for (guint i = 0; i < posed->n_choices; i++)
    {
      g_autofree char *words = choice_in_full (pen, posed, i);
      widest = fmax (widest, BOX_ROOM + wide_of (pen, words) + GUTTER);
    }
  guint fit = (guint)fmax (floor (width / fmax (widest, 1)), 1), n = MAX (posed->n_choices, 1);
  guint rows = (n + fit - 1) / fit;
  return posed->exercise->asks == SPELCH_ASKS_BIT ? 1 : (n + rows - 1) / rows;
}

static double
write_choices (const Pen *pen, const SpelchPosed *posed, double x, double y, double width)
{
  double top = y, row = 0, left = x;
  bool in_row = fit_in_row (pen, posed, width);
  guint columns = in_row ? MAX (posed->n_choices, 1) : count_columns (pen, posed, width);
  if (posed->by_depth)
    {
      rule (pen, x, x + 60, y + 12, 0.6);
      y += fmax (write_words (pen, _ ("deep"), BODY, SPELCH_LETTERS_PLAIN, x + 66, y, width - 66, false), 14)
           + LEADING;
    }
  for (guint i = 0; i < posed->n_choices; i++)
    {
      g_autofree char *words = choice_in_full (pen, posed, i);
      bool begins = i % columns == 0;
      y += begins ? row : 0;
      left = begins ? x : left;
      row = begins ? 0 : row;
      box (pen, left, y);
      double room = in_row ? width : width / columns;
      double high
          = write_words (pen, words, BODY, SPELCH_LETTERS_PLAIN, left + BOX_ROOM, y, room - BOX_ROOM, false);
      row = fmax (row, high + LEADING);
      left += in_row ? BOX_ROOM + wide_of (pen, words) + GUTTER : room;
    }
  return y + row - top;
}

static char *
heading (const Pen *pen, const SpelchPosed *posed, guint number)
{
  const char *title = spelch_by_language (&posed->exercise->title, pen->sheet->languages);
  return posed->follow_up ? g_strdup_printf (_ ("%u, follow-up"), number)
                          : g_strdup_printf ("%u  %s", number, title);
}

/* The pictures of a question under one another, @x and @y their corner; gives their height. */
static double
draw_pictures (const Pen *pen, const SpelchPosed *posed, double x, double y)
{
  bool above = spelch_exercise_picture_has_above (posed);
  double tall = above ? ABOVE_TALL * pen->grown + LEADING : 0;
  if (!pen->draws)
    return tall + PICTURE_TALL * pen->grown;
  cairo_save (pen->cr);
  cairo_translate (pen->cr, x, y);
  if (above)
    spelch_exercise_picture_draw_above (pen->cr, posed, PICTURE * pen->grown, ABOVE_TALL * pen->grown,
                                        ABOVE_SIZE, LOOK, &pen->sheet->numbers, pen->lettering);
  cairo_translate (pen->cr, 0, tall);
  spelch_exercise_picture_draw (pen->cr, posed, PICTURE * pen->grown, PICTURE_TALL * pen->grown, LOOK,
                                pen->lettering);
  cairo_restore (pen->cr);
  return tall + PICTURE_TALL * pen->grown;
}

/* A question, or a follow-up, which tells only what has changed. */
static double
write_question (const Pen *pen, const SpelchPosed *posed, const SpelchPosed *before, guint number, double y)
{
  const SpelchNumbers *numbers = &pen->sheet->numbers;
  double whole = pen->width - 2 * MARGIN, top = y;
  double picture = PICTURE * pen->grown, text = posed->follow_up ? whole : whole - picture - GUTTER;
  y += write_taken (pen, heading (pen, posed, number), HEADING, SPELCH_LETTERS_STRONG, MARGIN, y, whole);
  double pictured = y;
  if (!posed->follow_up)
    pictured += draw_pictures (pen, posed, pen->width - MARGIN - picture, y);
  y += write_taken (pen, spelch_words_lead (posed, pen->sheet->languages, numbers), BODY,
                    SPELCH_LETTERS_PLAIN, MARGIN, y, text);
  y += write_taken (pen, spelch_words_changed (posed, numbers), BODY, SPELCH_LETTERS_PLAIN, MARGIN, y, text);
  y += write_taken (pen, g_strdup (spelch_words_changed_means (posed)), BODY, SPELCH_LETTERS_PLAIN, MARGIN, y,
                    text);
  y = fmax (y + write_facts (pen, posed, posed->follow_up ? before : NULL, MARGIN, y, text), pictured);
  y += write_taken (pen,
                    posed->follow_up ? g_strdup (spelch_words_asks (posed->exercise->asks))
                                     : spelch_words_question (posed, numbers),
                    BODY, SPELCH_LETTERS_STRONG, MARGIN, y, whole);
  return y + write_choices (pen, posed, MARGIN, y, whole) - top;
}

/* ---- An answer ---- */

static double
write_answer (const Pen *pen, const SpelchPosed *posed, guint number, double y)
{
  const SpelchNumbers *numbers = &pen->sheet->numbers;
  double whole = pen->width - 2 * MARGIN, top = y;
  g_auto (GStrv) why = spelch_words_posed_why (posed, numbers);
  g_autofree char *right = posed->right >= 0 ? choice_words (pen, posed, (guint)posed->right)
                                             : spelch_words_posed_right (posed, numbers);
  y += write_taken (pen, heading (pen, posed, number), HEADING, SPELCH_LETTERS_STRONG, MARGIN, y, whole);
  if (!posed->follow_up)
    y += write_taken (pen, spelch_words_lead (posed, pen->sheet->languages, numbers), SMALL,
                      SPELCH_LETTERS_PLAIN, MARGIN, y, whole);
  y += write_taken (pen, spelch_words_changed (posed, numbers), SMALL, SPELCH_LETTERS_PLAIN, MARGIN, y,
                    whole);
  y += write_taken (pen, g_strdup (right), BODY, SPELCH_LETTERS_STRONG, MARGIN, y, whole);
  for (guint i = 0; why[i] != NULL; i++)
    y += write_taken (pen, g_strdup (why[i]), BODY, SPELCH_LETTERS_PLAIN, MARGIN, y, whole);
  return y - top;
}

/* ---- Pages ---- */

static double
write_one (const Pen *pen, const SpelchPosed *posed, const SpelchPosed *before, guint number, double y)
{
  return pen->sheet->answers ? write_answer (pen, posed, number, y)
                             : write_question (pen, posed, before, number, y);
}

static double
write_head (const Pen *pen)
{
  const SpelchExerciseSheet *sheet = pen->sheet;
  double whole = pen->width - 2 * MARGIN, y = MARGIN;
  y += write_taken (pen, g_strdup (sheet->answers ? _ ("Practice: answers") : _ ("Practice: questions")),
                    TITLE, SPELCH_LETTERS_STRONG, MARGIN, y, whole);
  y += write_taken (
      pen,
      g_strdup_printf (_ ("Seed %u: with it the same numbers are drawn again. The model's version is %s; "
                          "what it says are estimates."),
                       sheet->seed, SPELCH_MODEL_VERSION),
      SMALL, SPELCH_LETTERS_PLAIN, MARGIN, y, whole);
  if (!sheet->answers)
    {
      double half = MARGIN + whole * 0.62;
      y += 10;
      write_words (pen, _ ("Name"), BODY, SPELCH_LETTERS_PLAIN, MARGIN, y, 60, false);
      rule (pen, MARGIN + 40, half - GUTTER, y + 12, 0.6);
      write_words (pen, _ ("Date"), BODY, SPELCH_LETTERS_PLAIN, half, y, 60, false);
      rule (pen, half + 40, pen->width - MARGIN, y + 12, 0.6);
      y += 14;
    }
  return y + BETWEEN / 2;
}

static void
end_page (const Pen *pen, guint page)
{
  g_autofree char *words = g_strdup_printf (_ ("Seed %u, page %u"), pen->sheet->seed, page);
  write_words (pen, words, SMALL, SPELCH_LETTERS_PLAIN, MARGIN, pen->height - MARGIN - SMALL - 3,
               pen->width - 2 * MARGIN, true);
  if (pen->sheet->only == 0)
    cairo_show_page (pen->cr);
}

static bool
is_drawn (const SpelchExerciseSheet *sheet, guint page)
{
  return sheet->only == 0 || sheet->only == page;
}

/* The questions, and the number of the one that a page begins with or goes on with. */
typedef struct
{
  SpelchPosed *const *posed;
  guint n;
} Questions;

static guint
number_of (const Questions *q, guint at)
{
  guint number = 0;
  for (guint i = 0; i <= at; i++)
    number += q->posed[i]->follow_up ? 0 : 1;
  return number;
}

static double
write_nth (const Pen *pen, const Questions *q, guint at, double y)
{
  return write_one (pen, q->posed[at], at > 0 ? q->posed[at - 1] : NULL, number_of (q, at), y);
}

static double
gap_after (const Questions *q, guint at)
{
  return at + 1 < q->n && q->posed[at + 1]->follow_up ? BETWEEN / 2 : BETWEEN;
}

/* Writes those from @from to before @to from @y on; gives where they end. */
static double
write_some (const Pen *pen, const Questions *q, guint from, guint to, double y)
{
  for (guint i = from; i < to; i++)
    {
      if (i > from && !q->posed[i]->follow_up)
        rule (pen, MARGIN, pen->width - MARGIN, y - BETWEEN / 2, 0.4);
      y += write_nth (pen, q, i, y) + (i + 1 < to ? gap_after (q, i) : 0);
    }
  return y;
}

/* The first question that doesn't go on a page any more, which begins with @from at @y. One at least does,
 * and one with a follow-up only together with it. */
static guint
end_of_page (const Pen *measure, const Questions *q, guint from, double y, double bottom)
{
  guint to = from;
  for (guint next = from; next < q->n; to = next)
    {
      next++;
      if (!q->posed[next - 1]->follow_up && next < q->n && q->posed[next]->follow_up)
        next++;
      if (to > from && write_some (measure, q, from, next, y) > bottom)
        break;
    }
  return to;
}

/* How large the pictures may be, so that everything still goes on the page. */
static double
grown_to_fit (const Pen *measure, const Questions *q, guint from, guint to, double y, double bottom)
{
  Pen larger = *measure;
  for (larger.grown = GROWN_MOST; larger.grown > 1; larger.grown -= GROWN_STEP)
    if (write_some (&larger, q, from, to, y) <= bottom)
      return larger.grown;
  return 1;
}

guint
spelch_exercise_sheet_draw (cairo_t *cr, const SpelchExerciseSheet *sheet, SpelchPosed *const *posed, guint n)
{
  Questions q = { posed, n };
  Pen pen = { .cr = cr,
              .sheet = sheet,
              .palette = spelch_palette (LOOK),
              .lettering = spelch_lettering_new (sheet->family, 1),
              .grown = 1,
              .draws = is_drawn (sheet, 1) };
  spelch_paper_size (sheet->paper, &pen.width, &pen.height);
  Pen measure = pen;
  measure.draws = false;
  double bottom = pen.height - MARGIN - FOOT, y = write_head (&pen);
  guint pages = 1;
  for (guint from = 0, to; from < n; from = to)
    {
      to = end_of_page (&measure, &q, from, y, bottom);
      pen.grown = grown_to_fit (&measure, &q, from, to, y, bottom);
      write_some (&pen, &q, from, to, y);
      if (to == n)
        break;
      end_page (&pen, pages++);
      pen.draws = is_drawn (sheet, pages);
      y = MARGIN;
    }
  end_page (&pen, pages);
  spelch_lettering_unref (pen.lettering);
  return pages;
}

static cairo_status_t
collect (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

GBytes *
spelch_exercise_sheet_pdf (const SpelchExerciseSheet *sheet, SpelchPosed *const *posed, guint n, guint *pages)
{
  GByteArray *bytes = g_byte_array_new ();
  double width, height;
  spelch_paper_size (sheet->paper, &width, &height);
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (collect, bytes, width, height);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, "Spelch");
  cairo_t *cr = cairo_create (surface);
  guint drawn = spelch_exercise_sheet_draw (cr, sheet, posed, n);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
  if (pages != NULL)
    *pages = drawn;
  return g_byte_array_free_to_bytes (bytes);
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words beside the work from above, each with the place that it names, and the scale bar under it.
 */
#include "drawing/from-above-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define PIECE_UP 0.6 /* of its width, where the piece is named */

/* ---- Words ---- */

static char *
hold_words (const SpelchFromAbove *f)
{
  return g_strdup (f->hold == SPELCH_HOLD_VACUUM   ? _ ("vacuum")
                   : f->hold == SPELCH_HOLD_CLAMPS ? _ ("clamps: one drawn for all")
                                                   : _ ("screws"));
}

static char *
tab_words (const SpelchFromAbove *f, const SpelchNumbers *numbers)
{
  g_autofree char *wide = spelch_words_length (numbers, f->cut.tabs.width.mm);
  /* Translators: number and width of the tabs that hold a part in its sheet, seen from above. */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u tab, %s wide", "%u tabs, %s wide", f->n_tabs),
                          f->n_tabs, wide);
}

static char *
words_of (const SpelchFromAbove *f, SpelchFromAboveKind kind, const SpelchNumbers *numbers)
{
  switch (kind)
    {
    case SPELCH_FROM_ABOVE_WASTE:
      return f->with_waste ? g_strdup (_ ("waste")) : NULL;
    case SPELCH_FROM_ABOVE_PIECE:
      return f->with_waste ? g_strdup (_ ("the piece")) : NULL;
    case SPELCH_FROM_ABOVE_TABS:
      return f->n_tabs > 0 ? tab_words (f, numbers) : NULL;
    case SPELCH_FROM_ABOVE_FEED:
      return g_strdup (f->machine == SPELCH_MACHINE_TABLE  ? _ ("feed: push the board this way")
                       : f->machine == SPELCH_MACHINE_HAND ? _ ("feed: move the router this way")
                                                           : _ ("feed: the bit goes this way"));
    case SPELCH_FROM_ABOVE_TURN:
      return g_strdup (f->facts.turns_clock ? _ ("the bit turns with the clock")
                                            : _ ("the bit turns against the clock"));
    case SPELCH_FROM_ABOVE_HOLD:
      return f->n_holds > 0 ? hold_words (f) : NULL;
    case SPELCH_FROM_ABOVE_FENCE:
      return f->facts.board_moves && !f->facts.goes_round ? g_strdup (_ ("fence")) : NULL;
    case SPELCH_FROM_ABOVE_GRAIN:
      return f->facts.has_grain && f->n_holds == 0 && !f->with_waste
                 ? g_strdup (_ ("fibres, along the lines"))
                 : NULL;
    case SPELCH_N_FROM_ABOVES:
    default:
      return NULL;
    }
}

static SpelchSpot
aim_hold (const SpelchFromAbove *f)
{
  SpelchRect last = f->holds[f->n_holds > 0 ? f->n_holds - 1 : 0];
  if (f->hold == SPELCH_HOLD_VACUUM)
    return (SpelchSpot){ last.x + last.width * 0.94, last.y + last.height * 0.12 };
  return (SpelchSpot){ last.x + last.width / 2, last.y + last.height / 2 };
}

/* How far the height @up lies from what else is named at the right. */
static double
clear_of_others (const SpelchFromAbove *f, double up)
{
  double clear = fmin (fabs (up - f->width * PIECE_UP), fabs (up));
  return f->n_holds > 0 ? fmin (clear, fabs (up - aim_hold (f).y)) : clear;
}

/* Of the tabs at the right side, or else of all, the one whose line has most room. */
static SpelchSpot
aim_tab (const SpelchFromAbove *f)
{
  SpelchSpot best = f->tabs[0];
  for (guint i = 1; i < f->n_tabs; i++)
    if (f->tabs[i].x > best.x + 1e-6
        || (f->tabs[i].x > best.x - 1e-6 && clear_of_others (f, f->tabs[i].y) > clear_of_others (f, best.y)))
      best = f->tabs[i];
  return best;
}

/* On a way round: at its right side, where no tab stands and its line has most room. */
static SpelchSpot
aim_feed_round (const SpelchFromAbove *f)
{
  SpelchSpot best = { fmax (f->way[0].x, f->way[1].x), f->width * 0.5 };
  double most = -1;
  for (int step = 2; step <= 18; step++)
    {
      double up = f->width * step / 20, clear = clear_of_others (f, up);
      for (guint i = 0; i < f->n_tabs; i++)
        clear = fmin (clear, fabs (up - f->tabs[i].y));
      if (clear > most + 1e-6)
        best.y = up;
      most = fmax (most, clear);
    }
  return best;
}

static SpelchSpot
aim (const SpelchFromAbove *f, SpelchFromAboveKind kind)
{
  SpelchRect board = spelch_from_above_board (f);
  double deg;
  switch (kind)
    {
    case SPELCH_FROM_ABOVE_WASTE:
      return (SpelchSpot){ f->length + f->diameter + (f->beyond - f->diameter) * 0.55,
                           f->width + f->diameter + (f->beyond - f->diameter) * 0.5 };
    case SPELCH_FROM_ABOVE_PIECE:
      return (SpelchSpot){ f->length * 0.72, f->width * PIECE_UP };
    case SPELCH_FROM_ABOVE_TABS:
      return aim_tab (f);
    case SPELCH_FROM_ABOVE_FEED:
      if (f->facts.board_moves)
        return (SpelchSpot){ f->length * 0.74, f->width * 0.24 };
      if (f->closed)
        return aim_feed_round (f);
      return spelch_from_above_along (f, f->ahead, &deg);
    case SPELCH_FROM_ABOVE_TURN:
      return spelch_from_above_along (f, f->start, &deg);
    case SPELCH_FROM_ABOVE_HOLD:
      return aim_hold (f);
    case SPELCH_FROM_ABOVE_GRAIN:
      return (SpelchSpot){
        f->length * 0.8,
        f->width * (fabs (aim (f, SPELCH_FROM_ABOVE_FEED).y / f->width - 0.5) > 0.2 ? 0.5 : 0.8)
      };
    case SPELCH_FROM_ABOVE_FENCE:
    case SPELCH_N_FROM_ABOVES:
    default:
      return (SpelchSpot){ board.x + board.width * 0.9,
                           board.y + board.height + FENCE_WIDE / 2 * fmax (f->length, f->width) };
    }
}

static double
set_words (SpelchFromAbove *f, SpelchRect column, double size, const SpelchNumbers *numbers,
           SpelchLettering *lettering)
{
  double high = -f->gap;
  for (guint i = 0; i < SPELCH_N_FROM_ABOVES; i++)
    {
      SpelchAimedLabel *label = &f->labels[i];
      g_autofree char *words = words_of (f, (SpelchFromAboveKind)i, numbers);
      g_clear_object (&label->layout);
      if (words == NULL)
        continue;
      SpelchSpot spot = aim (f, (SpelchFromAboveKind)i);
      label->layout = spelch_lettering_set (lettering, words, size, SPELCH_LETTERS_PLAIN, column.width,
                                            PANGO_ALIGN_LEFT);
      label->box.x = column.x;
      spelch_lettering_measure (label->layout, &label->box.width, &label->box.height);
      spelch_from_above_place (f, spot.x, spot.y, &label->x, &label->y);
      high += label->box.height + f->gap;
    }
  return high;
}

/* ---- Scale bar ---- */

/* The longest that takes no more than a third of the drawing. */
static void
lay_bar (SpelchFromAbove *f, double size, const SpelchNumbers *numbers, SpelchLettering *lettering)
{
  static const double MM[] = { 5, 10, 20, 50, 100, 200, 500, 1000 };
  static const double INCH[] = { 6.35, 12.7, 25.4, 50.8, 101.6, 203.2, 508, 1016 };
  const double *table = numbers->unit == SPELCH_UNIT_INCH ? INCH : MM;
  f->bar_mm = table[0];
  for (guint i = 1; i < G_N_ELEMENTS (MM); i++)
    if (table[i] * f->scale <= f->room.width / 3)
      f->bar_mm = table[i];
  SpelchLength length = spelch_length_mm (f->bar_mm);
  g_autofree char *told
      = spelch_length_show (&length, numbers->unit, numbers->inch_style, numbers->decimal_sign);
  /* Translators: %s is the length of a scale bar under a picture. */
  g_autofree char *words = g_strdup_printf (_ ("%s, seen from above"), told);
  for (int i = 0; i < 2; i++)
    {
      double wide, high, room = f->room.width - f->bar_mm * f->scale - BAR_OFF * f->unit;
      g_clear_object (&f->bar);
      f->bar = spelch_lettering_set (lettering, i == 0 ? words : told, size * 0.95, SPELCH_LETTERS_PLAIN, 0,
                                     PANGO_ALIGN_LEFT);
      spelch_lettering_measure (f->bar, &wide, &high);
      if (wide <= room)
        break;
    }
}

void
spelch_from_above_lay_words (SpelchFromAbove *f, SpelchRect rect, double size, const SpelchNumbers *numbers,
                             SpelchLettering *lettering)
{
  double x = f->room.x + f->room.width + 2 * ELBOW * f->unit, first = size;
  SpelchRect column = { x, rect.y, rect.x + rect.width - x, rect.height };
  for (int i = 0; set_words (f, column, size, numbers, lettering) > rect.height && i < 12; i++)
    size *= 0.94;
  spelch_aimed_labels_stack (f->labels, SPELCH_N_FROM_ABOVES, column.y, column.y + column.height, f->gap);
  lay_bar (f, first, numbers, lettering);
}

char *
spelch_from_above_describe (const SpelchFromAbove *f)
{
  g_autoptr (GString) all = g_string_new (NULL);
  for (int i = 0; i < SPELCH_N_FROM_ABOVES; i++)
    if (f->labels[i].layout != NULL)
      g_string_append_printf (all, "%s%s", all->len > 0 ? "; " : "",
                              pango_layout_get_text (f->labels[i].layout));
  /* Translators: %s lists what is seen, "the piece; 2 tabs, 8 mm wide; clamps" */
  return g_strdup_printf (_ ("The work seen from above, to scale: %s."), all->str);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/words-log.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* ---- One entry ---- */

char *
spelch_words_log_entry (const SpelchLogEntry *entry, SpelchFacing facing)
{
  const char *came_out = spelch_words_grade (spelch_log_entry_grade (entry), facing);
  const char *reckoned = spelch_words_grade (entry->predicted, facing);
  bool motor = spelch_log_entry_at_motor (entry);
  if (spelch_log_entry_grade (entry) == entry->predicted)
    return g_strdup_printf (motor ? _ ("Motor side: %s, as reckoned") : _ ("Far side: %s, as reckoned"),
                            came_out);
  /* Translators: what came out, then what was foretold */
  return g_strdup_printf (motor ? _ ("Motor side: %s, %s reckoned") : _ ("Far side: %s, %s reckoned"),
                          came_out, reckoned);
}

char *
spelch_words_log_remarks (const SpelchLogEntry *entry)
{
  const struct
  {
    bool said;
    const char *words;
  } remarks[] = {
    { entry->piece == SPELCH_PIECE_TEST_STRIP, _ ("test strip") },
    { entry->burnt, _ ("burnt") },
    { entry->chattered, _ ("chattered") },
    { entry->clogged, _ ("clogged") },
    { entry->moved, _ ("the work moved") },
  };
  GString *words = g_string_new (NULL);
  for (guint i = 0; i < G_N_ELEMENTS (remarks); i++)
    if (remarks[i].said)
      g_string_append_printf (words, "%s%s", words->len > 0 ? ", " : "", remarks[i].words);
  return g_string_free (words, FALSE);
}

/* ---- What it teaches ---- */

static const char *
the_side (bool motor)
{
  return motor ? _ ("The motor side") : _ ("The far side");
}

static char *
of_points (const SpelchTally *tally, const SpelchLearnt *learnt, bool motor)
{
  /* Translators: %1$s is "The motor side" or "The far side" */
  const char *format
      = learnt->points > 0
            ? g_dngettext (GETTEXT_PACKAGE,
                           "%s came out worse than reckoned in %u of %u cut, so it is graded a point worse.",
                           "%s came out worse than reckoned in %u of %u cuts, so it is graded a point worse.",
                           tally->counted)
            : g_dngettext (
                GETTEXT_PACKAGE,
                "%s came out cleaner than reckoned in %u of %u cut, so it is graded a point better.",
                "%s came out cleaner than reckoned in %u of %u cuts, so it is graded a point better.",
                tally->counted);
  return g_strdup_printf (format, the_side (motor), learnt->points_cuts, tally->counted);
}

static char *
of_window (const SpelchLearnt *learnt, bool motor, const SpelchNumbers *numbers)
{
  g_autofree char *nearer = spelch_words_exactly (numbers, learnt->window_mm);
  return g_strdup_printf (
      g_dngettext (
          GETTEXT_PACKAGE,
          "%s was torn in %u cut though it lay clear of where the shear turns over, so that counts as "
          "%s nearer to the face.",
          "%s was torn in %u cuts though it lay clear of where the shear turns over, so that counts "
          "as %s nearer to the face.",
          learnt->window_cuts),
      the_side (motor), learnt->window_cuts, nearer);
}

/* "2 worse than reckoned, 1 as reckoned". */
static char *
counts (const SpelchTally *tally)
{
  const struct
  {
    guint n;
    const char *format;
  } kinds[] = {
    { tally->worse,
      g_dngettext (GETTEXT_PACKAGE, "%u worse than reckoned", "%u worse than reckoned", tally->worse) },
    { tally->better,
      g_dngettext (GETTEXT_PACKAGE, "%u cleaner than reckoned", "%u cleaner than reckoned", tally->better) },
    { tally->as_foretold,
      g_dngettext (GETTEXT_PACKAGE, "%u as reckoned", "%u as reckoned", tally->as_foretold) },
  };
  GString *words = g_string_new (NULL);
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (kinds[i].n > 0)
      {
        g_string_append (words, words->len > 0 ? ", " : "");
        g_string_append_printf (words, kinds[i].format, kinds[i].n);
      }
  return g_string_free (words, FALSE);
}

/* Nothing is corrected: how it stands. */
static char *
of_nothing (const SpelchTally *tally, bool motor)
{
  if (tally->counted == 0 && tally->before > 0)
    return g_strdup_printf (
        _ ("%s: what was written down came before the edge was sharpened or replaced and no longer counts."),
        the_side (motor));
  if (tally->counted == 0)
    return g_strdup_printf (
        _ ("%s: the work moved or the cut chattered, which says nothing about the shear."), the_side (motor));
  if (tally->as_foretold == tally->counted)
    return g_strdup_printf (
        g_dngettext (GETTEXT_PACKAGE, "%s came out as reckoned in %u cut, so nothing is corrected.",
                     "%s came out as reckoned in %u cuts, so nothing is corrected.", tally->counted),
        the_side (motor), tally->counted);
  g_autofree char *so_far = counts (tally);
  return g_strdup_printf (
      _ ("%s so far: %s. Two that agree, and outnumber those against, correct the grade."), the_side (motor),
      so_far);
}

char *
spelch_words_log_side (const SpelchTally *tally, const SpelchLearnt *learnt, bool motor,
                       const SpelchNumbers *numbers)
{
  bool points = learnt->points_cuts > 0, window = learnt->window_cuts > 0;
  if (tally->counted + tally->before + tally->passed == 0)
    return g_strdup ("");
  if (!points && !window)
    return of_nothing (tally, motor);
  g_autofree char *by_points = points ? of_points (tally, learnt, motor) : NULL;
  g_autofree char *by_window = window ? of_window (learnt, motor, numbers) : NULL;
  if (points && window)
    return g_strdup_printf ("%s %s", by_window, by_points);
  return g_strdup (points ? by_points : by_window);
}

char *
spelch_words_log_waiting (const SpelchTally *tally, guint needed, bool motor, const SpelchNumbers *numbers)
{
  guint agree = MAX (tally->worse, tally->better);
  const SpelchLearnt nothing = { 0 };
  if (agree == 0 || agree >= needed)
    return spelch_words_log_side (tally, &nothing, motor, numbers);
  g_autofree char *so_far = counts (tally);
  /* Translators: %s is "1 worse than reckoned, 1 as reckoned" */
  return g_strdup_printf (
      _ ("Your log on this edge so far: %s. That is %u of the %u entries that must agree, "
         "and outnumber those against, before the grade is corrected."),
      so_far, agree, needed);
}

char *
spelch_words_log_forces (const SpelchCalibration *calibration, const SpelchNumbers *numbers)
{
  g_autofree char *factor = spelch_words_decimal (numbers, calibration->factor, 2);
  return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE,
                   "%u reading of the spindle's load puts the forces in this board at %s times the tables'.",
                   "%u readings of the spindle's load put the forces in this board at %s times the tables'.",
                   calibration->readings),
      calibration->readings, factor);
}

char *
spelch_words_way (const SpelchNumbers *numbers, double metres)
{
  bool feet = numbers->unit == SPELCH_UNIT_INCH;
  double way = feet ? metres / 0.3048 : metres;
  g_autofree char *number = spelch_words_decimal (numbers, way, way < 10 ? 1 : 0);
  return g_strdup_printf (feet ? _ ("%s ft") : _ ("%s m"), number);
}

static bool
was_replaced (const SpelchBit *bit, const char *since)
{
  for (guint i = bit->n_renewals; i-- > 0;)
    if (strcmp (bit->renewals[i].date, since) == 0)
      return bit->renewals[i].kind == SPELCH_RENEWAL_REPLACED;
  return false;
}

char *
spelch_words_edge_now (const SpelchBit *bit, const SpelchNumbers *numbers)
{
  const char *since = spelch_bit_edge_since (bit);
  g_autofree char *way = spelch_words_way (numbers, bit->metres_cut);
  if (bit->metres_cut <= 0)
    return since[0] == '\0'
               ? g_strdup (_ ("No cut has been counted for it yet."))
               : g_strdup_printf (was_replaced (bit, since)
                                      ? _ ("It hasn't cut anything since it was replaced on %s.")
                                      : _ ("It hasn't cut anything since it was sharpened on %s."),
                                  since);
  if (since[0] == '\0')
    return g_strdup_printf (_ ("It has cut %s since it was new."), way);
  return g_strdup_printf (was_replaced (bit, since) ? _ ("It has cut %s since it was replaced on %s.")
                                                    : _ ("It has cut %s since it was sharpened on %s."),
                          way, since);
}

char *
spelch_words_edges_before (const SpelchBit *bit, const SpelchNumbers *numbers)
{
  GString *lines = g_string_new (NULL);
  for (guint i = bit->n_renewals; i-- > 0;)
    {
      const SpelchRenewal *renewal = &bit->renewals[i];
      g_autofree char *way = spelch_words_way (numbers, renewal->metres_cut);
      g_string_append (lines, lines->len > 0 ? "\n" : "");
      g_string_append_printf (lines,
                              renewal->kind == SPELCH_RENEWAL_REPLACED ? _ ("%s: replaced after %s")
                                                                       : _ ("%s: sharpened after %s"),
                              renewal->date, way);
    }
  return g_string_free (lines, FALSE);
}

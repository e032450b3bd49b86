/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/log-entry.h"

#include "shop/fault.h"

#include <glib/gi18n-lib.h>

static const char *const PIECES[] = { "finished", "test-strip" };

const SpelchCodes SPELCH_PIECE_CODES = { "piece", PIECES, G_N_ELEMENTS (PIECES) };

bool
spelch_log_entry_at_motor (const SpelchLogEntry *entry)
{
  return entry->face == entry->way_up;
}

int
spelch_log_entry_grade (const SpelchLogEntry *entry)
{
  return entry->as_predicted ? entry->predicted : entry->grade;
}

double
spelch_log_entry_load (const SpelchLogEntry *entry)
{
  return entry->load_w > 0 ? entry->load_w : entry->load_percent / 100 * entry->rated_w;
}

static char *
fault_of_words (const SpelchLogEntry *entry)
{
  return spelch_fault_id ("id", entry->id, false)
             ?: spelch_fault_date ("date", entry->date, false)
             ?: spelch_fault_id ("board", entry->board, false)
             ?: spelch_fault_id ("bit", entry->bit, false)
             ?: spelch_fault_id ("machine", entry->machine, true)
             ?: spelch_fault_code ("kind", &SPELCH_CUT_KIND_CODES, (int)entry->kind)
             ?: spelch_fault_code ("piece", &SPELCH_PIECE_CODES, (int)entry->piece)
             ?: spelch_fault_code ("face", &SPELCH_FACE_CODES, (int)entry->face)
             ?: spelch_fault_code ("way_up", &SPELCH_FACE_CODES, (int)entry->way_up)
             ?: spelch_fault_text ("model_version", entry->model_version, sizeof entry->model_version)
             ?: spelch_fault_text ("revision", entry->revision, sizeof entry->revision)
             ?: spelch_fault_text ("note", entry->note, sizeof entry->note);
}

static char *
fault_of_bounds (const SpelchLogEntry *entry)
{
  const SpelchBounds bounds[] = {
    { "passes", "", entry->n_passes, 0, SPELCH_MAX_PASSES },
    { "overcut", "mm", entry->overcut.mm, -200, 100 },
    { "speed_rpm", "rpm", entry->speed_rpm, 100, 100000, true },
    { "feed_mm_min", "mm/min", entry->feed_mm_min, 1, 200000, true },
    { "predicted_grade", "", entry->predicted, 1, 5 },
    { "clear_of_turn_over_mm", "mm", entry->clear_known ? entry->clear_mm : 0, 0, 200 },
    { "predicted_power_w", "W", entry->power_w, 0.1, 1e5, true },
    { "grade", "", entry->grade, 1, 5, true },
    { "spindle_load_w", "W", entry->load_w, 0.1, 1e5, true },
    { "spindle_load_percent", "%", entry->load_percent, 0.1, 300, true },
    { "rated_w", "W", entry->rated_w, 50, 1e5, true },
  };
  return spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
}

static char *
fault_of_passes (const SpelchLogEntry *entry)
{
  double above = 0;
  for (guint i = 0; i < entry->n_passes; i++)
    {
      double mm = entry->passes[i].mm;
      g_autofree char *member = g_strdup_printf ("passes[%u]", i);
      char *fault = spelch_fault_bounds (&(SpelchBounds){ member, "mm", mm, 0.05, 300 }, 1);
      if (fault != NULL)
        return fault;
      g_autofree char *value = spelch_fault_number (mm, "mm");
      g_autofree char *before = spelch_fault_number (above, "mm");
      /* a finishing pass is as deep as the one before */
      if (mm < above)
        return g_strdup_printf (_ ("%s (%s) must not be less deep than the pass before (%s)."), member, value,
                                before);
      above = mm;
    }
  return NULL;
}

static char *
fault_of_outcome (const SpelchLogEntry *entry)
{
  if (!entry->as_predicted && entry->grade == 0)
    return g_strdup (_ ("grade is missing; say what came out, or that it came out as_predicted."));
  if (entry->as_predicted && entry->grade != 0)
    return g_strdup_printf (_ ("grade (%d): either say the grade that came out or that it came out "
                               "as_predicted, not both."),
                            entry->grade);
  g_autofree char *watts = spelch_fault_number (entry->load_w, "W");
  g_autofree char *share = spelch_fault_number (entry->load_percent, "%");
  if (entry->load_w > 0 && entry->load_percent > 0)
    return g_strdup_printf (_ ("spindle_load_w (%s): say what the cut took of the spindle in watts or in "
                               "per cent, not both."),
                            watts);
  if (entry->load_percent > 0 && entry->rated_w <= 0)
    return g_strdup_printf (_ ("spindle_load_percent (%s): say with rated_w of how many watts."), share);
  return NULL;
}

char *
spelch_log_entry_fault (const SpelchLogEntry *entry)
{
  return fault_of_words (entry)
             ?: fault_of_bounds (entry)
             ?: fault_of_passes (entry)
             ?: fault_of_outcome (entry);
}

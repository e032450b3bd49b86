/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/corrections.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static bool
is_about (const SpelchLogEntry *entry, const char *board, const SpelchBit *bit)
{
  return strcmp (entry->board, board) == 0 && strcmp (entry->bit, bit->id) == 0;
}

/* By the edge that the bit has now. */
static bool
is_of_this_edge (const SpelchLogEntry *entry, const SpelchBit *bit)
{
  const char *since = spelch_bit_edge_since (bit);
  return *since == '\0' || strcmp (entry->date, since) > 0;
}

/* Whether it says something about the shear. */
static bool
is_telling (const SpelchLogEntry *entry)
{
  return !entry->moved && !entry->chattered;
}

static bool
counts (const SpelchLogEntry *entry, const char *board, const SpelchBit *bit)
{
  return is_about (entry, board, bit) && is_of_this_edge (entry, bit) && is_telling (entry);
}

/* Grades better (below 0) or worse than foretold. */
static int
difference (const SpelchLogEntry *entry)
{
  return spelch_log_entry_grade (entry) - entry->predicted;
}

SpelchTally
spelch_corrections_tally (const char *board, const SpelchBit *bit, bool motor, const SpelchLogEntry *entries,
                          guint n)
{
  SpelchTally tally = { 0 };
  for (guint i = 0; i < n; i++)
    {
      const SpelchLogEntry *entry = &entries[i];
      if (!is_about (entry, board, bit) || spelch_log_entry_at_motor (entry) != motor)
        continue;
      bool now = is_of_this_edge (entry, bit), counted = now && is_telling (entry);
      int by = difference (entry);
      tally.before += !now;
      tally.passed += now && !counted;
      tally.counted += counted;
      tally.better += counted && by < 0;
      tally.worse += counted && by > 0;
      tally.as_foretold += counted && by == 0;
    }
  return tally;
}

static bool
torn_by_window (const SpelchLogEntry *entry, const SpelchConstants *k)
{
  return entry->clear_known && entry->clear_mm < k->log_window_most && difference (entry) > 0;
}

/* ---- The window ---- */

static void
learn_window (const SpelchConstants *k, const SpelchLogEntry *const *entries, guint n, SpelchLearnt *learnt)
{
  guint torn = 0, kept = 0;
  double reach = 0;
  for (guint i = 0; i < n; i++)
    if (torn_by_window (entries[i], k))
      {
        torn++;
        reach = fmax (reach, entries[i]->clear_mm);
      }
  for (guint i = 0; i < n; i++)
    kept += entries[i]->clear_known && entries[i]->clear_mm <= reach && difference (entries[i]) <= 0;
  if (torn < k->log_results || torn <= kept)
    return;
  learnt->window_mm = fmin (reach + k->tolerance_depth, k->log_window_most);
  learnt->window_cuts = torn;
}

/* ---- The points ---- */

/* A cut foretold to be clean can't come out cleaner, and one at the worst grade no worse, so neither speaks
 * against. */
static void
learn_points (const SpelchConstants *k, const SpelchLogEntry *const *entries, guint n, SpelchLearnt *learnt)
{
  guint cleaner = 0, worse = 0, not_cleaner = 0, not_worse = 0;
  for (guint i = 0; i < n; i++)
    {
      int by = difference (entries[i]);
      if (learnt->window_cuts > 0 && torn_by_window (entries[i], k))
        continue;
      cleaner += by < 0;
      worse += by > 0;
      not_cleaner += by > 0 || (by == 0 && entries[i]->predicted > 1);
      not_worse += by < 0 || (by == 0 && entries[i]->predicted < 5);
    }
  bool better = cleaner >= k->log_results && cleaner > not_cleaner;
  bool poorer = worse >= k->log_results && worse > not_worse;
  learnt->points = better ? -(int)k->log_points : poorer ? (int)k->log_points : 0;
  learnt->points_cuts = better ? cleaner : poorer ? worse : 0;
}

static bool
learn_side (const SpelchConstants *k, const char *board, const SpelchBit *bit, bool motor,
            const SpelchLogEntry *entries, guint n, SpelchCorrection *correction)
{
  g_autofree const SpelchLogEntry **of_side = g_new (const SpelchLogEntry *, n + 1);
  SpelchLearnt *learnt = motor ? &correction->motor : &correction->far;
  guint found = 0;
  for (guint i = 0; i < n; i++)
    if (counts (&entries[i], board, bit) && spelch_log_entry_at_motor (&entries[i]) == motor)
      of_side[found++] = &entries[i];
  learn_window (k, of_side, found, learnt);
  learn_points (k, of_side, found, learnt);
  bool any = learnt->points_cuts > 0 || learnt->window_cuts > 0;
  for (guint i = 0; any && i < found; i++)
    if (strcmp (of_side[i]->date, correction->last) > 0)
      g_strlcpy (correction->last, of_side[i]->date, sizeof correction->last);
  return any;
}

bool
spelch_corrections_learn (const SpelchConstants *constants, const char *board, const SpelchBit *bit,
                          const SpelchLogEntry *entries, guint n, SpelchCorrection *learnt)
{
  *learnt = (SpelchCorrection){ 0 };
  g_strlcpy (learnt->board, board, sizeof learnt->board);
  g_strlcpy (learnt->bit, bit->id, sizeof learnt->bit);
  bool motor = learn_side (constants, board, bit, true, entries, n, learnt);
  bool far = learn_side (constants, board, bit, false, entries, n, learnt);
  return motor || far;
}

/* ---- The spindle's load ---- */

static int
by_value (const void *a, const void *b)
{
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

/* Measured over foretold; 0 where it doesn't count. */
static double
ratio_of (const SpelchLogEntry *entry, const char *board)
{
  double ratio = entry->power_w > 0 ? spelch_log_entry_load (entry) / entry->power_w : 0;
  bool counted = strcmp (entry->board, board) == 0 && !entry->clogged && ratio >= SPELCH_FACTOR_LEAST
                 && ratio <= SPELCH_FACTOR_MOST;
  return counted ? ratio : 0;
}

const SpelchLogEntry *
spelch_corrections_last_reading (const char *board, const SpelchLogEntry *entries, guint n)
{
  const SpelchLogEntry *last = NULL;
  for (guint i = 0; i < n; i++)
    if (ratio_of (&entries[i], board) > 0 && (last == NULL || strcmp (entries[i].date, last->date) >= 0))
      last = &entries[i];
  return last;
}

bool
spelch_corrections_calibrate (const char *board, const SpelchLogEntry *entries, guint n,
                              SpelchCalibration *calibration)
{
  g_autofree double *ratios = g_new (double, n + 1);
  guint found = 0;
  *calibration = (SpelchCalibration){ 0 };
  for (guint i = 0; i < n; i++)
    {
      double ratio = ratio_of (&entries[i], board);
      if (ratio > 0)
        ratios[found++] = ratio;
    }
  if (found == 0)
    return false;
  qsort (ratios, found, sizeof *ratios, by_value);
  g_strlcpy (calibration->board, board, sizeof calibration->board);
  calibration->readings = found;
  calibration->factor = (ratios[(found - 1) / 2] + ratios[found / 2]) / 2;
  return true;
}

/* ---- The part ---- */

void
spelch_corrections_take (const SpelchConstants *constants, SpelchPart *part, const SpelchBit *bits,
                         guint n_bits, const SpelchLogEntry *entries, guint n)
{
  SpelchCalibration calibration;
  const char *board = part->board.id;
  for (guint i = 0; i < n_bits; i++)
    {
      SpelchCorrection learnt;
      bool any = spelch_corrections_learn (constants, board, &bits[i], entries, n, &learnt);
      int old = spelch_part_find_correction (part, board, bits[i].id);
      learnt.off = old >= 0 && part->corrections[old].off;
      if (any)
        spelch_part_put_correction (part, &learnt);
      else if (old >= 0)
        spelch_part_drop_correction (part, (guint)old);
    }
  bool same = strcmp (part->calibration.board, board) == 0;
  bool any = spelch_corrections_calibrate (board, entries, n, &calibration);
  calibration.off = same && part->calibration.off;
  if (any || same)
    part->calibration = any ? calibration : (SpelchCalibration){ 0 };
}

/* ---- Entries ---- */

/* How far the layer is on the right side of where the shear turns over, by the bit's marks; below 0: on the
 * wrong one. */
static double
clearance (const SpelchPlan *plan, const SpelchEdge *edge)
{
  const SpelchFlutes *flutes = &plan->flutes;
  return edge->side == SPELCH_SIDE_MOTOR ? edge->span_from - (flutes->turn_over + flutes->overlap / 2)
                                         : flutes->turn_over - flutes->overlap / 2 - edge->span_to;
}

SpelchLogEntry
spelch_corrections_entry (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit,
                          const SpelchPlan *plan, const SpelchEdge *edge)
{
  SpelchLogEntry entry = { .kind = cut->kind,
                           .face = edge->face,
                           .way_up = cut->way_up,
                           .n_passes = plan->n_passes,
                           .overcut = spelch_length_mm (plan->overcut),
                           .speed_rpm = plan->speed_rpm,
                           .feed_mm_min = plan->feed_mm_min,
                           .predicted = edge->model_grade,
                           .power_w = plan->power_w.mid / plan->force_factor,
                           .model_version = SPELCH_MODEL_VERSION,
                           .as_predicted = true };
  double clear = clearance (plan, edge);
  g_strlcpy (entry.board, part->board.id, sizeof entry.board);
  g_strlcpy (entry.bit, bit->id, sizeof entry.bit);
  g_strlcpy (entry.machine, part->machine.id, sizeof entry.machine);
  for (guint i = 0; i < plan->n_passes; i++)
    entry.passes[i] = spelch_length_mm (plan->passes[i].tip_mm);
  entry.clear_known = plan->bit_kind == SPELCH_BIT_COMPRESSION && clear >= 0;
  entry.clear_mm = entry.clear_known ? clear : 0;
  return entry;
}

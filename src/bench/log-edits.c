/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/log-edits.h"
#include "bench/edits.h"
#include "shop/fault.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* ---- Corrections ---- */

static bool
same_learnt (const SpelchLearnt *a, const SpelchLearnt *b)
{
  return a->points == b->points && a->points_cuts == b->points_cuts && a->window_cuts == b->window_cuts
         && a->window_mm == b->window_mm;
}

static bool
same_correction (const SpelchCorrection *a, const SpelchCorrection *b)
{
  return same_learnt (&a->motor, &b->motor) && same_learnt (&a->far, &b->far)
         && strcmp (a->last, b->last) == 0;
}

SpelchLogState
spelch_log_state (const SpelchConstants *constants, const SpelchPart *part, const char *board,
                  const SpelchBit *bit, const SpelchLogEntry *entries, guint n)
{
  SpelchCorrection learnt;
  bool any = spelch_corrections_learn (constants, board, bit, entries, n, &learnt);
  int at = spelch_part_find_correction (part, board, bit->id);
  if (strcmp (part->board.id, board) != 0)
    return SPELCH_LOG_OTHER_BOARD;
  if (at < 0)
    return any ? SPELCH_LOG_NOT_TAKEN : SPELCH_LOG_NOTHING;
  const SpelchCorrection *held = &part->corrections[at];
  if (held->off)
    return SPELCH_LOG_OFF;
  return any && same_correction (held, &learnt) ? SPELCH_LOG_TAKEN : SPELCH_LOG_OLD;
}

SpelchLogState
spelch_log_state_of_forces (const SpelchPart *part, const char *board, const SpelchLogEntry *entries, guint n)
{
  SpelchCalibration learnt;
  bool any = spelch_corrections_calibrate (board, entries, n, &learnt);
  const SpelchCalibration *held = &part->calibration;
  if (strcmp (part->board.id, board) != 0)
    return SPELCH_LOG_OTHER_BOARD;
  if (strcmp (held->board, board) != 0)
    return any ? SPELCH_LOG_NOT_TAKEN : SPELCH_LOG_NOTHING;
  if (held->off)
    return SPELCH_LOG_OFF;
  bool same = any && held->factor == learnt.factor && held->readings == learnt.readings;
  return same ? SPELCH_LOG_TAKEN : SPELCH_LOG_OLD;
}

SpelchPart *
spelch_edit_take_edges (const SpelchConstants *constants, const SpelchPart *part, const SpelchBit *bit,
                        const SpelchLogEntry *entries, guint n)
{
  SpelchPart *next = spelch_part_copy (part);
  SpelchCorrection learnt;
  bool any = spelch_corrections_learn (constants, part->board.id, bit, entries, n, &learnt);
  int held = spelch_part_find_correction (next, part->board.id, bit->id);
  if (any)
    spelch_part_put_correction (next, &learnt);
  else if (held >= 0)
    spelch_part_drop_correction (next, (guint)held);
  return next;
}

SpelchPart *
spelch_edit_take_forces (const SpelchPart *part, const SpelchLogEntry *entries, guint n)
{
  SpelchPart *next = spelch_part_copy (part);
  spelch_corrections_calibrate (part->board.id, entries, n, &next->calibration);
  return next;
}

static bool
is_behind (SpelchLogState state)
{
  return state == SPELCH_LOG_NOT_TAKEN || state == SPELCH_LOG_OLD;
}

SpelchPart *
spelch_edit_follow_log (const SpelchConstants *constants, const SpelchPart *part, const SpelchBit *bit,
                        const SpelchLogEntry *entries, guint n)
{
  const char *board = part->board.id;
  SpelchCorrection edges;
  SpelchCalibration forces;
  bool take_edges = spelch_corrections_learn (constants, board, bit, entries, n, &edges)
                    && is_behind (spelch_log_state (constants, part, board, bit, entries, n));
  bool take_forces = spelch_corrections_calibrate (board, entries, n, &forces)
                     && is_behind (spelch_log_state_of_forces (part, board, entries, n));
  if (!take_edges && !take_forces)
    return NULL;
  SpelchPart *next = spelch_part_copy (part);
  if (take_edges)
    spelch_part_put_correction (next, &edges);
  if (take_forces)
    next->calibration = forces;
  return next;
}

SpelchPart *
spelch_edit_switch_edges (const SpelchPart *part, const char *board, const char *bit, bool off)
{
  SpelchPart *next = spelch_part_copy (part);
  int at = spelch_part_find_correction (next, board, bit);
  if (at >= 0)
    next->corrections[at].off = off;
  return next;
}

SpelchPart *
spelch_edit_switch_forces (const SpelchPart *part, bool off)
{
  SpelchPart *next = spelch_part_copy (part);
  if (*next->calibration.board != '\0')
    next->calibration.off = off;
  return next;
}

/* ---- What came out ---- */

SpelchOutcome
spelch_outcome_start (const SpelchPlan *plan, const char *date)
{
  SpelchOutcome outcome = { .piece = SPELCH_PIECE_TEST_STRIP };
  for (int side = 0; side < 2; side++)
    outcome.cuts[side] = spelch_plan_worst (plan, (SpelchSide)side) != NULL;
  g_strlcpy (outcome.date, date, sizeof outcome.date);
  return outcome;
}

char *
spelch_outcome_fault (const SpelchOutcome *outcome)
{
  const SpelchBounds bounds[] = { { "spindle_load_w", "W", outcome->load_w, 0.1, 1e5, true } };
  return spelch_fault_date ("date", outcome->date, false)
             ?: spelch_fault_text ("note", outcome->note, sizeof outcome->note)
             ?: spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
}

guint
spelch_outcome_entries (const SpelchOutcome *outcome, const SpelchPart *part, const SpelchCut *cut,
                        const SpelchBit *bit, const SpelchPlan *plan, const char *revision,
                        SpelchLogEntry entries[2])
{
  guint n = 0;
  for (int side = 0; side < 2; side++)
    {
      const SpelchEdge *edge = spelch_plan_worst (plan, (SpelchSide)side);
      guint came_out = outcome->came_out[side];
      if (edge == NULL || came_out == 0)
        continue;
      SpelchLogEntry entry = spelch_corrections_entry (part, cut, bit, plan, edge);
      /* No finer than they are known. */
      entry.power_w = round (entry.power_w * 10) / 10;
      entry.clear_mm = round (entry.clear_mm * 1000) / 1000;
      entry.as_predicted = came_out == 1;
      entry.grade = entry.as_predicted ? 0 : (int)came_out - 1;
      entry.piece = outcome->piece;
      entry.burnt = outcome->burnt;
      entry.chattered = outcome->chattered;
      entry.clogged = outcome->clogged;
      entry.moved = outcome->moved;
      entry.load_w = n == 0 ? outcome->load_w : 0;
      g_strlcpy (entry.date, outcome->date, sizeof entry.date);
      g_strlcpy (entry.note, outcome->note, sizeof entry.note);
      g_strlcpy (entry.revision, revision, sizeof entry.revision);
      entries[n++] = entry;
    }
  return n;
}

/* ---- Wear ---- */

static void
wear_on (SpelchPart *part, const char *bit, double metres)
{
  int at = spelch_part_find_bit (part, bit);
  if (at >= 0)
    part->bits[at] = spelch_bit_wear_on (&part->bits[at], metres);
}

SpelchPart *
spelch_edit_done (const SpelchPart *part, guint cut, const SpelchBit *bit, const SpelchPlan *plan)
{
  bool accepted = strcmp (part->cuts[cut].bit, bit->id) == 0;
  SpelchPart *next = accepted ? spelch_part_copy (part) : spelch_edit_bit (part, cut, bit);
  wear_on (next, bit->id, spelch_wear_metres (plan));
  wear_on (next, plan->scoring.bit, spelch_wear_metres_scoring (plan));
  return next;
}

/* ---- New edges ---- */

SpelchBit
spelch_bit_renewed (const SpelchBit *bit, const SpelchRenewing *renewing)
{
  SpelchBit renewed = spelch_bit_renew (bit, renewing->kind, renewing->date);
  if (renewing->kind != SPELCH_RENEWAL_SHARPENED)
    return renewed;
  renewed.sharpened_diameter = renewing->diameter;
  if (bit->kind == SPELCH_BIT_COMPRESSION)
    renewed.sharpened_up_shear = renewing->up_shear;
  return renewed;
}

char *
spelch_renewing_fault (const SpelchRenewing *renewing, const SpelchBit *bit)
{
  SpelchBit renewed = spelch_bit_renewed (bit, renewing);
  const char *since = spelch_bit_edge_since (bit);
  char *fault = spelch_fault_date ("renewed_on", renewing->date, false);
  if (fault == NULL && strcmp (renewing->date, since) < 0)
    fault = g_strdup_printf (_ ("renewed_on (%s): the edge it has now is of a later day, %s."),
                             renewing->date, since);
  return fault ?: spelch_bit_fault (&renewed);
}

SpelchPart *
spelch_edit_renew (const SpelchPart *part, const char *bit, const SpelchRenewing *renewing)
{
  SpelchPart *next = spelch_part_copy (part);
  int at = spelch_part_find_bit (next, bit);
  if (at >= 0)
    next->bits[at] = spelch_bit_renewed (&next->bits[at], renewing);
  return next;
}

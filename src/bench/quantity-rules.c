/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/quantity-rules.h"
#include "bench/edits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define LEAST_STEP_MM  0.1 /* passes stay this far apart */
#define THINNEST_SHARE 0.5 /* of the size sold as: a board beyond these is another board */
#define THICKEST_SHARE 1.5

static const SpelchCut *
cut_of (const SpelchPlanned *planned)
{
  return planned->made;
}

/* The last pass that isn't a finishing pass, from 1; 0 when there are none. */
static guint
last_pass (const SpelchPlan *plan)
{
  for (guint n = plan->n_passes; n > 0; n--)
    if (!plan->passes[n - 1].finishing)
      return n;
  return 0;
}

static double
tip (const SpelchPlan *plan, guint pass)
{
  return pass == 0 || pass > plan->n_passes ? 0 : plan->passes[pass - 1].tip_mm;
}

static bool
is_floor (SpelchQuantityId id)
{
  return id.kind == SPELCH_MARK_PASS && id.index == 0;
}

bool
spelch_quantity_same (SpelchQuantityId a, SpelchQuantityId b)
{
  return a.kind == b.kind && a.index == b.index;
}

guint
spelch_quantity_list (const SpelchPlanned *planned, SpelchQuantityId *ids, guint most)
{
  guint n = 0;
  for (guint i = 1; i < last_pass (planned->plan) && n < most; i++)
    ids[n++] = (SpelchQuantityId){ SPELCH_MARK_PASS, i };
  if (n < most)
    ids[n++] = (SpelchQuantityId){ planned->plan->through ? SPELCH_MARK_OVERCUT : SPELCH_MARK_PASS, 0 };
  if (n < most)
    ids[n++] = (SpelchQuantityId){ SPELCH_MARK_THICKNESS, 0 };
  if (n < most)
    ids[n++] = (SpelchQuantityId){ SPELCH_MARK_ALLOWANCE, 0 };
  return n;
}

guint
spelch_quantity_pass (const SpelchPlanned *planned, SpelchQuantityId id)
{
  if (id.kind == SPELCH_MARK_OVERCUT || is_floor (id))
    return last_pass (planned->plan);
  return id.kind == SPELCH_MARK_PASS ? id.index : 0;
}

bool
spelch_quantity_scores (const SpelchPlanned *planned, SpelchQuantityId id)
{
  const SpelchPlan *plan = planned->plan;
  return id.kind == SPELCH_MARK_PASS && id.index >= 1 && id.index <= plan->n_passes
         && plan->passes[id.index - 1].bit == 1;
}

/* ---- Values ---- */

static double
allowance_now (const SpelchPlanned *planned)
{
  const SpelchHeld *held = &cut_of (planned)->held;
  if (held->allowance_held)
    return held->allowance.mm;
  return planned->plan->n_passes > 0 ? planned->plan->passes[0].side_allowance_mm : 0;
}

/* The deepest blind cut of the part: a board can't be thinner. NULL when there is none. */
static const SpelchCut *
deepest_blind (const SpelchPart *part)
{
  const SpelchCut *deepest = NULL;
  for (guint i = 0; i < part->n_cuts; i++)
    if (!part->cuts[i].through && (deepest == NULL || part->cuts[i].depth.mm > deepest->depth.mm))
      deepest = &part->cuts[i];
  return deepest;
}

static void
stop_low (SpelchReading *reading, double at, SpelchQuantityLimit by)
{
  reading->lower = at;
  reading->at_lower = by;
}

/* The first limit met from below counts. */
static void
stop_high (SpelchReading *reading, double at, SpelchQuantityLimit by)
{
  if (at >= reading->upper)
    return;
  reading->upper = at;
  reading->at_upper = by;
}

static void
stop_at_pass_before (SpelchReading *reading, const SpelchPlan *plan, guint pass, double from)
{
  double before = pass > 1 ? tip (plan, pass - 1) : 0;
  stop_low (reading, before + LEAST_STEP_MM - from,
            pass > 1 ? SPELCH_STOPPED_BY_SHALLOWER : SPELCH_STOPPED_BY_FACE);
}

static const SpelchLength *
held_at (const SpelchHeld *held, double depth)
{
  for (guint i = 0; i < held->n_passes; i++)
    if (fabs (held->passes[i].mm - depth) < 1e-9)
      return &held->passes[i];
  return NULL;
}

static void
read_pass (const SpelchPlanned *planned, guint pass, SpelchReading *reading)
{
  const SpelchPlan *plan = planned->plan;
  const SpelchLength *held = held_at (&cut_of (planned)->held, tip (plan, pass));
  reading->value = tip (plan, pass);
  stop_at_pass_before (reading, plan, pass, 0);
  stop_high (reading, plan->depth_most, SPELCH_STOPPED_BY_REACH);
  stop_high (reading, tip (plan, pass - 1) + plan->step_most, SPELCH_STOPPED_BY_STEP);
  stop_high (reading, tip (plan, pass + 1) - LEAST_STEP_MM, SPELCH_STOPPED_BY_DEEPER);
  reading->held = held != NULL && plan->passes[pass - 1].held;
  if (reading->held)
    reading->typed = *held;
}

static void
read_floor (const SpelchPlanned *planned, SpelchReading *reading)
{
  const SpelchPlan *plan = planned->plan;
  reading->value = plan->through_depth;
  reading->typed = cut_of (planned)->depth;
  stop_low (reading, LEAST_STEP_MM, SPELCH_STOPPED_BY_FACE);
  stop_high (reading, plan->depth_most, SPELCH_STOPPED_BY_REACH);
  stop_high (reading, plan->thickness - LEAST_STEP_MM, SPELCH_STOPPED_BY_COMING_OUT);
}

static void
read_overcut (const SpelchPlanned *planned, SpelchReading *reading)
{
  const SpelchPlan *plan = planned->plan;
  const SpelchHeld *held = &cut_of (planned)->held;
  reading->value = plan->overcut;
  stop_at_pass_before (reading, plan, last_pass (plan), plan->thickness);
  stop_high (reading, plan->depth_most - plan->thickness, SPELCH_STOPPED_BY_REACH);
  reading->held = held->overcut_held;
  if (held->overcut_held)
    reading->typed = held->overcut;
}

static void
read_thickness (const SpelchPlanned *planned, SpelchReading *reading)
{
  const SpelchPlan *plan = planned->plan;
  const SpelchBoard *board = &planned->part->board;
  const SpelchCut *deepest = deepest_blind (planned->part);
  double least = MAX (board->nominal.mm * THINNEST_SHARE, plan->near_layer + plan->far_layer + LEAST_STEP_MM);
  reading->value = plan->thickness;
  stop_low (reading, least, SPELCH_STOPPED_BY_BOARD);
  if (deepest != NULL && deepest->depth.mm + LEAST_STEP_MM > least)
    stop_low (reading, deepest->depth.mm + LEAST_STEP_MM, SPELCH_STOPPED_BY_CUT);
  stop_high (reading, board->nominal.mm * THICKEST_SHARE, SPELCH_STOPPED_BY_BOARD);
  reading->held = board->measured.mm > 0;
  if (reading->held)
    reading->typed = board->measured;
}

static void
read_allowance (const SpelchPlanned *planned, SpelchReading *reading)
{
  const SpelchHeld *held = &cut_of (planned)->held;
  reading->value = allowance_now (planned);
  stop_low (reading, 0, SPELCH_STOPPED_BY_NOTHING_LEFT);
  stop_high (reading, planned->plan->flutes.diameter / 2, SPELCH_STOPPED_BY_BIT_WIDTH);
  reading->held = held->allowance_held;
  if (reading->held)
    reading->typed = held->allowance;
}

/* As deep as it severs the face layer, or as held. */
static void
read_score (const SpelchPlanned *planned, guint pass, SpelchReading *reading)
{
  const SpelchPlan *plan = planned->plan;
  reading->value = tip (plan, pass);
  stop_at_pass_before (reading, plan, pass, 0);
  stop_high (reading, tip (plan, pass + 1) - LEAST_STEP_MM, SPELCH_STOPPED_BY_DEEPER);
  reading->held = cut_of (planned)->held.score.mm > 0;
  if (reading->held)
    reading->typed = cut_of (planned)->held.score;
}

static void
read_kind (const SpelchPlanned *planned, SpelchQuantityId id, SpelchReading *reading)
{
  if (id.kind == SPELCH_MARK_OVERCUT)
    read_overcut (planned, reading);
  else if (id.kind == SPELCH_MARK_THICKNESS)
    read_thickness (planned, reading);
  else if (id.kind == SPELCH_MARK_ALLOWANCE)
    read_allowance (planned, reading);
  else if (is_floor (id))
    read_floor (planned, reading);
  else if (spelch_quantity_scores (planned, id))
    read_score (planned, id.index, reading);
  else if (id.index <= planned->plan->n_passes)
    read_pass (planned, id.index, reading);
}

SpelchReading
spelch_quantity_read (const SpelchPlanned *planned, SpelchQuantityId id)
{
  SpelchReading reading = { .upper = HUGE_VAL };
  read_kind (planned, id, &reading);
  if (fabs (reading.typed.mm - reading.value) > 1e-9 || reading.typed.typed[0] == '\0')
    reading.typed = spelch_length_mm (reading.value);
  reading.lower = MIN (reading.lower, reading.value);
  reading.upper = reading.upper > reading.value && isfinite (reading.upper) ? reading.upper : reading.value;
  return reading;
}

/* ---- Setting and letting go ---- */

/* Holds every pass before the last where the plan has it, so that moving one leaves the others; a scoring
 * pass is held apart. */
static void
hold_passes (const SpelchPlanned *planned, SpelchQuantityId moved, const SpelchLength *length,
             SpelchHeld *held)
{
  guint last = last_pass (planned->plan);
  held->n_passes = 0;
  for (guint pass = 1; pass < last; pass++)
    {
      SpelchQuantityId id = { SPELCH_MARK_PASS, pass };
      if (spelch_quantity_scores (planned, id))
        continue;
      bool moves = moved.index == pass;
      held->passes[held->n_passes++] = moves ? *length : spelch_quantity_read (planned, id).typed;
    }
  held->passes_held = true;
}

static bool
goes_with_bit (SpelchQuantityId id)
{
  return id.kind != SPELCH_MARK_THICKNESS && !is_floor (id);
}

SpelchPart *
spelch_quantity_set (const SpelchPlanned *planned, SpelchQuantityId id, const SpelchLength *length)
{
  SpelchPart *part = goes_with_bit (id)
                         ? spelch_edit_accept (planned->part, planned->cut, planned->made, planned->bit)
                         : spelch_part_copy (planned->part);
  SpelchCut *cut = &part->cuts[planned->cut];
  switch (id.kind)
    {
    case SPELCH_MARK_PASS:
      if (is_floor (id))
        cut->depth = *length;
      else if (spelch_quantity_scores (planned, id))
        cut->held.score = *length;
      else
        hold_passes (planned, id, length, &cut->held);
      break;
    case SPELCH_MARK_OVERCUT:
      cut->held.overcut_held = true;
      cut->held.overcut = *length;
      break;
    case SPELCH_MARK_THICKNESS:
      part->board.measured = *length;
      break;
    case SPELCH_MARK_ALLOWANCE:
      cut->held.allowance_held = true;
      cut->held.allowance = *length;
      break;
    default:
      break;
    }
  return part;
}

SpelchPart *
spelch_quantity_release (const SpelchPlanned *planned, SpelchQuantityId id)
{
  SpelchPart *part = spelch_part_copy (planned->part);
  SpelchHeld *held = &part->cuts[planned->cut].held;
  switch (id.kind)
    {
    case SPELCH_MARK_PASS:
      if (spelch_quantity_scores (planned, id))
        {
          held->score = spelch_length_mm (0);
          break;
        }
      held->passes_held = false;
      held->n_passes = 0;
      break;
    case SPELCH_MARK_OVERCUT:
      held->overcut_held = false;
      held->overcut = spelch_length_mm (0);
      break;
    case SPELCH_MARK_THICKNESS:
      part->board.measured = spelch_length_mm (0);
      break;
    case SPELCH_MARK_ALLOWANCE:
      held->allowance_held = false;
      held->allowance = spelch_length_mm (0);
      break;
    default:
      break;
    }
  return part;
}

double
spelch_quantity_step (SpelchUnit unit)
{
  return unit == SPELCH_UNIT_INCH ? SPELCH_MM_PER_INCH / 64 : 0.1;
}

double
spelch_quantity_page (SpelchUnit unit)
{
  return unit == SPELCH_UNIT_INCH ? SPELCH_MM_PER_INCH / 16 : 1;
}

/* ---- Words ---- */

char *
spelch_quantity_name (SpelchQuantityId id)
{
  switch ((int)id.kind)
    {
    case SPELCH_MARK_OVERCUT:
      return g_strdup (_ ("Overcut"));
    case SPELCH_MARK_THICKNESS:
      return g_strdup (_ ("Thickness"));
    case SPELCH_MARK_ALLOWANCE:
      return g_strdup (_ ("Allowance"));
    default:
      return is_floor (id) ? g_strdup (_ ("Depth")) : g_strdup_printf (_ ("Pass %u"), id.index);
    }
}

char *
spelch_quantity_merge (SpelchQuantityId id)
{
  switch ((int)id.kind)
    {
    case SPELCH_MARK_OVERCUT:
      return g_strdup ("overcut");
    case SPELCH_MARK_THICKNESS:
      return g_strdup ("thickness");
    case SPELCH_MARK_ALLOWANCE:
      return g_strdup ("allowance");
    default:
      return is_floor (id) ? g_strdup ("depth") : g_strdup_printf ("pass.%u", id.index);
    }
}

char *
spelch_quantity_gesture (SpelchQuantityId id)
{
  switch ((int)id.kind)
    {
    case SPELCH_MARK_OVERCUT:
      return g_strdup (_ ("change the overcut"));
    case SPELCH_MARK_THICKNESS:
      return g_strdup (_ ("change the board's thickness"));
    case SPELCH_MARK_ALLOWANCE:
      return g_strdup (_ ("change the finishing allowance"));
    default:
      return is_floor (id) ? g_strdup (_ ("change the depth"))
                           : g_strdup_printf (_ ("move pass %u"), id.index);
    }
}

char *
spelch_quantity_release_name (SpelchQuantityId id)
{
  switch ((int)id.kind)
    {
    case SPELCH_MARK_OVERCUT:
      return g_strdup (_ ("let the overcut go"));
    case SPELCH_MARK_THICKNESS:
      return g_strdup (_ ("let the board's thickness go"));
    case SPELCH_MARK_ALLOWANCE:
      return g_strdup (_ ("let the finishing allowance go"));
    default:
      return g_strdup (_ ("let the passes go"));
    }
}

char *
spelch_quantity_stop (const SpelchPlanned *planned, SpelchQuantityId id, bool upper,
                      const SpelchNumbers *numbers)
{
  const SpelchPlan *plan = planned->plan;
  SpelchReading reading = spelch_quantity_read (planned, id);
  guint pass = spelch_quantity_pass (planned, id);
  g_autofree char *reach = spelch_words_length (numbers, plan->depth_most);
  g_autofree char *step = spelch_words_length (numbers, plan->step_most);
  const SpelchCut *deepest = deepest_blind (planned->part);
  switch ((int)(upper ? reading.at_upper : reading.at_lower))
    {
    case SPELCH_STOPPED_BY_SHALLOWER:
      return g_strdup_printf (_ ("Stops here: pass %u is just above."), pass - 1);
    case SPELCH_STOPPED_BY_DEEPER:
      return g_strdup_printf (_ ("Stops here: pass %u is just below."), pass + 1);
    case SPELCH_STOPPED_BY_STEP:
      return g_strdup_printf (_ ("Stops here: this bit cuts at most %s in one pass."), step);
    case SPELCH_STOPPED_BY_REACH:
      return g_strdup_printf (_ ("Stops here: the bit reaches %s."), reach);
    case SPELCH_STOPPED_BY_COMING_OUT:
      return g_strdup (_ ("Stops here: any deeper and the cut would come through."));
    case SPELCH_STOPPED_BY_CUT:
      return g_strdup_printf (_ ("Stops here: the cut “%s” needs this thickness."), deepest->name);
    case SPELCH_STOPPED_BY_BOARD:
      return g_strdup (upper ? _ ("Stops here: for a thicker board choose another board.")
                             : _ ("Stops here: for a thinner board choose another board."));
    case SPELCH_STOPPED_BY_NOTHING_LEFT:
      return g_strdup (_ ("Stops here: nothing is left for a finishing pass."));
    case SPELCH_STOPPED_BY_BIT_WIDTH:
      return g_strdup (_ ("Stops here: a finishing pass takes off no more than half the bit's width."));
    default:
      return g_strdup (_ ("Stops here: this is the board's face."));
    }
}

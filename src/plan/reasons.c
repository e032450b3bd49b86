/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/reasons.h"

#include <math.h>

/* Forces under this are nothing to speak of, N. */
#define LEAST_FORCE_N 0.5

/* More than half as long again as the quickest is slow. */
#define SLOW_FROM 1.5

static const char *const WORDS[] = { "edges-accepted",
                                     "presses-in",
                                     "backed",
                                     "carries-chips-up",
                                     "presses-down",
                                     "stop",
                                     "tears",
                                     "tip-too-long",
                                     "tip-too-short",
                                     "packs-chips",
                                     "lifts",
                                     "bends",
                                     "hot",
                                     "worn",
                                     "slow" };
SPELCH_TABLE_HAS (WORDS, SPELCH_N_REASONS);
const SpelchCodes SPELCH_REASON_CODES = { "reason", WORDS, G_N_ELEMENTS (WORDS) };

bool
spelch_reason_is_for (SpelchReasonKind kind)
{
  return kind < SPELCH_REASON_STOP;
}

static SpelchReason *
add (SpelchChoice *choice, SpelchReasonKind kind, double value, double limit)
{
  if (choice->n_reasons == SPELCH_MAX_REASONS)
    return &choice->reasons[SPELCH_MAX_REASONS - 1];
  SpelchReason *reason = &choice->reasons[choice->n_reasons++];
  *reason = (SpelchReason){ .kind = kind, .value = value, .limit = limit };
  return reason;
}

static SpelchTermKind
heaviest_term (const SpelchEdge *edge)
{
  SpelchTermKind heaviest = SPELCH_TERM_SHEAR;
  for (int kind = 0; kind < SPELCH_N_TERMS; kind++)
    if (spelch_edge_points (edge, (SpelchTermKind)kind) > spelch_edge_points (edge, heaviest))
      heaviest = (SpelchTermKind)kind;
  return heaviest;
}

static void
add_of_face (SpelchChoice *choice, SpelchReasonKind kind, const SpelchEdge *edge, double limit)
{
  SpelchReason *reason = add (choice, kind, edge->grade, limit);
  reason->side = edge->side;
  reason->face = edge->face;
  reason->seen = edge->seen;
  reason->term = heaviest_term (edge);
  reason->load = edge->by_entry_mm > 0 ? SPELCH_LOAD_PULL_OUT : edge->load;
  reason->chip_mm = edge->chip_mm;
}

/* Pressing a face in is a merit where pulling it out costs something. */
static void
weigh_pressing (const SpelchConstants *k, SpelchChoice *choice)
{
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    {
      const SpelchEdge *edge = spelch_plan_worst (&choice->plan, (SpelchSide)side);
      SpelchFacing facing = side == SPELCH_SIDE_MOTOR ? choice->plan.near_facing : choice->plan.far_facing;
      if (edge != NULL && edge->load == SPELCH_LOAD_PRESS_IN && k->shear[facing].pull_out > 0)
        add_of_face (choice, SPELCH_REASON_PRESSES_IN, edge, 0);
    }
}

static int
accepted (const SpelchPart *part, const SpelchEdge *edge)
{
  return edge->seen ? part->accepted_seen : part->accepted_hidden;
}

/* Where a face comes out as accepted for what it rests on. */
static void
weigh_backing (const SpelchPart *part, SpelchChoice *choice)
{
  const SpelchEdge *edge = spelch_plan_worst (&choice->plan, SPELCH_SIDE_FAR);
  if (edge != NULL && edge->grade <= accepted (part, edge)
      && spelch_edge_points (edge, SPELCH_TERM_BACKING) < 0)
    add_of_face (choice, SPELCH_REASON_BACKED, edge, 0);
}

static void
weigh_edges (const SpelchPart *part, SpelchChoice *choice)
{
  const SpelchPlan *plan = &choice->plan;
  const SpelchWindows *w = &plan->windows;
  int wear = 0;
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    {
      const SpelchEdge *edge = spelch_plan_worst (plan, (SpelchSide)side);
      if (edge == NULL)
        continue;
      wear = MAX (wear, spelch_edge_points (edge, SPELCH_TERM_WEAR));
      if (edge->grade <= accepted (part, edge))
        continue;
      add_of_face (choice, SPELCH_REASON_TEARS, edge, accepted (part, edge));
      bool pulled = edge->load == SPELCH_LOAD_PULL_OUT || edge->by_entry_mm > 0;
      bool turns_over = plan->flutes.turn_over > 0 && plan->flutes.turn_over < plan->flutes.length;
      if (!pulled || !turns_over)
        continue;
      if (side == SPELCH_SIDE_MOTOR && plan->flutes.turn_over > w->needs_up_shear_to)
        add (choice, SPELCH_REASON_TIP_TOO_LONG, plan->flutes.turn_over, w->needs_up_shear_to);
      if (side == SPELCH_SIDE_FAR && plan->flutes.turn_over < w->needs_up_shear_from)
        add (choice, SPELCH_REASON_TIP_TOO_SHORT, plan->flutes.turn_over, w->needs_up_shear_from);
    }
  if (wear > 0)
    add (choice, SPELCH_REASON_WORN, wear, 0);
}

/* Share of the highest pass that carries its chips up; negative where the edges carry them neither way, or
 * where the cut is open at a side and they fall out. */
static double
carried_up (const SpelchPlan *plan)
{
  double height = 0;
  for (guint i = 0; i < plan->n_passes; i++)
    height = fmax (height, plan->passes[i].tip_mm - plan->passes[i].from_mm);
  if (plan->flutes.helix < SPELCH_NEUTRAL_HELIX_RAD || plan->chip_room <= 0 || height <= 0)
    return -1;
  return CLAMP (plan->flutes.turn_over, 0, height) / height;
}

static void
weigh_chips (SpelchChoice *choice, bool merits)
{
  double up = carried_up (&choice->plan);
  if (merits && up > 0.5)
    add (choice, SPELCH_REASON_CARRIES_UP, up, choice->plan.chip_room);
  if (!merits && up >= 0 && up <= 0.5)
    add (choice, SPELCH_REASON_PACKS_CHIPS, up, choice->plan.chip_room);
}

static void
weigh_seat (SpelchChoice *choice, bool merits)
{
  const SpelchPlan *plan = &choice->plan;
  const SpelchSeat *seat = plan->n_seats > 0 ? &plan->seats[0] : NULL;
  if (seat == NULL || seat->mean_n < LEAST_FORCE_N || merits == seat->apart)
    return;
  add (choice, merits ? SPELCH_REASON_PRESSES_DOWN : SPELCH_REASON_LIFTS, seat->mean_n, plan->hold_needed_n);
}

static void
weigh_stops (SpelchChoice *choice)
{
  for (guint i = 0; i < choice->plan.n_stops; i++)
    {
      const SpelchStop *stop = &choice->plan.stops[i];
      if (stop->kind < SPELCH_ASK_SPEED_MARK)
        add (choice, SPELCH_REASON_STOP, stop->value, stop->limit)->stop = *stop;
    }
}

void
spelch_reasons_find (const SpelchConstants *constants, const SpelchPart *part, double quickest,
                     SpelchChoice *choice)
{
  const SpelchPlan *plan = &choice->plan;
  choice->n_reasons = 0;
  if (plan->n_passes > 0)
    {
      if (choice->meets)
        add (choice, SPELCH_REASON_ACCEPTED, choice->seen, choice->hidden);
      weigh_pressing (constants, choice);
      weigh_backing (part, choice);
      weigh_chips (choice, true);
      weigh_seat (choice, true);
    }
  weigh_stops (choice);
  if (plan->n_passes == 0)
    return;
  weigh_edges (part, choice);
  weigh_chips (choice, false);
  weigh_seat (choice, false);
  if (plan->deflection_mm > plan->deflection_limit_mm + 1e-6)
    add (choice, SPELCH_REASON_BENDS, plan->deflection_mm, plan->deflection_limit_mm);
  if (plan->wall_heat > constants->heat_caution)
    add (choice, SPELCH_REASON_HOT, plan->wall_heat, constants->heat_caution);
  double time = spelch_choose_time (constants, choice);
  if (quickest > 0 && time > quickest * SLOW_FROM)
    add (choice, SPELCH_REASON_SLOW, time, quickest);
}

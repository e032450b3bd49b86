/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/stages.h"

#include "plan/case.h"

#include <math.h>
#include <string.h>

SpelchCut
spelch_stages_groove (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                      const SpelchBit *bit, const SpelchBit *scorer)
{
  SpelchCase c;
  spelch_case_prepare (&c, constants, part, cut, scorer);
  SpelchUncertain off = spelch_case_uncertain (&c, false);
  SpelchCut groove = *cut;
  double severs = ceil ((c.near_layer + off.depth_minus) * 10 - 1e-6) / 10;
  double depth = cut->held.score.mm > 0 ? cut->held.score.mm : severs;
  groove.through = false;
  groove.depth = spelch_length_mm (fmin (fmin (depth, c.step_most), c.floor_depth));
  groove.tabs = (SpelchTabs){ 0 };
  groove.stick_out = spelch_length_mm (0);
  memset (&groove.held, 0, sizeof groove.held);
  groove.held.passes_held = true;
  /* A narrower bit takes as many tracks as make room for the other one. */
  if (!c.single_wall && spelch_cut_width (cut) <= 0)
    groove.width = spelch_length_mm (fmax (spelch_bit_diameter_now (bit), c.diameter));
  return groove;
}

static void
add_pass (const SpelchPlan *groove, SpelchPlan *plan)
{
  guint n = groove->n_passes;
  memmove (&plan->passes[n], &plan->passes[0], plan->n_passes * sizeof plan->passes[0]);
  memcpy (plan->passes, groove->passes, n * sizeof plan->passes[0]);
  for (guint i = 0; i < n; i++)
    plan->passes[i].bit = 1;
  plan->n_passes += n;
}

static void
add_stops (const SpelchPlan *groove, SpelchPlan *plan)
{
  for (guint i = 0; i < groove->n_stops; i++)
    {
      bool told = false;
      for (guint j = 0; j < plan->n_stops; j++)
        told |= plan->stops[j].kind == groove->stops[i].kind;
      if (told)
        continue;
      plan->stops[plan->n_stops] = groove->stops[i];
      plan->stops[plan->n_stops++].bit = 1;
    }
  plan->verdict = MAX (plan->verdict, groove->verdict);
}

static double
parting (const SpelchSeat *seat)
{
  return seat->apart ? seat->mean_n : -seat->mean_n;
}

static void
join_seats (const SpelchPlan *groove, SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_seats && i < groove->n_seats; i++)
    {
      double bound = fmax (plan->seats[i].bound_n, groove->seats[i].bound_n);
      if (parting (&groove->seats[i]) > parting (&plan->seats[i]))
        plan->seats[i] = groove->seats[i];
      plan->seats[i].bound_n = bound;
    }
}

/* Forces of the pass that needs most power, and the worst of what has a limit. */
static void
join_forces (const SpelchPlan *groove, SpelchPlan *plan)
{
  if (groove->power_w.mid > plan->power_w.mid)
    {
      plan->power_w = groove->power_w;
      plan->tangential_mean_n = groove->tangential_mean_n;
      plan->axial_mean_n = groove->axial_mean_n;
      plan->axial_n = groove->axial_n;
      plan->ripple = groove->ripple;
    }
  if (groove->stress_share > plan->stress_share)
    {
      plan->stress_share = groove->stress_share;
      plan->stress_mpa = groove->stress_mpa;
    }
  plan->slow |= groove->slow;
  plan->sideways_peak_n = fmax (plan->sideways_peak_n, groove->sideways_peak_n);
  plan->lift_bound_n = fmax (plan->lift_bound_n, groove->lift_bound_n);
  if (groove->deflection_mm > plan->deflection_mm)
    {
      plan->deflection_mm = groove->deflection_mm;
      plan->deflection_machine_mm = groove->deflection_machine_mm;
    }
  plan->chip_room = fmax (plan->chip_room, groove->chip_room);
  plan->wall_heat = fmax (plan->wall_heat, groove->wall_heat);
  join_seats (groove, plan);
}

static void
join_holding (const SpelchPlan *groove, SpelchPlan *plan)
{
  bool both = plan->hold_factor > 0 && groove->hold_factor > 0;
  plan->hold_needed_n = fmax (plan->hold_needed_n, groove->hold_needed_n);
  if (!both)
    return;
  if (groove->hold_factor < plan->hold_factor)
    plan->hold_way = groove->hold_way;
  plan->hold_factor = fmin (plan->hold_factor, groove->hold_factor);
  plan->hold_factor_worst = fmin (plan->hold_factor_worst, groove->hold_factor_worst);
}

static void
join_upkeep (const SpelchPlan *groove, SpelchPlan *plan)
{
  plan->path_mm += groove->path_mm;
  plan->time_s += groove->time_s;
  plan->edge_path_m += groove->edge_path_m;
  plan->cost += groove->cost;
  plan->wear_share = fmax (plan->wear_share, groove->wear_share);
  if (plan->life_known && groove->life_known)
    plan->life_m_left = fmin (plan->life_m_left, groove->life_m_left);
}

void
spelch_stages_join (const SpelchPlan *groove, const SpelchBit *scorer, SpelchPlan *plan)
{
  SpelchScoring *scoring = &plan->scoring;
  scoring->kind = scorer->kind;
  scoring->flutes = groove->flutes;
  scoring->entry = groove->entry;
  scoring->stick_out_mm = groove->stick_out_mm;
  scoring->in_collet_mm = groove->in_collet_mm;
  scoring->feed_per_tooth = groove->feed_per_tooth;
  scoring->time_s = groove->time_s;
  scoring->path_mm = groove->path_mm;
  g_strlcpy (scoring->bit, scorer->id, sizeof scoring->bit);
  g_strlcpy (scoring->name, scorer->name, sizeof scoring->name);
  add_stops (groove, plan);
  if (groove->n_passes == 0 || plan->n_passes == 0)
    return;
  plan->severs_face = groove->passes[groove->n_passes - 1].tip_mm >= plan->near_layer - 1e-9;
  add_pass (groove, plan);
  join_forces (groove, plan);
  join_holding (groove, plan);
  join_upkeep (groove, plan);
}

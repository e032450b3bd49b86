/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/numbers.h"

#include "mechanics/chip-room.h"
#include "mechanics/chip.h"
#include "plan/hold.h"
#include "plan/tabs.h"
#include "plan/travel.h"
#include "plan/upkeep.h"

#include <math.h>
#include <stdlib.h>

static SpelchBand
band (double part, double mid)
{
  return (SpelchBand){ mid * (1 - part), mid, mid * (1 + part) };
}

SpelchBand
spelch_numbers_axial (const SpelchConstants *constants, double mid)
{
  double factor = constants->band_axial;
  return mid >= 0 ? (SpelchBand){ mid / factor, mid, mid * factor }
                  : (SpelchBand){ mid * factor, mid, mid / factor };
}

/* The most there is of each over all passes, N. */
typedef struct
{
  double sideways;
  double lift_mean, press_mean; /* mean axial force toward the motor, and away; negative when it never is */
  double lift, press;           /* bounds over a turn */
} Extremes;

static Extremes
find_extremes (const SpelchLoads *const *loads, guint n, double feed_per_tooth)
{
  Extremes most = { 0, -HUGE_VAL, -HUGE_VAL, -HUGE_VAL, -HUGE_VAL };
  for (guint i = 0; i < n; i++)
    {
      double axial = feed_per_tooth * loads[i]->moving.axial;
      if (i > 0 && loads[i] == loads[i - 1])
        continue;
      SpelchForcePeaks peaks = spelch_force_peaks (&loads[i]->turn, feed_per_tooth);
      most.sideways = fmax (most.sideways, peaks.sideways_peak);
      most.lift_mean = fmax (most.lift_mean, axial);
      most.press_mean = fmax (most.press_mean, -axial);
      most.lift = fmax (most.lift, peaks.lift_peak);
      most.press = fmax (most.press, peaks.press_peak);
    }
  return most;
}

static void
add_seat (const SpelchCase *c, SpelchPlan *plan, SpelchPair pair, double parting_mean, double parting_peak)
{
  double mean = fabs (parting_mean);
  plan->seats[plan->n_seats++] = (SpelchSeat){ .pair = pair,
                                               .apart = parting_mean > 0,
                                               .mean_n = mean,
                                               .low_n = mean / c->k->band_axial,
                                               .high_n = mean * c->k->band_axial,
                                               .bound_n = fmax (parting_peak, 0) };
}

/* What the axial force does where things touch, in the pass that parts them most: toward the motor it lifts
 * the board off a bed below, and draws it to a table or base on its motor side. */
static void
find_seats (const SpelchCase *c, const Extremes *most, SpelchPlan *plan)
{
  switch (c->machine->kind)
    {
    case SPELCH_MACHINE_GANTRY:
      add_seat (c, plan, SPELCH_PAIR_BOARD_BED, most->lift_mean, most->lift);
      break;
    case SPELCH_MACHINE_TABLE:
      add_seat (c, plan, SPELCH_PAIR_BOARD_TABLE, most->press_mean, most->press);
      break;
    case SPELCH_MACHINE_HAND:
    default:
      add_seat (c, plan, SPELCH_PAIR_BASE_BOARD, most->press_mean, most->press);
      add_seat (c, plan, SPELCH_PAIR_BOARD_BENCH, most->lift_mean, most->lift);
    }
}

static int
by_share (const void *a, const void *b)
{
  double x = ((const SpelchLimit *)a)->share, y = ((const SpelchLimit *)b)->share;
  return (x < y) - (x > y);
}

static void
list_limits (const SpelchCase *c, const SpelchSolution *solution, SpelchPlan *plan)
{
  bool held = c->cut->held.feed_mm_min > 0;
  for (int i = 0; i < SPELCH_N_LIMITS; i++)
    if (solution->share[i] > 0)
      plan->limits[plan->n_limits++]
          = (SpelchLimit){ (SpelchLimitKind)i, solution->share[i], solution->feed_at[i],
                           !held && i == (int)solution->binding };
  qsort (plan->limits, plan->n_limits, sizeof *plan->limits, by_share);
}

static void
find_forces (const SpelchCase *c, const SpelchLoads *const *loads, const SpelchSolution *solution,
             SpelchPlan *plan)
{
  const SpelchLoads *worst = loads[solution->worst_pass];
  double f = solution->feed_per_tooth, turns = solution->speed_rpm / 60;
  double part = spelch_loads_band (c, solution->speed_rpm);
  Extremes most = find_extremes (loads, plan->n_passes, f);
  plan->power_w = band (part, (worst->standing.power_per_speed + f * worst->moving.power_per_speed) * turns);
  plan->slow = part > (spelch_loads_is_panel (c) ? c->k->band_panel : c->k->band_solid);
  plan->tangential_mean_n = worst->standing.tangential + f * worst->moving.tangential;
  plan->axial_mean_n = f * worst->moving.axial;
  plan->last_axial_n = f * loads[plan->n_passes - 1]->moving.axial;
  plan->axial_n = spelch_numbers_axial (c->k, plan->axial_mean_n);
  plan->sideways_peak_n = most.sideways;
  plan->ripple = spelch_force_peaks (&worst->turn, f).ripple;
  plan->lift_bound_n = fmax (most.lift, 0);
  plan->rubbing_share = spelch_rubbing_share (worst->edge_force, worst->cutting_force,
                                              spelch_chip_mean (f, c->diameter, worst->engaged));
  find_seats (c, &most, plan);
  spelch_hold_fill (c, loads, f, part, plan);
  spelch_tabs_find (c, loads, f, part, plan);
}

void
spelch_numbers_fill (const SpelchCase *c, const SpelchLoads *const *loads, const SpelchSolution *solution,
                     SpelchPlan *plan)
{
  double f = solution->feed_per_tooth, paths[SPELCH_MAX_PASSES];
  plan->speed_rpm = solution->speed_rpm;
  plan->feed_mm_min = solution->feed_mm_min;
  plan->speed_held = solution->speed_held;
  plan->cool_feed_mm_min = solution->feed_at[SPELCH_LIMIT_HEAT] * c->k->heat_burns / c->k->heat_caution;
  plan->plunge_feed_mm_min = round (solution->feed_mm_min * c->k->plunge_share / 10) * 10;
  plan->feed_per_tooth = f;
  plan->engaged_mm = c->engaged;
  plan->cutting_speed = spelch_chip_cutting_speed (c->diameter, solution->speed_rpm);
  plan->deflection_limit_mm = spelch_solve_deflection_limit (c);
  plan->deflection_mm = solution->share[SPELCH_LIMIT_BENDING] * plan->deflection_limit_mm;
  plan->deflection_machine_mm = solution->machine_gives_mm;
  plan->stress_share = solution->share[SPELCH_LIMIT_STRESS];
  plan->stress_mpa = plan->stress_share * spelch_solve_stress_limit (c);
  plan->chip_room = solution->share[SPELCH_LIMIT_ROOM];
  plan->wall_heat = solution->share[SPELCH_LIMIT_HEAT] * c->k->heat_burns;
  for (guint i = 0; i < plan->n_passes; i++)
    {
      double engaged = loads[i]->engaged;
      plan->chip_max = fmax (plan->chip_max, spelch_chip_max (f, c->diameter, engaged));
      plan->chip_mean = fmax (plan->chip_mean, spelch_chip_mean (f, c->diameter, engaged));
      paths[i] = spelch_travel_of_pass (c, &plan->passes[i]) * MAX (c->cut->quantity, 1);
      plan->path_mm += paths[i];
    }
  spelch_upkeep_find (c, loads, f, paths, plan);
  find_forces (c, loads, solution, plan);
  list_limits (c, solution, plan);
  plan->time_s = spelch_travel_time (c, plan->passes, plan->n_passes, &plan->entry, plan->feed_mm_min);
  if (c->machine->kind == SPELCH_MACHINE_TABLE)
    plan->bit_height_mm = plan->passes[plan->n_passes - 1].tip_mm;
}

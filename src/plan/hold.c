/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/hold.h"

#include <math.h>

#define GRAVITY 9.80665 /* m/s2, standard */

/* A holding that fails wholly still counts as checked. */
#define CHECKED 1e-6

/* Halvings of the range of feeds: a thousandth of a millimetre, and finer than feeds are set. */
#define HALVINGS 14

/* Weight of the piece, N; 0 unless its size and density are told. */
static double
weight_of_piece (const SpelchCase *c)
{
  double volume = c->part->length.mm * c->part->width.mm * c->thickness * 1e-9; /* m3 */
  return volume * spelch_loads_density (c) * GRAVITY;
}

static double
vacuum_told (const SpelchCase *c)
{
  const SpelchHolding *hold = &c->part->holding;
  double kpa = hold->vacuum_kpa > 0 ? hold->vacuum_kpa : c->k->vacuum_default;
  return hold->method == SPELCH_HOLD_VACUUM ? kpa / 1000 * hold->area_mm2 : 0;
}

/* Without the weight; HUGE_VAL where it isn't reckoned because nothing moves. */
static double
press_told (const SpelchCase *c)
{
  const SpelchHolding *hold = &c->part->holding;
  switch (hold->method)
    {
    case SPELCH_HOLD_VACUUM:
      return vacuum_told (c) * c->k->vacuum_leak;
    case SPELCH_HOLD_CLAMPS:
      return hold->clamp_force_n;
    case SPELCH_HOLD_SCREWS:
      return HUGE_VAL;
    case SPELCH_HOLD_HANDS:
      return c->machine->kind == SPELCH_MACHINE_HAND ? HUGE_VAL : 0;
    case SPELCH_HOLD_UNTOLD:
    default:
      return 0;
    }
}

double
spelch_hold_press (const SpelchCase *c)
{
  return press_told (c) + weight_of_piece (c);
}

bool
spelch_hold_is_told (const SpelchCase *c)
{
  double press = press_told (c);
  return c->machine->kind == SPELCH_MACHINE_GANTRY && press > 0 && press < HUGE_VAL;
}

static double
friction_of (const SpelchCase *c)
{
  if (c->part->holding.on_rubber)
    return c->k->hold_friction_rubber;
  return spelch_case_facing (c, SPELCH_SIDE_FAR) == SPELCH_FACING_LAMINATE ? c->k->hold_friction_laminate
                                                                           : c->k->hold_friction_raw;
}

SpelchHeldDown
spelch_hold_find (const SpelchCase *c, const SpelchLoads *loads, double feed_per_tooth, double part)
{
  SpelchForcePeaks design = spelch_loads_design_peaks (loads, feed_per_tooth);
  SpelchHoldBed bed = { friction_of (c), fmin (c->part->length.mm, c->part->width.mm) / 2 };
  SpelchHoldLoad load = { design.sideways_peak, loads->above_bed, design.lift_peak };
  SpelchHeldDown held = { .side = load.side,
                          .lift = fmax (load.lift, 0),
                          .needed = spelch_holding_press (&bed, &load, c->k->hold_factor) };
  if (!spelch_hold_is_told (c) || load.side <= 0)
    return held;
  SpelchGives at_worst;
  double press = spelch_hold_press (c);
  held.factor = fmax (spelch_holding_factor (&bed, &load, press, &held.way), CHECKED);
  bed.friction *= c->k->hold_friction_low;
  load.side *= 1 + part;
  load.lift *= c->k->band_axial;
  held.worst = spelch_holding_factor (&bed, &load, press, &at_worst);
  return held;
}

bool
spelch_hold_suffices (const SpelchCase *c, double factor, double worst)
{
  return factor >= c->k->hold_factor && worst >= 1;
}

double
spelch_hold_share (const SpelchCase *c, const SpelchHeldDown *held)
{
  if (held->factor <= 0)
    return 0;
  return fmax (c->k->hold_factor / held->factor, 1 / fmax (held->worst, CHECKED));
}

static bool
holds (const SpelchCase *c, const SpelchLoads *loads, double part, double feed_per_tooth)
{
  SpelchHeldDown held = spelch_hold_find (c, loads, feed_per_tooth, part);
  return spelch_hold_share (c, &held) <= 1;
}

double
spelch_hold_feed (const SpelchCase *c, const SpelchLoads *loads, double part, double most)
{
  if (!spelch_hold_is_told (c) || holds (c, loads, part, most))
    return most;
  double low = 0, high = most;
  if (!holds (c, loads, part, 0))
    return 0;
  for (int i = 0; i < HALVINGS; i++)
    {
      double middle = (low + high) / 2;
      if (holds (c, loads, part, middle))
        low = middle;
      else
        high = middle;
    }
  return low;
}

void
spelch_hold_fill (const SpelchCase *c, const SpelchLoads *const *loads, double feed_per_tooth, double part,
                  SpelchPlan *plan)
{
  if (c->machine->kind != SPELCH_MACHINE_GANTRY)
    return;
  plan->hold_available_n = spelch_hold_is_told (c) ? spelch_hold_press (c) : 0;
  plan->hold_vacuum_n = vacuum_told (c);
  plan->hold_friction = friction_of (c);
  plan->weight_n = weight_of_piece (c);
  for (guint i = 0; i < plan->n_passes; i++)
    {
      if (i > 0 && loads[i] == loads[i - 1])
        continue;
      SpelchHeldDown held = spelch_hold_find (c, loads[i], feed_per_tooth, part);
      bool worse = plan->hold_factor <= 0 || held.factor < plan->hold_factor;
      plan->hold_side_n = fmax (plan->hold_side_n, held.side);
      plan->hold_lift_n = fmax (plan->hold_lift_n, held.lift);
      plan->hold_needed_n = fmax (plan->hold_needed_n, held.needed);
      plan->hold_factor_worst
          = plan->hold_factor <= 0 ? held.worst : fmin (plan->hold_factor_worst, held.worst);
      plan->hold_way = worse ? held.way : plan->hold_way;
      plan->hold_factor = worse ? held.factor : plan->hold_factor;
    }
}

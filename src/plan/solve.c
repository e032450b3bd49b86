/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/solve.h"

#include "mechanics/chip.h"

#include <math.h>

/* A speed range is looked at in steps of 1000 rpm: more than any spindle has. */
#define MAX_SPEEDS 128

double
spelch_solve_deflection_limit (const SpelchCase *c)
{
  int accepted = c->part->accepted_seen;
  return accepted <= 1   ? c->k->deflection_grade_1
         : accepted == 2 ? c->k->deflection_grade_2
                         : c->k->deflection_grade_3;
}

double
spelch_solve_stress_limit (const SpelchCase *c)
{
  switch (c->bit->body_material)
    {
    case SPELCH_TOOL_CARBIDE:
      return c->k->stress_carbide;
    case SPELCH_TOOL_HSS:
      return c->k->stress_hss;
    case SPELCH_TOOL_STEEL:
    default:
      return c->k->stress_steel;
    }
}

double
spelch_solve_hands_limit (const SpelchCase *c)
{
  switch (c->machine->kind)
    {
    case SPELCH_MACHINE_HAND:
      /* one that nobody weighed may be a small one */
      return c->machine->mass_kg <= c->k->trim_router_mass ? c->k->hand_force_trim : c->k->hand_force_router;
    case SPELCH_MACHINE_TABLE:
      return c->k->hand_force_router;
    case SPELCH_MACHINE_GANTRY:
    default:
      return 0;
    }
}

static double
feed_limit (const SpelchCase *c)
{
  double by_kind = c->machine->kind == SPELCH_MACHINE_HAND    ? c->k->hand_feed_max
                   : c->machine->kind == SPELCH_MACHINE_TABLE ? c->k->table_feed_max
                                                              : HUGE_VAL;
  return c->machine->max_feed_mm_min > 0 ? fmin (by_kind, c->machine->max_feed_mm_min) : by_kind;
}

static double
power_available (const SpelchCase *c, double rpm)
{
  const SpelchMachine *machine = c->machine;
  double rated = machine->rated_rpm > 0 ? machine->rated_rpm : machine->rpm_max;
  double efficiency = machine->power_is_input ? c->k->efficiency_router : c->k->efficiency_spindle;
  return machine->power_w * efficiency * fmin (1, rated > 0 ? rpm / rated : 1);
}

/* Bending costs finish, not fingers: where the deflection asked for leaves only feeds so slow that the wall
 * gets hot, the feed that keeps it cool is taken, up to the coarsest deflection, and the share shows by how
 * much the limit is exceeded. */
static double
bending_cap (const SpelchCase *c, const SpelchLoads *l, double most)
{
  double asked = spelch_force_feed_for_peak (&l->turn, spelch_solve_deflection_limit (c) / l->give, most);
  double cool = l->heat_times_feed / c->k->heat_caution;
  if (asked >= cool)
    return asked;
  return fmin (cool, spelch_force_feed_for_peak (&l->turn, c->k->deflection_grade_3 / l->give, most));
}

/* Feed per tooth at which each limit is reached whatever the speed, over all passes: the least of each. Heat
 * is the least allowed. */
static void
find_caps (const SpelchCase *c, const SpelchLoads *const *loads, guint n, double chip_limit,
           double caps[SPELCH_N_LIMITS])
{
  double hands = spelch_solve_hands_limit (c), thickest = c->k->chip_cap * c->diameter;
  for (int i = 0; i < SPELCH_N_LIMITS; i++)
    caps[i] = i == SPELCH_LIMIT_HEAT ? 0 : HUGE_VAL;
  if (chip_limit < HUGE_VAL)
    caps[SPELCH_LIMIT_EDGE] = spelch_chip_feed_for_max (chip_limit, c->diameter, loads[n - 1]->engaged);
  for (guint i = 0; i < n; i++)
    {
      const SpelchLoads *l = loads[i];
      double most = spelch_chip_feed_for_max (thickest, c->diameter, l->engaged);
      if (i > 0 && l == loads[i - 1])
        continue;
      caps[SPELCH_LIMIT_CHIP] = fmin (caps[SPELCH_LIMIT_CHIP], most);
      caps[SPELCH_LIMIT_BENDING] = fmin (caps[SPELCH_LIMIT_BENDING], bending_cap (c, l, most));
      caps[SPELCH_LIMIT_STRESS]
          = fmin (caps[SPELCH_LIMIT_STRESS],
                  spelch_loads_design_feed (l, spelch_solve_stress_limit (c) / l->stress_per_n, most));
      if (hands > 0)
        caps[SPELCH_LIMIT_HANDS]
            = fmin (caps[SPELCH_LIMIT_HANDS], spelch_force_feed_for_peak (&l->turn, hands, most));
      if (l->room_per_feed > 0)
        caps[SPELCH_LIMIT_ROOM] = fmin (caps[SPELCH_LIMIT_ROOM], 1 / l->room_per_feed);
      caps[SPELCH_LIMIT_HEAT] = fmax (caps[SPELCH_LIMIT_HEAT], l->heat_times_feed / c->k->heat_burns);
    }
}

/* Adds the limits that depend on the speed. */
static void
cap_at_speed (const SpelchCase *c, const SpelchLoads *const *loads, guint n, double rpm,
              double caps[SPELCH_N_LIMITS])
{
  double turns = rpm / 60, available = power_available (c, rpm);
  caps[SPELCH_LIMIT_MACHINE]
      = spelch_chip_feed_per_tooth (feed_limit (c), rpm, spelch_flute_fewest_edges (&c->flutes));
  caps[SPELCH_LIMIT_POWER] = HUGE_VAL;
  for (guint i = 0; i < n; i++)
    {
      double spare = available - loads[i]->standing.power_per_speed * turns;
      caps[SPELCH_LIMIT_POWER]
          = fmin (caps[SPELCH_LIMIT_POWER], fmax (spare, 0) / (loads[i]->moving.power_per_speed * turns));
    }
}

/* The limit that sets the feed; heat bounds it from below and never sets it. */
static SpelchLimitKind
least_cap (const double caps[SPELCH_N_LIMITS])
{
  SpelchLimitKind least = SPELCH_LIMIT_CHIP;
  for (int i = 0; i < SPELCH_N_LIMITS; i++)
    if (i != SPELCH_LIMIT_HEAT && caps[i] < caps[least])
      least = (SpelchLimitKind)i;
  return least;
}

/* A feed one would dial in, never above @feed. */
static double
round_down (double feed)
{
  double step = feed >= 1000 ? 100 : feed >= 200 ? 20 : 5;
  return floor (feed / step + 1e-9) * step;
}

static bool
speed_is_allowed (const SpelchCase *c, double rpm)
{
  return c->bit->max_rpm <= 0 || rpm <= c->bit->max_rpm + 1e-9;
}

/* A speed under trial. */
typedef struct
{
  double rpm, feed;
  bool burns; /* the chip stays so thin that the wall gets too hot */
} Speed;

static guint
try_speeds (const SpelchCase *c, const SpelchLoads *const *loads, guint n, double caps[SPELCH_N_LIMITS],
            Speed speeds[MAX_SPEEDS])
{
  double held = c->cut->held.feed_mm_min;
  int edges = spelch_flute_fewest_edges (&c->flutes);
  guint count = 0;
  for (guint i = 0; i < MAX_SPEEDS && spelch_machine_speed (c->machine, i) > 0; i++)
    {
      double rpm = spelch_machine_speed (c->machine, i);
      if (!speed_is_allowed (c, rpm))
        continue;
      cap_at_speed (c, loads, n, rpm, caps);
      double feed = spelch_chip_feed (caps[least_cap (caps)], rpm, edges);
      if (held > 0)
        feed = fmin (feed, held);
      double set = held > 0 ? feed : round_down (feed);
      bool burns = spelch_chip_feed_per_tooth (set, rpm, edges) < caps[SPELCH_LIMIT_HEAT];
      speeds[count++] = (Speed){ rpm, feed, burns };
    }
  return count;
}

/* The slowest speed whose feed comes within the spare of the best; of those that don't burn the wall, if
 * there are such. A held feed is to be reached in full. */
static double
choose_speed (const SpelchCase *c, const SpelchLoads *const *loads, guint n, double caps[SPELCH_N_LIMITS])
{
  Speed speeds[MAX_SPEEDS];
  guint count = try_speeds (c, loads, n, caps, speeds);
  double spare = c->cut->held.feed_mm_min > 0 ? 1e-9 : c->k->speed_spare, best = 0;
  bool cool = false;
  for (guint i = 0; i < count; i++)
    cool |= !speeds[i].burns;
  for (guint i = 0; i < count; i++)
    if (!cool || !speeds[i].burns)
      best = fmax (best, speeds[i].feed);
  for (guint i = 0; i < count; i++)
    if ((!cool || !speeds[i].burns) && speeds[i].feed >= best * (1 - spare))
      return speeds[i].rpm;
  return c->machine->rpm_min; /* no speed is allowed: the plan says so */
}

/* What each limit is used to: of the quantity it guards, not of the feed. */
static void
find_shares (const SpelchCase *c, const SpelchLoads *const *loads, guint n, double chip_limit,
             SpelchSolution *s)
{
  double f = s->feed_per_tooth, turns = s->speed_rpm / 60, most_power = -1;
  double hands = spelch_solve_hands_limit (c);
  double *share = s->share;
  share[SPELCH_LIMIT_MACHINE] = s->feed_mm_min / feed_limit (c);
  for (guint i = 0; i < n; i++)
    {
      const SpelchLoads *l = loads[i];
      double chip = spelch_chip_max (f, c->diameter, l->engaged);
      double peak = spelch_force_peaks (&l->turn, f).sideways_peak;
      double design = spelch_loads_design_peaks (l, f).sideways_peak;
      double power = (l->standing.power_per_speed + f * l->moving.power_per_speed) * turns;
      if (power > most_power)
        s->worst_pass = i;
      most_power = fmax (most_power, power);
      share[SPELCH_LIMIT_CHIP] = fmax (share[SPELCH_LIMIT_CHIP], chip / (c->k->chip_cap * c->diameter));
      if (chip_limit < HUGE_VAL && i == n - 1)
        share[SPELCH_LIMIT_EDGE] = chip / chip_limit;
      share[SPELCH_LIMIT_BENDING]
          = fmax (share[SPELCH_LIMIT_BENDING], peak * l->give / spelch_solve_deflection_limit (c));
      share[SPELCH_LIMIT_STRESS]
          = fmax (share[SPELCH_LIMIT_STRESS], design * l->stress_per_n / spelch_solve_stress_limit (c));
      share[SPELCH_LIMIT_POWER] = fmax (share[SPELCH_LIMIT_POWER], power / power_available (c, s->speed_rpm));
      if (hands > 0)
        share[SPELCH_LIMIT_HANDS] = fmax (share[SPELCH_LIMIT_HANDS], peak / hands);
      share[SPELCH_LIMIT_ROOM] = fmax (share[SPELCH_LIMIT_ROOM], l->room_per_feed * f);
      if (f > 0)
        share[SPELCH_LIMIT_HEAT] = fmax (share[SPELCH_LIMIT_HEAT], l->heat_times_feed / f / c->k->heat_burns);
    }
}

SpelchSolution
spelch_solve (const SpelchCase *c, const SpelchLoads *const *loads, guint n, double chip_limit)
{
  SpelchSolution s = { 0 };
  int edges = spelch_flute_fewest_edges (&c->flutes);
  double caps[SPELCH_N_LIMITS];
  const SpelchHeld *held = &c->cut->held;
  find_caps (c, loads, n, chip_limit, caps);
  s.speed_rpm = held->speed_rpm > 0 ? held->speed_rpm : choose_speed (c, loads, n, caps);
  cap_at_speed (c, loads, n, s.speed_rpm, caps);
  s.binding = least_cap (caps);
  s.feed_mm_min = held->feed_mm_min > 0 ? held->feed_mm_min
                                        : round_down (spelch_chip_feed (caps[s.binding], s.speed_rpm, edges));
  s.feed_per_tooth = spelch_chip_feed_per_tooth (s.feed_mm_min, s.speed_rpm, edges);
  find_shares (c, loads, n, chip_limit, &s);
  return s;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/solve.h"

#include "mechanics/chip.h"
#include "plan/hold.h"

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

/* Feeds per tooth, mm, at which limits are reached: the most each allows, and what is taken as such. Of heat
 * it is the least. */
typedef struct
{
  double asked[SPELCH_N_LIMITS];
  double taken[SPELCH_N_LIMITS];
  double hold[2]; /* at the usual cutting speeds, and at slow ones, whose forces are less sure */
} Caps;

/* The feed per tooth that keeps the wall cool. */
static double
cool_feed (const SpelchCase *c, const SpelchLoads *l)
{
  return l->heat_times_feed / c->k->heat_caution;
}

static void
lower (double *cap, double to)
{
  *cap = fmin (*cap, to);
}

/* Bending costs finish, not fingers: where the deflection asked for leaves only feeds so slow that the wall
 * gets hot, the feed that keeps it cool is taken, up to the coarsest deflection, and the share shows by how
 * much the limit is exceeded. */
static void
cap_bending (const SpelchCase *c, const SpelchLoads *l, Caps *caps)
{
  double most = c->diameter;
  double asked = spelch_force_feed_for_peak (&l->turn, spelch_solve_deflection_limit (c) / l->give, most);
  double coarsest = spelch_force_feed_for_peak (&l->turn, c->k->deflection_grade_3 / l->give, most);
  lower (&caps->asked[SPELCH_LIMIT_BENDING], asked);
  lower (&caps->taken[SPELCH_LIMIT_BENDING], fmax (asked, fmin (cool_feed (c, l), coarsest)));
}

/* Work that isn't held well enough for a feed that keeps the wall cool wants holding, not a slower feed: the
 * checks stop it. */
static void
cap_holding (const SpelchCase *c, const SpelchLoads *l, Caps *caps)
{
  double most = spelch_chip_feed_for_max (c->k->chip_cap * c->diameter, c->diameter, l->engaged);
  double usual = spelch_loads_band (c, HUGE_VAL), slow = spelch_loads_band (c, 0);
  const double hold[] = { spelch_hold_feed (c, l, usual, most), spelch_hold_feed (c, l, slow, most) };
  for (int i = 0; i < 2; i++)
    if (hold[i] < most) /* else the chip is too thick before the work gives */
      lower (&caps->hold[i], hold[i]);
}

static double
cool_everywhere (const SpelchCase *c, const SpelchLoads *const *loads, guint n)
{
  double cool = 0;
  for (guint i = 0; i < n; i++)
    cool = fmax (cool, cool_feed (c, loads[i]));
  return cool;
}

/* The limits that hold whatever the speed, over all passes. */
static void
find_caps (const SpelchCase *c, const SpelchLoads *const *loads, guint n, double chip_limit, Caps *caps)
{
  double hands = spelch_solve_hands_limit (c), thickest = c->k->chip_cap * c->diameter;
  double *asked = caps->asked;
  for (int i = 0; i < SPELCH_N_LIMITS; i++)
    asked[i] = caps->taken[i] = i == SPELCH_LIMIT_HEAT ? 0 : HUGE_VAL;
  caps->hold[0] = caps->hold[1] = HUGE_VAL;
  if (chip_limit < HUGE_VAL)
    asked[SPELCH_LIMIT_EDGE] = spelch_chip_feed_for_max (chip_limit, c->diameter, loads[n - 1]->engaged);
  for (guint i = 0; i < n; i++)
    {
      const SpelchLoads *l = loads[i];
      if (i > 0 && l == loads[i - 1])
        continue;
      lower (&asked[SPELCH_LIMIT_CHIP], spelch_chip_feed_for_max (thickest, c->diameter, l->engaged));
      lower (&asked[SPELCH_LIMIT_STRESS],
             spelch_loads_design_feed (l, spelch_solve_stress_limit (c) / l->stress_per_n, c->diameter));
      if (hands > 0)
        lower (&asked[SPELCH_LIMIT_HANDS], spelch_force_feed_for_peak (&l->turn, hands, c->diameter));
      if (l->room_per_feed > 0)
        lower (&asked[SPELCH_LIMIT_ROOM], 1 / l->room_per_feed);
      asked[SPELCH_LIMIT_HEAT] = fmax (asked[SPELCH_LIMIT_HEAT], l->heat_times_feed / c->k->heat_burns);
      cap_bending (c, l, caps);
      if (spelch_hold_is_told (c))
        cap_holding (c, l, caps);
    }
  for (int i = 0; i < SPELCH_N_LIMITS; i++)
    caps->taken[i] = i == SPELCH_LIMIT_BENDING ? caps->taken[i] : asked[i];
}

/* Adds the limits that depend on the speed. */
static void
cap_at_speed (const SpelchCase *c, const SpelchLoads *const *loads, guint n, double rpm, Caps *caps)
{
  double turns = rpm / 60, available = power_available (c, rpm), power = HUGE_VAL;
  for (guint i = 0; i < n; i++)
    {
      double spare = available - loads[i]->standing.power_per_speed * turns;
      power = fmin (power, fmax (spare, 0) / (loads[i]->moving.power_per_speed * turns));
    }
  bool slow = spelch_loads_band (c, rpm) > spelch_loads_band (c, HUGE_VAL);
  double hold = caps->hold[slow ? 1 : 0];
  caps->asked[SPELCH_LIMIT_HOLDING] = hold;
  caps->taken[SPELCH_LIMIT_HOLDING] = hold >= cool_everywhere (c, loads, n) ? hold : HUGE_VAL;
  caps->asked[SPELCH_LIMIT_MACHINE] = caps->taken[SPELCH_LIMIT_MACHINE]
      = spelch_chip_feed_per_tooth (feed_limit (c), rpm, spelch_flute_fewest_edges (&c->flutes));
  caps->asked[SPELCH_LIMIT_POWER] = caps->taken[SPELCH_LIMIT_POWER] = power;
}

/* The limit that sets the feed; heat bounds it from below and never sets it. */
static SpelchLimitKind
least_cap (const Caps *caps)
{
  SpelchLimitKind least = SPELCH_LIMIT_CHIP;
  for (int i = 0; i < SPELCH_N_LIMITS; i++)
    if (i != SPELCH_LIMIT_HEAT && caps->taken[i] < caps->taken[least])
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
  bool loose; /* no feed that leaves the wall cool is held down */
} Speed;

static Speed
try_speed (const SpelchCase *c, const SpelchLoads *const *loads, guint n, double rpm, Caps *caps)
{
  double held = c->cut->held.feed_mm_min;
  int edges = spelch_flute_fewest_edges (&c->flutes);
  cap_at_speed (c, loads, n, rpm, caps);
  double feed = spelch_chip_feed (caps->taken[least_cap (caps)], rpm, edges);
  if (held > 0)
    feed = fmin (feed, held);
  double set = held > 0 ? feed : round_down (feed);
  bool loose = caps->asked[SPELCH_LIMIT_HOLDING] < caps->taken[SPELCH_LIMIT_HOLDING];
  bool burns = spelch_chip_feed_per_tooth (set, rpm, edges) < caps->asked[SPELCH_LIMIT_HEAT];
  return (Speed){ rpm, feed, burns, loose };
}

static guint
try_speeds (const SpelchCase *c, const SpelchLoads *const *loads, guint n, Caps *caps,
            Speed speeds[MAX_SPEEDS])
{
  guint count = 0;
  for (guint i = 0; i < MAX_SPEEDS && spelch_machine_speed (c->machine, i) > 0; i++)
    if (speed_is_allowed (c, spelch_machine_speed (c->machine, i)))
      speeds[count++] = try_speed (c, loads, n, spelch_machine_speed (c->machine, i), caps);
  return count;
}

/* What speaks against a speed: a burnt wall, and more so that the work isn't held. */
static int
faults_of (const Speed *speed)
{
  return (speed->loose ? 2 : 0) + (speed->burns ? 1 : 0);
}

/* The force formulas were made for quicker edges. */
static bool
is_slow (const SpelchCase *c, double rpm)
{
  return spelch_chip_cutting_speed (c->diameter, rpm) < c->k->slow_cutting;
}

/* The slowest speed whose feed comes within the spare of the best, of those with the least against them. A
 * held feed is to be reached in full, and slowly moving edges, which snatch, are left out while others reach
 * it as well and don't burn the wall. */
static double
choose_speed (const SpelchCase *c, const SpelchLoads *const *loads, guint n, Caps *caps)
{
  Speed speeds[MAX_SPEEDS];
  guint count = try_speeds (c, loads, n, caps, speeds);
  double spare = c->cut->held.feed_mm_min > 0 ? 1e-9 : c->k->speed_spare, best = 0;
  int least = G_MAXINT;
  for (guint i = 0; i < count; i++)
    least = MIN (least, faults_of (&speeds[i]));
  for (guint i = 0; i < count; i++)
    if (faults_of (&speeds[i]) == least)
      best = fmax (best, speeds[i].feed);
  for (guint i = 0; c->cut->held.feed_mm_min > 0 && least == 0 && i < count; i++)
    if (faults_of (&speeds[i]) == 0 && speeds[i].feed >= best * (1 - spare) && !is_slow (c, speeds[i].rpm))
      return speeds[i].rpm;
  for (guint i = 0; i < count; i++)
    if (faults_of (&speeds[i]) == least && speeds[i].feed >= best * (1 - spare))
      return speeds[i].rpm;
  return c->machine->rpm_min; /* no speed is allowed: the plan says so */
}

static double
speed_above (const SpelchMachine *machine, double rpm)
{
  for (guint i = 0; i < MAX_SPEEDS && spelch_machine_speed (machine, i) > 0; i++)
    if (spelch_machine_speed (machine, i) > rpm + 1e-6)
      return spelch_machine_speed (machine, i);
  return 0;
}

static SpelchSpeedHeld
why_this_speed (const SpelchCase *c, const SpelchLoads *const *loads, guint n, double rpm, Caps *caps)
{
  SpelchSpeedHeld held = { SPELCH_SPEED_BY_GAIN, speed_above (c->machine, rpm),
                           c->bit->max_rpm > 0 ? rpm / c->bit->max_rpm : 0, rpm / c->machine->rpm_max };
  if (c->cut->held.speed_rpm > 0)
    held.by = SPELCH_SPEED_BY_HAND;
  else if (!speed_is_allowed (c, fmax (held.next_rpm, rpm)))
    held.by = SPELCH_SPEED_BY_MARK;
  else if (held.next_rpm <= 0)
    held.by = SPELCH_SPEED_BY_MACHINE;
  else if (!try_speed (c, loads, n, rpm, caps).burns && try_speed (c, loads, n, held.next_rpm, caps).burns)
    held.by = SPELCH_SPEED_BY_HEAT;
  return held;
}

/* What each limit is used to: of the quantity it guards, not of the feed. */
static void
find_shares (const SpelchCase *c, const SpelchLoads *const *loads, guint n, double chip_limit,
             SpelchSolution *s)
{
  double f = s->feed_per_tooth, turns = s->speed_rpm / 60, most_power = -1;
  double hands = spelch_solve_hands_limit (c), part = spelch_loads_band (c, s->speed_rpm);
  double stiffness = c->machine->stiffness_n_mm, *share = s->share;
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
      double bends = peak * l->give / spelch_solve_deflection_limit (c);
      if (bends > share[SPELCH_LIMIT_BENDING])
        s->machine_gives_mm = stiffness > 0 ? peak / stiffness : 0;
      share[SPELCH_LIMIT_BENDING] = fmax (share[SPELCH_LIMIT_BENDING], bends);
      share[SPELCH_LIMIT_STRESS]
          = fmax (share[SPELCH_LIMIT_STRESS], design * l->stress_per_n / spelch_solve_stress_limit (c));
      share[SPELCH_LIMIT_POWER] = fmax (share[SPELCH_LIMIT_POWER], power / power_available (c, s->speed_rpm));
      if (hands > 0)
        share[SPELCH_LIMIT_HANDS] = fmax (share[SPELCH_LIMIT_HANDS], peak / hands);
      if (spelch_hold_is_told (c))
        {
          SpelchHeldDown down = spelch_hold_find (c, l, f, part);
          share[SPELCH_LIMIT_HOLDING] = fmax (share[SPELCH_LIMIT_HOLDING], spelch_hold_share (c, &down));
        }
      share[SPELCH_LIMIT_ROOM] = fmax (share[SPELCH_LIMIT_ROOM], l->room_per_feed * f);
      if (f > 0)
        share[SPELCH_LIMIT_HEAT] = fmax (share[SPELCH_LIMIT_HEAT], l->heat_times_feed / f / c->k->heat_burns);
    }
}

double
spelch_solve_quickest (const SpelchCase *c, double chip_limit)
{
  const SpelchHeld *held = &c->cut->held;
  int edges = spelch_flute_fewest_edges (&c->flutes);
  double room = spelch_loads_least_room (c);
  double rpm = c->bit->max_rpm > 0 ? fmin (c->machine->rpm_max, c->bit->max_rpm) : c->machine->rpm_max;
  /* Where no speed is allowed the slowest one is taken. */
  rpm = held->speed_rpm > 0 ? held->speed_rpm : fmax (rpm, c->machine->rpm_min);
  double chip = fmin (c->k->chip_cap * c->diameter, chip_limit);
  double per_tooth = spelch_chip_feed_for_max (chip, c->diameter, c->engaged);
  if (room > 0)
    per_tooth = fmin (per_tooth, 1 / room);
  if (held->feed_mm_min > 0)
    return held->feed_mm_min;
  return fmin (feed_limit (c), spelch_chip_feed (per_tooth, rpm, edges));
}

SpelchSolution
spelch_solve (const SpelchCase *c, const SpelchLoads *const *loads, guint n, double chip_limit)
{
  SpelchSolution s = { 0 };
  int edges = spelch_flute_fewest_edges (&c->flutes);
  Caps caps;
  const SpelchHeld *held = &c->cut->held;
  find_caps (c, loads, n, chip_limit, &caps);
  s.speed_rpm = held->speed_rpm > 0 ? held->speed_rpm : choose_speed (c, loads, n, &caps);
  s.speed_held = why_this_speed (c, loads, n, s.speed_rpm, &caps);
  cap_at_speed (c, loads, n, s.speed_rpm, &caps);
  s.binding = least_cap (&caps);
  s.feed_mm_min = held->feed_mm_min > 0
                      ? held->feed_mm_min
                      : round_down (spelch_chip_feed (caps.taken[s.binding], s.speed_rpm, edges));
  s.feed_per_tooth = spelch_chip_feed_per_tooth (s.feed_mm_min, s.speed_rpm, edges);
  for (int i = 0; i < SPELCH_N_LIMITS; i++)
    s.feed_at[i] = caps.asked[i] < HUGE_VAL ? spelch_chip_feed (caps.asked[i], s.speed_rpm, edges) : 0;
  find_shares (c, loads, n, chip_limit, &s);
  return s;
}

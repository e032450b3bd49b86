/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/conflict.h"
#include "plan/remedy.h"

#include <math.h>

#define WITHIN (1 + 1e-6)

static const char *const frees[]
    = { "speed", "feed", "pass", "edges", "stick-out", "sharp", "accepted-seen", "holding" };
SPELCH_TABLE_HAS (frees, SPELCH_N_FREES);
const SpelchCodes SPELCH_FREE_CODES = { "freed_by", frees, G_N_ELEMENTS (frees) };

/* The plan's limits are in order, most used first. */
static bool
fits (const SpelchPlan *plan)
{
  return plan->n_passes > 0 && plan->feed_mm_min > 0
         && (plan->n_limits == 0 || plan->limits[0].share <= WITHIN);
}

static bool
would_fit (SpelchRemedy *q)
{
  return spelch_remedy_serves (q) && fits (&q->plan);
}

static void
add (SpelchConflict *conflict, SpelchFreeKind kind, double value)
{
  conflict->freed[conflict->n_freed++] = (SpelchFree){ kind, value };
}

static double
deepest_step (const SpelchPlan *plan)
{
  double step = 0;
  for (guint i = 0; i < plan->n_passes; i++)
    if (!plan->passes[i].finishing)
      step = fmax (step, plan->passes[i].tip_mm - plan->passes[i].from_mm);
  return step;
}

/* ---- Remedies ---- */

static void
let_speed_go (const SpelchRemedy *asked, SpelchConflict *conflict)
{
  SpelchRemedy q = *asked;
  q.cut.held.speed_rpm = 0;
  if (asked->cut.held.speed_rpm > 0 && would_fit (&q))
    add (conflict, SPELCH_FREE_SPEED, q.plan.speed_rpm);
}

static void
let_feed_go (const SpelchRemedy *asked, SpelchConflict *conflict)
{
  SpelchRemedy q = *asked;
  q.cut.held.feed_mm_min = 0;
  if (asked->cut.held.feed_mm_min > 0 && would_fit (&q))
    add (conflict, SPELCH_FREE_FEED, q.plan.feed_mm_min);
}

/* Equal passes, one more at a time. */
static void
try_thinner_passes (const SpelchRemedy *asked, const SpelchPlan *plan, SpelchConflict *conflict)
{
  SpelchRemedy q = *asked;
  for (guint n = plan->n_passes + 1; n < SPELCH_MAX_PASSES; n++)
    {
      spelch_remedy_divide (&q, n);
      if (!would_fit (&q))
        continue;
      add (conflict, SPELCH_FREE_PASS, deepest_step (&q.plan));
      return;
    }
}

static void
try_one_edge (const SpelchRemedy *asked, SpelchConflict *conflict)
{
  SpelchRemedy q = *asked;
  q.bit.edges = 1;
  q.bit.edges_up = 0;
  if (asked->bit.edges > 1 && would_fit (&q))
    add (conflict, SPELCH_FREE_EDGES, 1);
}

static void
try_less_stick_out (const SpelchRemedy *asked, SpelchConflict *conflict)
{
  SpelchRemedy q = *asked;
  q.cut.stick_out = spelch_length_mm (0);
  if (asked->cut.stick_out.mm > 0 && would_fit (&q) && q.plan.stick_out_mm < asked->cut.stick_out.mm)
    add (conflict, SPELCH_FREE_STICK_OUT, q.plan.stick_out_mm);
}

static void
try_sharp (const SpelchRemedy *asked, SpelchConflict *conflict)
{
  SpelchRemedy q = *asked;
  q.bit.wear = SPELCH_WEAR_SHARP;
  if (asked->bit.wear > SPELCH_WEAR_SHARP && would_fit (&q))
    add (conflict, SPELCH_FREE_SHARP, 0);
}

static void
try_accepting (const SpelchRemedy *asked, SpelchConflict *conflict)
{
  SpelchRemedy q = *asked;
  for (int grade = asked->part.accepted_seen + 1; grade <= 3; grade++)
    {
      q.part.accepted_seen = grade;
      if (!would_fit (&q))
        continue;
      add (conflict, SPELCH_FREE_ACCEPTED, grade);
      return;
    }
}

/* Clamps that hold the feed as it would be if holding were no matter; in round figures. */
static void
try_clamps (const SpelchRemedy *asked, const SpelchPlan *plan, SpelchConflict *conflict)
{
  const SpelchLimit *holding = spelch_plan_limit (plan, SPELCH_LIMIT_HOLDING);
  SpelchRemedy q = *asked;
  if (holding == NULL || holding->share <= WITHIN)
    return;
  q.part.holding.method = SPELCH_HOLD_CLAMPS;
  for (double force = plan->hold_needed_n; force < 4 * plan->hold_needed_n; force *= 1.1)
    {
      q.part.holding.clamp_force_n = ceil (force / 10) * 10;
      if (!would_fit (&q))
        continue;
      add (conflict, SPELCH_FREE_HOLDING, q.part.holding.clamp_force_n);
      return;
    }
}

/* ---- The two limits ---- */

/* The one that allows least, of those that are exceeded or, where nothing can be fed, of all. */
static const SpelchLimit *
tightest (const SpelchPlan *plan)
{
  const SpelchLimit *least = NULL;
  for (guint i = 0; i < plan->n_limits; i++)
    {
      const SpelchLimit *limit = &plan->limits[i];
      bool counts = limit->kind != SPELCH_LIMIT_HEAT && limit->share > WITHIN;
      if (counts && (least == NULL || limit->feed_mm_min < least->feed_mm_min))
        least = limit;
    }
  return least;
}

static bool
find_ends (const SpelchConstants *k, const SpelchCut *cut, const SpelchPlan *plan, SpelchConflict *conflict)
{
  const SpelchLimit *high = tightest (plan);
  double held = cut->held.feed_mm_min;
  double cool = plan->cool_feed_mm_min * (held > 0 ? k->heat_caution / k->heat_burns : 1);
  if (held > 0 && high != NULL)
    conflict->low = (SpelchConflictEnd){ true, SPELCH_LIMIT_HEAT, held };
  else
    conflict->low = (SpelchConflictEnd){ false, SPELCH_LIMIT_HEAT, cool };
  if (high == NULL && held <= 0)
    high = spelch_plan_binding (plan);
  if (high != NULL)
    conflict->high = (SpelchConflictEnd){ false, high->kind, high->feed_mm_min };
  else
    conflict->high = (SpelchConflictEnd){ true, SPELCH_LIMIT_HEAT, held };
  return high != NULL || held > 0;
}

SpelchConflict
spelch_conflict_find (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                      const SpelchBit *bit, const SpelchPlan *plan)
{
  SpelchConflict conflict = { .speed_rpm = plan->speed_rpm };
  if (plan->n_passes == 0 || fits (plan) || !find_ends (constants, cut, plan, &conflict))
    return conflict;
  SpelchRemedy asked = spelch_remedy_begin (constants, part, cut, bit, plan);
  conflict.found = true;
  let_speed_go (&asked, &conflict);
  let_feed_go (&asked, &conflict);
  try_thinner_passes (&asked, plan, &conflict);
  try_one_edge (&asked, &conflict);
  try_less_stick_out (&asked, &conflict);
  try_sharp (&asked, &conflict);
  try_accepting (&asked, &conflict);
  try_clamps (&asked, plan, &conflict);
  return conflict;
}

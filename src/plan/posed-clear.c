/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Whether an exercise as posed has one right answer that is clear of every other: it is asked again with
 * whatever is set or measured as far off as the workshop sets and measures it.
 */
#include "plan/posed-private.h"

/* Something a little off: added to what it is, or times it. */
typedef struct
{
  SpelchChangeKind what;
  double by;
  bool share;
} Slip;

#define SLIPS_MOST 16

typedef struct
{
  guint n;
  Slip slips[SLIPS_MOST];
} Slips;

static void
slip (Slips *slips, SpelchChangeKind what, double by, bool share)
{
  if (by <= 0 || slips->n + 2 > SLIPS_MOST)
    return;
  slips->slips[slips->n++] = (Slip){ what, by, share };
  slips->slips[slips->n++] = (Slip){ what, -by, share };
}

/* Depths, the board and where the shear turns over. Something that isn't told can't be off. */
static Slips
slips_of_edges (const SpelchPosed *posed)
{
  const SpelchPart *part = posed->part;
  const SpelchHeld *held = &part->cuts[0].held;
  double within = part->board.measured_within_mm > 0 ? part->board.measured_within_mm
                                                     : posed->constants->tolerance_measured;
  Slips slips = { 0 };
  if (held->n_passes == 1)
    slip (&slips, SPELCH_CHANGE_FIRST_PASS, part->tolerances.depth_mm, false);
  if (spelch_change_now (SPELCH_CHANGE_UP_SHEAR, part).number > 0)
    slip (&slips, SPELCH_CHANGE_UP_SHEAR, part->tolerances.up_shear_mm, false);
  if (part->board.measured.mm > 0)
    slip (&slips, SPELCH_CHANGE_THICKNESS, within, false);
  slip (&slips, SPELCH_CHANGE_FEED, SPELCH_CLEAR_SPEED, true);
  return slips;
}

static Slips
slips_of_holding (const SpelchPosed *posed)
{
  Slips slips = { 0 };
  slip (&slips, SPELCH_CHANGE_AREA, SPELCH_CLEAR_PRESS, true);
  slip (&slips, SPELCH_CHANGE_CLAMP_FORCE, SPELCH_CLEAR_PRESS, true);
  slip (&slips, SPELCH_CHANGE_FEED, SPELCH_CLEAR_PRESS, true);
  if (posed->part->cuts[0].tabs.count > 0)
    slip (&slips, SPELCH_CHANGE_TAB_WIDTH, SPELCH_CLEAR_PRESS, true);
  return slips;
}

/* The part with one thing off; a feed that isn't held is held first at what is recommended. */
static SpelchPart *
with_slip (const SpelchPosed *posed, const Slip *off)
{
  SpelchPart *part = spelch_part_copy (posed->part);
  SpelchHeld *held = &part->cuts[0].held;
  if (off->what == SPELCH_CHANGE_FEED && held->feed_mm_min <= 0)
    {
      held->feed_mm_min = posed->plan.feed_mm_min;
      held->speed_rpm = posed->plan.speed_rpm;
    }
  SpelchChange change = spelch_change_now (off->what, part);
  change.number = off->share ? change.number * (1 + off->by) : change.number + off->by;
  spelch_change_apply (&change, part);
  return part;
}

static const char *
answer_again (const SpelchPosed *posed, const SpelchPart *part)
{
  SpelchPlan plan, other;
  if (posed->exercise->asks == SPELCH_ASKS_WAY_UP)
    {
      spelch_posed_plan (posed->constants, part, SPELCH_FACE_A, &plan);
      spelch_posed_plan (posed->constants, part, SPELCH_FACE_B, &other);
      return spelch_posed_ways (part, &plan, &other);
    }
  spelch_posed_plan (posed->constants, part, -1, &plan);
  return posed->exercise->asks == SPELCH_ASKS_HOLD ? spelch_posed_gives (&plan) : spelch_posed_tears (&plan);
}

static bool
stays_so (const SpelchPosed *posed, const Slips *slips)
{
  for (guint i = 0; i < slips->n; i++)
    {
      g_autoptr (SpelchPart) part = with_slip (posed, &slips->slips[i]);
      const char *again = answer_again (posed, part);
      if (g_strcmp0 (again, posed->choices[posed->right]) != 0)
        return false;
    }
  return true;
}

/* Better in more than time, or quicker by the margin. */
static bool
is_first_by_far (const SpelchPosed *posed)
{
  if (posed->ranking->len < 2)
    return posed->ranking->len == 1;
  const SpelchChoice *best = posed->ranking->pdata[0], *next = posed->ranking->pdata[1];
  bool may_not = next->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT;
  bool bends = next->plan.deflection_mm > next->plan.deflection_limit_mm + 1e-6;
  if (!spelch_posed_serves (posed->part, &best->plan))
    return false;
  return may_not || bends || !next->meets
         || spelch_choose_time (posed->constants, best)
                <= spelch_choose_time (posed->constants, next) * (1 - SPELCH_CLEAR_TIME);
}

static const char *
doubt_of_depths (const SpelchPosed *posed)
{
  const SpelchRange *right = &posed->depths;
  if (posed->right == 0)
    return NULL;
  if (right->empty)
    return "close";
  if (right->from < SPELCH_CLEAR_DEPTH)
    return "shallow";
  return right->to - right->from < SPELCH_CLEAR_DEPTH ? "narrow" : NULL;
}

static const char *
doubt_of_limit (const SpelchPosed *posed)
{
  const SpelchLimit *binding = spelch_plan_binding (&posed->plan), *next = spelch_posed_next (&posed->plan);
  if (posed->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT)
    return "stopped";
  if (posed->n_choices < 2)
    return "several";
  return next != NULL && next->feed_mm_min < binding->feed_mm_min * (1 + SPELCH_CLEAR_FEED) ? "close" : NULL;
}

static const char *
find_doubt (const SpelchPosed *posed)
{
  Slips edges = slips_of_edges (posed), holding = slips_of_holding (posed);
  if (posed->by_depth)
    return doubt_of_depths (posed);
  if (posed->right < 0)
    return posed->exercise->asks == SPELCH_ASKS_HOLD ? "several" : "none";
  switch (posed->exercise->asks)
    {
    case SPELCH_ASKS_BIT:
      return is_first_by_far (posed) ? NULL : "close";
    case SPELCH_ASKS_LIMIT:
      return doubt_of_limit (posed);
    case SPELCH_ASKS_HOLD:
      return stays_so (posed, &holding) ? NULL : "close";
    case SPELCH_ASKS_TEARS:
    case SPELCH_ASKS_WAY_UP:
    case SPELCH_ASKS_FIRST_PASS:
    case SPELCH_N_ASKS:
    default:
      return stays_so (posed, &edges) ? NULL : "close";
    }
}

bool
spelch_posed_is_clear (const SpelchPosed *posed, const char **doubt)
{
  const char *found = find_doubt (posed);
  if (doubt != NULL)
    *doubt = found;
  return found == NULL;
}

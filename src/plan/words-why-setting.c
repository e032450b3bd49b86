/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Why the machine is set as it is: speed, feed, chips, entry, passes, time and power.
 */
#include "plan/relief.h"
#include "plan/words-limits.h"
#include "plan/words-why-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* ---- Spindle ---- */

static void
say_speed_held (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  spelch_chain_say (chain, spelch_words_speed_held (of->plan));
  if (of->plan->speed_held.by == SPELCH_SPEED_BY_GAIN)
    spelch_chain_constant (
        chain, "speed-spare",
        g_strdup_printf (
            _ ("Of the best feed, up to %d %% is given up for a slower, cooler, quieter spindle"),
            spelch_words_per_cent (of->constants->speed_spare)));
  if (of->plan->speed_held.by == SPELCH_SPEED_BY_HEAT)
    spelch_chain_limit (chain, SPELCH_LIMIT_HEAT);
}

static void
say_cutting_speed (SpelchChain *chain)
{
  const SpelchPlan *plan = chain->of->plan;
  g_autofree char *rpm = spelch_words_count (plan->speed_rpm);
  g_autofree char *diameter = spelch_words_exactly (chain->numbers, plan->flutes.diameter);
  g_autofree char *speed = spelch_chain_decimal (chain, plan->cutting_speed, 1);
  spelch_chain_add (
      chain, SPELCH_EVIDENCE_GEOMETRY,
      g_strdup_printf (_ ("At %s rpm the edges of a bit %s across move at %s m/s"), rpm, diameter, speed));
  if (!plan->slow)
    return;
  g_autofree char *least = spelch_chain_decimal (chain, chain->of->constants->slow_cutting, 0);
  spelch_chain_constant (
      chain, "slow-cutting",
      g_strdup_printf (_ ("The force formulas were made for %s m/s and more; slower, forces are less sure"),
                       least));
}

void
spelch_chain_spindle (SpelchChain *chain)
{
  const SpelchPlan *plan = chain->of->plan;
  say_speed_held (chain);
  spelch_chain_log (chain, SPELCH_WHY_SPINDLE);
  say_cutting_speed (chain);
  if (plan->speed_held.of_mark > 0)
    {
      g_autofree char *mark = spelch_words_count (round (plan->speed_rpm / plan->speed_held.of_mark));
      spelch_chain_say (
          chain, g_strdup_printf (_ ("That is %d %% of the %s rpm marked on the bit; never go above it."),
                                  spelch_words_per_cent (plan->speed_held.of_mark), mark));
    }
  else
    spelch_chain_say (chain, g_strdup (_ ("No highest speed is marked on the bit: ask its maker.")));
  g_autofree char *top = spelch_words_count (chain->of->part->machine.rpm_max);
  spelch_chain_say (chain, g_strdup_printf (_ ("The machine turns up to %s rpm; this is %d %% of that."), top,
                                            spelch_words_per_cent (plan->speed_held.of_machine)));
}

/* ---- Feed ---- */

/* Three figures of it: where a limit would be reached is no better known. */
static double
about (double feed_mm_min)
{
  double step = feed_mm_min > 0 ? pow (10, floor (log10 (feed_mm_min)) - 2) : 1;
  return round (feed_mm_min / step) * step;
}

/* One limit with its share and the feed at which it would be reached. */
static void
say_share (SpelchChain *chain, const SpelchLimit *limit)
{
  const char *name = spelch_words_limit_subject (limit->kind, chain->of->plan);
  g_autofree char *at = spelch_words_feed (chain->numbers, about (limit->feed_mm_min));
  int used = spelch_words_per_cent (limit->share);
  /* Translators: the first %s is a limit: "Bit bending". */
  if (limit->feed_mm_min < 1 && limit->kind == SPELCH_LIMIT_HOLDING && limit->share < 1)
    spelch_chain_say (
        chain, g_strdup_printf (_ ("%s: %d %% used; the chip would be too thick before it is reached."), name,
                                used));
  else if (limit->feed_mm_min < 1)
    spelch_chain_say (chain, g_strdup_printf (_ ("%s: %d %% used."), name, used));
  else if (limit->kind == SPELCH_LIMIT_HEAT)
    spelch_chain_say (chain,
                      g_strdup_printf (_ ("%s: %d %% used; below %s the wall would burn."), name, used, at));
  else
    spelch_chain_say (chain, g_strdup_printf (_ ("%s: %d %% used; reached at %s."), name, used, at));
}

/* Whichever would hold the feed next, and where. */
static void
say_next (SpelchChain *chain, const SpelchLimit *binding)
{
  const SpelchPlan *plan = chain->of->plan;
  const SpelchLimit *next = NULL;
  for (guint i = 0; i < plan->n_limits; i++)
    {
      const SpelchLimit *limit = &plan->limits[i];
      bool caps = limit != binding && limit->kind != SPELCH_LIMIT_HEAT && limit->feed_mm_min >= 1;
      if (caps && (next == NULL || limit->feed_mm_min < next->feed_mm_min))
        next = limit;
    }
  if (next == NULL || next->feed_mm_min <= plan->feed_mm_min)
    return;
  g_autofree char *at = spelch_words_feed (chain->numbers, next->feed_mm_min);
  spelch_chain_say (chain, g_strdup_printf (_ ("Were that freed, %s would hold the feed at %s."),
                                            spelch_words_limit_in_full (next->kind, plan), at));
}

/* To follow "freed by". */
static const char *
relief (SpelchRelief kind)
{
  switch (kind)
    {
    case SPELCH_RELIEF_PASSES:
      return _ ("shallower passes");
    case SPELCH_RELIEF_SHARP:
      return _ ("a sharp edge");
    case SPELCH_RELIEF_STICK_OUT:
      return _ ("less stick-out");
    case SPELCH_RELIEF_SHORTER:
      return _ ("a bit that cuts no longer than the cut is deep");
    case SPELCH_RELIEF_THICKER:
      return _ ("a thicker bit");
    case SPELCH_RELIEF_MACHINE:
      return _ ("a stiffer machine");
    case SPELCH_N_RELIEFS:
    default:
      return "";
    }
}

/* Only what was planned and found to help. */
static char *
freed_by_relief (SpelchChain *chain, SpelchLimitKind kind)
{
  const SpelchWhyCase *of = chain->of;
  bool helps[SPELCH_N_RELIEFS];
  char *all = NULL;
  spelch_relief_find (of->constants, of->part, of->cut, of->bit, of->plan, kind, helps);
  for (int i = 0; i < SPELCH_N_RELIEFS; i++)
    if (helps[i])
      {
        g_autofree char *before = all;
        const char *one = relief ((SpelchRelief)i);
        /* Translators: one thing that would do, or another. */
        all = before == NULL ? g_strdup (one) : g_strdup_printf (_ ("%s, or %s"), before, one);
      }
  g_autofree char *list = all;
  /* Translators: a limit of the feed, by one thing or another: "shallower passes, or a sharp edge" */
  return list == NULL ? g_strdup ("") : g_strdup_printf (_ ("It would be freed by %s."), list);
}

/* What would let it go quicker. */
static const char *
freed_by (SpelchLimitKind kind)
{
  switch (kind)
    {
    case SPELCH_LIMIT_CHIP:
      return _ ("A wider bit, or more cutting edges, would free it.");
    case SPELCH_LIMIT_EDGE:
      return _ ("More cutting edges, a faster spindle, or accepting a coarser edge, would free it.");
    case SPELCH_LIMIT_POWER:
      return _ ("Shallower passes, a sharp edge or a slower spindle would free it.");
    case SPELCH_LIMIT_MACHINE:
      return _ ("Nothing but another machine would free it.");
    case SPELCH_LIMIT_HANDS:
      return _ ("Shallower passes or a narrower bit would free it.");
    case SPELCH_LIMIT_HOLDING:
      return _ ("Holding the work harder, shallower passes or a bit that presses down would free it.");
    case SPELCH_LIMIT_ROOM:
      return _ ("Fewer cutting edges, or a bit whose shear carries the chips out, would free it.");
    case SPELCH_LIMIT_BENDING:
    case SPELCH_LIMIT_STRESS:
    case SPELCH_LIMIT_HEAT:
    case SPELCH_N_LIMITS:
    default:
      return "";
    }
}

static void
say_freed (SpelchChain *chain, SpelchLimitKind kind)
{
  bool gives = kind == SPELCH_LIMIT_BENDING || kind == SPELCH_LIMIT_STRESS;
  spelch_chain_say (chain, gives ? freed_by_relief (chain, kind) : g_strdup (freed_by (kind)));
}

static void
say_plunge (SpelchChain *chain)
{
  const SpelchPlan *plan = chain->of->plan;
  g_autofree char *feed = spelch_words_feed (chain->numbers, plan->plunge_feed_mm_min);
  if (plan->entry.kind == SPELCH_ENTRY_PLUNGE || plan->entry.kind == SPELCH_ENTRY_STAGED)
    spelch_chain_constant (chain, "plunge-share",
                           g_strdup_printf (_ ("Straight down it is fed at %d %% of that, %s"),
                                            spelch_words_per_cent (chain->of->constants->plunge_share),
                                            feed));
}

void
spelch_chain_binding (SpelchChain *chain)
{
  const SpelchPlan *plan = chain->of->plan;
  const SpelchLimit *binding = spelch_plan_binding (plan);
  g_autofree char *feed = spelch_words_feed (chain->numbers, plan->feed_mm_min);
  if (plan->feed_mm_min <= 0)
    spelch_chain_say (chain, g_strdup (_ ("No speed and feed fit this cut.")));
  else if (binding == NULL)
    spelch_chain_say (chain, g_strdup_printf (_ ("The feed is held by hand at %s."), feed));
  else
    {
      spelch_chain_say (
          chain, g_strdup_printf (
                     _ ("%s sets the feed to %s: it is the first limit to be reached as the feed rises."),
                     spelch_words_limit_subject (binding->kind, plan), feed));
      spelch_chain_limit (chain, binding->kind);
    }
}

void
spelch_chain_feed (SpelchChain *chain)
{
  const SpelchPlan *plan = chain->of->plan;
  const SpelchLimit *binding = spelch_plan_binding (plan);
  spelch_chain_binding (chain);
  spelch_chain_log (chain, SPELCH_WHY_FEED);
  if (plan->feed_mm_min > 0 && binding != NULL)
    {
      say_next (chain, binding);
      say_freed (chain, binding->kind);
    }
  for (guint i = 0; i < plan->n_limits; i++)
    say_share (chain, &plan->limits[i]);
  if (chain->of->conflict != NULL)
    spelch_chain_say (chain, spelch_words_conflict (chain->of->conflict, plan, chain->numbers));
  if (plan->feed_mm_min > 0)
    say_plunge (chain);
}

/* ---- Chip ---- */

void
spelch_chain_chip (SpelchChain *chain)
{
  const SpelchPlan *plan = chain->of->plan;
  int edges = spelch_flute_fewest_edges (&plan->flutes);
  g_autofree char *feed = spelch_words_feed (chain->numbers, plan->feed_mm_min);
  g_autofree char *rpm = spelch_words_count (plan->speed_rpm);
  g_autofree char *tooth = spelch_chain_decimal (chain, plan->feed_per_tooth, 3);
  g_autofree char *most = spelch_chain_decimal (chain, plan->chip_max, 3);
  g_autofree char *mean = spelch_chain_decimal (chain, plan->chip_mean, 3);
  g_autofree char *engaged = spelch_words_exactly (chain->numbers, plan->engaged_mm);
  g_autofree char *diameter = spelch_words_exactly (chain->numbers, plan->flutes.diameter);
  if (plan->feed_mm_min <= 0)
    {
      spelch_chain_say (chain, g_strdup (_ ("No speed and feed fit this cut.")));
      return;
    }
  spelch_chain_add (chain, SPELCH_EVIDENCE_GEOMETRY,
                    g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                                  "%s at %s rpm with %d edge moves on %s mm for each tooth",
                                                  "%s at %s rpm with %d edges moves on %s mm for each tooth",
                                                  (gulong)edges),
                                     feed, rpm, edges, tooth));
  spelch_chain_add (
      chain, SPELCH_EVIDENCE_GEOMETRY,
      g_strdup_printf (
          _ ("The bit, %s across, cuts %s wide: the chip is %s mm thick at most and %s mm on average"),
          diameter, engaged, most, mean));
  spelch_chain_log (chain, SPELCH_WHY_CHIP);
  spelch_chain_limit (chain, SPELCH_LIMIT_CHIP);
  if (spelch_chain_share (chain, SPELCH_LIMIT_EDGE) > 0)
    spelch_chain_limit (chain, SPELCH_LIMIT_EDGE);
  spelch_chain_add (chain, SPELCH_EVIDENCE_GEOMETRY,
                    g_strdup_printf (_ ("%d %% of the force goes into rubbing rather than cutting"),
                                     spelch_words_per_cent (plan->rubbing_share)));
}

/* ---- Entry ---- */

static void
say_slope (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchEntry *entry = &of->plan->entry;
  bool down = of->plan->bit_kind == SPELCH_BIT_DOWN_CUT;
  g_autofree char *angle = spelch_chain_decimal (chain, entry->angle_deg, 1);
  g_autofree char *usual
      = spelch_chain_decimal (chain, down ? of->constants->ramp_down_cut : of->constants->ramp_default, 1);
  g_autofree char *length = spelch_words_length (chain->numbers, entry->length_mm);
  g_autofree char *circle = spelch_words_exactly (chain->numbers, entry->circle_mm);
  spelch_chain_constant (chain, down ? "ramp-down-cut" : "ramp-default",
                         g_strdup_printf (_ ("The usual slope for such a bit is %s°"), usual));
  spelch_chain_add (
      chain, SPELCH_EVIDENCE_GEOMETRY,
      g_strdup_printf (_ ("At %s° it takes %s of way to the first pass's depth"), angle, length));
  if (entry->kind == SPELCH_ENTRY_HELIX)
    spelch_chain_add (
        chain, SPELCH_EVIDENCE_GEOMETRY,
        g_strdup_printf (_ ("The axis circles %s across, which the opening leaves room for"), circle));
}

void
spelch_chain_entry (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchEntry *entry = &of->plan->entry;
  g_autofree char *words = spelch_words_entry (of->plan, chain->numbers);
  spelch_chain_say (chain,
                    g_strdup_printf (entry->held ? _ ("Held by hand: %s.") : _ ("Recommended: %s."), words));
  if (entry->kind == SPELCH_ENTRY_PLUNGE && of->bit->end_cutting)
    spelch_chain_say (chain, g_strdup (_ ("The bit cuts at its centre, so it can go straight down.")));
  if (!of->bit->end_cutting)
    spelch_chain_say (chain,
                      g_strdup (_ ("The bit doesn't cut at its centre, so it can't go straight down.")));
  if (entry->kind == SPELCH_ENTRY_RAMP || entry->kind == SPELCH_ENTRY_HELIX)
    say_slope (chain);
  if (entry->kind == SPELCH_ENTRY_STAGED)
    {
      g_autofree char *depth
          = spelch_words_length (chain->numbers, of->constants->stage_depth * of->plan->flutes.diameter);
      spelch_chain_constant (chain, "stage-depth",
                             g_strdup_printf (_ ("By hand a stage is no deeper than %s"), depth));
    }
  if (entry->kind != SPELCH_ENTRY_EDGE && entry->kind != SPELCH_ENTRY_DRILLED)
    spelch_chain_add (
        chain, SPELCH_EVIDENCE_GEOMETRY,
        g_strdup (entry->on_line
                      ? _ ("It goes in on the finished line: what it does to the face there stays")
                      : _ ("It goes in beside the finished line: what it does to the face there is waste")));
  for (guint i = 0; i < of->plan->n_edges; i++)
    if (of->plan->edges[i].by_entry_mm > 0)
      {
        g_autofree char *spoilt = spelch_words_length (chain->numbers, of->plan->edges[i].by_entry_mm);
        spelch_chain_add (chain, SPELCH_EVIDENCE_GEOMETRY,
                          g_strdup_printf (_ ("It pulls the motor-side face out over %s"), spoilt));
        return;
      }
}

/* ---- Time and power ---- */

void
spelch_chain_time (SpelchChain *chain)
{
  const SpelchPlan *plan = chain->of->plan;
  if (plan->feed_mm_min <= 0)
    {
      spelch_chain_say (chain, g_strdup (_ ("No speed and feed fit this cut.")));
      return;
    }
  double seconds = plan->path_mm / plan->feed_mm_min * 60, rest = plan->time_s - seconds;
  g_autofree char *path = spelch_words_length (chain->numbers, plan->path_mm);
  g_autofree char *feed = spelch_words_feed (chain->numbers, plan->feed_mm_min);
  g_autofree char *cutting = spelch_words_time (seconds);
  g_autofree char *other = spelch_words_time (fmax (rest, 0));
  g_autofree char *all = spelch_words_time (plan->time_s);
  spelch_chain_add (
      chain, SPELCH_EVIDENCE_GEOMETRY,
      g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u pass makes %s of way; at %s that takes %s",
                                    "%u passes make %s of way; at %s that takes %s", plan->n_passes),
                       plan->n_passes, path, feed, cutting));
  spelch_chain_log (chain, SPELCH_WHY_TIME);
  if (rest >= 0.5)
    spelch_chain_add (
        chain, SPELCH_EVIDENCE_GEOMETRY,
        g_strdup_printf (_ ("Going in and what is fed more slowly take %s more, %s in all"), other, all));
  if (plan->scoring.bit[0] != '\0')
    {
      g_autofree char *scoring = spelch_words_time (plan->scoring.time_s);
      g_autofree char *change = spelch_words_time (chain->of->constants->bit_change);
      spelch_chain_say (chain, g_strdup_printf (_ ("Of that, scoring takes %s."), scoring));
      spelch_chain_constant (chain, "bit-change",
                             g_strdup_printf (_ ("Changing the bit takes about %s besides"), change));
    }
  spelch_chain_say (chain, g_strdup (_ ("Ways through the air, and setting up, are not counted.")));
}

void
spelch_chain_power (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchPlan *plan = of->plan;
  bool router = of->part->machine.power_is_input;
  g_autofree char *low = spelch_words_rough (plan->power_w.low),
                  *high = spelch_words_rough (plan->power_w.high);
  g_autofree char *mid = spelch_words_rough (plan->power_w.mid);
  g_autofree char *rated = spelch_words_count (of->part->machine.power_w);
  g_autofree char *force = spelch_words_count (plan->tangential_mean_n);
  g_autofree char *speed = spelch_chain_decimal (chain, plan->cutting_speed, 1);
  spelch_chain_add (
      chain, SPELCH_EVIDENCE_ANALOGY,
      g_strdup_printf (_ ("The pass that needs most takes about %s W, by the tables of forces (%s to %s W)"),
                       mid, low, high));
  spelch_chain_add (
      chain, SPELCH_EVIDENCE_GEOMETRY,
      g_strdup_printf (_ ("It is the mean force on the edges, about %s N, times their speed, %s m/s"), force,
                       speed));
  spelch_chain_constant (
      chain, router ? "efficiency-router" : "efficiency-spindle",
      g_strdup_printf (router ? _ ("Of the %s W that the motor takes in, %d %% turns the bit")
                              : _ ("Of the %s W the spindle is rated at, %d %% is counted on"),
                       rated,
                       spelch_words_per_cent (router ? of->constants->efficiency_router
                                                     : of->constants->efficiency_spindle)));
  spelch_chain_say (chain,
                    g_strdup_printf (_ ("At this speed %d %% of that is used."),
                                     spelch_words_per_cent (spelch_chain_share (chain, SPELCH_LIMIT_POWER))));
  spelch_chain_say (chain, spelch_words_calibration (plan, chain->numbers));
}

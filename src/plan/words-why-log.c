/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Why a figure isn't what the tables alone would make it: what the shop log corrects, on which entries it
 * stands, and what the figure would be without them.
 */
#include "plan/words-limits.h"
#include "plan/words-log.h"
#include "plan/words-why-private.h"

#include "plan/remedy.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static guint
edge_cuts (const SpelchPlan *plan)
{
  const SpelchLearnt *motor = &plan->log_motor, *far = &plan->log_far;
  return motor->points_cuts + motor->window_cuts + far->points_cuts + far->window_cuts;
}

char *
spelch_words_log_corrects (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  bool forces = plan->force_readings > 0, edges = edge_cuts (plan) > 0;
  g_autofree char *factor = spelch_words_decimal (numbers, plan->force_factor, 2);
  if (forces && edges)
    return g_strdup_printf (_ ("Your log corrects forces (%s times) and edges"), factor);
  if (forces)
    return g_strdup_printf (_ ("Your log corrects the forces: %s times"), factor);
  return g_strdup (edges ? _ ("Your log corrects the edges") : "");
}

/* ---- What it stands on ---- */

/* The part may go by what an earlier state of the log said: then no reading is named. */
static bool
stands_on_log (const SpelchWhyCase *of)
{
  SpelchCalibration now;
  return spelch_corrections_calibrate (of->part->board.id, of->entries, of->n_entries, &now)
         && now.factor == of->plan->force_factor && now.readings == of->plan->force_readings;
}

static void
say_reading (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  if (of->entries == NULL || !stands_on_log (of))
    return;
  const SpelchLogEntry *last
      = spelch_corrections_last_reading (of->part->board.id, of->entries, of->n_entries);
  g_autofree char *load = spelch_words_count (spelch_log_entry_load (last));
  g_autofree char *foretold = spelch_words_count (last->power_w);
  spelch_chain_say (
      chain,
      g_strdup_printf (of->plan->force_readings == 1
                           ? _ ("The reading: %s W on %s, where the tables' forces would have taken %s W.")
                           : _ ("The latest reading: %s W on %s, where the tables' forces would have taken "
                                "%s W."),
                       load, last->date, foretold));
}

static bool
is_said (const SpelchChain *chain, const char *sentence)
{
  for (guint i = 0; i < chain->list->len; i++)
    if (g_str_equal (g_ptr_array_index (chain->list, i), sentence))
      return true;
  return false;
}

static void
say_causes (SpelchChain *chain)
{
  const SpelchPlan *plan = chain->of->plan;
  guint cuts = edge_cuts (plan);
  g_autofree char *forces = spelch_words_calibration (plan, chain->numbers);
  if (*forces != '\0' && !is_said (chain, forces))
    spelch_chain_say (chain, g_steal_pointer (&forces));
  if (plan->force_readings > 0)
    say_reading (chain);
  if (cuts > 0)
    spelch_chain_say (
        chain, g_strdup_printf (
                   g_dngettext (
                       GETTEXT_PACKAGE, "Your log: how the edge of %u cut came out corrects the grades here.",
                       "Your log: how the edges of %u cuts came out corrects the grades here.", cuts),
                   cuts));
}

/* ---- What it does ---- */

/* NULL where the figure reads the same without the log. */
static char *
effect_on_feed (const SpelchPlan *without, const SpelchPlan *with, const SpelchNumbers *numbers)
{
  g_autofree char *before = spelch_words_feed (numbers, without->feed_mm_min);
  g_autofree char *now = spelch_words_feed (numbers, with->feed_mm_min);
  if (g_str_equal (before, now))
    return NULL;
  return g_strdup_printf (with->feed_mm_min < without->feed_mm_min
                              ? _ ("The log's entries lower the feed from %s to %s.")
                              : _ ("The log's entries raise the feed from %s to %s."),
                          before, now);
}

/* How a figure reads; NULL for one that the log has no part in. */
static char *
figure (SpelchWhyKind kind, const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  switch ((int)kind)
    {
    case SPELCH_WHY_SPINDLE:
      return spelch_words_count (plan->speed_rpm);
    case SPELCH_WHY_CHIP:
      return spelch_words_decimal (numbers, plan->chip_max, 3);
    case SPELCH_WHY_PASSES:
      return spelch_words_passes (plan, numbers);
    case SPELCH_WHY_TIME:
      return spelch_words_time (plan->time_s);
    case SPELCH_WHY_WEAR:
      return plan->life_m_left < 0.5 ? NULL : spelch_words_life (plan, numbers);
    default:
      return NULL;
    }
}

static const char *
effect_format (SpelchWhyKind kind)
{
  switch ((int)kind)
    {
    case SPELCH_WHY_SPINDLE:
      return _ ("Without the log's entries the speed would be %s rpm rather than %s rpm.");
    case SPELCH_WHY_CHIP:
      return _ ("Without the log's entries the largest chip would be %s mm rather than %s mm.");
    case SPELCH_WHY_PASSES:
      return _ ("Without the log's entries the passes would be “%s” rather than “%s”.");
    case SPELCH_WHY_TIME:
      return _ ("Without the log's entries the cut would take %s rather than %s.");
    case SPELCH_WHY_WEAR:
    default:
      /* Translators: both are as "about 300 m of such cuts" */
      return _ ("Without the log's entries the edge would be good for %s rather than %s.");
    }
}

static char *
effect_on (SpelchWhyKind kind, const SpelchPlan *without, const SpelchPlan *with,
           const SpelchNumbers *numbers)
{
  if (kind == SPELCH_WHY_FEED)
    return effect_on_feed (without, with, numbers);
  g_autofree char *before = figure (kind, without, numbers), *now = figure (kind, with, numbers);
  if (before == NULL || now == NULL || g_str_equal (before, now))
    return NULL;
  return g_strdup_printf (effect_format (kind), before, now);
}

void
spelch_chain_log (SpelchChain *chain, SpelchWhyKind kind)
{
  const SpelchWhyCase *of = chain->of;
  if (of->plan->force_readings == 0 && edge_cuts (of->plan) == 0)
    return;
  SpelchRemedy q = spelch_remedy_begin (of->constants, of->part, of->cut, of->bit, of->plan);
  q.part.calibration.off = true;
  q.part.n_corrections = 0;
  spelch_plan_make (q.k, &q.part, &q.cut, &q.bit, &q.plan);
  bool comparable = q.plan.feed_mm_min > 0 && of->plan->feed_mm_min > 0;
  char *effect = comparable ? effect_on (kind, &q.plan, of->plan, chain->numbers) : NULL;
  /* The feed is where the window points to, so it tells of the log in any case. */
  if (effect == NULL && kind == SPELCH_WHY_FEED)
    effect = g_strdup (comparable ? _ ("Without the log's entries the feed would be the same.") : "");
  if (effect == NULL)
    return;
  say_causes (chain);
  spelch_chain_say (chain, effect);
}

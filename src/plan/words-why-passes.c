/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Why the depth is divided as it is: how deep the bit may go at once, what one pass less would cost, and the
 * depths that keep either face.
 */
#include "plan/words-limits.h"
#include "plan/words-why-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* ---- How deep at once ---- */

static void
say_step (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchPlan *plan = of->plan;
  g_autofree char *step = spelch_words_length (chain->numbers, plan->step_most);
  g_autofree char *cutting = spelch_words_exactly (chain->numbers, of->bit->cutting_length.mm);
  g_autofree char *reach = spelch_words_length (chain->numbers, plan->depth_most);
  if (plan->flutes.diameter < of->constants->slender_below)
    {
      g_autofree char *times = spelch_chain_decimal (chain, of->constants->slender_step, 1);
      spelch_chain_constant (
          chain, "slender-step",
          g_strdup_printf (_ ("So slender a bit takes %s times its diameter in a pass at most: %s"), times,
                           step));
    }
  spelch_chain_add (
      chain, SPELCH_EVIDENCE_GEOMETRY,
      g_strdup_printf (
          _ ("The bit cuts on %s of its length, and here takes %s in a pass and reaches %s deep at most"),
          cutting, step, reach));
}

/* Where hands feed; passes that a person set are that person's. */
static void
say_hand_step (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  if (of->plan->step_by_hand <= 0)
    return;
  g_autofree char *times = spelch_chain_decimal (chain, of->constants->hand_step, 1);
  g_autofree char *deep = spelch_words_length (chain->numbers, of->plan->step_by_hand);
  spelch_chain_constant (
      chain, "hand-step",
      g_strdup_printf (_ ("Fed by hand, no pass is planned deeper than %s times the bit's diameter: %s"),
                       times, deep));
}

/* ---- In a pass less ---- */

/* The worse edge for which a pass less isn't taken; NULL: edges don't decide. */
static const SpelchEdge *
worse_edge (const SpelchPart *part, const SpelchPlan *plan, const SpelchPlan *fewer)
{
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    {
      const SpelchEdge *now = spelch_plan_worst (plan, (SpelchSide)side);
      const SpelchEdge *then = spelch_plan_worst (fewer, (SpelchSide)side);
      if (now != NULL && then != NULL
          && then->grade > MAX (now->grade, then->seen ? part->accepted_seen : part->accepted_hidden))
        return then;
    }
  return NULL;
}

/* A limit that would be exceeded, as the passes are chosen: the work comes first, then the bending. */
static char *
exceeded (const SpelchPlan *fewer)
{
  static const SpelchLimitKind KINDS[] = { SPELCH_LIMIT_HOLDING, SPELCH_LIMIT_BENDING };
  guint n = fewer->n_passes;
  for (guint i = 0; i < G_N_ELEMENTS (KINDS); i++)
    {
      const SpelchLimit *limit = spelch_plan_limit (fewer, KINDS[i]);
      if (limit != NULL && limit->share > 1 + 1e-6)
        return g_strdup_printf (
            g_dngettext (
                GETTEXT_PACKAGE,
                "In %u pass %s would be exceeded, %d %% used, at any feed that keeps the wall cool.",
                "In %u passes %s would be exceeded, %d %% used, at any feed that keeps the wall cool.", n),
            n, spelch_words_limit_in_full (limit->kind, fewer), spelch_words_per_cent (limit->share));
    }
  return NULL;
}

/* Times that read alike aren't set against each other. */
static char *
slower (const SpelchPlan *plan, const SpelchPlan *fewer, const SpelchNumbers *numbers)
{
  guint n = fewer->n_passes;
  g_autofree char *feed = spelch_words_feed (numbers, fewer->feed_mm_min);
  g_autofree char *then = spelch_words_time (fewer->time_s), *now = spelch_words_time (plan->time_s);
  const SpelchLimit *binding = spelch_plan_binding (fewer);
  if (fewer->time_s <= plan->time_s || binding == NULL)
    return NULL;
  const char *limit = spelch_words_limit_in_full (binding->kind, fewer);
  if (g_str_equal (then, now))
    return g_strdup_printf (
        g_dngettext (GETTEXT_PACKAGE, "In %u pass %s would hold the feed at %s, which saves no time.",
                     "In %u passes %s would hold the feed at %s, which saves no time.", n),
        n, limit, feed);
  return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE,
                   "In %u pass %s would hold the feed at %s, and the cut would take %s rather than %s.",
                   "In %u passes %s would hold the feed at %s, and the cut would take %s rather than %s.", n),
      n, limit, feed, then, now);
}

/* No feed is slow enough for a limit, or quick enough for another. */
static char *
impossible (const SpelchPlan *fewer)
{
  guint n = fewer->n_passes;
  for (guint i = 0; i < fewer->n_limits; i++)
    if (fewer->limits[i].kind != SPELCH_LIMIT_HEAT && fewer->limits[i].share > 1)
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "In %u pass %s would be exceeded at any feed.",
                                           "In %u passes %s would be exceeded at any feed.", n),
                              n, spelch_words_limit_in_full (fewer->limits[i].kind, fewer));
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "In %u pass no speed and feed would fit this cut.",
                                       "In %u passes no speed and feed would fit this cut.", n),
                          n);
}

/* Where a pass less is possible and isn't taken, what it would cost; NULL where nothing speaks against it
 * that isn't told elsewhere. In the order in which plans are preferred. */
static char *
cost_of (const SpelchPart *part, const SpelchPlan *plan, const SpelchPlan *fewer,
         const SpelchNumbers *numbers)
{
  guint n = fewer->n_passes;
  if (fewer->feed_mm_min <= 0)
    return impossible (fewer);
  const SpelchLimit *holding = spelch_plan_limit (fewer, SPELCH_LIMIT_HOLDING);
  const SpelchEdge *worse = worse_edge (part, plan, fewer);
  if (worse != NULL && (holding == NULL || holding->share <= 1 + 1e-6))
    return g_strdup_printf (
        worse->side == SPELCH_SIDE_MOTOR
            ? g_dngettext (GETTEXT_PACKAGE, "In %u pass the motor-side face would come out worse: %s.",
                           "In %u passes the motor-side face would come out worse: %s.", n)
            : g_dngettext (GETTEXT_PACKAGE, "In %u pass the far face would come out worse: %s.",
                           "In %u passes the far face would come out worse: %s.", n),
        n, spelch_words_grade (worse->grade, spelch_plan_facing (fewer, worse->side)));
  char *over = exceeded (fewer);
  return over != NULL ? over : slower (plan, fewer, numbers);
}

static void
say_fewer (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchPlan *plan = of->plan;
  SpelchPlan fewer;
  if (plan->pass_plan != SPELCH_PASS_PLAN_STEPPED || plan->n_passes < 2
      || spelch_held_has_passes (&of->cut->held)
      || !spelch_plan_make_in (of->constants, of->part, of->cut, of->bit, plan->n_passes - 1, &fewer))
    return;
  char *cost = cost_of (of->part, plan, &fewer, chain->numbers);
  if (cost != NULL)
    spelch_chain_say (chain, cost);
}

/* ---- All of it ---- */

void
spelch_chain_passes (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchPlan *plan = of->plan;
  bool held
      = spelch_held_has_passes (&of->cut->held) || of->cut->held.overcut_held || of->cut->held.allowance_held;
  g_autofree char *words = spelch_words_passes (plan, chain->numbers);
  spelch_chain_say (
      chain,
      g_strdup_printf (held ? _ ("Held by hand: %s.") : _ ("Recommended, as few as serve: %s."), words));
  if (plan->further_pass_mm > 0)
    {
      g_autofree char *further = spelch_words_length (chain->numbers, plan->further_pass_mm);
      spelch_chain_say (
          chain,
          g_strdup_printf (_ ("A further pass, at %s, would bring the feed within every limit."), further));
    }
  spelch_chain_log (chain, SPELCH_WHY_PASSES);
  say_step (chain);
  say_hand_step (chain);
  say_fewer (chain);
  spelch_chain_say (chain, spelch_words_window (plan, SPELCH_SIDE_MOTOR, chain->numbers));
  if (plan->through)
    spelch_chain_say (chain, spelch_words_window (plan, SPELCH_SIDE_FAR, chain->numbers));
  if (plan->through && plan->n_passes > 0)
    {
      g_autofree char *over = spelch_words_exactly (chain->numbers, plan->overcut);
      g_autofree char *least = spelch_words_exactly (chain->numbers, of->constants->cuts_through);
      g_autofree char *most = spelch_words_exactly (chain->numbers, plan->overcut_most);
      spelch_chain_constant (
          chain, "cuts-through",
          g_strdup_printf (
              _ ("The last pass runs %s past the board: at least %s cuts through, and %s is allowed"), over,
              least, most));
    }
  spelch_chain_say (chain, spelch_words_pass_plan (plan, chain->numbers));
}

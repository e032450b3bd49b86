/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is said about the passes: how deep they go, and what the way of dividing the depth is for.
 */
#include "plan/words.h"

#include <glib/gi18n-lib.h>

static char *
with_finishing (const SpelchPlan *plan, double allowance, const char *last, const SpelchNumbers *numbers)
{
  guint rough = plan->n_passes - 1;
  g_autofree char *left = spelch_words_exactly (numbers, allowance);
  return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "%u pass to %s, then a finishing pass that takes %s off the wall",
                   "%u passes to %s, then a finishing pass that takes %s off the wall", rough),
      rough, last, left);
}

char *
spelch_words_passes (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  if (plan->n_passes == 0)
    return g_strdup (_ ("none fits"));
  g_autofree char *last = spelch_words_length (numbers, plan->passes[plan->n_passes - 1].tip_mm);
  const SpelchPass *finishing
      = plan->passes[plan->n_passes - 1].finishing ? &plan->passes[plan->n_passes - 1] : NULL;
  if (finishing != NULL)
    return with_finishing (plan, finishing->side_allowance_mm, last, numbers);
  if (plan->n_passes == 1)
    return g_steal_pointer (&last);
  if (plan->n_passes > 2)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u pass to %s", "%u passes to %s", plan->n_passes),
                            plan->n_passes, last);
  g_autofree char *first = spelch_words_length (numbers, plan->passes[0].tip_mm);
  return g_strdup_printf (_ ("%s, then %s"), first, last);
}

/* ---- What the pass plan is for ---- */

static char *
scored_words (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *depth = spelch_words_length (numbers, plan->passes[0].tip_mm);
  const SpelchEdge *edge = spelch_plan_worst (plan, SPELCH_SIDE_MOTOR);
  bool pulls = edge != NULL && edge->pass == 1 && edge->load == SPELCH_LOAD_PULL_OUT;
  if (pulls)
    return g_strdup_printf (
        _ ("A pass %s deep with “%s” first doesn't score: it pulls the motor-side face out itself."), depth,
        plan->scoring.name);
  if (plan->severs_face)
    return g_strdup_printf (
        _ ("Score first, %s deep, with “%s”: that cuts through the whole face layer before the "
           "other bit reaches it. Then change the bit and cut the rest along the same line."),
        depth, plan->scoring.name);
  return g_strdup_printf (
      _ ("Score first, %s deep, with “%s”: that severs only the outer part of the face layer; "
         "the other bit still cuts the rest of it."),
      depth, plan->scoring.name);
}

static char *
finished_words (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  double left = plan->passes[plan->n_passes - 1].side_allowance_mm;
  g_autofree char *allowance = spelch_words_exactly (numbers, left);
  return g_strdup_printf (
      _ ("The passes stay %s off the finished line; the last one, at full depth, cuts both arrises "
         "anew: clean if the tear before it is smaller than that. Confirm it on the test strip."),
      allowance);
}

/* The skin pass loads the heights from the tip up through overcut and skin. */
static char *
skin_words (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  const SpelchHands hands
      = spelch_flute_hands_between (&plan->flutes, plan->overcut, plan->overcut + plan->skin_mm);
  bool up = hands.up && !hands.down && !hands.neutral, lifts = plan->last_axial_n > 0;
  g_autofree char *skin = spelch_words_exactly (numbers, plan->skin_mm);
  g_autofree char *force
      = spelch_words_decimal (numbers, plan->last_axial_n, plan->last_axial_n < 10 ? 1 : 0);
  g_autofree char *left = g_strdup_printf (
      _ ("The pass before the last leaves a skin of %s and doesn't cut the far face."), skin);
  const bool above = plan->machine != SPELCH_MACHINE_TABLE;
  if (up && lifts && above)
    return g_strdup_printf (
        _ ("%s The last one cuts it with up-shear alone: clean, but it lifts about %s N just when "
           "the piece is held least."),
        left, force);
  if (up)
    return g_strdup_printf (_ ("%s The last one cuts it with up-shear alone: clean."), left);
  return g_strdup_printf (
      _ ("%s The last one doesn't draw it in with up-shear alone; it cuts when the piece is held "
         "least."),
      left);
}

static char *
tab_words (const SpelchPlan *plan)
{
  if (plan->tabs.count == 0)
    return g_strdup ("");
  return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE,
                   "At the %u tab the far face isn't cut; trim it afterwards, with the face supported.",
                   "At the %u tabs the far face isn't cut; trim them afterwards, with the face supported.",
                   plan->tabs.count),
      plan->tabs.count);
}

static char *
plan_words (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  switch (plan->pass_plan)
    {
    case SPELCH_PASS_PLAN_SCORED:
      return scored_words (plan, numbers);
    case SPELCH_PASS_PLAN_FINISHED:
      return finished_words (plan, numbers);
    case SPELCH_PASS_PLAN_SKIN:
      return skin_words (plan, numbers);
    case SPELCH_PASS_PLAN_FULL:
    case SPELCH_PASS_PLAN_STEPPED:
    default:
      return g_strdup ("");
    }
}

char *
spelch_words_pass_plan (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  if (plan->n_passes == 0)
    return g_strdup ("");
  g_autofree char *of_plan = plan_words (plan, numbers);
  g_autofree char *of_tabs = tab_words (plan);
  const char *gap = *of_plan != '\0' && *of_tabs != '\0' ? " " : "";
  return g_strdup_printf ("%s%s%s", of_plan, gap, of_tabs);
}

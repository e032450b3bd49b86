/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a follow-up changes.
 */
#include "plan/posed-private.h"
#include "plan/words-plain.h"
#include "plan/words-posed.h"

#include <glib/gi18n-lib.h>

/* The speed, feed or stick-out that nobody set was what the plan recommends. */
static double
recommended (const SpelchPosed *posed, const SpelchPart *before, SpelchChangeKind what)
{
  SpelchPlan plan;
  spelch_posed_plan (posed->constants, before, -1, &plan);
  return what == SPELCH_CHANGE_SPEED  ? plan.speed_rpm
         : what == SPELCH_CHANGE_FEED ? plan.feed_mm_min
                                      : plan.stick_out_mm;
}

/* That the passes change with it, where they are among what is given and nobody set them. */
static char *
passes_follow (const SpelchPosed *posed, const SpelchPart *before, const SpelchNumbers *numbers)
{
  SpelchPlan plan;
  SpelchAsks asks = posed->exercise->asks;
  bool told = asks == SPELCH_ASKS_TEARS || asks == SPELCH_ASKS_LIMIT || asks == SPELCH_ASKS_HOLD;
  if (!told || posed->exercise->follow_up.change.what == SPELCH_CHANGE_FIRST_PASS)
    return g_strdup ("");
  spelch_posed_plan (posed->constants, before, -1, &plan);
  g_autofree char *old = plan.n_passes > 0 ? spelch_words_passes (&plan, numbers) : g_strdup ("");
  g_autofree char *now
      = posed->plan.n_passes > 0 ? spelch_words_passes (&posed->plan, numbers) : g_strdup ("");
  if (*old == '\0' || *now == '\0' || g_str_equal (old, now))
    return g_strdup ("");
  /* TRANSLATORS: two descriptions of passes: "9.2 mm, then 18.4 mm", "3 passes to 18.4 mm" */
  return g_strdup_printf (_ ("So the passes change too: %s instead of %s."), now, old);
}

char *
spelch_words_changed (const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  const SpelchFollowUp *follow_up = &posed->exercise->follow_up;
  if (!posed->follow_up || !follow_up->told)
    return g_strdup ("");
  g_autoptr (SpelchPart) before = spelch_exercise_draw (posed->exercise, posed->seed);
  SpelchChange was = spelch_change_now (follow_up->change.what, before);
  SpelchChange is = spelch_change_now (follow_up->change.what, posed->part);
  bool planned = was.what == SPELCH_CHANGE_SPEED || was.what == SPELCH_CHANGE_FEED
                 || was.what == SPELCH_CHANGE_STICK_OUT;
  if (was.number <= 0 && planned)
    was.number = recommended (posed, before, was.what);
  g_autofree char *old = spelch_words_change_value (&was, before, numbers);
  g_autofree char *now = spelch_words_change_value (&is, posed->part, numbers);
  g_autofree char *follows = passes_follow (posed, before, numbers);
  /* TRANSLATORS: what a follow-up changes: "First pass: 9.0 mm instead of 6.0 mm." */
  g_autofree char *changed = g_strdup_printf (_ ("%s: %s instead of %s."),
                                              spelch_words_change_name (follow_up->change.what), now, old);
  return *follows == '\0' ? g_steal_pointer (&changed) : g_strdup_printf ("%s %s", changed, follows);
}

const char *
spelch_words_changed_means (const SpelchPosed *posed)
{
  const SpelchFollowUp *follow_up = &posed->exercise->follow_up;
  bool groove = follow_up->change.what == SPELCH_CHANGE_SPOILBOARD
                && posed->part->machine.spoilboard == SPELCH_SPOILBOARD_CUT_HERE_BEFORE;
  return posed->follow_up && follow_up->told && groove ? spelch_words_plain_groove () : "";
}

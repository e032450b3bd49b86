/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch plan: what the model says about each cut, as a table to read or as JSON.
 */
#include "command/asked.h"
#include "command/commands.h"
#include "command/plan-json.h"
#include "command/plan-table.h"

#include "files/shop-data.h"

#include <glib/gi18n.h>

static SpelchPlanned *
plan_cuts (const SpelchPart *part, const int *cuts, guint *n)
{
  GArray *planned = g_array_new (FALSE, TRUE, sizeof (SpelchPlanned));
  for (guint i = 0; cuts[i] >= 0; i++)
    {
      SpelchPlanned one
          = { .cut = &part->cuts[cuts[i]], .bit = spelch_asked_bit (part, &part->cuts[cuts[i]]) };
      if (one.bit != NULL)
        {
          spelch_plan_make (spelch_shop_constants (), part, one.cut, one.bit, &one.plan);
          one.conflict = spelch_conflict_find (spelch_shop_constants (), part, one.cut, one.bit, &one.plan);
        }
      g_array_append_val (planned, one);
    }
  *n = planned->len;
  return (SpelchPlanned *)(void *)g_array_free (planned, FALSE);
}

int
spelch_command_plan (int argc, char **argv)
{
  g_auto (SpelchAsked) asked = { 0 };
  g_auto (SpelchQuestions) questions = { 0 };
  int status = SPELCH_EXIT_DONE;
  if (!spelch_asked_open (&asked, "plan",
                          _ ("Says for each cut which depths, speed and feed, and how its edges come out."),
                          SPELCH_ASKING_PLAN, argc, argv, &questions, &status))
    return status;

  guint n = 0;
  g_autofree SpelchPlanned *planned = plan_cuts (questions.part, questions.cuts, &n);
  g_autofree char *text = asked.json ? spelch_plan_json (questions.part, planned, n)
                                     : spelch_plan_table (questions.part, planned, n, &questions.numbers);
  g_print ("%s", text);
  for (guint i = 0; i < n; i++)
    if (planned[i].plan.verdict == SPELCH_VERDICT_DO_NOT_CUT)
      return SPELCH_EXIT_DO_NOT_CUT;
  return SPELCH_EXIT_DONE;
}

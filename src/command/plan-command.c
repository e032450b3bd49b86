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
  g_autoptr (GError) error = NULL;
  bool helped = false;
  SpelchNumbers numbers;
  if (!spelch_asked_read (&asked, "plan",
                          _ ("Says for each cut which depths, speed and feed, and how its edges come out."),
                          SPELCH_ASKING_PLAN, argc, argv, &helped, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  if (helped)
    return SPELCH_EXIT_DONE;
  g_autoptr (SpelchPart) part = spelch_asked_part (&asked, &error);
  g_autofree int *cuts = part != NULL ? spelch_asked_cuts (&asked, part, &error) : NULL;
  if (cuts == NULL || !spelch_asked_numbers (&asked, &numbers, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);

  guint n = 0;
  g_autofree SpelchPlanned *planned = plan_cuts (part, cuts, &n);
  g_autofree char *text
      = asked.json ? spelch_plan_json (part, planned, n) : spelch_plan_table (part, planned, n, &numbers);
  g_print ("%s", text);
  for (guint i = 0; i < n; i++)
    if (planned[i].plan.verdict == SPELCH_VERDICT_DO_NOT_CUT)
      return SPELCH_EXIT_DO_NOT_CUT;
  return SPELCH_EXIT_DONE;
}

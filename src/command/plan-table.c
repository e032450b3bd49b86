/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/plan-table.h"

#include "files/shop-data.h"
#include "plan/cautions.h"
#include "plan/words-limits.h"

#include <glib/gi18n.h>
#include <string.h>

#define LABEL_WIDTH 16

static void
add_line (GString *text, const char *sentences)
{
  if (sentences[0] != '\0')
    g_string_append_printf (text, "  %s\n", sentences);
}

/* Takes @value. */
static void
add_row (GString *text, const char *label, char *value)
{
  glong spare = LABEL_WIDTH - g_utf8_strlen (label, -1);
  g_string_append_printf (text, "  %s%*s%s\n", label, (int)MAX (spare, 1), "", value);
  g_free (value);
}

static void
add_side (GString *text, const SpelchPlanned *one, SpelchSide side, const SpelchNumbers *numbers)
{
  const SpelchEdge *edge = spelch_plan_worst (&one->plan, side);
  const SpelchWindow *nominal = &one->plan.windows.nominal;
  const SpelchRange *just = side == SPELCH_SIDE_MOTOR ? &nominal->first_pass : &nominal->last_tip;
  g_autofree char *face = spelch_words_face (&one->plan, one->cut, side);
  g_autofree char *reason = spelch_words_edge_reason (&one->plan, side, numbers);
  g_auto (GStrv) why = spelch_words_edge_why (&one->plan, side, numbers);
  if (edge == NULL)
    {
      /* A blind cut never opens it, and nobody asked. */
      if (one->plan.through)
        g_string_append_printf (text, _ ("  %s: %s\n"), face, reason);
      return;
    }
  g_string_append_printf (text, _ ("  %s: %s\n    %s\n"), face,
                          spelch_words_grade (edge->grade, spelch_plan_facing (&one->plan, side)), reason);
  /* The last says the window, and what would open it; what the reason has said isn't said again. */
  for (guint i = 0; why[i] != NULL; i++)
    if (why[i + 1] != NULL)
      g_string_append_printf (text, "    - %s\n", why[i]);
    else if (!just->empty)
      {
        g_autofree char *opener = spelch_words_opener (&one->plan, side, numbers);
        bool told = *opener != '\0' && g_str_has_suffix (reason, opener) && g_str_has_suffix (why[i], opener);
        gsize spare = told ? strlen (opener) + 1 : 0;
        g_string_append_printf (text, "    - %.*s\n", (int)(strlen (why[i]) - spare), why[i]);
      }
}

static void
add_numbers (GString *text, const SpelchPart *part, const SpelchPlanned *one, const SpelchNumbers *numbers)
{
  const SpelchPlan *plan = &one->plan;
  g_autofree char *speed = spelch_words_count (plan->speed_rpm);
  g_autofree char *chip = spelch_words_decimal (numbers, plan->chip_max, 2);
  g_autofree char *limit = spelch_words_limit (plan);
  g_autofree char *next = spelch_words_limit_next (plan);
  g_autofree char *seat = spelch_words_seat (plan);
  g_autofree char *advice = spelch_words_seat_advice (plan, part, numbers);
  g_autofree char *tabs = spelch_words_tabs (plan, numbers);
  bool tabs_told = spelch_plan_has_stop (plan, SPELCH_STOP_TABS);
  bool holding_asked
      = spelch_plan_has_stop (plan, SPELCH_ASK_HOLDING) && plan->machine == SPELCH_MACHINE_GANTRY;
  g_autofree char *pass_plan = spelch_words_pass_plan (plan, numbers);
  g_autofree char *upkeep = spelch_words_upkeep (plan, numbers);
  g_autofree char *calibration = spelch_words_calibration (plan, numbers);
  g_autofree char *pace = spelch_words_pace (plan, numbers);
  g_autofree char *speed_held = spelch_words_speed_held (plan);
  g_autofree char *slow = spelch_words_slow (plan, numbers);
  g_autofree char *conflict = spelch_words_conflict (&one->conflict, plan, numbers);
  add_row (text, _ ("Passes"), spelch_words_passes (plan, numbers));
  add_line (text, pass_plan);
  add_row (text, _ ("Entry"), spelch_words_entry (plan, numbers));
  if (plan->feed_mm_min > 0)
    {
      add_row (text, _ ("Spindle"), g_strdup_printf (_ ("%s rpm"), speed));
      g_autofree char *feed = spelch_words_feed (numbers, plan->feed_mm_min);
      add_row (text, _ ("Feed"),
               pace[0] != '\0' ? g_strdup_printf (_ ("%s, %s"), feed, pace) : g_strdup (feed));
      add_row (text, _ ("Largest chip"), g_strdup_printf (_ ("%s mm"), chip));
      add_row (text, _ ("Cutting time"), spelch_words_time (plan->time_s));
    }
  g_string_append_printf (text, "  %s %s\n", limit, next);
  add_line (text, plan->feed_mm_min > 0 ? speed_held : "");
  add_line (text, slow);
  add_line (text, conflict);
  if (holding_asked)
    add_line (text, seat);
  else
    g_string_append_printf (text, "  %s %s\n", seat, advice);
  g_auto (GStrv) setting_out = spelch_words_setting_out (plan, part, one->cut, numbers);
  for (guint i = 0; setting_out[i] != NULL; i++)
    add_line (text, setting_out[i]);
  g_auto (GStrv) beware = spelch_caution_plan (spelch_shop_constants (), part, plan);
  add_line (text, calibration);
  add_line (text, tabs_told ? "" : tabs);
  for (guint i = 0; beware[i] != NULL; i++)
    add_line (text, beware[i]);
  add_line (text, upkeep);
}

/* The reasons not to cut, or what wasn't told. */
static void
add_stops (GString *text, const SpelchPlan *plan, bool questions, const SpelchNumbers *numbers)
{
  for (guint i = 0; i < plan->n_stops; i++)
    if ((plan->stops[i].kind >= SPELCH_ASK_SPEED_MARK) == questions)
      {
        g_autofree char *sentence = spelch_words_stop (&plan->stops[i], numbers);
        g_string_append_printf (text, "  %s %s\n", questions ? "?" : "!", sentence);
      }
}

static void
add_cut (GString *text, const SpelchPart *part, const SpelchPlanned *one, const SpelchNumbers *numbers)
{
  const SpelchPlan *plan = &one->plan;
  g_autofree char *line = spelch_words_cut (one->cut, one->bit != NULL ? plan : NULL, numbers);
  g_string_append_printf (text, _ ("\n%s (%s): %s\n"), one->cut->name, one->cut->id, line);
  if (one->bit == NULL)
    {
      g_string_append_printf (text, "  %s\n", _ ("No bit has been chosen yet: name one with --bit."));
      return;
    }
  g_string_append_printf (text, "  %s\n", one->bit->name);
  if (plan->verdict == SPELCH_VERDICT_DO_NOT_CUT)
    g_string_append_printf (text, "  %s\n", _ ("DO NOT CUT"));
  add_stops (text, plan, false, numbers);
  add_stops (text, plan, true, numbers);
  add_side (text, one, SPELCH_SIDE_MOTOR, numbers);
  add_side (text, one, SPELCH_SIDE_FAR, numbers);
  if (plan->n_passes > 0)
    add_numbers (text, part, one, numbers);
}

char *
spelch_plan_table (const SpelchPart *part, const SpelchPlanned *planned, guint n,
                   const SpelchNumbers *numbers)
{
  GString *text = g_string_new (NULL);
  g_autofree char *setting = spelch_words_setting (part, numbers);
  g_string_append_printf (text, "%s\n%s\n", part->name, setting);
  for (guint i = 0; i < n; i++)
    add_cut (text, part, &planned[i], numbers);
  g_auto (GStrv) cautions = spelch_caution_all (part);
  g_autofree char *strip = spelch_caution_strip (part, numbers);
  g_string_append_printf (text, "\n%s\n%s\n", _ ("Forces, power and heat are estimates."), strip);
  for (guint i = 0; cautions[i] != NULL; i++)
    g_string_append_printf (text, "- %s\n", cautions[i]);
  return g_string_free (text, FALSE);
}

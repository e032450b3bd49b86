/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/rank-table.h"

#include "plan/words-choose.h"

#include <glib/gi18n.h>

/* Bits that may not be cut with are told in one line. */
static void
add_refused (GString *text, const SpelchBit *bits, const SpelchChoice *choice, const SpelchNumbers *numbers)
{
  for (guint i = 0; i < choice->n_reasons; i++)
    if (choice->reasons[i].kind == SPELCH_REASON_STOP)
      {
        g_autofree char *sentence = spelch_words_reason (choice, &choice->reasons[i], numbers);
        g_string_append_printf (text, _ ("     ! %s (%s): %s\n"), bits[choice->bit].name,
                                bits[choice->bit].id, sentence);
        return;
      }
}

static char *
grades (const SpelchChoice *choice)
{
  if (choice->seen == 0)
    return g_strdup_printf (_ ("hidden edges grade %d"), choice->hidden);
  if (choice->hidden == 0)
    return g_strdup_printf (_ ("seen edges grade %d"), choice->seen);
  return g_strdup_printf (_ ("seen edges grade %d, hidden %d"), choice->seen, choice->hidden);
}

static void
add_choice (GString *text, guint place, const SpelchCut *cut, const SpelchBit *bits,
            const SpelchChoice *choice, const SpelchNumbers *numbers)
{
  g_autofree char *cutting = spelch_words_time (choice->plan.time_s);
  /* Translators: the time it takes to cut, with two bits */
  g_autofree char *time
      = choice->scorer < 0 ? g_strdup (cutting) : g_strdup_printf (_ ("%s and a change of the bit"), cutting);
  g_autofree char *worst = grades (choice);
  g_string_append_printf (text, _ (" %2u. %s (%s)%s: %s, %s\n"), place, bits[choice->bit].name,
                          bits[choice->bit].id,
                          choice->way_up == cut->way_up ? "" : _ (", board turned over"), worst, time);
  g_autofree char *pass_plan = choice->pinned ? spelch_words_pass_plan (&choice->plan, numbers) : NULL;
  if (pass_plan != NULL)
    g_string_append_printf (text, "     = %s\n", pass_plan);
  for (guint i = 0; i < choice->n_reasons; i++)
    {
      g_autofree char *sentence = spelch_words_reason (choice, &choice->reasons[i], numbers);
      g_string_append_printf (text, "     %s %s\n",
                              spelch_reason_is_for (choice->reasons[i].kind) ? "+" : "-", sentence);
    }
}

/* What may not be cut comes last in a ranking; turned over it isn't told again. */
static void
add_choices (GString *text, const SpelchBit *bits, const SpelchRanked *one, const SpelchNumbers *numbers)
{
  bool told = false;
  for (guint i = 0; i < one->ranking->len; i++)
    {
      const SpelchChoice *choice = one->ranking->pdata[i];
      if (choice->plan.verdict != SPELCH_VERDICT_DO_NOT_CUT)
        {
          add_choice (text, i + 1, one->cut, bits, choice, numbers);
          continue;
        }
      if (!told)
        g_string_append_printf (text, "  %s\n", _ ("Not to be cut with:"));
      told = true;
      if (choice->way_up == one->cut->way_up)
        add_refused (text, bits, choice, numbers);
    }
}

static void
add_wanted (GString *text, const SpelchRanked *one, const SpelchNumbers *numbers)
{
  g_auto (GStrv) sentences = spelch_words_wanted (&one->wanted, one->cut, numbers);
  bool as_it_is = spelch_wanted_serves_as_it_is (&one->wanted);
  g_string_append_printf (text, "  %s\n",
                          as_it_is ? _ ("No bit here leaves the edges as accepted. What to look for:")
                                   : _ ("No bit here leaves the edges as accepted."));
  for (guint i = 0; sentences[i] != NULL; i++)
    g_string_append_printf (text, "     %s\n", sentences[i]);
  g_autofree char *knife = spelch_words_knife (&one->knife, numbers);
  if (*knife != '\0')
    g_string_append_printf (text, "     %s\n", knife);
}

/* The bit of a step, and the one that goes before it. */
static char *
bits_of (const SpelchChoice *choice, const SpelchBit *bits)
{
  if (choice->scorer < 0)
    return g_strdup (bits[choice->bit].name);
  /* Translators: names of bits */
  return g_strdup_printf (_ ("%s, scored first with %s"), bits[choice->bit].name, bits[choice->scorer].name);
}

static void
add_order (GString *text, const SpelchPart *part, const SpelchBit *bits, const SpelchOrder *order)
{
  g_autofree char *time = spelch_words_time (order->time_s);
  g_string_append_c (text, '\n');
  g_string_append_printf (
      text,
      g_dngettext (GETTEXT_PACKAGE, "Fewest changes of the bit that cost no edge a grade: %u, cutting %s.\n",
                   "Fewest changes of the bit that cost no edge a grade: %u, cutting %s.\n", order->changes),
      order->changes, time);
  for (guint i = 0; i < order->n; i++)
    {
      const SpelchStep *step = &order->steps[i];
      if (step->choice == NULL)
        g_string_append_printf (text, _ (" %2u. %s: no bit here may cut it\n"), i + 1,
                                part->cuts[step->cut].name);
      else
        {
          g_autofree char *with = bits_of (step->choice, bits);
          g_string_append_printf (text, _ (" %2u. %s: %s%s\n"), i + 1, part->cuts[step->cut].name, with,
                                  step->turns ? _ (", after turning over") : "");
        }
    }
}

char *
spelch_rank_table (const SpelchPart *part, const SpelchBit *bits, const SpelchRanked *ranked, guint n,
                   const SpelchOrder *order, const SpelchNumbers *numbers)
{
  GString *text = g_string_new (NULL);
  g_autofree char *setting = spelch_words_setting (part, numbers);
  g_string_append_printf (text, "%s\n%s\n", part->name, setting);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *line = spelch_words_cut (ranked[i].cut, NULL, numbers);
      g_string_append_printf (text, _ ("\n%s (%s): %s\n"), ranked[i].cut->name, ranked[i].cut->id, line);
      if (ranked[i].looks)
        add_wanted (text, &ranked[i], numbers);
      add_choices (text, bits, &ranked[i], numbers);
    }
  if (order != NULL)
    add_order (text, part, bits, order);
  g_string_append_printf (
      text, "\n%s\n",
      _ ("Forces, power and heat are estimates. When in doubt, cut a test strip of the same "
         "stock; follow the machine's and the tool's instructions and local rules."));
  return g_string_free (text, FALSE);
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch rank: which bit to take for a cut, and why; for all cuts of a part also in which order.
 */
#include "command/asked.h"
#include "command/commands.h"
#include "command/drawer.h"
#include "command/rank-json.h"
#include "command/rank-table.h"

#include "files/shop-data.h"

#include <glib/gi18n.h>

static SpelchRanked
rank (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bits, guint n)
{
  const SpelchConstants *constants = spelch_shop_constants ();
  SpelchRanked one = { .cut = cut, .ranking = spelch_choose_rank (constants, part, cut, bits, n) };
  const SpelchChoice *best = spelch_choose_best (one.ranking);
  one.looks = best == NULL || !best->meets;
  if (!one.looks)
    return one;
  one.wanted = spelch_wanted_find (constants, part, cut);
  spelch_wanted_try (constants, part, cut, bits, n, &one.wanted);
  one.knife = spelch_knife_find (part, one.ranking);
  return one;
}

static void
clear_ranked (gpointer ranked)
{
  g_clear_pointer (&((SpelchRanked *)ranked)->ranking, g_ptr_array_unref);
}

static GArray *
rank_cuts (const SpelchPart *part, const int *cuts, const SpelchBit *bits, guint n)
{
  GArray *ranked = g_array_new (FALSE, TRUE, sizeof (SpelchRanked));
  g_array_set_clear_func (ranked, clear_ranked);
  for (guint i = 0; cuts[i] >= 0; i++)
    {
      SpelchRanked one = rank (part, &part->cuts[cuts[i]], bits, n);
      g_array_append_val (ranked, one);
    }
  return ranked;
}

/* Only when every cut of the part was asked about. */
static SpelchOrder *
order_of (const SpelchAsked *asked, const SpelchPart *part, const SpelchRanked *ranked, guint n_bits)
{
  if (asked->cuts != NULL || part->n_cuts < 2)
    return NULL;
  g_autofree GPtrArray **rankings = g_new (GPtrArray *, part->n_cuts);
  for (guint i = 0; i < part->n_cuts; i++)
    rankings[i] = ranked[i].ranking;
  return spelch_order_find (part, rankings, n_bits);
}

static int
status_of (const SpelchRanked *ranked, guint n)
{
  for (guint i = 0; i < n; i++)
    if (spelch_choose_best (ranked[i].ranking) == NULL)
      return SPELCH_EXIT_DO_NOT_CUT;
  return SPELCH_EXIT_DONE;
}

static int
show (const SpelchAsked *asked, const SpelchPart *part, const int *cuts, const GArray *drawer,
      const SpelchNumbers *numbers)
{
  const SpelchBit *bits = (const SpelchBit *)(const void *)drawer->data;
  g_autoptr (GArray) all = rank_cuts (part, cuts, bits, drawer->len);
  const SpelchRanked *ranked = (const SpelchRanked *)(const void *)all->data;
  g_autoptr (SpelchOrder) order = order_of (asked, part, ranked, drawer->len);
  g_autofree char *text = asked->json ? spelch_rank_json (part, bits, ranked, all->len, order)
                                      : spelch_rank_table (part, bits, ranked, all->len, order, numbers);
  g_print ("%s", text);
  return status_of (ranked, all->len);
}

int
spelch_command_rank (int argc, char **argv)
{
  g_auto (SpelchAsked) asked = { 0 };
  g_auto (SpelchQuestions) questions = { 0 };
  int status = SPELCH_EXIT_DONE;
  if (!spelch_asked_open (&asked, "rank",
                          _ ("Says for each cut which bit to take, either way up, and what speaks for and "
                             "against each."),
                          SPELCH_ASKING_RANKING, argc, argv, &questions, &status))
    return status;
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) drawer = spelch_drawer_open (&asked, questions.part, &error);
  if (drawer == NULL
      || !spelch_asked_put_log (&asked, questions.part, (const SpelchBit *)(const void *)drawer->data,
                                drawer->len, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  return show (&asked, questions.part, questions.cuts, drawer, &questions.numbers);
}

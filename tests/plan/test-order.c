/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The order of a part's cuts: against every order and every choice of bits of small random parts.
 */
#include "files/shop-data.h"
#include "plan/order.h"

#include <string.h>

#define MOST 5

static SpelchPart *
random_part (GRand *random)
{
  guint boards;
  const SpelchBoard *board = spelch_shop_boards (&boards);
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  SpelchPart *part = spelch_part_copy (demo);
  part->board = board[g_rand_int_range (random, 0, (int)boards)];
  part->accepted_seen = g_rand_int_range (random, 1, 4);
  part->n_cuts = (guint)g_rand_int_range (random, 2, MOST + 1);
  for (guint i = 0; i < part->n_cuts; i++)
    {
      SpelchCut *cut = &part->cuts[i];
      *cut = demo->cuts[g_rand_int_range (random, 0, (int)demo->n_cuts)];
      g_snprintf (cut->id, sizeof cut->id, "cut-%u", i);
      cut->bit[0] = '\0';
      if (!cut->through)
        cut->depth = spelch_length_mm (g_rand_double_range (random, 2, 15));
      if (cut->width.mm > 0)
        cut->width = spelch_length_mm (g_rand_double_range (random, 3, 22));
      cut->corner_radius = spelch_length_mm (0);
      cut->path_deg = g_rand_double_range (random, -90, 90);
    }
  return part;
}

/* Which bits may stand in for a cut's best, worked out from the choices themselves. */
static void
find_allowed (const SpelchPart *part, GPtrArray *const *rankings, guint n_bits, bool allowed[MOST][8])
{
  memset (allowed, 0, sizeof (bool[MOST][8]));
  for (guint cut = 0; cut < part->n_cuts; cut++)
    for (guint i = 0; i < rankings[cut]->len; i++)
      {
        const SpelchChoice *best = rankings[cut]->pdata[0], *one = rankings[cut]->pdata[i];
        bool seen = one->seen <= part->accepted_seen || one->seen <= best->seen;
        bool hidden = one->hidden <= part->accepted_hidden || one->hidden <= best->hidden;
        bool bends = one->plan.deflection_mm > one->plan.deflection_limit_mm + 1e-6;
        bool best_bends = best->plan.deflection_mm > best->plan.deflection_limit_mm + 1e-6;
        allowed[cut][one->bit] |= one->scorer < 0 && one->plan.verdict != SPELCH_VERDICT_DO_NOT_CUT && seen
                                  && hidden && (best_bends || !bends);
      }
}

/* Fewest changes over all orders and all bits allowed, outlines last; every cut tried next by every bit. */
static guint
brute_force (const SpelchPart *part, bool allowed[MOST][8], guint n_bits, guint done, int in_spindle,
             guint limit)
{
  guint best = limit;
  bool inside_left = false, any = false;
  for (guint cut = 0; cut < part->n_cuts; cut++)
    {
      any |= !(done & (1U << cut));
      inside_left |= !(done & (1U << cut)) && part->cuts[cut].kind != SPELCH_CUT_OUTLINE;
    }
  if (!any)
    return 0;
  for (guint cut = 0; cut < part->n_cuts; cut++)
    {
      if ((done & (1U << cut)) || (inside_left && part->cuts[cut].kind == SPELCH_CUT_OUTLINE))
        continue;
      for (guint bit = 0; bit < n_bits; bit++)
        {
          guint change = in_spindle >= 0 && in_spindle != (int)bit;
          if (!allowed[cut][bit] || change >= best)
            continue;
          guint rest = brute_force (part, allowed, n_bits, done | (1U << cut), (int)bit, best - change);
          best = MIN (best, change + rest);
        }
    }
  return best;
}

static void
assert_order (const SpelchPart *part, GPtrArray *const *rankings, const SpelchOrder *order)
{
  guint changes = 0, seen = 0;
  bool outline = false;
  g_assert_cmpuint (order->n, ==, part->n_cuts);
  for (guint i = 0; i < order->n; i++)
    {
      const SpelchStep *step = &order->steps[i];
      seen |= 1U << step->cut;
      if (step->choice == NULL)
        {
          g_assert_null (spelch_choose_best (rankings[step->cut]));
          continue;
        }
      const SpelchChoice *best = rankings[step->cut]->pdata[0];
      bool is_outline = part->cuts[step->cut].kind == SPELCH_CUT_OUTLINE;
      g_assert_true (is_outline || !outline);
      outline |= is_outline;
      g_assert_cmpint (step->choice->seen, <=, MAX (best->seen, part->accepted_seen));
      g_assert_cmpint (step->choice->plan.verdict, !=, SPELCH_VERDICT_DO_NOT_CUT);
      guint first = step->choice->scorer >= 0 ? (guint)step->choice->scorer : step->choice->bit;
      g_assert_true (step->changes == (i > 0 && order->steps[i - 1].choice->bit != first));
      changes += step->changes + (step->choice->scorer >= 0 ? 1 : 0);
    }
  g_assert_cmpuint (seen, ==, (1U << part->n_cuts) - 1);
  g_assert_cmpuint (changes, ==, order->changes);
}

static void
test_against_brute_force (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20260611);
  guint n, some = 0, shared = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  for (int run = 0; run < 150; run++)
    {
      g_autoptr (SpelchPart) part = random_part (random);
      GPtrArray *rankings[MOST];
      SpelchBit few[6];
      bool allowed[MOST][8], all_cut = true;
      for (guint i = 0; i < G_N_ELEMENTS (few); i++)
        few[i] = bits[g_rand_int_range (random, 0, (int)n)];
      for (guint cut = 0; cut < part->n_cuts; cut++)
        {
          rankings[cut] = spelch_choose_rank (spelch_shop_constants (), part, &part->cuts[cut], few,
                                              G_N_ELEMENTS (few));
          /* Where two bits are best for a cut, no one alone may do; that isn't tried here. */
          const SpelchChoice *best = spelch_choose_best (rankings[cut]);
          all_cut &= best != NULL && best->scorer < 0;
        }
      g_autoptr (SpelchOrder) order = spelch_order_find (part, rankings, G_N_ELEMENTS (few));
      assert_order (part, rankings, order);
      if (all_cut)
        {
          find_allowed (part, rankings, G_N_ELEMENTS (few), allowed);
          g_assert_cmpuint (order->changes, ==,
                            brute_force (part, allowed, G_N_ELEMENTS (few), 0, -1, 2 * MOST));
          some++;
          shared += order->changes > 0;
        }
      for (guint cut = 0; cut < part->n_cuts; cut++)
        g_ptr_array_unref (rankings[cut]);
    }
  g_assert_cmpuint (some, >, 30);
  g_assert_cmpuint (shared, >, 5);
}

/* The demo with the starter set: fewer changes than cuts, and no more than with each cut's own best bit in
 * the order of the part. */
static void
test_demo (void)
{
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  guint n, own = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  GPtrArray *rankings[8];
  g_assert_cmpuint (part->n_cuts, <=, G_N_ELEMENTS (rankings));
  for (guint cut = 0; cut < part->n_cuts; cut++)
    rankings[cut] = spelch_choose_rank (spelch_shop_constants (), part, &part->cuts[cut], bits, n);
  g_autoptr (SpelchOrder) order = spelch_order_find (part, rankings, n);
  for (guint cut = 1; cut < part->n_cuts; cut++)
    own += spelch_choose_best (rankings[cut])->bit != spelch_choose_best (rankings[cut - 1])->bit;
  assert_order (part, rankings, order);
  g_assert_cmpuint (order->changes, <, own);
  for (guint cut = 0; cut < part->n_cuts; cut++)
    g_ptr_array_unref (rankings[cut]);
}

static void
test_nothing (void)
{
  g_autoptr (SpelchPart) part = spelch_part_new ();
  g_autoptr (SpelchOrder) order = spelch_order_find (part, NULL, 0);
  g_assert_cmpuint (order->n, ==, 0);
  g_assert_cmpuint (order->changes, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order/against-brute-force", test_against_brute_force);
  g_test_add_func ("/order/demo", test_demo);
  g_test_add_func ("/order/nothing", test_nothing);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Benchmark: ranking up to 1000 bits for each cut of the demo, beside making the plans alone that a ranking
 * weighs against each other. Prints milliseconds, how they grow with the number of bits, and the ratio; then
 * the order of all the cuts.
 */
#include "../processor-time.h"
#include "files/shop-data.h"
#include "plan/order.h"

#define MOST 1000

/* The starter set again and again, each time a little shorter. */
static void
fill_drawer (SpelchBit bits[MOST])
{
  guint n;
  const SpelchBit *starter = spelch_shop_bits (&n);
  for (guint i = 0; i < MOST; i++)
    {
      bits[i] = starter[i % n];
      bits[i].cutting_length.mm -= 0.02 * (i / n);
      g_snprintf (bits[i].id, sizeof bits[i].id, "bit-%04u", i);
    }
}

static double
time_ranking (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bits, guint n)
{
  double start = processor_ms ();
  g_autoptr (GPtrArray) ranking = spelch_choose_rank (spelch_shop_constants (), part, cut, bits, n);
  return processor_ms () - start;
}

static double
time_plans (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bits, guint n)
{
  double start = processor_ms ();
  for (guint i = 0; i < n; i++)
    for (int face = SPELCH_FACE_A; face <= (cut->through ? SPELCH_FACE_B : SPELCH_FACE_A); face++)
      {
        SpelchCut as_planned = spelch_choose_cut (cut, &bits[i], (SpelchFace)face);
        SpelchPlan plan;
        spelch_plan_make (spelch_shop_constants (), part, &as_planned, &bits[i], &plan);
      }
  return processor_ms () - start;
}

/* Of all the part's cuts, once they are ranked. */
static double
time_order (const SpelchPart *part, const SpelchBit *bits, guint n)
{
  g_autoptr (GPtrArray) rankings = g_ptr_array_new_with_free_func ((GDestroyNotify)g_ptr_array_unref);
  for (guint cut = 0; cut < part->n_cuts; cut++)
    g_ptr_array_add (rankings,
                     spelch_choose_rank (spelch_shop_constants (), part, &part->cuts[cut], bits, n));
  double start = processor_ms ();
  g_autoptr (SpelchOrder) order = spelch_order_find (part, (GPtrArray *const *)rankings->pdata, n);
  return processor_ms () - start;
}

int
main (void)
{
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  g_autofree SpelchBit *bits = g_new (SpelchBit, MOST);
  fill_drawer (bits);
  time_ranking (part, &part->cuts[0], bits, MOST);
  for (guint cut = 0; cut < part->n_cuts; cut++)
    {
      double tenth = time_ranking (part, &part->cuts[cut], bits, MOST / 10);
      double whole = time_ranking (part, &part->cuts[cut], bits, MOST);
      double plans = time_plans (part, &part->cuts[cut], bits, MOST);
      g_print ("%-14s 100 bits %5.0f ms, 1000 bits %5.0f ms (%.0f us a bit), growth %.2f times linear; "
               "%.2f times the plans alone\n",
               part->cuts[cut].id, tenth, whole, whole * 1000 / MOST, whole / (10 * tenth), whole / plans);
    }
  g_print ("order of %u cuts over 1000 bits %.0f ms\n", part->n_cuts, time_order (part, bits, MOST));
  return 0;
}

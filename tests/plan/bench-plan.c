/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Benchmark: one plan of the demo's outline as a drag asks for it, beside the bare turn of one pass, which
 * every plan needs at least once. Prints microseconds and their ratio.
 */
#include "files/shop-data.h"
#include "plan/loads.h"
#include "plan/plan.h"

#define RUNS 2000

static double
time_plans (const SpelchPart *part, const SpelchBit *bit)
{
  gint64 start = g_get_monotonic_time ();
  for (int i = 0; i < RUNS; i++)
    {
      SpelchCut cut = part->cuts[0];
      SpelchPlan plan;
      cut.held.n_passes = 1;
      cut.held.passes[0] = spelch_length_mm (4 + 10.0 * i / RUNS);
      spelch_plan_make (spelch_shop_constants (), part, &cut, bit, &plan);
    }
  return (double)(g_get_monotonic_time () - start) / RUNS;
}

static double
time_turns (const SpelchPart *part, const SpelchBit *bit)
{
  SpelchCase c;
  SpelchLoads loads;
  spelch_case_prepare (&c, spelch_shop_constants (), part, &part->cuts[0], bit);
  gint64 start = g_get_monotonic_time ();
  for (int i = 0; i < RUNS; i++)
    {
      SpelchPass pass = { 0, 4 + 10.0 * i / RUNS, 0, 1, false, false };
      spelch_loads_find (&c, &pass, 30, &loads);
    }
  return (double)(g_get_monotonic_time () - start) / RUNS;
}

int
main (void)
{
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  const SpelchBit *bit = &part->bits[0];
  time_plans (part, bit);
  double plan = time_plans (part, bit), turn = time_turns (part, bit);
  g_print ("plan %.0f us, one pass over a turn %.1f us, ratio %.1f\n", plan, turn, plan / turn);
  return 0;
}

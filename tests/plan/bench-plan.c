/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Benchmark: one plan of the demo's outline, with its first pass held as a drag of a pass mark asks for it
 * and with nothing held as a drag of the board's thickness does, beside the bare turn of one pass, which
 * every plan needs at least once. Prints microseconds and their ratio.
 */
#include "files/shop-data.h"
#include "plan/loads.h"
#include "plan/plan.h"

#define RUNS 2000

static double
time_plans (const SpelchPart *part, const SpelchBit *bit, bool held)
{
  gint64 start = g_get_monotonic_time ();
  for (int i = 0; i < RUNS; i++)
    {
      SpelchCut cut = part->cuts[0];
      SpelchPlan plan;
      cut.held.n_passes = held ? 1 : 0;
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
      SpelchPass pass = { .tip_mm = 4 + 10.0 * i / RUNS, .tracks = 1 };
      spelch_loads_find (&c, &pass, 30, &loads);
    }
  return (double)(g_get_monotonic_time () - start) / RUNS;
}

int
main (void)
{
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  const SpelchBit *bit = &part->bits[0];
  time_plans (part, bit, true);
  double held = time_plans (part, bit, true), free = time_plans (part, bit, false),
         turn = time_turns (part, bit);
  g_print ("plan with a held pass %.0f us, with none %.0f us, one pass over a turn %.1f us; ratios %.1f and "
           "%.1f\n",
           held, free, turn, held / turn, free / turn);
  return 0;
}

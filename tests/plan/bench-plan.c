/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Benchmark: one plan of the demo's outline, with its first pass held as a drag of a pass mark asks for it
 * and with nothing held as a drag of the board's thickness does, beside the bare turn of one pass, which
 * every plan needs at least once. Prints microseconds and their ratio.
 */
#include "../processor-time.h"
#include "files/shop-data.h"
#include "plan/loads.h"
#include "plan/plan.h"

#define RUNS 2000

/* How much of the plan is held. */
typedef enum
{
  NOTHING,
  PASSES,
  EVERYTHING, /* speed and feed too: one candidate's full evaluation */
} Held;

static double
time_plans (const SpelchPart *part, const SpelchBit *bit, Held held)
{
  double start = processor_ms ();
  for (int i = 0; i < RUNS; i++)
    {
      SpelchCut cut = part->cuts[0];
      SpelchPlan plan;
      cut.held.n_passes = held == NOTHING ? 0 : 1;
      cut.held.speed_rpm = held == EVERYTHING ? 18000 : 0;
      cut.held.feed_mm_min = held == EVERYTHING ? 4000 : 0;
      cut.held.passes[0] = spelch_length_mm (4 + 10.0 * i / RUNS);
      spelch_plan_make (spelch_shop_constants (), part, &cut, bit, &plan);
    }
  return (processor_ms () - start) * 1e3 / RUNS;
}

static double
time_turns (const SpelchPart *part, const SpelchBit *bit)
{
  SpelchCase c;
  SpelchLoads loads;
  spelch_case_prepare (&c, spelch_shop_constants (), part, &part->cuts[0], bit);
  double start = processor_ms ();
  for (int i = 0; i < RUNS; i++)
    {
      SpelchPass pass = { .tip_mm = 4 + 10.0 * i / RUNS, .tracks = 1 };
      spelch_loads_find (&c, &pass, 30, &loads);
    }
  return (processor_ms () - start) * 1e3 / RUNS;
}

int
main (void)
{
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  const SpelchBit *bit = &part->bits[0];
  time_plans (part, bit, PASSES);
  double all = time_plans (part, bit, EVERYTHING), held = time_plans (part, bit, PASSES);
  double free = time_plans (part, bit, NOTHING), turn = time_turns (part, bit);
  g_print (
      "plan with passes, speed and feed held %.0f us, with a held pass %.0f us, with none %.0f us, one pass "
      "over a turn %.1f us; ratios %.1f, %.1f and %.1f\n",
      all, held, free, turn, all / turn, held / turn, free / turn);
  return 0;
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a cut takes of an edge: the way it goes, what is left, what it costs.
 */
#include "on-demo.h"

#include "plan/words.h"

#include <math.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };
static const SpelchNumbers INCHES = { SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, '.' };

static void
plan_at (Demo *demo, SpelchBit *bit, double feed)
{
  demo_hold_first_pass (demo, 9);
  demo->cut->held.speed_rpm = 18000;
  demo->cut->held.feed_mm_min = feed;
  demo_plan_bit (demo, bit);
}

/* By hand: D 6.35, a slot, two edges, 3600 mm/min at 18 000 rpm: 0.1 mm a tooth. A metre takes 5000 turns of
 * pi 6.35 / 2 = 9.9746 mm: 49.873 m. */
static void
test_edge_path (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  plan_at (demo, &bit, 3600);
  double metres = demo->plan.path_mm / 1000;
  g_assert_cmpfloat_with_epsilon (demo->plan.edge_path_m / metres, 49.873, 0.001);
  double slow = demo->plan.edge_path_m, left = demo->plan.life_m_left;
  plan_at (demo, &bit, 7200);
  g_assert_cmpfloat_with_epsilon (demo->plan.edge_path_m, slow / 2, 1e-6);
  g_assert_cmpfloat_with_epsilon (demo->plan.life_m_left, 2 * left, 1e-6);
}

/* At the same speed, feed, passes and holding a duller edge never lasts longer, and a dull one not at all. */
static void
test_duller (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  double before = HUGE_VAL;
  for (int wear = SPELCH_WEAR_NEW; wear <= SPELCH_WEAR_DULL; wear++)
    {
      bit.wear = (SpelchWear)wear;
      plan_at (demo, &bit, 3600);
      g_assert_cmpfloat (demo->plan.life_m_left, <, before);
      before = demo->plan.life_m_left;
    }
  g_assert_cmpfloat (before, ==, 0);
}

/* Metres told to be cut are gone: of a new bit, as many as it had come to nothing, half of them leave half.
 */
static void
test_metres_cut (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  bit.wear = SPELCH_WEAR_NEW;
  bit.metres_cut = 0;
  plan_at (demo, &bit, 3600);
  double whole = demo->plan.life_m_left;
  bit.metres_cut = whole / 2;
  plan_at (demo, &bit, 3600);
  g_assert_cmpfloat_with_epsilon (demo->plan.life_m_left, whole / 2, 1e-6);
  bit.metres_cut = whole * 3;
  plan_at (demo, &bit, 3600);
  g_assert_cmpfloat (demo->plan.life_m_left, ==, 0);
}

/* Common practice, no source: a coating makes carbide last about four times as long; high-speed steel lasts a
 * small part of that. */
static void
test_tool (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  bit.coated = false;
  bit.price = 40;
  plan_at (demo, &bit, 3600);
  double left = demo->plan.life_m_left, cost = demo->plan.cost;
  bit.coated = true;
  plan_at (demo, &bit, 3600);
  g_assert_cmpfloat_with_epsilon (demo->plan.life_m_left, 4 * left, 1e-6);
  g_assert_cmpfloat_with_epsilon (demo->plan.cost, cost / 4, 1e-9);
  bit.edge_material = bit.body_material = SPELCH_TOOL_HSS;
  plan_at (demo, &bit, 3600);
  g_assert_cmpfloat (demo->plan.life_m_left, <, left);
}

/* Pieces cut until a new edge is gone have cost the price of the bit. */
static void
test_cost (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  bit.wear = SPELCH_WEAR_NEW;
  bit.metres_cut = 0;
  bit.price = 40;
  plan_at (demo, &bit, 3600);
  double pieces = demo->plan.life_m_left / (demo->plan.path_mm / 1000);
  g_assert_cmpfloat_with_epsilon (pieces * demo->plan.cost, 40, 1e-9);
  g_assert_cmpfloat_with_epsilon (pieces * demo->plan.wear_share, 1, 1e-9);
  bit.price = 0;
  plan_at (demo, &bit, 3600);
  g_assert_cmpfloat (demo->plan.cost, ==, 0);
}

/* Film and glue wear edges sooner than the wood of softwood boards (common practice, no source). */
static void
test_boards (Demo *demo, gconstpointer unused)
{
  const char *const boards[]
      = { "pine-20", "softwood-ply-18", "birch-ply-18", "mdf-18", "melamine-particleboard-18" };
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  double before = HUGE_VAL;
  for (guint i = 0; i < G_N_ELEMENTS (boards); i++)
    {
      demo_take_board (demo, boards[i]);
      plan_at (demo, &bit, 3600);
      g_assert_cmpfloat (demo->plan.life_m_left, <, before);
      before = demo->plan.life_m_left;
    }
}

static void
test_words (Demo *demo, gconstpointer unused)
{
  SpelchPlan *plan = &demo->plan;
  plan->life_known = true;
  plan->life_m_left = 243.7;
  plan->cost = 0.314;
  g_autofree char *both = spelch_words_upkeep (plan, &MM);
  g_assert_cmpstr (both, ==, "Dull after about 240 m of such cuts; one piece costs 0.31 in wear.");
  plan->cost = 0;
  g_autofree char *feet = spelch_words_upkeep (plan, &INCHES);
  g_assert_cmpstr (feet, ==, "Dull after about 800 ft of such cuts.");
  plan->life_m_left = 0;
  g_autofree char *dull = spelch_words_upkeep (plan, &MM);
  g_assert_cmpstr (dull, ==, "The edge is dull: change the bit, or have it sharpened.");
  plan->life_known = false;
  g_autofree char *none = spelch_words_upkeep (plan, &MM);
  g_assert_cmpstr (none, ==, "");
}

#define ADD(name, function) g_test_add ("/upkeep/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("edge-path", test_edge_path);
  ADD ("duller", test_duller);
  ADD ("metres-cut", test_metres_cut);
  ADD ("tool", test_tool);
  ADD ("cost", test_cost);
  ADD ("boards", test_boards);
  ADD ("words", test_words);
  return g_test_run ();
}

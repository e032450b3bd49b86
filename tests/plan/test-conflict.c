/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Limits that conflict: the pair is named with its feeds, and each remedy, carried out, fits.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "plan/words-limits.h"

#include <math.h>
#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };
static const SpelchNumbers INCH = { SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, '.' };

static SpelchConflict
conflict_with (Demo *demo, const SpelchBit *bit)
{
  demo_plan_bit (demo, bit);
  return spelch_conflict_find (spelch_shop_constants (), demo->part, demo->cut, bit, &demo->plan);
}

static const SpelchFree *
freed (const SpelchConflict *conflict, SpelchFreeKind kind)
{
  for (guint i = 0; i < conflict->n_freed; i++)
    if (conflict->freed[i].kind == kind)
      return &conflict->freed[i];
  return NULL;
}

static double
worst_share (const Demo *demo)
{
  return demo->plan.feed_mm_min > 0 ? demo->plan.limits[0].share : 9;
}

static void
oak_dado (Demo *demo, double depth)
{
  demo_take_board (demo, "oak-20");
  demo_take_cut (demo, "shelf-dado");
  demo->cut->depth = spelch_length_mm (depth);
  demo->cut->held.passes_held = true;
}

/* A light gantry bends more than 0.05 mm in oak at any feed that keeps the wall cool: in 3 mm at once. */
static void
test_heat_and_bending (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "light-gantry");
  oak_dado (demo, 3);
  SpelchBit bit = *demo_bit ("up-cut-6.35x25");
  SpelchConflict conflict = conflict_with (demo, &bit);
  g_assert_true (conflict.found);
  g_assert_cmpint (conflict.low.limit, ==, SPELCH_LIMIT_HEAT);
  g_assert_cmpint (conflict.high.limit, ==, SPELCH_LIMIT_BENDING);
  g_assert_cmpfloat (conflict.low.feed_mm_min, >, conflict.high.feed_mm_min);
  /* wall heat is in inverse proportion to the feed, so that its caution of 1500 mJ/mm2 is reached there */
  g_assert_cmpfloat_with_epsilon (demo->plan.wall_heat * demo->plan.feed_mm_min / conflict.low.feed_mm_min,
                                  1500, 1e-6);
  g_autofree char *words = spelch_words_conflict (&conflict, &demo->plan, &MM);
  g_assert_nonnull (strstr (words, "the heat of the wall asks for at least"));
  g_assert_nonnull (strstr (words, "and the machine's flex allows"));

  const SpelchFree *pass = freed (&conflict, SPELCH_FREE_PASS);
  g_assert_nonnull (pass);
  demo->cut->held.n_passes = (guint)ceil (3 / pass->value - 1e-9) - 1;
  for (guint i = 0; i < demo->cut->held.n_passes; i++)
    demo->cut->held.passes[i] = spelch_length_mm (3 * (i + 1) / (demo->cut->held.n_passes + 1.0));
  demo_plan_bit (demo, &bit);
  g_assert_cmpfloat (worst_share (demo), <=, 1 + 1e-6);
  demo->cut->held.n_passes--; /* one fewer doesn't do */
  for (guint i = 0; i < demo->cut->held.n_passes; i++)
    demo->cut->held.passes[i] = spelch_length_mm (3 * (i + 1) / (demo->cut->held.n_passes + 1.0));
  demo_plan_bit (demo, &bit);
  g_assert_cmpfloat (worst_share (demo), >, 1);

  const SpelchFree *accepted = freed (&conflict, SPELCH_FREE_ACCEPTED);
  g_assert_nonnull (accepted);
  demo->cut->held.n_passes = 0;
  demo->part->accepted_seen = (int)accepted->value;
  g_assert_false (conflict_with (demo, &bit).found);
}

static bool
tears_when_thinner (Demo *demo, const SpelchBit *bit)
{
  demo->cut->held.passes_held = true;
  demo->cut->held.n_passes = 17;
  for (guint i = 0; i < demo->cut->held.n_passes; i++)
    demo->cut->held.passes[i] = spelch_length_mm (i + 1);
  demo_plan_bit (demo, bit);
  return spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR)->grade > 1;
}

/* A compression bit has to go deep at once, or it tears the face; thinner passes are no remedy then, though
 * they'd bend it less. */
static void
test_remedy_keeps_edges (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  demo_take_machine (demo, "light-gantry");
  demo_take_cut (demo, "outline");
  SpelchConflict conflict = conflict_with (demo, &bit);
  g_assert_true (conflict.found);
  g_assert_cmpint (conflict.high.limit, ==, SPELCH_LIMIT_BENDING);
  g_assert_null (freed (&conflict, SPELCH_FREE_PASS));
  g_assert_true (tears_when_thinner (demo, &bit));
  /* A down-cut bit keeps the face in passes of any depth. */
  bit = *demo_bit ("down-cut-6.35x25");
  g_assert_false (tears_when_thinner (demo, &bit));
}

/* A feed that is held can't give way, so the passes do: as many as keep the bit from bending too much, and in
 * any case no fewer than bend it least. */
static void
test_passes_for_held_feed (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  demo_take_cut (demo, "outline");
  demo_plan_bit (demo, &bit);
  guint own = demo->plan.n_passes;
  demo->cut->held.feed_mm_min = demo->plan.feed_mm_min * 1.4;
  demo_plan_bit (demo, &bit);
  guint quick = demo->plan.n_passes;
  g_assert_cmpuint (quick, >, own);
  g_assert_cmpfloat (worst_share (demo), <=, 1 + 1e-6);
  demo->cut->held.feed_mm_min *= 1.5;
  demo_plan_bit (demo, &bit);
  double share = worst_share (demo);
  demo->cut->held.passes_held = true; /* the whole depth at once */
  demo_plan_bit (demo, &bit);
  g_assert_cmpuint (demo->plan.n_passes, ==, 1);
  g_assert_cmpfloat (worst_share (demo), >, share * 1.2);
}

/* Fed by hand at the dial's top, chips of a dull wide bit are too thin: a slower spindle makes them thicker.
 */
static void
test_slower_speed (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("straight-12.7x32");
  bit.wear = SPELCH_WEAR_DULL;
  demo_take_machine (demo, "plunge-router");
  oak_dado (demo, 2);
  demo->part->accepted_seen = 3;
  demo->cut->held.speed_rpm = 22000;
  demo->cut->held.feed_mm_min = 2000;
  SpelchConflict conflict = conflict_with (demo, &bit);
  g_assert_true (conflict.found);
  g_assert_true (conflict.high.held);
  g_assert_cmpint (conflict.low.limit, ==, SPELCH_LIMIT_HEAT);
  const SpelchFree *speed = freed (&conflict, SPELCH_FREE_SPEED);
  g_assert_nonnull (speed);
  g_assert_cmpfloat (speed->value, <, 22000);
  g_autofree char *words = spelch_words_conflict (&conflict, &demo->plan, &MM);
  g_assert_nonnull (strstr (words, "a slower speed of"));
  demo->cut->held.speed_rpm = speed->value;
  demo_plan_bit (demo, &bit);
  g_assert_cmpfloat (worst_share (demo), <=, 1 + 1e-6);
}

/* Held by a small vacuum: so much of clamps would do. */
static void
test_weak_holding (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("up-cut-6.35x25");
  oak_dado (demo, 6.35);
  demo->part->accepted_seen = 3;
  demo->part->holding.area_mm2 = 3000;
  SpelchConflict conflict = conflict_with (demo, &bit);
  g_assert_true (conflict.found);
  g_assert_cmpint (conflict.high.limit, ==, SPELCH_LIMIT_HOLDING);
  const SpelchFree *clamps = freed (&conflict, SPELCH_FREE_HOLDING);
  g_assert_nonnull (clamps);
  demo->part->holding.method = SPELCH_HOLD_CLAMPS;
  demo->part->holding.clamp_force_n = clamps->value;
  g_assert_false (conflict_with (demo, &bit).found);
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_HOLDING));
}

/* Held too quick: what is over and what it allows, and that letting go helps. Nothing is said where all fits.
 */
static void
test_held_feed (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("up-cut-6.35x25");
  oak_dado (demo, 6.35);
  g_assert_false (conflict_with (demo, &bit).found);
  demo->cut->held.feed_mm_min = 12000;
  SpelchConflict conflict = conflict_with (demo, &bit);
  g_assert_true (conflict.found);
  g_assert_true (conflict.low.held);
  g_assert_cmpfloat (conflict.low.feed_mm_min, ==, 12000);
  const SpelchFree *feed = freed (&conflict, SPELCH_FREE_FEED);
  g_assert_nonnull (feed);
  demo->cut->held.feed_mm_min = feed->value;
  g_assert_false (conflict_with (demo, &bit).found);
}

/* 1000 mm at 3000 mm/min take 20 s; a foot, 304.8 mm, 6.1 s. */
static void
test_pace (Demo *demo, gconstpointer unused)
{
  demo_plan_with (demo, "up-cut-6.35x25");
  g_autofree char *gantry = spelch_words_pace (&demo->plan, &MM);
  g_assert_cmpstr (gantry, ==, "");
  demo_take_machine (demo, "plunge-router");
  demo->cut->held.feed_mm_min = 3000;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_autofree char *metre = spelch_words_pace (&demo->plan, &MM);
  g_autofree char *foot = spelch_words_pace (&demo->plan, &INCH);
  g_assert_cmpstr (metre, ==, "a metre in 20 s");
  g_assert_cmpstr (foot, ==, "a foot in 6.1 s");
}

#define ADD(name, function) g_test_add ("/conflict/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("heat-and-bending", test_heat_and_bending);
  ADD ("remedy-keeps-edges", test_remedy_keeps_edges);
  ADD ("passes-for-held-feed", test_passes_for_held_feed);
  ADD ("slower-speed", test_slower_speed);
  ADD ("weak-holding", test_weak_holding);
  ADD ("held-feed", test_held_feed);
  ADD ("pace", test_pace);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * How far the bit goes and how long that takes, against hand arithmetic written beside each.
 */
#include "on-demo.h"

#include <math.h>

#define NEAR(a, b) g_assert_cmpfloat_with_epsilon (a, b, 1e-6)

/* One pass at 3000 mm/min, the plunge at 0.3 of it: 900. */
static void
take (Demo *demo, const char *cut)
{
  demo_take_cut (demo, cut);
  demo->cut->quantity = 1;
  demo->cut->held.feed_mm_min = 3000;
  demo->cut->held.passes_held = true;
}

static void
plan_10_mm (Demo *demo)
{
  SpelchBit bit = *demo_bit ("up-cut-12.7x38");
  bit.diameter = spelch_length_mm (10);
  demo_plan_bit (demo, &bit);
}

/* A pocket of 100 x 40 with a 10 mm bit: 30 beyond one bit, steps of at most 9.5, five tracks 7.5 apart.
 * Round at 5 mm from the wall 280 - 40 = 240, at 12.5 280 - 100 = 180, and the middle, 60 long: 480 in all. A
 * finishing pass goes round at the wall: 240 more. */
static void
test_pocket (Demo *demo, gconstpointer unused)
{
  take (demo, "shelf-dado");
  demo->cut->kind = SPELCH_CUT_POCKET;
  demo->cut->start = demo->cut->end = SPELCH_END_INSIDE;
  demo->cut->width = spelch_length_mm (40);
  demo->cut->length = spelch_length_mm (280);
  demo->cut->depth = spelch_length_mm (6);
  plan_10_mm (demo);
  g_assert_cmpint (demo->plan.passes[0].tracks, ==, 5);
  NEAR (demo->plan.path_mm, 480);
  NEAR (demo->plan.time_s, 480 / 3000.0 * 60 + 6 / 900.0 * 60);
  demo->cut->held.allowance_held = true;
  demo->cut->held.allowance = spelch_length_mm (0.5);
  plan_10_mm (demo);
  NEAR (demo->plan.path_mm, 720);
}

static void
take_cup (Demo *demo, double length)
{
  take (demo, "shelf-dado");
  demo->cut->kind = SPELCH_CUT_POCKET;
  demo->cut->start = demo->cut->end = SPELCH_END_INSIDE;
  demo->cut->width = spelch_length_mm (35);
  demo->cut->length = spelch_length_mm (length);
  demo->cut->corner_radius = spelch_length_mm (17.5);
  demo->cut->depth = spelch_length_mm (6);
}

/* A round cup of 35 mm, 35 pi once round, with a 10 mm bit: 25 beyond one bit, four tracks 25 / 3 apart, so
 * two rings whose middles lie 25 and 25 / 3 across: as of a hole as wide, pi x 33.33. Four of them, with what
 * the bit takes to plunge. */
static void
test_cup (Demo *demo, gconstpointer unused)
{
  take_cup (demo, 35 * M_PI);
  plan_10_mm (demo);
  g_assert_cmpint (demo->plan.passes[0].tracks, ==, 4);
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_TOO_WIDE));
  NEAR (demo->plan.path_mm, M_PI * (25 + 25 / 3.0));
  NEAR (demo->plan.time_s, (M_PI * (25 + 25 / 3.0) / 3000 + 6 / 900.0) * 60);
  double one = demo->plan.time_s;
  demo->cut->quantity = 4;
  plan_10_mm (demo);
  NEAR (demo->plan.time_s, 4 * one);
}

/* 90 once round and 35 wide leave 10 along the other way, with sharp corners: a bit of 10 mm goes in, one of
 * 12.7 doesn't. 35 once round can't be as wide as 35 at all. */
static void
test_narrow_pocket (Demo *demo, gconstpointer unused)
{
  take_cup (demo, 90);
  demo->cut->corner_radius = spelch_length_mm (0);
  g_assert_cmpfloat_with_epsilon (spelch_cut_pocket_across (demo->cut), 10, 1e-9);
  plan_10_mm (demo);
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_TOO_WIDE));
  demo_plan_with (demo, "up-cut-12.7x38");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_TOO_WIDE));
  take_cup (demo, 35);
  plan_10_mm (demo);
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_POCKET_ROUND));
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_TOO_WIDE));
}

/* A blind hole of 38 mm: 28 beyond one bit, four tracks 28 / 3 apart. Two rings whose middles lie 28 and 28 /
 * 3 across: pi x 37.33. Right through only the outer ring is gone round, and the core comes loose. */
static void
test_hole (Demo *demo, gconstpointer unused)
{
  take (demo, "peg-holes");
  demo->cut->width = spelch_length_mm (38);
  plan_10_mm (demo);
  g_assert_cmpint (demo->plan.passes[0].tracks, ==, 4);
  NEAR (demo->plan.path_mm, M_PI * (28 + 28 / 3.0));
  g_assert_false (demo->plan.setting_out.drops_out);
  demo->cut->through = true;
  plan_10_mm (demo);
  NEAR (demo->plan.path_mm, M_PI * 28);
  g_assert_true (demo->plan.setting_out.drops_out);
  g_assert_cmpint (demo->plan.passes[0].tracks, ==, 2);
  /* 19 leave 9 beyond one bit, two tracks: nothing is left to drop */
  demo->cut->width = spelch_length_mm (19);
  plan_10_mm (demo);
  g_assert_false (demo->plan.setting_out.drops_out);
}

/* 16 holes 12 mm deep with a 5 mm bit, three pecks: 12 mm down at 900, and twice 4 and twice 8 = 24 at 3000.
 */
static void
test_pecks (Demo *demo, gconstpointer unused)
{
  take (demo, "peg-holes");
  demo->cut->quantity = 16;
  demo_plan_with (demo, "up-cut-5x17");
  g_assert_cmpuint (demo->plan.setting_out.pecks, ==, 3);
  NEAR (demo->plan.time_s, 16 * 60 * (12 / 900.0 + 24 / 3000.0));
  NEAR (demo->plan.path_mm, 0);
}

/* A dado of 320 x 18 in two tracks of 12.7, in from the edge: 640 mm and nothing for the entry; two such cuts
 * twice. */
static void
test_tracks (Demo *demo, gconstpointer unused)
{
  take (demo, "shelf-dado");
  demo_plan_with (demo, "up-cut-12.7x38");
  NEAR (demo->plan.path_mm, 640);
  NEAR (demo->plan.time_s, 12.8);
  demo->cut->quantity = 2;
  demo_plan_with (demo, "up-cut-12.7x38");
  NEAR (demo->plan.time_s, 25.6);
}

/* A ramp of 3 degrees to 9 mm, 171.73 mm, at the feed. */
static void
test_ramp (Demo *demo, gconstpointer unused)
{
  take (demo, "rail-mortise");
  demo->cut->depth = spelch_length_mm (9);
  demo->cut->width = spelch_length_mm (12.7);
  demo->cut->held.entry_held = true;
  demo->cut->held.entry = SPELCH_ENTRY_RAMP;
  demo->cut->held.entry_deg = 3;
  demo_plan_with (demo, "up-cut-12.7x38");
  NEAR (demo->plan.time_s, (60 + 9 / tan (3 * G_PI / 180)) / 3000 * 60);
}

#define ADD(name, function) g_test_add ("/travel/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("pocket", test_pocket);
  ADD ("cup", test_cup);
  ADD ("narrow-pocket", test_narrow_pocket);
  ADD ("hole", test_hole);
  ADD ("pecks", test_pecks);
  ADD ("tracks", test_tracks);
  ADD ("ramp", test_ramp);
  return g_test_run ();
}

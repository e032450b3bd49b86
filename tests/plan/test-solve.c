/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Speed and feed: what is held stays held and its consequences show, the slowest speed that serves is taken,
 * and a seen edge gets thin chips where they make a difference.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "plan/words-limits.h"
#include "plan/words.h"

#include <math.h>
#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

static double
share (const Demo *demo, SpelchLimitKind kind)
{
  for (guint i = 0; i < demo->plan.n_limits; i++)
    if (demo->plan.limits[i].kind == kind)
      return demo->plan.limits[i].share;
  return 0;
}

static const SpelchLimit *
binding (const Demo *demo)
{
  for (guint i = 0; i < demo->plan.n_limits; i++)
    if (demo->plan.limits[i].binding)
      return &demo->plan.limits[i];
  return NULL;
}

/* The feed the outline gets at a held speed. */
static double
feed_at (Demo *demo, double rpm)
{
  demo->cut->held.feed_mm_min = 0;
  demo->cut->held.speed_rpm = rpm;
  demo_plan_with (demo, "up-cut-12.7x38");
  return demo->plan.feed_mm_min;
}

/* A held feed turns the spindle no quicker than that feed needs: quicker would only thin the chips. */
static void
test_held_feed (Demo *demo, gconstpointer unused)
{
  demo->cut->held.feed_mm_min = 3000;
  demo_plan_with (demo, "up-cut-12.7x38");
  double rpm = demo->plan.speed_rpm;
  g_assert_cmpfloat (demo->plan.feed_mm_min, ==, 3000);
  g_assert_null (binding (demo));
  g_autofree char *words = spelch_words_limit (&demo->plan);
  g_assert_true (g_str_has_prefix (words, "Feed held by hand."));
  g_assert_cmpfloat (feed_at (demo, rpm), >=, 3000);
  if (rpm > demo->part->machine.rpm_min)
    g_assert_cmpfloat (feed_at (demo, rpm - 1000), <, 3000);
}

/* Common practice, no source: for a slow feed one lowers the depth and keeps the speed; few slow, thick bites
 * snatch. The force formulas hold from 5 m/s on, 5 * 60 / (pi * 0.00635 m) = 15 038 rpm with this bit: of the
 * table's dial steps that is the one of 16 000. Where only slower ones don't burn the wall, it is said. */
static void
test_held_feed_not_slow (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "router-table");
  demo_take_cut (demo, "shelf-dado");
  demo->cut->depth = spelch_length_mm (6);
  for (double feed = 1000; feed <= 1600; feed += 100)
    {
      demo->cut->held.feed_mm_min = feed;
      demo_plan_with (demo, "up-cut-6.35x25");
      g_assert_cmpfloat (demo->plan.feed_mm_min, ==, feed);
      g_assert_cmpfloat (demo->plan.speed_rpm, ==, 16000);
      g_assert_false (demo->plan.slow);
      g_autofree char *nothing = spelch_words_slow (&demo->plan, &MM);
      g_assert_cmpstr (nothing, ==, "");
    }
  demo->cut->held.feed_mm_min = 50;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_true (demo->plan.slow);
  g_autofree char *words = spelch_words_slow (&demo->plan, &MM);
  g_assert_true (g_str_has_prefix (words, "Slow for this bit: its edges move at only 2.7 m/s"));
}

/* Of the speeds that come within 5 % of the quickest feed, the slowest: the next slower doesn't. Feeds are
 * rounded down by up to 100 mm/min. */
static void
test_slowest_speed (Demo *demo, gconstpointer unused)
{
  double best = 0;
  demo_plan_with (demo, "up-cut-12.7x38");
  double rpm = demo->plan.speed_rpm, feed = demo->plan.feed_mm_min;
  for (double at = demo->part->machine.rpm_min; at <= demo->part->machine.rpm_max; at += 1000)
    best = MAX (best, feed_at (demo, at));
  g_assert_cmpfloat (feed, >=, 0.95 * best - 100);
  if (rpm > demo->part->machine.rpm_min)
    g_assert_cmpfloat (feed_at (demo, rpm - 1000), <, 0.95 * best + 100);
}

/* Held far too quick: the shares say so, and a bit over its strength must not be cut with. */
static void
test_too_quick (Demo *demo, gconstpointer unused)
{
  demo->cut->held.feed_mm_min = 60000;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpfloat (share (demo, SPELCH_LIMIT_MACHINE), ==, 5);
  g_assert_cmpfloat (share (demo, SPELCH_LIMIT_STRESS), >, 1);
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_STRESS));
  g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_DO_NOT_CUT);
  demo_take_machine (demo, "plunge-router");
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_HANDS));
}

static void
test_marked_speed (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("up-cut-12.7x38");
  bit.max_rpm = 14500;
  demo_plan_bit (demo, &bit);
  g_assert_cmpfloat (demo->plan.speed_rpm, <=, 14500);
  demo->cut->held.speed_rpm = 15000;
  demo_plan_bit (demo, &bit);
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_SPEED_MARK));
  bit.max_rpm = 6000; /* slower than the machine turns */
  demo->cut->held.speed_rpm = 0;
  demo_plan_bit (demo, &bit);
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_SPEED_MARK));
}

/* A straight bit in plywood: 1 for the missing shear, 1 more for chips of a tenth of a millimetre and over.
 * Clean can't be had, so the best that can is sought; where 3 is accepted, time. */
static void
test_best_seen_edge (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  demo->cut->end = SPELCH_END_BACKED;
  demo_plan_with (demo, "straight-12.7x32");
  double slow = demo->plan.time_s;
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 2);
  g_assert_cmpfloat (demo->plan.chip_max, <, 0.1);
  demo->part->accepted_seen = 3;
  demo_plan_with (demo, "straight-12.7x32");
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 3);
  g_assert_cmpfloat (demo->plan.time_s, <, slow);
}

/* What sets the feed is used nearly whole, and is named. */
static void
test_binding (Demo *demo, gconstpointer unused)
{
  demo_plan_with (demo, "compression-6.35x22");
  const SpelchLimit *limit = binding (demo);
  g_assert_nonnull (limit);
  g_assert_cmpfloat (limit->share, >, 0.95);
  g_autofree char *words = spelch_words_limit (&demo->plan);
  g_assert_nonnull (strstr (words, "sets the feed"));
  g_autofree char *passes = spelch_words_passes (&demo->plan, &MM);
  g_assert_nonnull (strstr (passes, "18.3 mm"));
}

/* A millimetre bit in oak: not even a standing chip bends it little enough. */
static void
test_no_feed (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("up-cut-3x12");
  bit.diameter = spelch_length_mm (1);
  demo_take_board (demo, "oak-20");
  demo_take_cut (demo, "shelf-dado");
  demo_plan_bit (demo, &bit);
  g_assert_cmpfloat (demo->plan.feed_mm_min, ==, 0);
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_NO_SPEED));
  g_autofree char *words = spelch_words_limit (&demo->plan);
  g_assert_nonnull (strstr (words, "even at the slowest feed: none fits"));
}

/* White oak weighs 1000 x 0.68 x 1.12 = 762 kg/m3 at 12 % moisture (specific gravity: Wood Handbook
 * FPL-GTR-190, Table 5-3a; mass of the dry wood and its water), 1.088 times the 700 that the hardwood row
 * stands for. */
static void
test_species (Demo *demo, gconstpointer unused)
{
  demo_take_board (demo, "oak-20");
  demo->part->machine.spoilboard = SPELCH_SPOILBOARD_CUT_HERE_BEFORE; /* nothing but oak is cut */
  demo->cut->held.passes_held = true;
  demo->cut->held.speed_rpm = 18000;
  demo->cut->held.feed_mm_min = 2000;
  demo_plan_with (demo, "up-cut-12.7x38");
  double oak = demo->plan.power_w.mid;
  demo->part->board.density_kg_m3 = 700;
  demo_plan_with (demo, "up-cut-12.7x38");
  g_assert_cmpfloat_with_epsilon (oak / demo->plan.power_w.mid, 1.088, 1e-6);
  demo->part->board.density_kg_m3 = 0;
  demo->part->board.species[0] = '\0';
  double told = demo->plan.power_w.mid;
  demo_plan_with (demo, "up-cut-12.7x38");
  g_assert_cmpfloat_with_epsilon (demo->plan.power_w.mid, told, 1e-9);
}

/* The load stands in the middle of the heights that cut. With 3 mm of the tip in the air below an 18 mm board
 * that is 12 mm above the tip, with 0.1 mm 9.1; a solid round of 12.7 mm and 60 mm, held at one end, gives P
 * p^2 (3 l - p) / 6 E I at its tip for a load P at p from the other (Machinery's Handbook, memory), and the
 * machine P / k more. */
static void
test_middle_of_load (Demo *demo, gconstpointer unused)
{
  const SpelchConstants *k = spelch_shop_constants ();
  SpelchBit bit = *demo_bit ("straight-12.7x32");
  double i = G_PI * pow (12.7 * k->fluted_diameter, 4) / 64, bent[2], expected[2];
  demo_take_machine (demo, "router-table");
  bit.cutting_length = demo->cut->stick_out = spelch_length_mm (60);
  demo->cut->held.passes_held = demo->cut->held.overcut_held = true;
  demo->cut->held.speed_rpm = 18000;
  demo->cut->held.feed_mm_min = 1800;
  for (int j = 0; j < 2; j++)
    {
      double over = j == 0 ? 0.1 : 3, p = 60 - over - 9;
      demo->cut->held.overcut = spelch_length_mm (over);
      demo_plan_bit (demo, &bit);
      bent[j] = demo->plan.deflection_mm / demo->plan.sideways_peak_n;
      expected[j]
          = p * p * (3 * 60 - p) / (6 * k->modulus_steel * i) + 1 / demo->part->machine.stiffness_n_mm;
      g_assert_cmpfloat_with_epsilon (bent[j] / expected[j], 1, 1e-6);
    }
}

/* Half a millimetre of a fresh spoilboard takes as much as half a millimetre more of an MDF board; a kerf
 * that is there already, and air, take nothing; of a backer only what there is of it. */
static void
test_below_the_board (Demo *demo, gconstpointer unused)
{
  const struct
  {
    const char *machine;
    SpelchSpoilboard spoilboard;
    double backer, over, cuts;
  } rows[] = { { "medium-gantry", SPELCH_SPOILBOARD_FRESH, 0, 0.5, 18.5 },
               { "medium-gantry", SPELCH_SPOILBOARD_CUT_HERE_BEFORE, 0, 0.5, 18 },
               { "medium-gantry", SPELCH_SPOILBOARD_UNTOLD, 0, 0.5, 18.5 },
               { "medium-gantry", SPELCH_SPOILBOARD_CUT_HERE_BEFORE, 6, 3, 21 },
               { "plunge-router", SPELCH_SPOILBOARD_FRESH, 0, 2, 18 },
               { "plunge-router", SPELCH_SPOILBOARD_FRESH, 1.5, 2, 19.5 } };
  demo_take_board (demo, "mdf-18");
  demo->cut->held.passes_held = demo->cut->held.overcut_held = true;
  demo->cut->held.speed_rpm = 18000;
  demo->cut->held.feed_mm_min = 3600;
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo_take_machine (demo, rows[i].machine);
      demo->part->machine.spoilboard = rows[i].spoilboard;
      demo->cut->backer = spelch_length_mm (rows[i].backer);
      demo->cut->held.overcut = spelch_length_mm (rows[i].over);
      demo_plan_with (demo, "straight-12.7x32");
      /* 2.2 N/mm x 1.2 x a half turn and 24 MPa x chip section, for each mm of height, twice a turn */
      double each = 2 * 300 * (2.2 * 1.2 * G_PI * 12.7 / 2 + 24 * 0.1 * 12.7) / 1000;
      g_assert_cmpfloat_with_epsilon (demo->plan.power_w.mid, each * rows[i].cuts, 1e-6);
    }
}

/* Vacuum under a small piece: with 5 cm2 more the feed rises, until something else sets it; what is then used
 * of the holding is just its factor of 2, or 1 at the worst. */
static void
test_holding_sets_feed (Demo *demo, gconstpointer unused)
{
  demo_take_board (demo, "oak-20");
  demo_take_cut (demo, "shelf-dado");
  demo->part->accepted_seen = 3;
  demo->cut->held.passes_held = true;
  demo->cut->depth = spelch_length_mm (5);
  double before = 0;
  guint set = 0;
  for (double area = 8000; area < 40000; area += 500)
    {
      demo->part->holding.area_mm2 = area;
      demo_plan_with (demo, "up-cut-6.35x25");
      if (demo_has_stop (demo, SPELCH_STOP_HOLDING))
        continue;
      g_assert_cmpfloat (demo->plan.feed_mm_min, >=, before);
      before = demo->plan.feed_mm_min;
      if (binding (demo)->kind != SPELCH_LIMIT_HOLDING)
        continue;
      set++;
      double used = MAX (2 / demo->plan.hold_factor, 1 / demo->plan.hold_factor_worst);
      g_assert_cmpfloat_with_epsilon (share (demo, SPELCH_LIMIT_HOLDING), used, 1e-9);
      g_assert_cmpfloat (used, <=, 1);
      g_assert_cmpfloat (used, >, 0.95);
    }
  g_assert_cmpuint (set, >=, 3);
}

/* What holds the speed: the mark on the bit, where the dial's next step is above it; the machine, where the
 * bit would turn faster; hands. */
static void
test_speed_held (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("up-cut-6.35x25");
  demo_take_machine (demo, "light-gantry"); /* ... 20 000, 24 000, 27 000 rpm */
  bit.max_rpm = 23000;
  demo_plan_bit (demo, &bit);
  g_assert_cmpfloat (demo->plan.speed_rpm, ==, 20000);
  g_assert_cmpint (demo->plan.speed_held.by, ==, SPELCH_SPEED_BY_MARK);
  g_assert_cmpfloat (demo->plan.speed_held.next_rpm, ==, 24000);
  g_assert_cmpfloat_with_epsilon (demo->plan.speed_held.of_mark, 20.0 / 23, 1e-9);
  bit.max_rpm = 30000;
  demo_plan_bit (demo, &bit);
  g_assert_cmpfloat (demo->plan.speed_rpm, ==, 27000);
  g_assert_cmpint (demo->plan.speed_held.by, ==, SPELCH_SPEED_BY_MACHINE);
  g_assert_cmpfloat (demo->plan.speed_held.next_rpm, ==, 0);
  demo->cut->held.speed_rpm = 17000;
  demo_plan_bit (demo, &bit);
  g_assert_cmpint (demo->plan.speed_held.by, ==, SPELCH_SPEED_BY_HAND);
  demo->cut->held.speed_rpm = 0;
  demo_take_machine (demo, "plunge-router"); /* hands feed no faster, so turning faster gains nothing */
  demo_take_board (demo, "mdf-18");
  demo->cut->held.passes_held = true;
  demo->cut->held.n_passes = 1;
  demo->cut->held.passes[0] = spelch_length_mm (9);
  demo_plan_bit (demo, &bit);
  g_assert_cmpint (demo->plan.speed_held.by, ==, SPELCH_SPEED_BY_GAIN);
}

#define ADD(name, function) g_test_add ("/solve/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("held-feed", test_held_feed);
  ADD ("held-feed/not-slow", test_held_feed_not_slow);
  ADD ("slowest-speed", test_slowest_speed);
  ADD ("too-quick", test_too_quick);
  ADD ("marked-speed", test_marked_speed);
  ADD ("best-seen-edge", test_best_seen_edge);
  ADD ("binding", test_binding);
  ADD ("no-feed", test_no_feed);
  ADD ("species", test_species);
  ADD ("below-the-board", test_below_the_board);
  ADD ("holding-sets-feed", test_holding_sets_feed);
  ADD ("speed-held", test_speed_held);
  ADD ("middle-of-load", test_middle_of_load);
  return g_test_run ();
}

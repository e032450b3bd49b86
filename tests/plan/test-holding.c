/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the forces do to the work and to the hands: every pass counts, and what nobody told is asked.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "plan/cautions.h"
#include "plan/words.h"

#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

static void
hold_speed_and_feed (Demo *demo)
{
  demo->cut->held.speed_rpm = 18000;
  demo->cut->held.feed_mm_min = 3600;
}

/* A first pass of 6 mm is all up-shear and lifts; the second, deeper one takes more power and presses almost
 * as much as it lifts. The seat is that of the first, the same as of a slot 6 mm deep. */
static void
test_every_pass (Demo *demo, gconstpointer unused)
{
  demo_hold_first_pass (demo, 6);
  hold_speed_and_feed (demo);
  demo_plan_with (demo, "compression-6.35x22");
  SpelchPlan outline = demo->plan;
  demo_take_cut (demo, "shelf-dado");
  demo->cut->depth = spelch_length_mm (6);
  demo->cut->width = spelch_length_mm (6.35);
  hold_speed_and_feed (demo);
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpuint (demo->plan.n_passes, ==, 1);
  g_assert_cmpfloat (outline.axial_mean_n, <, demo->plan.axial_mean_n);
  g_assert_true (outline.seats[0].apart);
  g_assert_cmpfloat_with_epsilon (outline.seats[0].mean_n, demo->plan.axial_mean_n, 1e-9);
  g_assert_cmpfloat_with_epsilon (outline.seats[0].bound_n, demo->plan.seats[0].bound_n, 1e-9);
  g_assert_cmpfloat_with_epsilon (outline.lift_bound_n, demo->plan.lift_bound_n, 1e-9);
  g_assert_cmpfloat (outline.hold_needed_n, >=, demo->plan.hold_needed_n);
  g_assert_cmpfloat (outline.hold_factor, <=, demo->plan.hold_factor);
}

/* 3 mm at 8000 rpm: pi x 3 x 8 / 60 = 1.26 m/s. Forces on panels are out by 30 %, so slow by 50 %. */
static void
test_slow (Demo *demo, gconstpointer unused)
{
  demo_plan_with (demo, "up-cut-12.7x38");
  g_assert_false (demo->plan.slow);
  g_assert_cmpfloat_with_epsilon (demo->plan.power_w.high, 1.3 * demo->plan.power_w.mid, 1e-9);
  demo_take_cut (demo, "shelf-dado");
  demo->cut->held.speed_rpm = 8000;
  demo_plan_with (demo, "up-cut-3x12");
  g_assert_true (demo->plan.slow);
  g_assert_cmpfloat_with_epsilon (demo->plan.power_w.high, 1.5 * demo->plan.power_w.mid, 1e-9);
  g_assert_cmpfloat_with_epsilon (demo->plan.power_w.low, 0.5 * demo->plan.power_w.mid, 1e-9);
  g_auto (GStrv) why = spelch_words_edge_why (&demo->plan, SPELCH_SIDE_MOTOR, &MM);
  guint said = 0;
  for (guint i = 0; why[i] != NULL; i++)
    said += strstr (why[i], "1.3 m/s") != NULL;
  g_assert_cmpuint (said, ==, 1);
}

/* 100 mm by 40 with sharp corners, right through. */
static void
take_opening (Demo *demo, SpelchCutKind kind)
{
  demo_take_cut (demo, "shelf-dado");
  demo->cut->kind = kind;
  demo->cut->start = demo->cut->end = SPELCH_END_INSIDE;
  demo->cut->mating.told = false;
  demo->cut->width = spelch_length_mm (40);
  demo->cut->length = spelch_length_mm (280);
  demo->cut->through = true;
  demo->cut->tabs.count = 0;
}

/* Common practice, no source, the same as above: where a bit goes once round an opening, its middle comes
 * free beside the running bit, and nothing leads the work all round. A 40 mm opening leaves a middle to a bit
 * of 6.35 mm; where it is blind, or no wider than two tracks, nothing comes free. */
static void
test_freehand_opening (Demo *demo, gconstpointer unused)
{
  const struct
  {
    const char *machine;
    SpelchCutKind kind;
    double width;
    bool through, stops;
  } rows[] = { { "router-table", SPELCH_CUT_POCKET, 40, true, true },
               { "router-table", SPELCH_CUT_HOLE, 40, true, true },
               { "router-table", SPELCH_CUT_POCKET, 40, false, false },
               { "router-table", SPELCH_CUT_POCKET, 12, true, false },
               { "medium-gantry", SPELCH_CUT_POCKET, 40, true, false },
               { "plunge-router", SPELCH_CUT_POCKET, 40, true, false } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo_take_machine (demo, rows[i].machine);
      take_opening (demo, rows[i].kind);
      demo->cut->width = spelch_length_mm (rows[i].width);
      demo->cut->through = rows[i].through;
      demo_plan_with (demo, "up-cut-6.35x25");
      g_test_message ("row %u", i);
      g_assert_true (demo_has_stop (demo, SPELCH_STOP_FREEHAND) == rows[i].stops);
      if (!rows[i].stops)
        continue;
      g_autofree char *sentence = spelch_words_stop (&demo->plan.stops[0], &MM);
      g_assert_true (g_str_has_prefix (sentence, "Saw the opening out a little smaller"));
      g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_DO_NOT_CUT);
    }
}

/* Nothing is taken for granted: neither how the work is held nor how hard. */
static void
test_asked (Demo *demo, gconstpointer unused)
{
  demo->part->holding.area_mm2 = 0;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_true (demo_has_stop (demo, SPELCH_ASK_HOLD_FORCE));
  demo->part->holding.method = SPELCH_HOLD_SCREWS;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_true (demo_has_stop (demo, SPELCH_ASK_HOLD_FORCE));
  demo->part->holding.method = SPELCH_HOLD_UNTOLD;
  const char *const machines[] = { "medium-gantry", "router-table", "plunge-router" };
  for (guint i = 0; i < G_N_ELEMENTS (machines); i++)
    {
      demo_take_machine (demo, machines[i]);
      demo_plan_with (demo, "compression-6.35x22");
      g_assert_true (demo_has_stop (demo, SPELCH_ASK_HOLDING));
      g_assert_cmpint (demo->plan.verdict, !=, SPELCH_VERDICT_NO_OBJECTION);
    }
}

/* 30 N for a router of up to 2.5 kg and for one that nobody weighed, 60 N for a heavier one. */
static void
test_hands (Demo *demo, gconstpointer unused)
{
  const struct
  {
    double mass, most;
  } rows[] = { { 1.8, 30 }, { 0, 30 }, { 4.5, 60 } };
  demo_take_machine (demo, "plunge-router");
  demo->cut->held.feed_mm_min = 30000;
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo->part->machine.mass_kg = rows[i].mass;
      demo_plan_with (demo, "up-cut-6.35x25");
      double limit = 0;
      for (guint j = 0; j < demo->plan.n_stops; j++)
        if (demo->plan.stops[j].kind == SPELCH_STOP_HANDS)
          limit = demo->plan.stops[j].limit;
      g_assert_cmpfloat (limit, ==, rows[i].most);
    }
}

/* 60 kPa on 200 000 mm2, half of it through the spoilboard: 6000 N. A hundredth of that area holds too
 * little. */
static void
test_vacuum (Demo *demo, gconstpointer unused)
{
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpfloat_with_epsilon (demo->plan.hold_available_n - demo->plan.weight_n, 6000, 1e-6);
  g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_NO_OBJECTION);
  demo->part->holding.area_mm2 = 2000;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_HOLDING));
}

/* 720 x 320 x 18 mm of 680 kg/m3 weigh 0.0041472 m3 x 680 x 9.80665 = 27.656 N, which press the work down
 * too. */
static void
test_weight (Demo *demo, gconstpointer unused)
{
  demo->part->board.density_kg_m3 = 680;
  hold_speed_and_feed (demo);
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpfloat_with_epsilon (demo->plan.weight_n, 27.656, 1e-3);
  g_assert_cmpfloat_with_epsilon (demo->plan.hold_available_n, 6027.656, 1e-3);
  double factor = demo->plan.hold_factor;
  demo->part->board.density_kg_m3 = 1360;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpfloat (demo->plan.hold_factor, >, factor);
  demo->part->holding.method = SPELCH_HOLD_CLAMPS; /* of no known force: weight alone is no holding */
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_true (demo_has_stop (demo, SPELCH_ASK_HOLD_FORCE));
  g_assert_cmpfloat (demo->plan.hold_available_n, ==, 0);
}

/* The press needed against sliding falls as friction rises: raw wood, laminate and a rubber mat. */
static void
test_friction (Demo *demo, gconstpointer unused)
{
  demo->part->board.density_kg_m3 = 0;
  demo_take_cut (demo, "shelf-dado");
  hold_speed_and_feed (demo);
  demo_plan_with (demo, "down-cut-6.35x25"); /* lifts nothing, so press = 2 x side / friction */
  double raw = demo->plan.hold_needed_n;
  g_assert_cmpfloat (demo->plan.lift_bound_n, ==, 0);
  demo->part->holding.on_rubber = true;
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpfloat_with_epsilon (demo->plan.hold_needed_n / raw, 0.4 / 0.6, 1e-9);
  demo->part->holding.on_rubber = false;
  demo_take_board (demo, "melamine-mdf-18");
  demo_plan_with (demo, "down-cut-6.35x25");
  double slick = demo->plan.hold_needed_n;
  demo_take_board (demo, "mdf-18");
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpfloat_with_epsilon (slick / demo->plan.hold_needed_n, 0.4 / 0.25, 0.01);
}

/* Balance about an edge: cut 6 mm deep, the middle of the cut stands 15 mm above the bed; a strip 8 mm wide
 * bears 4/15 N of side for each newton of press before it tilts, and slides at 0.4. A wide one slides. */
static void
test_tilt (Demo *demo, gconstpointer unused)
{
  demo_take_board (demo, "mdf-18");
  demo->part->board.density_kg_m3 = 0;
  demo_take_cut (demo, "shelf-dado");
  demo->cut->depth = spelch_length_mm (6);
  demo->cut->held.passes_held = true;
  hold_speed_and_feed (demo);
  demo_plan_with (demo, "down-cut-6.35x25");
  double slides = demo->plan.hold_factor;
  g_assert_cmpint (demo->plan.hold_way, ==, SPELCH_GIVES_SLIDING);
  demo->part->width = spelch_length_mm (8);
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpint (demo->plan.hold_way, ==, SPELCH_GIVES_TILTING);
  g_assert_cmpfloat_with_epsilon (demo->plan.hold_factor / slides, (4.0 / 15) / 0.4, 1e-3);
  g_autofree char *words = spelch_words_seat_advice (&demo->plan, demo->part, &MM);
  g_assert_nonnull (strstr (words, "tilt"));
  demo->part->width = spelch_length_mm (0);
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_true (demo_has_stop (demo, SPELCH_ASK_SIZE));
  g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_NOT_CHECKED);
}

/* An up-cut is drawn out of its collet on every machine, a down-cut isn't; by hand a down-cut lifts the
 * router, which is said of a light one. Common practice, no source. */
static void
test_cautions (Demo *demo, gconstpointer unused)
{
  const char *const machines[] = { "medium-gantry", "router-table", "plunge-router" };
  demo_take_cut (demo, "shelf-dado");
  for (guint i = 0; i < 2 * G_N_ELEMENTS (machines); i++)
    {
      bool up = i % 2 == 0;
      demo_take_machine (demo, machines[i / 2]);
      demo->part->machine.mass_kg = 0.5;
      demo_plan_with (demo, up ? "up-cut-6.35x25" : "down-cut-6.35x25");
      g_auto (GStrv) beware = spelch_caution_plan (spelch_shop_constants (), demo->part, &demo->plan);
      g_autofree char *all = g_strjoinv (" ", beware);
      g_assert_true ((strstr (all, "out of the collet") != NULL) == up);
      g_assert_true ((strstr (all, "lift the router") != NULL) == (!up && i / 2 == 2));
      g_auto (GStrv) general = spelch_caution_all (demo->part);
      g_autofree char *said = g_strjoinv (" ", general);
      g_assert_true ((strstr (said, "between fence and bit") != NULL) == (i / 2 == 1));
      g_assert_nonnull (strstr (said, "carcinogen"));
    }
  demo->part->machine.mass_kg = 100;
  g_auto (GStrv) heavy = spelch_caution_plan (spelch_shop_constants (), demo->part, &demo->plan);
  for (guint i = 0; heavy[i] != NULL; i++)
    g_assert_null (strstr (heavy[i], "lift the router"));
}

/* ---- Tabs ---- */

static void
give_tabs (Demo *demo, guint count, double width, double thickness)
{
  demo->cut->tabs.count = count;
  demo->cut->tabs.width = spelch_length_mm (width);
  demo->cut->tabs.thickness = spelch_length_mm (thickness);
}

/* Four tabs of 8 x 3 mm of birch plywood: 96 mm2 at 3.8 MPa x (1 - 1.645 x 0.2) = 2.5498 MPa, 244.78 N. */
static void
test_tabs_hold (Demo *demo, gconstpointer unused)
{
  give_tabs (demo, 4, 8, 3);
  demo_plan_with (demo, "compression-6.35x22");
  const SpelchTabHold *tabs = &demo->plan.tabs;
  g_assert_cmpuint (tabs->count, ==, 4);
  g_assert_cmpfloat_with_epsilon (tabs->holds_n, 244.78, 0.01);
  g_assert_cmpfloat_with_epsilon (tabs->factor, 2 * tabs->holds_n / tabs->needed_n, 1e-9);
  g_assert_cmpfloat (tabs->factor_worst, <, tabs->factor);
  demo_take_cut (demo, "shelf-dado");
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpuint (demo->plan.tabs.count, ==, 0);
}

/* As many as are asked for hold, one fewer doesn't; as wide as is asked for holds, a little less doesn't.
 * Held by clamps, the piece hangs on its tabs; a vacuum that keeps it, or screws, spare it. */
static void
test_tabs_needed (Demo *demo, gconstpointer unused)
{
  demo->part->holding.method = SPELCH_HOLD_CLAMPS;
  demo->part->holding.clamp_force_n = 5000;
  hold_speed_and_feed (demo);
  give_tabs (demo, 2, 4, 1);
  demo_plan_with (demo, "compression-6.35x22");
  SpelchTabHold weak = demo->plan.tabs;
  g_assert_true (weak.alone);
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_TABS));
  g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_DO_NOT_CUT);
  const struct
  {
    guint count;
    double width;
    bool stops;
  } rows[] = { { weak.needs_count, 4, false },
               { weak.needs_count - 1, 4, true },
               { 2, weak.needs_width_mm * 1.001, false },
               { 2, weak.needs_width_mm * 0.99, true } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      give_tabs (demo, rows[i].count, rows[i].width, 1);
      demo_plan_with (demo, "compression-6.35x22");
      g_assert_true (demo_has_stop (demo, SPELCH_STOP_TABS) == rows[i].stops);
      g_assert_true ((demo->plan.tabs.needs_count > rows[i].count) == rows[i].stops);
    }
  demo->part->holding.method = SPELCH_HOLD_SCREWS;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_TABS));
  g_assert_true (demo_has_stop (demo, SPELCH_ASK_HOLD_FORCE));
  demo->part->holding.method = SPELCH_HOLD_VACUUM;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_TABS));
}

/* Tabs never make worse what would do without them: where it isn't known how the work is held that is asked,
 * with weak tabs as with none. */
static void
test_tabs_beside_unknown (Demo *demo, gconstpointer unused)
{
  const SpelchHolding unknown[] = { { .method = SPELCH_HOLD_UNTOLD }, { .method = SPELCH_HOLD_VACUUM } };
  for (guint i = 0; i < G_N_ELEMENTS (unknown); i++)
    for (guint tabs = 0; tabs < 2; tabs++)
      {
        demo->part->holding = unknown[i];
        give_tabs (demo, tabs, 4, 1);
        demo_plan_with (demo, "compression-6.35x22");
        g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_NOT_CHECKED);
        g_assert_false (demo->plan.tabs.alone);
      }
  demo->part->holding.area_mm2 = 100; /* told, and far too little */
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_true (demo->plan.tabs.alone);
}

/* Common practice, no source: clamps hold the sheet, and what is cut out of it needs tabs or screws. A cut
 * that parts nothing, and a piece that a vacuum holds, need none. */
static void
test_comes_free (Demo *demo, gconstpointer unused)
{
  give_tabs (demo, 0, 8, 3);
  demo->part->holding = (SpelchHolding){ .method = SPELCH_HOLD_CLAMPS, .clamp_force_n = 5000 };
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_true (demo_has_stop (demo, SPELCH_ASK_TABS));
  give_tabs (demo, 8, 8, 3);
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_false (demo_has_stop (demo, SPELCH_ASK_TABS));
  give_tabs (demo, 0, 8, 3);
  demo->part->holding.method = SPELCH_HOLD_SCREWS;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_false (demo_has_stop (demo, SPELCH_ASK_TABS));
  demo_take_cut (demo, "shelf-dado");
  demo->part->holding.method = SPELCH_HOLD_CLAMPS;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_false (demo_has_stop (demo, SPELCH_ASK_TABS));
}

/* Nor do clamps hold the middle of an opening. */
static void
test_middle_comes_free (Demo *demo, gconstpointer unused)
{
  take_opening (demo, SPELCH_CUT_POCKET);
  demo->part->holding = (SpelchHolding){ .method = SPELCH_HOLD_CLAMPS, .clamp_force_n = 5000 };
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_true (demo_has_stop (demo, SPELCH_ASK_TABS));
  give_tabs (demo, 8, 8, 3);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_false (demo_has_stop (demo, SPELCH_ASK_TABS));
  take_opening (demo, SPELCH_CUT_POCKET);
  demo->cut->through = false;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_false (demo_has_stop (demo, SPELCH_ASK_TABS));
}

/* Common practice, no source: small pieces on tabs under a gantry take a down-cut rather than a bit that
 * lifts.
 */
static void
test_tabs_lifted (Demo *demo, gconstpointer unused)
{
  hold_speed_and_feed (demo);
  give_tabs (demo, 4, 8, 3);
  demo_plan_with (demo, "up-cut-6.35x25");
  double up = demo->plan.tabs.factor;
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpfloat (demo->plan.tabs.factor, >, 1.3 * up);
}

/* Shear along the grain, Wood Handbook Table 5-3a: sugar maple 16.1 MPa, so 16.1 x (1 - 1.645 x 0.14) x 96
 * mm2 = 1189.6 N. Without a species hardwood of 700 kg/m3 counts, 21.9 x 0.625^1.13 = 12.876 MPa. */
static void
test_tabs_solid (Demo *demo, gconstpointer unused)
{
  demo_take_board (demo, "oak-20");
  give_tabs (demo, 4, 8, 3);
  g_strlcpy (demo->part->board.species, "sugar-maple", sizeof demo->part->board.species);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpfloat_with_epsilon (demo->plan.tabs.holds_n, 1189.6, 0.1);
  demo->part->board.species[0] = '\0';
  demo->part->board.density_kg_m3 = 0;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpfloat_with_epsilon (demo->plan.tabs.holds_n, 96 * 12.876 * (1 - 1.645 * 0.14), 0.1);
}

static void
test_tabs_words (Demo *demo, gconstpointer unused)
{
  SpelchPlan *plan = &demo->plan;
  demo_plan_with (demo, "compression-6.35x22");
  plan->tabs = (SpelchTabHold){ .count = 4, .factor = 2.69, .factor_worst = 1.5, .needs_count = 4 };
  g_autofree char *enough = spelch_words_tabs (plan, &MM);
  g_assert_cmpstr (enough, ==, "Four tabs hold 2.6 times the force against them at the least.");
  plan->tabs
      = (SpelchTabHold){ .count = 1, .alone = true, .factor = 0.5, .needs_count = 4, .needs_width_mm = 32 };
  g_autofree char *weak = spelch_words_tabs (plan, &MM);
  g_assert_cmpstr (
      weak, ==,
      "One tab holds only 0.5 times the force against it: 4 such tabs would do, or one 32.0 mm wide.");
  plan->tabs = (SpelchTabHold){ .count = 13, .factor = 1.96, .needs_count = 14, .needs_width_mm = 8.2 };
  g_autofree char *spared = spelch_words_tabs (plan, &MM);
  g_assert_cmpstr (spared, ==, "13 tabs by themselves would hold 1.9 times the force against them.");
  plan->tabs.count = 0;
  g_autofree char *none = spelch_words_tabs (plan, &MM);
  g_assert_cmpstr (none, ==, "");
}

/* Twice and once are asked, so words beside an objection must not seem to reach them. */
static void
test_never_rounded_up (Demo *demo, gconstpointer unused)
{
  demo_plan_with (demo, "compression-6.35x22");
  demo->plan.hold_factor = 1.97;
  demo->plan.hold_factor_worst = 0.98;
  g_autofree char *shortly = spelch_words_hold (&demo->plan, &MM);
  g_autofree char *advice = spelch_words_seat_advice (&demo->plan, demo->part, &MM);
  g_assert_cmpstr (shortly, ==, "1.9 times the bit's force, 0.9 at worst");
  g_assert_nonnull (
      strstr (advice, "bears 1.9 times the bit's force, 0.9 times with everything at its worst;"));
}

/* Forces are known to a factor of two: from ten times on no tenths are told, and watts not singly. */
static void
test_as_exact_as_known (void)
{
  const struct
  {
    double factor;
    const char *words;
  } times[] = { { 2.68, "2.6" }, { 9.99, "9.9" }, { 10, "10" }, { 23.99, "23" } };
  for (guint i = 0; i < G_N_ELEMENTS (times); i++)
    {
      g_autofree char *words = spelch_words_times (&MM, times[i].factor);
      g_assert_cmpstr (words, ==, times[i].words);
    }
  g_autofree char *few = spelch_words_rough (47.4), *many = spelch_words_rough (427.3);
  g_assert_cmpstr (few, ==, "47");
  g_assert_cmpstr (many, ==, "430");
}

#define ADD(name, function) g_test_add ("/holding/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/holding/as-exact-as-known", test_as_exact_as_known);
  ADD ("every-pass", test_every_pass);
  ADD ("slow", test_slow);
  ADD ("freehand-opening", test_freehand_opening);
  ADD ("asked", test_asked);
  ADD ("vacuum", test_vacuum);
  ADD ("hands", test_hands);
  ADD ("weight", test_weight);
  ADD ("friction", test_friction);
  ADD ("tilt", test_tilt);
  ADD ("cautions", test_cautions);
  ADD ("never-rounded-up", test_never_rounded_up);
  ADD ("tabs-hold", test_tabs_hold);
  ADD ("tabs-needed", test_tabs_needed);
  ADD ("tabs-beside-unknown", test_tabs_beside_unknown);
  ADD ("comes-free", test_comes_free);
  ADD ("middle-comes-free", test_middle_comes_free);
  ADD ("tabs-lifted", test_tabs_lifted);
  ADD ("tabs-solid", test_tabs_solid);
  ADD ("tabs-words", test_tabs_words);
  return g_test_run ();
}

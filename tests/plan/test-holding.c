/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the forces do to the work and to the hands: every pass counts, and what nobody told is asked.
 */
#include "on-demo.h"

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

/* Common practice, no source: a down-cut on a router table lifts the work off it, and hands don't hold it. */
static void
test_pushed_off (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "router-table");
  demo_take_cut (demo, "shelf-dado");
  demo->part->holding.method = SPELCH_HOLD_HANDS;
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_PUSHED_OFF));
  g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_DO_NOT_CUT);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_PUSHED_OFF));
  demo->part->holding.method = SPELCH_HOLD_CLAMPS;
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_PUSHED_OFF));
}

/* Common practice, no source: by hand the bit is fed against its rotation; a full slot has a wall of each. */
static void
test_climb (Demo *demo, gconstpointer unused)
{
  const struct
  {
    const char *machine, *cut;
    SpelchWall kept;
    bool stops;
  } rows[] = { { "plunge-router", "back-rabbet", SPELCH_WALL_RIGHT, true },
               { "router-table", "back-rabbet", SPELCH_WALL_RIGHT, true },
               { "medium-gantry", "back-rabbet", SPELCH_WALL_RIGHT, false },
               { "plunge-router", "back-rabbet", SPELCH_WALL_LEFT, false },
               { "plunge-router", "outline", SPELCH_WALL_RIGHT, false } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo_take_machine (demo, rows[i].machine);
      demo_take_cut (demo, rows[i].cut);
      demo->cut->kept = rows[i].kept;
      demo_plan_with (demo, "up-cut-6.35x25");
      g_assert_true (demo_has_stop (demo, SPELCH_STOP_CLIMB) == rows[i].stops);
    }
  /* taking the allowance off the right wall of the slot is a climb cut again */
  demo->cut->held.allowance_held = true;
  demo->cut->held.allowance = spelch_length_mm (0.5);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_CLIMB));
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
  g_assert_cmpfloat_with_epsilon (demo->plan.hold_available_n, 6000, 1e-6);
  g_assert_cmpint (demo->plan.verdict, ==, SPELCH_VERDICT_NO_OBJECTION);
  demo->part->holding.area_mm2 = 2000;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_HOLDING));
}

#define ADD(name, function) g_test_add ("/holding/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("every-pass", test_every_pass);
  ADD ("slow", test_slow);
  ADD ("pushed-off", test_pushed_off);
  ADD ("climb", test_climb);
  ADD ("asked", test_asked);
  ADD ("vacuum", test_vacuum);
  ADD ("hands", test_hands);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Properties that every plan has, over seeded random parts.
 */
#include "chance.h"

#include "files/shop-data.h"
#include "plan/plan.h"

#include <math.h>
#include <string.h>

#define CASES 4000

static void
assert_finite (const double *values, guint n)
{
  for (guint i = 0; i < n; i++)
    g_assert_true (isfinite (values[i]));
}

static void
assert_plan_is_finite (const SpelchPlan *plan)
{
  const double values[] = { plan->overcut,
                            plan->overcut_most,
                            plan->speed_rpm,
                            plan->feed_mm_min,
                            plan->chip_max,
                            plan->chip_mean,
                            plan->cutting_speed,
                            plan->power_w.high,
                            plan->tangential_mean_n,
                            plan->sideways_peak_n,
                            plan->ripple,
                            plan->axial_mean_n,
                            plan->lift_bound_n,
                            plan->deflection_mm,
                            plan->stress_mpa,
                            plan->wall_heat,
                            plan->chip_room,
                            plan->time_s,
                            plan->edge_path_m,
                            plan->stick_out_mm,
                            plan->entry.length_mm,
                            plan->hold_factor,
                            plan->weight_n,
                            plan->tabs.holds_n,
                            plan->tabs.needed_n,
                            plan->tabs.factor,
                            plan->tabs.factor_worst,
                            plan->tabs.needs_width_mm,
                            plan->life_m_left,
                            plan->wear_share,
                            plan->cost,
                            plan->hold_needed_n,
                            plan->depth_most,
                            plan->windows.needs_up_shear_to,
                            plan->windows.opened_mm,
                            plan->windows.needs_overcut_mm };
  assert_finite (values, G_N_ELEMENTS (values));
  for (guint i = 0; i < plan->n_limits; i++)
    g_assert_true (isfinite (plan->limits[i].share));
}

/* Passes go down to the floor, in steps the bit takes, and inside the clean window whenever there is one. */
static void
test_recommended (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20260501);
  for (int i = 0; i < CASES; i++)
    {
      g_autoptr (SpelchPart) part = chance_part (random);
      SpelchCut cut = chance_cut (random, part);
      SpelchBit bit = chance_bit (random);
      SpelchPlan plan;
      spelch_plan_make (spelch_shop_constants (), part, &cut, &bit, &plan);
      assert_plan_is_finite (&plan);
      for (guint p = 0; p < plan.n_passes; p++)
        {
          double above = p == 0 ? 0 : plan.passes[p - 1].tip_mm;
          g_assert_cmpfloat (plan.passes[p].tip_mm, >, above);
          g_assert_cmpfloat (plan.passes[p].tip_mm - above, <=, plan.step_most + 0.051);
        }
      if (plan.n_passes > 0)
        g_assert_cmpfloat_with_epsilon (plan.passes[plan.n_passes - 1].tip_mm,
                                        plan.through_depth + plan.overcut, 1e-6);
      const SpelchRange *sure = &plan.windows.robust.first_pass;
      if (plan.n_passes > 0 && !sure->empty && sure->from <= plan.step_most)
        g_assert_cmpfloat (plan.passes[0].tip_mm, >=,
                           fmin (sure->from, plan.passes[plan.n_passes - 1].tip_mm) - 1e-6);
      for (guint e = 0; e < plan.n_edges; e++)
        g_assert_cmpint (plan.edges[e].grade, <=, 5);
    }
}

/* A deeper first pass never makes the motor-side face of a compression bit worse, at the same speed and feed.
 */
static void
test_deeper_first_pass (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20260502);
  for (int i = 0; i < CASES / 10; i++)
    {
      g_autoptr (SpelchPart) part = chance_part (random);
      SpelchCut cut = chance_cut (random, part);
      SpelchBit bit = chance_bit (random);
      int before = 6;
      if (bit.kind != SPELCH_BIT_COMPRESSION)
        continue;
      cut.held.speed_rpm = 18000;
      cut.held.feed_mm_min = 3000;
      cut.held.n_passes = 1;
      for (double depth = 0.5; depth < fmin (bit.cutting_length.mm, part->board.nominal.mm); depth += 0.5)
        {
          SpelchPlan plan;
          cut.held.passes[0] = spelch_length_mm (depth);
          spelch_plan_make (spelch_shop_constants (), part, &cut, &bit, &plan);
          const SpelchEdge *edge = spelch_plan_worst (&plan, SPELCH_SIDE_MOTOR);
          if (edge == NULL)
            continue;
          g_assert_cmpint (edge->grade, <=, before);
          before = edge->grade;
        }
    }
}

/* Swapping up and down all along turns the mean axial force about. */
static void
test_axial_sign (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20260503);
  for (int i = 0; i < CASES / 4; i++)
    {
      g_autoptr (SpelchPart) part = chance_part (random);
      SpelchCut cut = chance_cut (random, part);
      SpelchBit bit = chance_bit (random);
      SpelchPlan up, down;
      cut.held.speed_rpm = 18000;
      cut.held.feed_mm_min = 3000;
      cut.held.n_passes = 1;
      cut.held.passes[0] = spelch_length_mm (part->board.nominal.mm / 3);
      cut.held.overcut_held = true;
      cut.held.overcut = spelch_length_mm (0.3);
      bit.kind = SPELCH_BIT_UP_CUT;
      bit.helix_deg = chance_between (random, 10, 45);
      spelch_plan_make (spelch_shop_constants (), part, &cut, &bit, &up);
      bit.kind = SPELCH_BIT_DOWN_CUT;
      spelch_plan_make (spelch_shop_constants (), part, &cut, &bit, &down);
      if (up.n_passes > 0 && up.n_passes == down.n_passes)
        g_assert_cmpfloat_with_epsilon (up.axial_mean_n, -down.axial_mean_n,
                                        1e-6 * (1 + fabs (up.axial_mean_n)));
    }
}

/* At the same speed, feed and passes a duller edge never improves a grade, nor lowers power. */
static void
test_wear (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20260504);
  for (int i = 0; i < CASES / 4; i++)
    {
      g_autoptr (SpelchPart) part = chance_part (random);
      SpelchCut cut = chance_cut (random, part);
      SpelchBit bit = chance_bit (random);
      SpelchPlan before = { 0 };
      cut.held.speed_rpm = 18000;
      cut.held.feed_mm_min = 3000;
      cut.held.n_passes = 1;
      cut.held.passes[0] = spelch_length_mm (part->board.nominal.mm / 3);
      for (int wear = SPELCH_WEAR_NEW; wear <= SPELCH_WEAR_DULL; wear++)
        {
          SpelchPlan plan;
          bit.wear = (SpelchWear)wear;
          spelch_plan_make (spelch_shop_constants (), part, &cut, &bit, &plan);
          if (plan.n_passes == 0 || (wear > SPELCH_WEAR_NEW && plan.n_passes != before.n_passes))
            break;
          for (guint e = 0; wear > SPELCH_WEAR_NEW && e < plan.n_edges; e++)
            g_assert_cmpint (plan.edges[e].grade, >=, before.edges[e].grade);
          g_assert_cmpfloat (plan.power_w.mid, >=, before.power_w.mid);
          before = plan;
        }
    }
}

/* The same depth typed in inches and in millimetres gives the same plan. */
static void
test_units_agree (void)
{
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  for (int sixtyfourth = 8; sixtyfourth < 44; sixtyfourth++)
    {
      g_autofree char *inch = g_strdup_printf ("%d/64 in", sixtyfourth);
      g_autofree char *mm = g_strdup_printf ("%.10f mm", sixtyfourth * 25.4 / 64);
      SpelchCut one = part->cuts[0], other = part->cuts[0];
      SpelchPlan a, b;
      one.held.n_passes = other.held.n_passes = 1;
      g_assert_true (spelch_length_parse (inch, SPELCH_UNIT_MM, &one.held.passes[0], NULL));
      g_assert_true (spelch_length_parse (mm, SPELCH_UNIT_INCH, &other.held.passes[0], NULL));
      spelch_plan_make (spelch_shop_constants (), part, &one, &part->bits[0], &a);
      spelch_plan_make (spelch_shop_constants (), part, &other, &part->bits[0], &b);
      g_assert_cmpfloat_with_epsilon (a.feed_mm_min, b.feed_mm_min, 1e-6);
      g_assert_cmpint (a.edges[0].grade, ==, b.edges[0].grade);
      g_assert_cmpfloat_with_epsilon (a.sideways_peak_n, b.sideways_peak_n, 1e-6);
    }
}

/* One recomputation must disappear inside a drawn frame: half a millisecond at most, on the slowest of
 * several runs of many. */
static void
test_is_quick (void)
{
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  double best = HUGE_VAL;
  for (int run = 0; run < 5; run++)
    {
      gint64 start = g_get_monotonic_time ();
      for (int i = 0; i < 200; i++)
        {
          SpelchCut cut = part->cuts[0];
          SpelchPlan plan;
          cut.held.n_passes = 1;
          cut.held.passes[0] = spelch_length_mm (4 + i * 0.05);
          spelch_plan_make (spelch_shop_constants (), part, &cut, &part->bits[0], &plan);
        }
      best = fmin (best, (double)(g_get_monotonic_time () - start) / 200);
    }
  g_test_message ("one plan: %.0f microseconds", best);
#ifndef __SANITIZE_ADDRESS__
  g_assert_cmpfloat (best, <, 500);
#endif
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plan/recommended", test_recommended);
  g_test_add_func ("/plan/deeper-first-pass", test_deeper_first_pass);
  g_test_add_func ("/plan/axial-sign", test_axial_sign);
  g_test_add_func ("/plan/wear", test_wear);
  g_test_add_func ("/plan/units-agree", test_units_agree);
  g_test_add_func ("/plan/is-quick", test_is_quick);
  return g_test_run ();
}

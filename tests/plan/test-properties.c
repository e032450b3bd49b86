/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Properties that every plan has, each over 100 000 seeded random cases.
 */
#include "trial.h"

#include "chance.h"

#include "files/shop-data.h"

#include <math.h>
#include <string.h>

/* Speed, feed and a first pass held, so that nothing is chosen anew. */
static void
hold (Trial *trial)
{
  trial->cut.held.speed_rpm = 1000 * g_rand_int_range (trial->random, 8, 25);
  trial->cut.held.feed_mm_min = round (chance_between (trial->random, 300, 9000));
  trial->cut.held.n_passes = 1;
  trial->cut.held.passes[0] = spelch_length_mm (spelch_board_thickness (&trial->part->board)
                                                * chance_between (trial->random, 0.05, 0.6));
  trial->cut.held.overcut_held = true;
  trial->cut.held.overcut = spelch_length_mm (chance_between (trial->random, 0.1, 0.5));
}

/* A deeper first pass never makes the motor-side face of a compression bit worse, at the same speed and feed.
 */
static void
check_deeper_first_pass (Trial *trial)
{
  int before = 6;
  hold (trial);
  double least = fmin (trial->bit.cutting_length.mm, spelch_board_thickness (&trial->part->board));
  trial->counts = trial->bit.kind == SPELCH_BIT_COMPRESSION;
  for (int step = 1; trial->counts && step <= 4; step++)
    {
      SpelchPlan plan;
      trial->cut.held.passes[0] = spelch_length_mm (least * step / 5);
      trial_plan (trial, &plan);
      const SpelchEdge *edge = spelch_plan_worst (&plan, SPELCH_SIDE_MOTOR);
      /* A step deeper than the bit takes is divided. */
      if (edge == NULL || fabs (plan.passes[0].tip_mm - least * step / 5) > 1e-6)
        continue;
      g_assert_cmpint (edge->grade, <=, before);
      before = edge->grade;
    }
}

/* Swapping up and down all along turns the mean axial force about. */
static void
check_axial_sign (Trial *trial)
{
  SpelchPlan up, down;
  hold (trial);
  trial->bit.helix_deg = chance_between (trial->random, 10, 45);
  trial->bit.up_shear = trial->bit.overlap = spelch_length_mm (0);
  trial->bit.kind = SPELCH_BIT_UP_CUT;
  trial_plan (trial, &up);
  trial->bit.kind = SPELCH_BIT_DOWN_CUT;
  trial_plan (trial, &down);
  trial->counts = up.n_passes > 0 && up.n_passes == down.n_passes;
  if (!trial->counts)
    return;
  g_assert_cmpfloat (up.axial_mean_n, >, 0);
  g_assert_cmpfloat_with_epsilon (up.axial_mean_n, -down.axial_mean_n, 1e-9 * up.axial_mean_n);
}

/* At the same speed, feed, passes and holding a duller edge never improves a grade, lowers power or lengthens
 * life. */
static void
check_wear (Trial *trial)
{
  SpelchPlan sharper, duller;
  hold (trial);
  int wear = g_rand_int_range (trial->random, SPELCH_WEAR_NEW, SPELCH_WEAR_DULL);
  trial->bit.wear = (SpelchWear)wear;
  trial_plan (trial, &sharper);
  trial->bit.wear = (SpelchWear)g_rand_int_range (trial->random, wear + 1, SPELCH_WEAR_DULL + 1);
  trial_plan (trial, &duller);
  trial->counts = sharper.n_passes > 0 && sharper.n_passes == duller.n_passes;
  for (guint e = 0; trial->counts && e < duller.n_edges; e++)
    g_assert_cmpint (duller.edges[e].grade, >=, sharper.edges[e].grade);
  if (!trial->counts)
    return;
  g_assert_cmpfloat (duller.power_w.mid, >=, sharper.power_w.mid);
  g_assert_cmpfloat (duller.power_w.low, >=, sharper.power_w.low);
  g_assert_cmpfloat (duller.power_w.high, >=, sharper.power_w.high);
  g_assert_cmpfloat (duller.life_m_left, <=, sharper.life_m_left);
  g_assert_cmpfloat (duller.wear_share, >=, sharper.wear_share);
}

/* The same feed shared by more edges: each takes less. */
static void
check_more_flutes (Trial *trial)
{
  SpelchPlan few, many;
  hold (trial);
  trial->bit.edges_up = 0;
  trial->bit.edges = g_rand_int_range (trial->random, 1, 6);
  trial_plan (trial, &few);
  trial->bit.edges = g_rand_int_range (trial->random, trial->bit.edges + 1, 7);
  trial_plan (trial, &many);
  trial->counts = few.n_passes > 0 && many.n_passes > 0;
  if (!trial->counts)
    return;
  g_assert_cmpfloat (many.chip_max, <, few.chip_max);
  g_assert_cmpfloat (many.chip_mean, <, few.chip_mean);
}

/* ---- Millimetres and inches ---- */

/* The nearest 64th of an inch to @length, as typed in one or the other. */
static SpelchLength
typed (const SpelchLength *length, bool inches)
{
  int sixty_fourths = MAX (1, (int)lround (length->mm / 25.4 * 64));
  g_autofree char *text = inches ? g_strdup_printf ("%d/64 in", sixty_fourths)
                                 : g_strdup_printf ("%d,%06d mm", (int)(sixty_fourths * 396875LL / 1000000),
                                                    (int)(sixty_fourths * 396875LL % 1000000));
  SpelchLength read = *length;
  if (length->mm > 0)
    g_assert_true (spelch_length_parse (text, inches ? SPELCH_UNIT_MM : SPELCH_UNIT_INCH, &read, NULL));
  return read;
}

static void
type_all (Trial *trial, bool inches)
{
  SpelchBit *bit = &trial->bit;
  SpelchCut *cut = &trial->cut;
  SpelchBoard *board = &trial->part->board;
  SpelchLength *all[]
      = { &bit->diameter, &bit->shank,          &bit->cutting_length, &bit->overall_length, &bit->up_shear,
          &bit->overlap,  &bit->uncut_centre,   &cut->depth,          &cut->width,          &cut->length,
          &cut->backer,   &cut->held.passes[0], &cut->corner_radius,  &board->measured };
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    *all[i] = typed (all[i], inches);
}

static void
assert_near (double a, double b)
{
  g_assert_cmpfloat_with_epsilon (a, b, 1e-6 * (1 + fabs (a)));
}

/* The same lengths typed in inches and in millimetres give the same plan. */
static void
check_units_agree (Trial *trial)
{
  Trial other = *trial;
  SpelchPlan a, b;
  hold (trial);
  other.cut = trial->cut;
  other.part = spelch_part_copy (trial->part);
  type_all (trial, false);
  type_all (&other, true);
  trial_plan (trial, &a);
  trial_plan (&other, &b);
  spelch_part_unref (other.part);
  trial->counts = a.n_passes > 0;
  g_assert_cmpuint (a.n_passes, ==, b.n_passes);
  g_assert_cmpint (a.verdict, ==, b.verdict);
  g_assert_cmpuint (a.n_stops, ==, b.n_stops);
  for (guint e = 0; e < a.n_edges; e++)
    g_assert_cmpint (a.edges[e].grade, ==, b.edges[e].grade);
  const double ours[] = { a.chip_max,  a.power_w.mid, a.sideways_peak_n, a.lift_bound_n, a.deflection_mm,
                          a.wall_heat, a.chip_room,   a.time_s,          a.life_m_left,  a.hold_needed_n };
  const double theirs[] = { b.chip_max,  b.power_w.mid, b.sideways_peak_n, b.lift_bound_n, b.deflection_mm,
                            b.wall_heat, b.chip_room,   b.time_s,          b.life_m_left,  b.hold_needed_n };
  for (gsize i = 0; i < G_N_ELEMENTS (ours); i++)
    assert_near (ours[i], theirs[i]);
}

/* ---- How quick it is ---- */

/* One recomputation must disappear inside a drawn frame: half a millisecond at most, on the quickest of
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

#define PROPERTY(name, seed, rare)                                                                           \
  static void test_##name (void)                                                                             \
  {                                                                                                          \
    trial_run (seed, 1, rare, check_##name);                                                                 \
  }

PROPERTY (deeper_first_pass, 20260502, 8)
PROPERTY (axial_sign, 20260503, 2)
PROPERTY (wear, 20260504, 2)
PROPERTY (more_flutes, 20260505, 2)
PROPERTY (units_agree, 20260506, 2)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_set_nonfatal_assertions ();
  g_test_add_func ("/plan/deeper-first-pass", test_deeper_first_pass);
  g_test_add_func ("/plan/axial-sign", test_axial_sign);
  g_test_add_func ("/plan/wear", test_wear);
  g_test_add_func ("/plan/more-flutes", test_more_flutes);
  g_test_add_func ("/plan/units-agree", test_units_agree);
  g_test_add_func ("/plan/is-quick", test_is_quick);
  return g_test_run ();
}

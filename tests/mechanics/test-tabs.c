/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tests of the strength of tabs. Expected values are worked by hand from force = stress times section.
 */
#include "mechanics/holding.h"

#include <glib.h>
#include <math.h>

#define QUANTILE 1.645

/* Four tabs of 6 mm by 2 mm: 48 mm2. At 5 MPa with a scatter of 0.2, 3.355 MPa is counted: 161.04 N. */
static const SpelchTabStrength FOUR = { 48, 5, 1.5, 0.2 };

static void
test_strength (void)
{
  g_assert_cmpfloat_with_epsilon (spelch_holding_low (5, 0.2, QUANTILE), 3.355, 1e-12);
  g_assert_cmpfloat_with_epsilon (spelch_holding_tabs (&FOUR, QUANTILE), 161.04, 1e-9);
  g_assert_cmpfloat (spelch_holding_low (5, 0.7, QUANTILE), ==, 0);
}

/* 30 N of lift on a strength of 1.5 MPa asks for what 100 N do on 5 MPa. Pressing down asks for nothing. */
static void
test_lift (void)
{
  g_assert_cmpfloat_with_epsilon (spelch_holding_tabs_load (&FOUR, 40, 30), 140, 1e-12);
  g_assert_cmpfloat_with_epsilon (spelch_holding_tabs_load (&FOUR, 40, -30), 40, 1e-12);
}

/* The shares of strength used sideways and upward add up to the one of the load they are reckoned as. */
static void
test_shares (void)
{
  for (int i = 0; i < 2000; i++)
    {
      SpelchTabStrength tabs = { g_test_rand_double_range (1, 500), g_test_rand_double_range (3, 16),
                                 g_test_rand_double_range (1, 3), g_test_rand_double_range (0, 0.3) };
      double side = g_test_rand_double_range (0, 300), lift = g_test_rand_double_range (0, 100);
      double low = 1 - QUANTILE * tabs.scatter;
      double used = side / (tabs.section * tabs.side * low) + lift / (tabs.section * tabs.lift * low);
      double ours = spelch_holding_tabs_load (&tabs, side, lift) / spelch_holding_tabs (&tabs, QUANTILE);
      g_assert_cmpfloat (fabs (ours - used), <=, 1e-9 * (1 + used));
    }
}

/* So many times the section holds just as often as wanted. */
static void
test_growth (void)
{
  for (int i = 0; i < 2000; i++)
    {
      SpelchTabStrength tabs = FOUR;
      double load = g_test_rand_double_range (10, 900);
      double factor = spelch_holding_tabs (&tabs, QUANTILE) / load;
      double growth = spelch_holding_tabs_growth (factor, 2);
      tabs.section *= growth;
      double grown = spelch_holding_tabs (&tabs, QUANTILE) / load;
      g_assert_cmpfloat (growth, >=, 1);
      g_assert_cmpfloat_with_epsilon (grown, fmax (factor, 2), 1e-9);
    }
  g_assert_cmpfloat (spelch_holding_tabs_growth (0, 2), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tabs/strength", test_strength);
  g_test_add_func ("/tabs/lift", test_lift);
  g_test_add_func ("/tabs/shares", test_shares);
  g_test_add_func ("/tabs/growth", test_growth);
  return g_test_run ();
}

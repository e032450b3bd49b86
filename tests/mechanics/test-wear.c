/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tests of edge path and life, against counting turns: the reference walks a metre tooth by tooth.
 */
#include "mechanics/wear.h"

#include <glib.h>
#include <math.h>

/* Each edge cuts one arc a turn, and a turn feeds so many teeth: 1000 mm take 1000 / (edges f) turns. */
static double
walked (double arc, int edges, double feed_per_tooth)
{
  double way = 0, fed = 0;
  for (; fed < 1000 - 1e-9; fed += edges * feed_per_tooth)
    way += arc;
  return way / 1000;
}

static void
test_path (void)
{
  /* By hand: a slot of 10 mm, 5 pi of arc, two edges at 0.25 mm: 2000 turns a metre, 31.416 m. */
  g_assert_cmpfloat_with_epsilon (spelch_wear_path (5 * G_PI, 2, 0.25), 31.4159265, 1e-6);
  g_assert_cmpfloat (spelch_wear_path (5, 2, 0), ==, 0);
  g_assert_cmpfloat (spelch_wear_path (5, 0, 0.2), ==, 0);
  for (int i = 0; i < 300; i++)
    {
      double arc = g_test_rand_double_range (1, 40), f = g_test_rand_double_range (0.03, 0.5);
      int edges = g_test_rand_int_range (1, 5);
      double path = spelch_wear_path (arc, edges, f);
      g_assert_cmpfloat (fabs (path - walked (arc, edges, f)), <=, arc / 1000 + 1e-9);
      g_assert_cmpfloat_with_epsilon (spelch_wear_path (arc, edges, 2 * f), path / 2, 1e-9);
    }
}

static void
test_blunting (void)
{
  g_assert_cmpfloat (spelch_wear_by_blunting (1, 1, 1.2, 1.6, 0.2), ==, 0);
  g_assert_cmpfloat_with_epsilon (spelch_wear_by_blunting (1.2, 1, 1.2, 1.6, 0.2), 0.2, 1e-12);
  g_assert_cmpfloat_with_epsilon (spelch_wear_by_blunting (1.4, 1, 1.2, 1.6, 0.2), 0.6, 1e-12);
  g_assert_cmpfloat_with_epsilon (spelch_wear_by_blunting (1.6, 1, 1.2, 1.6, 0.2), 1, 1e-12);
  g_assert_cmpfloat (spelch_wear_by_blunting (3, 1, 1.2, 1.6, 0.2), ==, 1);
  for (double u = 1, before = 0; u < 1.7; u += 0.01)
    {
      double gone = spelch_wear_by_blunting (u, 1, 1.2, 1.6, 0.2);
      g_assert_cmpfloat (gone, >=, before);
      before = gone;
    }
}

/* Cutting what is left uses up the life. */
static void
test_left (void)
{
  for (int i = 0; i < 300; i++)
    {
      double life = g_test_rand_double_range (100, 40000), used = g_test_rand_double_range (0, 1);
      double path = g_test_rand_double_range (1, 200);
      double left = spelch_wear_left (life, used, path);
      g_assert_cmpfloat_with_epsilon (used + spelch_wear_share (left * path, life), 1, 1e-9);
    }
  g_assert_cmpfloat (spelch_wear_left (1000, 1.5, 10), ==, 0);
  g_assert_cmpfloat (spelch_wear_left (1000, 0.5, 0), ==, 0);
  g_assert_cmpfloat (spelch_wear_share (10, 0), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wear/path", test_path);
  g_test_add_func ("/wear/blunting", test_blunting);
  g_test_add_func ("/wear/left", test_left);
  return g_test_run ();
}

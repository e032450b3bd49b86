/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Names of the ticks on the limit line: never one over another, never past the line's ends, whatever the
 * shares.
 */
#include "bench/limit-places.h"

#include <math.h>

#define LENGTH 322.0
#define GAP    8.0

static void
assert_apart (const SpelchLimitPlace *places, guint n)
{
  for (guint i = 0; i < n; i++)
    for (guint k = 0; k < i; k++)
      if (places[i].row >= 0 && places[i].row == places[k].row)
        g_assert_true (places[i].left >= places[k].left + places[k].width + GAP
                       || places[k].left >= places[i].left + places[i].width + GAP);
}

static void
test_random (void)
{
  for (guint round = 0; round < 2000; round++)
    {
      SpelchLimitPlace places[9];
      for (guint i = 0; i < 9; i++)
        places[i] = (SpelchLimitPlace){ .at = g_test_rand_double_range (0, LENGTH),
                                        .width = g_test_rand_double_range (20, 90) };
      spelch_limit_places (places, 9, LENGTH, GAP);
      assert_apart (places, 9);
      for (guint i = 0; i < 9; i++)
        {
          g_assert_cmpint (places[i].row, <, SPELCH_LIMIT_ROWS);
          g_assert_cmpfloat (places[i].left, >=, 0);
          g_assert_cmpfloat (places[i].left + places[i].width, <=, LENGTH + 1e-9);
        }
      g_assert_cmpint (places[0].row, ==, 0); /* the first, which sets the feed, always has its name */
    }
}

static void
test_near_their_ticks (void)
{
  SpelchLimitPlace places[]
      = { { .at = 160, .width = 40 }, { .at = 170, .width = 40 }, { .at = 2, .width = 40 } };
  spelch_limit_places (places, 3, LENGTH, GAP);
  g_assert_cmpfloat (places[0].left, ==, 140);
  g_assert_cmpint (places[0].row, ==, 0);
  g_assert_cmpfloat (places[1].left, ==, 150);
  g_assert_cmpint (places[1].row, ==, 1);    /* no room beside the first */
  g_assert_cmpfloat (places[2].left, ==, 0); /* kept on the line */
  g_assert_cmpint (places[2].row, ==, 0);
}

static void
test_too_many (void)
{
  SpelchLimitPlace places[5];
  for (guint i = 0; i < 5; i++)
    places[i] = (SpelchLimitPlace){ .at = 100, .width = 60 };
  spelch_limit_places (places, 5, LENGTH, GAP);
  for (int i = 0; i < 5; i++)
    g_assert_cmpint (places[i].row, ==, i < SPELCH_LIMIT_ROWS ? i : -1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/limit-places/random", test_random);
  g_test_add_func ("/limit-places/near-their-ticks", test_near_their_ticks);
  g_test_add_func ("/limit-places/too-many", test_too_many);
  return g_test_run ();
}

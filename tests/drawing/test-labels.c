/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The placer on its own, with labels of any size, as any language may have; and numbers that stay beside
 * their units.
 */
#include "drawing/labels.h"
#include "drawing/lettering.h"

#include <math.h>

static const SpelchRect AREA = { 0, 0, 700, 600 };

static SpelchRect
random_rect (void)
{
  double width = g_test_rand_double_range (4, 300), height = g_test_rand_double_range (8, 80);

  return (SpelchRect){ g_test_rand_double_range (-20, 700), g_test_rand_double_range (-20, 600), width,
                       height };
}

static void
test_slide_never_overlaps (void)
{
  for (int round = 0; round < 2000; round++)
    {
      SpelchPlacer placer;
      guint asked = (guint)g_test_rand_int_range (1, 40);

      spelch_placer_init (&placer, AREA);
      for (guint i = 0; i < asked; i++)
        {
          SpelchRect rect = random_rect (), before = rect;
          double highest = rect.y - g_test_rand_double_range (0, 300),
                 lowest = rect.y + g_test_rand_double_range (0, 300);
          guint n = placer.n;

          if (spelch_placer_slide (&placer, &rect, highest, lowest))
            {
              g_assert_cmpuint (placer.n, ==, n + 1);
              g_assert_cmpfloat (rect.x, ==, before.x);
              g_assert_cmpfloat (rect.y, >=, highest);
              g_assert_cmpfloat (rect.y, <=, lowest);
              g_assert_true (rect.x >= AREA.x && rect.x + rect.width <= AREA.x + AREA.width);
              g_assert_true (rect.y >= AREA.y && rect.y + rect.height <= AREA.y + AREA.height);
            }
          else
            {
              g_assert_cmpuint (placer.n, ==, n);
              g_assert_cmpfloat (rect.y, ==, before.y);
            }
        }
      for (guint i = 0; i < placer.n; i++)
        for (guint j = 0; j < i; j++)
          g_assert_false (spelch_rect_overlap (placer.taken[i], placer.taken[j]));
    }
}

/* Where there's room nothing moves, and a label that must move takes the nearer side. */
static void
test_slide_is_near (void)
{
  SpelchPlacer placer;
  SpelchRect first = { 10, 100, 50, 20 }, second = { 10, 105, 50, 20 }, third = { 10, 95, 50, 20 };

  spelch_placer_init (&placer, AREA);
  g_assert_true (spelch_placer_slide (&placer, &first, 0, 500));
  g_assert_cmpfloat (first.y, ==, 100);
  g_assert_true (spelch_placer_slide (&placer, &second, 0, 500));
  g_assert_cmpfloat (second.y, >=, 120);
  g_assert_cmpfloat (second.y, <, 124);
  g_assert_true (spelch_placer_slide (&placer, &third, 0, 500));
  g_assert_cmpfloat (third.y, <=, 80);
  g_assert_cmpfloat (third.y, >, 76);
}

static void
test_slide_gives_up (void)
{
  SpelchPlacer placer;
  SpelchRect wall = { 0, 100, 700, 100 }, label = { 10, 140, 50, 20 };

  spelch_placer_init (&placer, AREA);
  spelch_placer_take (&placer, wall);
  g_assert_false (spelch_placer_slide (&placer, &label, 110, 180));
  g_assert_cmpfloat (label.y, ==, 140);
  g_assert_true (spelch_placer_slide (&placer, &label, 50, 180));
}

/* @held: the one that the others give way to; @n: none. */
static void
assert_spread (const double *wished, guint n, guint held, double height, double gap, double highest,
               double lowest)
{
  double *tops = g_newa (double, n);
  guint *columns = g_newa (guint, n);

  if (held < n)
    spelch_placer_spread_around (wished, n, held, height, gap, highest, lowest, tops, columns);
  else
    spelch_placer_spread (wished, n, height, gap, highest, lowest, tops, columns);
  if (held < n)
    g_assert_cmpfloat_with_epsilon (tops[held], CLAMP (wished[held], highest, lowest - height), 1e-9);
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpfloat (tops[i], >=, highest - 1e-9);
      g_assert_cmpfloat (tops[i] + height, <=, lowest + 1e-9);
      for (guint j = 0; j < i; j++)
        if (columns[i] == columns[j])
          g_assert_cmpfloat (fabs (tops[i] - tops[j]), >=, height + gap - 1e-9);
    }
}

static void
test_spread_random (void)
{
  for (int round = 0; round < 2000; round++)
    {
      double wished[27], at = g_test_rand_double_range (-50, 300);
      guint n = (guint)g_test_rand_int_range (1, 28);

      for (guint i = 0; i < n; i++)
        wished[i] = at += g_test_rand_double_range (0, 40);
      double height = g_test_rand_double_range (10, 60), lowest = g_test_rand_double_range (200, 700);
      assert_spread (wished, n, n, height, 3, 4, lowest);
      assert_spread (wished, n, (guint)g_test_rand_int_range (0, (gint32)n), height, 3, 4, lowest);
    }
}

/* Two labels that want the same place part evenly; one alone stays where it wants to be. */
static void
test_spread_is_fair (void)
{
  const double same[] = { 100, 100 }, apart[] = { 50, 200 };
  double tops[2];
  guint columns[2];

  spelch_placer_spread (same, 2, 26, 4, 0, 600, tops, columns);
  g_assert_cmpfloat_with_epsilon (tops[0], 85, 1e-9);
  g_assert_cmpfloat_with_epsilon (tops[1], 115, 1e-9);
  spelch_placer_spread (apart, 2, 26, 4, 0, 600, tops, columns);
  g_assert_cmpfloat (tops[0], ==, 50);
  g_assert_cmpfloat (tops[1], ==, 200);
}

static void
test_units (void)
{
#define GAP "\u00a0"
  static const char *const texts[][2] = {
    { "9.2 mm, then 18.3 mm.", "9.2" GAP "mm, then 18.3" GAP "mm." },
    { "at 4 200 mm/min", "at 4 200" GAP "mm/\u2060min" },
    { "23 000 rpm, 60 kPa", "23 000" GAP "rpm, 60" GAP "kPa" },
    { "3 more", "3 more" }, /* no unit, though it begins as one */
    { "of 4 minutes", "of 4 minutes" },
    { "a mm", "a mm" },
    { "", "" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autofree char *kept = spelch_lettering_keep_units (texts[i][0], true);
      g_assert_cmpstr (kept, ==, texts[i][1]);
    }
  g_autofree char *text = spelch_lettering_keep_units ("4 200 mm/min", false);
  g_assert_cmpstr (text, ==, "4 200" GAP "mm/min");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/labels/slide/never-overlaps", test_slide_never_overlaps);
  g_test_add_func ("/labels/slide/near", test_slide_is_near);
  g_test_add_func ("/labels/slide/gives-up", test_slide_gives_up);
  g_test_add_func ("/labels/spread/random", test_spread_random);
  g_test_add_func ("/labels/spread/fair", test_spread_is_fair);
  g_test_add_func ("/labels/units", test_units);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The clock of slow motion: how fast it goes, what a step is, where passes follow one another, when the bit
 * is blurred (WCAG 2.2, 2.3.1: no more than three flashes a second), and what reduced motion leaves of it.
 */
#include "bench/motion-clock.h"
#include "files/shop-data.h"

#include <math.h>

typedef struct
{
  SpelchMotion *motion;
  SpelchMotionClock clock;
} Fixture;

/* The demo's outline: two passes of a bit with two edges. */
static void
set_up (Fixture *f, gconstpointer unused)
{
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  const SpelchCut *cut = &part->cuts[0];
  const SpelchBit *bit = &part->bits[spelch_part_find_bit (part, cut->bit)];
  SpelchPlan plan;
  spelch_plan_make (spelch_shop_constants (), part, cut, bit, &plan);
  f->motion = spelch_motion_new (spelch_shop_constants (), part, cut, bit, &plan);
  f->clock = (SpelchMotionClock){ 0 };
  spelch_motion_clock_take (&f->clock, f->motion);
  g_assert_cmpuint (f->motion->n_passes, ==, 2);
  g_assert_cmpint (f->motion->passes[0].teeth, ==, 2);
}

static void
tear_down (Fixture *f, gconstpointer unused)
{
  g_free (f->motion);
}

static double
tooth (const Fixture *f)
{
  return f->clock.turned / G_PI; /* two edges */
}

/* A tooth in a second unless told otherwise; the ratio is what that comes to at the plan's speed. */
static void
test_speed (Fixture *f, gconstpointer unused)
{
  g_assert_cmpfloat_with_epsilon (spelch_motion_clock_teeth (&f->clock), 1, 1e-9);
  g_assert_cmpfloat_with_epsilon (spelch_motion_clock_ratio (&f->clock), f->motion->passes[0].tooth_s, 1e-12);
  f->clock.playing = true;
  for (int i = 0; i < 150; i++)
    g_assert_true (spelch_motion_clock_advance (&f->clock, 1 / 60.0));
  g_assert_cmpfloat_with_epsilon (tooth (f), 2.5, 1e-6);
  f->clock.ratio = 2 * f->motion->passes[0].tooth_s;
  spelch_motion_clock_advance (&f->clock, 0.5);
  g_assert_cmpfloat_with_epsilon (tooth (f), 3.5, 1e-6);
  f->clock.playing = false;
  g_assert_false (spelch_motion_clock_advance (&f->clock, 1));
  g_assert_cmpfloat_with_epsilon (tooth (f), 3.5, 1e-6);
}

/* Four turns, eight teeth; then the next pass, and the first again. */
static void
test_passes (Fixture *f, gconstpointer unused)
{
  f->clock.playing = true;
  for (int i = 0; i < 85; i++)
    spelch_motion_clock_advance (&f->clock, 0.1);
  g_assert_cmpuint (f->clock.pass, ==, 1);
  g_assert_cmpfloat_with_epsilon (tooth (f), 0.5, 1e-6);
  for (int i = 0; i < 80; i++)
    spelch_motion_clock_advance (&f->clock, 0.1);
  g_assert_cmpuint (f->clock.pass, ==, 0);
  g_assert_cmpfloat_with_epsilon (tooth (f), 0.5, 1e-6);
}

static void
assert_at (const Fixture *f, guint pass, double teeth)
{
  g_assert_cmpuint (f->clock.pass, ==, pass);
  g_assert_cmpfloat_with_epsilon (tooth (f), teeth, 1e-9);
  g_assert_false (f->clock.playing);
}

/* To the beginning of a tooth either way, and over the ends of passes. */
static void
test_steps (Fixture *f, gconstpointer unused)
{
  f->clock.playing = true;
  spelch_motion_clock_step (&f->clock, 1);
  assert_at (f, 0, 1);
  spelch_motion_clock_set (&f->clock, 0, 1.4 * G_PI);
  spelch_motion_clock_step (&f->clock, 1);
  assert_at (f, 0, 2);
  spelch_motion_clock_set (&f->clock, 0, 1.4 * G_PI);
  spelch_motion_clock_step (&f->clock, -1);
  assert_at (f, 0, 1);
  spelch_motion_clock_step (&f->clock, -1);
  assert_at (f, 0, 0);
  spelch_motion_clock_step (&f->clock, -1);
  assert_at (f, 1, 7);
  spelch_motion_clock_step (&f->clock, 1);
  assert_at (f, 0, 0);
  for (int i = 0; i < 16; i++)
    spelch_motion_clock_step (&f->clock, 1);
  assert_at (f, 0, 0);
  spelch_motion_clock_set (&f->clock, 7, 1e9);
  assert_at (f, 1, 8);
}

/* Three teeth a second are the most that are shown one by one. Above, the bit is blurred and a pass stays for
 * three seconds, in which there is nothing else to show. */
static void
test_blurred (Fixture *f, gconstpointer unused)
{
  double tooth_s = f->motion->passes[0].tooth_s;
  f->clock.playing = true;
  f->clock.ratio = 3 * tooth_s;
  g_assert_false (spelch_motion_clock_is_blurred (&f->clock));
  f->clock.ratio = 3.01 * tooth_s;
  g_assert_true (spelch_motion_clock_is_blurred (&f->clock));
  f->clock.ratio = 1;
  f->clock.playing = false;
  g_assert_false (spelch_motion_clock_is_blurred (&f->clock));
  f->clock.playing = true;
  int shown = 0, passes = 0;
  for (int i = 0; i < 600; i++)
    {
      guint before = f->clock.pass;
      shown += spelch_motion_clock_advance (&f->clock, 1 / 60.0);
      passes += f->clock.pass != before;
    }
  g_assert_cmpint (passes, ==, 3);
  g_assert_cmpint (shown, ==, 4);
}

/* Where motion is reduced, nothing is shown between one tooth and the next, at any speed. */
static void
test_reduced (Fixture *f, gconstpointer unused)
{
  f->clock.playing = f->clock.reduced = true;
  for (int fast = 0; fast < 2; fast++)
    {
      f->clock.ratio = fast ? 1 : 0;
      g_assert_false (spelch_motion_clock_is_blurred (&f->clock));
      int shown = 0;
      for (int i = 0; i < 605; i++)
        {
          shown += spelch_motion_clock_advance (&f->clock, 1 / 60.0);
          g_assert_cmpfloat_with_epsilon (tooth (f), round (tooth (f)), 1e-9);
        }
      g_assert_cmpint (shown, ==, 10);
      g_assert_true (f->clock.playing);
    }
}

/* Another plan: the place stays where there is one. */
static void
test_take (Fixture *f, gconstpointer unused)
{
  spelch_motion_clock_set (&f->clock, 1, 2);
  spelch_motion_clock_take (&f->clock, f->motion);
  g_assert_cmpuint (f->clock.pass, ==, 1);
  g_assert_cmpfloat (f->clock.turned, ==, 2);
  f->motion->n_passes = 1;
  spelch_motion_clock_take (&f->clock, f->motion);
  g_assert_cmpuint (f->clock.pass, ==, 0);
  g_assert_cmpfloat (f->clock.turned, ==, 0);
  f->clock.playing = true;
  spelch_motion_clock_take (&f->clock, NULL);
  g_assert_false (f->clock.playing);
  spelch_motion_clock_step (&f->clock, 1);
  spelch_motion_clock_set (&f->clock, 0, 1);
  g_assert_cmpfloat (spelch_motion_clock_teeth (&f->clock), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, function) g_test_add ("/motion-clock/" name, Fixture, NULL, set_up, function, tear_down)
  ADD ("speed", test_speed);
  ADD ("passes", test_passes);
  ADD ("steps", test_steps);
  ADD ("blurred", test_blurred);
  ADD ("reduced", test_reduced);
  ADD ("take", test_take);
  return g_test_run ();
}

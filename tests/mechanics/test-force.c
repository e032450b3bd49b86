/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tests of the sampled turn against the forces looked at in many small steps, which know nothing of where the
 * samples stand. That the force at an instant is right is checked against integrals in tests/published/.
 */
#include "mechanics/force.h"

#include <glib.h>
#include <math.h>

#define N_RANDOM 10000
#define FINE     24 /* steps about the largest, each round narrower */
#define ROUNDS   3

static double
between (double from, double to)
{
  return g_test_rand_double_range (from, to);
}

/* Bits of every kind, straight ones and slight helices among them, in up to eight materials; a third each of
 * slots, edges and slivers. */
static SpelchForceCase
random_case (void)
{
  SpelchForceCase force = { .friction = 0.4, .rake = 0.35, .edge_radial_share = 0.5, .lift_down_share = 0.5 };
  SpelchFlutes *flutes = &force.flutes;
  int kind = g_test_rand_int_range (0, 6), width = g_test_rand_int_range (0, 3);
  double s = between (0, 2);
  flutes->diameter = between (2, 30);
  flutes->length = between (8, 60);
  flutes->helix = kind == 0 ? 0 : kind == 1 ? between (0.001, 0.1) : between (0.1, 1);
  flutes->turn_over = kind == 2 ? flutes->length : kind == 3 ? 0 : between (0.05, 0.95) * flutes->length;
  flutes->edges_up = flutes->edges_down = g_test_rand_int_range (1, 5);
  if (kind == 5)
    flutes->edges_down = g_test_rand_int_range (1, 4);
  force.engaged = flutes->diameter * (width == 0 ? 1 : width == 1 ? between (0.1, 1) : between (0.003, 0.1));
  force.climb = g_test_rand_int_range (0, 2) == 1;
  force.blunting = between (1, 1.6);
  force.n_slices = g_test_rand_int_range (1, 9);
  for (int i = 0; i < force.n_slices; i++)
    {
      double height = between (0.05, 1) * flutes->length / force.n_slices;
      force.slices[i] = (SpelchSlice){ s, s + height, between (1.5, 6.5), between (12, 45) };
      s += height;
    }
  return force;
}

typedef enum
{
  SIDE,
  LIFT,
  PRESS,
  N_KINDS,
} Kind;

typedef struct
{
  double most[N_KINDS], at[N_KINDS]; /* the largest, and by how much the bit had turned then */
  double least_side, mean_side;
} Dense;

static void
look (const SpelchForceCase *force, double feed, double turned, Dense *dense)
{
  SpelchForceParts still, moving;
  spelch_force_at (force, turned, &still, &moving);
  double values[N_KINDS] = { hypot (still.along + feed * moving.along, still.across + feed * moving.across),
                             still.lift + feed * moving.lift, still.press + feed * moving.press };
  for (int i = 0; i < N_KINDS; i++)
    if (values[i] > dense->most[i])
      {
        dense->most[i] = values[i];
        dense->at[i] = turned;
      }
  dense->least_side = fmin (dense->least_side, values[SIDE]);
  dense->mean_side += values[SIDE];
}

static Dense
look_everywhere (const SpelchForceCase *force, double feed, int steps)
{
  Dense dense = { .most = { -HUGE_VAL, -HUGE_VAL, -HUGE_VAL }, .least_side = HUGE_VAL };
  double step = 2 * G_PI / steps, shift = between (0, 1), mean;
  for (int i = 0; i < steps; i++)
    look (force, feed, step * (i + shift), &dense);
  mean = dense.mean_side / steps;
  for (int round = 0; round < ROUNDS; round++, step /= FINE / 2)
    for (int kind = 0; kind < N_KINDS; kind++)
      {
        double from = dense.at[kind] - step;
        for (int i = 0; i <= FINE; i++)
          look (force, feed, from + 2 * step * i / FINE, &dense);
      }
  dense.mean_side = mean;
  return dense;
}

/* Within a hundredth. A lift or press bound is a difference and may come to next to nothing: there a small
 * part of the sideways peak is as good. */
static void
test_peaks (void)
{
  for (int i = 0; i < N_RANDOM; i++)
    {
      SpelchForceCase force = random_case ();
      double feed = between (0.02, 0.5);
      Dense dense = look_everywhere (&force, feed, 720);
      SpelchTurn turn;
      spelch_force_turn (&force, &turn);
      SpelchForcePeaks peaks = spelch_force_peaks (&turn, feed);
      double ours[N_KINDS] = { peaks.sideways_peak, peaks.lift_peak, peaks.press_peak };
      for (int kind = 0; kind < N_KINDS; kind++)
        {
          double within = fmax (0.01 * fabs (dense.most[kind]), 0.002 * dense.most[SIDE]);
          g_assert_cmpfloat (ours[kind], >=, dense.most[kind] - within);
          g_assert_cmpfloat (ours[kind], <=, dense.most[kind] + within);
        }
    }
}

/* (max - min) / mean, each from the small steps. Its least and its mean are those of
 * steps, there and here, so it is only shown. */
static void
test_ripple (void)
{
  for (int i = 0; i < N_RANDOM / 50; i++)
    {
      SpelchForceCase force = random_case ();
      Dense dense = look_everywhere (&force, 0.2, 6000);
      SpelchTurn turn;
      spelch_force_turn (&force, &turn);
      double ripple = spelch_force_peaks (&turn, 0.2).ripple;
      double reference = (dense.most[SIDE] - dense.least_side) / dense.mean_side;
      g_assert_cmpfloat (fabs (ripple - reference), <=, 0.05 * reference + 0.03);
    }
}

static void
test_samples (void)
{
  for (int i = 0; i < N_RANDOM / 10; i++)
    {
      SpelchForceCase force = random_case ();
      SpelchTurn turn;
      double sum = 0;
      spelch_force_turn (&force, &turn);
      g_assert_cmpint (turn.n, <=, SPELCH_TURN_SAMPLES);
      for (int j = 0; j < turn.n; j++)
        {
          SpelchForceParts still, moving;
          spelch_force_at (&force, turn.turned[j], &still, &moving);
          g_assert_cmpfloat (still.across, ==, turn.still[j].across);
          g_assert_cmpfloat (moving.lift, ==, turn.moving[j].lift);
          sum += turn.weight[j];
        }
      g_assert_cmpfloat_with_epsilon (sum, 1, 1e-9);
    }
}

/* As many materials as there is room for, and as many teeth, still find room. */
static void
test_crowded (void)
{
  SpelchForceCase force = random_case ();
  SpelchTurn turn;
  force.flutes = (SpelchFlutes){ 12, 0.5, 20, 0, 60, SPELCH_MAX_TEETH, SPELCH_MAX_TEETH - 1 };
  force.engaged = 1;
  force.n_slices = SPELCH_MAX_SLICES;
  for (int i = 0; i < force.n_slices; i++)
    force.slices[i] = (SpelchSlice){ 0.9 * i, 0.9 * (i + 1), between (1.5, 6.5), between (12, 45) };
  Dense dense = look_everywhere (&force, 0.2, 6000);
  spelch_force_turn (&force, &turn);
  g_assert_cmpfloat (spelch_force_peaks (&turn, 0.2).sideways_peak, >=, 0.98 * dense.most[SIDE]);
  force.flutes.helix = 0;
  spelch_force_turn (&force, &turn);
  g_assert_cmpint (turn.n, <=, SPELCH_TURN_SAMPLES);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/force/peaks", test_peaks);
  g_test_add_func ("/force/ripple", test_ripple);
  g_test_add_func ("/force/samples", test_samples);
  g_test_add_func ("/force/crowded", test_crowded);
  return g_test_run ();
}

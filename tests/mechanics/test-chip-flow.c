/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tests of the way chips go. The references are built here: the flute as a helix on a cylinder (textbook
 * identity), the sign of the axial force, and the speed of the way out that chip room is reckoned with.
 */
#include "mechanics/chip-flow.h"
#include "mechanics/chip-room.h"
#include "mechanics/force.h"

#include <glib.h>
#include <math.h>

#define N_RANDOM 2000

static double
random_between (double from, double to)
{
  return g_test_rand_double_range (from, to);
}

/* Up-cut, down-cut, compression or straight. */
static SpelchFlutes
random_flutes (int kind)
{
  SpelchFlutes flutes = { .diameter = random_between (1, 30),
                          .helix = kind == 3 ? random_between (0, 0.13) : random_between (0.15, G_PI / 3),
                          .length = random_between (5, 60) };
  flutes.turn_over = kind == 0 ? flutes.length : kind == 1 ? 0 : random_between (0.1, 0.9) * flutes.length;
  flutes.edges_up = flutes.edges_down = g_test_rand_int_range (1, 5);
  return flutes;
}

/* The mean axial force on the work of a slice of a tenth of a millimetre about a height. */
static double
axial_at (const SpelchFlutes *flutes, double s)
{
  SpelchForceCase force = { .flutes = *flutes,
                            .engaged = flutes->diameter,
                            .blunting = 1.2,
                            .friction = 0.4,
                            .rake = 0.35,
                            .edge_radial_share = 0.5,
                            .n_slices = 1,
                            .slices = { { s - 0.05, s + 0.05, 3, 20 } } };
  return spelch_force_means (&force, 0.2).axial;
}

/* Chips go the way that the force pushes the work: the same shear does both. */
static void
test_directions (void)
{
  for (int round = 0; round < N_RANDOM; round++)
    {
      SpelchFlutes flutes = random_flutes (round % 4);
      double s = random_between (0.06, flutes.length - 0.06);
      double axial = axial_at (&flutes, s), speed = spelch_chip_flow_speed (&flutes, s);
      SpelchChipPlace later = spelch_chip_flow_at (&flutes, s, 0.05);
      if (fabs (s - flutes.turn_over) < 0.06)
        continue;
      g_assert_cmpint ((axial > 1e-12) - (axial < -1e-12), ==, (speed > 0) - (speed < 0));
      g_assert_cmpint ((later.height > s) - (later.height < s), ==, (speed > 0) - (speed < 0));
      g_assert_cmpint (later.arrived && round % 4 == 3, ==, round % 4 == 3);
    }
}

/* A chip that slides lies against its own edge: the angle of the edge that let it go at angle 0, at the
 * chip's height now, is the chip's. */
static void
test_stays_in_its_flute (void)
{
  for (int round = 0; round < N_RANDOM; round++)
    {
      SpelchFlutes flutes = random_flutes (round % 3);
      double s = random_between (0, flutes.length), age = random_between (0, 20);
      SpelchChipPlace place = spelch_chip_flow_at (&flutes, s, age);
      int sign = spelch_flute_sign_at (&flutes, s);
      double climbed = sign * (place.height - s) * 2 * tan (flutes.helix) / flutes.diameter;
      g_assert_cmpfloat_with_epsilon (place.gained, age - climbed, 1e-9 * (1 + age));
    }
}

/* None passes the turn-over or the tip; an up-cut's go on and on. */
static void
test_ends (void)
{
  for (int round = 0; round < N_RANDOM; round++)
    {
      int kind = round % 3;
      SpelchFlutes flutes = random_flutes (kind);
      double s = random_between (0, flutes.length);
      SpelchChipPlace place = spelch_chip_flow_at (&flutes, s, 1e4);
      if (kind == 0)
        g_assert_cmpfloat (place.height, >, flutes.length);
      else
        g_assert_cmpfloat_with_epsilon (place.height, kind == 1 ? 0 : flutes.turn_over, 1e-9);
      g_assert_cmpint (place.arrived, ==, kind != 0);
      if (place.arrived)
        {
          SpelchChipPlace before = spelch_chip_flow_at (&flutes, s, place.arrival * 0.999);
          g_assert_false (before.arrived && place.arrival > 1e-6);
          g_assert_cmpfloat (fabs (before.height - s), <=, fabs (place.height - s) + 1e-9);
        }
    }
}

/* The way out that chip room is reckoned with carries A_f times this speed: an up-cut whose chips need all of
 * it has a share of 1. */
static void
test_same_as_chip_room (void)
{
  for (int round = 0; round < N_RANDOM; round++)
    {
      SpelchFlutes flutes = random_flutes (0);
      double share = 0.3, engaged = flutes.diameter, feed = random_between (0.02, 0.4), bulking = 4;
      double area = share * G_PI * flutes.diameter * flutes.diameter / 4;
      double a_turn = area * spelch_chip_flow_speed (&flutes, 0) * 2 * G_PI; /* mm3 carried in a turn */
      double height = a_turn / (bulking * engaged * feed * flutes.edges_up);
      g_assert_cmpfloat_with_epsilon (spelch_chip_room_axial (bulking, height, engaged, feed, flutes.edges_up,
                                                              flutes.diameter, share, flutes.helix),
                                      1, 1e-9);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/chip-flow/directions", test_directions);
  g_test_add_func ("/chip-flow/stays-in-its-flute", test_stays_in_its_flute);
  g_test_add_func ("/chip-flow/ends", test_ends);
  g_test_add_func ("/chip-flow/same-as-chip-room", test_same_as_chip_room);
  return g_test_run ();
}

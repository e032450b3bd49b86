/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Machines: where the motor and zero are, which speeds there are, and what is a fault.
 */
#include "samples.h"

#include <math.h>

static void
test_kinds (void)
{
  SpelchMachine machine = sample_machine ();
  g_assert_false (spelch_machine_motor_below (&machine));
  g_assert_cmpint (spelch_machine_datum (&machine), ==, SPELCH_DATUM_BED);
  machine.kind = SPELCH_MACHINE_TABLE;
  g_assert_true (spelch_machine_motor_below (&machine));
  g_assert_cmpint (spelch_machine_datum (&machine), ==, SPELCH_DATUM_FACE);
  machine.kind = SPELCH_MACHINE_HAND;
  g_assert_false (spelch_machine_motor_below (&machine));
  g_assert_cmpint (spelch_machine_datum (&machine), ==, SPELCH_DATUM_FACE);
}

static void
test_dial_steps (void)
{
  SpelchMachine machine = sample_machine ();
  machine.n_steps = 3;
  machine.steps_rpm[0] = 10000;
  machine.steps_rpm[1] = 16000;
  machine.steps_rpm[2] = 24000;
  g_assert_cmpfloat (spelch_machine_speed (&machine, 0), ==, 10000);
  g_assert_cmpfloat (spelch_machine_speed (&machine, 2), ==, 24000);
  g_assert_cmpfloat (spelch_machine_speed (&machine, 3), ==, 0);
}

/* Both ends are there, no two are further than 1000 rpm apart, and none is met twice. */
static void
test_speeds (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (8000);
  SpelchMachine machine = sample_machine ();
  for (guint round = 0; round < 500; round++)
    {
      guint n = 0;
      g_assert_cmpfloat (spelch_machine_speed (&machine, 0), ==, machine.rpm_min);
      for (; spelch_machine_speed (&machine, n + 1) > 0; n++)
        {
          double step = spelch_machine_speed (&machine, n + 1) - spelch_machine_speed (&machine, n);
          g_assert_cmpfloat (step, >, 0);
          g_assert_cmpfloat (step, <=, 1000);
        }
      g_assert_cmpfloat (spelch_machine_speed (&machine, n), ==, machine.rpm_max);
      g_assert_cmpfloat (spelch_machine_speed (&machine, n + 2), ==, 0);
      machine.rpm_min = g_rand_int_range (rand, 500, 20000);
      machine.rpm_max = machine.rpm_min + g_rand_int_range (rand, 0, 20000);
    }
}

#define SPOIL(member_, value_)                                                                               \
  machine = sample_machine ();                                                                               \
  machine.member_ = value_

static void
test_faults (void)
{
  SpelchMachine machine = sample_machine ();
  assert_sound (spelch_machine_fault (&machine));
  SPOIL (rpm_min, 25000);
  assert_fault (spelch_machine_fault (&machine), "rpm_min (25000 rpm)", "rpm_max (24000 rpm)");
  SPOIL (rpm_max, NAN);
  assert_fault (spelch_machine_fault (&machine), "rpm_max", "not a number");
  SPOIL (power_w, 0);
  assert_fault (spelch_machine_fault (&machine), "power_w", "0 W");
  SPOIL (max_feed_mm_min, 0);
  assert_fault (spelch_machine_fault (&machine), "max_feed_mm_min", "missing");
  SPOIL (max_feed_mm_min, -1);
  assert_fault (spelch_machine_fault (&machine), "max_feed_mm_min", "-1 mm/min");
  SPOIL (n_steps, 13);
  assert_fault (spelch_machine_fault (&machine), "steps_rpm", "13");
  SPOIL (n_collets, 13);
  assert_fault (spelch_machine_fault (&machine), "collets", "13");
  SPOIL (collets[1].mm, 0);
  assert_fault (spelch_machine_fault (&machine), "collets[1]", "0 mm");
  SPOIL (overcut_allowed_mm, -0.5);
  assert_fault (spelch_machine_fault (&machine), "overcut_allowed_mm", "-0.5 mm");
  SPOIL (flatness_mm, 6);
  assert_fault (spelch_machine_fault (&machine), "flatness_mm", "6 mm");
  SPOIL (stiffness_n_mm, 0);
  assert_fault (spelch_machine_fault (&machine), "stiffness_n_mm", "0 N/mm");
  SPOIL (base_thickness.mm, 8);
  assert_fault (spelch_machine_fault (&machine), "base_thickness", "8 mm");
  SPOIL (kind, (SpelchMachineKind)3);
  assert_fault (spelch_machine_fault (&machine), "kind", "hand-held");
}

static void
test_steps_must_rise (void)
{
  SpelchMachine machine = sample_machine ();
  machine.n_steps = 2;
  machine.steps_rpm[0] = 16000;
  machine.steps_rpm[1] = 12000;
  assert_fault (spelch_machine_fault (&machine), "steps_rpm[1]", "12000 rpm");
  machine.steps_rpm[1] = 24001;
  assert_fault (spelch_machine_fault (&machine), "steps_rpm[1]", "24001 rpm");
  machine.steps_rpm[1] = 24000;
  assert_sound (spelch_machine_fault (&machine));
}

/* Feeding by hand has no highest feed of its own. */
static void
test_hand_feed (void)
{
  SpelchMachine machine = sample_machine ();
  machine.kind = SPELCH_MACHINE_HAND;
  machine.max_feed_mm_min = 0;
  machine.base_thickness = spelch_length_mm (8);
  assert_sound (spelch_machine_fault (&machine));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/machine/kinds", test_kinds);
  g_test_add_func ("/machine/dial-steps", test_dial_steps);
  g_test_add_func ("/machine/speeds", test_speeds);
  g_test_add_func ("/machine/faults", test_faults);
  g_test_add_func ("/machine/steps-must-rise", test_steps_must_rise);
  g_test_add_func ("/machine/hand-feed", test_hand_feed);
  return g_test_run ();
}

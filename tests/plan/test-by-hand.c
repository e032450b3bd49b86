/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Speeds and feeds set by hand: read in every unit they are shown in and as they are counted by hand, refused
 * in sentences, written so that nothing is lost, and held against what the machine can do. An inch is 25.4 mm
 * and a foot 12 inches by definition (international yard, 1959); the rest is arithmetic.
 */
#include "on-demo.h"

#include "plan/by-hand.h"

#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };
static const SpelchNumbers INCH = { SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, '.' };
static const SpelchNumbers COMMA = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, ',', SPELCH_FEED_M_MIN };
static const SpelchNumbers FEET = { SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, '.', SPELCH_FEED_FT_MIN };

static void
reads (const char *text, const SpelchNumbers *numbers, double mm_min)
{
  g_autoptr (GError) error = NULL;
  double feed = 0;
  if (!spelch_by_hand_read_feed (text, numbers, &feed, &error))
    g_error ("“%s”: %s", text, error->message);
  g_assert_cmpfloat_with_epsilon (feed, mm_min, 1e-6);
}

static void
test_units (void)
{
  reads ("5400", &MM, 5400);
  reads (" 5 400 ", &MM, 5400);
  reads ("5 400 mm/min", &MM, 5400);
  reads ("5\xe2\x80\xaf"
         "400 mm/min",
         &INCH, 5400);
  reads ("5,4 m/min", &MM, 5400);
  reads ("5.4M/Min", &INCH, 5400);
  reads ("200 in/min", &MM, 200 * 25.4);
  reads ("17.5 ft/min", &MM, 17.5 * 12 * 25.4);
  reads ("20 feet a minute", &MM, 20 * 12 * 25.4);
  reads ("540 cm per minute", &MM, 5400);
}

/* A bare number takes the unit that feeds are shown in. */
static void
test_bare (void)
{
  reads ("200", &INCH, 200 * 25.4);
  reads ("5,4", &COMMA, 5400);
  reads ("17.5", &FEET, 17.5 * 12 * 25.4);
}

/* 1000 mm in 22 s are 1000 / 22 * 60 = 2727 mm/min; a foot in 7 s 304.8 / 7 * 60 = 2613 mm/min. */
static void
test_pace (void)
{
  reads ("a metre in 22 s", &MM, 2727);
  reads ("A metre in 22 seconds", &INCH, 2727);
  reads ("1 m in 22 s", &MM, 2727);
  reads ("2 metres in 44 s", &MM, 2727);
  reads ("a foot in 7 s", &MM, 2613);
  reads ("2 ft in 14 s", &MM, 2613);
  reads ("500 mm in 11,0 sec", &MM, 2727);
  reads ("10 in in 6 s", &MM, 2540);
}

static void
refuses (const char *text, bool speed)
{
  g_autoptr (GError) error = NULL;
  double value = -7;
  bool taken = speed ? spelch_by_hand_read_speed (text, &value, &error)
                     : spelch_by_hand_read_feed (text, &MM, &value, &error);
  if (taken)
    g_error ("“%s” was read as %g", text, value);
  g_assert_cmpfloat (value, ==, -7);
  g_assert_nonnull (error);
  g_assert_nonnull (strchr (error->message, '.'));
}

static void
test_refused (void)
{
  const char *const feeds[]
      = { "",    "quick",          "5 m",          "5/8",          "1.234,5",   "-200",
          "0",   "a metre in 0 s", "a metre in s", "200 ells/min", "5 400 rpm", "nan",
          "inf", "1e9 m/min",      "\xff/min",     "in 22 s",      "5,400",     "5.400 mm/min" };
  const char *const speeds[]
      = { "", "fast", "0", "-18000", "18000 mm/min", "1.8.0", "50", "1/2", "inf", "18,000", "18.000 rpm" };
  for (guint i = 0; i < G_N_ELEMENTS (feeds); i++)
    refuses (feeds[i], false);
  for (guint i = 0; i < G_N_ELEMENTS (speeds); i++)
    refuses (speeds[i], true);
  g_autoptr (GError) error = NULL;
  double rpm = 0;
  g_assert_false (spelch_by_hand_read_speed ("18,000 rpm", &rpm, &error));
  g_assert_cmpstr (error->message, ==, "“18,000” can be read in two ways; write 18000, or 18.");
}

static void
test_speed (void)
{
  const char *const texts[] = { "18000",
                                "18 000 rpm",
                                "18\xe2\x80\xaf"
                                "000 rpm",
                                "18000 RPM",
                                "18000 1/min",
                                " 18000r/min ",
                                "18 000 U/min",  /* Umdrehungen, as shown in German */
                                "18 000 tr/min", /* tours, as shown in French */
                                "18000 min-1" };
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      double rpm = 0;
      g_assert_true (spelch_by_hand_read_speed (texts[i], &rpm, NULL));
      g_assert_cmpfloat (rpm, ==, 18000);
    }
}

/* What is written reads as the same again, within half of the last decimal that is written at most. */
static void
test_written (void)
{
  const SpelchNumbers *const all[] = { &MM, &INCH, &COMMA, &FEET };
  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    for (double feed = 100; feed < 20000; feed += 137)
      {
        g_autofree char *words = spelch_by_hand_write_feed (all[i], feed);
        double read = 0;
        g_assert_true (spelch_by_hand_read_feed (words, all[i], &read, NULL));
        g_assert_cmpfloat_with_epsilon (read, feed, 0.0005 * 1000 + 1e-6);
      }
  g_autofree char *plain = spelch_by_hand_write_feed (&MM, 5400);
  g_autofree char *metres = spelch_by_hand_write_feed (&COMMA, 5450);
  g_autofree char *inches = spelch_by_hand_write_feed (&INCH, 200 * 25.4);
  g_assert_cmpstr (plain, ==,
                   "5\xe2\x80\xaf"
                   "400 mm/min");
  g_assert_cmpstr (metres, ==, "5,45 m/min");
  g_assert_cmpstr (inches, ==, "200 in/min");
}

/* The demo's gantry turns at 8 000 to 24 000 rpm and feeds at up to 12 000 mm/min (data/demo.spelch). */
static void
test_machine (Demo *demo, gconstpointer unused)
{
  demo_plan_with (demo, "compression-6.35x22");
  SpelchMachine dial = demo->part->machine;
  g_autofree char *slow = spelch_by_hand_speed_fault (&dial, 7000);
  g_autofree char *fast = spelch_by_hand_speed_fault (&dial, 25000);
  g_assert_nonnull (strstr (slow, "8\xe2\x80\xaf"
                                  "000"));
  g_assert_nonnull (strstr (fast, "24\xe2\x80\xaf"
                                  "000"));
  g_assert_null (spelch_by_hand_speed_fault (&dial, 24000));
  g_assert_null (spelch_by_hand_speed_fault (&dial, 17777));
  dial.n_steps = 2;
  dial.steps_rpm[0] = 8000;
  dial.steps_rpm[1] = 24000;
  g_autofree char *between = spelch_by_hand_speed_fault (&dial, 17777);
  g_assert_nonnull (strstr (between, "dial"));
  g_assert_null (spelch_by_hand_speed_fault (&dial, 24000));
  g_autofree char *quick = spelch_by_hand_feed_fault (&demo->plan, 12001, &MM);
  g_assert_nonnull (strstr (quick, "12\xe2\x80\xaf"
                                   "000 mm/min"));
  g_assert_null (spelch_by_hand_feed_fault (&demo->plan, 12000, &MM));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/by-hand/units", test_units);
  g_test_add_func ("/by-hand/bare", test_bare);
  g_test_add_func ("/by-hand/pace", test_pace);
  g_test_add_func ("/by-hand/refused", test_refused);
  g_test_add_func ("/by-hand/speed", test_speed);
  g_test_add_func ("/by-hand/written", test_written);
  g_test_add ("/by-hand/machine", Demo, NULL, demo_set_up, test_machine, demo_tear_down);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers as people type them: which are read, in which units, and that what may be thousands is asked about.
 */
#include "shop/length.h"
#include "shop/number.h"

typedef struct
{
  const char *typed, *unit;
  char sign;
  double number;
} Reading;

static const Reading READINGS[] = {
  { "18000", "rpm", '.', 18000 },         { "18 000 rpm", "rpm", ',', 18000 },
  { "18\u202f000", "rpm", ',', 18000 },   { "18000 1/min", "rpm", '.', 18000 },
  { "12,5", "mm/min", '.', 12.5 },        { "5,0", "mm/min", '.', 5 },
  { "5,00", "mm/min", '.', 5 },           { "5,0000", "mm/min", '.', 5 },
  { "5000,250", "mm/min", '.', 5000.25 }, { "5 m/min", "mm/min", '.', 5000 },
  { "5,400 m/min", "mm/min", ',', 5400 }, /* nobody feeds at 5400 m/min */
  { "200 in/min", "mm/min", '.', 5080 },  { "10 ft/min", "mm/min", '.', 3048 },
  { "1.4 kW", "W", '.', 1400 },           { "1,400 kw", "W", '.', 1400 },
  { "0.7 g/cm³", "kg/m³", '.', 700 },     { "700 kg/m3", "kg/m³", '.', 700 },
  { "10 ft", "m", '.', 3.048 },           { "-12.5 °", "°", '.', -12.5 },
  { "\u221212,5", "°", ',', -12.5 },      { "29,500", "°", ',', 29.5 },
  { "0.125", "mm", ',', 0.125 },          { "0,125", "W", '.', 0.125 },
  { "35.50", NULL, ',', 35.5 },
};

static void
test_reading (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (READINGS); i++)
    {
      const Reading *reading = &READINGS[i];
      double number = -7;
      g_autoptr (GError) error = NULL;
      spelch_number_parse (reading->typed, reading->unit, reading->sign, &number, &error);
      g_assert_no_error (error);
      g_assert_cmpfloat_with_epsilon (number, reading->number, 1e-9);
    }
}

typedef struct
{
  const char *typed, *unit;
  char sign;
  const char *sentence;
} Refusal;

static const Refusal REFUSALS[] = {
  { "5,000", "mm/min", '.', "“5,000” can be read in two ways; write 5000, or 5." },
  { "5.000", "mm/min", ',', "“5.000” can be read in two ways; write 5000, or 5." },
  { "5,000", "mm/min", ',', "“5,000” can be read in two ways; write 5000, or 5." },
  { "5.000", "mm/min", '.', "“5.000” can be read in two ways; write 5000, or 5." },
  { "5,000 mm/min", "mm/min", '.', "“5,000” can be read in two ways; write 5000, or 5." },
  { "18,000", "rpm", '.', "“18,000” can be read in two ways; write 18000, or 18." },
  { "18.250 rpm", "rpm", ',', "“18.250” can be read in two ways; write 18250, or 18,25." },
  { "1,234", "W", '.', "“1,234” can be read in two ways; write 1234, or 1.2340." },
  { "120.500", "m", '.', "“120.500” can be read in two ways; write 120500, or 120.5." },
  { "1,250", NULL, '.', "“1,250” can be read in two ways; write 1250, or 1.25." },
  { "1,250", "mm", '.', "“1,250” can be read in two ways; write 1250, or 1.25." },
  { "1.250", "kg", ',', "“1.250” can be read in two ways; write 1250, or 1,25." },
  /* an example that fits what is asked for */
  { "quick", "mm/min", '.', "Write a number here, in mm/min: for example 3000." },
  { "heavy", "kg/m³", ',', "Write a number here, in kg/m³: for example 650." },
  { "steep", "°", ',', "Write a number here, in °: for example 30." },
  { "1.4 hp", "W", '.', "Write a number here, in W: for example 1400." },
  { "light", "kg", ',', "Write a number here, in kg: for example 4,5." },
  { "dear", NULL, ',', "Write a number here, such as 35,50." },
  { "", "m", '.', "Write a number here, in m: for example 120." },
  { "1,234,567", "rpm", '.', "Write a number here, in rpm: for example 18000." },
  { "1.2.3", "°", '.', "Write a number here, in °: for example 30." },
  { "1e400", "°", '.', "Write a number here, in °: for example 30." },
  { "0x1p3", "°", '.', "Write a number here, in °: for example 30." },
  { "nan", "°", '.', "Write a number here, in °: for example 30." },
  { "\xff", "°", '.', "Write a number here, in °: for example 30." },
};

static void
test_refusing (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (REFUSALS); i++)
    {
      const Refusal *refusal = &REFUSALS[i];
      double number = -7;
      g_autoptr (GError) error = NULL;
      g_assert_false (spelch_number_parse (refusal->typed, refusal->unit, refusal->sign, &number, &error));
      g_assert_cmpstr (error->message, ==, refusal->sentence);
      g_assert_cmpfloat (number, ==, -7);
    }
}

static void
refuses_whole (const char *typed, const char *sentence)
{
  int whole = -7;
  g_autoptr (GError) error = NULL;
  g_assert_false (spelch_number_parse_whole (typed, '.', &whole, &error));
  g_assert_cmpstr (error->message, ==, sentence);
  g_assert_cmpint (whole, ==, -7);
}

static void
test_whole (void)
{
  int whole = 0;
  g_assert_true (spelch_number_parse_whole (" 12 ", '.', &whole, NULL));
  g_assert_cmpint (whole, ==, 12);
  g_assert_true (spelch_number_parse_whole ("-3", '.', &whole, NULL));
  g_assert_cmpint (whole, ==, -3);
  g_assert_true (spelch_number_parse_whole ("1 200", '.', &whole, NULL));
  g_assert_cmpint (whole, ==, 1200);
  refuses_whole ("two", "Write a whole number here: 1, 2, 3 ...");
  refuses_whole ("", "Write a whole number here: 1, 2, 3 ...");
  refuses_whole ("2.5", "Write a whole number here: 1, 2, 3 ...");
  refuses_whole ("99999999999", "Write a whole number here: 1, 2, 3 ...");
  refuses_whole ("5,000", "“5,000” can be read in two ways; write 5000, or 5.");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/number/reading", test_reading);
  g_test_add_func ("/number/refusing", test_refusing);
  g_test_add_func ("/number/whole", test_whole);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lengths: what is read, what is refused, and that what is written reads back.
 *
 * Sources: 1 inch is 25.4 mm exactly (international yard and pound agreement of 1959). The fractions'
 * millimetres are that number times the fraction, to three decimals.
 */
#include "shop/length.h"

#include <math.h>
#include <string.h>

#define NBSP   "\u00a0"
#define NARROW "\u202f"
#define THIN   "\u2009"

/* ---- Reading ---- */

typedef struct
{
  const char *text;
  SpelchUnit shown;
  double mm;
} Reading;

static const Reading readings[] = {
  /* a bare decimal takes the unit shown, whichever decimal sign it has */
  { "18", SPELCH_UNIT_MM, 18 },
  { "18", SPELCH_UNIT_INCH, 457.2 },
  { "15.9", SPELCH_UNIT_MM, 15.9 },
  { "15,9", SPELCH_UNIT_MM, 15.9 },
  { "0.625", SPELCH_UNIT_INCH, 15.875 },
  { "0,625", SPELCH_UNIT_INCH, 15.875 },
  { ".5", SPELCH_UNIT_MM, 0.5 },
  { ",5", SPELCH_UNIT_MM, 0.5 },
  { "18.", SPELCH_UNIT_MM, 18 },
  { "0", SPELCH_UNIT_MM, 0 },
  { "0.000", SPELCH_UNIT_MM, 0 },
  { "007", SPELCH_UNIT_MM, 7 },
  { "1,234", SPELCH_UNIT_MM, 1.234 },
  { "1.234", SPELCH_UNIT_MM, 1.234 },
  /* a unit decides, whatever is shown */
  { "15.9 mm", SPELCH_UNIT_INCH, 15.9 },
  { "15,9 mm", SPELCH_UNIT_INCH, 15.9 },
  { "15.9mm", SPELCH_UNIT_INCH, 15.9 },
  { "15.9 MM", SPELCH_UNIT_INCH, 15.9 },
  { "3 cm", SPELCH_UNIT_INCH, 30 },
  { "1.2 m", SPELCH_UNIT_INCH, 1200 },
  { "6 ft", SPELCH_UNIT_MM, 1828.8 },
  { "2.5'", SPELCH_UNIT_INCH, 762 },
  { "1′", SPELCH_UNIT_MM, 304.8 },
  { "8 Feet", SPELCH_UNIT_MM, 2438.4 },
  { "0.625 in", SPELCH_UNIT_MM, 15.875 },
  { "0.625in", SPELCH_UNIT_MM, 15.875 },
  { "0,625 in", SPELCH_UNIT_MM, 15.875 },
  { "1 inch", SPELCH_UNIT_MM, 25.4 },
  { "2 inches", SPELCH_UNIT_MM, 50.8 },
  { "2\"", SPELCH_UNIT_MM, 50.8 },
  { "2 \"", SPELCH_UNIT_MM, 50.8 },
  { "2″", SPELCH_UNIT_MM, 50.8 },
  { "2”", SPELCH_UNIT_MM, 50.8 },
  /* a bare fraction is inches, whatever is shown */
  { "5/8", SPELCH_UNIT_MM, 15.875 },
  { "5/8", SPELCH_UNIT_INCH, 15.875 },
  { "5⁄8", SPELCH_UNIT_MM, 15.875 },
  { "10/16", SPELCH_UNIT_MM, 15.875 },
  { "5/4", SPELCH_UNIT_MM, 31.75 },
  { "0/8", SPELCH_UNIT_MM, 0 },
  { "5/8 in", SPELCH_UNIT_MM, 15.875 },
  { "5/8\"", SPELCH_UNIT_MM, 15.875 },
  { "1 1/4", SPELCH_UNIT_MM, 31.75 },
  { "1 1/4\"", SPELCH_UNIT_MM, 31.75 },
  { "1-1/4 in", SPELCH_UNIT_MM, 31.75 },
  { "1  1/4 in", SPELCH_UNIT_MM, 31.75 },
  { "1" NBSP "1/4″", SPELCH_UNIT_MM, 31.75 },
  { "1 63/64 in", SPELCH_UNIT_MM, 50.403125 },
  { "1 127/128", SPELCH_UNIT_MM, 50.6015625 },
  /* fractions that are one letter */
  { "½", SPELCH_UNIT_MM, 12.7 },
  { "¼", SPELCH_UNIT_MM, 6.35 },
  { "¾ in", SPELCH_UNIT_MM, 19.05 },
  { "⅛\"", SPELCH_UNIT_MM, 3.175 },
  { "⅜", SPELCH_UNIT_MM, 9.525 },
  { "⅝″", SPELCH_UNIT_MM, 15.875 },
  { "⅞", SPELCH_UNIT_MM, 22.225 },
  { "1½", SPELCH_UNIT_MM, 38.1 },
  { "1 ½ in", SPELCH_UNIT_MM, 38.1 },
  { "1-½″", SPELCH_UNIT_MM, 38.1 },
  /* digits grouped by spaces of any width */
  { "1 200 mm", SPELCH_UNIT_INCH, 1200 },
  { "1" NBSP "200 mm", SPELCH_UNIT_INCH, 1200 },
  { "1" NARROW "200" NARROW "mm", SPELCH_UNIT_INCH, 1200 },
  { "1" THIN "200,5 mm", SPELCH_UNIT_INCH, 1200.5 },
  { "12 345.25", SPELCH_UNIT_MM, 12345.25 },
  { "100 000 mm", SPELCH_UNIT_MM, 100000 },
  { "1 200 1/2 in", SPELCH_UNIT_MM, 30492.7 },
  /* a minus, either letter for it */
  { "-5", SPELCH_UNIT_MM, -5 },
  { "−5 mm", SPELCH_UNIT_MM, -5 },
  { "- 5 mm", SPELCH_UNIT_MM, -5 },
  { "-1 1/4 in", SPELCH_UNIT_MM, -31.75 },
  { "-1-1/4", SPELCH_UNIT_MM, -31.75 },
  { "-½", SPELCH_UNIT_MM, -12.7 },
  /* white space at the ends of any kind */
  { "  18 mm  ", SPELCH_UNIT_INCH, 18 },
  { "\t18 mm\n", SPELCH_UNIT_INCH, 18 },
  { NBSP "18" NBSP "mm" NARROW, SPELCH_UNIT_INCH, 18 },
};

static void
test_reading (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (readings); i++)
    {
      SpelchLength length;
      g_autoptr (GError) error = NULL;
      bool read = spelch_length_parse (readings[i].text, readings[i].shown, &length, &error);
      if (!read)
        g_error ("[%s] refused: %s", readings[i].text, error->message);
      if (fabs (length.mm - readings[i].mm) > 1e-12 * MAX (1, fabs (readings[i].mm)))
        g_error ("[%s] read as %.17g", readings[i].text, length.mm);
    }
}

static void
test_inch_is_exact (void)
{
  SpelchLength length;
  g_assert_true (spelch_length_parse ("1 in", SPELCH_UNIT_MM, &length, NULL));
  g_assert_true (length.mm == 25.4);
  g_assert_true (spelch_length_parse ("1 1/2 in", SPELCH_UNIT_MM, &length, NULL));
  g_assert_true (length.mm == 38.1);
  g_assert_true (spelch_length_parse ("1000 in", SPELCH_UNIT_MM, &length, NULL));
  g_assert_true (length.mm == 25400);
}

static void
test_minus_nothing (void)
{
  SpelchLength length;
  g_assert_true (spelch_length_parse ("-0", SPELCH_UNIT_MM, &length, NULL));
  g_assert_false (signbit (length.mm));
}

/* ---- Refusing ---- */

typedef struct
{
  const char *text;
  SpelchLengthError code;
} Refusal;

static const Refusal refusals[] = {
  { "", SPELCH_LENGTH_ERROR_EMPTY },
  { "   ", SPELCH_LENGTH_ERROR_EMPTY },
  { NBSP NARROW "\t", SPELCH_LENGTH_ERROR_EMPTY },
  { "abc", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "mm", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "-", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "--5", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "+5", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { ".", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { ", mm", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "nan", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "inf", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "1e5", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "0x10", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "12 34", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "1 20 mm", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "1200 500", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "1\n200 mm", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "15. 9", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "5/", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "/8", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "5//8", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "5/8/2", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "1.5/2", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "5/1.5", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "5-8", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "½3", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "12½3", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "½ ½", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "1/½", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "5²", SPELCH_LENGTH_ERROR_UNIT },
  { "18 mm 2", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "\xff\xfe", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "18 \xc3", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "5 ells", SPELCH_LENGTH_ERROR_UNIT },
  { "6' 10\"", SPELCH_LENGTH_ERROR_NOT_NUMBER },
  { "18 km", SPELCH_LENGTH_ERROR_UNIT },
  { "18 µm", SPELCH_LENGTH_ERROR_UNIT },
  { "18 mmm", SPELCH_LENGTH_ERROR_UNIT },
  { "1,234.5", SPELCH_LENGTH_ERROR_AMBIGUOUS },
  { "1.234,5", SPELCH_LENGTH_ERROR_AMBIGUOUS },
  { "1.2.3", SPELCH_LENGTH_ERROR_AMBIGUOUS },
  { "1,2,3 mm", SPELCH_LENGTH_ERROR_AMBIGUOUS },
  { "1..5", SPELCH_LENGTH_ERROR_AMBIGUOUS },
  { "5/0", SPELCH_LENGTH_ERROR_FRACTION },
  { "1 5/0", SPELCH_LENGTH_ERROR_FRACTION },
  { "5/00", SPELCH_LENGTH_ERROR_FRACTION },
  { "1/1000000", SPELCH_LENGTH_ERROR_FRACTION },
  { "5/8 mm", SPELCH_LENGTH_ERROR_FRACTION },
  { "1 1/4 mm", SPELCH_LENGTH_ERROR_FRACTION },
  { "½ cm", SPELCH_LENGTH_ERROR_FRACTION },
  { "1 9/8", SPELCH_LENGTH_ERROR_FRACTION },
  { "100.1 m", SPELCH_LENGTH_ERROR_RANGE },
  { "-100001", SPELCH_LENGTH_ERROR_RANGE },
  { "4000 in", SPELCH_LENGTH_ERROR_RANGE },
  { "9999999999999999999999999999999", SPELCH_LENGTH_ERROR_RANGE },
  { "0000000000000000000000000000000000000018", SPELCH_LENGTH_ERROR_RANGE }, /* 40 letters */
  { "18.0000000000000000000000000 mm in", SPELCH_LENGTH_ERROR_RANGE },
};

static void
test_refusing (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (refusals); i++)
    {
      SpelchLength length = { .mm = 7, .typed = "seven" };
      g_autoptr (GError) error = NULL;
      if (spelch_length_parse (refusals[i].text, SPELCH_UNIT_MM, &length, &error))
        g_error ("[%s] read as %.17g", refusals[i].text, length.mm);
      g_assert_true (error->domain == SPELCH_LENGTH_ERROR);
      if (error->code != (int)refusals[i].code)
        g_error ("[%s] refused with %d: %s", refusals[i].text, error->code, error->message);
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
      g_assert_cmpfloat (length.mm, ==, 7);
      g_assert_cmpstr (length.typed, ==, "seven");
    }
}

static void
test_refusing_names_what_was_typed (void)
{
  SpelchLength length;
  g_autoptr (GError) error = NULL;
  g_assert_false (spelch_length_parse ("  12 furlongs ", SPELCH_UNIT_MM, &length, &error));
  g_assert_nonnull (strstr (error->message, "12 furlongs"));
  g_assert_false (spelch_length_parse (NULL, SPELCH_UNIT_MM, &length, NULL));
}

/* ---- What was typed ---- */

static void
test_typed_is_kept (void)
{
  static const char *const texts[] = { "15,9 mm", "15.9", "1 1/4\"", "1" NARROW "200 mm", "½″", "0.6250 in" };
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      SpelchLength length;
      g_autofree char *spaced = g_strdup_printf (" %s\t", texts[i]);
      g_assert_true (spelch_length_parse (spaced, SPELCH_UNIT_MM, &length, NULL));
      g_assert_cmpstr (length.typed, ==, texts[i]);
      g_autofree char *shown = spelch_length_show (&length, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.');
      g_assert_cmpstr (shown, ==, texts[i]);
    }
}

static void
test_longest_typed (void)
{
  SpelchLength length;
  const char *longest = "18.0000000000000000000000000 mm";
  g_assert_cmpuint (strlen (longest), ==, SPELCH_TYPED_SIZE - 1);
  g_assert_true (spelch_length_parse (longest, SPELCH_UNIT_MM, &length, NULL));
  g_assert_cmpstr (length.typed, ==, longest);
}

/* Words with a unit show in either unit; a bare number only in the unit it was read in; words that don't say
 * the length any more are left. */
static void
test_show (void)
{
  const struct
  {
    const char *typed;
    double mm;
    SpelchUnit unit;
    SpelchInchStyle style;
    char sign;
    const char *shown;
  } cases[] = {
    { "15,9 mm", 15.9, SPELCH_UNIT_INCH, SPELCH_INCH_DECIMAL, '.', "15,9 mm" },
    { "5/8", 15.875, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.', "5/8" },
    { "15.9", 15.9, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, ',', "15.9" },
    { "15.9", 15.9, SPELCH_UNIT_INCH, SPELCH_INCH_DECIMAL, '.', "0.626 in" },
    { "15.9", 15.9, SPELCH_UNIT_INCH, SPELCH_INCH_DECIMAL, ',', "0,626 in" },
    { "0.625", 15.875, SPELCH_UNIT_INCH, SPELCH_INCH_DECIMAL, '.', "0.625" },
    { "0.625", 15.875, SPELCH_UNIT_MM, SPELCH_INCH_DECIMAL, '.', "15.88 mm" },
    { "0.625", 15.875, SPELCH_UNIT_MM, SPELCH_INCH_DECIMAL, ',', "15,88 mm" },
    { "18 mm", 17.6, SPELCH_UNIT_MM, SPELCH_INCH_DECIMAL, '.', "17.6 mm" },
    { "", 18, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.', "18 mm" },
    { "", 18.30, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, ',', "18,3 mm" },
    { "", 0, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, ',', "0 mm" },
    { "", 100, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, ',', "100 mm" },
    { "", 19.05, SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, '.', "3/4 in" },
    { "", 254, SPELCH_UNIT_INCH, SPELCH_INCH_DECIMAL, '.', "10 in" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SpelchLength length = spelch_length_mm (cases[i].mm);
      g_strlcpy (length.typed, cases[i].typed, sizeof length.typed);
      g_autofree char *shown = spelch_length_show (&length, cases[i].unit, cases[i].style, cases[i].sign);
      g_assert_cmpstr (shown, ==, cases[i].shown);
    }
}

/* In a sentence a length has its unit: a fraction is read as inches, a decimal in the unit shown. */
static void
test_show_whole (void)
{
  const struct
  {
    const char *typed;
    SpelchUnit unit;
    const char *shown;
  } cases[] = {
    { "18.3", SPELCH_UNIT_MM, "18.3 mm" }, { "18,3", SPELCH_UNIT_MM, "18.3 mm" },
    { "1/2", SPELCH_UNIT_MM, "1/2 in" },   { "1 1/4", SPELCH_UNIT_INCH, "1 1/4 in" },
    { "0.5", SPELCH_UNIT_INCH, "0.5 in" }, { "1/2 in", SPELCH_UNIT_MM, "1/2 in" },
    { "1/2\"", SPELCH_UNIT_MM, "1/2\"" },  { "2 cm", SPELCH_UNIT_INCH, "2 cm" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SpelchLength length;
      g_assert_true (spelch_length_parse (cases[i].typed, cases[i].unit, &length, NULL));
      g_autofree char *shown = spelch_length_show_whole (&length, cases[i].unit, SPELCH_INCH_FRACTION, '.');
      g_assert_cmpstr (shown, ==, cases[i].shown);
    }
  SpelchLength starter;
  g_assert_true (spelch_length_parse ("8.5 mm", SPELCH_UNIT_MM, &starter, NULL));
  g_autofree char *comma = spelch_length_show_whole (&starter, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, ',');
  g_assert_cmpstr (comma, ==, "8,5 mm"); /* a sentence has one decimal sign, whoever typed the length */
  spelch_length_take_sign (&starter, ',');
  g_assert_cmpstr (starter.typed, ==, "8,5 mm");
}

/* ---- Writing ---- */

static void
test_format (void)
{
  const struct
  {
    double mm;
    SpelchUnit unit;
    SpelchInchStyle style;
    int decimals;
    char sign;
    const char *text;
  } cases[] = {
    { 18.3, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, 1, '.', "18.3 mm" },
    { 18.3, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, 2, ',', "18,30 mm" },
    { 18, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, 0, '.', "18 mm" },
    /* halves go up, whichever side of them the nearest number of the computer lies */
    { 3.175, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, 2, '.', "3.18 mm" },
    { 9.525, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, 2, '.', "9.53 mm" },
    { -0.001, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, 1, '.', "0.0 mm" },
    { -0.6, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, 1, ',', "-0,6 mm" },
    { 18.256, SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, 1, '.', "23/32 in" },
    { 31.75, SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, 1, '.', "1 1/4 in" },
    { -31.75, SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, 1, '.', "-1 1/4 in" },
    { 50.8, SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, 1, '.', "2 in" },
    { 0, SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, 1, '.', "0 in" },
    /* 18 mm lies 0.14 mm beyond 45/64 in (17.859 mm): no fraction is honest */
    { 18, SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, 1, '.', "0.709 in" },
    { 18, SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, 2, ',', "0,7087 in" },
    { 18, SPELCH_UNIT_INCH, SPELCH_INCH_DECIMAL, 0, '.', "0.7 in" },
    { 12.7, SPELCH_UNIT_INCH, SPELCH_INCH_DECIMAL, 1, '.', "0.500 in" },
    { 12.7, SPELCH_UNIT_INCH, SPELCH_INCH_DECIMAL, 5, '.', "0.5000 in" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *text = spelch_length_format (cases[i].mm, cases[i].unit, cases[i].style,
                                                    cases[i].decimals, cases[i].sign);
      g_assert_cmpstr (text, ==, cases[i].text);
    }
}

/* Every 64th of an inch from 0 to 2 in, as a fraction and as decimals, reads back. */
static void
test_every_64th (void)
{
  for (guint i = 0; i <= 128; i++)
    {
      double mm = i * 25.4 / 64;
      SpelchLength length;
      g_autofree char *text = spelch_length_format (mm, SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, 2, '.');
      g_assert_null (strchr (text, '.'));
      g_assert_true (spelch_length_parse (text, SPELCH_UNIT_MM, &length, NULL));
      g_assert_cmpfloat_with_epsilon (length.mm, mm, 1e-12);

      g_autofree char *decimal = spelch_length_format (mm, SPELCH_UNIT_INCH, SPELCH_INCH_DECIMAL, 2, ',');
      g_assert_true (spelch_length_parse (decimal, SPELCH_UNIT_MM, &length, NULL));
      /* four decimals of an inch: half of 0.00254 mm */
      g_assert_cmpfloat_with_epsilon (length.mm, mm, 0.00127 + 1e-9);
    }
}

/* A fraction is used within 0.005 mm of a 64th and not beyond. */
static void
test_fraction_is_honest (void)
{
  g_autofree char *near
      = spelch_length_format (6.35 + 0.0049, SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, 2, '.');
  g_autofree char *off = spelch_length_format (6.35 + 0.0051, SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, 2, '.');
  g_assert_cmpstr (near, ==, "1/4 in");
  g_assert_cmpstr (off, ==, "0.2502 in");
}

/* The usual fractions and their millimetres to three decimals, a table printed in any workshop; each is 25.4
 * times the fraction. */
static void
test_fraction_table (void)
{
  static const struct
  {
    const char *inch;
    double mm;
  } table[] = {
    { "1/64", 0.397 },   { "1/50", 0.508 },  { "1/42", 0.605 },   { "1/36", 0.706 },  { "1/32", 0.794 },
    { "1/24", 1.058 },   { "1/16", 1.588 },  { "1/8", 3.175 },    { "3/16", 4.763 },  { "1/4", 6.350 },
    { "5/16", 7.938 },   { "11/32", 8.731 }, { "3/8", 9.525 },    { "7/16", 11.113 }, { "15/32", 11.906 },
    { "1/2", 12.700 },   { "9/16", 14.288 }, { "19/32", 15.081 }, { "5/8", 15.875 },  { "11/16", 17.463 },
    { "23/32", 18.256 }, { "3/4", 19.050 },  { "7/8", 22.225 },   { "1", 25.400 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    {
      SpelchLength length;
      g_autofree char *text = g_strdup_printf ("%s in", table[i].inch);
      g_assert_true (spelch_length_parse (text, SPELCH_UNIT_MM, &length, NULL));
      g_assert_cmpfloat_with_epsilon (length.mm, table[i].mm, 0.0005 + 1e-9);
    }
}

/* ---- Properties ---- */

/* Whatever is written reads back to within half of its last decimal, in every unit, style and decimal sign.
 */
static void
test_what_is_written_reads_back (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20240607);
  for (guint i = 0; i < 20000; i++)
    {
      double mm = g_rand_double_range (rand, -5000, 5000) * pow (10, g_rand_int_range (rand, -3, 2));
      SpelchUnit unit = g_rand_boolean (rand) ? SPELCH_UNIT_MM : SPELCH_UNIT_INCH;
      SpelchInchStyle style = g_rand_boolean (rand) ? SPELCH_INCH_FRACTION : SPELCH_INCH_DECIMAL;
      int decimals = g_rand_int_range (rand, 0, 4);
      char sign = g_rand_boolean (rand) ? '.' : ',';
      g_autofree char *text = spelch_length_format (mm, unit, style, decimals, sign);

      SpelchLength length;
      g_autoptr (GError) error = NULL;
      SpelchUnit other = unit == SPELCH_UNIT_MM ? SPELCH_UNIT_INCH : SPELCH_UNIT_MM;
      g_assert_true (spelch_length_parse (text, other, &length, &error));
      double step
          = unit == SPELCH_UNIT_MM ? pow (10, -decimals) : 25.4 * pow (10, -MIN (2 * decimals + 1, 4));
      double within = strchr (text, '/') != NULL ? 0.005 : step / 2;
      if (unit == SPELCH_UNIT_INCH && style == SPELCH_INCH_FRACTION)
        within = MAX (within, 0.005);
      g_assert_cmpfloat_with_epsilon (length.mm, mm, within + 1e-9);
    }
}

/* No words, however odd, crash the reader or get a number out of it that isn't finite and in range. */
static void
test_odd_words (void)
{
  static const char *const pieces[]
      = { "1",  "25", "200", "0",    ".",    ",",  "/", "-", " ",  NBSP, "½",
          "\"", "″",  "mm",  "inch", "\xc2", "\n", "e", "x", "64", "−",  NARROW };
  g_autoptr (GRand) rand = g_rand_new_with_seed (4242);
  guint read = 0;
  for (guint i = 0; i < 100000; i++)
    {
      g_autoptr (GString) words = g_string_new (NULL);
      for (gint n = g_rand_int_range (rand, 0, 8); n > 0; n--)
        g_string_append (words, pieces[g_rand_int_range (rand, 0, G_N_ELEMENTS (pieces))]);
      SpelchLength length = { .mm = NAN };
      g_autoptr (GError) error = NULL;
      if (spelch_length_parse (words->str, SPELCH_UNIT_MM, &length, &error))
        {
          read++;
          g_assert_true (fabs (length.mm) <= 100000);
          g_assert_cmpuint (strlen (length.typed), <, SPELCH_TYPED_SIZE);
          g_assert_nonnull (strstr (words->str, length.typed));
        }
      else
        g_assert_true (isnan (length.mm) && error->domain == SPELCH_LENGTH_ERROR);
    }
  /* enough of them are lengths for the check to mean something */
  g_assert_cmpuint (read, >, 5000);
}

/* "1,234" is right where the comma is decimal; elsewhere it may be thousands as well. */
static void
test_doubtful (void)
{
  static const struct
  {
    const char *typed;
    char sign;
    double mm; /* 0: asked about */
  } cases[] = {
    { "1,234", ',', 1.234 },  { "1.234", '.', 1.234 },    { "1,234", '.', 0 },
    { "1.234", ',', 0 },      { "12,500 mm", '.', 0 },    { "-2,100", '.', 0 },
    { "0,125", '.', 0.125 },  { "0.125 in", ',', 3.175 }, { "12,5", '.', 12.5 },
    { "12,50", '.', 12.5 },   { "1,2345", '.', 1.2345 },  { "1234,567", '.', 1234.567 },
    { "1,234 m", '.', 1234 }, { "1 234", '.', 1234 },     { "5/8", ',', 15.875 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      SpelchLength length = spelch_length_mm (-7);
      g_autoptr (GError) error = NULL;
      bool read = spelch_length_read (cases[i].typed, SPELCH_UNIT_MM, cases[i].sign, &length, &error);
      g_test_message ("%s with %c", cases[i].typed, cases[i].sign);
      g_assert_cmpint (read, ==, cases[i].mm != 0);
      if (read)
        g_assert_cmpfloat_with_epsilon (length.mm, cases[i].mm, 1e-9);
      else
        g_assert_error (error, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_AMBIGUOUS);
      g_assert_cmpfloat (read ? 0 : length.mm, ==, read ? 0 : -7);
    }
  SpelchLength length;
  g_autoptr (GError) error = NULL;
  g_assert_false (spelch_length_read ("2,100 mm", SPELCH_UNIT_MM, '.', &length, &error));
  g_assert_cmpstr (error->message, ==, "“2,100 mm” can be read in two ways; write 2100 mm, or 2.1 mm.");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/length/reading", test_reading);
  g_test_add_func ("/length/inch-is-exact", test_inch_is_exact);
  g_test_add_func ("/length/minus-nothing", test_minus_nothing);
  g_test_add_func ("/length/refusing", test_refusing);
  g_test_add_func ("/length/refusing-names-what-was-typed", test_refusing_names_what_was_typed);
  g_test_add_func ("/length/doubtful", test_doubtful);
  g_test_add_func ("/length/typed-is-kept", test_typed_is_kept);
  g_test_add_func ("/length/longest-typed", test_longest_typed);
  g_test_add_func ("/length/show", test_show);
  g_test_add_func ("/length/show-whole", test_show_whole);
  g_test_add_func ("/length/format", test_format);
  g_test_add_func ("/length/every-64th", test_every_64th);
  g_test_add_func ("/length/fraction-is-honest", test_fraction_is_honest);
  g_test_add_func ("/length/fraction-table", test_fraction_table);
  g_test_add_func ("/length/what-is-written-reads-back", test_what_is_written_reads_back);
  g_test_add_func ("/length/odd-words", test_odd_words);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fields of forms: what is written is read back, any unit and fraction is taken, and faults are said in the
 * form's own words.
 */
#include "bench/field.h"
#include "bench/typed-list.h"
#include "shop/machine.h"
#include "shop/bit.h"

#include <stddef.h>

static const char *const KINDS[] = { "Straight", "Up-cut", "Down-cut", "Compression", NULL };

static const SpelchField FIELDS[] = {
  { .kind = SPELCH_FIELD_HEADING, .label = "Sizes" },
  { SPELCH_FIELD_TEXT, "name", "Name", offsetof (SpelchBit, name), SPELCH_NAME_SIZE },
  { SPELCH_FIELD_LENGTH, "diameter", "Diameter", offsetof (SpelchBit, diameter) },
  { SPELCH_FIELD_LENGTH, "up_shear", "Up-shear", offsetof (SpelchBit, up_shear), .none = "none" },
  { SPELCH_FIELD_LENGTH, "cutting_length", "Cutting length", offsetof (SpelchBit, cutting_length) },
  { SPELCH_FIELD_NUMBER, "helix_deg", "Helix", offsetof (SpelchBit, helix_deg), .unit = "°" },
  { SPELCH_FIELD_NUMBER, "max_rpm", "Highest speed", offsetof (SpelchBit, max_rpm), .unit = "rpm",
    .none = "not marked" },
  { SPELCH_FIELD_WHOLE, "edges", "Flutes", offsetof (SpelchBit, edges) },
  { SPELCH_FIELD_CHOICE, "kind", "Kind", offsetof (SpelchBit, kind), .choices = KINDS },
  { SPELCH_FIELD_CHOICE, "hand", "Turns", offsetof (SpelchBit, hand), .choices = KINDS },
  { SPELCH_FIELD_FLAG, "coated", "Coated", offsetof (SpelchBit, coated) },
};

enum
{
  HEADING,
  NAME,
  DIAMETER,
  UP_SHEAR,
  CUTTING_LENGTH,
  HELIX,
  MAX_RPM,
  EDGES,
  KIND,
  HAND,
  COATED
};

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, ',' };
static const SpelchNumbers INCH = { SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, '.' };

static void
take (int field, const char *typed, const SpelchNumbers *numbers, SpelchBit *bit)
{
  g_autoptr (GError) error = NULL;
  bool taken = spelch_field_read (&FIELDS[field], typed, numbers, bit, &error);
  g_assert_no_error (error);
  g_assert_true (taken);
}

static void
refuse (int field, const char *typed)
{
  g_autoptr (GError) error = NULL;
  SpelchBit bit = { 0 }, before = bit;
  g_assert_false (spelch_field_read (&FIELDS[field], typed, &MM, &bit, &error));
  g_assert_nonnull (error);
  g_assert_true (g_str_has_suffix (error->message, ".") || g_str_has_suffix (error->message, "..."));
  g_assert_cmpmem (&bit, sizeof bit, &before, sizeof before);
}

static void
shows (int field, const SpelchBit *bit, const SpelchNumbers *numbers, const char *expected)
{
  g_autofree char *shown = spelch_field_write (&FIELDS[field], bit, numbers);
  g_assert_cmpstr (shown, ==, expected);
}

static void
test_lengths (void)
{
  SpelchBit bit = { 0 };
  take (DIAMETER, "1/4", &MM, &bit);
  g_assert_cmpfloat (bit.diameter.mm, ==, 6.35);
  shows (DIAMETER, &bit, &MM, "1/4");
  take (DIAMETER, "12,7 mm", &INCH, &bit);
  g_assert_cmpfloat (bit.diameter.mm, ==, 12.7);
  take (DIAMETER, "0.5", &INCH, &bit);
  g_assert_cmpfloat (bit.diameter.mm, ==, 12.7);
  take (DIAMETER, "8", &MM, &bit);
  shows (DIAMETER, &bit, &INCH, "0.315 in");
  shows (UP_SHEAR, &bit, &MM, "");
  take (UP_SHEAR, "5", &MM, &bit);
  take (UP_SHEAR, "  ", &MM, &bit);
  g_assert_cmpfloat (bit.up_shear.mm, ==, 0);
  take (DIAMETER, "12,700", &MM, &bit);
  g_assert_cmpfloat (bit.diameter.mm, ==, 12.7);
  refuse (DIAMETER, "12.700"); /* the comma is decimal here */
  refuse (DIAMETER, "");
  refuse (DIAMETER, "wide");
  refuse (DIAMETER, "1/0");
}

static void
test_numbers (void)
{
  SpelchBit bit = { 0 };
  take (HELIX, "29,5", &MM, &bit);
  g_assert_cmpfloat (bit.helix_deg, ==, 29.5);
  shows (HELIX, &bit, &MM, "29,5");
  shows (HELIX, &bit, &INCH, "29.5");
  take (HELIX, " 30 ° ", &MM, &bit);
  g_assert_cmpfloat (bit.helix_deg, ==, 30);
  take (MAX_RPM, "24 000", &MM, &bit);
  g_assert_cmpfloat (bit.max_rpm, ==, 24000);
  take (MAX_RPM,
        "18\xe2\x80\xaf"
        "000 rpm",
        &MM, &bit);
  g_assert_cmpfloat (bit.max_rpm, ==, 18000);
  take (MAX_RPM, "", &MM, &bit);
  g_assert_cmpfloat (bit.max_rpm, ==, 0);
  shows (MAX_RPM, &bit, &MM, "");
  take (EDGES, "3", &MM, &bit);
  g_assert_cmpint (bit.edges, ==, 3);
  take (MAX_RPM, "18 000,5", &MM, &bit);
  refuse (MAX_RPM, "18,000");
  refuse (MAX_RPM, "18.000 rpm");
  refuse (EDGES, "2,000");
  refuse (HELIX, "");
  refuse (HELIX, "steep");
  refuse (HELIX, "1.2.3");
  refuse (HELIX, "1e400");
  refuse (HELIX, "nan");
  refuse (HELIX, "0x1p3");
  refuse (EDGES, "2.5");
  refuse (EDGES, "99999999999");
}

static void
test_words (void)
{
  SpelchBit bit = { 0 };
  g_autofree char *long_name = g_strnfill (SPELCH_NAME_SIZE, 'x');
  take (NAME, "  Für Eiche ", &MM, &bit);
  g_assert_cmpstr (bit.name, ==, "Für Eiche");
  refuse (NAME, long_name);
  long_name[SPELCH_NAME_SIZE - 1] = '\0';
  take (NAME, long_name, &MM, &bit);
  g_assert_cmpstr (bit.name, ==, long_name);
  spelch_field_choose (&FIELDS[KIND], SPELCH_BIT_DOWN_CUT, &bit);
  g_assert_cmpint (bit.kind, ==, SPELCH_BIT_DOWN_CUT);
  g_assert_cmpuint (spelch_field_choice (&FIELDS[KIND], &bit), ==, SPELCH_BIT_DOWN_CUT);
  spelch_field_choose (&FIELDS[COATED], 1, &bit);
  g_assert_true (bit.coated);
  g_assert_false (bit.end_cutting);
}

static void
reads (const char *typed, const SpelchNumbers *numbers, const char *expected)
{
  g_autofree char *reading = spelch_field_reading (&FIELDS[DIAMETER], typed, numbers);
  g_assert_cmpstr (reading, ==, expected);
}

static void
test_readings (void)
{
  reads ("5/8", &MM, "= 15,875 mm");
  reads ("0.25", &INCH, "= 6.350 mm");
  reads ("1 ft", &MM, "= 304,800 mm");
  reads ("12,7", &MM, NULL);
  reads ("12,7 mm", &INCH, NULL);
  reads ("wide", &MM, NULL);
}

static const SpelchField DAY
    = { SPELCH_FIELD_TEXT, "sharpened",    "Sharpened on", offsetof (SpelchBit, sharpened),
        SPELCH_DATE_SIZE,  .is_past = true };

static bool
takes_day (int days)
{
  SpelchBit bit = { 0 };
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autoptr (GDateTime) then = g_date_time_add_days (now, days);
  g_autofree char *day = g_date_time_format (then, "%Y-%m-%d");
  g_autoptr (GError) error = NULL;
  bool taken = spelch_field_read (&DAY, day, &MM, &bit, &error);
  g_assert_cmpstr (bit.sharpened, ==, taken ? day : "");
  g_assert_true (taken || g_str_has_prefix (error->message, day));
  return taken;
}

/* What has happened can't lie in days to come. */
static void
test_days (void)
{
  SpelchBit bit = { 0 };
  g_assert_true (takes_day (0));
  g_assert_true (takes_day (-1));
  g_assert_false (takes_day (2));
  g_assert_false (takes_day (400));
  g_assert_true (spelch_field_read (&DAY, "", &MM, &bit, NULL));
  g_assert_false (spelch_field_read (&DAY, "yesterday", &MM, &bit, NULL));
  g_assert_true (spelch_field_read (&DAY, " 2026-5-3", &MM, &bit, NULL));
  g_assert_cmpstr (bit.sharpened, ==, "2026-05-03");
  g_autofree char *reading = spelch_field_reading (&DAY, "2026-5-3", &MM);
  g_assert_cmpstr (reading, ==, "= 2026-05-03");
  g_assert_null (spelch_field_reading (&DAY, "2026-05-03", &MM));
}

static void
says (const char *fault, const char *expected, int about)
{
  int at = -2;
  g_autofree char *said = spelch_fields_say (FIELDS, G_N_ELEMENTS (FIELDS), fault, &at);
  g_assert_cmpstr (said, ==, expected);
  g_assert_cmpint (at, ==, about);
}

static void
test_faults (void)
{
  says ("up_shear (15.9 mm) is longer than cutting_length (12 mm).",
        "“Up-shear” (15.9 mm) is longer than “Cutting length” (12 mm).", UP_SHEAR);
  says ("helix_deg is 0, but the kind is up-cut.", "“Helix” is 0, but the kind is up-cut.", HELIX);
  says ("up_shear is missing; measure it to where the flutes change hand.",
        "“Up-shear” is missing; measure it to where the flutes change hand.", UP_SHEAR);
  says ("kind (odd) isn't known.", "“Kind” (odd) isn't known.", KIND);
  says ("something else is wrong.", "something else is wrong.", -1);
}

/* ---- Lists: how people write several numbers after one another ---- */

static void
splits (const char *typed, const char *expected)
{
  g_auto (GStrv) words = spelch_typed_list_split (typed);
  g_autofree char *joined = g_strjoinv ("|", words);
  g_assert_cmpstr (joined, ==, expected);
}

static void
test_splitting (void)
{
  splits ("8000 12 000 16 000", "8000|12 000|16 000");
  splits ("8000; 12000; 16000", "8000|12000|16000");
  splits ("8000, 12000, 16000", "8000|12000|16000");
  splits ("8,5 9,5", "8,5|9,5");
  splits ("1/4 in 1/2 in 8 mm", "1/4 in|1/2 in|8 mm");
  splits ("1 1/4 in 12", "1 1/4 in|12");
  splits ("6 8 10 12", "6|8|10|12");
  splits ("800; 900", "800|900");
  splits ("  ", "");
  splits ("", "");
}

static const SpelchField LISTS[] = {
  { SPELCH_FIELD_NUMBERS, "steps_rpm", "Dial steps", G_STRUCT_OFFSET (SpelchMachine, steps_rpm),
    .size = SPELCH_MAX_STEPS, .count = G_STRUCT_OFFSET (SpelchMachine, n_steps), .unit = "rpm" },
  { SPELCH_FIELD_LENGTHS, "collets", "Collets", G_STRUCT_OFFSET (SpelchMachine, collets),
    .size = SPELCH_MAX_STEPS, .count = G_STRUCT_OFFSET (SpelchMachine, n_collets) },
};

static void
test_lists (void)
{
  SpelchMachine machine = { 0 };
  g_autoptr (GError) error = NULL;
  g_assert_true (spelch_field_read (&LISTS[0], "8000 12 000 16 000", &MM, &machine, &error));
  g_assert_cmpuint (machine.n_steps, ==, 3);
  g_assert_cmpfloat (machine.steps_rpm[1], ==, 12000);
  g_autofree char *steps = spelch_field_write (&LISTS[0], &machine, &MM);
  g_assert_cmpstr (steps, ==, "8000; 12000; 16000");
  g_assert_true (spelch_field_read (&LISTS[1], "1/4 in 8 mm", &MM, &machine, &error));
  g_assert_cmpuint (machine.n_collets, ==, 2);
  g_assert_cmpfloat (machine.collets[0].mm, ==, 6.35);
  g_autofree char *collets = spelch_field_write (&LISTS[1], &machine, &MM);
  g_assert_cmpstr (collets, ==, "1/4 in; 8 mm");
  g_assert_false (spelch_field_read (&LISTS[1], "1/4 in; wide", &MM, &machine, &error));
  g_assert_nonnull (error);
  g_assert_cmpuint (machine.n_collets, ==, 2);
  g_clear_error (&error);
  g_assert_false (spelch_field_read (&LISTS[0], "1;2;3;4;5;6;7;8;9;10;11;12;13", &MM, &machine, &error));
  g_assert_cmpuint (machine.n_steps, ==, 3);
  g_clear_error (&error);
  g_assert_true (spelch_field_read (&LISTS[0], "", &MM, &machine, &error));
  g_assert_cmpuint (machine.n_steps, ==, 0);
  int at = -2;
  g_autofree char *said = spelch_fields_say (LISTS, 2, "collets[1] (90 mm) must be 1 mm to 30 mm.", &at);
  g_assert_cmpstr (said, ==, "“Collets” 2 (90 mm) must be 1 mm to 30 mm.");
  g_assert_cmpint (at, ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/field/lengths", test_lengths);
  g_test_add_func ("/field/numbers", test_numbers);
  g_test_add_func ("/field/words-and-choices", test_words);
  g_test_add_func ("/field/readings", test_readings);
  g_test_add_func ("/field/faults", test_faults);
  g_test_add_func ("/field/splitting", test_splitting);
  g_test_add_func ("/field/lists", test_lists);
  g_test_add_func ("/field/days", test_days);
  return g_test_run ();
}

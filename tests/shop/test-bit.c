/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bits: their codes, what sharpening changes, and what is a fault.
 */
#include "samples.h"

#include <math.h>
#include <string.h>

/* The words that files use; changing one would break every file. */
static void
test_codes (void)
{
  g_assert_cmpstr (spelch_code_of (&SPELCH_BIT_KIND_CODES, SPELCH_BIT_STRAIGHT), ==, "straight");
  g_assert_cmpstr (spelch_code_of (&SPELCH_BIT_KIND_CODES, SPELCH_BIT_UP_CUT), ==, "up-cut");
  g_assert_cmpstr (spelch_code_of (&SPELCH_BIT_KIND_CODES, SPELCH_BIT_DOWN_CUT), ==, "down-cut");
  g_assert_cmpstr (spelch_code_of (&SPELCH_BIT_KIND_CODES, SPELCH_BIT_COMPRESSION), ==, "compression");
  g_assert_cmpstr (spelch_code_of (&SPELCH_HAND_CODES, SPELCH_HAND_LEFT), ==, "left");
  g_assert_cmpstr (spelch_code_of (&SPELCH_TOOL_MATERIAL_CODES, SPELCH_TOOL_HSS), ==, "hss");
  g_assert_cmpstr (spelch_code_of (&SPELCH_BEARING_CODES, SPELCH_BEARING_TIP), ==, "tip");
  g_assert_cmpstr (spelch_code_of (&SPELCH_WEAR_CODES, SPELCH_WEAR_DULL), ==, "dull");
  g_assert_cmpstr (spelch_code_of (&SPELCH_WEAR_CODES, SPELCH_WEAR_DULL + 1), ==, "");
  g_assert_cmpstr (spelch_code_of (&SPELCH_WEAR_CODES, -1), ==, "");
}

static void
test_codes_read_back (void)
{
  const SpelchCodes *tables[] = {
    &SPELCH_BIT_KIND_CODES, &SPELCH_HAND_CODES,         &SPELCH_TOOL_MATERIAL_CODES, &SPELCH_BEARING_CODES,
    &SPELCH_WEAR_CODES,     &SPELCH_FACE_CODES,         &SPELCH_MATERIAL_CODES,      &SPELCH_GRAIN_CODES,
    &SPELCH_CUT_KIND_CODES, &SPELCH_WALL_CODES,         &SPELCH_END_CODES,           &SPELCH_ENTRY_KIND_CODES,
    &SPELCH_DATUM_CODES,    &SPELCH_MACHINE_KIND_CODES, &SPELCH_SPOILBOARD_CODES,    &SPELCH_HOLD_CODES,
  };
  for (guint t = 0; t < G_N_ELEMENTS (tables); t++)
    for (guint i = 0; i < tables[t]->n; i++)
      {
        int value = -1;
        g_assert_true (spelch_code_read (tables[t], spelch_code_of (tables[t], (int)i), &value));
        g_assert_cmpint (value, ==, (int)i);
      }
  int value = 7;
  g_assert_false (spelch_code_read (&SPELCH_FACE_CODES, "c", &value));
  g_assert_false (spelch_code_read (&SPELCH_FACE_CODES, NULL, &value));
  g_assert_cmpint (value, ==, 7);
  g_autofree char *list = spelch_codes_list (&SPELCH_BIT_KIND_CODES);
  g_assert_cmpstr (list, ==, "straight, up-cut, down-cut, compression");
}

static void
test_today (void)
{
  SpelchBit bit = sample_bit ();
  g_assert_cmpfloat (spelch_bit_diameter_now (&bit), ==, 12.7);
  g_assert_cmpfloat (spelch_bit_up_shear_now (&bit), ==, 15.9);
  bit.sharpened_diameter = spelch_length_mm (12.5);
  bit.sharpened_up_shear = spelch_length_mm (15.2);
  g_assert_cmpfloat (spelch_bit_diameter_now (&bit), ==, 12.5);
  g_assert_cmpfloat (spelch_bit_up_shear_now (&bit), ==, 15.2);
}

static void
test_sound (void)
{
  SpelchBit bit = sample_bit ();
  assert_sound (spelch_bit_fault (&bit));

  SpelchBit down = { .id = "d", .kind = SPELCH_BIT_DOWN_CUT, .edges = 1, .helix_deg = 25 };
  down.diameter = down.shank = spelch_length_mm (3);
  down.cutting_length = spelch_length_mm (12);
  assert_sound (spelch_bit_fault (&down));

  SpelchBit straight = down;
  straight.kind = SPELCH_BIT_STRAIGHT;
  straight.helix_deg = 0;
  assert_sound (spelch_bit_fault (&straight));
}

/* The sentence has the wording that the header promises. */
static void
test_up_shear_too_long (void)
{
  SpelchBit bit = sample_bit ();
  bit.cutting_length = spelch_length_mm (12);
  g_autofree char *fault = spelch_bit_fault (&bit);
  g_assert_cmpstr (fault, ==, "up_shear (15.9 mm) is longer than cutting_length (12 mm).");
}

#define SPOIL(member_, value_)                                                                               \
  bit = sample_bit ();                                                                                       \
  bit.member_ = value_

static void
test_faults (void)
{
  SpelchBit bit;
  SPOIL (diameter.mm, 0);
  assert_fault (spelch_bit_fault (&bit), "diameter", "0 mm");
  SPOIL (diameter.mm, -6);
  assert_fault (spelch_bit_fault (&bit), "diameter", "-6 mm");
  SPOIL (diameter.mm, 61);
  assert_fault (spelch_bit_fault (&bit), "diameter", "61 mm");
  SPOIL (diameter.mm, NAN);
  assert_fault (spelch_bit_fault (&bit), "diameter", "not a number");
  SPOIL (shank.mm, INFINITY);
  assert_fault (spelch_bit_fault (&bit), "shank", "not a number");
  SPOIL (cutting_length.mm, 0);
  assert_fault (spelch_bit_fault (&bit), "cutting_length", "0 mm");
  SPOIL (overall_length.mm, 35);
  assert_fault (spelch_bit_fault (&bit), "overall_length", "35 mm");
  SPOIL (up_shear.mm, 0);
  assert_fault (spelch_bit_fault (&bit), "up_shear", "missing");
  SPOIL (sharpened_up_shear.mm, 36);
  assert_fault (spelch_bit_fault (&bit), "sharpened_up_shear", "36 mm");
  SPOIL (overlap.mm, 16);
  assert_fault (spelch_bit_fault (&bit), "overlap", "16 mm");
  SPOIL (edges, 0);
  assert_fault (spelch_bit_fault (&bit), "edges", "0");
  SPOIL (edges_up, 7);
  assert_fault (spelch_bit_fault (&bit), "edges_up", "7");
  SPOIL (helix_deg, 61);
  assert_fault (spelch_bit_fault (&bit), "helix_deg", "61°");
  SPOIL (helix_deg, 0);
  assert_fault (spelch_bit_fault (&bit), "helix_deg", "compression");
  SPOIL (sharpened_diameter.mm, 12.8);
  assert_fault (spelch_bit_fault (&bit), "sharpened_diameter", "12.8 mm");
  SPOIL (neck.mm, 40);
  assert_fault (spelch_bit_fault (&bit), "neck (40 mm)", "shank (12.7 mm)");
  SPOIL (uncut_centre.mm, 2);
  assert_fault (spelch_bit_fault (&bit), "uncut_centre", "2 mm");
  SPOIL (edge_material, SPELCH_TOOL_STEEL);
  assert_fault (spelch_bit_fault (&bit), "edge_material", "steel");
  SPOIL (max_rpm, 1e9);
  assert_fault (spelch_bit_fault (&bit), "max_rpm", "1000000000 rpm");
  SPOIL (price, -1);
  assert_fault (spelch_bit_fault (&bit), "price", "-1");
  SPOIL (metres_cut, -1);
  assert_fault (spelch_bit_fault (&bit), "metres_cut", "-1 m");
  SPOIL (wear, (SpelchWear)9);
  assert_fault (spelch_bit_fault (&bit), "wear", "new, sharp, worn, dull");
}

/* What belongs to a compression bit is refused on any other. */
static void
test_compression_only (void)
{
  SpelchBit bit = sample_bit ();
  bit.kind = SPELCH_BIT_UP_CUT;
  assert_fault (spelch_bit_fault (&bit), "up_shear", "15.9 mm");
  bit.up_shear.mm = 0;
  assert_sound (spelch_bit_fault (&bit));
  bit.overlap.mm = 1;
  assert_fault (spelch_bit_fault (&bit), "overlap", "1 mm");
  bit.overlap.mm = 0;
  bit.kind = SPELCH_BIT_STRAIGHT;
  assert_fault (spelch_bit_fault (&bit), "helix_deg", "30°");
}

static void
test_ids (void)
{
  SpelchBit bit = sample_bit ();
  static const char *const bad[] = { "Up", "-a", ".a", "a b", "a_b", "ä", "a/b", "a\xff" };
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_strlcpy (bit.id, bad[i], sizeof bit.id);
      assert_fault (spelch_bit_fault (&bit), "id", "letters");
    }
  bit.id[0] = '\0';
  assert_fault (spelch_bit_fault (&bit), "id", "empty");
  memset (bit.id, 'a', sizeof bit.id); /* not ended */
  assert_fault (spelch_bit_fault (&bit), "id", "63");
  g_strlcpy (bit.id, "up-cut-6.35x22", sizeof bit.id);
  assert_sound (spelch_bit_fault (&bit));
  g_strlcpy (bit.name, "Fräser \xc3", sizeof bit.name);
  assert_fault (spelch_bit_fault (&bit), "name", "UTF-8");
}

/* Leap years by the Gregorian rule: 2024 and 2000 are, 2023 and 2100 aren't. */
static void
test_dates (void)
{
  const char *const days[] = { "2024-02-29", "2000-02-29", "2026-12-31", "1999-01-01", "" };
  const char *const others[] = { "2023-02-29", "2100-02-29", "2026-13-01", "2026-04-31", "2026-00-10",
                                 "2026-10-00", "2026-1-10",  "26-10-10",   "2026/10/10", "2026-10-1x",
                                 "1899-12-31", "3000-01-01", "yesterday",  "+026-10-10", "2026-10--1" };
  SpelchBit bit = sample_bit ();
  for (guint i = 0; i < G_N_ELEMENTS (days); i++)
    {
      g_strlcpy (bit.sharpened, days[i], sizeof bit.sharpened);
      assert_sound (spelch_bit_fault (&bit));
    }
  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    {
      g_strlcpy (bit.sharpened, others[i], sizeof bit.sharpened);
      assert_fault (spelch_bit_fault (&bit), "sharpened", others[i]);
    }
}

/* The edge begins anew; what it cut before is remembered, and neither old measurements nor old dates stay. */
static void
test_renewed (void)
{
  SpelchBit bit = sample_bit ();
  bit.metres_cut = 120;
  bit.wear = SPELCH_WEAR_DULL;
  bit.sharpened_diameter = spelch_length_mm (12.5);
  g_assert_cmpstr (spelch_bit_edge_since (&bit), ==, "");
  SpelchBit sharp = spelch_bit_renew (&bit, SPELCH_RENEWAL_SHARPENED, "2026-05-31");
  assert_sound (spelch_bit_fault (&sharp));
  g_assert_cmpfloat (sharp.metres_cut, ==, 0);
  g_assert_cmpint (sharp.wear, ==, SPELCH_WEAR_SHARP);
  g_assert_cmpstr (sharp.sharpened, ==, "2026-05-31");
  g_assert_cmpfloat (sharp.sharpened_diameter.mm, ==, 0);
  g_assert_cmpuint (sharp.n_renewals, ==, 1);
  g_assert_cmpfloat (sharp.renewals[0].metres_cut, ==, 120);
  SpelchBit worn = spelch_bit_wear_on (&sharp, 7.5);
  SpelchBit fresh = spelch_bit_renew (&worn, SPELCH_RENEWAL_REPLACED, "2026-06-30");
  assert_sound (spelch_bit_fault (&fresh));
  g_assert_cmpint (fresh.wear, ==, SPELCH_WEAR_NEW);
  g_assert_cmpstr (fresh.sharpened, ==, "");
  g_assert_cmpstr (spelch_bit_edge_since (&fresh), ==, "2026-06-30");
  g_assert_cmpuint (fresh.n_renewals, ==, 2);
  g_assert_cmpfloat (fresh.renewals[1].metres_cut, ==, 7.5);
  g_assert_cmpint (fresh.renewals[1].kind, ==, SPELCH_RENEWAL_REPLACED);
  g_assert_cmpfloat (spelch_bit_wear_on (&fresh, -1).metres_cut, ==, 0);
}

static void
test_many_renewals (void)
{
  SpelchBit bit = sample_bit ();
  for (guint i = 0; i <= SPELCH_MAX_RENEWALS; i++)
    {
      bit.metres_cut = i;
      bit = spelch_bit_renew (&bit, SPELCH_RENEWAL_SHARPENED, "2026-05-31");
    }
  assert_sound (spelch_bit_fault (&bit));
  g_assert_cmpuint (bit.n_renewals, ==, SPELCH_MAX_RENEWALS);
  g_assert_cmpfloat (bit.renewals[0].metres_cut, ==, 1);
  g_assert_cmpfloat (bit.renewals[SPELCH_MAX_RENEWALS - 1].metres_cut, ==, SPELCH_MAX_RENEWALS);
  bit.renewals[3].metres_cut = -1;
  assert_fault (spelch_bit_fault (&bit), "renewals[3].metres_cut", "-1 m");
  bit.renewals[3].metres_cut = 0;
  g_strlcpy (bit.renewals[4].date, "2026-02-30", sizeof bit.renewals[4].date);
  assert_fault (spelch_bit_fault (&bit), "renewals[4].date", "2026-02-30");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bit/codes", test_codes);
  g_test_add_func ("/bit/codes-read-back", test_codes_read_back);
  g_test_add_func ("/bit/today", test_today);
  g_test_add_func ("/bit/sound", test_sound);
  g_test_add_func ("/bit/up-shear-too-long", test_up_shear_too_long);
  g_test_add_func ("/bit/faults", test_faults);
  g_test_add_func ("/bit/compression-only", test_compression_only);
  g_test_add_func ("/bit/ids", test_ids);
  g_test_add_func ("/bit/dates", test_dates);
  g_test_add_func ("/bit/renewed", test_renewed);
  g_test_add_func ("/bit/many-renewals", test_many_renewals);
  return g_test_run ();
}

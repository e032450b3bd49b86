/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks of the model's constants that have a source, typed here apart from data/model.json, and of the
 * starter bits.
 */
#include "published.h"

#include "files/shop-data.h"

#include <math.h>

#define PRACTICE "common practice, no source"
#define DOBIE                                                                                                \
  "Dobie and Wright 1972, in Briggs 1994, Forest Products Measurements and Conversion Factors, Table 7-1"
#define ASM "ASM Handbook vol. 2, cemented carbides (memory)"

static double
constant (double offset, double unused)
{
  return *(const double *)((const char *)spelch_shop_constants () + (gsize)offset);
}

static double
rupture_strength (double factor, double unused)
{
  return spelch_shop_constants ()->stress_carbide * factor;
}

static double
hand_feed_mark (double x, double y)
{
  return spelch_shop_constants ()->hand_feed_mark;
}

/* Up-shear of the compression bit of that diameter; the lone one with a tip no longer than @most. */
static double
up_shear (double diameter, double most)
{
  guint n = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  for (guint i = 0; i < n; i++)
    if (bits[i].kind == SPELCH_BIT_COMPRESSION && fabs (bits[i].diameter.mm - diameter) < 0.001
        && bits[i].up_shear.mm <= most)
      return bits[i].up_shear.mm;
  return 0;
}

/* Short-tip compression bits whose up-shear is not between 3 and 6 mm. */
static double
odd_short_tips (double x, double y)
{
  guint n = 0, odd = 0, found = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_has_prefix (bits[i].id, "short-tip"))
      {
        found++;
        odd += bits[i].up_shear.mm < 3 || bits[i].up_shear.mm > 6;
      }
  return found > 0 ? (double)odd : -1;
}

/* Bits whose shank is in neither series of usual shanks. */
static double
odd_shanks (double x, double y)
{
  const double series[] = { 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 3.175, 6.35, 9.525, 12.7, 19.05 };
  guint n = 0, odd = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  for (guint i = 0; i < n; i++)
    {
      bool usual = false;
      for (gsize j = 0; j < G_N_ELEMENTS (series); j++)
        usual |= fabs (bits[i].shank.mm - series[j]) < 1e-6;
      odd += usual ? 0 : 1;
    }
  return odd;
}

#define CONSTANT(what, source, kind, value, tolerance, member)                                               \
  {                                                                                                          \
    what, source, kind, value, tolerance, constant, G_STRUCT_OFFSET (SpelchConstants, member), 0             \
  }

static const PublishedCheck CHECKS[] = {
  CONSTANT ("friction of air-dry wood on steel at 4 m/s",
            "McKenzie and Karpovich 1968, Wood Sci. Technol. 2:139 (abstract)", PUBLISHED_MEASURED, 0.40, 0,
            friction),
  CONSTANT ("loose over solid volume, planer shavings, for wood", DOBIE, PUBLISHED_MEASURED, 4.00, 0,
            bulking_wood),
  CONSTANT ("loose over solid volume, sawdust, for fibreboard", DOBIE, PUBLISHED_MEASURED, 2.50, 0,
            bulking_board),
  CONSTANT ("fluted part as a round, of D", "Kops and Vo 1990, CIRP Annals 39:93 (abstract)",
            PUBLISHED_MEASURED, 0.80, 0, fluted_diameter),
  CONSTANT ("modulus of carbide with 3 to 25 % cobalt, 483 to 641 GPa, MPa", ASM, PUBLISHED_MEMORY, 562000,
            79000, modulus_carbide),
  CONSTANT ("modulus of tool steel, 190 to 210 GPa, MPa", "tool-steel data sheets, none named",
            PUBLISHED_MEMORY, 200000, 10000, modulus_steel),
  { "rupture strength of carbide with 6 % cobalt: four times our limit, MPa", ASM, PUBLISHED_MEMORY, 2000, 0,
    rupture_strength, 4, 0 },
  CONSTANT ("friction, laminate on a board, as laminated chipboard sliding on steel",
            "Kukla and others 2021, Wood Research 66(5):789 (abstract)", PUBLISHED_MEASURED, 0.25, 0,
            hold_friction_laminate),
  CONSTANT ("friction, raw wood on a board, as dry smooth wood on a hard smooth surface, 0.3 to 0.5",
            "USDA Wood Handbook, FPL-GTR-190, ch. 4", PUBLISHED_MEASURED, 0.4, 0.1, hold_friction_raw),
  { "diameter from which EN 847-1 covers a tool fed by hand, mm", "EN 847-1:2017, scope", PUBLISHED_MEASURED,
    16, 0, hand_feed_mark, 0, 0 },
  { "up-shear of a half-inch compression bit, mm", PRACTICE, PUBLISHED_PRACTICE, 15.9, 0.05, up_shear, 12.7,
    99 },
  { "up-shear of a quarter-inch compression bit, mm", PRACTICE, PUBLISHED_PRACTICE, 6.35, 0.05, up_shear,
    6.35, 99 },
  { "short-tip compression bits without 3 to 6 mm of up-shear", PRACTICE, PUBLISHED_PRACTICE, 0, 0,
    odd_short_tips, 0, 0 },
  { "bits with an unusual shank", "ISO 3338-1 (memory) and the inch sizes of the trade", PUBLISHED_MEMORY, 0,
    0, odd_shanks, 0, 0 },
};

const PublishedGroup PUBLISHED_CONSTANTS = { "constants", CHECKS, G_N_ELEMENTS (CHECKS) };

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/bit.h"

#include "shop/fault.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* From this helix on a bit has a shear of its own and isn't "straight" (the same bound as in the mechanics).
 */
#define STRAIGHT_HELIX_DEG 8.0

#define METRES_MOST 1e6

static const char *const bit_kinds[] = {
  [SPELCH_BIT_STRAIGHT] = "straight",
  [SPELCH_BIT_UP_CUT] = "up-cut",
  [SPELCH_BIT_DOWN_CUT] = "down-cut",
  [SPELCH_BIT_COMPRESSION] = "compression",
};
SPELCH_TABLE_HAS (bit_kinds, SPELCH_N_BIT_KINDS);
const SpelchCodes SPELCH_BIT_KIND_CODES = { N_ ("kind of bit"), bit_kinds, G_N_ELEMENTS (bit_kinds) };

static const char *const hands[] = {
  [SPELCH_HAND_RIGHT] = "right",
  [SPELCH_HAND_LEFT] = "left",
};
const SpelchCodes SPELCH_HAND_CODES = { N_ ("hand of cut"), hands, G_N_ELEMENTS (hands) };

static const char *const tool_materials[] = {
  [SPELCH_TOOL_CARBIDE] = "carbide",
  [SPELCH_TOOL_HSS] = "hss",
  [SPELCH_TOOL_STEEL] = "steel",
};
const SpelchCodes SPELCH_TOOL_MATERIAL_CODES
    = { N_ ("tool material"), tool_materials, G_N_ELEMENTS (tool_materials) };

static const char *const bearings[] = {
  [SPELCH_BEARING_NONE] = "none",
  [SPELCH_BEARING_SHANK] = "shank",
  [SPELCH_BEARING_TIP] = "tip",
};
const SpelchCodes SPELCH_BEARING_CODES = { N_ ("bearing"), bearings, G_N_ELEMENTS (bearings) };

static const char *const wears[] = {
  [SPELCH_WEAR_NEW] = "new",
  [SPELCH_WEAR_SHARP] = "sharp",
  [SPELCH_WEAR_WORN] = "worn",
  [SPELCH_WEAR_DULL] = "dull",
};
const SpelchCodes SPELCH_WEAR_CODES = { N_ ("wear"), wears, G_N_ELEMENTS (wears) };

static const char *const renewals[] = {
  [SPELCH_RENEWAL_SHARPENED] = "sharpened",
  [SPELCH_RENEWAL_REPLACED] = "replaced",
};
const SpelchCodes SPELCH_RENEWAL_CODES = { N_ ("renewal"), renewals, G_N_ELEMENTS (renewals) };

double
spelch_bit_diameter_now (const SpelchBit *bit)
{
  return bit->sharpened_diameter.mm > 0 ? bit->sharpened_diameter.mm : bit->diameter.mm;
}

double
spelch_bit_up_shear_now (const SpelchBit *bit)
{
  return bit->sharpened_up_shear.mm > 0 ? bit->sharpened_up_shear.mm : bit->up_shear.mm;
}

/* ---- The edge's life ---- */

const char *
spelch_bit_edge_since (const SpelchBit *bit)
{
  const char *since = bit->sharpened;
  for (guint i = 0; i < bit->n_renewals; i++)
    if (strcmp (bit->renewals[i].date, since) > 0)
      since = bit->renewals[i].date;
  return since;
}

SpelchBit
spelch_bit_renew (const SpelchBit *bit, SpelchRenewalKind kind, const char *date)
{
  SpelchBit renewed = *bit;
  SpelchRenewal renewal = { .kind = kind, .metres_cut = bit->metres_cut };
  bool sharpened = kind == SPELCH_RENEWAL_SHARPENED;
  g_strlcpy (renewal.date, date, sizeof renewal.date);
  if (renewed.n_renewals == SPELCH_MAX_RENEWALS)
    memmove (&renewed.renewals[0], &renewed.renewals[1], --renewed.n_renewals * sizeof renewal);
  renewed.renewals[renewed.n_renewals++] = renewal;
  renewed.metres_cut = 0;
  renewed.wear = sharpened ? SPELCH_WEAR_SHARP : SPELCH_WEAR_NEW;
  g_strlcpy (renewed.sharpened, sharpened ? date : "", sizeof renewed.sharpened);
  renewed.sharpened_diameter = renewed.sharpened_up_shear = spelch_length_mm (0);
  return renewed;
}

SpelchBit
spelch_bit_wear_on (const SpelchBit *bit, double metres)
{
  SpelchBit worn = *bit;
  worn.metres_cut = fmax (bit->metres_cut + metres, 0);
  return worn;
}

/* ---- Faults ---- */

static char *
fault_of_words (const SpelchBit *bit)
{
  return spelch_fault_id ("id", bit->id, false)
             ?: spelch_fault_text ("name", bit->name, sizeof bit->name)
             ?: spelch_fault_code ("kind", &SPELCH_BIT_KIND_CODES, (int)bit->kind)
             ?: spelch_fault_code ("hand", &SPELCH_HAND_CODES, (int)bit->hand)
             ?: spelch_fault_code ("edge_material", &SPELCH_TOOL_MATERIAL_CODES, (int)bit->edge_material)
             ?: spelch_fault_code ("body_material", &SPELCH_TOOL_MATERIAL_CODES, (int)bit->body_material)
             ?: spelch_fault_code ("bearing", &SPELCH_BEARING_CODES, (int)bit->bearing)
             ?: spelch_fault_code ("wear", &SPELCH_WEAR_CODES, (int)bit->wear)
             ?: spelch_fault_date ("sharpened", bit->sharpened, true);
}

static char *
fault_of_bounds (const SpelchBit *bit)
{
  const SpelchBounds bounds[] = {
    { "diameter", "mm", bit->diameter.mm, 1, 60 },
    { "shank", "mm", bit->shank.mm, 1, 30 },
    { "cutting_length", "mm", bit->cutting_length.mm, 0.5, 200 },
    { "overall_length", "mm", bit->overall_length.mm, 5, 400, true },
    { "up_shear", "mm", bit->up_shear.mm, 0, 200 },
    { "overlap", "mm", bit->overlap.mm, 0, 50 },
    { "neck", "mm", bit->neck.mm, 0.5, 60, true },
    { "edges", "", bit->edges, 1, 6 },
    { "edges_up", "", bit->edges_up, 1, 6, true },
    { "helix_deg", "°", bit->helix_deg, 0, 60 },
    { "rake_deg", "°", bit->rake_deg, -20, 45 },
    { "uncut_centre", "mm", bit->uncut_centre.mm, 0, 60 },
    { "end_hollow", "mm", bit->end_hollow.mm, 0, 30 },
    { "max_rpm", "rpm", bit->max_rpm, 1000, 100000, true },
    { "price", "", bit->price, 0, 1e6 },
    { "metres_cut", "m", bit->metres_cut, 0, METRES_MOST },
    { "sharpened_diameter", "mm", bit->sharpened_diameter.mm, 0.5, 60, true },
    { "sharpened_up_shear", "mm", bit->sharpened_up_shear.mm, 0.1, 200, true },
  };
  return spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
}

/* "up_shear (15.9 mm) is longer than cutting_length (12 mm)." */
static char *
fault_of_longer (const char *member, double mm, const char *limit, double limit_mm)
{
  if (mm <= limit_mm)
    return NULL;
  g_autofree char *value = spelch_fault_number (mm, "mm");
  g_autofree char *most = spelch_fault_number (limit_mm, "mm");
  return g_strdup_printf (_ ("%s (%s) is longer than %s (%s)."), member, value, limit, most);
}

static char *
fault_of_wider (const char *member, double mm, double diameter_mm)
{
  if (mm <= diameter_mm)
    return NULL;
  g_autofree char *value = spelch_fault_number (mm, "mm");
  g_autofree char *most = spelch_fault_number (diameter_mm, "mm");
  return g_strdup_printf (_ ("%s (%s) is wider than diameter (%s)."), member, value, most);
}

static char *
fault_of_sizes (const SpelchBit *bit)
{
  if (bit->overall_length.mm > 0 && bit->cutting_length.mm >= bit->overall_length.mm)
    {
      g_autofree char *cutting = spelch_fault_number (bit->cutting_length.mm, "mm");
      g_autofree char *overall = spelch_fault_number (bit->overall_length.mm, "mm");
      return g_strdup_printf (_ ("cutting_length (%s) leaves no shank in overall_length (%s)."), cutting,
                              overall);
    }
  if (bit->neck.mm > MAX (bit->shank.mm, bit->diameter.mm))
    {
      g_autofree char *neck = spelch_fault_number (bit->neck.mm, "mm");
      g_autofree char *shank = spelch_fault_number (bit->shank.mm, "mm");
      g_autofree char *diameter = spelch_fault_number (bit->diameter.mm, "mm");
      return g_strdup_printf (_ ("neck (%s) is thicker than both shank (%s) and diameter (%s)."), neck, shank,
                              diameter);
    }
  return fault_of_wider ("sharpened_diameter", bit->sharpened_diameter.mm, bit->diameter.mm)
             ?: fault_of_wider ("uncut_centre", bit->uncut_centre.mm, bit->diameter.mm);
}

static char *
fault_of_end (const SpelchBit *bit)
{
  if (bit->edge_material == SPELCH_TOOL_STEEL)
    return g_strdup (_ ("edge_material (steel) can only be the body of a bit; edges are carbide or hss."));
  if (!bit->end_cutting || bit->uncut_centre.mm == 0)
    return NULL;
  g_autofree char *centre = spelch_fault_number (bit->uncut_centre.mm, "mm");
  return g_strdup_printf (_ ("uncut_centre (%s) must be 0 on a bit that is end_cutting."), centre);
}

static char *
only_on_compression (const char *member, double mm)
{
  if (mm == 0)
    return NULL;
  g_autofree char *value = spelch_fault_number (mm, "mm");
  return g_strdup_printf (_ ("%s (%s) stands only on a compression bit."), member, value);
}

static char *
fault_of_turn_over (const SpelchBit *bit)
{
  if (bit->kind != SPELCH_BIT_COMPRESSION)
    return only_on_compression ("up_shear", bit->up_shear.mm)
               ?: only_on_compression ("overlap", bit->overlap.mm)
               ?: only_on_compression ("sharpened_up_shear", bit->sharpened_up_shear.mm);
  if (bit->up_shear.mm == 0)
    return g_strdup (_ ("up_shear is missing; measure it on the bit, from the tip to where the flutes change "
                        "hand."));
  return fault_of_longer ("up_shear", bit->up_shear.mm, "cutting_length", bit->cutting_length.mm)
             ?: fault_of_longer ("sharpened_up_shear", bit->sharpened_up_shear.mm, "cutting_length",
                                 bit->cutting_length.mm)
             ?: fault_of_longer ("overlap", bit->overlap.mm, "up_shear", spelch_bit_up_shear_now (bit));
}

static char *
fault_of_helix (const SpelchBit *bit)
{
  if (bit->kind == SPELCH_BIT_STRAIGHT && bit->helix_deg >= STRAIGHT_HELIX_DEG)
    {
      g_autofree char *helix = spelch_fault_number (bit->helix_deg, "°");
      return g_strdup_printf (
          _ ("helix_deg (%s) is too much for a straight bit; is it an up-cut or a down-cut "
             "bit?"),
          helix);
    }
  if (bit->kind != SPELCH_BIT_STRAIGHT && bit->helix_deg == 0)
    return g_strdup_printf (_ ("helix_deg is 0, but the kind is %s; a bit without helix is straight."),
                            spelch_code_of (&SPELCH_BIT_KIND_CODES, (int)bit->kind));
  return NULL;
}

static char *
fault_of_renewals (const SpelchBit *bit)
{
  for (guint i = 0; i < bit->n_renewals; i++)
    {
      const SpelchRenewal *renewal = &bit->renewals[i];
      g_autofree char *date = g_strdup_printf ("renewals[%u].date", i);
      g_autofree char *kind = g_strdup_printf ("renewals[%u].kind", i);
      g_autofree char *metres = g_strdup_printf ("renewals[%u].metres_cut", i);
      char *fault = spelch_fault_date (date, renewal->date, false)
                        ?: spelch_fault_code (kind, &SPELCH_RENEWAL_CODES, (int)renewal->kind)
                        ?: spelch_fault_bounds (
                            &(SpelchBounds){ metres, "m", renewal->metres_cut, 0, METRES_MOST }, 1);
      if (fault != NULL)
        return fault;
    }
  return NULL;
}

char *
spelch_bit_fault (const SpelchBit *bit)
{
  return fault_of_words (bit)
             ?: fault_of_bounds (bit)
             ?: fault_of_sizes (bit)
             ?: fault_of_end (bit)
             ?: fault_of_turn_over (bit)
             ?: fault_of_helix (bit)
             ?: fault_of_renewals (bit);
}

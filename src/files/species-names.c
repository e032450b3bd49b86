/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/species-names.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static const char *const NAMES[] = {
  N_ ("Sugar maple (hard maple)"),
  N_ ("Red maple (soft maple)"),
  N_ ("Silver maple (soft maple)"),
  N_ ("Bigleaf maple"),
  N_ ("White oak"),
  N_ ("Northern red oak"),
  N_ ("Black walnut"),
  N_ ("Black cherry"),
  N_ ("White ash"),
  N_ ("Yellow birch"),
  N_ ("Paper birch"),
  N_ ("Yellow-poplar"),
  N_ ("American beech"),
  N_ ("Shagbark hickory"),
  N_ ("Mockernut hickory"),
  N_ ("Pignut hickory"),
  N_ ("Pecan hickory"),
  N_ ("American basswood"),
  N_ ("Red alder"),
  N_ ("Sweetgum"),
  N_ ("Eastern white pine"),
  N_ ("Ponderosa pine"),
  N_ ("Sugar pine"),
  N_ ("Loblolly pine (southern pine)"),
  N_ ("Longleaf pine (southern pine)"),
  N_ ("Shortleaf pine (southern pine)"),
  N_ ("Slash pine (southern pine)"),
  N_ ("Douglas-fir (coast)"),
  N_ ("Douglas-fir (interior west)"),
  N_ ("Sitka spruce"),
  N_ ("Western redcedar"),
  N_ ("Redwood (old-growth)"),
  N_ ("Redwood (young-growth)"),
  N_ ("Eastern redcedar"),
  N_ ("Black ash"),
  N_ ("Green ash"),
  N_ ("Oregon ash"),
  N_ ("Quaking aspen"),
  N_ ("Sweet birch"),
  N_ ("Butternut"),
  N_ ("American chestnut"),
  N_ ("Black cottonwood"),
  N_ ("Eastern cottonwood"),
  N_ ("American elm"),
  N_ ("Slippery elm"),
  N_ ("Hackberry"),
  N_ ("Shellbark hickory"),
  N_ ("Black locust"),
  N_ ("Cucumbertree magnolia"),
  N_ ("Black maple"),
  N_ ("Black oak (red oak group)"),
  N_ ("Cherrybark oak (red oak group)"),
  N_ ("Southern red oak"),
  N_ ("Bur oak (white oak group)"),
  N_ ("Post oak (white oak group)"),
  N_ ("Swamp white oak"),
  N_ ("American sycamore"),
  N_ ("Black tupelo"),
  N_ ("Baldcypress"),
  N_ ("Incense cedar"),
  N_ ("Port-Orford cedar"),
  N_ ("Yellow (Alaska) cedar"),
  N_ ("Douglas-fir (interior north)"),
  N_ ("Balsam fir"),
  N_ ("White fir"),
  N_ ("Western hemlock"),
  N_ ("Western larch"),
  N_ ("Jack pine"),
  N_ ("Lodgepole pine"),
  N_ ("Red pine"),
  N_ ("Virginia pine"),
  N_ ("Engelmann spruce"),
  N_ ("Red spruce"),
  N_ ("White spruce"),
  N_ ("Tamarack"),
  N_ ("Mahogany, true"),
  N_ ("Mahogany, African"),
  N_ ("Teak"),
  N_ ("Sapele"),
  N_ ("Dark red meranti"),
  N_ ("Light red meranti"),
  N_ ("Okoume"),
  N_ ("Limba"),
  N_ ("Obeche"),
  N_ ("Birch, European / Baltic"),
};

const char *const *
spelch_species_names (guint *n)
{
  *n = G_N_ELEMENTS (NAMES);
  return NAMES;
}

const SpelchSpecies *
spelch_species_with_id (const char *id)
{
  guint n = 0;
  const SpelchSpecies *species = spelch_shop_species (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (species[i].id, id))
      return &species[i];
  return NULL;
}

const char *
spelch_species_name (const char *id)
{
  const SpelchSpecies *species = spelch_species_with_id (id);
  return species == NULL ? id : _ (species->name);
}

/* As names are compared: without capitals, with spaces for hyphens. */
static char *
plain (const char *name)
{
  g_autofree char *normal = g_utf8_normalize (name, -1, G_NORMALIZE_ALL);
  char *folded = g_utf8_casefold (normal == NULL ? "" : normal, -1);
  return g_strstrip (g_strdelimit (folded, "-", ' '));
}

/* Whether @plain_typed is @name, or @name up to its brackets. */
static bool
is_called (const char *name, const char *plain_typed)
{
  g_autofree char *whole = plain (name);
  if (g_str_equal (whole, plain_typed))
    return true;
  char *bracket = strstr (whole, " (");
  if (bracket != NULL)
    *bracket = '\0';
  return bracket != NULL && g_str_equal (whole, plain_typed);
}

const SpelchSpecies *
spelch_species_find (const char *typed)
{
  guint n = 0, found = 0;
  const SpelchSpecies *species = spelch_shop_species (&n), *it = NULL;
  g_autofree char *wanted = plain (typed);
  for (guint i = 0; i < n; i++)
    {
      const char *names[] = { species[i].id, species[i].name, species[i].latin, _ (species[i].name) };
      bool called = false;
      for (guint k = 0; k < G_N_ELEMENTS (names) && !called; k++)
        called = is_called (names[k], wanted);
      if (!called)
        continue;
      it = &species[i];
      found++;
    }
  return found == 1 ? it : NULL;
}

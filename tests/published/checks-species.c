/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks of the species table against the Wood Handbook.
 */
#include "published.h"

#include "files/shop-data.h"
#include "wood-handbook.h"

#include <math.h>

#define HANDBOOK   "USDA Wood Handbook, FPL-GTR-190, "
#define REGRESSION HANDBOOK "Table 5-11a (coefficients from memory) on Table 5-3a"

static const SpelchSpecies *
species_named (const char *name)
{
  guint n = 0;
  const SpelchSpecies *all = spelch_shop_species (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (all[i].name, name))
      return &all[i];
  return NULL;
}

/* 1, and a word about it, when ours is further from theirs than that. */
static int
differs (const char *name, const char *property, double theirs, double ours, double within)
{
  if (fabs (theirs - ours) <= within)
    return 0;
  g_test_message ("%s, %s: %g in the handbook, ours %g", name, property, theirs, ours);
  return 1;
}

static double
domestic_differences (double x, double y)
{
  int wrong = 0;
  for (gsize i = 0; i < HANDBOOK_N_DOMESTIC; i++)
    {
      const HandbookRow *row = &HANDBOOK_DOMESTIC[i];
      const SpelchSpecies *ours = species_named (row->name);
      g_assert_nonnull (ours);
      wrong += differs (row->name, "G", row->specific_gravity, ours->specific_gravity, 1e-9);
      wrong += differs (row->name, "GPa", row->modulus_gpa, ours->modulus_gpa, 1e-9);
      wrong += differs (row->name, "shear", row->shear_mpa, ours->shear_mpa, 1e-9);
      wrong += differs (row->name, "compression", row->compression_mpa, ours->compression_mpa, 1e-9);
      wrong += differs (row->name, "tension", row->tension_mpa, ours->tension_mpa, 1e-9);
      wrong += differs (row->name, "hardness", row->hardness_n, ours->hardness_n, 1e-9);
    }
  return wrong;
}

static double
more_differences (double x, double y)
{
  int wrong = 0;
  for (gsize i = 0; i < HANDBOOK_N_MORE; i++)
    {
      const HandbookRow *row = &HANDBOOK_MORE[i];
      const SpelchSpecies *ours = species_named (row->name);
      g_assert_nonnull (ours);
      wrong += differs (row->name, "G", row->specific_gravity, ours->specific_gravity, 1e-9);
      wrong += differs (row->name, "hardness", row->hardness_n, ours->hardness_n, 1e-9);
    }
  return wrong;
}

/* Every row with a figure is one of those typed here. */
static double
unchecked_rows (double x, double y)
{
  guint n = 0, filled = 0;
  const SpelchSpecies *all = spelch_shop_species (&n);
  for (guint i = 0; i < n; i++)
    filled += all[i].specific_gravity > 0 ? 1 : 0;
  return (double)filled - (double)(HANDBOOK_N_DOMESTIC + HANDBOOK_N_MORE + HANDBOOK_N_IMPORTED);
}

/* Green-volume gravity to that at 12 %: G / (1 - 0.265 G (1 - 12/30)). */
static double
imported_differences (double x, double y)
{
  int wrong = 0;
  for (gsize i = 0; i < HANDBOOK_N_IMPORTED; i++)
    {
      const HandbookImported *row = &HANDBOOK_IMPORTED[i];
      const SpelchSpecies *ours = species_named (row->name);
      double gravity = row->basic_gravity / (1 - 0.265 * row->basic_gravity * (1 - 12 / 30.0));
      g_assert_nonnull (ours);
      wrong += differs (row->name, "G", gravity, ours->specific_gravity, 0.0005001);
      wrong += differs (row->name, "GPa", row->modulus_gpa, ours->modulus_gpa, 1e-9);
      wrong += differs (row->name, "shear", row->shear_mpa, ours->shear_mpa, 1e-9);
      wrong += differs (row->name, "hardness", row->hardness_n, ours->hardness_n, 1e-9);
    }
  return wrong;
}

/* A figure in pounds and inches, converted, against ours: both were rounded. */
static int
inch_differs (const char *name, const char *property, double theirs, double unit, double theirs_rounded,
              double ours, double ours_rounded)
{
  if (theirs <= 0)
    return 0;
  return differs (name, property, theirs * unit, ours, theirs_rounded * unit / 2 + ours_rounded / 2 + 1e-9);
}

static double
inch_differences (double x, double y)
{
  const double psi = 4.4482216152605 / (25.4 * 25.4), lbf = 4.4482216152605; /* MPa and N, by definition */
  int wrong = 0;
  for (gsize i = 0; i < HANDBOOK_N_INCH; i++)
    {
      const HandbookInchRow *row = &HANDBOOK_INCH[i];
      const SpelchSpecies *ours = species_named (row->name);
      g_assert_nonnull (ours);
      wrong += inch_differs (row->name, "modulus", row->modulus, psi * 1000, 0.01, ours->modulus_gpa, 0.1);
      wrong += inch_differs (row->name, "compression", row->compression, psi, 10, ours->compression_mpa, 0.1);
      wrong += inch_differs (row->name, "shear", row->shear, psi, 10, ours->shear_mpa, 0.1);
      wrong += inch_differs (row->name, "tension", row->tension, psi, 10, ours->tension_mpa, 0.1);
      wrong += inch_differs (row->name, "hardness", row->hardness, lbf, 10, ours->hardness_n, 100);
    }
  return wrong;
}

/* ---- Table 5-11: property = A G^B at 12 % ---- */

typedef enum
{
  MODULUS,
  COMPRESSION,
  SHEAR,
  TENSION,
  HARDNESS,
} Property;

/* A and B for softwood, then for hardwood; MPa and N. */
static const double POWERS[][4] = {
  [MODULUS] = { 20500, 0.84, 16500, 0.70 }, [COMPRESSION] = { 16.5, 1.57, 21.6, 2.09 },
  [SHEAR] = { 16.6, 0.85, 21.9, 1.13 },     [TENSION] = { 6.0, 1.11, 10.1, 1.30 },
  [HARDNESS] = { 8590, 1.5, 15300, 2.09 },
};

static double
property_of (const SpelchSpecies *species, Property property)
{
  const double values[] = { species->modulus_gpa * 1000, species->compression_mpa, species->shear_mpa,
                            species->tension_mpa, species->hardness_n };
  return values[property];
}

/* Geometric mean of the table's figures over the power of G, domestic rows. */
static double
ratio_to_power (double property, double softwood)
{
  guint n = 0, counted = 0;
  const SpelchSpecies *all = spelch_shop_species (&n);
  const double *power = &POWERS[(Property)property][softwood > 0 ? 0 : 2];
  double sum = 0;
  for (guint i = 0; i < n; i++)
    {
      double value = property_of (&all[i], (Property)property);
      if (all[i].imported || all[i].softwood != (softwood > 0) || value <= 0)
        continue;
      sum += log (value / (power[0] * pow (all[i].specific_gravity, power[1])));
      counted++;
    }
  return counted > 0 ? exp (sum / counted) : 0;
}

#define RATIO(property, name, softwood, kind)                                                                \
  {                                                                                                          \
    name " of " kind " over the power of G, mean ratio", REGRESSION, PUBLISHED_MEMORY, 1, 0.025,             \
        ratio_to_power, property, softwood                                                                   \
  }

static const PublishedCheck CHECKS[] = {
  { "species typed apart: figures that differ, 34 species", HANDBOOK "Table 5-3a", PUBLISHED_MEASURED, 0, 0,
    domestic_differences, 0, 0 },
  { "41 species more: gravities and hardnesses that differ", HANDBOOK "Table 5-3a", PUBLISHED_MEASURED, 0, 0,
    more_differences, 0, 0 },
  { "imported species: figures that differ, 9 species", HANDBOOK "Table 5-5a, eq. 4-11 (sapele from memory)",
    PUBLISHED_MEASURED, 0, 0, imported_differences, 0, 0 },
  { "species with figures that none of these check", HANDBOOK "ch. 5", PUBLISHED_MEASURED, 0, 0,
    unchecked_rows, 0, 0 },
  { "inch-pound figures, converted, that differ beyond rounding, 15 species", HANDBOOK "Table 5-3b",
    PUBLISHED_MEASURED, 0, 0, inch_differences, 0, 0 },
  RATIO (MODULUS, "modulus", 1, "softwood"),
  RATIO (MODULUS, "modulus", 0, "hardwood"),
  RATIO (COMPRESSION, "compression across", 1, "softwood"),
  RATIO (COMPRESSION, "compression across", 0, "hardwood"),
  RATIO (SHEAR, "shear", 1, "softwood"),
  RATIO (SHEAR, "shear", 0, "hardwood"),
  RATIO (TENSION, "tension across", 1, "softwood"),
  RATIO (TENSION, "tension across", 0, "hardwood"),
  RATIO (HARDNESS, "hardness", 1, "softwood"),
  RATIO (HARDNESS, "hardness", 0, "hardwood"),
};

const PublishedGroup PUBLISHED_SPECIES = { "species", CHECKS, G_N_ELEMENTS (CHECKS) };

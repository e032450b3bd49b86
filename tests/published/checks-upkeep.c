/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks of the strength of tabs and of the wear of edges.
 */
#include "published.h"

#include "files/shop-data.h"
#include "mechanics/chip.h"
#include "mechanics/holding.h"
#include "mechanics/wear.h"

#include <gsl/gsl_cdf.h>
#include <math.h>

#define PRACTICE "common practice, no source"
#define PLYWOOD  "USDA Wood Handbook, FPL-GTR-282, Table 12-2 (read in a copy)"
#define NORMAL   "normal distribution, by GSL"
#define HANDBOOK "USDA Wood Handbook, FPL-GTR-190, Table 5-11 (memory)"
#define SCATTER  "USDA Wood Handbook, FPL-GTR-190, Table 5-6 (read in a copy)"

static double
constant (double offset, double unused)
{
  return *(const double *)((const char *)spelch_shop_constants () + (gsize)offset);
}

/* How many in a hundred are weaker than what is counted, strengths being normally distributed. */
static double
weaker_percent (double scatter, double unused)
{
  double low = spelch_holding_low (1, scatter, spelch_shop_constants ()->tab_quantile);
  return 100 * gsl_cdf_gaussian_P (low - 1, scatter);
}

/* Tabs of plywood in N: number, and width times thickness. */
static double
plywood_tabs (double count, double section)
{
  const SpelchConstants *k = spelch_shop_constants ();
  SpelchTabStrength tabs = { count * section, k->tab_shear_plywood, k->tab_lift_wood, k->tab_scatter_panel };
  return spelch_holding_tabs (&tabs, k->tab_quantile);
}

/* The formula for wood of no told species over the mean of the table's species. */
static double
shear_formula_over_table (double soft, double unused)
{
  const SpelchConstants *k = spelch_shop_constants ();
  guint n = 0;
  const SpelchSpecies *species = spelch_shop_species (&n);
  double ratios = 0;
  int used = 0;
  for (guint i = 0; i < n; i++)
    if (species[i].softwood == (soft > 0) && !species[i].imported && species[i].shear_mpa > 0)
      {
        double gravity = species[i].specific_gravity;
        double formula = soft > 0 ? k->shear_softwood * pow (gravity, k->shear_softwood_power)
                                  : k->shear_hardwood * pow (gravity, k->shear_hardwood_power);
        ratios += formula / species[i].shear_mpa;
        used++;
      }
  return used > 0 ? ratios / used : 0;
}

/* m of edge path for a m of cut; a_e = D. */
static double
slot_path (double diameter, double feed_per_tooth)
{
  return spelch_wear_path (spelch_chip_arc (diameter, diameter), 2, feed_per_tooth);
}

/* What an edge sweeps is what is removed: a mean chip of h_m along the edge path takes the section a_e. */
static double
swept_section (double engaged, double feed_per_tooth)
{
  double arc = spelch_chip_arc (12, engaged);
  return 3 * spelch_wear_path (arc, 3, feed_per_tooth) * spelch_chip_mean (feed_per_tooth, 12, engaged);
}

#define CONSTANT(what, source, kind, value, tolerance, member)                                               \
  {                                                                                                          \
    what, source, kind, value, tolerance, constant, G_STRUCT_OFFSET (SpelchConstants, member), 0             \
  }

static const PublishedCheck CHECKS[] = {
  CONSTANT ("rail shear of plywood, six species from 3.8 to 5.6 MPa: the lowest", PLYWOOD, PUBLISHED_MEASURED,
            3.8, 0, tab_shear_plywood),
  CONSTANT ("glue-line shear of plywood, six species from 1.3 to 2.7 MPa: the lowest", PLYWOOD,
            PUBLISHED_MEASURED, 1.3, 0, tab_lift_wood),
  CONSTANT ("scatter of shear along the grain, clear wood", SCATTER, PUBLISHED_MEASURED, 0.14, 0,
            tab_scatter_solid),
  { "tabs weaker than what is counted, scatter 0.14, per cent", NORMAL, PUBLISHED_IDENTITY, 5, 0.01,
    weaker_percent, 0.14, 0 },
  { "tabs weaker than what is counted, scatter 0.2, per cent", NORMAL, PUBLISHED_IDENTITY, 5, 0.01,
    weaker_percent, 0.2, 0 },
  { "four plywood tabs of 6 mm by 3 mm, N", "worked by hand: 72 x 3.8 x 0.671", PUBLISHED_IDENTITY, 183.5856,
    1e-4, plywood_tabs, 4, 18 },
  { "shear by specific gravity over the table, hardwoods", HANDBOOK, PUBLISHED_MEMORY, 1, 0.02,
    shear_formula_over_table, 0, 0 },
  { "shear by specific gravity over the table, softwoods", HANDBOOK, PUBLISHED_MEMORY, 1, 0.02,
    shear_formula_over_table, 1, 0 },
  { "edge path per metre of slot, D 6.35, f_z 0.1, two edges, m", "worked by hand: 5000 turns of 9.9746 mm",
    PUBLISHED_IDENTITY, 49.8728, 1e-4, slot_path, 6.35, 0.1 },
  { "the same at twice the feed per tooth", "worked by hand: half", PUBLISHED_IDENTITY, 24.9364, 1e-4,
    slot_path, 6.35, 0.2 },
  { "edge path times mean chip, a_e 3 of D 12, mm", "volume removed is volume swept", PUBLISHED_IDENTITY, 3,
    1e-9, swept_section, 3, 0.2 },
  { "the same in a slot, mm", "volume removed is volume swept", PUBLISHED_IDENTITY, 12, 1e-9, swept_section,
    12, 0.35 },
  CONSTANT ("life of coated over uncoated carbide", PRACTICE, PUBLISHED_PRACTICE, 4, 0, life_coated),
};

const PublishedGroup PUBLISHED_UPKEEP = { "upkeep", CHECKS, G_N_ELEMENTS (CHECKS) };

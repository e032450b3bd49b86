/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks of the starter boards, and of inches.
 */
#include "published.h"

#include "files/shop-data.h"
#include "shop/length.h"

#include <math.h>

#define MILLS    "dimension sheets of two birch plywood mills, which agree (read in copies)"
#define ONE_MILL "dimension sheet of a birch plywood mill (read in a copy)"
#define EN_315   "EN 315, sanded plywood (formula from memory)"
#define INCH     "1 in = 25.4 mm, by definition"

static const SpelchBoard *
board_of (const char *start, double nominal)
{
  guint n = 0;
  const SpelchBoard *all = spelch_shop_boards (&n);
  for (guint i = 0; i < n; i++)
    if (g_str_has_prefix (all[i].id, start) && fabs (all[i].nominal.mm - nominal) < 1e-6)
      return &all[i];
  g_test_message ("no board %s of %g mm", start, nominal);
  return NULL;
}

static double
plies (double nominal, double unused)
{
  const SpelchBoard *board = board_of ("birch-ply", nominal);
  return board != NULL ? board->n_layers : 0;
}

static double
density (double nominal, double unused)
{
  const SpelchBoard *board = board_of ("birch-ply", nominal);
  return board != NULL ? board->density_kg_m3 : 0;
}

static double
thickest (double nominal, double unused)
{
  const SpelchBoard *board = board_of ("birch-ply", nominal);
  return board != NULL ? nominal + board->tolerance_plus_mm : 0;
}

static double
thinnest (double nominal, double unused)
{
  const SpelchBoard *board = board_of ("birch-ply", nominal);
  return board != NULL ? nominal - board->tolerance_minus_mm : 0;
}

/* How far a thickness the mill measured lies beyond what we allow, its rounding to 0.1 mm taken off. */
static double
beyond_tolerance (double nominal, double measured)
{
  double rounding = 0.05;
  double under = thinnest (nominal, 0) - rounding - measured,
         over = measured - rounding - thickest (nominal, 0);
  return fmax (0, fmax (under, over));
}

/* Grain turns by a right angle from ply to ply, and the faces run alike: 0 when so, over all birch boards. */
static double
plies_that_do_not_cross (double x, double y)
{
  guint n = 0;
  int wrong = 0;
  const SpelchBoard *all = spelch_shop_boards (&n);
  for (guint i = 0; i < n; i++)
    for (guint j = 1; j < all[i].n_layers && g_str_has_prefix (all[i].id, "birch-ply"); j++)
      {
        double turned = fabs (all[i].layers[j].grain_deg - all[i].layers[j - 1].grain_deg);
        wrong += fabs (fmod (turned, 180) - 90) > 1e-9 ? 1 : 0;
      }
  return wrong;
}

/* A melamine-faced board: -0.3 and +0.5 mm. */
static double
melamine_plus (double nominal, double unused)
{
  const SpelchBoard *board = board_of ("melamine", nominal);
  return board != NULL ? board->tolerance_plus_mm : 0;
}

static double
melamine_minus (double nominal, double unused)
{
  const SpelchBoard *board = board_of ("melamine", nominal);
  return board != NULL ? board->tolerance_minus_mm : 0;
}

static double
fraction (double numerator, double denominator)
{
  g_autofree char *typed = g_strdup_printf ("%d/%d in", (int)numerator, (int)denominator);
  g_autoptr (GError) error = NULL;
  SpelchLength length = { 0 };
  bool read = spelch_length_parse (typed, SPELCH_UNIT_MM, &length, &error);
  g_assert_no_error (error);
  return read ? length.mm : 0;
}

#define PLY_ROW(t, n)                                                                                        \
  {                                                                                                          \
    "plies of birch plywood, " #t " mm", MILLS, PUBLISHED_MEASURED, n, 0, plies, t, 0                        \
  }
#define DENSITY_ROW(t, d)                                                                                    \
  {                                                                                                          \
    "density of birch plywood, " #t " mm, kg/m3", ONE_MILL, PUBLISHED_MEASURED, d, 0, density, t, 0          \
  }
#define RANGE_ROW(t, measured)                                                                               \
  {                                                                                                          \
    "birch plywood of " #t " mm, measured " #measured ": beyond what we allow, mm", ONE_MILL,                \
        PUBLISHED_MEASURED, 0, 1e-9, beyond_tolerance, t, measured                                           \
  }
#define INCH_ROW(n, d, mm)                                                                                   \
  {                                                                                                          \
#n "/" #d " in, mm", INCH, PUBLISHED_IDENTITY, mm, 0.00051, fraction, n, d                               \
  }

static const PublishedCheck CHECKS[] = {
  PLY_ROW (6.5, 5),
  PLY_ROW (9, 7),
  PLY_ROW (12, 9),
  PLY_ROW (15, 11),
  PLY_ROW (18, 13),
  PLY_ROW (21, 15),
  PLY_ROW (24, 17),
  { "plies of birch plywood that don't cross their neighbour", MILLS, PUBLISHED_MEASURED, 0, 0,
    plies_that_do_not_cross, 0, 0 },
  DENSITY_ROW (6.5, 670),
  DENSITY_ROW (9, 710),
  DENSITY_ROW (12, 695),
  DENSITY_ROW (15, 690),
  DENSITY_ROW (18, 685),
  DENSITY_ROW (21, 680),
  DENSITY_ROW (24, 680),
  { "18 mm plywood at its thickest: t + 0.2 + 0.03 t, mm", EN_315, PUBLISHED_MEMORY, 18.74, 1e-9, thickest,
    18, 0 },
  { "18 mm plywood at its thinnest: t - 0.4 - 0.03 t, mm", EN_315, PUBLISHED_MEMORY, 17.06, 1e-9, thinnest,
    18, 0 },
  { "9 mm plywood at its thickest, mm", EN_315, PUBLISHED_MEMORY, 9.47, 1e-9, thickest, 9, 0 },
  { "9 mm plywood at its thinnest, mm", EN_315, PUBLISHED_MEMORY, 8.33, 1e-9, thinnest, 9, 0 },
  RANGE_ROW (6.5, 6.1),
  RANGE_ROW (6.5, 6.9),
  RANGE_ROW (9, 8.8),
  RANGE_ROW (9, 9.5),
  RANGE_ROW (12, 11.5),
  RANGE_ROW (12, 12.5),
  RANGE_ROW (15, 14.3),
  RANGE_ROW (15, 15.3),
  RANGE_ROW (18, 17.1),
  RANGE_ROW (18, 18.1),
  RANGE_ROW (21, 20.0),
  RANGE_ROW (21, 20.9),
  RANGE_ROW (24, 22.9),
  RANGE_ROW (24, 23.7),
  { "melamine-faced board of 18 mm, over, mm", "EN 14322 (a mill's sheet)", PUBLISHED_MEASURED, 0.5, 1e-9,
    melamine_plus, 18, 0 },
  { "melamine-faced board of 18 mm, under, mm", "EN 14322 (a mill's sheet)", PUBLISHED_MEASURED, 0.3, 1e-9,
    melamine_minus, 18, 0 },
  INCH_ROW (1, 64, 0.397),
  INCH_ROW (1, 32, 0.794),
  INCH_ROW (1, 16, 1.588),
  INCH_ROW (1, 8, 3.175),
  INCH_ROW (3, 16, 4.763),
  INCH_ROW (1, 4, 6.350),
  INCH_ROW (5, 16, 7.938),
  INCH_ROW (11, 32, 8.731),
  INCH_ROW (3, 8, 9.525),
  INCH_ROW (7, 16, 11.113),
  INCH_ROW (15, 32, 11.906),
  INCH_ROW (1, 2, 12.700),
  INCH_ROW (9, 16, 14.288),
  INCH_ROW (19, 32, 15.081),
  INCH_ROW (5, 8, 15.875),
  INCH_ROW (11, 16, 17.463),
  INCH_ROW (23, 32, 18.256),
  INCH_ROW (3, 4, 19.050),
  INCH_ROW (7, 8, 22.225),
};

const PublishedGroup PUBLISHED_BOARDS = { "boards", CHECKS, G_N_ELEMENTS (CHECKS) };

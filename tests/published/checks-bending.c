/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks of the stepped cantilever.
 */
#include "published.h"

#include "mechanics/bending.h"

#include <gsl/gsl_integration.h>
#include <math.h>

#define BEAM      "beam theory: end load F l^3 / (3 E I), I = pi d^4 / 64"
#define UNIT_LOAD "unit-load theorem, integral of M m / (E I) by GSL"
#define KOPS      "I goes with d^4: 0.80^-4, the 0.80 by Kops and Vo 1990"

/* Tip deflection of a uniform round over F l^3 / (3 E I). */
static double
uniform_over_textbook (double diameter, double length)
{
  SpelchCantilever bit = { length, length / 2, diameter, diameter, 600000, 0 };
  double textbook = pow (length, 3) / (3 * 600000 * G_PI * pow (diameter, 4) / 64);
  return spelch_bending_give (&bit, 0) / textbook;
}

/* A load at a from the collet: F a^2 (3 l - a) / (6 E I) at the tip. */
static double
inner_load_over_textbook (double length, double height)
{
  SpelchCantilever bit = { length, length / 3, 8, 8, 207000, 0 };
  double a = length - height;
  double textbook = a * a * (3 * length - a) / (6 * 207000 * G_PI * pow (8, 4) / 64);
  return spelch_bending_give (&bit, height) / textbook;
}

static double
fluted_over_solid (double share, double unused)
{
  SpelchCantilever solid = { 40, 40, 10, 10, 600000, 0 };
  SpelchCantilever fluted = { 40, 40, 10 * share, 10, 600000, 0 };
  return spelch_bending_give (&fluted, 0) / spelch_bending_give (&solid, 0);
}

static double
machine_give (double stiffness, double unused)
{
  SpelchCantilever rigid = { 40, 20, 6, 8, 600000, 0 };
  SpelchCantilever soft = { 40, 20, 6, 8, 600000, stiffness };
  return spelch_bending_give (&soft, 5) - spelch_bending_give (&rigid, 5);
}

typedef struct
{
  const SpelchCantilever *bit;
  double height;
} BeamCase;

/* M m / (E I) at x from the collet: moments of the load, and of one newton at the tip. */
static double
moments_over_stiffness (double x, void *data)
{
  const BeamCase *beam = data;
  const SpelchCantilever *bit = beam->bit;
  double diameter = x < bit->stick_out - bit->fluted ? bit->shank : bit->fluted_round;
  double load = fmax (bit->stick_out - beam->height - x, 0);
  return load * (bit->stick_out - x) / (bit->modulus * G_PI * pow (diameter, 4) / 64);
}

/* Largest relative gap to the integral over random bits. */
static double
stepped_against_integral (double n, double unused)
{
  gsl_integration_workspace *space = gsl_integration_workspace_alloc (1000);
  double worst = 0;
  for (int i = 0; i < n; i++)
    {
      double length = g_test_rand_double_range (15, 80);
      SpelchCantilever bit = { length,
                               g_test_rand_double_range (0.2, 1) * length,
                               g_test_rand_double_range (1, 15),
                               g_test_rand_double_range (3, 13),
                               g_test_rand_double_range (200000, 650000),
                               0 };
      BeamCase beam = { &bit, g_test_rand_double_range (0, 0.9) * length };
      double step = length - bit.fluted, load = length - beam.height;
      double points[] = { 0, fmin (step, load), fmax (step, load), length };
      gsl_function function = { moments_over_stiffness, &beam };
      double give = 0, error = 0;
      gsl_integration_qagp (&function, points, 4, 0, 1e-10, 1000, space, &give, &error);
      worst = fmax (worst, fabs (spelch_bending_give (&bit, beam.height) / give - 1));
    }
  gsl_integration_workspace_free (space);
  return worst;
}

/* 32 M / (pi d^3) of 100 N at the tip of a plain round, MPa. */
static double
stress_of_round (double diameter, double length)
{
  SpelchCantilever bit = { length, length / 2, diameter, diameter, 600000, 0 };
  return 100 * spelch_bending_stress (&bit, 0);
}

/* A thick shank moves the worst place to where the flutes end: stress of 1 N at the tip there. */
static double
stress_at_step (double fluted, double unused)
{
  SpelchCantilever bit = { 60, fluted, 4, 12, 600000, 0 };
  return spelch_bending_stress (&bit, 0);
}

/* Maxwell's reciprocal theorem: give at the tip for a load at a, over give at a for a load at the tip; the
 * latter worked out by F x^2 (3 l - x) / (6 E I). */
static double
reciprocal (double length, double height)
{
  SpelchCantilever bit = { length, length, 7, 7, 600000, 0 };
  double a = length - height, stiffness = 6 * 600000 * G_PI * pow (7, 4) / 64;
  return spelch_bending_give (&bit, height) / (a * a * (3 * length - a) / stiffness);
}

/* Give of twice the length over that of the length: l^3. */
static double
doubled_length (double length, double unused)
{
  SpelchCantilever once = { length, length, 6, 6, 600000, 0 },
                   twice = { 2 * length, 2 * length, 6, 6, 600000, 0 };
  return spelch_bending_give (&twice, 0) / spelch_bending_give (&once, 0);
}

/* Two springs in series: a bit of two lengths, d1 and d2, loaded at the tip, by the area-moment theorem:
 * F (l1^3 / I1 + (l^3 - l1^3) / I2) / (3 E), l1 the fluted part. */
static double
two_part_over_textbook (double fluted, double shank)
{
  SpelchCantilever bit = { 50, fluted, 6, shank, 207000, 0 };
  double thin = G_PI * pow (6, 4) / 64, thick = G_PI * pow (shank, 4) / 64, l1 = pow (fluted, 3);
  return spelch_bending_give (&bit, 0) / ((l1 / thin + (pow (50, 3) - l1) / thick) / (3 * 207000));
}

static const PublishedCheck CHECKS[] = {
  { "end load on a plain round, d 6, l 30, over the textbook", BEAM, PUBLISHED_IDENTITY, 1, 1e-9,
    uniform_over_textbook, 6, 30 },
  { "end load on a plain round, d 12.7, l 55, over the textbook", BEAM, PUBLISHED_IDENTITY, 1, 1e-9,
    uniform_over_textbook, 12.7, 55 },
  { "load 10 mm above the tip, l 40: F a^2 (3 l - a) / (6 E I)", BEAM, PUBLISHED_IDENTITY, 1, 1e-9,
    inner_load_over_textbook, 40, 10 },
  { "stepped bits against the integral, 300 random bits, most apart", UNIT_LOAD, PUBLISHED_IDENTITY, 0, 1e-6,
    stepped_against_integral, 300, 0 },
  { "fluted part counted as 0.80 D: deflection over solid", KOPS, PUBLISHED_IDENTITY, 2.44140625, 1e-9,
    fluted_over_solid, 0.80, 0 },
  { "give for a load 12 mm above the tip over give there for a load at the tip",
    "Maxwell's reciprocal theorem", PUBLISHED_IDENTITY, 1, 1e-9, reciprocal, 40, 12 },
  { "give of a bit twice as long, times", BEAM, PUBLISHED_IDENTITY, 8, 1e-9, doubled_length, 25, 0 },
  { "6 mm flutes of 20 mm under a 12 mm shank, l 50, over the textbook", "area-moment theorem",
    PUBLISHED_IDENTITY, 1, 1e-9, two_part_over_textbook, 20, 12 },
  { "6 mm flutes of 35 mm under an 8 mm shank, l 50, over the textbook", "area-moment theorem",
    PUBLISHED_IDENTITY, 1, 1e-9, two_part_over_textbook, 35, 8 },
  { "a machine of 250 N/mm adds 1 / 250 mm for each newton", "spring in series", PUBLISHED_IDENTITY, 0.004,
    1e-12, machine_give, 250, 0 },
  { "stress of 100 N at 30 mm on a 6 mm round, 32 M / (pi d^3), MPa", BEAM, PUBLISHED_IDENTITY, 141.471, 5e-4,
    stress_of_round, 6, 30 },
  { "stress of 1 N where 20 mm of 4 mm flutes end under a 12 mm shank, MPa", BEAM, PUBLISHED_IDENTITY,
    3.18310, 5e-6, stress_at_step, 20, 0 },
};

const PublishedGroup PUBLISHED_BENDING = { "bending", CHECKS, G_N_ELEMENTS (CHECKS) };

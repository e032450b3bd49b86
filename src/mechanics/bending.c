/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mechanics/bending.h"

#include <math.h>

static double
second_moment (double diameter)
{
  return M_PI * pow (diameter, 4) / 64;
}

/* Integral of (p - x)(l - x) from x0 to x1. */
static double
moment_area (double p, double l, double x0, double x1)
{
  double from = p * l * x0 - (p + l) * x0 * x0 / 2 + x0 * x0 * x0 / 3;
  double to = p * l * x1 - (p + l) * x1 * x1 / 2 + x1 * x1 * x1 / 3;
  return to - from;
}

double
spelch_bending_give (const SpelchCantilever *bit, double height)
{
  double l = bit->stick_out, p = fmax (l - height, 0);
  double step = fmax (l - bit->fluted, 0);
  double shank_end = fmin (step, p);
  double give = moment_area (p, l, 0, shank_end) / (bit->modulus * second_moment (bit->shank));
  if (p > step)
    give += moment_area (p, l, step, p) / (bit->modulus * second_moment (bit->fluted_round));
  return give + (bit->stiffness > 0 ? 1 / bit->stiffness : 0);
}

static double
stress_at (double moment, double diameter)
{
  return 32 * fmax (moment, 0) / (M_PI * pow (diameter, 3));
}

double
spelch_bending_stress (const SpelchCantilever *bit, double height)
{
  double p = fmax (bit->stick_out - height, 0);
  double step = fmax (bit->stick_out - bit->fluted, 0);
  double at_collet = stress_at (p, step > 0 ? bit->shank : bit->fluted_round);
  return fmax (at_collet, stress_at (p - step, bit->fluted_round));
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mechanics/chip.h"

#include <math.h>

static double
share_engaged (double diameter, double engaged)
{
  return fmin (fmax (engaged / diameter, 0), 1);
}

/* Thickest chip for a feed per tooth of one. */
static double
max_factor (double diameter, double engaged)
{
  double share = share_engaged (diameter, engaged);
  return share >= 0.5 ? 1 : 2 * sqrt (share - share * share);
}

double
spelch_chip_feed_per_tooth (double feed_mm_min, double rpm, int edges)
{
  return rpm > 0 && edges > 0 ? feed_mm_min / (rpm * edges) : 0;
}

double
spelch_chip_feed (double feed_per_tooth, double rpm, int edges)
{
  return feed_per_tooth * rpm * edges;
}

double
spelch_chip_engagement (double diameter, double engaged)
{
  return acos (1 - 2 * share_engaged (diameter, engaged));
}

double
spelch_chip_arc (double diameter, double engaged)
{
  return diameter * spelch_chip_engagement (diameter, engaged) / 2;
}

double
spelch_chip_max (double feed_per_tooth, double diameter, double engaged)
{
  return feed_per_tooth * max_factor (diameter, engaged);
}

double
spelch_chip_mean (double feed_per_tooth, double diameter, double engaged)
{
  double arc = spelch_chip_arc (diameter, engaged);
  return arc > 0 ? feed_per_tooth * fmin (engaged, diameter) / arc : 0;
}

double
spelch_chip_feed_for_max (double chip, double diameter, double engaged)
{
  double factor = max_factor (diameter, engaged);
  return factor > 0 ? chip / factor : 0;
}

double
spelch_chip_mark_height (double feed_per_tooth, double diameter)
{
  return feed_per_tooth * feed_per_tooth / (4 * diameter);
}

double
spelch_chip_cutting_speed (double diameter, double rpm)
{
  return M_PI * diameter * rpm / 60000;
}

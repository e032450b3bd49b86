/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mechanics/holding.h"

#include <math.h>

double
spelch_holding_low (double mean, double scatter, double quantile)
{
  return mean * fmax (1 - quantile * scatter, 0);
}

double
spelch_holding_tabs (const SpelchTabStrength *tabs, double quantile)
{
  return tabs->section * spelch_holding_low (tabs->side, tabs->scatter, quantile);
}

double
spelch_holding_tabs_load (const SpelchTabStrength *tabs, double side, double lift)
{
  return side + fmax (lift, 0) * tabs->side / tabs->lift;
}

double
spelch_holding_tabs_growth (double factor, double wanted)
{
  return factor > 0 ? fmax (wanted / factor, 1) : 0;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mechanics/holding.h"

#include <math.h>

double
spelch_holding_press (const SpelchHoldBed *bed, const SpelchHoldLoad *load, double factor)
{
  double lift = fmax (load->lift, 0);
  double tilt = bed->half_width > 0 ? factor * load->height * load->side / bed->half_width : 0;
  return fmax (fmax (factor * load->side / bed->friction + lift, factor * lift), tilt);
}

double
spelch_holding_factor (const SpelchHoldBed *bed, const SpelchHoldLoad *load, double press, SpelchGives *way)
{
  double lift = fmax (load->lift, 0), moment = load->height * load->side;
  double least = load->side > 0 ? fmax (bed->friction * (press - lift), 0) / load->side : HUGE_VAL;
  *way = SPELCH_GIVES_SLIDING;
  if (lift > 0 && press / lift < least)
    {
      least = press / lift;
      *way = SPELCH_GIVES_LIFTING;
    }
  if (bed->half_width > 0 && moment > 0 && press * bed->half_width / moment < least)
    {
      least = press * bed->half_width / moment;
      *way = SPELCH_GIVES_TILTING;
    }
  return least < HUGE_VAL ? fmax (least, 0) : 0;
}

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

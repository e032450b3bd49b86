/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/correction.h"

#include "shop/fault.h"

#include <string.h>

#define CUTS_MOST 10000

bool
spelch_correction_holds (const SpelchCorrection *correction, const SpelchBit *bit)
{
  const char *since = spelch_bit_edge_since (bit);
  bool renewed = *since != '\0' && strcmp (correction->last, since) <= 0;
  return !correction->off && !renewed && strcmp (correction->bit, bit->id) == 0;
}

char *
spelch_correction_fault (const SpelchCorrection *correction)
{
  const SpelchLearnt *motor = &correction->motor, *far = &correction->far;
  const SpelchBounds bounds[] = {
    { "motor.points", "", motor->points, -1, 1 },
    { "motor.points_cuts", "", motor->points_cuts, motor->points != 0 ? 1 : 0, CUTS_MOST },
    { "motor.window_mm", "mm", motor->window_mm, 0, SPELCH_WINDOW_MOST_MM },
    { "motor.window_cuts", "", motor->window_cuts, motor->window_mm > 0 ? 1 : 0, CUTS_MOST },
    { "far.points", "", far->points, -1, 1 },
    { "far.points_cuts", "", far->points_cuts, far->points != 0 ? 1 : 0, CUTS_MOST },
    { "far.window_mm", "mm", far->window_mm, 0, SPELCH_WINDOW_MOST_MM },
    { "far.window_cuts", "", far->window_cuts, far->window_mm > 0 ? 1 : 0, CUTS_MOST },
  };
  return spelch_fault_id ("board", correction->board, false)
             ?: spelch_fault_id ("bit", correction->bit, false)
             ?: spelch_fault_date ("last", correction->last, false)
             ?: spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
}

char *
spelch_calibration_fault (const SpelchCalibration *calibration)
{
  const SpelchBounds bounds[] = {
    { "factor", "", calibration->factor, SPELCH_FACTOR_LEAST, SPELCH_FACTOR_MOST },
    { "readings", "", calibration->readings, 1, CUTS_MOST },
  };
  return *calibration->board == '\0' ? NULL
                                     : spelch_fault_id ("board", calibration->board, false)
                                           ?: spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
}

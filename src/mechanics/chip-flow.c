/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mechanics/chip-flow.h"

#include <math.h>

double
spelch_chip_flow_speed (const SpelchFlutes *flutes, double s)
{
  int sign = spelch_flute_sign_at (flutes, s);
  return sign * flutes->diameter / 2 * sin (flutes->helix) * cos (flutes->helix);
}

/* The height beyond which the shear at @s sends nothing: where it turns over, or the tip. */
static double
end_of_way (const SpelchFlutes *flutes, int sign)
{
  bool turns_over = flutes->turn_over > 0 && flutes->turn_over < flutes->length;
  if (turns_over)
    return flutes->turn_over;
  return sign > 0 ? HUGE_VAL : 0;
}

SpelchChipPlace
spelch_chip_flow_at (const SpelchFlutes *flutes, double s, double age)
{
  double speed = spelch_chip_flow_speed (flutes, s);
  double kept = cos (flutes->helix) * cos (flutes->helix);
  int sign = spelch_flute_sign_at (flutes, s);
  SpelchChipPlace place = { s, age, sign == 0, sign == 0 ? 0 : HUGE_VAL };
  if (sign == 0)
    return place;
  double end = end_of_way (flutes, sign);
  place.arrival = fabs (speed) > 0 ? (end - s) / speed : HUGE_VAL;
  place.arrived = age >= place.arrival;
  double sliding = fmin (age, place.arrival);
  place.height = place.arrived ? end : s + speed * sliding;
  place.gained = kept * sliding + (age - sliding);
  return place;
}

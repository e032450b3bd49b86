/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mechanics/flute.h"

#include <math.h>
#include <stddef.h>

/* Spans shorter than this are points: rounding in millimetres must not decide a verdict. */
#define TOUCH 1e-9

static bool
is_neutral (const SpelchFlutes *flutes)
{
  return flutes->helix < SPELCH_NEUTRAL_HELIX_RAD;
}

static bool
has_turn_over (const SpelchFlutes *flutes)
{
  return flutes->turn_over > 0 && flutes->turn_over < flutes->length;
}

/* How far the up-shear zone reaches up, and the down-shear zone reaches down, overlap included. */
static double
up_reaches (const SpelchFlutes *flutes)
{
  if (flutes->turn_over <= 0)
    return -HUGE_VAL;
  return has_turn_over (flutes) ? flutes->turn_over + flutes->overlap / 2 : HUGE_VAL;
}

static double
down_reaches (const SpelchFlutes *flutes)
{
  if (flutes->turn_over <= 0)
    return -HUGE_VAL;
  return has_turn_over (flutes) ? flutes->turn_over - flutes->overlap / 2 : HUGE_VAL;
}

double
spelch_flute_lead (double diameter, double helix)
{
  return helix > 0 ? M_PI * diameter / tan (helix) : 0;
}

SpelchShearHand
spelch_flute_hand_at (const SpelchFlutes *flutes, double s)
{
  bool up = s < up_reaches (flutes);
  bool down = s > down_reaches (flutes);
  if (is_neutral (flutes))
    return SPELCH_SHEAR_NEUTRAL;
  if (up && down)
    return SPELCH_SHEAR_OVERLAP;
  return up ? SPELCH_SHEAR_UP : SPELCH_SHEAR_DOWN;
}

int
spelch_flute_sign_at (const SpelchFlutes *flutes, double s)
{
  if (is_neutral (flutes))
    return 0;
  return s < flutes->turn_over || flutes->turn_over >= flutes->length ? 1 : -1;
}

SpelchHands
spelch_flute_hands_between (const SpelchFlutes *flutes, double s0, double s1)
{
  SpelchHands hands = { false, false, false };
  if (s1 - s0 <= TOUCH)
    return hands;
  if (is_neutral (flutes))
    hands.neutral = true;
  else
    {
      hands.up = fmin (s1, up_reaches (flutes)) - s0 > TOUCH;
      hands.down = s1 - fmax (s0, down_reaches (flutes)) > TOUCH;
    }
  return hands;
}

int
spelch_flute_edges_at (const SpelchFlutes *flutes, double s)
{
  return s < flutes->turn_over ? flutes->edges_up : flutes->edges_down;
}

int
spelch_flute_fewest_edges (const SpelchFlutes *flutes)
{
  if (!has_turn_over (flutes))
    return flutes->turn_over > 0 ? flutes->edges_up : flutes->edges_down;
  return flutes->edges_up < flutes->edges_down ? flutes->edges_up : flutes->edges_down;
}

double
spelch_flute_twist (const SpelchFlutes *flutes, double s)
{
  double per_mm = 2 * tan (flutes->helix) / flutes->diameter;
  double up = flutes->turn_over >= flutes->length ? s : fmin (s, flutes->turn_over);
  return per_mm * (2 * up - s);
}

double
spelch_flute_edge_angle (const SpelchFlutes *flutes, int k, double s, double turned)
{
  return -turned + 2 * M_PI * k / spelch_flute_edges_at (flutes, s) + spelch_flute_twist (flutes, s);
}

double
spelch_flute_edge_x (const SpelchFlutes *flutes, int k, double s, double turned, bool *front)
{
  double theta = spelch_flute_edge_angle (flutes, k, s, turned);
  if (front != NULL)
    *front = cos (theta) > 0;
  return flutes->diameter / 2 * sin (theta);
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The geometry of a drawn bit: its zones, and the visible points of its edges.
 */
#include "drawing/bit-shape.h"

#include <glib.h>
#include <math.h>

int
spelch_bit_zones (const SpelchFlutes *flutes, SpelchZone zones[3])
{
  double ends[4] = { 0, flutes->turn_over - flutes->overlap / 2, flutes->turn_over + flutes->overlap / 2,
                     flutes->length };
  int n = 0;

  for (int i = 0; i < 3; i++)
    {
      double from = CLAMP (ends[i], 0, flutes->length), to = CLAMP (ends[i + 1], 0, flutes->length);
      SpelchShearHand hand = spelch_flute_hand_at (flutes, (from + to) / 2);

      if (to - from <= 0)
        continue;
      if (n > 0 && zones[n - 1].hand == hand)
        zones[n - 1].to = to;
      else
        zones[n++] = (SpelchZone){ from, to, hand };
    }
  return n;
}

int
spelch_bit_pieces (const SpelchFlutes *flutes, SpelchZone pieces[SPELCH_MAX_PIECES])
{
  SpelchZone zones[3];
  int n_zones = spelch_bit_zones (flutes, zones), n = 0;

  for (int i = 0; i < n_zones; i++)
    if (flutes->turn_over > zones[i].from && flutes->turn_over < zones[i].to)
      {
        pieces[n++] = (SpelchZone){ zones[i].from, flutes->turn_over, zones[i].hand };
        pieces[n++] = (SpelchZone){ flutes->turn_over, zones[i].to, zones[i].hand };
      }
    else
      pieces[n++] = zones[i];
  return n;
}

double
spelch_bit_angle (const SpelchFlutes *flutes, int k, double s, double from, double to, double turned)
{
  double middle = (from + to) / 2;
  double twist = spelch_flute_twist (flutes, s) - spelch_flute_twist (flutes, middle);

  return spelch_flute_edge_angle (flutes, k, middle, turned) + twist;
}

/* Adds the point where the line from (s0, theta0) to (s1, theta1) crosses the silhouette, if it does. */
static int
add_crossing (double radius, double s0, double theta0, double s1, double theta1, bool first,
              SpelchEdgePoint *points, int i)
{
  double way = theta1 - theta0;
  double low = MIN (theta0, theta1), high = MAX (theta0, theta1);
  /* Silhouettes are at pi/2 + m pi. */
  double at = M_PI_2 + M_PI * ceil ((low - M_PI_2) / M_PI);

  if (way == 0 || at > high)
    return i;
  points[i] = (SpelchEdgePoint){ s0 + (at - theta0) / way * (s1 - s0), radius * sin (at), first };
  return i + 1;
}

int
spelch_bit_edge_points (const SpelchFlutes *flutes, int k, double from, double to, double step, double turned,
                        SpelchEdgePoint *points, int n)
{
  double radius = flutes->diameter / 2, last_s = from, last_theta = 0;
  int samples = (int)CLAMP (ceil ((to - from) / step), 1, n / 2 - 2), i = 0;
  bool was_front = false;

  for (int j = 0; j <= samples && i + 2 <= n; j++)
    {
      double s = from + (to - from) * j / samples;
      double theta = spelch_bit_angle (flutes, k, s, from, to, turned);
      bool front = cos (theta) > 0;

      if (j > 0 && front != was_front)
        i = add_crossing (radius, last_s, last_theta, s, theta, front, points, i);
      if (front && i < n)
        {
          points[i] = (SpelchEdgePoint){ s, radius * sin (theta), j == 0 };
          i++;
        }
      was_front = front;
      last_s = s;
      last_theta = theta;
    }
  return i;
}

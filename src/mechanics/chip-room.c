/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mechanics/chip-room.h"

#include <math.h>

double
spelch_chip_room (double bulking, double engaged, double feed_per_tooth, int edges, double diameter,
                  double flute_share, double clearing)
{
  double flutes = flute_share * M_PI * diameter * diameter / 4;
  return bulking * engaged * feed_per_tooth * edges / (flutes * clearing);
}

double
spelch_chip_room_axial (double bulking, double height, double engaged, double feed_per_tooth, int edges,
                        double diameter, double flute_share, double helix)
{
  double flutes = flute_share * M_PI * diameter * diameter / 4;
  double carried = flutes * M_PI * diameter * sin (helix) * cos (helix); /* mm3 a turn */
  return carried > 0 ? bulking * height * engaged * feed_per_tooth * edges / carried : 0;
}

double
spelch_wall_heat (double edge_force, double arc, double feed_per_tooth, double clearing)
{
  return feed_per_tooth > 0 ? edge_force * arc / (feed_per_tooth * clearing) : 0;
}

double
spelch_rubbing_share (double edge_force, double b, double chip_mean)
{
  double total = edge_force + b * chip_mean;
  return total > 0 ? edge_force / total : 0;
}

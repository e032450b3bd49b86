/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "mechanics/wear.h"

#include <math.h>

double
spelch_wear_path (double arc, int edges, double feed_per_tooth)
{
  return edges > 0 && feed_per_tooth > 0 ? arc / (edges * feed_per_tooth) : 0;
}

double
spelch_wear_by_blunting (double blunting, double new, double sharp, double dull, double share_sharp)
{
  double share = blunting <= sharp ? share_sharp * (blunting - new) / (sharp - new)
                                   : share_sharp + (1 - share_sharp) * (blunting - sharp) / (dull - sharp);
  return fmin (fmax (share, 0), 1);
}

double
spelch_wear_left (double life, double used, double path)
{
  return path > 0 ? life * fmax (1 - used, 0) / path : 0;
}

double
spelch_wear_share (double edge_path, double life)
{
  return life > 0 ? edge_path / life : 0;
}

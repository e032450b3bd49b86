/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/travel.h"

#include <math.h>

/* Loops about one middle, each a step further in; with an odd number of tracks the last is the middle itself.
 * Going in makes a loop shorter by 2 pi times the way while its corners are round, as a circle is all over,
 * and by 8 times the way once they are sharp: a pocket is taken for a rectangle with corners of @round. */
static double
loops (double wall, double round, double in, double step, int tracks)
{
  double way = 0;
  for (int i = 0; i < (tracks + 1) / 2; i++)
    {
      double deep = in + i * step, rounded = fmin (deep, round);
      double loop = fmax (wall - 2 * M_PI * rounded - 8 * (deep - rounded), 0);
      way += i == tracks / 2 ? loop / 2 : loop; /* there, but not back */
    }
  return way;
}

double
spelch_travel_of_pass (const SpelchCase *c, const SpelchPass *pass)
{
  int tracks = pass->finishing ? 2 : pass->tracks;
  double width = spelch_cut_width (c->cut), half = c->diameter / 2;
  double step = tracks > 1 ? fmax (width - c->diameter, 0) / (tracks - 1) : 0;
  switch (c->cut->kind)
    {
    case SPELCH_CUT_HOLE:
      return loops (M_PI * width, width / 2, half, step, tracks);
    case SPELCH_CUT_POCKET:
      return loops (c->cut->length.mm, fmin (c->cut->corner_radius.mm, width / 2), half, step, tracks);
    case SPELCH_CUT_OUTLINE:
    case SPELCH_CUT_DADO:
    case SPELCH_CUT_RABBET:
    case SPELCH_CUT_MORTISE:
    case SPELCH_CUT_SLOT:
    case SPELCH_CUT_TRIM:
    default:
      return c->cut->length.mm * pass->tracks;
    }
}

/* Min, straight down by @depth at the plunge feed. Between pecks the bit is drawn out and brought back at the
 * feed, in all 2 (1 + 2 + ... + pecks - 1) / pecks times the depth. */
static double
time_down (const SpelchCase *c, double depth, double feed)
{
  guint pecks = spelch_setting_out_pecks (c->k, c->machine->kind, c->diameter, depth);
  return depth / (feed * c->k->plunge_share) + depth * (pecks - 1) / feed;
}

static double
time_in (const SpelchCase *c, const SpelchPass *passes, guint n, const SpelchEntry *entry, double feed)
{
  double slope = entry->angle_deg > 0 ? tan (entry->angle_deg * M_PI / 180) : 0, time = 0;
  if (c->cut->kind == SPELCH_CUT_HOLE && c->tracks == 1)
    return time_down (c, passes[n - 1].tip_mm, feed);
  if (entry->kind == SPELCH_ENTRY_EDGE)
    return 0;
  for (guint i = 0; i < n; i++)
    {
      double step = passes[i].tip_mm - passes[i].from_mm;
      if (passes[i].finishing)
        continue;
      if (entry->kind == SPELCH_ENTRY_STAGED)
        time += time_down (c, step, feed);
      else
        time += slope > 0 ? step / slope / feed : step / (feed * c->k->plunge_share);
    }
  return time;
}

double
spelch_travel_time (const SpelchCase *c, const SpelchPass *passes, guint n, const SpelchEntry *entry,
                    double feed_mm_min)
{
  double path = 0;
  if (feed_mm_min <= 0 || n == 0)
    return 0;
  for (guint i = 0; i < n; i++)
    path += spelch_travel_of_pass (c, &passes[i]);
  return (path / feed_mm_min + time_in (c, passes, n, entry, feed_mm_min)) * 60 * MAX (c->cut->quantity, 1);
}

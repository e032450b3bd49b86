/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/limit-places.h"

static bool
is_free (const SpelchLimitPlace *places, guint n, const SpelchLimitPlace *wanted, int row, double gap)
{
  for (guint i = 0; i < n; i++)
    if (places[i].row == row && wanted->left < places[i].left + places[i].width + gap
        && places[i].left < wanted->left + wanted->width + gap)
      return false;
  return true;
}

void
spelch_limit_places (SpelchLimitPlace *places, guint n, double length, double gap)
{
  for (guint i = 0; i < n; i++)
    {
      SpelchLimitPlace *place = &places[i];
      double most = MAX (length - place->width, 0);
      place->left = CLAMP (place->at - place->width / 2, 0, most);
      place->row = -1;
      for (int row = 0; row < SPELCH_LIMIT_ROWS && place->row < 0; row++)
        if (is_free (places, i, place, row, gap))
          place->row = row;
    }
}

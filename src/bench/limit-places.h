/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Limit places: where the names of the ticks on the 0 to 100 line stand so that they never overlap. Pure
 * numbers.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>

#define SPELCH_LIMIT_ROWS 3 /* 0 just above the line, 1 just below it, 2 further above */

typedef struct
{
  double at;    /* of the tick, along the line */
  double width; /* of its name */
  double left;  /* out: where the name begins */
  int row;      /* out: its row, or -1 when there is no room left for it */
} SpelchLimitPlace;

/* Places the names, the first ones first: each as near its tick as the line's ends allow, in the first row
 * where it is at least @gap from every name already there. */
void spelch_limit_places (SpelchLimitPlace *places, guint n, double length, double gap);

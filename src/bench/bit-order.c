/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bit-order.h"

#include <string.h>

#define MOST_SHARE 1.005 /* a limit that sets the feed is used up to rounding */

int
spelch_bit_order_worst (const SpelchPlan *plan, bool seen)
{
  int worst = 0;
  for (guint i = 0; i < plan->n_edges; i++)
    if (plan->edges[i].stays && plan->edges[i].seen == seen)
      worst = MAX (worst, plan->edges[i].grade);
  return worst;
}

/* The grades are accepted, and no limit is gone over to reach them. */
static bool
meets (const SpelchPart *part, const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_limits; i++)
    if (plan->limits[i].share > MOST_SHARE)
      return false;
  return spelch_bit_order_worst (plan, true) <= part->accepted_seen
         && spelch_bit_order_worst (plan, false) <= part->accepted_hidden;
}

static int
compare_numbers (double a, double b)
{
  return (a > b) - (a < b);
}

int
spelch_bit_order_compare (const SpelchPart *part, const SpelchBit *bit_a, const SpelchPlan *a,
                          const SpelchBit *bit_b, const SpelchPlan *b)
{
  int by = (a->verdict == SPELCH_VERDICT_DO_NOT_CUT) - (b->verdict == SPELCH_VERDICT_DO_NOT_CUT);
  bool both_meet = meets (part, a) && meets (part, b);
  if (by == 0)
    by = meets (part, b) - meets (part, a);
  if (by == 0 && !both_meet)
    by = spelch_bit_order_worst (a, true) - spelch_bit_order_worst (b, true);
  if (by == 0 && !both_meet)
    by = spelch_bit_order_worst (a, false) - spelch_bit_order_worst (b, false);
  if (by == 0)
    by = compare_numbers (a->time_s, b->time_s);
  return by != 0 ? by : strcmp (bit_a->id, bit_b->id);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/choose.h"

#include "plan/edges.h"
#include "plan/reasons.h"

#include <math.h>
#include <string.h>

/* What the order goes by, beside the choices themselves. */
typedef struct
{
  const SpelchBit *bits;
} Order;

static int
by_number (double a, double b)
{
  return (a > b) - (a < b);
}

/* Times closer than a tenth of a second are a tie. */
static double
shown_time (const SpelchChoice *choice)
{
  return round (choice->plan.time_s * 10);
}

static bool
may_not (const SpelchChoice *choice)
{
  return choice->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT;
}

static bool
bends_too_much (const SpelchChoice *choice)
{
  return choice->plan.deflection_mm > choice->plan.deflection_limit_mm + 1e-6;
}

static int
by_grades (const SpelchChoice *a, const SpelchChoice *b)
{
  if (a->meets || b->meets)
    return b->meets - a->meets;
  return a->seen != b->seen ? a->seen - b->seen : a->hidden - b->hidden;
}

static int
by_preference (gconstpointer x, gconstpointer y, gpointer data)
{
  const SpelchChoice *a = *(SpelchChoice *const *)x, *b = *(SpelchChoice *const *)y;
  const Order *order = data;
  int by = may_not (a) - may_not (b);
  if (by == 0)
    by = by_grades (a, b);
  if (by == 0)
    by = bends_too_much (a) - bends_too_much (b);
  if (by == 0)
    by = by_number (shown_time (a), shown_time (b));
  if (by == 0)
    by = by_number (a->plan.edge_path_m, b->plan.edge_path_m);
  if (by == 0)
    by = strcmp (order->bits[a->bit].id, order->bits[b->bit].id);
  return by != 0 ? by : (int)a->way_up - (int)b->way_up;
}

SpelchCut
spelch_choose_cut (const SpelchCut *cut, const SpelchBit *bit, SpelchFace way_up)
{
  SpelchCut as_planned = *cut;
  as_planned.way_up = way_up;
  if (strcmp (cut->bit, bit->id) == 0)
    return as_planned;
  as_planned.held = (SpelchHeld){ .entry_held = cut->held.entry_held,
                                  .entry = cut->held.entry,
                                  .entry_on_line = cut->held.entry_on_line,
                                  .entry_deg = cut->held.entry_deg };
  return as_planned;
}

static SpelchChoice *
consider (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
          const SpelchBit *bits, guint i, SpelchFace way_up)
{
  SpelchChoice *choice = g_new (SpelchChoice, 1);
  SpelchCut as_planned = spelch_choose_cut (cut, &bits[i], way_up);
  choice->bit = i;
  choice->way_up = way_up;
  choice->n_reasons = 0;
  spelch_plan_make (constants, part, &as_planned, &bits[i], &choice->plan);
  choice->seen = spelch_edges_worst (choice->plan.edges, true);
  choice->hidden = spelch_edges_worst (choice->plan.edges, false);
  choice->meets = choice->seen <= part->accepted_seen && choice->hidden <= part->accepted_hidden;
  return choice;
}

/* Time is compared with the first of those that are as good in every other way: the order has put the
 * quickest there. */
static void
find_reasons (const SpelchConstants *constants, const SpelchPart *part, GPtrArray *ranking)
{
  double quickest = 0;
  const SpelchChoice *first = NULL;
  for (guint i = 0; i < ranking->len; i++)
    {
      SpelchChoice *choice = ranking->pdata[i];
      bool as_good = first != NULL && may_not (first) == may_not (choice) && by_grades (first, choice) == 0
                     && bends_too_much (first) == bends_too_much (choice);
      if (!as_good)
        {
          first = choice;
          quickest = choice->plan.time_s;
        }
      spelch_reasons_find (constants, part, quickest, choice);
    }
}

GPtrArray *
spelch_choose_rank (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                    const SpelchBit *bits, guint n_bits)
{
  GPtrArray *ranking = g_ptr_array_new_with_free_func (g_free);
  Order order = { bits };
  for (guint i = 0; i < n_bits; i++)
    {
      g_ptr_array_add (ranking, consider (constants, part, cut, bits, i, cut->way_up));
      if (cut->through)
        g_ptr_array_add (ranking, consider (constants, part, cut, bits, i, spelch_face_other (cut->way_up)));
    }
  g_ptr_array_sort_with_data (ranking, by_preference, &order);
  find_reasons (constants, part, ranking);
  return ranking;
}

const SpelchChoice *
spelch_choose_best (const GPtrArray *ranking)
{
  const SpelchChoice *first = ranking->len > 0 ? ranking->pdata[0] : NULL;
  return first != NULL && !may_not (first) ? first : NULL;
}

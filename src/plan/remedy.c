/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/remedy.h"
#include "plan/edges.h"

#include <string.h>

SpelchRemedy
spelch_remedy_begin (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                     const SpelchBit *bit, const SpelchPlan *before)
{
  SpelchRemedy q = { .k = constants, .cut = *cut, .bit = *bit, .before = before };
  memcpy (&q.part, part, sizeof q.part);
  return q;
}

void
spelch_remedy_divide (SpelchRemedy *q, guint n)
{
  double depth = q->before->passes[q->before->n_passes - 1].tip_mm;
  q->cut.held.passes_held = true;
  q->cut.held.n_passes = n - 1;
  for (guint i = 0; i + 1 < n; i++)
    q->cut.held.passes[i] = spelch_length_mm (depth * (i + 1) / n);
}

void
spelch_remedy_keep (SpelchRemedy *q)
{
  const SpelchPlan *before = q->before;
  /* The last pass follows from the depth, and so does the one before a skin or a finishing pass. */
  guint follow = before->skin_mm > 0 || before->passes[before->n_passes - 1].finishing ? 2 : 1;
  q->cut.held.speed_rpm = before->speed_rpm;
  q->cut.held.feed_mm_min = before->feed_mm_min;
  q->cut.held.passes_held = true;
  q->cut.held.n_passes = before->n_passes - MIN (before->n_passes, follow);
  for (guint i = 0; i < q->cut.held.n_passes; i++)
    q->cut.held.passes[i] = spelch_length_mm (before->passes[i].tip_mm);
}

static bool
adds_stop (const SpelchPlan *before, const SpelchPlan *after)
{
  for (guint i = 0; i < after->n_stops; i++)
    if (!spelch_plan_has_stop (before, after->stops[i].kind))
      return true;
  return false;
}

static bool
costs_grade (const SpelchRemedy *q)
{
  const int accepted[2] = { q->part.accepted_seen, q->part.accepted_hidden };
  for (int i = 0; i < 2; i++)
    {
      int before = spelch_edges_worst (q->before->edges, i == 0);
      if (spelch_edges_worst (q->plan.edges, i == 0) > MAX (before, accepted[i]))
        return true;
    }
  return false;
}

bool
spelch_remedy_serves (SpelchRemedy *q)
{
  spelch_plan_make (q->k, &q->part, &q->cut, &q->bit, &q->plan);
  return !adds_stop (q->before, &q->plan) && !costs_grade (q);
}

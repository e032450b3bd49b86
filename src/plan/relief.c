/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/relief.h"

#include "plan/constants.h"
#include "plan/remedy.h"

#include <math.h>

#define THICKER 1.25 /* times */
#define STIFFER 2.0  /* times */

static double
figure (const SpelchPlan *plan, SpelchLimitKind limit)
{
  return limit == SPELCH_LIMIT_BENDING ? plan->deflection_mm : plan->stress_share;
}

/* The collet of that size, or the next larger one; else the shank stays as it is. */
static void
take_shank (SpelchRemedy *q, double diameter)
{
  double best = HUGE_VAL;
  for (guint i = 0; i < q->part.machine.n_collets; i++)
    if (q->part.machine.collets[i].mm >= fmax (diameter, q->bit.shank.mm) - 0.02)
      best = fmin (best, q->part.machine.collets[i].mm);
  if (best < HUGE_VAL)
    q->bit.shank = spelch_length_mm (best);
}

/* What is cut off a bit that is longer than it needs to be; its tip keeps its shear. */
static bool
shorten (SpelchRemedy *q)
{
  double deepest = q->before->passes[q->before->n_passes - 1].tip_mm;
  double spare = q->bit.cutting_length.mm - fmax (deepest, q->bit.up_shear.mm) - 1;
  if (spare <= 0)
    return false;
  q->bit.cutting_length = spelch_length_mm (q->bit.cutting_length.mm - spare);
  if (q->bit.overall_length.mm > 0)
    q->bit.overall_length = spelch_length_mm (q->bit.overall_length.mm - spare);
  return true;
}

/* Changes the one thing; false where there is nothing to change. */
static bool
change (SpelchRemedy *q, SpelchRelief relief)
{
  switch (relief)
    {
    case SPELCH_RELIEF_PASSES:
      if (q->before->n_passes + 1 >= SPELCH_MAX_PASSES)
        return false;
      spelch_remedy_divide (q, q->before->n_passes + 1);
      return true;
    case SPELCH_RELIEF_SHARP:
      if (q->bit.wear <= SPELCH_WEAR_SHARP)
        return false;
      q->bit.wear = SPELCH_WEAR_SHARP;
      return true;
    case SPELCH_RELIEF_STICK_OUT:
      if (q->cut.stick_out.mm <= 0)
        return false;
      q->cut.stick_out = spelch_length_mm (0);
      return true;
    case SPELCH_RELIEF_SHORTER:
      return q->cut.stick_out.mm <= 0 && shorten (q);
    case SPELCH_RELIEF_THICKER:
      q->bit.diameter = spelch_length_mm (q->bit.diameter.mm * THICKER);
      q->bit.sharpened_diameter = spelch_length_mm (q->bit.sharpened_diameter.mm * THICKER);
      take_shank (q, q->bit.diameter.mm);
      return true;
    case SPELCH_RELIEF_MACHINE:
      q->part.machine.stiffness_n_mm *= STIFFER;
      return q->part.machine.stiffness_n_mm > 0;
    case SPELCH_N_RELIEFS:
    default:
      return false;
    }
}

void
spelch_relief_find (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                    const SpelchBit *bit, const SpelchPlan *plan, SpelchLimitKind limit,
                    bool helps[SPELCH_N_RELIEFS])
{
  bool about = limit == SPELCH_LIMIT_BENDING || limit == SPELCH_LIMIT_STRESS;
  double most = figure (plan, limit) * (1 - SPELCH_RELIEF_LEAST);
  for (int i = 0; i < SPELCH_N_RELIEFS; i++)
    {
      helps[i] = false;
      if (!about || plan->n_passes == 0 || plan->feed_mm_min <= 0)
        continue;
      SpelchRemedy q = spelch_remedy_begin (constants, part, cut, bit, plan);
      spelch_remedy_keep (&q);
      helps[i] = change (&q, (SpelchRelief)i) && spelch_remedy_serves (&q) && figure (&q.plan, limit) <= most;
    }
}

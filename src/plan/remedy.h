/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Remedy: a cut planned once more with one thing changed, to learn whether that mends it.
 */
#pragma once

#include "plan/plan.h"

typedef struct
{
  const SpelchConstants *k;
  SpelchPart part; /* a shallow copy: its lists stay the owner's */
  SpelchCut cut;
  SpelchBit bit;
  SpelchPlan plan;          /* once spelch_remedy_serves() has tried it */
  const SpelchPlan *before; /* as it was asked first */
} SpelchRemedy;

/* With nothing changed yet, so that it would give @before again. */
SpelchRemedy spelch_remedy_begin (const SpelchConstants *constants, const SpelchPart *part,
                                  const SpelchCut *cut, const SpelchBit *bit, const SpelchPlan *before);

/* Divides the depth of what was planned before into @n equal passes, @n at least 1 and under
 * SPELCH_MAX_PASSES. */
void spelch_remedy_divide (SpelchRemedy *q, guint n);

/* Keeps speed, feed and passes as they were before, so that they don't give way to what is changed. */
void spelch_remedy_keep (SpelchRemedy *q);

/* Plans it. True when that brings no stop of its own, costs no face that will be seen a grade beyond what is
 * accepted, and none that won't be more than is accepted: what fails so is no remedy. */
bool spelch_remedy_serves (SpelchRemedy *q);

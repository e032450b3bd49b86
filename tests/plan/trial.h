/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Trial: one of very many random cases that a property is tried on. The number of a case alone decides what
 * is in it, so a case that fails can be had again; it is told as a part file.
 *
 * SPELCH_CASES=N in the environment tries N cases of each property instead of the usual number, and
 * SPELCH_CASE=K only case K.
 */
#pragma once

#include "plan/plan.h"

typedef struct
{
  GRand *random; /* for what the property needs besides */
  SpelchPart *part;
  SpelchCut cut;
  SpelchBit bit;
  SpelchPlan plan; /* not made yet: for the property to fill */
  bool counts;     /* set by the property: the case was one it speaks about */
} Trial;

/* A check of one case: asserts, and sets counts. */
typedef void (*TrialCheck) (Trial *trial);

/* How many cases of a property are tried: 100 000, fewer where sanitizers slow everything down. */
guint trial_cases (void);

/* Tries @check on a @share of the usual number of random cases, at least one in @rare of which it must speak
 * about. Fails with the number of the first case that doesn't hold, and the case as a part file. */
void trial_run (guint32 seed, double share, guint rare, TrialCheck check);

/* Plans the case as it stands. */
void trial_plan (const Trial *trial, SpelchPlan *plan);

/* A bit made up altogether, valid. */
SpelchBit trial_bit (GRand *random);

/* Fails unless every double of the plan is a number. */
void trial_finite (const SpelchPlan *plan);

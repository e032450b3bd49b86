/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Relief: what makes a bit give way less, or bear less. Each was planned at the same speed and feed: it
 * lowers the figure noticeably, brings no new stop, and costs no edge more than is accepted.
 */
#pragma once

#include "plan/plan.h"

typedef enum
{
  SPELCH_RELIEF_PASSES,    /* one pass more, all alike */
  SPELCH_RELIEF_SHARP,     /* a sharp edge */
  SPELCH_RELIEF_STICK_OUT, /* no more stick-out than it needs */
  SPELCH_RELIEF_SHORTER,   /* a bit that cuts no longer than the cut is deep */
  SPELCH_RELIEF_THICKER,   /* a bit a quarter thicker */
  SPELCH_RELIEF_MACHINE,   /* a machine twice as stiff */
  SPELCH_N_RELIEFS,
} SpelchRelief;

/* Lower by this share counts as noticeable. */
#define SPELCH_RELIEF_LEAST 0.10

/* Fills @helps by SpelchRelief for @limit, SPELCH_LIMIT_BENDING or SPELCH_LIMIT_STRESS, of @plan, which was
 * made of the rest; all false for another limit and where nothing is fed. Plans up to six times. */
void spelch_relief_find (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                         const SpelchBit *bit, const SpelchPlan *plan, SpelchLimitKind limit,
                         bool helps[SPELCH_N_RELIEFS]);

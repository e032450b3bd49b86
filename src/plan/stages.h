/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Stages: a cut made with two bits, one after the other. Each stage is a plan of its own; the scoring pass is
 * that of a shallow groove along the same lines.
 */
#pragma once

#include "plan/plan.h"

/* The groove that @scorer cuts first where @cut is then made with @bit: as deep as is held or, over all
 * tolerances, as the face layer is thick; nothing else that is held goes with it. */
SpelchCut spelch_stages_groove (const SpelchConstants *constants, const SpelchPart *part,
                                const SpelchCut *cut, const SpelchBit *bit, const SpelchBit *scorer);

/* Adds the plan of the groove to that of the rest. */
void spelch_stages_join (const SpelchPlan *groove, const SpelchBit *scorer, SpelchPlan *plan);

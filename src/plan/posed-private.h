/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Posed, inside: the answer to each kind of question for any part, so that it can be asked again with things
 * a little off. Shared by the files of this room only.
 */
#pragma once

#include "plan/posed.h"

/* Plans the part's cut with its bit; of @way_up when that isn't -1. A bit that isn't there gives no passes.
 */
void spelch_posed_plan (const SpelchConstants *constants, const SpelchPart *part, int way_up,
                        SpelchPlan *plan);

/* Whether the worst edge of a side tears. */
bool spelch_posed_torn (const SpelchPlan *plan, SpelchSide side);

/* motor, far, both, neither. */
const char *spelch_posed_tears (const SpelchPlan *plan);

/* Whether a cut may be made so, and leaves every edge as accepted. */
bool spelch_posed_serves (const SpelchPart *part, const SpelchPlan *plan);

/* a, b, either, neither; @a and @b are the plans with either face toward the motor. */
const char *spelch_posed_ways (const SpelchPart *part, const SpelchPlan *a, const SpelchPlan *b);

/* stays, sliding, lifting, tilting, tabs; NULL when two things give. */
const char *spelch_posed_gives (const SpelchPlan *plan);

/* The lowest of the limits that cap the feed but don't set it; NULL when there is none. */
const SpelchLimit *spelch_posed_next (const SpelchPlan *plan);

/* What decides the answer of @posed, as a code. */
const char *spelch_posed_deciding (const SpelchPosed *posed);

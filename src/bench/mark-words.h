/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Mark words: what a mark shows and what it is called, with the verdict that hangs on it.
 */
#pragma once

#include "bench/quantity-rules.h"

/* "show face", "hidden face", "show face 2". Free with g_free(). */
char *spelch_mark_face (const SpelchPlan *plan, const SpelchCut *cut, SpelchSide side);

/* The grade of a face in a word: "clean", "badly torn"; "not cut". Not to be freed. */
const char *spelch_mark_grade (const SpelchPart *part, const SpelchPlan *plan, SpelchSide side);

/* "1 · 9.2 mm" for a pass or the overcut (tip depth), the value alone for the others. Free with g_free(). */
char *spelch_mark_pill (const SpelchPlanned *planned, SpelchQuantityId id, const SpelchNumbers *numbers);

/* "Pass 1, 6.0 mm, show face badly torn". Free with g_free(). */
char *spelch_mark_label (const SpelchPlanned *planned, SpelchQuantityId id, const SpelchNumbers *numbers);

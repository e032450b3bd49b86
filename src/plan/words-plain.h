/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plain words: what happens at the machine, for somebody who has never stood at one: a reason in a sentence
 * or two, without points, sources or advice. The chains of reasons (words-why.h) say the rest.
 */
#pragma once

#include "plan/words.h"

/* Why the worst edge of a side comes out as it does; what decides it in the plan is what is said. "" where
 * nothing opens that side. Free with g_free(). */
char *spelch_words_plain_edge (const SpelchPart *part, const SpelchPlan *plan, SpelchSide side);

/* What passing a limit means at the machine. Not to be freed. */
const char *spelch_words_plain_limit (SpelchLimitKind kind, const SpelchPlan *plan);

/* What weighs as much as a force presses: "58 kg", beside inches "130 lb". Free with g_free(). */
char *spelch_words_plain_weight (double newtons, const SpelchNumbers *numbers);

/* What a spoilboard that has been cut here before does to the face over its groove. Not to be freed. */
const char *spelch_words_plain_groove (void);

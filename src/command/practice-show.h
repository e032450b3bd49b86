/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice shown: the list of exercises, a question, and an answer that was graded, as text to read or as
 * JSON. All strings are newly allocated; free with g_free().
 */
#pragma once

#include "command/practice-asked.h"
#include "plan/posed.h"

/* The exercises that were asked for. */
char *spelch_practice_list_text (const SpelchPracticeAsked *asked);
char *spelch_practice_list_json (const SpelchPracticeAsked *asked);

/* @given: NULL where nothing was answered, and nothing is given away. @reckoning: with
 * the full reckoning behind the right answer; in JSON it is always there. */
char *spelch_practice_text (const SpelchPosed *posed, const SpelchGiven *given, bool reckoning,
                            const SpelchNumbers *numbers);
char *spelch_practice_json (const SpelchPosed *posed, const SpelchGiven *given);

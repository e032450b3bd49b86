/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words on choosing: what speaks for and against a bit, and what to look for when none will do, in sentences.
 */
#pragma once

#include "plan/choose.h"
#include "plan/knife.h"
#include "plan/wanted.h"
#include "plan/words.h"

/* A reason in a sentence with this case's numbers. Free with g_free(). */
char *spelch_words_reason (const SpelchChoice *choice, const SpelchReason *reason,
                           const SpelchNumbers *numbers);

/* What a knife would do before routing, in a sentence; "" when it wouldn't help. Free with g_free(). */
char *spelch_words_knife (const SpelchKnife *knife, const SpelchNumbers *numbers);

/* What to look for: a sentence for each kind of bit that would do, or one that says that none would. @cut is
 * the cut it was found for. NULL-terminated; free with g_strfreev(). */
char **spelch_words_wanted (const SpelchWanted *wanted, const SpelchCut *cut, const SpelchNumbers *numbers);

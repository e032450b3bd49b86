/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words on choosing: what speaks for and against a bit, and what to look for when none will do, in sentences.
 */
#pragma once

#include "plan/choose.h"
#include "plan/words.h"

/* A reason in a sentence with this case's numbers. Free with g_free(). */
char *spelch_words_reason (const SpelchChoice *choice, const SpelchReason *reason,
                           const SpelchNumbers *numbers);

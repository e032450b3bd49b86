/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words on comparing bits: the rows' names, their values as people read them, and what sets the bits apart.
 */
#pragma once

#include "plan/compare.h"
#include "plan/words.h"

/* "Motor side", "Cutting time". Not to be freed. */
const char *spelch_words_row (SpelchRow row);

/* "clean", "1 min 52 s", "lifts 2 N"; "–" where it doesn't apply. g_free() it. */
char *spelch_words_compared (const SpelchCompared *one, SpelchRow row, const SpelchNumbers *numbers);

/* What differs, most important first, in one or two sentences. NULL-terminated; g_strfreev() it. */
char **spelch_words_differs (const GArray *columns, const SpelchPart *part);

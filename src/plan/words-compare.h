/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words on comparing bits: the rows' names, their values as people read them, and what sets the bits apart.
 */
#pragma once

#include "plan/compare.h"
#include "plan/words.h"

/* "Motor side", "Cutting time". Not to be freed. */
const char *spelch_words_row (SpelchRow row);

/* The same, but a face by its own name: "Show face, motor side". g_free() it. */
char *spelch_words_row_of (const GArray *columns, SpelchRow row);

/* The stretch of scanned depths from the one with index @from to the one before @to: "from 5.5 mm", "up to
 * 9.0 mm", "at every depth". g_free() it. */
char *spelch_words_stretch (const SpelchScan *scan, guint from, guint to, const SpelchNumbers *numbers);

/* At which depths of the first pass each face comes out clean, a sentence for each face that is cut: "Show
 * face: clean from 5.5 mm. Hidden face: clean at every depth." g_free() it. */
char *spelch_words_scan (const SpelchCompared *one, const SpelchScan *scan, const SpelchNumbers *numbers);

/* "clean", "1 min 52 s", "lifts 2 N"; "–" where it doesn't apply. g_free() it. */
char *spelch_words_compared (const SpelchCompared *one, SpelchRow row, const SpelchNumbers *numbers);

/* What differs, most important first, in one or two sentences. NULL-terminated; g_strfreev() it. */
char **spelch_words_differs (const GArray *columns, const SpelchPart *part);

/* That a bit may not be used for the cut, and why: its plan has a stop. g_free() it. */
char *spelch_words_refusal (const SpelchCompared *one, const SpelchNumbers *numbers);

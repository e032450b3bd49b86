/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words of the shop log: what came out in an entry, and what the log teaches, in complete translatable
 * sentences. All strings returned are newly allocated; free with g_free().
 */
#pragma once

#include "plan/corrections.h"
#include "plan/words.h"

/* "Far side: fuzzy grain, torn grain reckoned"; "Motor side: clean, as reckoned". @laminate: as of
 * spelch_words_grade(). */
char *spelch_words_log_entry (const SpelchLogEntry *entry, bool laminate);

/* "Test strip; burnt, chattered." What else there is to say of an entry; "" when nothing. */
char *spelch_words_log_remarks (const SpelchLogEntry *entry);

/* "The far side came out worse than reckoned in 3 of 3 cuts, so it is graded a point worse here." What is
 * taught about one side, or what is still missing to teach something; "" when no entry is about it. */
char *spelch_words_log_side (const SpelchTally *tally, const SpelchLearnt *learnt, bool motor,
                             const SpelchNumbers *numbers);

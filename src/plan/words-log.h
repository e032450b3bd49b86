/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words of the shop log: what came out in an entry, and what the log teaches, in complete translatable
 * sentences. All strings returned are newly allocated; free with g_free().
 */
#pragma once

#include "plan/corrections.h"
#include "plan/words.h"

/* "Far side: fuzzy grain, torn grain reckoned"; "Motor side: clean, as reckoned". @facing: as of
 * spelch_words_grade(). */
char *spelch_words_log_entry (const SpelchLogEntry *entry, SpelchFacing facing);

/* "Test strip; burnt, chattered." What else there is to say of an entry; "" when nothing. */
char *spelch_words_log_remarks (const SpelchLogEntry *entry);

/* "3 readings of the spindle's load put the forces in this board at 1.12 times the tables'." */
char *spelch_words_log_forces (const SpelchCalibration *calibration, const SpelchNumbers *numbers);

/* What the log says about one side while it corrects nothing: how many of the @needed entries there are that
 * agree; "" when no entry is about it. */
char *spelch_words_log_waiting (const SpelchTally *tally, guint needed, bool motor,
                                const SpelchNumbers *numbers);

/* "Your log corrects the forces: 2.90 times". What of a plan isn't by the tables alone, without a full stop;
 * "" when all is. */
char *spelch_words_log_corrects (const SpelchPlan *plan, const SpelchNumbers *numbers);

/* A way cut: "2.4 m", "31 m"; feet beside inches. */
char *spelch_words_way (const SpelchNumbers *numbers, double metres);

/* "It has cut 12 m since it was sharpened on 2026-05-31.", and a line for each earlier edge, latest first. */
char *spelch_words_edge_now (const SpelchBit *bit, const SpelchNumbers *numbers);
char *spelch_words_edges_before (const SpelchBit *bit, const SpelchNumbers *numbers);

/* "The far side came out worse than reckoned in 3 of 3 cuts, so it is graded a point worse here." What is
 * taught about one side, or what is still missing to teach something; "" when no entry is about it. */
char *spelch_words_log_side (const SpelchTally *tally, const SpelchLearnt *learnt, bool motor,
                             const SpelchNumbers *numbers);

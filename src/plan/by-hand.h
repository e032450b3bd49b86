/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * By hand: a spindle speed or feed that a person sets: reading it as typed, writing it so that nothing of it
 * is lost, and whether the machine can do it.
 */
#pragma once

#include "plan/plan.h"
#include "plan/words.h"

/* Reads "18000", "18 000 rpm", and the units that other languages show: "U/min", "tr/min", "min-1". Rounded
 * to a whole number of turns. False with a sentence for the person who typed (SPELCH_LENGTH_ERROR). */
bool spelch_by_hand_read_speed (const char *text, double *rpm, GError **error);

/* Reads "5400", "5 400 mm/min", "5,4 m/min", "213 in/min", "17.7 ft/min", or as one counts it by hand: "a
 * metre in 22 s", "2 ft in 9 s" (rounded to 1 mm/min). A bare number takes the unit that @numbers shows feeds
 * in. False with a sentence, as above. */
bool spelch_by_hand_read_feed (const char *text, const SpelchNumbers *numbers, double *mm_min,
                               GError **error);

/* A feed as spelch_words_feed(), with as many more decimals, up to three, as it takes. Free with g_free(). */
char *spelch_by_hand_write_feed (const SpelchNumbers *numbers, double mm_min);

/* A sentence when @machine doesn't turn at @rpm, or doesn't feed as quickly as @mm_min in the case that @plan
 * was made for; else NULL. Free with g_free(). */
char *spelch_by_hand_speed_fault (const SpelchMachine *machine, double rpm);
char *spelch_by_hand_feed_fault (const SpelchPlan *plan, double mm_min, const SpelchNumbers *numbers);

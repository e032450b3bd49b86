/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words on limits: how quickly a hand feeds, what holds the spindle speed, and what to do where limits
 * conflict. Newly allocated; free with g_free().
 */
#pragma once

#include "plan/conflict.h"
#include "plan/words.h"

/* A feed one can count by hand, "a metre in 22 s", or "a foot in 7 s"; "" on a gantry and without feed. */
char *spelch_words_pace (const SpelchPlan *plan, const SpelchNumbers *numbers);

/* "The next speed, 24 000 rpm, is above the 23 000 rpm marked on the bit." */
char *spelch_words_speed_held (const SpelchPlan *plan);

/* "Slow for this bit: its edges move at only 4.0 m/s, and so slowly forces are less sure."; "" where they
 * move as quickly as the force formulas were made for. */
char *spelch_words_slow (const SpelchPlan *plan, const SpelchNumbers *numbers);

/* "At 18 000 rpm heat asks for at least 2 100 mm/min and bending allows 1 400 mm/min: it takes passes of no
 * more than 4.0 mm."; "" without a conflict. */
char *spelch_words_conflict (const SpelchConflict *conflict, const SpelchPlan *plan,
                             const SpelchNumbers *numbers);

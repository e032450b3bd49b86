/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words of slow motion: what the shear does to the board at an instant, where its chips go, and how slow it
 * is shown. All strings are newly allocated; free with g_free().
 */
#pragma once

#include "plan/motion.h"
#include "plan/words.h"

/* The board is said to do neither below this, N. */
#define SPELCH_WORDS_NEXT_TO_NOTHING 0.05

/* "lifts 3.1 N (1.5 to 6.2)"; on a router table "draws to the table 3.1 N (1.5 to 6.2)"; "neither lifts nor
 * presses". */
char *spelch_words_motion_force (const SpelchBand *axial, SpelchMachineKind machine,
                                 const SpelchNumbers *numbers);

/* What a force toward the motor (@up) does, or one away from it, in a word or two: "lifts". */
char *spelch_words_motion_way (bool up, SpelchMachineKind machine);

/* Where the chips of a pass go: "Chips go up the flutes and out." */
char *spelch_words_motion_chips (const SpelchMotionPass *pass);

/* How full its flutes are: "They fill 58 % of the flutes' room." */
char *spelch_words_motion_room (const SpelchMotionPass *pass);

/* That it isn't all of the pass that is shown: "Four turns of the bit are shown; the whole pass takes 27 s."
 */
char *spelch_words_motion_extent (const SpelchMotionPass *pass);

/* "1/600 of real time, one tooth a second", "1/20 of real time, 30 teeth a second, drawn blurred". @ratio: of
 * real time, @teeth: a second. */
char *spelch_words_motion_speed (double ratio, double teeth, bool blurred, const SpelchNumbers *numbers);

/* "Pass 1 of 2, to 9.2 mm". @pass from 0. */
char *spelch_words_motion_pass (const SpelchMotion *motion, guint pass, const SpelchNumbers *numbers);

/* The instant in sentences, for people who can't see it. */
char *spelch_words_motion_frame (const SpelchMotion *motion, const SpelchMotionFrame *frame,
                                 SpelchMachineKind machine, const SpelchNumbers *numbers);

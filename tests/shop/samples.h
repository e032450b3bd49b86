/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Samples: invented values without a fault, to be spoilt one member at a time.
 */
#pragma once

#include "shop/part.h"

/* 12.7 mm compression bit, 15.9 mm of up-shear in 35 mm of cutting length. */
SpelchBit sample_bit (void);

/* 6 mm birch plywood of five plies: 1.0, 1.4, 1.2, 1.4, 1.0 mm; long grain on both faces. */
SpelchBoard sample_board (void);

/* Gantry router, 8000 to 24000 rpm, zero on the bed. */
SpelchMachine sample_machine (void);

/* Outline, right through. */
SpelchCut sample_cut (void);

/* All of them together; the cut is for the bit. A new reference. */
SpelchPart *sample_part (void);

/* Asserts that @fault is a sentence that has both words in it, and frees it. */
void assert_fault (char *fault, const char *member, const char *value);

/* Asserts that there's no fault. */
void assert_sound (char *fault);

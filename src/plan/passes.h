/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Passes: ways of dividing a cut's depth, with what the maker holds kept and the clean windows respected.
 */
#pragma once

#include "plan/case.h"

/* The overcut to set: held, or inside the far face's window. 0 for a blind cut. */
double spelch_passes_overcut (const SpelchCase *c, const SpelchWindows *windows);

/* Whether the passes are what the maker holds: those depths, or the whole depth at once. */
bool spelch_passes_held (const SpelchCase *c);

/* Divides the depth left by a scoring pass into about @steps passes into @passes, with a finishing pass, or
 * one through a skin, as the pass plan has it; at most SPELCH_MAX_PASSES with the scoring pass; held passes
 * are taken as they are. Gives their number, or 0 when it can't be done with steps the bit can take. */
guint spelch_passes_divide (const SpelchCase *c, const SpelchWindows *windows, double final_depth,
                            guint steps, SpelchPass passes[SPELCH_MAX_PASSES]);

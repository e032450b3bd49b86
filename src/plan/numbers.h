/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Numbers: the figures of a plan once its passes, speed and feed are settled: chips, forces with their bands,
 * what they do to the board's seat and the bit, limits in order, time.
 */
#pragma once

#include "plan/solve.h"

/* Fills the numbers of @plan; its passes, entry and stick-out are already there. */
void spelch_numbers_fill (const SpelchCase *c, const SpelchLoads *const *loads,
                          const SpelchSolution *solution, SpelchPlan *plan);

/* The band of an axial force, N: out by a factor either way. */
SpelchBand spelch_numbers_axial (const SpelchConstants *constants, double mid);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Solve: the speed and feed a set of passes can be cut at, with every limit's share, and the one that sets
 * it.
 */
#pragma once

#include "plan/loads.h"

typedef struct
{
  double speed_rpm, feed_mm_min; /* 0 when nothing fits */
  double feed_per_tooth;
  SpelchLimitKind binding;         /* the limit that sets a feed which isn't held */
  double share[SPELCH_N_LIMITS];   /* 0 where a limit doesn't apply */
  double feed_at[SPELCH_N_LIMITS]; /* mm/min at which each is reached, as in SpelchLimit */
  SpelchSpeedHeld speed_held;
  double machine_gives_mm; /* part of the largest deflection */
  guint worst_pass;        /* index of the pass that needs most power */
} SpelchSolution;

/* @chip_limit: largest chip of the last pass, mm, that costs no seen edge a grade; HUGE_VAL when none does.
 * Held speed and feed are kept whatever they cost. */
SpelchSolution spelch_solve (const SpelchCase *c, const SpelchLoads *const *loads, guint n_passes,
                             double chip_limit);

/* A feed, mm/min, that no pass as wide as the cut can be fed quicker than; with @chip_limit for the last
 * pass, unless that is narrower. */
double spelch_solve_quickest (const SpelchCase *c, double chip_limit);

/* Deflection allowed at the tip for the grade accepted on seen edges, mm. */
double spelch_solve_deflection_limit (const SpelchCase *c);

/* Stress the bit's body may carry, MPa. */
double spelch_solve_stress_limit (const SpelchCase *c);

/* Sideways force that hands hold against, N; 0 on a gantry. */
double spelch_solve_hands_limit (const SpelchCase *c);

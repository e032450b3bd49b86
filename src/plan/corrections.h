/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Corrections: what the shop log teaches, found by comparing what came out with what was foretold. All of it
 * is shop practice: whose results they are, the log knows.
 *
 * Entries count for a board and a bit after the day the bit was last sharpened or replaced, unless the work
 * moved or the cut chattered, which says nothing about the shear. Each side of the board is judged by itself:
 *
 *   window  A face that a compression bit should have pressed in, and that came out worse although it was
 *           clear of the turn-over, by less than 1 mm: the turn-over counts as nearer by the clearance of the
 *           worst of them and the tolerance of setting a depth, 1 mm at most. Windows only ever get narrower.
 *   points  Otherwise the shear points of the side shift by one, for the better or the worse.
 *
 * Either needs two results that agree and that outnumber those against.
 */
#pragma once

#include "plan/plan.h"
#include "shop/log-entry.h"

/* The entries on one side of a board and a bit. */
typedef struct
{
  guint counted; /* those that count */
  guint as_foretold, better, worse;
  guint before; /* of before the bit's edge was made new: they no longer count */
  guint passed; /* moved or chattered: they don't count */
} SpelchTally;

/* Of the side toward the motor (@motor), or of the far one. */
SpelchTally spelch_corrections_tally (const char *board, const SpelchBit *bit, bool motor,
                                      const SpelchLogEntry *entries, guint n);

/* What @entries teach about @bit in the board with that id; false when nothing. */
bool spelch_corrections_learn (const SpelchConstants *constants, const char *board, const SpelchBit *bit,
                               const SpelchLogEntry *entries, guint n, SpelchCorrection *learnt);

/* The factor on the forces in that board: the median of measured over foretold power of all entries that hold
 * both; a cut that clogged doesn't count, nor does a ratio that can't be believed. False when there is none.
 */
bool spelch_corrections_calibrate (const char *board, const SpelchLogEntry *entries, guint n,
                                   SpelchCalibration *calibration);

/* The newest of the readings that count for it; NULL when there is none. */
const SpelchLogEntry *spelch_corrections_last_reading (const char *board, const SpelchLogEntry *entries,
                                                       guint n);

/* Puts what @entries teach about the part's board with each of @bits, and the board's factor, into a part not
 * yet shared, in place of what it held of them. What was switched off stays so. */
void spelch_corrections_take (const SpelchConstants *constants, SpelchPart *part, const SpelchBit *bits,
                              guint n_bits, const SpelchLogEntry *entries, guint n);

/* An entry on @edge of a plan of @cut, as foretold. Id, date, revision and what came out are for the caller
 * to fill in. */
SpelchLogEntry spelch_corrections_entry (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit,
                                         const SpelchPlan *plan, const SpelchEdge *edge);

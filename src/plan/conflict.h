/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Conflict: where no speed and feed keep to every limit, which two of them ask for opposite things, and what
 * would free them. Each remedy was planned: it fits, brings no new stop, and costs no edge more than is
 * accepted.
 */
#pragma once

#include "plan/plan.h"

/* What would do, and the unit of its value. */
typedef enum
{
  SPELCH_FREE_SPEED,     /* another spindle speed than the one held, rpm */
  SPELCH_FREE_FEED,      /* another feed than the one held, mm/min */
  SPELCH_FREE_PASS,      /* passes no deeper than that, mm */
  SPELCH_FREE_EDGES,     /* a bit with so many cutting edges */
  SPELCH_FREE_STICK_OUT, /* no more stick-out than that, mm */
  SPELCH_FREE_SHARP,     /* a sharp edge */
  SPELCH_FREE_ACCEPTED,  /* that grade accepted on seen edges */
  SPELCH_FREE_HOLDING,   /* so much press by clamps, N */
  SPELCH_N_FREES,
} SpelchFreeKind;
extern const SpelchCodes
    SPELCH_FREE_CODES; /* speed, feed, pass, edges, stick-out, sharp, accepted-seen, holding */

typedef struct
{
  SpelchFreeKind kind;
  double value;
} SpelchFree;

/* One side of it. */
typedef struct
{
  bool held;             /* the feed set by hand; then @limit tells nothing */
  SpelchLimitKind limit; /* heat asks for its caution, not only for less than burning */
  double feed_mm_min;
} SpelchConflictEnd;

typedef struct
{
  bool found; /* the rest tells nothing when false */
  double speed_rpm;
  SpelchConflictEnd low, high; /* asks for at least, allows at most */
  guint n_freed;
  SpelchFree freed[SPELCH_N_FREES];
} SpelchConflict;

/* Looks for a conflict in @plan, made of the rest. Plans some tens of times where there is one, so takes up
 * to some milliseconds. */
SpelchConflict spelch_conflict_find (const SpelchConstants *constants, const SpelchPart *part,
                                     const SpelchCut *cut, const SpelchBit *bit, const SpelchPlan *plan);

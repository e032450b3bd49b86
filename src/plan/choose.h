/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Choose: every bit of a list, either way up, for one cut, in order of preference, each with what speaks for
 * and against it. A reason comes from the numbers of the plan, never from the kind of bit.
 */
#pragma once

#include "plan/plan.h"

typedef enum
{
  /* for */
  SPELCH_REASON_ACCEPTED,   /* every edge comes out as accepted; value: the worst seen grade, limit: hidden */
  SPELCH_REASON_PRESSES_IN, /* presses a face in toward the middle of the board; value: its grade */
  SPELCH_REASON_BACKED,     /* a face that isn't pressed in rests on a firm backing; value: its grade */
  SPELCH_REASON_CARRIES_UP, /* chips are carried out; value: share of the height, limit: chip room used */
  SPELCH_REASON_PRESSES_DOWN, /* keeps board, bed, table or base together; N */
  /* against */
  SPELCH_REASON_STOP,          /* must not be cut: see the stop */
  SPELCH_REASON_TEARS,         /* a face comes out worse than accepted; value: its grade, limit: accepted */
  SPELCH_REASON_TIP_TOO_LONG,  /* up-shear, mm, and the most that would serve (0: none would) */
  SPELCH_REASON_TIP_TOO_SHORT, /* up-shear, mm, and the least that would serve */
  SPELCH_REASON_PACKS_CHIPS,   /* chips are pressed into a closed cut; as CARRIES_UP */
  SPELCH_REASON_LIFTS,         /* parts the board from what it lies on, N; limit: press it takes to hold, N */
  SPELCH_REASON_BENDS,         /* more than accepted, mm, and the limit */
  SPELCH_REASON_HOT,           /* the wall gets hot, mJ/mm2, and the caution */
  SPELCH_REASON_WORN,          /* a blunt edge costs grades; value: points */
  SPELCH_REASON_SLOW,          /* s, and the time of the quickest choice that is as good */
  SPELCH_N_REASONS,
} SpelchReasonKind;
extern const SpelchCodes SPELCH_REASON_CODES;

typedef struct
{
  SpelchReasonKind kind;
  SpelchSide side;     /* PRESSES_IN, BACKED, TEARS */
  SpelchFace face;     /* the same face, as the board names it */
  bool seen;           /* and whether it is seen */
  SpelchTermKind term; /* TEARS: what costs most points */
  SpelchLoad load;     /* and how the face is loaded, or was by the entry */
  double chip_mm;      /* and the chip that does it */
  SpelchStop stop;     /* STOP */
  double value, limit;
} SpelchReason;

#define SPELCH_MAX_REASONS 32

/* One bit, one way up, in one way of dividing the depth. */
typedef struct
{
  guint bit;                /* index in the list */
  int scorer;               /* of the bit that scores first; -1: none */
  bool pinned;              /* the pass plan isn't what the cut would be given with nothing held */
  SpelchPassPlan pass_plan; /* to hold it by, when pinned */
  SpelchFace way_up;
  int seen, hidden; /* worst grades; 0: no such edge */
  bool meets;       /* both are accepted */
  guint n_reasons;
  SpelchReason reasons[SPELCH_MAX_REASONS]; /* those for it first */
  SpelchPlan plan;
} SpelchChoice;

/* Whether a reason speaks for the bit. */
bool spelch_reason_is_for (SpelchReasonKind kind);

/* @cut as it would be planned with @bit, @way_up: what was held of passes, overcut, allowance, speed and feed
 * belongs to the accepted bit and is left out for every other. */
SpelchCut spelch_choose_cut (const SpelchCut *cut, const SpelchBit *bit, SpelchFace way_up);

/* The same with the pass plan of @choice, which was ranked among @bits. A bit that scores has to be put into
 * the part along with the other one. */
SpelchCut spelch_choose_chosen (const SpelchCut *cut, const SpelchBit *bits, const SpelchChoice *choice);

/* Time that a choice takes, s, with the change to the second bit where one scores. */
double spelch_choose_time (const SpelchConstants *constants, const SpelchChoice *choice);

/* The choices for @cut, most preferred first: what may not be cut last; then what comes out as accepted on
 * seen and hidden edges, or else the best seen, then hidden edges; then what doesn't bend too much; then
 * least time (with a bit change where a second bit scores), least wear, and id. A through cut is tried either
 * way up, a blind one only from the face it lies in. Each bit comes once, each way up, with as few passes as
 * serve; a finishing pass, an onion skin or a scoring pass with another bit come besides where they make it
 * better in more than time. The pass plans are tried where they can change anything: the first two with bits
 * that have both hands of shear or where tabs are too weak, scoring where the motor-side face isn't as
 * accepted, for the eight bits that would be best without that face, each with the eight most alike in
 * diameter that press it in. @bits need not be the part's. Elements are SpelchChoice *; g_ptr_array_unref()
 * it. */
GPtrArray *spelch_choose_rank (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                               const SpelchBit *bits, guint n_bits);

/* The recommended choice: the first, unless that may not be cut; then NULL. */
const SpelchChoice *spelch_choose_best (const GPtrArray *ranking);

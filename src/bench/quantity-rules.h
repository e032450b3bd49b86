/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Quantity rules: what can be dragged or typed beside the drawing (pass depths, overcut, board thickness,
 * finishing allowance): its value in a plan, how far it may go and what stops it there, and the part that
 * results when it is set or let go. Pure functions; a later part is a new value.
 */
#pragma once

#include "drawing/scene.h"
#include "plan/plan.h"
#include "plan/words.h"

/* Which quantity; @index is the pass, from 1, and 0 for the others. A pass of index 0 is the floor of a blind
 * cut: its last pass, whatever number it has, set by the cut's own depth. */
typedef struct
{
  SpelchMarkKind kind;
  guint index;
} SpelchQuantityId;

/* The cut of a part with its plan. */
typedef struct
{
  const SpelchPart *part;
  guint cut; /* index */
  const SpelchCut
      *made;            /* as planned: what is held belongs to the accepted bit and is left out for another */
  const SpelchBit *bit; /* that it was planned with */
  const SpelchPlan *plan;
  bool asked; /* somebody is asked what comes out: words don't tell it */
} SpelchPlanned;

/* The quantities of a cut, in the order they are shown, at most @most; gives their number. */
guint spelch_quantity_list (const SpelchPlanned *planned, SpelchQuantityId *ids, guint most);
#define SPELCH_MAX_QUANTITIES (SPELCH_MAX_PASSES + 3)

bool spelch_quantity_same (SpelchQuantityId a, SpelchQuantityId b);

/* What keeps a quantity from going further. */
typedef enum
{
  SPELCH_STOPPED_BY_FACE,       /* the board's face */
  SPELCH_STOPPED_BY_SHALLOWER,  /* the pass before */
  SPELCH_STOPPED_BY_DEEPER,     /* the pass after */
  SPELCH_STOPPED_BY_STEP,       /* what one pass may cut; the planner would put another pass in */
  SPELCH_STOPPED_BY_REACH,      /* what the bit reaches */
  SPELCH_STOPPED_BY_COMING_OUT, /* a blind cut stays blind */
  SPELCH_STOPPED_BY_CUT,        /* the deepest blind cut of the part */
  SPELCH_STOPPED_BY_BOARD,      /* another board would have to be chosen */
  SPELCH_STOPPED_BY_NOTHING_LEFT,
  SPELCH_STOPPED_BY_BIT_WIDTH,
} SpelchQuantityLimit;

typedef struct
{
  double value;                           /* mm */
  double lower, upper;                    /* how far it may go, mm; the value always lies between */
  SpelchQuantityLimit at_lower, at_upper; /* what stops it there */
  bool held;                              /* set by hand and can be let go */
  SpelchLength typed;                     /* as typed when held, else the plain value */
} SpelchReading;

/* What there is to show of a quantity in a plan. */
SpelchReading spelch_quantity_read (const SpelchPlanned *planned, SpelchQuantityId id);

/* The pass whose tip depth the quantity sets, from 1; 0 for thickness and allowance. */
guint spelch_quantity_pass (const SpelchPlanned *planned, SpelchQuantityId id);

/* Whether the quantity is the depth of a scoring pass, made with another bit. */
bool spelch_quantity_scores (const SpelchPlanned *planned, SpelchQuantityId id);

/* A new part with the quantity at @length, held. A depth or allowance set by hand goes with the bit it was
 * planned with, so that bit is accepted. Reference count of one. */
SpelchPart *spelch_quantity_set (const SpelchPlanned *planned, SpelchQuantityId id,
                                 const SpelchLength *length);

/* A new part in which the quantity follows the recommendation again (a thickness: the size it is sold as). */
SpelchPart *spelch_quantity_release (const SpelchPlanned *planned, SpelchQuantityId id);

/* One arrow key's step (a tenth of a millimetre, a 64th of an inch) and one page key's (1 mm, a 16th). mm */
double spelch_quantity_step (SpelchUnit unit);
double spelch_quantity_page (SpelchUnit unit);

/* Words. Free with g_free(). */
char *spelch_quantity_name (SpelchQuantityId id);         /* "Pass 1", "Board thickness" */
char *spelch_quantity_merge (SpelchQuantityId id);        /* "pass.1", "thickness": the same step of undo */
char *spelch_quantity_gesture (SpelchQuantityId id);      /* what undo will say: "move pass 1" */
char *spelch_quantity_release_name (SpelchQuantityId id); /* "let the passes go" */
/* What stops it at its upper or lower end: "Stops here: the bit reaches 22 mm." */
char *spelch_quantity_stop (const SpelchPlanned *planned, SpelchQuantityId id, bool upper,
                            const SpelchNumbers *numbers);

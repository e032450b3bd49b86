/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Motion: a cut in slow motion, as numbers. Each pass is shown over a few turns of the bit; what is to be
 * seen at an instant follows from the pass and the turn alone, so that playing, stepping, scrubbing and a
 * saved film show the same. Forces, chips and chip room are those of the plan, by the same functions.
 *
 * Angles of edges are those of mechanics/force.h: 0 at the wall left of the travel, pi/2 ahead, pi at the
 * wall on the right; seen along the feed an edge stands at -R cos(angle), in front where the sine is
 * negative.
 */
#pragma once

#include "mechanics/force.h"
#include "plan/plan.h"

#define SPELCH_MOTION_TURNS 4   /* of the bit, for each pass */
#define SPELCH_TRACE_POINTS 241 /* over one turn, both ends included */
#define SPELCH_MOST_CHIPS   640

/* One pass: what doesn't change while the bit turns. */
typedef struct
{
  guint bit;         /* 0: the bit; 1: the scoring bit */
  double depth;      /* of the tip below the motor-side face, mm */
  double stock_from; /* depths between which it cuts: board, and bed or backer where it does; mm */
  double stock_to;
  SpelchForceCase force;
  double feed_per_tooth, chip_max; /* mm */
  double chip_room; /* share of the flutes' room that its chips fill; 0: they fall out freely */
  int teeth;        /* in a turn */
  double tooth_s;   /* from one tooth to the next, in reality, s */
  double cutting_s; /* the whole pass in reality, entry left out, s */
  SpelchBand axial; /* mean over a turn, N, + toward the motor */
  const SpelchConstants *constants;  /* must outlive it */
  double trace[SPELCH_TRACE_POINTS]; /* axial force over a turn, N */
} SpelchMotionPass;

typedef struct
{
  guint n_passes;     /* 0: the plan has no passes or no feed */
  double most, least; /* of all traces with their bands and of zero, N */
  double thickness;   /* of the board, mm */
  guint n_edges;
  SpelchEdge edges[SPELCH_MAX_EDGES]; /* of the plan */
  SpelchMotionPass passes[SPELCH_MAX_PASSES];
} SpelchMotion;

/* Of a plan that spelch_plan_make() made of just these; a scoring bit must be one of the part's. Free with
 * g_free(). */
SpelchMotion *spelch_motion_new (const SpelchConstants *constants, const SpelchPart *part,
                                 const SpelchCut *cut, const SpelchBit *bit, const SpelchPlan *plan);

/* How far the bit turns in a pass as it is shown, and from one tooth to the next, rad. */
double spelch_motion_length (const SpelchMotionPass *pass);
double spelch_motion_tooth (const SpelchMotionPass *pass);

/* Axial force of a pass at an instant, N, + toward the motor, with its band. */
SpelchBand spelch_motion_axial (const SpelchMotionPass *pass, double turned);

/* An edge at the tip, seen from the motor. */
typedef struct
{
  double angle;     /* as above, 0 to 2 pi */
  bool cutting;     /* it is in the wood */
  double thickness; /* of the chip it takes just then, mm */
} SpelchMotionTooth;

/* A chip that an edge has let go. */
typedef struct
{
  double across;   /* right of the axis, seen along the feed with the motor above, mm */
  double depth;    /* below the motor-side face, mm; negative: above it */
  double rise;     /* mm toward the motor for each rad */
  double strength; /* 0 to 1: it comes, and fades */
  int hand;        /* the shear that sends it: +1 up, -1 down, 0 none */
  bool rests;      /* it is left in the kerf */
  bool in_front;   /* of the bit's axis, so that the bit doesn't hide it */
  guint seed;      /* the same for the same chip at every instant */
} SpelchMotionChip;

/* What is to be seen at an instant. */
typedef struct
{
  guint pass;    /* from 0 */
  double turned; /* rad */
  SpelchBand axial;
  guint n_teeth;
  SpelchMotionTooth teeth[SPELCH_MAX_TEETH];
  double opened[SPELCH_MAX_EDGES]; /* how far the splinters of each edge of the plan have come, 0 to 1 */
  guint n_chips;
  SpelchMotionChip chips[SPELCH_MOST_CHIPS];
} SpelchMotionFrame;

/* @pass from 0; @turned is taken as within the pass's length. A frame without anything when there are no
 * passes. */
void spelch_motion_at (const SpelchMotion *motion, guint pass, double turned, SpelchMotionFrame *frame);

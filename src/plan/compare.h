/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Compare: the same cut made with two to four bits, number beside number, with the best and the worst of each
 * row, and how either face would come out at every depth of the first pass.
 */
#pragma once

#include "plan/choose.h"
#include "plan/plan.h"

#define SPELCH_COMPARE_LEAST 2
#define SPELCH_COMPARE_MOST  4

typedef enum
{
  SPELCH_ROW_MOTOR_EDGE, /* grade */
  SPELCH_ROW_FAR_EDGE,   /* grade */
  SPELCH_ROW_PASSES,
  SPELCH_ROW_SPEED,   /* rpm; neither is better */
  SPELCH_ROW_FEED,    /* mm/min */
  SPELCH_ROW_TIME,    /* s */
  SPELCH_ROW_SEAT,    /* N, parting board and bed, table or base; negative presses them together */
  SPELCH_ROW_HOLD,    /* factor, nominal */
  SPELCH_ROW_POWER,   /* W */
  SPELCH_ROW_RUBBING, /* share */
  SPELCH_ROW_ROOM,    /* share */
  SPELCH_ROW_WEAR,    /* share of an edge's life, one piece */
  SPELCH_ROW_COST,    /* of that wear, in the shop's money */
  SPELCH_N_ROWS,
} SpelchRow;
extern const SpelchCodes SPELCH_ROW_CODES;

typedef enum
{
  SPELCH_STANDING_BETWEEN,
  SPELCH_STANDING_BEST,
  SPELCH_STANDING_WORST,
} SpelchStanding;
extern const SpelchCodes SPELCH_STANDING_CODES;

/* A number of one bit. */
typedef struct
{
  bool told; /* false where it doesn't apply; then the rest tells nothing */
  double value;
  SpelchStanding standing; /* among those that may be cut */
} SpelchComparedValue;

typedef struct
{
  const SpelchBit *bit; /* the caller's */
  SpelchCut cut;        /* as it was planned */
  SpelchPlan plan;
  SpelchComparedValue values[SPELCH_N_ROWS];
} SpelchCompared;

/* Which bits to compare to begin with, best first: of @ranking, which is of @bits, the one that the cut has
 * accepted, else the best as it lies, and then the best of each other kind. Where all are of one kind, the
 * best two of it. Gives their number and puts their indices among @bits into @picked. */
guint spelch_compare_pick (const GPtrArray *ranking, const SpelchBit *bits, const SpelchCut *cut,
                           guint picked[SPELCH_COMPARE_MOST]);

/* The best of @ranking as the cut lies that isn't @picked yet; false when there is none. */
bool spelch_compare_pick_next (const GPtrArray *ranking, const SpelchCut *cut, const guint *picked, guint n,
                               guint *next);

/* The cut with each of the bits, way up as it lies: every bit at the depths recommended for it or, @tied, all
 * at those of the first. What is held belongs to the accepted bit alone, as where bits are ranked. @n lies
 * within SPELCH_COMPARE_LEAST and SPELCH_COMPARE_MOST. An array of SpelchCompared; g_array_unref() it. */
GArray *spelch_compare (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                        const SpelchBit *const *bits, guint n, bool tied);

/* Whether the bit may be used at all. */
bool spelch_compared_may_be_cut (const SpelchCompared *one);

/* Whether its depths are others than those recommended for the bit, or held for it by hand: those of the
 * first column, when they are tied. @cut is as it was given to spelch_compare(). */
bool spelch_compared_follows (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                              const SpelchCompared *one);

/* Whether a row applies to any of the @columns, as spelch_compare() gives them. */
bool spelch_compare_tells (const GArray *columns, SpelchRow row);

/* Whether a bit that may be cut with leaves the seen edges, or the others, as accepted; true where there is
 * no such edge. */
bool spelch_compared_keeps (const SpelchCompared *one, const SpelchPart *part, bool seen);

#define SPELCH_SCAN_MOST 256

/* The grades of either face, worst of the walls that stay, by depth of the first pass; 0: not cut. Where a
 * grade isn't that of the depth before, the turn lies between the two. */
typedef struct
{
  double step_mm; /* from the first depth on, which is one step */
  guint n;
  guint8 motor[SPELCH_SCAN_MOST], far[SPELCH_SCAN_MOST];
  double turns[SPELCH_SCAN_MOST]; /* first depth with the grades of this step; 0: the step's own depth */
} SpelchScan;

/* Tries the first pass at every half millimetre, or more coarsely in thick boards, to the whole depth, and
 * more closely where a grade turns; the rest is divided as recommended. */
SpelchScan spelch_compare_scan (const SpelchConstants *constants, const SpelchPart *part,
                                const SpelchCompared *one);

/* The least and the most depth, mm, at which the grades of step @i, from 0, are known to hold. */
double spelch_scan_from (const SpelchScan *scan, guint i);
double spelch_scan_to (const SpelchScan *scan, guint i);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Way up: a small picture, not to scale, of how the board is put on the machine: where the motor is, which
 * face is up and which is seen, how the grain runs, which way the bit goes, or the board on a router table,
 * and which way the bit turns. Its words stand in a column at its right, each with a line to what it names.
 * In units of its lettering, y down.
 */
#pragma once

#include "drawing/lettering.h"
#include "drawing/scene.h"

typedef enum
{
  SPELCH_WAY_UP_MOTOR,
  SPELCH_WAY_UP_TURN,
  SPELCH_WAY_UP_TOP, /* the face that is up */
  SPELCH_WAY_UP_GRAIN,
  SPELCH_WAY_UP_FEED,
  SPELCH_WAY_UP_BELOW, /* the face that is down */
  SPELCH_WAY_UP_REST,
  SPELCH_N_WAY_UPS,
} SpelchWayUpKind;

typedef struct _SpelchWayUp SpelchWayUp;

/* Of @cut with @bit as @plan has it, into @rect; words at @size. @palette and @lettering must outlive it. */
SpelchWayUp *spelch_way_up_new (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit,
                                const SpelchPlan *plan, SpelchRect rect, double size,
                                SpelchLettering *lettering, const SpelchPalette *palette);
void spelch_way_up_free (SpelchWayUp *way_up);

/* Where it was laid out, in the coordinates of @cr. */
void spelch_way_up_draw (const SpelchWayUp *way_up, cairo_t *cr);

/* Where a word stands, and what it says; the words are owned by @way_up. False when it has none of that kind.
 */
bool spelch_way_up_label (const SpelchWayUp *way_up, SpelchWayUpKind kind, SpelchRect *rect,
                          const char **words);

/* What the picture tells, for tests and for people who can't see it. */
typedef struct
{
  bool motor_below;
  SpelchFace top;          /* the face that is up */
  bool turns_clock;        /* the bit, seen from above */
  double grain_deg;        /* counter-clockwise seen from above, 0 along the picture's length */
  bool has_grain;          /* the face that is up has a direction */
  bool goes_round;         /* else straight on */
  bool round_clock;        /* seen from above */
  double feed_deg;         /* of a straight way: as @grain_deg; of the board on a router table */
  bool board_moves;        /* on a router table */
  bool mark_up, mark_down; /* the joiner's face mark, on the face that is up, and under the board */
} SpelchWayUpFacts;

/* What such a picture of the cut shows, as @plan has it. */
SpelchWayUpFacts spelch_way_up_facts (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit,
                                      const SpelchPlan *plan);

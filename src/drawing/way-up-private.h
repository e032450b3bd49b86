/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Inside of the picture of the way up, shared by the file that lays it out and the one that draws it.
 */
#pragma once

#include "drawing/aimed-label.h"
#include "drawing/way-up.h"

/* The picture is drawn on a grid of this size, scaled to its room; words stand at its right. */
#define GRID_WIDE  50.0
#define GRID_HIGH  50.0
#define LABEL_FROM 0.61 /* of the room's width */
#define LABEL_GAP  1.2
#define ELBOW      2.5 /* of a leader, before its word */

/* The board on the grid: its upper face a parallelogram. */
#define FRONT_X 4.5
#define FRONT_Y 35.0
#define LONG    31.0
#define MIDDLE  0.40 /* of the length, where the bit stands */
#define BACK_X  12.0
#define BACK_Y  (-12.0)
#define DEEP    24.0 /* what the width of the upper face stands for, seen from above */
#define THICK   4.0
#define REST    3.0
#define MOTOR   10.0 /* width */

#define EDGE      0.34 /* from the middle to an edge that is cut along */
#define STRAIGHT  9.5  /* half of a straight way */
#define TURN_WIDE 5.2  /* half of the arrow that turns */
#define TURN_Y    16.2 /* its height under a motor above */
#define WIDE      0.35
#define NARROW    0.18

struct _SpelchWayUp
{
  SpelchRect rect;
  double scale; /* of the grid */
  SpelchWayUpFacts facts;
  double middle_s, middle_t; /* where the bit stands on the upper face */
  SpelchMachineKind machine;
  SpelchCutKind kind;
  bool through;
  const SpelchPalette *palette;
  SpelchAimedLabel labels[SPELCH_N_WAY_UPS];
};

/* A place on the upper face: @s along its length and @t from front to back, 0 to 1. Grid units. */
void spelch_way_up_on_face (const SpelchWayUp *w, double s, double t, double *x, double *y);

/* How far a way round goes from the middle of the face, as a share of its length and width. */
double spelch_way_up_way_reach (const SpelchWayUp *w);

/* From the middle of the face by a length in a direction seen from above. */
void spelch_way_up_from_middle (const SpelchWayUp *w, double deg, double length, double *x, double *y);

/* An end of a straight way; @turn 180: where it begins. The board's own stands before the bit. */
void spelch_way_up_straight_end (const SpelchWayUp *w, double turn, double *x, double *y);

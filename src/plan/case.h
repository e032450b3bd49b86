/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Case: one cut of a part with one bit, made ready for reckoning: the board as it lies toward the motor, the
 * flutes, the tolerances, and how far the bit may go. Shared by the files of this room only.
 */
#pragma once

#include "plan/plan.h"

typedef struct
{
  const SpelchConstants *k;
  const SpelchPart *part;
  const SpelchCut *cut;
  const SpelchBit *bit;
  const SpelchMachine *machine;
  SpelchBoard board; /* layers from the motor-side face */
  SpelchFlutes flutes;
  double diameter;
  double thickness, near_layer,
      far_layer; /* what decides the arris: face ply, skin, or the outermost part; mm */
  bool through;
  const SpelchPlan *scoring; /* of the pass with the scoring bit that went before; NULL: none */
  double start;              /* depth cut by it; 0: none */
  SpelchPassPlan pass_plan;  /* held, or stepped, which is as few passes as serve */
  double allowance, skin;    /* for the pass plan; 0: none; mm */
  double floor_depth;        /* blind: the cut's depth; through: the thickness */
  double plus, minus;        /* board thickness tolerance, mm */
  double depth_tolerance, shear_tolerance;
  SpelchDatum datum;
  double overcut_most; /* what machine, backer or bench allows */
  bool overcut_free;   /* nothing is in the way below the board */
  double stick_most;   /* longest stick-out that leaves enough shank in the collet; HUGE_VAL when not known */
  double depth_most;   /* deepest tip the bit reaches */
  double depth_free;   /* and would reach if no stick-out were set */
  double step_most;    /* deepest single step the bit takes */
  double step_by_hand; /* and that is planned where hands feed; HUGE_VAL: no such limit */
  double step_planned; /* the lesser of both */
  double engaged;      /* a_e of the widest track, mm */
  int tracks;          /* side by side */
  bool single_wall;    /* only one wall is cut */
  bool lone_climb;     /* that wall is the climb wall */
  double blunting;
  double rake;          /* rad */
  SpelchCorrection log; /* what the shop log taught about this bit in this board; all 0 when nothing */
  double force_factor;  /* on the forces of the tables, by the shop log; 1 without */
  guint force_readings;
} SpelchCase;

/* Without a scoring pass. */
void spelch_case_prepare (SpelchCase *c, const SpelchConstants *constants, const SpelchPart *part,
                          const SpelchCut *cut, const SpelchBit *bit);

/* Once a scoring pass has been planned; @scoring must outlive the case. */
void spelch_case_score (SpelchCase *c, const SpelchPlan *scoring);

/* How the scoring pass, if any, met the motor-side face. */
SpelchLoad spelch_case_scored_load (const SpelchCase *c);

/* How far a setting may be off: the tip's depth below the near face lies in -depth_minus..+depth_plus of what
 * was set, the overcut in -over_minus..+over_plus. mm, none negative. */
typedef struct
{
  double depth_minus, depth_plus, over_minus, over_plus;
} SpelchUncertain;

/* @exact: everything as described, all zero. */
SpelchUncertain spelch_case_uncertain (const SpelchCase *c, bool exact);

/* True when both hands of shear occur on the bit. */
bool spelch_case_turns_over (const SpelchCase *c);

/* What the shop log taught about a side. */
const SpelchLearnt *spelch_case_log (const SpelchCase *c, SpelchSide side);

/* True when the far face lies on a firm flat backing outside the finished line. */
bool spelch_case_backed (const SpelchCase *c);

/* The outermost layer at the motor-side or far face. */
const SpelchLayer *spelch_case_face_layer (const SpelchCase *c, SpelchSide side);

/* Facing of the motor-side or far face, and the shear points for a load on it. */
SpelchFacing spelch_facing_of_layer (const SpelchLayer *layer);
SpelchFacing spelch_case_facing (const SpelchCase *c, SpelchSide side);
int spelch_case_shear_points (const SpelchCase *c, SpelchSide side, SpelchLoad load);

/* The fibre angle from the travel toward the left, degrees in (-90, 90], of a face layer. Meaningless for a
 * cut that meets every direction. */
double spelch_case_fibre_angle (const SpelchCase *c, SpelchSide side);

/* True for layers whose grain makes the wood split rather than crumble. */
bool spelch_layer_is_solid (const SpelchLayer *layer);

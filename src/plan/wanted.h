/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Wanted: what kind of bit to look for when none at hand will do, solved from the same inequalities that the
 * plan keeps to.
 */
#pragma once

#include "plan/plan.h"

/* Bits of one kind that would do; lengths in mm. */
typedef struct
{
  bool serves; /* the rest tells nothing when false */
  SpelchFace way_up;
  double diameter_least, diameter_most;
  double cutting_length_least;
  double up_shear_least, up_shear_most; /* of a compression bit; 0 for the others */
} SpelchWantedKind;

typedef struct
{
  SpelchWantedKind kinds[SPELCH_N_BIT_KINDS]; /* by SpelchBitKind */
} SpelchWanted;

/* Finds what sharp, ordinary two-edged carbide bits, cutting at the end and marked for the machine's highest
 * speed, would do @cut as accepted, with nothing held but the entry: the diameter from the cut's width, its
 * inside corners and what a slender bit bears; the cutting length from the depth and how far it may be off;
 * the up-shear from the clean windows over all tolerances. A through cut may also be turned over, when no
 * kind serves as it lies. Takes some tens of milliseconds. */
SpelchWanted spelch_wanted_find (const SpelchConstants *constants, const SpelchPart *part,
                                 const SpelchCut *cut);

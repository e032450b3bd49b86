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

/* What has to be changed about the cut so that any bit serves. */
typedef enum
{
  SPELCH_WANTED_AS_IT_IS,
  SPELCH_WANTED_OTHER_WAY,        /* feed it the other way, which is no climb cut */
  SPELCH_WANTED_BACKED,           /* a scrap behind the edge where the bit runs out */
  SPELCH_WANTED_OTHER_AND_BACKED, /* both */
} SpelchWantedChange;
extern const SpelchCodes SPELCH_WANTED_CHANGE_CODES; /* nothing, other-way, backed, other-way-and-backed */

typedef struct
{
  SpelchWantedChange change;
  SpelchWantedKind kinds[SPELCH_N_BIT_KINDS]; /* by SpelchBitKind */
  char at_hand[SPELCH_NAME_SIZE]; /* a bit of those at hand that does after the change; "": none */
} SpelchWanted;

/* Finds what sharp, ordinary two-edged carbide bits, cutting at the end and marked for the machine's highest
 * speed, would do @cut as accepted, with nothing held but the entry: the diameter from the cut's width, its
 * inside corners and what a slender bit bears; the cutting length from the depth and how far it may be off;
 * the up-shear from the clean windows over all tolerances. A through cut may also be turned over, when no
 * kind serves as it lies; where none serves either way, what is only told of the cut may be changed: the way
 * it is fed, and what stands behind the edge where the bit runs out. Takes some tens of milliseconds, and as
 * much again for each of those. */
SpelchWanted spelch_wanted_find (const SpelchConstants *constants, const SpelchPart *part,
                                 const SpelchCut *cut);

/* Where no ordinary bit would do, whether one of @bits does once the cut is changed: then that change, and
 * the bit's name, are put into @wanted. */
void spelch_wanted_try (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                        const SpelchBit *bits, guint n_bits, SpelchWanted *wanted);

/* Whether any kind of bit, or one at hand, would do. */
bool spelch_wanted_serves (const SpelchWanted *wanted);

/* The same with nothing changed about the cut. */
bool spelch_wanted_serves_as_it_is (const SpelchWanted *wanted);

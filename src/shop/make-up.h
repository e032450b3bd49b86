/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Make-up: the layers of a board that is made as such boards usually are, reckoned from its nominal
 * thickness.
 */
#pragma once

#include "shop/board.h"

typedef enum
{
  /* Birch plywood: 2 round((t/1.4 + 1)/2) - 1 plies (dimension sheets of two mills agree, 6.5 to 24 mm), the
   * faces 1.3 mm after sanding (common practice, no source), the others alike. */
  SPELCH_MAKE_UP_BIRCH_PLY,
  SPELCH_MAKE_UP_SOFTWOOD_PLY, /* 3 plies to 9.5 mm, 5 to 15, 7 to 21, 9 above; all alike; common practice, no
                                  source */
  /* Okoume, a light hardwood: 2 round((t/1.8 + 1)/2) - 1 plies, all alike; common practice, no source. Its
     species is told: okoume. */
  SPELCH_MAKE_UP_OKOUME_PLY,
  SPELCH_MAKE_UP_VENEERED_PLY, /* 0.6 mm hardwood faces on plies of poplar, as many as softwood plywood has */
  SPELCH_MAKE_UP_MELAMINE_PARTICLEBOARD, /* 0.15 mm film on both faces (0.1 to 0.2, memory) */
  SPELCH_MAKE_UP_MELAMINE_MDF,
  SPELCH_MAKE_UP_VENEERED_MDF, /* 0.6 mm hardwood on both faces */
  SPELCH_MAKE_UP_PARTICLEBOARD,
  SPELCH_MAKE_UP_MDF,
  SPELCH_MAKE_UP_SOLID_SOFTWOOD,
  SPELCH_MAKE_UP_SOLID_HARDWOOD,
  SPELCH_MAKE_UPS
} SpelchMakeUp;

/* How many plies birch plywood of @mm has; odd, at least 3. */
guint spelch_make_up_birch_plies (double mm);

/* How many plies the board has, the veneers of its faces among them; 0 where it isn't made of plies. */
guint spelch_make_up_plies (const SpelchBoard *board);

#define SPELCH_MAKE_UP_PLIES_MOST 21

/* As many plies as told, from 3 to 21 and odd, in the thickness there is: those between the faces cross each
 * other and are alike; the faces stay as they are, or are like those between where they were before. False
 * where the board isn't made of plies or they would have no room. */
bool spelch_make_up_set_plies (SpelchBoard *board, guint plies);

/* Gives @board the layers and, where a standard says it, the tolerance for its nominal thickness t, mm:
 * 0.2 + 0.03 t more and 0.4 + 0.03 t less for plywood (EN 315, sanded; formula from memory, a mill table
 * agrees), 0.5 more and 0.3 less for melamine-faced board (EN 14322, to 20 mm), 0.125 more or less for MDF
 * (ANSI A208.2) and 0.3 for particleboard (EN 312, sanded, memory), these two unless somebody told another;
 * none is known of veneered MDF and solid wood. Species and density are untold then, but for okoume. */
void spelch_make_up_apply (SpelchMakeUp make_up, SpelchBoard *board);

/* Layers that add up to the nominal thickness: those between the two faces give way, all where there are no
 * such or the faces alone are thicker. */
void spelch_make_up_fit (SpelchBoard *board);

/* The same after the nominal thickness was @before_mm; the tolerance follows too where it was that of
 * plywood. */
void spelch_make_up_follow (SpelchBoard *board, double before_mm);

/* The nominal thickness that the layers add up to. */
void spelch_make_up_sum (SpelchBoard *board);

/* Both faces covered alike with @layer, kept to the nominal thickness. False when there is no room. */
bool spelch_make_up_face (SpelchBoard *board, const SpelchLayer *layer);

/* All layers as thick as each other. */
void spelch_make_up_alike (SpelchBoard *board);

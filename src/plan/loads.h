/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Loads: what one pass asks of bit and board, whatever the speed: its force over a turn, its reach, its heat
 * and chips.
 */
#pragma once

#include "mechanics/bending.h"
#include "mechanics/force.h"
#include "plan/case.h"

typedef struct
{
  SpelchForceCase force;
  SpelchTurn turn;                   /* at the bit's blunting today */
  double blunter, harder;            /* factors of the design load: a dull edge, uneven wood */
  SpelchForceMeans standing, moving; /* means = standing + f_z moving */
  double give;                       /* mm of tip per N */
  double stress_per_n;               /* MPa per N */
  double room_per_feed;              /* share of chip room per mm of f_z; 0 where chips fall out freely */
  double heat_times_feed;            /* mJ/mm2 times mm: wall heat = this / f_z */
  double edge_force, cutting_force;  /* u a and b of the hardest layer, N/mm and MPa */
  double height;                     /* of the cut, mm */
  double engaged;                    /* mm */
  double above_bed; /* of the middle of what is cut of the board, mm; of the highest of like passes */
} SpelchLoads;

/* @stick_out in mm. */
void spelch_loads_find (const SpelchCase *c, const SpelchPass *pass, double stick_out, SpelchLoads *loads);

/* The design load, for strength and holding: peaks at a feed per tooth, mm, and the largest feed per tooth at
 * which the sideways peak stays within @limit N, as spelch_force_feed_for_peak(). */
SpelchForcePeaks spelch_loads_design_peaks (const SpelchLoads *loads, double feed_per_tooth);
double spelch_loads_design_feed (const SpelchLoads *loads, double limit, double most);

/* Share of the chip room per mm of feed per tooth that any pass of the cut takes at the least; 0 where chips
 * may fall out freely. */
double spelch_loads_least_room (const SpelchCase *c);

/* True when two passes load the bit alike, so that one reckoning serves both. */
bool spelch_loads_alike (const SpelchCase *c, const SpelchPass *one, const SpelchPass *other);

/* The species the board names, in the table; NULL when it names none of them. */
const SpelchDensity *spelch_loads_species (const SpelchCase *c);

/* Density of solid wood, kg/m3: as told, else the species'; 0 when neither is known. */
double spelch_loads_density (const SpelchCase *c);

/* How far forces may be out, either way: more in solid wood, and where the edge moves slower than in the
 * tests they come from. */
double spelch_loads_band (const SpelchCase *c, double rpm);

/* True when the board is a panel: its force band is narrower than solid wood's. */
bool spelch_loads_is_panel (const SpelchCase *c);

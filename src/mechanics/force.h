/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Force: what the wood does to the bit over a turn, and the bit to the wood. Per mm of edge height, an edge
 * at chip thickness h feels, in N/mm,
 *
 *   tangential  u a + b h
 *   radial      c u a + b h tan(friction angle - rake)
 *   axial       hand r_a b h          (hand: +1 up-shear, -1 down-shear)
 *
 * The edge-and-cutting form is that of orthogonal cutting of fibreboard (Dippon et al. 2000, Forest Products
 * Journal; from its abstract); r_a is the orthogonal-to-oblique transformation with Stabler's chip flow rule
 * (Altintas, Manufacturing Automation, ch. 2, from memory). Levels are estimates: they are always shown with
 * a band.
 *
 * Over a height with one hand the angle of an edge is linear in height, so every sum over height has a closed
 * form; only the turn itself is sampled, at the instants where an edge's stretch enters or leaves the wood
 * and between them. Forces are linear in the feed per tooth: a turn keeps the part that doesn't
 * depend on it and the part that multiplies it.
 */
#pragma once

#include "mechanics/flute.h"

#include <stdbool.h>

#define SPELCH_TURN_SAMPLES 192 /* at most; everyday cuts take about 30 */
#define SPELCH_MAX_SLICES   64
#define SPELCH_MAX_TEETH    6 /* cutting edges at one height */

/* A height of the bit, above the tip, in one material. */
typedef struct
{
  double s0, s1; /* mm, s0 < s1 */
  double a;      /* N/mm, sharp */
  double b;      /* MPa */
} SpelchSlice;

typedef struct
{
  SpelchFlutes flutes;
  double engaged;           /* a_e, mm, 0..D */
  bool climb;               /* the chip starts thick; ignored for a slot */
  double blunting;          /* u */
  double friction;          /* coefficient, wood on tool */
  double rake;              /* rad */
  double edge_radial_share; /* c */
  double lift_down_share;   /* share of the down-shear's press counted in the lift bound */
  int n_slices;
  SpelchSlice slices[SPELCH_MAX_SLICES]; /* from the tip up, not overlapping */
} SpelchForceCase;

/* Axial over tangential cutting force, r_a. @helix and @rake rad. tan(helix) without friction. */
double spelch_force_axial_ratio (double helix, double rake, double friction);

/* Means over a turn at feed per tooth @feed_per_tooth (of the zone with the fewest edges), closed form. */
typedef struct
{
  double tangential;      /* N, over all edges */
  double axial;           /* N, + lifts the work toward the motor */
  double power_per_speed; /* W per turn a second */
} SpelchForceMeans;
SpelchForceMeans spelch_force_means (const SpelchForceCase *force, double feed_per_tooth);

/* One sample: force = still + f_z * moving. */
typedef struct
{
  double along, across; /* N, on the bit: along the feed and square to it, left positive */
  double axial;         /* N, on the work, toward the motor */
  double lift;          /* N, bound of the lift on the work */
  double press;         /* N, bound of the press on the work: the lift of a bit with its hands swapped */
  double tangential;    /* N */
} SpelchForceParts;

typedef struct
{
  double span; /* rad covered by the samples: a tooth's pitch, or a whole turn for unequal zones */
  int n;       /* samples, in no order; 0 when there are no slices */
  double turned[SPELCH_TURN_SAMPLES]; /* by how much the bit has turned, rad */
  double weight[SPELCH_TURN_SAMPLES]; /* share of the span a sample speaks for; they sum to 1 */
  SpelchForceParts still[SPELCH_TURN_SAMPLES];
  SpelchForceParts moving[SPELCH_TURN_SAMPLES];
} SpelchTurn;

/* Samples the turn: the sideways peak, and the lift and press bounds, of the samples are within 1 % of those
 * of the whole turn (bounds that come to next to nothing: within 0.2 % of the sideways peak). */
void spelch_force_turn (const SpelchForceCase *force, SpelchTurn *turn);

/* The parts of the force when the bit has turned by @turned rad. */
void spelch_force_at (const SpelchForceCase *force, double turned, SpelchForceParts *still,
                      SpelchForceParts *moving);

typedef struct
{
  double sideways_peak; /* N */
  double ripple;        /* (max - min) / mean of the sideways force; 0 without force */
  double lift_peak;     /* N, most of the lift bound over the turn; negative: always pressed */
  double press_peak;    /* N, the same bound with hands swapped: most press away from the motor */
} SpelchForcePeaks;
SpelchForcePeaks spelch_force_peaks (const SpelchTurn *turn, double feed_per_tooth);

/* The largest feed per tooth, mm, at which the sideways peak stays within @limit N; 0 when even a standing
 * chip exceeds it; at most @most. */
double spelch_force_feed_for_peak (const SpelchTurn *turn, double limit, double most);

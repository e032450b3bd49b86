/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Flute: the geometry of helical cutting edges. One set of functions serves the drawing, the forces and the
 * verdicts. Heights are mm above the tip, angles radians; the bit turns clockwise seen from the motor, and
 * a right-hand flute (rising to the right in a side view with the motor above) is an up-cut.
 *
 * Source of the geometry: a helix on a cylinder; lead = pi D / tan(beta), beta from the axis
 * (Machinery's Handbook, from memory; re-derived in tests/mechanics/test-flute.c).
 */
#pragma once

#include <stdbool.h>

typedef enum
{
  SPELCH_SHEAR_NEUTRAL, /* straight, or less than 8 degrees of helix */
  SPELCH_SHEAR_UP,      /* lifts toward the motor */
  SPELCH_SHEAR_DOWN,    /* presses away from the motor */
  SPELCH_SHEAR_OVERLAP, /* both hands cut here, around a compression bit's turn-over */
} SpelchShearHand;

/* Less helix than this counts as straight (model, shop practice). */
#define SPELCH_NEUTRAL_HELIX_RAD 0.13962634015954636 /* 8 degrees */

/* A bit as far as its edges go. */
typedef struct
{
  double diameter;  /* mm, more than 0 */
  double helix;     /* rad, 0 to pi/3, always positive; the zones give the hand */
  double turn_over; /* mm above the tip where up-shear ends; 0: down-shear or neutral all along; cutting
                       length or more: up all along */
  double overlap;   /* mm, height about turn_over where both hands cut */
  double length;    /* cutting length, mm */
  int edges_up;     /* cutting edges below the turn-over */
  int edges_down;   /* and above it */
} SpelchFlutes;

/* mm of height for one turn of the helix; 0 stands for "none" when helix is 0. */
double spelch_flute_lead (double diameter, double helix);

/* The hand of shear at height @s. Heights outside 0..length give what the nearest edge has. */
SpelchShearHand spelch_flute_hand_at (const SpelchFlutes *flutes, double s);

/* +1 up, -1 down, 0 neutral: the sign of the axial force on the work, toward the motor. The overlap counts by
 * the side of the turn-over it lies on. */
int spelch_flute_sign_at (const SpelchFlutes *flutes, double s);

/* Worst-case shear over heights s0 <= s1: which hands occur there (touching a zone in a point counts as not
 * occurring, so that a layer exactly at the turn-over is judged by the side it lies on). */
typedef struct
{
  bool up, down, neutral;
} SpelchHands;
SpelchHands spelch_flute_hands_between (const SpelchFlutes *flutes, double s0, double s1);

/* Number of cutting edges at height @s. */
int spelch_flute_edges_at (const SpelchFlutes *flutes, double s);

/* The fewest edges at any height within the cutting length: the feed per tooth is reckoned with these. */
int spelch_flute_fewest_edges (const SpelchFlutes *flutes);

/* Angle of the helix from the tip up to height @s, signed: integral of tan(beta) hand / R ds. rad */
double spelch_flute_twist (const SpelchFlutes *flutes, double s);

/* Angle of edge @k at height @s after the bit has turned by @turned (rad, positive clockwise seen from the
 * motor): theta = -turned + 2 pi k / edges + twist(s). In the side view, x = R sin(theta), in front where
 * cos(theta) > 0. */
double spelch_flute_edge_angle (const SpelchFlutes *flutes, int k, double s, double turned);

/* x = R sin(theta) of that edge in the side view, motor above, mm from the axis; *front tells whether it is
 * seen. */
double spelch_flute_edge_x (const SpelchFlutes *flutes, int k, double s, double turned, bool *front);

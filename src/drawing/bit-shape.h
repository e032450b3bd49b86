/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bit shape: a bit seen from the side, its edges as true projected helices, x = R sin(theta). Local
 * coordinates: the tip on the axis is (0, 0), the motor is at negative y.
 */
#pragma once

#include "drawing/palette.h"
#include "mechanics/flute.h"
#include "shop/bit.h"

#include <cairo.h>

typedef struct
{
  SpelchFlutes flutes;
  double shank, neck; /* diameters, mm; neck 0: none */
  SpelchBearing bearing;
  double hollow, hollow_width; /* under an end that doesn't cut, mm */
  double scale;                /* picture units per mm */
  double
      flute_mm; /* how much of the cutting length is drawn from the tip; less than all ends in a break line */
  double stub;  /* picture units of shank above; it ends in a break line */
  double collet; /* picture units of collet above that; 0: none */
  double turned; /* rad */
  double line;   /* width of outlines; 1.2 in the side view */
  double narrow; /* of all other lines, with cutting edges as wide as outlines; 0: in proportion to them */
} SpelchBitShape;

/* The parts of @shape that follow from the bit alone. */
void spelch_bit_shape_init (SpelchBitShape *shape, const SpelchBit *bit);

/* In local coordinates: move and turn @cr before. */
void spelch_bit_shape_draw (cairo_t *cr, const SpelchBitShape *shape, const SpelchPalette *palette);

/* How far ink reaches: half the width, above the tip, and below it. */
void spelch_bit_shape_extent (const SpelchBitShape *shape, double *half_width, double *above, double *below);

/* Half the width of the collet, picture units. */
double spelch_bit_shape_collet_half (const SpelchBitShape *shape);

/* A stretch of the bit with one hand of shear. */
typedef struct
{
  double from, to; /* heights, mm */
  SpelchShearHand hand;
} SpelchZone;

/* Zones from the tip up, from spelch_flute_hand_at(); at most 3. Returns how many. */
int spelch_bit_zones (const SpelchFlutes *flutes, SpelchZone zones[3]);

/* Zones, an overlap divided once more at the turn-over, where the edges change their slope: in a piece
 * nothing about the edges changes. Returns how many. */
#define SPELCH_MAX_PIECES 4
int spelch_bit_pieces (const SpelchFlutes *flutes, SpelchZone pieces[SPELCH_MAX_PIECES]);

/* The angle of edge @k at a height of the piece from @from to @to, its ends included: asked for by height
 * alone, an end would be read as its neighbour's. */
double spelch_bit_angle (const SpelchFlutes *flutes, int k, double s, double from, double to, double turned);

/* A point of a cutting edge in the side view, mm; `first` begins a new visible stretch. */
typedef struct
{
  double s, x;
  bool first;
} SpelchEdgePoint;

/* The visible points of edge @k between two heights of one zone, every @step mm and at the silhouette. At
 * most @n points; returns how many. */
int spelch_bit_edge_points (const SpelchFlutes *flutes, int k, double from, double to, double step,
                            double turned, SpelchEdgePoint *points, int n);

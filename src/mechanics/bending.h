/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bending: a bit as a stepped cantilever held in the collet, bent by a sideways force. The fluted part counts
 * as a round of 0.80 D (Kops and Vo 1990, CIRP Annals 39:93, from its abstract). Beam identities, re-derived
 * in the tests.
 */
#pragma once

typedef struct
{
  double stick_out;    /* collet to tip, mm */
  double fluted;       /* length of the fluted part, mm, up to stick_out */
  double fluted_round; /* diameter it counts as, mm */
  double shank;        /* diameter between collet and flutes, mm */
  double modulus;      /* of the body, MPa */
  double stiffness;    /* of the machine at the collet, N/mm; 0: rigid */
} SpelchCantilever;

/* Sideways way of the tip, mm, for a force of 1 N acting @height mm above the tip, the machine's give
 * included. */
double spelch_bending_give (const SpelchCantilever *bit, double height);

/* Largest bending stress, MPa, for a force of 1 N acting @height mm above the tip: at the collet or where the
 * flutes end. */
double spelch_bending_stress (const SpelchCantilever *bit, double height);

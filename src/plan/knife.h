/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Knife: whether a line cut by hand before routing would spare a seen face that no bit of a ranking leaves as
 * accepted. It is advice only: no grade counts with it.
 */
#pragma once

#include "plan/choose.h"

typedef struct
{
  bool helps; /* the rest tells nothing when false */
  SpelchSide side;
  SpelchFace face;
  double deep_mm; /* thickness of the face layer, which the knife has to sever */
} SpelchKnife;

/* Of a ranking that has no choice with every edge as accepted, reads it off the best that may be cut: a seen
 * face of plywood or veneer comes out worse than accepted, and what costs most is that its fibres are pulled
 * out, not pressed in, or split ahead; a blunt edge, or an edge of the board with nothing behind it, is
 * mended otherwise. Only of work by hand or on a router table, where the line is laid out with knife and
 * straightedge anyway; shop practice. */
SpelchKnife spelch_knife_find (const SpelchPart *part, const GPtrArray *ranking);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Hold: whether what presses the work down keeps it from sliding, lifting and tilting on a gantry's bed, at
 * the design load, and how quickly it may be cut for that. By hand and on a router table hands decide
 * instead.
 */
#pragma once

#include "plan/loads.h"

/* Force, N, known to keep the work down, its weight included: of vacuum or clamps; HUGE_VAL where screws or
 * clamped work under a hand-held router keep it; its weight alone where nothing is known. */
double spelch_hold_press (const SpelchCase *c);

/* Whether there is something to reckon with: vacuum or clamps of known force, on a gantry. */
bool spelch_hold_is_told (const SpelchCase *c);

/* How one pass is held at a feed per tooth, mm. */
typedef struct
{
  double side, lift;    /* the force it is held against, N; no lift: 0 */
  double needed;        /* press for the nominal factor, N */
  double factor, worst; /* nominal, and at the bad end of every band; 0 when nothing is told */
  SpelchGives way;      /* in which it would give first */
} SpelchHeldDown;

/* @part: how far forces may be out, either way. */
SpelchHeldDown spelch_hold_find (const SpelchCase *c, const SpelchLoads *loads, double feed_per_tooth,
                                 double part);

/* Whether the nominal factor, and that with everything at its worst, are what they must be. */
bool spelch_hold_suffices (const SpelchCase *c, double factor, double worst);

/* Share used of what holds: 1 where a factor is just what it must be. 0 when nothing is told. */
double spelch_hold_share (const SpelchCase *c, const SpelchHeldDown *held);

/* The largest feed per tooth, mm, at most @most, that keeps the share within 1; 0 when none does. */
double spelch_hold_feed (const SpelchCase *c, const SpelchLoads *loads, double part, double most);

/* Fills what @plan says on holding, over all passes. */
void spelch_hold_fill (const SpelchCase *c, const SpelchLoads *const *loads, double feed_per_tooth,
                       double part, SpelchPlan *plan);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Setting out: where the bit goes beside the finished line, and what a person sets to get it there: tracks,
 * the fit of the part that goes in, the way round, straightedge, guide bush, fence, pecks, and the places of
 * tabs. All of it is plane geometry of the cut, the bit's diameter of today and the machine. Lengths in mm.
 */
#pragma once

#include "plan/constants.h"
#include "shop/part.h"

/* How the bit goes, seen from above whatever side the motor is on. */
typedef enum
{
  SPELCH_ROUND_ALONG, /* a straight way, in one track */
  SPELCH_ROUND_WITH_CLOCK,
  SPELCH_ROUND_AGAINST_CLOCK,
} SpelchRound;
extern const SpelchCodes SPELCH_ROUND_CODES; /* along, with-clock, against-clock */

#define SPELCH_TAB_SIDES 4

/* A plain value; copy it with =. Whatever doesn't apply, or can't be told, is 0. */
typedef struct
{
  double diameter_mm;   /* of the bit today */
  double ground_off_mm; /* how much sharpening took off it */
  double width_mm;      /* between the walls; as wide as the bit where nothing else is told */
  int tracks;           /* side by side */
  double step_over_mm;  /* from one track to the next */
  double overlap_mm;    /* of two tracks */
  bool drops_out;       /* the bit goes once round an opening, and what is in its middle comes loose */
  double corner_mm;     /* radius the bit leaves in inside corners */

  bool fitted;    /* to a part that goes in */
  double left_mm; /* of the width, beside a single track; below 0: the bit is too wide by so much */
  double play_mm; /* that a single track would leave the part, both sides together; below 0: too tight */

  SpelchRound round; /* for the sense that was asked for: conventional unless the right wall is kept */
  bool inside;       /* what stays lies outside the way */

  double fence_offset_mm; /* hand-held: from the line of the wall to the straightedge, base radius - D/2 */
  double bush_mm;         /* hand-held: the guide bush to take, outside diameter */
  double bush_offset_mm;  /* from the template's edge to the line, (bush - D) / 2 */
  double guide_mm;        /* from the fence or edge guide to the near side of the bit */
  double stands_out_mm;   /* router table: of the bit before the fence, for a rabbet or an edge; at last where
                             tracks lie side by side */

  guint pecks;    /* of a bit that goes straight down, the last one included; 1: in one go */
  double peck_mm; /* how deep each */

  double side_mm[SPELCH_TAB_SIDES]; /* straight stretches of the way, from its start; 0 past the last */
  guint tabs_on[SPELCH_TAB_SIDES];
} SpelchSettingOut;

/* The tracks of @cut for a bit of @diameter: an opening right through is only gone round, once, however wide.
 */
int spelch_setting_out_tracks_of (const SpelchConstants *constants, const SpelchCut *cut, double diameter);

/* Pecks that take a bit straight down by @depth: by hand in shorter ones. At least 1. */
guint spelch_setting_out_pecks (const SpelchConstants *constants, SpelchMachineKind machine, double diameter,
                                double depth);

/* Sets @cut out for @bit. @straight_down: how far the bit goes straight down in one go, 0 when it doesn't. */
SpelchSettingOut spelch_setting_out_find (const SpelchConstants *constants, const SpelchPart *part,
                                          const SpelchCut *cut, const SpelchBit *bit, double straight_down);

/* How far the bit stands out of a router table's fence for the @i-th track, from 0, so that no strip is ever
 * left between them: the track at the board's edge comes first, and each takes wood on the side away from the
 * fence. Of a cut right through the edge goes with every track, and the fence follows it. 0 where the fence
 * isn't set so. */
double spelch_setting_out_stands_out (const SpelchSettingOut *out, int i);

/* The number of tabs that are laid out, and how far from the start of the way the middle of the @i-th stands,
 * from 0. A way that goes round the piece starts at a corner of it. */
guint spelch_setting_out_tabs (const SpelchSettingOut *out);
double spelch_setting_out_tab (const SpelchSettingOut *out, guint i);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Inside of the picture from above, shared by the file that lays it out and the one that draws it. Places are
 * mm from the left front corner of the piece, across to the right and up to the back.
 */
#pragma once

#include "drawing/aimed-label.h"
#include "drawing/from-above.h"
#include "drawing/way-up.h"

#define FENCE_WIDE  0.10 /* of the longer side */
#define WAY_MOST    72
#define HOLDS_MOST  4
#define LABEL_GAP   3.0
#define BAR_OFF     6.0 /* from the scale bar to its words */
#define ELBOW       7.0 /* of a leader, before its word */
#define CLAMP_LONG  34.0
#define CLAMP_WIDE  16.0
#define CLAMP_REACH 0.55 /* of a clamp's length that lies on the board */
#define ARROW_LEAST 5.0  /* times the unit */

typedef struct
{
  double x, y;
} SpelchSpot;

struct _SpelchFromAbove
{
  SpelchRect room;           /* of the drawing */
  double unit;               /* what a line's width and an arrow are measured by: 1 with words of 12 */
  double scale, left, front; /* units per mm; where the piece's left front corner lies in the picture */
  double length, width;      /* of the piece */
  double beyond;             /* how far the board goes on around the piece: it is cut out of a sheet */
  SpelchWayUpFacts facts;
  SpelchCut cut;
  SpelchMachineKind machine;
  SpelchHold hold;
  SpelchLayer top; /* the layer that is up */
  double diameter;
  bool with_waste; /* something comes off that isn't chips alone, or at one side */
  guint n_opening; /* corners of what is taken away beside the bit's own way; 0: nothing more */
  SpelchSpot opening[WAY_MOST];
  guint n_way; /* the middle of the bit */
  SpelchSpot way[WAY_MOST];
  bool closed;
  double ahead; /* where its arrow ends */
  double gap;   /* between two words */
  double start; /* along the way, where the bit is drawn */
  guint n_tabs;
  SpelchSpot tabs[SPELCH_FROM_ABOVE_TABS_MOST];
  double tab_deg[SPELCH_FROM_ABOVE_TABS_MOST]; /* direction of the way there */
  guint n_holds;
  SpelchRect holds[HOLDS_MOST]; /* clamps or screws; or the one field of vacuum. Lower left corners */
  double bar_mm;                /* of the scale bar under the drawing */
  PangoLayout *bar;             /* its length */
  const SpelchPalette *palette;
  SpelchAimedLabel labels[SPELCH_N_FROM_ABOVES];
};

/* How long the way is, and a place on it with the direction there, degrees counter-clockwise. */
double spelch_from_above_way_length (const SpelchFromAbove *f);
SpelchSpot spelch_from_above_along (const SpelchFromAbove *f, double distance, double *deg);

/* The board as it lies, tabs and all: lower left corner and size. */
SpelchRect spelch_from_above_board (const SpelchFromAbove *f);

/* Places the words in what the drawing leaves of @rect, and the scale bar under it. */
void spelch_from_above_lay_words (SpelchFromAbove *f, SpelchRect rect, double size,
                                  const SpelchNumbers *numbers, SpelchLettering *lettering);

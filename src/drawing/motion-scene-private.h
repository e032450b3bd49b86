/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Inside of a motion scene, shared by the files that draw it.
 */
#pragma once

#include "drawing/motion-scene.h"
#include "drawing/scene-private.h"

struct _SpelchMotionScene
{
  SpelchScene *side; /* the side view, as high as the room above the gauges */
  const SpelchMotion *motion;
  const SpelchMotionPass *pass;
  guint number; /* of the pass, from 0 */
  SpelchMachineKind machine;
  double width, height;
  int pixels;
  int enlarged[2]; /* thickness of chips: in the side view, from the motor */

  SpelchRect gauge;   /* the strip under the side view */
  double row;         /* top of inset and trace, under their titles */
  SpelchRect inset;   /* the bit from the motor */
  SpelchRect trace;   /* force over a turn */
  SpelchRect readout; /* the force now */
  PangoLayout *titles[2], *caption, *ways[2];
  PangoLayout *arrow_words[2]; /* under the arrow beside the board, by whether that is pressed */

  /* Kept pictures; NULL until needed. */
  cairo_surface_t *still, *back, *board, *words, *blurred_bit, *haze;
};

/* The whole gauge strip but for what moves. */
void spelch_motion_lay_out_gauge (SpelchMotionScene *scene);
void spelch_motion_draw_gauge_still (SpelchMotionScene *scene, cairo_t *cr);
void spelch_motion_clear_gauge (SpelchMotionScene *scene);

/* Its parts; the ground is there already. */
SpelchRect spelch_motion_gauge_bounds (const SpelchMotionScene *scene, SpelchMotionPart part,
                                       const SpelchMotionFrame *frame);
void spelch_motion_draw_gauge (const SpelchMotionScene *scene, SpelchMotionPart part, cairo_t *cr,
                               const SpelchMotionFrame *frame, bool blurred);

/* In the picture's coordinates. */
void spelch_motion_draw_chips (const SpelchMotionScene *scene, cairo_t *cr, const SpelchMotionFrame *frame,
                               double opacity);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Motion scene: the side view of one pass in slow motion: the bit turning, its chips, the board lifted or
 * pressed; under it the bit seen from the motor and the force over a turn. Made once for a pass; a frame is
 * drawn into it from what spelch_motion_at() says. Window, film and command line draw with the same
 * functions.
 *
 * Three things aren't to scale, and the picture says so: the chips' thickness, by a factor that is written;
 * their length; and the board's rise and fall.
 */
#pragma once

#include "drawing/scene.h"
#include "plan/motion.h"

typedef struct _SpelchMotionScene SpelchMotionScene;

/* @pass from 0. @motion must outlive the scene; the rest is copied as far as needed. Of @view its size, look,
 * text, family, lettering and numbers count. @pixels: of a kept picture for each unit, 1 or more. */
SpelchMotionScene *spelch_motion_scene_new (const SpelchPart *part, const SpelchCut *cut,
                                            const SpelchBit *bit, const SpelchPlan *plan,
                                            const SpelchMotion *motion, guint pass, const SpelchView *view,
                                            int pixels);
void spelch_motion_scene_free (SpelchMotionScene *scene);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchMotionScene, spelch_motion_scene_free)

/* All that doesn't move, opaque, the whole picture; owned by the scene. */
cairo_surface_t *spelch_motion_scene_still (SpelchMotionScene *scene);

/* Makes the next of the pictures that are kept, for a window to have them before they are needed; whether
 * there is more to make. */
bool spelch_motion_scene_prepare (SpelchMotionScene *scene);

/* What moves, from back to front. Each part is opaque and fills its bounds; drawn over what stands still, all
 * of them give the picture. */
typedef enum
{
  SPELCH_MOTION_BOARD,   /* board and bed */
  SPELCH_MOTION_BIT,     /* the bit, its chips, splinters; the board behind them */
  SPELCH_MOTION_ARROW,   /* the force beside the board */
  SPELCH_MOTION_INSET,   /* the bit from the motor */
  SPELCH_MOTION_READOUT, /* the force in words */
  SPELCH_MOTION_MARKER,  /* and on its trace */
  SPELCH_MOTION_N_PARTS,
} SpelchMotionPart;

/* Whole units. Only the marker's depend on the frame. */
SpelchRect spelch_motion_scene_bounds (const SpelchMotionScene *scene, SpelchMotionPart part,
                                       const SpelchMotionFrame *frame);

/* Of one scene, equal numbers mean that the part's picture is the same. */
double spelch_motion_scene_value (const SpelchMotionScene *scene, SpelchMotionPart part,
                                  const SpelchMotionFrame *frame, bool blurred);

/* @blurred: the bit turns too fast for the eye. Bit, teeth and chips are drawn evenly blurred, the board
 * stands where the mean force puts it, and nothing depends on the frame's turn but whether splinters are
 * there. */
void spelch_motion_scene_draw_part (SpelchMotionScene *scene, SpelchMotionPart part, cairo_t *cr,
                                    const SpelchMotionFrame *frame, bool blurred);

/* The whole picture. */
void spelch_motion_scene_draw (SpelchMotionScene *scene, cairo_t *cr, const SpelchMotionFrame *frame,
                               bool blurred);

/* Where things are, for tests: the side view; how far the board is drawn lifted, units toward the motor; how
 * many times as thick as they are chips are drawn in the side view, and from the motor; and the marker on the
 * trace. */
const SpelchScene *spelch_motion_scene_side (const SpelchMotionScene *scene);
double spelch_motion_scene_lift (const SpelchMotionScene *scene, const SpelchBand *axial);
int spelch_motion_scene_enlarged (const SpelchMotionScene *scene, bool from_motor);
void spelch_motion_scene_marker (const SpelchMotionScene *scene, double turned, double force, double *x,
                                 double *y);

/* Where the side view draws a chip. */
void spelch_motion_scene_chip (const SpelchMotionScene *scene, const SpelchMotionChip *chip, double *x,
                               double *y);

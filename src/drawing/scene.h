/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Scene: the side view of one cut, drawn to one scale: board, bit, kerf, depth rule, verdicts at the arrises.
 * A scene is plain geometry computed from a plan; drawing it is a separate step, layer by layer, so that a
 * window can keep the layers that didn't change. Screen, PNG, SVG and PDF all call the same functions. No
 * widget is known here.
 *
 * Units: the picture's own (pixels on screen, points on paper), y down. A router table's view is the gantry's
 * turned by 180 degrees in the picture plane, never mirrored; text stays upright.
 */
#pragma once

#include "drawing/lettering.h"
#include "drawing/palette.h"
#include "plan/plan.h"
#include "plan/words.h"
#include "shop/part.h"

#include <cairo.h>

typedef enum
{
  SPELCH_MARK_PASS,      /* tip depth of a pass; index from 1 */
  SPELCH_MARK_OVERCUT,   /* the last pass of a through cut */
  SPELCH_MARK_THICKNESS, /* far face of the board */
  SPELCH_MARK_ALLOWANCE, /* wall left for the finishing pass */
} SpelchMarkKind;

/* Where a scene stands and how large. While something is dragged the drawing stays under the hand: what is
 * dragged follows the pointer, and the rest keeps its place or gives way. */
typedef struct
{
  double scale; /* picture units per mm; 0: nothing is held */
  double near_y, flute_mm, stub;
  double height, cutting_length; /* of the picture and the bit it holds for */
  bool dragged;                  /* a mark is */
  SpelchMarkKind mark;
  guint index;  /* of a pass, from 1 */
  double aside; /* its label's middle below its line */
} SpelchSceneHold;

typedef struct
{
  double width, height; /* of the picture */
  double text;          /* text size relative to a 13 px body; 1 to 2 */
  SpelchLook look;
  SpelchNumbers numbers;
  const char *family;         /* font family; not copied */
  SpelchLettering *lettering; /* of the picture before, whose words needn't all be set again; or NULL */
  guint shown_pass;           /* from 1: the bit stands at this pass's depth, earlier kerfs are cut away */
  bool with_marks;            /* draw pass marks too (a window uses widgets instead) */
  double turned;              /* rad the bit has turned */
  bool without_words;   /* but which side the motor is on, and in a question what lies where; for a small
                           picture */
  bool corner_taken;    /* a window has words in the corner that is kept free, so names keep off it */
  bool corner_unused;   /* nothing stands in that corner, neither a window's words nor the picture's own */
  bool one_pass;        /* a small picture: of the passes only the shown one is marked, beside the board */
  bool without_windows; /* nothing of the depths that are clean, which is going to be asked yet */
  bool asking;   /* a question: nothing of how the edges come out, or at which depths they would be clean */
  bool on_paper; /* a page tells board, pass and scale beside it; the bit may be drawn wider */
  double left_share;    /* of the board's width that is left of the opening; 0: half */
  double scale_most;    /* picture units per mm, for pictures that share one scale; 0: as large as fits */
  SpelchSceneHold hold; /* kept to as far as the board fits */
} SpelchView;

/* Layers from back to front. */
typedef enum
{
  SPELCH_LAYER_STILL, /* ground, board with its grain, what it rests on, depth rule with the windows: opaque
                       */
  SPELCH_LAYER_KERF,  /* what is cut away */
  SPELCH_LAYER_BIT,   /* shank, flutes, edges */
  SPELCH_LAYER_SHEAR, /* turn-over line, chevrons and their words */
  SPELCH_LAYER_EDGES, /* splinters or a crisp line at the arrises */
  SPELCH_LAYER_WORDS, /* face names, scale bar, captions that move */
  SPELCH_LAYER_MARKS, /* pass, overcut, thickness and allowance marks, when with_marks */
  SPELCH_N_LAYERS,
} SpelchSceneLayer;

typedef struct
{
  double x, y, width, height;
} SpelchRect;

typedef struct _SpelchScene SpelchScene;

/* Lays the scene out. @part, @cut, @bit and @plan are copied as far as needed. Free with spelch_scene_free().
 */
SpelchScene *spelch_scene_new (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit,
                               const SpelchPlan *plan, const SpelchView *view);
void spelch_scene_free (SpelchScene *scene);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchScene, spelch_scene_free)

/* Tight bounds of a layer, whole picture units; an empty rectangle when there's nothing to draw. */
SpelchRect spelch_scene_bounds (const SpelchScene *scene, SpelchSceneLayer layer);

/* In the picture's units, from its upper left corner; draw layers in their order. */
void spelch_scene_draw_layer (const SpelchScene *scene, SpelchSceneLayer layer, cairo_t *cr);

/* All layers, back to front. */
void spelch_scene_draw (const SpelchScene *scene, cairo_t *cr);

/* Adds the words that are drawn to @text, a line each; of no scene, none. */
void spelch_scene_gather (const SpelchScene *scene, GString *text);

/* Equal keys mean that the layer's picture is the same up to a shift (BIT) or exactly (all others); lets a
 * window keep it. */
guint64 spelch_scene_key (const SpelchScene *scene, SpelchSceneLayer layer);

/* Picture coordinates of a depth below the motor-side face and of a distance right of the axis (motor above),
 * and back. */
double spelch_scene_y (const SpelchScene *scene, double depth_mm);
double spelch_scene_x (const SpelchScene *scene, double across_mm);
double spelch_scene_depth (const SpelchScene *scene, double y);
double spelch_scene_across (const SpelchScene *scene, double x);
double spelch_scene_scale (const SpelchScene *scene); /* picture units per mm */

/* To give to the scenes that follow it in a drag. */
SpelchSceneHold spelch_scene_hold (const SpelchScene *scene);
void spelch_scene_hold_mark (const SpelchScene *scene, SpelchMarkKind kind, guint index,
                             SpelchSceneHold *hold);

/* Where a mark's label stands: its rectangle, placed so that labels never overlap. False when this scene has
 * no such mark. */
bool spelch_scene_mark (const SpelchScene *scene, SpelchMarkKind kind, guint index, SpelchRect *rect);

/* The mark's line on the drawing, from the label to the kerf: (x0, y) to (x1, y). */
bool spelch_scene_mark_line (const SpelchScene *scene, SpelchMarkKind kind, guint index, double *x0,
                             double *x1, double *y);

/* Where a face's name stands, with the joiner's mark before it. */
SpelchRect spelch_scene_face (const SpelchScene *scene, SpelchSide side);

/* The bit with shank and collet, without the words beside it: where it can be taken hold of. */
SpelchRect spelch_scene_bit (const SpelchScene *scene);

/* The corner kept free for a window's own words: beside the raised bit at the left, on the motor's side, so
 * at the bottom of a router table's view. May be small in a small picture. */
SpelchRect spelch_scene_corner (const SpelchScene *scene);

/* The whole drawing described in sentences, for people who can't see it. g_free() it. */
char *spelch_scene_describe (const SpelchScene *scene);

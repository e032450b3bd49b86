/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Inside of a scene, shared by the files that lay it out and draw it. Three systems of coordinates:
 *
 * - the picture: its units, y down; words and labels live here;
 * - local: the same units about (origin_x, near_y), x to the right, y down; turned over with a router table;
 * - the cut: mm, u across from the middle of the finished opening, z down from the motor-side face.
 */
#pragma once

#include "drawing/bit-shape.h"
#include "drawing/labels.h"
#include "drawing/lettering.h"
#include "drawing/scene.h"

/* What is removed by one pass: mm across, and the tip's depth. */
typedef struct
{
  double from, to, depth;
  double axis; /* where the bit stands when it has done, mm across */
} SpelchSpan;

/* The opening that a cut leaves, as drawn. */
typedef struct
{
  double left, right;         /* finished walls or the board's end, mm */
  bool wall_left, wall_right; /* false: the board ends there (rabbet, trim) */
  double width_mm;            /* as it is */
  bool shortened;             /* drawn narrower than it is, with a break line */
  double core_from, core_to;  /* what is gone round and comes loose; alike: everything is cut away, mm */
  guint n;
  SpelchSpan spans[SPELCH_MAX_PASSES];
} SpelchOpening;

/* Where things stand. Picture units, but for `flute_mm`. Nothing here depends on pass depths. */
typedef struct
{
  double scale;                   /* units per mm */
  double turn;                    /* +1 motor above, -1 motor below */
  double origin_x, near_y, far_y; /* u = 0 at the near face; the far face */
  double board_left, board_right; /* picture x of the board's ends, or of its break lines */
  bool ends_left, ends_right;     /* the board really ends there */
  double left, right;             /* of the room for the board and its pass marks */
  double rule_x, band_x[2], band_width;
  double rule_mm; /* how deep the rule goes */
  double near_rest, far_rest,
      backer;               /* thickness of what lies on the near face, beyond the far one, between */
  double throat;            /* half width of the opening in the near rest */
  double gap;               /* half width of the gap in the far rest; 0: none */
  double foot;              /* top of the strip at the foot, with scale bar and captions */
  double flute_mm;          /* how much of the cutting length is drawn; the rest is broken off */
  double stub, collet;      /* length of shank, and of collet */
  double bar_mm, bar_x;     /* scale bar: its length, and where it begins */
  SpelchRect corner, notes; /* kept free for a window's words; and where notes on empty windows go */
} SpelchFrame;

typedef enum
{
  SPELCH_LABEL_NEAR_FACE,
  SPELCH_LABEL_FAR_FACE,
  SPELCH_LABEL_NEAR_REST,
  SPELCH_LABEL_FAR_REST,
  SPELCH_LABEL_BACKER,
  SPELCH_LABEL_SCALE,
  SPELCH_LABEL_FIRST_NOTE,
  SPELCH_LABEL_LAST_NOTE,
  SPELCH_LABEL_FIRST_WINDOW,
  SPELCH_LABEL_LAST_WINDOW,
  SPELCH_LABEL_CAPTION,
  SPELCH_LABEL_SETTING,
  SPELCH_LABEL_HEADING,
  SPELCH_LABEL_MOTOR,
  SPELCH_LABEL_TURN_OVER,
  SPELCH_LABEL_LOWER_SHEAR,
  SPELCH_LABEL_UPPER_SHEAR,
  SPELCH_LABEL_TABS,
  SPELCH_N_LABELS,
} SpelchLabelId;

/* Words with a place. An absent label has no layout. */
typedef struct
{
  PangoLayout *layout;
  SpelchRect box; /* of the words */
  double pad;     /* of the ground around them; 0: no ground */
  const SpelchColour *colour;
  SpelchSceneLayer layer;
} SpelchLabel;

typedef struct
{
  SpelchMarkKind kind;
  guint index;
  PangoLayout *layout;
  SpelchRect box;   /* of the whole pill */
  double x0, x1, y; /* its line, from beside the label to the wall */
  bool strong;      /* the pass that is shown */
} SpelchMark;

/* On paper, the dimension of the cut's width. Absent without a layout. */
typedef struct
{
  PangoLayout *layout;
  SpelchRect box;   /* of the words */
  double x0, x1, y; /* its line, from wall to wall */
  double from;      /* of the floor that it is taken from, y */
  bool inside;      /* arrows and words stand between the walls */
} SpelchWidth;

#define SPELCH_MAX_MARKS (SPELCH_MAX_PASSES + 3)

struct _SpelchScene
{
  SpelchBit bit;
  SpelchBoard board;                    /* as it lies, motor side first */
  double layer_path[SPELCH_MAX_LAYERS]; /* angle between a layer's grain and the feed, 0 to pi/2 */
  SpelchCut cut;
  SpelchMachineKind machine;
  double base_mm; /* router base or table insert */
  bool grooved;   /* an earlier cut went into the spoilboard under this one */
  SpelchPlan plan;
  SpelchView view;
  const SpelchPalette *palette;
  guint shown; /* pass, from 0 */

  SpelchLettering *lettering;
  SpelchFrame frame;
  SpelchOpening opening;
  SpelchBitShape shape;
  double axis_x, tip_y; /* picture, on whole units so that a kept picture of the bit can be moved */
  double chevron_x;     /* middle of the column of chevrons */
  SpelchRect chevrons;  /* the column's ground */

  char *setting;  /* board and machine in a sentence */
  char *faces[2]; /* names by SpelchSide */
  SpelchLabel labels[SPELCH_N_LABELS];
  bool lost[SPELCH_N_LABELS]; /* there was no room for it */
  guint n_marks;
  SpelchMark marks[SPELCH_MAX_MARKS];
  SpelchWidth width;
  SpelchPlacer placer;
};

/* Whether the bit shears neither way, so that it has no chevrons. */
bool spelch_scene_is_straight (const SpelchScene *scene);

/* ---- Laying out (in this order) ---- */

void spelch_scene_lay_out_frame (SpelchScene *scene);
void spelch_scene_lay_out_opening (SpelchScene *scene);
void spelch_scene_lay_out_bit (SpelchScene *scene);
void spelch_scene_lay_out_words (SpelchScene *scene);   /* what stands still */
void spelch_scene_lay_out_windows (SpelchScene *scene); /* by the one before */
void spelch_scene_lay_out_marks (SpelchScene *scene);
void spelch_scene_lay_out_dimensions (SpelchScene *scene); /* by the one before, on paper */
void spelch_scene_lay_out_width (SpelchScene *scene);      /* likewise */
void spelch_scene_lay_out_shear (SpelchScene *scene);      /* words that move with the bit */

/* The widest opening that is drawn true, mm; a wider one is shortened by a break line. */
double spelch_scene_widest_opening (const SpelchScene *scene);

/* From where to where all passes together cut, mm. */
void spelch_opening_all (const SpelchOpening *opening, double *from, double *to);

/* ---- Drawing, one function a layer, and each layer's bounds ---- */

void spelch_scene_draw_still (const SpelchScene *scene, cairo_t *cr);
void spelch_scene_draw_rule (const SpelchScene *scene, cairo_t *cr);
void spelch_scene_draw_kerf (const SpelchScene *scene, cairo_t *cr);
void spelch_scene_draw_shear (const SpelchScene *scene, cairo_t *cr);
void spelch_scene_draw_edges (const SpelchScene *scene, cairo_t *cr);

/* Of the bit's layer, "motor side" and its arrow. */
void spelch_scene_draw_motor (const SpelchScene *scene, cairo_t *cr);

/* Splinters of one edge of the plan at its arris, grown to a @share of what they will be, in local
 * coordinates; and the tabs' outline where the shown pass leaves them. */
void spelch_scene_draw_opened_edge (const SpelchScene *scene, cairo_t *cr, guint edge, double share);
void spelch_scene_draw_tabs (const SpelchScene *scene, cairo_t *cr);

void spelch_scene_draw_words (const SpelchScene *scene, cairo_t *cr);
void spelch_scene_draw_marks (const SpelchScene *scene, cairo_t *cr);
void spelch_scene_draw_width (const SpelchScene *scene, cairo_t *cr);      /* likewise */
void spelch_scene_draw_dimensions (const SpelchScene *scene, cairo_t *cr); /* by the one before, on paper */

SpelchRect spelch_scene_kerf_bounds (const SpelchScene *scene);
SpelchRect spelch_scene_shear_bounds (const SpelchScene *scene);
SpelchRect spelch_scene_edges_bounds (const SpelchScene *scene);
SpelchRect spelch_scene_words_bounds (const SpelchScene *scene);
SpelchRect spelch_scene_marks_bounds (const SpelchScene *scene);

/* ---- Lines ---- */

/* Widths of a page's lines, picture units: the page makes 0.35 and 0.18 mm of them. */
#define SPELCH_PAPER_WIDE   1.6
#define SPELCH_PAPER_NARROW 0.8

typedef enum
{
  SPELCH_LINE_VISIBLE, /* edges and faces of what is cut */
  SPELCH_LINE_BREAK,   /* where a drawing breaks off */
  SPELCH_LINE_LAYER,
  SPELCH_LINE_HIDDEN, /* or still to be cut */
  SPELCH_LINE_CENTRE,
  SPELCH_LINE_DIMENSION,
  SPELCH_LINE_HATCH,
  SPELCH_LINE_REST, /* what the board lies on */
  SPELCH_LINE_SHORTENED,
  SPELCH_LINE_RULE,
  SPELCH_LINE_ARROW,
} SpelchLine;

/* Width of a line, and sets it with its dashes. */
double spelch_scene_line (const SpelchScene *scene, SpelchLine line);
void spelch_scene_set_line (const SpelchScene *scene, cairo_t *cr, SpelchLine line);

/* ---- Helpers ---- */

/* How narrow the picture is for its words, 0 to 1; 0 where words stand elsewhere or have their room. */
double spelch_scene_narrowness (const SpelchScene *scene);

/* How far the opening, and the bit at its wall, reach to the left or right of the middle of the picture's
 * opening, picture units. */
double spelch_scene_cut_reach (const SpelchScene *scene, bool at_left);

/* The groove of an earlier cut in the spoilboard, in local coordinates of a motor above; empty without one.
 */
SpelchRect spelch_scene_groove (const SpelchScene *scene);
/* Where the lines stand that part a shortened opening, in the picture; empty without them. */
SpelchRect spelch_scene_shortening (const SpelchScene *scene);

/* Marks the lines of both faces and the board's ends as taken, so that no words with a ground cover them. */
void spelch_scene_take_faces (SpelchScene *scene);

/* Adds a mark for @depth, mm, and its words; @size is that of the letters, in px at a text size of 1. The box
 * has the measures of the words and no place yet, and the line none. */
SpelchMark *spelch_scene_add_mark (SpelchScene *scene, SpelchMarkKind kind, double depth, const char *text,
                                   double size);

/* The same for a pass, counted from 0; @depth says how deep its tip goes. */
void spelch_scene_add_pass_mark (SpelchScene *scene, guint pass, const char *depth, double size);

/* The wall that a mark's line runs to, at the picture's right: as the pass leaves it; for the allowance, as
 * all passes do. */
double spelch_scene_wall_x (const SpelchScene *scene, const SpelchMark *mark);

/* On paper: where a pass's extension line crosses the board. */
SpelchRect spelch_scene_extension (const SpelchMark *mark);

/* Whether the cut has a width of its own. */
bool spelch_scene_has_width (const SpelchScene *scene);

/* On paper: the line of the width's dimension with its arrows, and one of its two extension lines. */
SpelchRect spelch_width_line (const SpelchWidth *width);
SpelchRect spelch_width_extension (const SpelchWidth *width, bool left);

/* On paper: the room that the lines of the running dimensions take right of the board. */
SpelchRect spelch_scene_dimension_line (const SpelchScene *scene);

/* Saves @cr and turns it to local coordinates; cairo_restore() ends that. */
void spelch_scene_enter (const SpelchScene *scene, cairo_t *cr);

/* A rectangle of local coordinates in the picture. */
SpelchRect spelch_scene_to_picture (const SpelchScene *scene, double x0, double y0, double x1, double y1);

/* Local y of the shown tip. */
double spelch_scene_local_tip (const SpelchScene *scene);

/* Whether the shown pass is the one that leaves tabs. */
bool spelch_scene_shows_tabs (const SpelchScene *scene);

/* Depth of the tip in the shown pass, mm. */
double spelch_scene_shown_depth (const SpelchScene *scene);

/* Adds a rectangle with round corners to the path. */
void spelch_add_round (cairo_t *cr, SpelchRect rect, double radius);

/* A length that belongs to a thing, as it is written on it: "6.35 mm", "10 mm". Free with g_free(). */
char *spelch_scene_length (const SpelchScene *scene, double mm);

/* @text with its spaces made no-break, so that a length keeps its unit on the line. Free with g_free(). */
char *spelch_label_unbroken (const char *text);

/* A face's name as it is written inside a sentence. Free with g_free(). */
char *spelch_scene_face_name (const SpelchScene *scene, SpelchSide side);

/* What kind of face it is, without its side. Free with g_free(). */
char *spelch_scene_face_short (const SpelchScene *scene, SpelchSide side);

/* Whether a layout is in at most @lines, none of which begins within a word. */
bool spelch_label_in_lines (PangoLayout *layout, int lines);

/* Makes a label; takes @text. The place is given later. */
SpelchLabel *spelch_scene_label (SpelchScene *scene, SpelchLabelId id, SpelchSceneLayer layer, char *text,
                                 double size, SpelchLetters letters, double wrap, PangoAlignment align,
                                 const SpelchColour *colour);
bool spelch_scene_lost (const SpelchScene *scene, SpelchLabelId id); /* it was dropped */
void spelch_scene_drop_label (SpelchScene *scene, SpelchLabelId id);
void spelch_scene_draw_labels (const SpelchScene *scene, SpelchSceneLayer layer, cairo_t *cr);
SpelchRect spelch_scene_label_bounds (const SpelchScene *scene, SpelchSceneLayer layer);
SpelchRect spelch_label_outer (const SpelchLabel *label); /* with its ground */

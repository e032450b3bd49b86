/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The frame: scale and place of everything that stands still. The scale follows from board, bit and machine
 * only, never from a pass, so that it stays while a pass is dragged.
 */
#include "drawing/scene-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define MARGIN              10.0
#define COLLET              24.0
#define STUB                32.0
#define FOOT                34.0 /* times the text size */
#define FOOT_BARE           6.0  /* without the words that stand there */
#define STRIP               44.0 /* least thickness of a bed, times the text size */
#define AIR                 28.0 /* least room over a face with nothing on it, times the text size */
#define CLEAR_BELOW         14.0 /* between the deepest tip and the end of what is drawn below it */
#define NAME_ROOM           24.0 /* least room beyond the far face, for its name, times the text size */
#define MARK_BARE           50.0 /* right of the board, without the mark of its thickness, times the text size */
#define PASS_ROOM           126.0 /* likewise, with the mark of a pass there */
#define PASS_FROM           400.0 /* width of the picture, times the text size, from which it has that */
#define OVERCUT_ROOM_MM     6.0   /* overcuts up to this are given room in advance */
#define SCALE_MOST          34.0
#define BIT_SHARE           0.30 /* of the board's width, at most */
#define BIT_SHARE_PAPER     0.42
#define BOARD_SHARE         0.24 /* of the picture's height, at least, when the bit's length allows it */
#define OPENING_SHARE       0.44 /* of the board's width, at most */
#define OPENING_SHARE_PAPER 0.38
#define DIMENSIONS          120.0 /* right of the board */
#define MOTOR_OFF           24.0  /* from the collet to the words beside it, an arrow between */
#define WIDE_ENOUGH         640.0 /* width, times the text size, from which words have room on both sides */
#define NARROW              500.0 /* and at which they are helped in full */
#define ASIDE_SHARE         0.08 /* of the board, that the opening is moved to the right for words at its left */
#define COLUMN_CLEAR        16.0 /* from the middle of the chevrons to the bit, at the least */
#define COLUMN_INSIDE       36.0 /* and to the board's end, where the face mark stands */
#define AXIS_SHIFT_MM       2.0  /* how far an allowance may move the bit aside */
#define NOTE_LEAST          90.0 /* least width of a note, times the text size */
#define CORE_LEAST          24.0 /* of what is left in the middle of an opening, with its break lines */
#define BESIDE_BIT          70.0 /* least room in a shortened opening */
#define CHEVRON_REACH       18.0 /* and on from there */
#define BIT_CLEAR           12.0
#define CHEVRON_OFF         46.0 /* from the bit's side to the middle of the chevrons: splinters stand between */
#define CHEVRON_OFF_PAPER   36.0
#define CHEVRON_CLEAR       26.0 /* and from a wall behind it */
#define GROOVE              12.0 /* depth of an earlier cut in the spoilboard, times the text size */
#define GAP_CLEAR           26.0 /* between a through cut's wall and the bench */
#define THROAT_CLEAR        66.0 /* between the bit and the edge of the base's opening: room for chevrons */

/* From the bit's side to the middle of the chevrons. */
static double
chevron_off (const SpelchScene *scene)
{
  return scene->view.on_paper ? CHEVRON_OFF_PAPER : CHEVRON_OFF;
}

/* What decides the scale. mm, or picture units where said. */
typedef struct
{
  double thickness, below, deepest, base, backer;
  double cutting_length, least_flutes;
  double height, foot, strip, text;
  double shown; /* on paper, how deep the tip stands: it isn't going to be raised there */
  bool table;
} Needs;

static Needs
needs_of (const SpelchScene *scene)
{
  const SpelchPlan *plan = &scene->plan;
  Needs needs
      = { .thickness = plan->thickness,
          .base = scene->base_mm,
          .backer = scene->cut.backer.mm,
          .cutting_length = plan->flutes.length,
          .height = scene->view.height,
          .text = scene->view.text,
          .foot = scene->view.without_words || scene->view.on_paper ? FOOT_BARE : FOOT * scene->view.text,
          .strip = (scene->view.without_words && !scene->view.asking ? STRIP / 2 : STRIP) * scene->view.text,
          .table = scene->machine == SPELCH_MACHINE_TABLE };

  if (plan->through)
    needs.below = MAX (plan->overcut, MIN (plan->overcut_most, OVERCUT_ROOM_MM));
  needs.shown = scene->view.on_paper ? spelch_scene_shown_depth (scene) : 0;
  needs.deepest = plan->through ? plan->thickness + needs.below : plan->through_depth;
  needs.least_flutes = MIN (needs.cutting_length,
                            MAX (needs.deepest * 1.15 + needs.base + 2, plan->flutes.turn_over * 1.25));
  return needs;
}

/* Room beyond the far face, picture units. */
static double
far_room (const Needs *needs, double scale)
{
  double tip = needs->below * scale + CLEAR_BELOW;

  if (needs->table)
    return MAX (MAX (AIR * needs->text, tip),
                needs->backer > 0 ? needs->backer * scale + AIR * needs->text : 0);
  return MAX (MAX (needs->strip, tip), needs->backer > 0 ? needs->backer * scale + needs->strip / 2 : 0);
}

/* Shank between flutes and collet: enough that the collet clears the base in the deepest pass. */
static double
stub_at (const Needs *needs, double scale, double flutes)
{
  double lacking = needs->deepest + needs->base + (needs->base > 0 ? 2 : 0) - flutes;

  return MAX (STUB, lacking * scale + STUB / 2);
}

static double
near_room (const Needs *needs, double scale, double flutes)
{
  return MAX (COLLET + stub_at (needs, scale, flutes) + (flutes - needs->shown) * scale,
              needs->base * scale + AIR * needs->text);
}

static double
total (const Needs *needs, double scale, double flutes)
{
  return 2 * MARGIN + near_room (needs, scale, flutes) + needs->thickness * scale + far_room (needs, scale)
         + needs->foot;
}

/* The largest scale at which everything fits with @flutes mm of flutes drawn. */
static double
fitting_scale (const Needs *needs, double flutes)
{
  double low = 0.05, high = SCALE_MOST;

  for (int i = 0; i < 40; i++)
    {
      double middle = (low + high) / 2;

      if (total (needs, middle, flutes) <= needs->height)
        low = middle;
      else
        high = middle;
    }
  return low;
}

/* Sets scale and flute length. A long bit over a thin board is broken short, so that the board isn't a stick.
 */
static void
choose_scale (const SpelchScene *scene, SpelchFrame *frame, const Needs *needs)
{
  double width = frame->board_right - frame->board_left;
  double most = scene->view.scale_most > 0 ? MIN (SCALE_MOST, scene->view.scale_most) : SCALE_MOST;
  double share = scene->view.on_paper ? BIT_SHARE_PAPER : BIT_SHARE;
  double widest = MIN (most, share * width / MAX (scene->plan.flutes.diameter, 0.5));
  double flutes = needs->cutting_length;
  double scale = MIN (fitting_scale (needs, flutes), widest);
  double board = BOARD_SHARE * needs->height / MAX (needs->thickness, 0.1);
  /* On paper the scale is one of a few: flutes are broken short before a smaller one is taken. */
  double wanted = scene->view.on_paper ? widest : MIN (board, widest);

  if (scale < wanted && needs->least_flutes < flutes)
    {
      double low = needs->least_flutes, high = flutes;

      scale = MIN (wanted, fitting_scale (needs, low));
      for (int i = 0; i < 30; i++)
        {
          double middle = (low + high) / 2;

          if (total (needs, scale, middle) <= needs->height)
            low = middle;
          else
            high = middle;
        }
      flutes = low;
    }
  frame->scale = MAX (scale, 0.05);
  frame->flute_mm = flutes;
}

double
spelch_scene_narrowness (const SpelchScene *scene)
{
  if (scene->view.on_paper || scene->view.without_words)
    return 0;
  return CLAMP ((WIDE_ENOUGH - scene->view.width / scene->view.text) / (WIDE_ENOUGH - NARROW), 0, 1);
}

static double
left_share (const SpelchScene *scene)
{
  return scene->view.left_share > 0 ? CLAMP (scene->view.left_share, 0.2, 0.8)
                                    : 0.5 + ASIDE_SHARE * spelch_scene_narrowness (scene);
}

/* Right of the board: the mark of its thickness, and of the one pass where that leaves enough board; or a
 * page's dimensions. */
static double
right_room (const SpelchScene *scene)
{
  const SpelchView *view = &scene->view;
  if (view->on_paper)
    return DIMENSIONS;
  if (view->without_words)
    return MARK_BARE * view->text;
  return (view->one_pass && view->width >= PASS_FROM * view->text ? PASS_ROOM : 76) * view->text;
}

/* Columns from left to right: the rule's numbers, the rule, two bands, the board, the thickness mark. */
static void
place_columns (SpelchScene *scene)
{
  SpelchFrame *frame = &scene->frame;
  double text = scene->view.text;
  bool inches = scene->view.numbers.unit == SPELCH_UNIT_INCH;

  frame->rule_x = 6 + (inches ? 34 : 20) * text;
  frame->band_width = 7;
  frame->band_x[0] = frame->rule_x + 12;
  frame->band_x[1] = frame->band_x[0] + 11;
  frame->left = frame->band_x[1] + frame->band_width + 11;
  frame->board_left = frame->left;
  frame->right = MAX (scene->view.width - 6 - right_room (scene), frame->board_left + 60);
  frame->board_right = frame->right;
  frame->origin_x = round (frame->board_left + left_share (scene) * (frame->board_right - frame->board_left));
}

/* @near: from the picture's end on the motor's side to the face there, picture units; from the words at the
 * foot when that is below. */
static void
set_rows (SpelchScene *scene, const Needs *needs, double near)
{
  SpelchFrame *frame = &scene->frame;
  double scale = frame->scale;

  frame->turn = needs->table ? -1 : 1;
  frame->foot = needs->height - needs->foot;
  frame->near_y = round (frame->turn > 0 ? near : frame->foot - near);
  frame->far_y = frame->near_y + frame->turn * needs->thickness * scale;
  frame->rule_mm = needs->thickness + MAX (needs->below, 6 / scale);
  frame->near_rest = needs->base * scale;
  frame->backer = needs->backer * scale;
  frame->far_rest = needs->table ? 0 : far_room (needs, scale) - frame->backer;
  frame->collet = COLLET;
  frame->stub = stub_at (needs, scale, frame->flute_mm);
}

static void
place_rows (SpelchScene *scene, const Needs *needs)
{
  const SpelchFrame *frame = &scene->frame;
  double spare = MAX (0, needs->height - total (needs, frame->scale, frame->flute_mm));

  set_rows (scene, needs, MARGIN + near_room (needs, frame->scale, frame->flute_mm) + spare * 0.5);
}

/* ---- Held while something is dragged ---- */

static bool
is_held (const SpelchScene *scene, const Needs *needs)
{
  const SpelchSceneHold *hold = &scene->view.hold;
  return hold->scale > 0 && hold->height == needs->height && hold->cutting_length == needs->cutting_length;
}

/* The motor-side face stays where it is. A board that grows takes room from the bed, and only where nothing
 * is left of that does the scale give way. */
static void
hold_rows (SpelchScene *scene, const Needs *needs)
{
  SpelchFrame *frame = &scene->frame;
  const SpelchSceneHold *hold = &scene->view.hold;
  double foot = needs->height - needs->foot, near = needs->table ? foot - hold->near_y : hold->near_y;
  double room = needs->table ? hold->near_y - MARGIN : foot - hold->near_y; /* on the far side */
  double tip = (room - CLEAR_BELOW) / (needs->thickness + MAX (needs->below, needs->backer));
  double named = (room - NAME_ROOM * needs->text) / (needs->thickness + needs->backer);

  frame->scale = CLAMP (MIN (tip, named), 0.05, hold->scale);
  frame->flute_mm = hold->flute_mm;
  set_rows (scene, needs, near);
  frame->stub = MAX (hold->stub, frame->stub);
  if (!needs->table)
    frame->far_rest = MIN (frame->far_rest, room - needs->thickness * frame->scale - frame->backer);
}

SpelchSceneHold
spelch_scene_hold (const SpelchScene *scene)
{
  return (SpelchSceneHold){ .scale = scene->frame.scale,
                            .near_y = scene->frame.near_y,
                            .flute_mm = scene->frame.flute_mm,
                            .stub = scene->frame.stub,
                            .height = scene->view.height,
                            .cutting_length = scene->plan.flutes.length };
}

void
spelch_scene_lay_out_frame (SpelchScene *scene)
{
  Needs needs = needs_of (scene);

  place_columns (scene);
  if (is_held (scene, &needs))
    {
      hold_rows (scene, &needs);
      return;
    }
  choose_scale (scene, &scene->frame, &needs);
  place_rows (scene, &needs);
}

double
spelch_scene_widest_opening (const SpelchScene *scene)
{
  const SpelchFrame *frame = &scene->frame;
  double share = scene->view.on_paper ? OPENING_SHARE_PAPER : OPENING_SHARE;
  double width = share * (frame->right - frame->left) / frame->scale;

  /* of one that is gone round, both kerfs and something between them */
  double needed = scene->plan.setting_out.drops_out
                      ? 2 * scene->plan.flutes.diameter + CORE_LEAST / frame->scale
                      : scene->plan.flutes.diameter + BESIDE_BIT / frame->scale;
  return MAX (width, needed);
}

static double
half_opening (const SpelchScene *scene)
{
  return (scene->opening.right - scene->opening.left) / 2 * scene->frame.scale;
}

/* Beyond a single wall the bit may stand out over the board's end. */
double
spelch_scene_cut_reach (const SpelchScene *scene, bool at_left)
{
  const SpelchOpening *opening = &scene->opening;
  double half = half_opening (scene), bit = scene->plan.flutes.diameter * scene->frame.scale;
  bool wall = at_left == (scene->frame.turn > 0) ? opening->wall_left : opening->wall_right;

  return wall ? half : MAX (half, bit - half);
}

/* "motor side" and its arrow stand beside the collet and belong to the bit's picture. */
static void
place_motor (SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  SpelchLabel *label
      = spelch_scene_label (scene, SPELCH_LABEL_MOTOR, SPELCH_LAYER_BIT, g_strdup (_ ("motor side")), 12,
                            SPELCH_LETTERS_PLAIN, 0, PANGO_ALIGN_LEFT, &scene->palette->ink_soft);
  double collet_y = scene->tip_y - f->turn * (f->flute_mm * f->scale + f->stub + f->collet / 2);

  double collet = spelch_bit_shape_collet_half (&scene->shape);
  label->box.x = scene->axis_x + collet + MOTOR_OFF;
  if (label->box.x + label->box.width > scene->view.width - 2)
    label->box.x = scene->axis_x - collet - 8 - label->box.width; /* its arrow stands left of it */
  label->box.y = round (collet_y - label->box.height / 2);
}

/* How far right of the middle the words beside the collet reach, wherever in the opening the bit stands. */
static double
motor_reach (const SpelchScene *scene)
{
  double radius = scene->plan.flutes.diameter / 2 * scene->frame.scale;
  double aside = MAX (spelch_scene_cut_reach (scene, false) - radius, AXIS_SHIFT_MM * scene->frame.scale);

  return aside + spelch_bit_shape_collet_half (&scene->shape) + MOTOR_OFF
         + scene->labels[SPELCH_LABEL_MOTOR].box.width;
}

/* What names and a window's words leave free beside the bit: chevrons, or splinters, of which a question says
 * nothing. */
static double
beside_bit (const SpelchScene *scene)
{
  if (!spelch_scene_is_straight (scene))
    return chevron_off (scene) + CHEVRON_REACH;
  return scene->view.asking ? BIT_CLEAR : chevron_off (scene);
}

/* Corners on the motor's side: at the picture's left for a window's own words, at its right for notes. */
static void
place_corners (SpelchScene *scene)
{
  SpelchFrame *frame = &scene->frame;
  double text = scene->view.text, reach = spelch_scene_cut_reach (scene, true);
  double left
      = frame->origin_x - MAX (spelch_bit_shape_collet_half (&scene->shape) + 8, reach + beside_bit (scene));
  double right = frame->origin_x + motor_reach (scene) + 12, room = scene->view.width - 8 - right;
  double top = MARGIN, bottom = frame->near_y - frame->near_rest - AIR * text;

  if (frame->turn < 0)
    {
      top = frame->near_y + frame->near_rest + MARGIN;
      bottom = frame->foot - 4;
    }
  frame->corner = (SpelchRect){ frame->rule_x, top, MAX (left - frame->rule_x, 0),
                                CLAMP (140 * text, 0, MAX (bottom - top, 0)) };
  frame->notes = (SpelchRect){ right, top, room, MAX (bottom - top, 0) };
  if (room < NOTE_LEAST * text)
    frame->notes = (SpelchRect){ 0, 0, 0, 0 };
}

/* Left of the bit, but not astride a wall that stands there. */
static double
chevron_column (const SpelchScene *scene, double bit_left)
{
  const SpelchFrame *frame = &scene->frame;
  bool wall = frame->turn > 0 ? scene->opening.wall_left : scene->opening.wall_right;
  double wall_x = frame->origin_x - half_opening (scene), x = round (bit_left) - chevron_off (scene);

  x = wall && x - wall_x < CHEVRON_CLEAR ? MIN (x, round (wall_x) - chevron_off (scene)) : x;
  /* In a narrow picture nearer to the bit rather than astride the board's end. */
  if (wall)
    x = MAX (x, MIN (round (frame->board_left) + COLUMN_INSIDE, round (bit_left) - COLUMN_CLEAR));
  return x;
}

/* How deep it was cut isn't told. */
SpelchRect
spelch_scene_groove (const SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  double deep = MIN (GROOVE * scene->view.text, f->far_rest * 0.4), top = scene->plan.thickness * f->scale;
  if (!scene->grooved)
    return (SpelchRect){ 0, 0, 0, 0 };
  return (SpelchRect){ -half_opening (scene), top, 2 * half_opening (scene), deep };
}

void
spelch_scene_lay_out_bit (SpelchScene *scene)
{
  SpelchFrame *frame = &scene->frame;
  SpelchBitShape *shape = &scene->shape;
  double depth = spelch_scene_shown_depth (scene);
  double axis = scene->opening.n > 0 ? scene->opening.spans[scene->shown].axis : 0;
  double half = scene->plan.flutes.diameter / 2 * frame->scale;

  *shape = (SpelchBitShape){ .flutes = scene->plan.flutes,
                             .scale = frame->scale,
                             .flute_mm = frame->flute_mm,
                             .stub = frame->stub,
                             .collet = frame->collet,
                             .turned = scene->view.turned,
                             .line = scene->view.on_paper ? SPELCH_PAPER_WIDE : 1.2,
                             .narrow = scene->view.on_paper ? SPELCH_PAPER_NARROW : 0 };
  spelch_bit_shape_init (shape, &scene->bit);
  frame->throat
      = MAX (spelch_scene_cut_reach (scene, true), spelch_scene_cut_reach (scene, false)) + THROAT_CLEAR;
  frame->gap = scene->machine == SPELCH_MACHINE_HAND && scene->plan.through && scene->cut.backer.mm <= 0
                   ? half_opening (scene) + GAP_CLEAR
                   : 0;
  scene->axis_x = round (frame->origin_x + frame->turn * axis * frame->scale);
  scene->tip_y = round (frame->near_y + frame->turn * depth * frame->scale);
  scene->chevron_x = chevron_column (scene, scene->axis_x - half);
  place_motor (scene);
  place_corners (scene);
}

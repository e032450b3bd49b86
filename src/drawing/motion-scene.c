/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/motion-scene-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define GAUGE_SHARE  0.28 /* of the picture's height, for the strip under the side view */
#define GAUGE_LEAST  150.0
#define GAUGE_MOST   210.0
#define MOST_LIFT    5.0 /* units that the strongest force lifts the board */
#define ARROW_MOST   46.0
#define ARROW_HEAD   6.0
#define NAME_SIZE    11.0 /* of the words under it */
#define NAME_ASIDE   6.0
#define BOARD_MARGIN 10.0
#define CHIPS_REACH  2.5 /* radii to both sides of the axis that chips fly */
#define CHIPS_RISE   1.6 /* and above the board */
#define CHIPS_SLACK  14.0
#define BLUR_PHASES  16
#define HAZE_PHASES  24
#define HAZE_OPACITY 0.16
#define CHIP_SEEN    2.4 /* units: chips in the side view are drawn at least so thick, if need be enlarged */

/* ---- Making ---- */

static SpelchScene *
side_scene (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit, const SpelchPlan *plan,
            guint pass, const SpelchView *view, double height)
{
  SpelchView side = *view;

  side.height = height;
  side.shown_pass = pass + 1;
  side.with_marks = false;
  side.without_words = false;
  side.turned = 0;
  return spelch_scene_new (part, cut, bit, plan, &side);
}

/* The least of a few round factors that makes @thickness units seen. */
static int
enlarged_to (double thickness, double seen)
{
  static const int BY[] = { 1, 2, 3, 5, 10, 20, 50 };

  for (guint i = 0; i < G_N_ELEMENTS (BY); i++)
    if (thickness * BY[i] >= seen)
      return BY[i];
  return BY[G_N_ELEMENTS (BY) - 1];
}

static void
name_arrow (SpelchMotionScene *scene)
{
  const SpelchScene *side = scene->side;
  double room = side->view.width - side->frame.right - 3 * NAME_ASIDE;

  for (int i = 0; i < 2; i++)
    scene->arrow_words[i] = spelch_lettering_set (
        side->lettering, i == 0 ? _ ("board lifts, enlarged") : _ ("board is pressed, enlarged"), NAME_SIZE,
        SPELCH_LETTERS_PLAIN, room, PANGO_ALIGN_LEFT);
}

SpelchMotionScene *
spelch_motion_scene_new (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit,
                         const SpelchPlan *plan, const SpelchMotion *motion, guint pass,
                         const SpelchView *view, int pixels)
{
  SpelchMotionScene *scene = g_new0 (SpelchMotionScene, 1);
  double text = CLAMP (view->text, 0.5, 3.0), gauge;

  g_return_val_if_fail (motion->n_passes > 0, NULL);
  scene->motion = motion;
  scene->number = MIN (pass, motion->n_passes - 1);
  scene->pass = &motion->passes[scene->number];
  scene->machine = part->machine.kind;
  scene->width = MAX (floor (view->width), 200);
  scene->height = MAX (floor (view->height), 240);
  scene->pixels = MAX (pixels, 1);
  gauge = floor (CLAMP (GAUGE_SHARE * scene->height, GAUGE_LEAST * text, GAUGE_MOST * text));
  gauge = MIN (gauge, floor (scene->height * 0.6));
  scene->gauge = (SpelchRect){ 0, scene->height - gauge, scene->width, gauge };
  scene->side = side_scene (part, cut, bit, plan, scene->number, view, scene->height - gauge);
  scene->enlarged[0] = enlarged_to (scene->pass->chip_max * scene->side->frame.scale, CHIP_SEEN);
  spelch_motion_lay_out_gauge (scene);
  name_arrow (scene);
  return scene;
}

void
spelch_motion_scene_free (SpelchMotionScene *scene)
{
  cairo_surface_t **kept[]
      = { &scene->still, &scene->back, &scene->board, &scene->words, &scene->blurred_bit, &scene->haze };

  for (guint i = 0; i < G_N_ELEMENTS (kept); i++)
    g_clear_pointer (kept[i], cairo_surface_destroy);
  for (int i = 0; i < 2; i++)
    g_clear_object (&scene->arrow_words[i]);
  spelch_motion_clear_gauge (scene);
  spelch_scene_free (scene->side);
  g_free (scene);
}

/* ---- Where things are ---- */

const SpelchScene *
spelch_motion_scene_side (const SpelchMotionScene *scene)
{
  return scene->side;
}

int
spelch_motion_scene_enlarged (const SpelchMotionScene *scene, bool from_motor)
{
  return scene->enlarged[from_motor];
}

/* The strongest force of all passes without its band, N. */
static double
strongest (const SpelchMotionScene *scene)
{
  return MAX (scene->motion->most, -scene->motion->least) / MAX (scene->pass->constants->band_axial, 1);
}

double
spelch_motion_scene_lift (const SpelchMotionScene *scene, const SpelchBand *axial)
{
  double most = strongest (scene), lift;

  if (most < 0.05)
    return 0;
  lift = MOST_LIFT * scene->side->view.text * CLAMP (axial->mid / most, -1, 1);
  /* On whole pixels, so that the grain stays crisp. */
  return round (lift * scene->pixels) / scene->pixels;
}

void
spelch_motion_scene_chip (const SpelchMotionScene *scene, const SpelchMotionChip *chip, double *x, double *y)
{
  *x = spelch_scene_x (scene->side, chip->across);
  *y = spelch_scene_y (scene->side, chip->depth);
}

/* ---- Kept pictures ---- */

static cairo_surface_t *
new_picture (const SpelchMotionScene *scene, cairo_format_t format, double width, double height)
{
  cairo_surface_t *surface = cairo_image_surface_create (format, (int)ceil (width) * scene->pixels,
                                                         (int)ceil (height) * scene->pixels);

  cairo_surface_set_device_scale (surface, scene->pixels, scene->pixels);
  return surface;
}

/* Board, what it rests on and kerf, without words. */
static cairo_surface_t *
back_of (SpelchMotionScene *scene)
{
  cairo_t *cr;

  if (scene->back != NULL)
    return scene->back;
  scene->back = new_picture (scene, CAIRO_FORMAT_RGB24, scene->width, scene->gauge.y);
  cr = cairo_create (scene->back);
  spelch_scene_draw_layer (scene->side, SPELCH_LAYER_STILL, cr);
  spelch_scene_draw_layer (scene->side, SPELCH_LAYER_KERF, cr);
  cairo_destroy (cr);
  return scene->back;
}

/* What stands over all that moves. */
static cairo_surface_t *
words_of (SpelchMotionScene *scene)
{
  cairo_t *cr;

  if (scene->words != NULL)
    return scene->words;
  scene->words = new_picture (scene, CAIRO_FORMAT_ARGB32, scene->width, scene->gauge.y);
  cr = cairo_create (scene->words);
  spelch_scene_draw_motor (scene->side, cr);
  spelch_scene_draw_layer (scene->side, SPELCH_LAYER_SHEAR, cr);
  spelch_scene_draw_layer (scene->side, SPELCH_LAYER_WORDS, cr);
  cairo_destroy (cr);
  return scene->words;
}

cairo_surface_t *
spelch_motion_scene_still (SpelchMotionScene *scene)
{
  cairo_t *cr;

  if (scene->still != NULL)
    return scene->still;
  scene->still = new_picture (scene, CAIRO_FORMAT_RGB24, scene->width, scene->height);
  cr = cairo_create (scene->still);
  cairo_set_source_surface (cr, back_of (scene), 0, 0);
  cairo_paint (cr);
  spelch_scene_draw_layer (scene->side, SPELCH_LAYER_BIT, cr);
  cairo_set_source_surface (cr, words_of (scene), 0, 0);
  cairo_paint (cr);
  spelch_motion_draw_gauge_still (scene, cr);
  cairo_destroy (cr);
  return scene->still;
}

bool
spelch_motion_scene_prepare (SpelchMotionScene *scene)
{
  if (scene->back == NULL)
    back_of (scene);
  else if (scene->words == NULL)
    words_of (scene);
  else if (scene->still == NULL)
    spelch_motion_scene_still (scene);
  return scene->still == NULL;
}

/* ---- The board ---- */

/* The board's rectangle with the lines of its faces; the ground about it moves with it. */
static SpelchRect
board_rect (const SpelchMotionScene *scene)
{
  const SpelchFrame *f = &scene->side->frame;
  double top = MIN (f->near_y, f->far_y), bottom = MAX (f->near_y, f->far_y);
  double left = floor (f->board_left - BOARD_MARGIN), right = ceil (f->board_right + BOARD_MARGIN);

  return (SpelchRect){ left, floor (top) - 1, right - left, ceil (bottom) - floor (top) + 2 };
}

static double
arrow_x (const SpelchMotionScene *scene)
{
  return round (scene->side->frame.right + 34 * scene->side->view.text) + 0.5;
}

/* Moved by @lift toward the motor, with a gap where it stood. */
static void
draw_board (SpelchMotionScene *scene, cairo_t *cr, double lift)
{
  const SpelchFrame *f = &scene->side->frame;
  SpelchRect board = board_rect (scene);
  double moved = -f->turn * lift;

  if (lift == 0)
    return;
  cairo_rectangle (cr, f->board_left, moved < 0 ? board.y + board.height - 1.5 + moved : board.y,
                   f->board_right - f->board_left, fabs (moved));
  spelch_colour_set (cr, &scene->side->palette->ground, 1.0);
  cairo_fill (cr);
  cairo_save (cr);
  cairo_rectangle (cr, board.x, board.y + moved, board.width, board.height);
  cairo_clip (cr);
  cairo_set_source_surface (cr, back_of (scene), 0, moved);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_paint (cr);
  cairo_restore (cr);
}

static double
arrow_length (const SpelchMotionScene *scene, const SpelchBand *axial)
{
  double most = strongest (scene), text = scene->side->view.text;

  return most < 0.05 ? 0 : round (2 * ARROW_MOST * text * CLAMP (axial->mid / most, -1, 1)) / 2;
}

/* Where its name stands: on the other side of the line that it begins at. */
static SpelchRect
arrow_name (const SpelchMotionScene *scene, bool pressed)
{
  const SpelchFrame *f = &scene->side->frame;
  SpelchRect rect = { f->right + 2 * NAME_ASIDE, (f->near_y + f->far_y) / 2, 0, 0 };

  spelch_lettering_measure (scene->arrow_words[pressed], &rect.width, &rect.height);
  rect.y += pressed == (f->turn > 0) ? -NAME_ASIDE - rect.height : NAME_ASIDE;
  return rect;
}

/* Beside the board, as long as the force is strong. */
static void
draw_arrow (const SpelchMotionScene *scene, cairo_t *cr, const SpelchBand *axial)
{
  const SpelchFrame *f = &scene->side->frame;
  double text = scene->side->view.text, way = arrow_length (scene, axial);
  double x = arrow_x (scene), y = (f->near_y + f->far_y) / 2, tip = y - f->turn * way;
  double head = ARROW_HEAD * text * (y - tip < 0 ? -1 : 1);

  spelch_colour_set (cr, &scene->side->palette->ink_soft, 1.0);
  cairo_set_line_width (cr, 1.4);
  cairo_move_to (cr, x - 9 * text, y);
  cairo_line_to (cr, x + 9 * text, y);
  cairo_stroke (cr);
  if (strongest (scene) >= 0.05)
    {
      SpelchRect name = arrow_name (scene, way < 0);
      spelch_lettering_draw (cr, scene->arrow_words[way < 0], name.x, name.y,
                             &scene->side->palette->ink_soft);
    }
  if (fabs (way) < 2)
    return;
  spelch_colour_set (cr, &scene->side->palette->ink, 1.0);
  cairo_set_line_width (cr, 2.4);
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x, tip);
  cairo_move_to (cr, x - ARROW_HEAD * text, tip + head);
  cairo_line_to (cr, x, tip);
  cairo_line_to (cr, x + ARROW_HEAD * text, tip + head);
  cairo_stroke (cr);
}

/* ---- The bit ---- */

/* In the drawing an edge stands a quarter turn further on: at the wall on the right when the force's angle is
 * pi. */
static void
draw_turned_bit (const SpelchMotionScene *scene, cairo_t *cr, double turned)
{
  const SpelchScene *side = scene->side;
  SpelchBitShape shape = side->shape;

  shape.turned = turned + M_PI_2;
  cairo_save (cr);
  cairo_translate (cr, side->axis_x, side->tip_y);
  cairo_scale (cr, side->frame.turn, side->frame.turn);
  spelch_bit_shape_draw (cr, &shape, side->palette);
  cairo_restore (cr);
}

/* A clear picture of the bit's part alone, drawn to in the whole picture's coordinates. */
static cairo_surface_t *
bit_picture (const SpelchMotionScene *scene)
{
  SpelchRect bounds = spelch_motion_scene_bounds (scene, SPELCH_MOTION_BIT, NULL);
  cairo_surface_t *surface = new_picture (scene, CAIRO_FORMAT_ARGB32, bounds.width, bounds.height);

  cairo_surface_set_device_offset (surface, -bounds.x * scene->pixels, -bounds.y * scene->pixels);
  return surface;
}

/* The mean of its pictures over a tooth. */
static cairo_surface_t *
blurred_bit (SpelchMotionScene *scene)
{
  const SpelchFlutes *flutes = &scene->pass->force.flutes;
  double span = flutes->edges_up == flutes->edges_down ? spelch_motion_tooth (scene->pass) : 2 * M_PI;
  cairo_t *cr;

  if (scene->blurred_bit != NULL)
    return scene->blurred_bit;
  scene->blurred_bit = bit_picture (scene);
  cr = cairo_create (scene->blurred_bit);
  for (int i = 0; i < BLUR_PHASES; i++)
    {
      cairo_push_group (cr);
      draw_turned_bit (scene, cr, span * i / BLUR_PHASES);
      cairo_pop_group_to_source (cr);
      cairo_paint_with_alpha (cr, 1.0 / (i + 1));
    }
  cairo_destroy (cr);
  return scene->blurred_bit;
}

/* The same of its chips, once they have come as far as they come. */
static cairo_surface_t *
haze (SpelchMotionScene *scene)
{
  g_autofree SpelchMotionFrame *frame = NULL;
  double from = 2 * M_PI * (SPELCH_MOTION_TURNS - 1);
  cairo_t *cr;

  if (scene->haze != NULL)
    return scene->haze;
  frame = g_new (SpelchMotionFrame, 1);
  scene->haze = bit_picture (scene);
  cr = cairo_create (scene->haze);
  for (int i = 0; i < HAZE_PHASES; i++)
    {
      spelch_motion_at (scene->motion, scene->number,
                        from + spelch_motion_tooth (scene->pass) * i / HAZE_PHASES, frame);
      spelch_motion_draw_chips (scene, cr, frame, HAZE_OPACITY);
    }
  cairo_destroy (cr);
  return scene->haze;
}

/* ---- A frame ---- */

static void
draw_edges (const SpelchMotionScene *scene, cairo_t *cr, const SpelchMotionFrame *frame, bool blurred,
            double lift)
{
  const SpelchScene *side = scene->side;

  cairo_save (cr);
  cairo_translate (cr, 0, -side->frame.turn * lift);
  spelch_scene_enter (side, cr);
  spelch_scene_draw_tabs (side, cr);
  for (guint i = 0; i < scene->motion->n_edges; i++)
    spelch_scene_draw_opened_edge (side, cr, i, blurred ? frame->opened[i] > 0 : frame->opened[i]);
  cairo_restore (cr);
  cairo_restore (cr);
}

static void
paint_picture (cairo_t *cr, cairo_surface_t *surface)
{
  cairo_set_source_surface (cr, surface, 0, 0);
  cairo_paint (cr);
}

static void
draw_bit (SpelchMotionScene *scene, cairo_t *cr, const SpelchMotionFrame *frame, bool blurred)
{
  if (blurred)
    {
      paint_picture (cr, blurred_bit (scene));
      paint_picture (cr, haze (scene));
      return;
    }
  draw_turned_bit (scene, cr, frame->turned);
  spelch_motion_draw_chips (scene, cr, frame, 1);
}

static const SpelchBand *
force_of (const SpelchMotionScene *scene, const SpelchMotionFrame *frame, bool blurred)
{
  return blurred ? &scene->pass->axial : &frame->axial;
}

static void
draw_side_part (SpelchMotionScene *scene, SpelchMotionPart part, cairo_t *cr, const SpelchMotionFrame *frame,
                bool blurred)
{
  const SpelchBand *axial = force_of (scene, frame, blurred);
  double lift = spelch_motion_scene_lift (scene, axial);

  paint_picture (cr, back_of (scene));
  if (part == SPELCH_MOTION_ARROW)
    draw_arrow (scene, cr, axial);
  else
    draw_board (scene, cr, lift);
  if (part == SPELCH_MOTION_BIT)
    {
      draw_bit (scene, cr, frame, blurred);
      draw_edges (scene, cr, frame, blurred, lift);
    }
  paint_picture (cr, words_of (scene));
}

void
spelch_motion_scene_draw_part (SpelchMotionScene *scene, SpelchMotionPart part, cairo_t *cr,
                               const SpelchMotionFrame *frame, bool blurred)
{
  SpelchRect bounds = spelch_motion_scene_bounds (scene, part, frame);

  cairo_save (cr);
  cairo_rectangle (cr, bounds.x, bounds.y, bounds.width, bounds.height);
  cairo_clip (cr);
  if (part <= SPELCH_MOTION_ARROW)
    draw_side_part (scene, part, cr, frame, blurred);
  else
    {
      paint_picture (cr, spelch_motion_scene_still (scene));
      spelch_motion_draw_gauge (scene, part, cr, frame, blurred);
    }
  cairo_restore (cr);
}

/* The flutes, what chips fly over, and splinters on both sides. */
static SpelchRect
bit_bounds (const SpelchMotionScene *scene)
{
  const SpelchScene *side = scene->side;
  const SpelchFrame *f = &side->frame;
  double scale = f->scale, radius = side->plan.flutes.diameter / 2 * scale,
         tip = spelch_scene_local_tip (side);
  double reach = MAX (radius * CHIPS_REACH, spelch_bit_shape_collet_half (&side->shape)) + CHIPS_SLACK;
  double axis = (side->axis_x - f->origin_x) * f->turn;
  double top = MIN (tip - f->flute_mm * scale, -radius * CHIPS_RISE - CHIPS_SLACK) - CHIPS_SLACK;
  SpelchRect all
      = spelch_scene_to_picture (side, axis - reach, top, axis + reach, tip + CHIPS_SLACK + MOST_LIFT);

  return spelch_rect_union (all, spelch_scene_edges_bounds (side));
}

static SpelchRect
within (SpelchRect rect, double width, double height)
{
  double right = MIN (rect.x + rect.width, width), bottom = MIN (rect.y + rect.height, height);

  rect.x = MAX (rect.x, 0);
  rect.y = MAX (rect.y, 0);
  rect.width = MAX (right - rect.x, 0);
  rect.height = MAX (bottom - rect.y, 0);
  return rect;
}

SpelchRect
spelch_motion_scene_bounds (const SpelchMotionScene *scene, SpelchMotionPart part,
                            const SpelchMotionFrame *frame)
{
  const SpelchFrame *f = &scene->side->frame;
  double text = scene->side->view.text, lift = ceil (MOST_LIFT * text) + 1;
  SpelchRect rect;

  switch ((int)part)
    {
    case SPELCH_MOTION_BOARD:
      rect = board_rect (scene);
      rect.y -= lift;
      rect.height += 2 * lift;
      break;
    case SPELCH_MOTION_BIT:
      rect = bit_bounds (scene);
      rect.y -= lift;
      rect.height += 2 * lift;
      break;
    case SPELCH_MOTION_ARROW:
      rect = (SpelchRect){ arrow_x (scene) - 11 * text, (f->near_y + f->far_y) / 2 - (ARROW_MOST + 4) * text,
                           22 * text, 2 * (ARROW_MOST + 4) * text };
      rect
          = spelch_rect_union (rect, spelch_rect_union (arrow_name (scene, false), arrow_name (scene, true)));
      break;
    default:
      return within (spelch_rect_whole (spelch_motion_gauge_bounds (scene, part, frame)), scene->width,
                     scene->height);
    }
  return within (spelch_rect_whole (rect), scene->width, scene->gauge.y);
}

double
spelch_motion_scene_value (const SpelchMotionScene *scene, SpelchMotionPart part,
                           const SpelchMotionFrame *frame, bool blurred)
{
  const SpelchBand *axial = force_of (scene, frame, blurred);
  int opened = 0;

  switch ((int)part)
    {
    case SPELCH_MOTION_BOARD:
      return spelch_motion_scene_lift (scene, axial);
    case SPELCH_MOTION_ARROW:
      return arrow_length (scene, axial);
    case SPELCH_MOTION_READOUT:
      return blurred ? G_MAXDOUBLE : axial->mid;
    default:
      for (guint i = 0; i < scene->motion->n_edges; i++)
        opened |= (frame->opened[i] > 0) << i;
      /* Never equal to a turn, which isn't negative. */
      return blurred ? -1.0 - opened : frame->turned;
    }
}

void
spelch_motion_scene_draw (SpelchMotionScene *scene, cairo_t *cr, const SpelchMotionFrame *frame, bool blurred)
{
  paint_picture (cr, spelch_motion_scene_still (scene));
  for (int part = 0; part < SPELCH_MOTION_N_PARTS; part++)
    spelch_motion_scene_draw_part (scene, (SpelchMotionPart)part, cr, frame, blurred);
}

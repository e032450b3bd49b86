/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/scene-private.h"

#include <math.h>

/* The angle between a layer's fibres and the feed, 0 to pi/2. A cut in every direction is shown where it
 * crosses the board, which is where its faces tear soonest. */
static double
angle_to_path (const SpelchScene *scene, const SpelchLayer *layer)
{
  double path = spelch_cut_every_direction (&scene->cut) ? 90.0 : scene->cut.path_deg;
  /* Turning the board over mirrors its grain; the path is seen from face a. */
  double angle = layer->grain_deg - spelch_angle_seen_from (scene->plan.near, path);
  return fabs (spelch_angle_of_line (angle)) * M_PI / 180.0;
}

/* The board as the plan has it, motor side first. */
static void
take_board (SpelchScene *scene, const SpelchPart *part)
{
  scene->board = spelch_board_toward_motor (&part->board, scene->plan.near);
  for (guint i = 0; i < scene->board.n_layers; i++)
    scene->layer_path[i] = angle_to_path (scene, &scene->board.layers[i]);
}

static void
take_view (SpelchScene *scene, const SpelchView *view)
{
  scene->view = *view;
  scene->view.width = MAX (view->width, 120);
  scene->view.height = MAX (view->height, 120);
  scene->view.text = CLAMP (view->text, 0.5, 3.0);
  if (!isfinite (view->turned))
    scene->view.turned = 0;
  scene->palette = spelch_palette (view->look);
  scene->shown = view->shown_pass > 0 ? view->shown_pass - 1 : 0;
  if (scene->plan.n_passes > 0)
    scene->shown = MIN (scene->shown, MIN (scene->plan.n_passes, SPELCH_MAX_PASSES) - 1);
}

static void
take_lettering (SpelchScene *scene, const SpelchView *view)
{
  if (view->lettering != NULL && spelch_lettering_suits (view->lettering, view->family, scene->view.text))
    scene->lettering = spelch_lettering_ref (view->lettering);
  else
    scene->lettering = spelch_lettering_new (view->family, scene->view.text);
}

/* A scoring pass is shown with the bit that makes it. */
static void
take_scorer (SpelchScene *scene, const SpelchPart *part)
{
  const SpelchPlan *plan = &scene->plan;
  bool scores = scene->shown < plan->n_passes && plan->passes[scene->shown].bit == 1;
  int scorer = scores ? spelch_part_find_bit (part, plan->scoring.bit) : -1;

  if (scorer < 0)
    return;
  scene->plan.flutes = plan->scoring.flutes;
  scene->bit = part->bits[scorer];
}

static void
forget_windows (SpelchPlan *plan)
{
  plan->windows = (SpelchWindows){ .far_applies = plan->windows.far_applies };
}

/* What would answer a question is taken away, so that no layer can show it. */
static void
keep_to_itself (SpelchPlan *plan)
{
  plan->n_edges = 0;
  forget_windows (plan);
}

static bool
names_what_lies_there (SpelchLabelId id)
{
  return id == SPELCH_LABEL_NEAR_FACE || id == SPELCH_LABEL_FAR_FACE || id == SPELCH_LABEL_NEAR_REST
         || id == SPELCH_LABEL_FAR_REST || id == SPELCH_LABEL_BACKER;
}

SpelchScene *
spelch_scene_new (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit, const SpelchPlan *plan,
                  const SpelchView *view)
{
  SpelchScene *scene = g_new0 (SpelchScene, 1);

  scene->bit = *bit;
  scene->cut = *cut;
  scene->plan = *plan;
  scene->machine = part->machine.kind;
  scene->base_mm = scene->machine == SPELCH_MACHINE_GANTRY ? 0 : MAX (part->machine.base_thickness.mm, 6.0);
  scene->grooved = scene->machine == SPELCH_MACHINE_GANTRY && plan->through && cut->backer.mm <= 0
                   && part->machine.spoilboard == SPELCH_SPOILBOARD_CUT_HERE_BEFORE;
  take_view (scene, view);
  take_scorer (scene, part);
  if (view->asking)
    keep_to_itself (&scene->plan);
  if (view->without_windows)
    forget_windows (&scene->plan);
  take_board (scene, part);
  scene->setting = spelch_words_setting (part, &view->numbers);
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    scene->faces[side] = view->on_paper ? spelch_words_face_alone (plan, cut, (SpelchSide)side)
                                        : spelch_words_face (plan, cut, (SpelchSide)side);
  take_lettering (scene, view);

  spelch_scene_lay_out_frame (scene);
  spelch_scene_lay_out_opening (scene);
  spelch_scene_lay_out_bit (scene);
  spelch_scene_lay_out_words (scene);
  spelch_scene_lay_out_marks (scene);
  spelch_scene_lay_out_shear (scene);
  for (int id = 0; view->without_words && id < SPELCH_N_LABELS; id++)
    if (id != SPELCH_LABEL_MOTOR && !(view->asking && names_what_lies_there ((SpelchLabelId)id)))
      spelch_scene_drop_label (scene, (SpelchLabelId)id);
  return scene;
}

void
spelch_scene_free (SpelchScene *scene)
{
  if (scene == NULL)
    return;
  for (guint i = 0; i < SPELCH_N_LABELS; i++)
    g_clear_object (&scene->labels[i].layout);
  for (guint i = 0; i < scene->n_marks; i++)
    g_clear_object (&scene->marks[i].layout);
  g_clear_object (&scene->width.layout);
  g_free (scene->setting);
  g_free (scene->faces[SPELCH_SIDE_MOTOR]);
  g_free (scene->faces[SPELCH_SIDE_FAR]);
  spelch_lettering_unref (scene->lettering);
  g_free (scene);
}

/* ---- Coordinates ---- */

double
spelch_scene_scale (const SpelchScene *scene)
{
  return scene->frame.scale;
}

double
spelch_scene_y (const SpelchScene *scene, double depth_mm)
{
  return scene->frame.near_y + scene->frame.turn * depth_mm * scene->frame.scale;
}

double
spelch_scene_depth (const SpelchScene *scene, double y)
{
  return (y - scene->frame.near_y) * scene->frame.turn / scene->frame.scale;
}

double
spelch_scene_x (const SpelchScene *scene, double across_mm)
{
  return scene->axis_x + scene->frame.turn * across_mm * scene->frame.scale;
}

double
spelch_scene_across (const SpelchScene *scene, double x)
{
  return (x - scene->axis_x) * scene->frame.turn / scene->frame.scale;
}

double
spelch_scene_shown_depth (const SpelchScene *scene)
{
  return scene->shown < scene->plan.n_passes ? scene->plan.passes[scene->shown].tip_mm : 0;
}

double
spelch_scene_local_tip (const SpelchScene *scene)
{
  return (scene->tip_y - scene->frame.near_y) * scene->frame.turn;
}

void
spelch_scene_enter (const SpelchScene *scene, cairo_t *cr)
{
  cairo_save (cr);
  cairo_translate (cr, scene->frame.origin_x, scene->frame.near_y);
  cairo_scale (cr, scene->frame.turn, scene->frame.turn);
}

SpelchRect
spelch_scene_to_picture (const SpelchScene *scene, double x0, double y0, double x1, double y1)
{
  const SpelchFrame *f = &scene->frame;
  double ax = f->origin_x + f->turn * x0, bx = f->origin_x + f->turn * x1;
  double ay = f->near_y + f->turn * y0, by = f->near_y + f->turn * y1;

  return (SpelchRect){ MIN (ax, bx), MIN (ay, by), fabs (bx - ax), fabs (by - ay) };
}

/* ---- The bit's layer ---- */

static void
arrow_of (const SpelchScene *scene, double *x, double *tail, double *head)
{
  const SpelchLabel *label = &scene->labels[SPELCH_LABEL_MOTOR];
  double middle = label->box.y + label->box.height / 2;

  *x = label->box.x - 10;
  *tail = middle + scene->frame.turn * 9;
  *head = middle - scene->frame.turn * 9;
}

static void
draw_bit (const SpelchScene *scene, cairo_t *cr)
{
  cairo_save (cr);
  cairo_translate (cr, scene->axis_x, scene->tip_y);
  cairo_scale (cr, scene->frame.turn, scene->frame.turn);
  spelch_bit_shape_draw (cr, &scene->shape, scene->palette);
  cairo_restore (cr);
  spelch_scene_draw_motor (scene, cr);
}

void
spelch_scene_draw_motor (const SpelchScene *scene, cairo_t *cr)
{
  double x, tail, head, turn = scene->frame.turn;

  arrow_of (scene, &x, &tail, &head);
  cairo_save (cr);
  cairo_move_to (cr, x, tail);
  cairo_line_to (cr, x, head);
  cairo_move_to (cr, x - 4, head + turn * 6);
  cairo_line_to (cr, x, head);
  cairo_line_to (cr, x + 4, head + turn * 6);
  spelch_scene_set_line (scene, cr, SPELCH_LINE_ARROW);
  spelch_colour_set (cr, &scene->palette->ink_soft, 1.0);
  cairo_stroke (cr);
  cairo_restore (cr);
  spelch_scene_draw_labels (scene, SPELCH_LAYER_BIT, cr);
}

SpelchRect
spelch_scene_bit (const SpelchScene *scene)
{
  double half, above, below, turn = scene->frame.turn;

  spelch_bit_shape_extent (&scene->shape, &half, &above, &below);
  return (SpelchRect){ scene->axis_x - half, MIN (scene->tip_y - turn * above, scene->tip_y + turn * below),
                       2 * half, above + below };
}

static SpelchRect
bit_bounds (const SpelchScene *scene)
{
  double x, tail, head;
  SpelchRect all = spelch_scene_label_bounds (scene, SPELCH_LAYER_BIT);

  all = spelch_rect_union (all, spelch_scene_bit (scene));
  arrow_of (scene, &x, &tail, &head);
  return spelch_rect_union (all, (SpelchRect){ x - 6, MIN (tail, head) - 2, 12, fabs (tail - head) + 4 });
}

/* ---- Layers ---- */

SpelchRect
spelch_scene_bounds (const SpelchScene *scene, SpelchSceneLayer layer)
{
  switch (layer)
    {
    case SPELCH_LAYER_STILL:
      return (SpelchRect){ 0, 0, ceil (scene->view.width), ceil (scene->view.height) };
    case SPELCH_LAYER_KERF:
      return spelch_rect_whole (spelch_scene_kerf_bounds (scene));
    case SPELCH_LAYER_BIT:
      return spelch_rect_whole (bit_bounds (scene));
    case SPELCH_LAYER_SHEAR:
      return spelch_rect_whole (spelch_scene_shear_bounds (scene));
    case SPELCH_LAYER_EDGES:
      return spelch_rect_whole (spelch_scene_edges_bounds (scene));
    case SPELCH_LAYER_WORDS:
      return spelch_rect_whole (spelch_scene_words_bounds (scene));
    case SPELCH_LAYER_MARKS:
      return spelch_rect_whole (spelch_scene_marks_bounds (scene));
    case SPELCH_N_LAYERS:
    default:
      return (SpelchRect){ 0, 0, 0, 0 };
    }
}

void
spelch_scene_draw_layer (const SpelchScene *scene, SpelchSceneLayer layer, cairo_t *cr)
{
  static void (*const DRAW[]) (const SpelchScene *, cairo_t *) = {
    [SPELCH_LAYER_STILL] = spelch_scene_draw_still,
    [SPELCH_LAYER_KERF] = spelch_scene_draw_kerf,
    [SPELCH_LAYER_BIT] = draw_bit,
    [SPELCH_LAYER_SHEAR] = spelch_scene_draw_shear,
    [SPELCH_LAYER_EDGES] = spelch_scene_draw_edges,
    [SPELCH_LAYER_WORDS] = spelch_scene_draw_words,
    [SPELCH_LAYER_MARKS] = spelch_scene_draw_marks,
  };

  g_return_if_fail (layer < SPELCH_N_LAYERS);
  DRAW[layer](scene, cr);
}

void
spelch_scene_draw (const SpelchScene *scene, cairo_t *cr)
{
  for (guint layer = 0; layer < SPELCH_N_LAYERS; layer++)
    spelch_scene_draw_layer (scene, (SpelchSceneLayer)layer, cr);
}

SpelchRect
spelch_scene_corner (const SpelchScene *scene)
{
  return scene->frame.corner;
}

/* ---- Marks ---- */

static const SpelchMark *
find_mark (const SpelchScene *scene, SpelchMarkKind kind, guint index)
{
  for (guint i = 0; i < scene->n_marks; i++)
    if (scene->marks[i].kind == kind && (kind != SPELCH_MARK_PASS || scene->marks[i].index == index))
      return &scene->marks[i];
  return NULL;
}

bool
spelch_scene_mark (const SpelchScene *scene, SpelchMarkKind kind, guint index, SpelchRect *rect)
{
  const SpelchMark *mark = find_mark (scene, kind, index);

  if (mark == NULL)
    return false;
  *rect = mark->box;
  return true;
}

void
spelch_scene_hold_mark (const SpelchScene *scene, SpelchMarkKind kind, guint index, SpelchSceneHold *hold)
{
  const SpelchMark *mark = find_mark (scene, kind, index);

  hold->dragged = mark != NULL;
  if (mark == NULL)
    return;
  hold->mark = mark->kind;
  hold->index = mark->index;
  hold->aside = mark->box.y + mark->box.height / 2 - mark->y;
}

bool
spelch_scene_mark_line (const SpelchScene *scene, SpelchMarkKind kind, guint index, double *x0, double *x1,
                        double *y)
{
  const SpelchMark *mark = find_mark (scene, kind, index);

  if (mark == NULL)
    return false;
  *x0 = mark->x0;
  *x1 = mark->x1;
  *y = mark->y;
  return true;
}

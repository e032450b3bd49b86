/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Dimensions, as a page has them in place of a window's marks, drawn after ISO 129-1: the depths of the tip
 * as running dimensions from the near face, with their origin, right of the board; beyond them its thickness.
 * They use the marks' places.
 */
#include "drawing/scene-private.h"

#include <math.h>

#define SIZE        12.0
#define HEIGHT      15.0 /* of a label, and from one to the next */
#define GAP         1.0
#define LINE_OFF    9.0  /* from the board to the running dimensions' line */
#define LABEL_OFF   24.0 /* and to their labels */
#define OVERSHOOT   4.0  /* of an extension line, beyond the dimension line */
#define CLEAR       2.0  /* of an extension line, from what it begins at */
#define ARROW       9.0
#define ARROW_HALF  1.6
#define DOT         1.5
#define AXIS_BEYOND 8.0 /* of the bit's axis, beyond tip and collet */
#define ORIGIN      2.4 /* radius */

/* As many as stand under one another, the first and the last among them; a table beside tells them all. */
static void
add_passes (SpelchScene *scene, double high)
{
  guint n = scene->opening.n, most = (guint)MAX (floor (high / (HEIGHT + GAP)), 1), shown = MIN (n, most);
  for (guint k = 0; k < shown; k++)
    {
      guint i = shown < 2 ? n - 1 : (guint)round ((double)k * (n - 1) / (shown - 1));
      g_autofree char *depth = spelch_words_exactly (&scene->view.numbers, scene->plan.passes[i].tip_mm);
      spelch_scene_add_pass_mark (scene, i, depth, SIZE);
    }
}

/* Labels in a column from top to bottom of the picture: a table's view counts its depths upwards. */
static void
place_passes (SpelchScene *scene, double highest, double lowest)
{
  double wished[SPELCH_MAX_MARKS] = { 0 }, tops[SPELCH_MAX_MARKS];
  guint n = scene->n_marks, columns[SPELCH_MAX_MARKS];
  bool up = scene->frame.turn < 0;
  for (guint i = 0; i < n; i++)
    wished[i] = scene->marks[up ? n - 1 - i : i].y - HEIGHT / 2;
  spelch_placer_spread (wished, n, HEIGHT, GAP, highest, lowest, tops, columns);
  for (guint i = 0; i < n; i++)
    {
      SpelchMark *mark = &scene->marks[up ? n - 1 - i : i];
      mark->box.x = scene->frame.right + LABEL_OFF;
      mark->box.y = tops[i] + (HEIGHT - mark->box.height) / 2;
      mark->x0 = scene->frame.right + LINE_OFF + OVERSHOOT;
      mark->x1 = spelch_scene_wall_x (scene, mark);
    }
}

/* Along its line, read from the right; under it where the board is thinner than that. */
static void
place_thickness (SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  g_autofree char *thickness = spelch_words_exactly (&scene->view.numbers, scene->plan.thickness);
  SpelchMark *mark
      = spelch_scene_add_mark (scene, SPELCH_MARK_THICKNESS, scene->plan.thickness, thickness, SIZE);
  double x = scene->view.width - 3, length = mark->box.width, high = mark->box.height;
  double top = MIN (f->near_y, f->far_y), between = fabs (f->far_y - f->near_y);
  mark->box = (SpelchRect){ x - high, top + (between - length) / 2, high, length };
  if (between < length + 2 * ARROW + 4)
    mark->box.y = CLAMP (top + between + ARROW + 4, 2, scene->view.height - 2 - length);
  mark->x0 = x + 1;
  mark->x1 = f->right + CLEAR;
}

void
spelch_scene_lay_out_dimensions (SpelchScene *scene)
{
  double highest = 3, lowest = scene->view.height - 3;
  SpelchRect motor = scene->labels[SPELCH_LABEL_MOTOR].box;
  /* The words beside the collet may reach over the column. */
  if (scene->frame.turn > 0)
    highest = MAX (highest, motor.y + motor.height + GAP);
  else
    lowest = MIN (lowest, motor.y - GAP);
  add_passes (scene, lowest - highest);
  place_passes (scene, highest, lowest);
  place_thickness (scene);
  spelch_placer_take (&scene->placer, spelch_scene_dimension_line (scene));
  for (guint i = 0; i < scene->n_marks; i++)
    {
      spelch_placer_take (&scene->placer, scene->marks[i].box);
      spelch_placer_take (&scene->placer, spelch_scene_extension (&scene->marks[i]));
    }
  spelch_scene_lay_out_width (scene);
}

SpelchRect
spelch_scene_extension (const SpelchMark *mark)
{
  bool crosses = mark->kind != SPELCH_MARK_THICKNESS;
  return crosses ? (SpelchRect){ mark->x1 + CLEAR, mark->y - 1, mark->x0 - mark->x1 - CLEAR, 2 }
                 : (SpelchRect){ 0, 0, 0, 0 };
}

SpelchRect
spelch_scene_dimension_line (const SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  return (SpelchRect){ f->right + LINE_OFF - ORIGIN, MIN (f->near_y, f->far_y), 2 * ORIGIN,
                       fabs (f->far_y - f->near_y) };
}

/* ---- Drawing ---- */

/* The far face's line passes behind the labels. */
static void
draw_pass_labels (cairo_t *cr, const SpelchScene *scene)
{
  for (guint i = 0; i < scene->n_marks; i++)
    {
      const SpelchMark *mark = &scene->marks[i];
      if (mark->kind == SPELCH_MARK_THICKNESS)
        continue;
      cairo_rectangle (cr, mark->box.x - 1.5, mark->box.y + 1, mark->box.width + 3, mark->box.height - 2);
      spelch_colour_set (cr, &scene->palette->ground, 1.0);
      cairo_fill (cr);
      spelch_lettering_draw (cr, mark->layout, mark->box.x, mark->box.y, &scene->palette->ink);
    }
}

/* A filled arrow whose tip is at (x, y); @down: it points down the page. */
static void
add_arrow (cairo_t *cr, double x, double y, bool down)
{
  double back = down ? -ARROW : ARROW;
  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x - ARROW_HALF, y + back);
  cairo_line_to (cr, x + ARROW_HALF, y + back);
  cairo_close_path (cr);
}

static void
draw_extension (cairo_t *cr, double from, double to, double y)
{
  cairo_move_to (cr, from, y);
  cairo_line_to (cr, to, y);
  cairo_stroke (cr);
}

static void
draw_passes (cairo_t *cr, const SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  double x = f->right + LINE_OFF, end = f->near_y, before = f->near_y;
  for (guint i = 0; i < scene->n_marks; i++)
    {
      const SpelchMark *mark = &scene->marks[i];
      if (mark->kind == SPELCH_MARK_THICKNESS)
        continue;
      double middle = mark->box.y + mark->box.height / 2;
      end = mark->y;
      cairo_move_to (cr, mark->x1 + CLEAR, mark->y);
      cairo_line_to (cr, mark->x0, mark->y);
      cairo_line_to (cr, mark->box.x - 2, middle);
      cairo_stroke (cr);
      if (fabs (mark->y - before) > ARROW + 1)
        add_arrow (cr, x, mark->y, f->turn > 0);
      else
        cairo_arc (cr, x, mark->y, DOT, 0, 2 * M_PI); /* where there is no room for an arrow */
      before = mark->y;
      cairo_fill (cr);
    }
  if (end == f->near_y)
    return;
  draw_extension (cr, f->right + CLEAR, x + OVERSHOOT, f->near_y);
  cairo_arc (cr, x, f->near_y, ORIGIN, 0, 2 * M_PI);
  cairo_stroke (cr);
  cairo_move_to (cr, x, f->near_y + f->turn * ORIGIN);
  cairo_line_to (cr, x, end);
  cairo_stroke (cr);
}

static void
draw_thickness (cairo_t *cr, const SpelchScene *scene, const SpelchMark *mark)
{
  const SpelchFrame *f = &scene->frame;
  double x = mark->x0 - 1, top = MIN (f->near_y, f->far_y), bottom = MAX (f->near_y, f->far_y), width, height;
  bool inside = bottom - top > 2 * ARROW + 2;
  /* The near face's line is there already as far as the running dimensions go. */
  draw_extension (cr, f->right + LINE_OFF + OVERSHOOT, x + 1, f->near_y);
  draw_extension (cr, mark->x1, x + 1, f->far_y);
  cairo_move_to (cr, x, inside ? top : top - ARROW - 4);
  cairo_line_to (cr, x, MAX (inside ? bottom : bottom + ARROW + 4, mark->box.y + mark->box.height));
  cairo_stroke (cr);
  add_arrow (cr, x, top, !inside);
  add_arrow (cr, x, bottom, inside);
  cairo_fill (cr);
  spelch_lettering_measure (mark->layout, &width, &height);
  cairo_save (cr);
  cairo_translate (cr, mark->box.x, mark->box.y + mark->box.height);
  cairo_rotate (cr, -M_PI / 2);
  spelch_lettering_draw (cr, mark->layout, 0, 0, &scene->palette->ink);
  cairo_restore (cr);
}

/* ISO 128: a narrow line of long dashes and dots, a little beyond what it is the axis of. */
static void
draw_axis (cairo_t *cr, const SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  double high = f->flute_mm * f->scale + f->stub + f->collet;
  if (scene->opening.n == 0)
    return;
  cairo_move_to (cr, scene->axis_x, scene->tip_y + f->turn * AXIS_BEYOND);
  cairo_line_to (cr, scene->axis_x, scene->tip_y - f->turn * (high + AXIS_BEYOND));
  spelch_scene_set_line (scene, cr, SPELCH_LINE_CENTRE);
  cairo_stroke (cr);
}

void
spelch_scene_draw_dimensions (const SpelchScene *scene, cairo_t *cr)
{
  cairo_save (cr);
  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  draw_axis (cr, scene);
  spelch_scene_set_line (scene, cr, SPELCH_LINE_DIMENSION);
  spelch_scene_draw_width (scene, cr);
  draw_passes (cr, scene);
  for (guint i = 0; i < scene->n_marks; i++)
    if (scene->marks[i].kind == SPELCH_MARK_THICKNESS)
      draw_thickness (cr, scene, &scene->marks[i]);
  draw_pass_labels (cr, scene);
  cairo_restore (cr);
}

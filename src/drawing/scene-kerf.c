/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The kerf layer: what has been cut away up to the shown pass, and dashed what later passes will take.
 */
#include "drawing/scene-private.h"

#define WALL_LINE 1.6
#define OPEN_END  3.0 /* how far the cut runs past the board's end */
#define TINY_MM   1e-6
/* From the wall to the middle of the lines of a shortened opening. */
#define BREAK_OFF_WALL 16.0

typedef struct
{
  double x0, x1, y;
} LocalSpan;

/* A pass in local coordinates; past the board's end where there's no wall. */
static LocalSpan
local_span (const SpelchScene *scene, guint i)
{
  const SpelchSpan *span = &scene->opening.spans[i];
  double scale = scene->frame.scale, half = scene->plan.flutes.diameter / 2;
  LocalSpan local = { span->from * scale, span->to * scale, span->depth * scale };

  if (!scene->opening.wall_left)
    local.x0 = MIN (local.x0 - OPEN_END, (span->axis - half) * scale);
  if (!scene->opening.wall_right)
    local.x1 = MAX (local.x1 + OPEN_END, (span->axis + half) * scale);
  if (i == scene->shown)
    local.y = spelch_scene_local_tip (scene);
  return local;
}

/* Everything removed so far, in local coordinates. */
static LocalSpan
removed (const SpelchScene *scene)
{
  LocalSpan all = local_span (scene, scene->shown);

  for (guint i = 0; i < scene->shown; i++)
    {
      LocalSpan span = local_span (scene, i);

      all.x0 = MIN (all.x0, span.x0);
      all.x1 = MAX (all.x1, span.x1);
      all.y = MAX (all.y, span.y);
    }
  return all;
}

/* The board as far as it goes, and everything below it: past the board's end there's nothing to cut. */
static void
clip_to_stock (const SpelchScene *scene, cairo_t *cr, LocalSpan all)
{
  double scale = scene->frame.scale, height = scene->plan.thickness * scale;
  double left = scene->opening.wall_left ? all.x0 - OPEN_END : scene->opening.left * scale - 1.8;
  double right = scene->opening.wall_right ? all.x1 + OPEN_END : scene->opening.right * scale + 1.8;

  cairo_rectangle (cr, left, -1, right - left, height + 1);
  cairo_rectangle (cr, all.x0 - OPEN_END, height, all.x1 - all.x0 + 2 * OPEN_END,
                   MAX (all.y - height, 0) + OPEN_END);
  cairo_clip (cr);
}

static bool
has_core (const SpelchScene *scene)
{
  return scene->opening.core_to > scene->opening.core_from;
}

/* What a pass takes: all between its ends, or a kerf beside either wall. */
static void
add_kerf (const SpelchScene *scene, cairo_t *cr, const LocalSpan *span)
{
  double scale = scene->frame.scale;
  if (!has_core (scene))
    {
      cairo_rectangle (cr, span->x0, -8, span->x1 - span->x0, span->y + 8);
      return;
    }
  double left = scene->opening.core_from * scale, right = scene->opening.core_to * scale;
  cairo_rectangle (cr, span->x0, -8, left - span->x0, span->y + 8);
  cairo_rectangle (cr, right, -8, span->x1 - right, span->y + 8);
}

/* Outlining all passes first and clearing them afterwards leaves the outline of the whole. */
static void
draw_removed (const SpelchScene *scene, cairo_t *cr)
{
  cairo_save (cr);
  clip_to_stock (scene, cr, removed (scene));
  for (guint i = 0; i <= scene->shown; i++)
    {
      LocalSpan span = local_span (scene, i);

      add_kerf (scene, cr, &span);
    }
  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  cairo_set_line_width (cr, 2 * WALL_LINE);
  cairo_stroke_preserve (cr);
  spelch_colour_set (cr, &scene->palette->ground, 1.0);
  cairo_fill (cr);
  cairo_restore (cr);
}

static void
add_floor (const SpelchScene *scene, cairo_t *cr, double from, double to, double y)
{
  cairo_move_to (cr, from, y);
  if (has_core (scene))
    {
      cairo_line_to (cr, scene->opening.core_from * scene->frame.scale, y);
      cairo_move_to (cr, scene->opening.core_to * scene->frame.scale, y);
    }
  cairo_line_to (cr, to, y);
}

/* Floors of earlier passes, where the kerf is wider than the bit. */
static void
draw_floors (const SpelchScene *scene, cairo_t *cr)
{
  for (guint i = 0; i < scene->shown; i++)
    {
      LocalSpan span = local_span (scene, i);

      if (scene->opening.spans[i].depth >= scene->opening.spans[scene->shown].depth - TINY_MM)
        continue;
      add_floor (scene, cr, MAX (span.x0, scene->opening.left * scene->frame.scale),
                 MIN (span.x1, scene->opening.right * scene->frame.scale), span.y);
    }
  spelch_colour_set (cr, &scene->palette->line_soft, 1.0);
  cairo_set_line_width (cr, 1.0);
  cairo_stroke (cr);
}

/* A finished wall, dashed from @from down to where the last pass leaves it. */
static void
add_wall_to_come (const SpelchScene *scene, cairo_t *cr, double wall, double from)
{
  double deepest = scene->opening.spans[scene->opening.n - 1].depth * scene->frame.scale;

  if (deepest - from < 1)
    return;
  cairo_move_to (cr, wall, from);
  cairo_line_to (cr, wall, deepest);
}

/* What is still to be cut: below the shown pass, or all of a wall that still carries its allowance. */
static void
draw_to_come (const SpelchScene *scene, cairo_t *cr)
{
  const SpelchOpening *opening = &scene->opening;
  double left, right, tip = spelch_scene_local_tip (scene);
  LocalSpan all = removed (scene);

  spelch_opening_all (opening, &left, &right);
  left *= scene->frame.scale;
  right *= scene->frame.scale;
  if (opening->wall_left)
    add_wall_to_come (scene, cr, left, all.x0 > left + 0.01 ? 0 : tip);
  if (opening->wall_right)
    add_wall_to_come (scene, cr, right, all.x1 < right - 0.01 ? 0 : tip);
  if (has_core (scene))
    {
      add_wall_to_come (scene, cr, opening->core_from * scene->frame.scale, tip);
      add_wall_to_come (scene, cr, opening->core_to * scene->frame.scale, tip);
    }
  spelch_colour_set (cr, &scene->palette->ink, 0.7);
  spelch_scene_set_line (scene, cr, SPELCH_LINE_HIDDEN);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

static void
add_break (cairo_t *cr, double x, double y0, double y1)
{
  double way = y1 - y0;

  cairo_line_to (cr, x, y0);
  cairo_line_to (cr, x + 3, y0 + way * 0.40);
  cairo_line_to (cr, x - 3, y0 + way * 0.60);
  cairo_line_to (cr, x, y1);
}

/* A shortened opening is parted by two break lines in the room beside the bit, near the wall rather than in
 * the middle: words about the bit stand there. */
static double
shortening_x (const SpelchScene *scene)
{
  double scale = scene->frame.scale;
  const SpelchOpening *opening = &scene->opening;
  double axis = opening->spans[scene->shown].axis, half = scene->plan.flutes.diameter / 2;
  bool room_at_left = axis - opening->left > opening->right - axis;
  double wall = (room_at_left ? opening->left : opening->right) * scale;
  double bit = (room_at_left ? axis - half : axis + half) * scale;
  if (has_core (scene)) /* the break is in what is left between the kerfs */
    {
      wall = (room_at_left ? opening->core_from : opening->core_to) * scale;
      bit = (room_at_left ? opening->core_to : opening->core_from) * scale;
    }
  double middle = (wall + bit) / 2;
  return room_at_left ? MIN (wall + BREAK_OFF_WALL, middle) : MAX (wall - BREAK_OFF_WALL, middle);
}

SpelchRect
spelch_scene_shortening (const SpelchScene *scene)
{
  double height = scene->plan.thickness * scene->frame.scale;
  if (!scene->opening.shortened || scene->opening.n == 0)
    return (SpelchRect){ 0, 0, 0, 0 };
  double x = shortening_x (scene);
  return spelch_scene_to_picture (scene, x - 6.5, -6, x + 6.5, height + 6);
}

static void
draw_shortening (const SpelchScene *scene, cairo_t *cr)
{
  double height = scene->plan.thickness * scene->frame.scale;
  if (!scene->opening.shortened)
    return;
  double x = shortening_x (scene);
  cairo_rectangle (cr, x - 3.5, -3, 7, height + 3);
  spelch_colour_set (cr, &scene->palette->ground, 1.0);
  cairo_fill (cr);
  cairo_new_sub_path (cr);
  add_break (cr, x - 3.5, -6, height + 6);
  cairo_new_sub_path (cr);
  add_break (cr, x + 3.5, -6, height + 6);
  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  spelch_scene_set_line (scene, cr, SPELCH_LINE_SHORTENED);
  cairo_stroke (cr);
}

void
spelch_scene_draw_kerf (const SpelchScene *scene, cairo_t *cr)
{
  if (scene->opening.n == 0)
    return;
  spelch_scene_enter (scene, cr);
  draw_removed (scene, cr);
  draw_floors (scene, cr);
  draw_to_come (scene, cr);
  draw_shortening (scene, cr);
  cairo_restore (cr);
}

SpelchRect
spelch_scene_kerf_bounds (const SpelchScene *scene)
{
  double scale = scene->frame.scale, height = scene->plan.thickness * scale, bottom;
  double left, right;
  LocalSpan all;

  if (scene->opening.n == 0)
    return (SpelchRect){ 0, 0, 0, 0 };
  spelch_opening_all (&scene->opening, &left, &right);
  all = removed (scene);
  bottom = MAX (all.y, scene->opening.spans[scene->opening.n - 1].depth * scale) + 2 * WALL_LINE;
  if (scene->opening.shortened)
    bottom = MAX (bottom, height + 7);
  all.x0 = MIN (all.x0, left * scale);
  all.x1 = MAX (all.x1, right * scale);
  return spelch_scene_to_picture (scene, all.x0 - 2 * WALL_LINE, scene->opening.shortened ? -7 : -2,
                                  all.x1 + 2 * WALL_LINE, bottom);
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The still layer: ground, the board with its layers, and what lies against it.
 */
#include "drawing/grain.h"
#include "drawing/scene-private.h"

#define BREAK_DEPTH 5.0
#define LEAST_SKIN  1.2
#define HATCH_STEP  14.0 /* between lines of hatching, along the face */

/* The board's ends in local coordinates, left before right. */
static void
local_ends (const SpelchScene *scene, double *left, double *right, bool *ends_left, bool *ends_right)
{
  const SpelchFrame *f = &scene->frame;

  if (f->turn > 0)
    {
      *left = f->board_left - f->origin_x;
      *right = f->board_right - f->origin_x;
      *ends_left = f->ends_left;
      *ends_right = f->ends_right;
    }
  else
    {
      *left = f->origin_x - f->board_right;
      *right = f->origin_x - f->board_left;
      *ends_left = f->ends_right;
      *ends_right = f->ends_left;
    }
}

/* One end of the board, from its top to its bottom: straight where it really ends, else a break line. */
static void
add_end (cairo_t *cr, double x, double height, bool ends, double outwards, bool downwards)
{
  static const double at[] = { 0, 0.30, 0.42, 0.55, 0.70, 1.0 };
  static const double swing[] = { 0, 0.8, -0.9, 1.0, 0, 0 };
  int n = (int)G_N_ELEMENTS (at);

  for (int i = 0; i < n; i++)
    {
      int j = downwards ? i : n - 1 - i;

      cairo_line_to (cr, x + (ends ? 0 : outwards * BREAK_DEPTH * swing[j]), height * at[j]);
    }
}

/* Clears what lies outside a break line: much quicker than clipping every line of grain to it. */
static void
clear_outside (cairo_t *cr, const SpelchScene *scene, double x, double height, double outwards)
{
  add_end (cr, x, height, false, outwards, true);
  cairo_line_to (cr, x + outwards * 2 * BREAK_DEPTH, height);
  cairo_line_to (cr, x + outwards * 2 * BREAK_DEPTH, 0);
  cairo_close_path (cr);
  spelch_colour_set (cr, &scene->palette->ground, 1.0);
  cairo_fill (cr);
}

/* A thin skin is drawn a little thicker than it is, inwards from its face, so that it can be seen. */
static void
layer_rows (const SpelchScene *scene, guint i, double depth, double *y0, double *y1)
{
  const SpelchLayer *layer = &scene->board.layers[i];
  double scale = scene->frame.scale;

  *y0 = depth * scale;
  *y1 = (depth + layer->thickness.mm) * scale;
  if (layer->material != SPELCH_MATERIAL_LAMINATE || *y1 - *y0 >= LEAST_SKIN)
    return;
  if (i + 1 == scene->board.n_layers)
    *y0 = *y1 - LEAST_SKIN;
  else
    *y1 = *y0 + LEAST_SKIN;
}

/* ISO 128: what is cut through and shows no grain of its own is hatched on a page, with narrow lines at 45
 * degrees, the other way in the next such layer. */
static void
hatch_layer (cairo_t *cr, const SpelchScene *scene, guint i, SpelchRect r)
{
  const SpelchColour *ground
      = spelch_grain_colour (&scene->board.layers[i], scene->layer_path[i], scene->palette);
  double lean = i % 2 == 0 ? r.height : -r.height;

  cairo_save (cr);
  cairo_rectangle (cr, r.x, r.y, r.width, r.height);
  spelch_colour_set (cr, ground, 1.0);
  cairo_fill_preserve (cr);
  cairo_clip (cr);
  for (double x = r.x - r.height; x < r.x + r.width + r.height; x += HATCH_STEP)
    {
      cairo_move_to (cr, x, r.y + r.height);
      cairo_line_to (cr, x + lean, r.y);
    }
  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  spelch_scene_set_line (scene, cr, SPELCH_LINE_HATCH);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static bool
is_hatched (const SpelchScene *scene, const SpelchLayer *layer)
{
  return scene->view.on_paper
         && (layer->material == SPELCH_MATERIAL_MDF || layer->material == SPELCH_MATERIAL_PARTICLEBOARD);
}

static void
draw_layers (cairo_t *cr, const SpelchScene *scene)
{
  double left, right, depth = 0, thickness = scene->plan.thickness;
  bool ends_left, ends_right;

  local_ends (scene, &left, &right, &ends_left, &ends_right);
  left -= ends_left ? 0 : BREAK_DEPTH;
  right += ends_right ? 0 : BREAK_DEPTH;
  for (guint pass = 0; pass < 2; pass++) /* skins last, over their neighbours */
    {
      depth = 0;
      for (guint i = 0; i < scene->board.n_layers; i++)
        {
          const SpelchLayer *layer = &scene->board.layers[i];
          bool skin = layer->material == SPELCH_MATERIAL_LAMINATE;
          double end = depth + layer->thickness.mm, y0, y1;
          double at_face[2] = { depth / thickness, end / thickness };

          layer_rows (scene, i, depth, &y0, &y1);
          depth = end;
          if (skin != (pass == 1))
            continue;
          if (is_hatched (scene, layer))
            hatch_layer (cr, scene, i, (SpelchRect){ left, y0, right - left, y1 - y0 });
          else
            spelch_grain_draw (cr, layer, i, scene->layer_path[i], left, y0, right, y1, at_face,
                               scene->palette);
        }
    }
}

/* Glue lines between layers. */
static void
draw_layer_lines (cairo_t *cr, const SpelchScene *scene)
{
  double left, right, depth = 0;
  bool ends_left, ends_right;

  local_ends (scene, &left, &right, &ends_left, &ends_right);
  for (guint i = 0; i + 1 < scene->board.n_layers; i++)
    {
      depth += scene->board.layers[i].thickness.mm;
      cairo_move_to (cr, left - (ends_left ? 0 : BREAK_DEPTH), depth * scene->frame.scale);
      cairo_line_to (cr, right + (ends_right ? 0 : BREAK_DEPTH), depth * scene->frame.scale);
    }
  spelch_scene_set_line (scene, cr, SPELCH_LINE_LAYER);
  spelch_colour_set (cr, &scene->palette->layer_line, 1.0);
  cairo_stroke (cr);
}

static void
draw_board (cairo_t *cr, const SpelchScene *scene)
{
  double left, right, height = scene->plan.thickness * scene->frame.scale;
  bool ends_left, ends_right;

  local_ends (scene, &left, &right, &ends_left, &ends_right);
  draw_layers (cr, scene);
  draw_layer_lines (cr, scene);
  if (!ends_left)
    clear_outside (cr, scene, left, height, -1);
  if (!ends_right)
    clear_outside (cr, scene, right, height, 1);

  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  cairo_move_to (cr, left, 0);
  cairo_line_to (cr, right, 0);
  cairo_move_to (cr, left, height);
  cairo_line_to (cr, right, height);
  spelch_scene_set_line (scene, cr, SPELCH_LINE_VISIBLE);
  cairo_stroke (cr);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  add_end (cr, right, height, ends_right, 1, true);
  spelch_scene_set_line (scene, cr, ends_right ? SPELCH_LINE_VISIBLE : SPELCH_LINE_BREAK);
  cairo_stroke (cr);
  add_end (cr, left, height, ends_left, -1, false);
  spelch_scene_set_line (scene, cr, ends_left ? SPELCH_LINE_VISIBLE : SPELCH_LINE_BREAK);
  cairo_stroke (cr);
}

/* A strip of bed, table, base, bench or backer. */
static void
draw_strip (cairo_t *cr, const SpelchScene *scene, double x0, double x1, double y0, double y1)
{
  if (x1 - x0 < 2 || y1 - y0 < 1)
    return;
  spelch_colour_set (cr, &scene->palette->rest, 1.0);
  cairo_rectangle (cr, x0, y0, x1 - x0, y1 - y0);
  cairo_fill (cr);
  for (int r = 0; y0 + 2 + r * 3.5 < y1 - 1; r++)
    for (double x = x0 + (r % 2 == 0 ? 2 : 5.4); x < x1 - 1; x += 7)
      cairo_rectangle (cr, x - 0.7, y0 + 2 + r * 3.5 - 0.7, 1.4, 1.4);
  spelch_colour_set (cr, &scene->palette->rest_speck, 0.8);
  cairo_fill (cr);
  cairo_rectangle (cr, x0, y0, x1 - x0, y1 - y0);
  spelch_colour_set (cr, &scene->palette->ink_soft, 1.0);
  spelch_scene_set_line (scene, cr, SPELCH_LINE_REST);
  cairo_stroke (cr);
}

/* Where the spoilboard was cut before, the face above lies over that groove. */
static void
draw_groove (cairo_t *cr, const SpelchScene *scene)
{
  SpelchRect r = spelch_scene_groove (scene);
  if (r.height <= 0)
    return;
  cairo_rectangle (cr, r.x, r.y, r.width, r.height);
  spelch_colour_set (cr, &scene->palette->ground, 1.0);
  cairo_fill (cr);
  cairo_move_to (cr, r.x, r.y);
  cairo_line_to (cr, r.x, r.y + r.height);
  cairo_line_to (cr, r.x + r.width, r.y + r.height);
  cairo_line_to (cr, r.x + r.width, r.y);
  spelch_colour_set (cr, &scene->palette->ink_soft, 1.0);
  spelch_scene_set_line (scene, cr, SPELCH_LINE_REST);
  cairo_stroke (cr);
}

static void
draw_rests (cairo_t *cr, const SpelchScene *scene)
{
  const SpelchFrame *f = &scene->frame;
  double height = scene->plan.thickness * f->scale, far_top = height + f->backer;
  /* A bed, table or bench goes on where the board ends. */
  double left = f->turn > 0 ? f->left - f->origin_x : f->origin_x - f->right;
  double right = f->turn > 0 ? f->right - f->origin_x : f->origin_x - f->left;

  if (f->near_rest > 0)
    {
      draw_strip (cr, scene, left, -f->throat, -f->near_rest, 0);
      draw_strip (cr, scene, f->throat, right, -f->near_rest, 0);
    }
  if (f->backer > 0)
    draw_strip (cr, scene, left, right, height, far_top);
  if (f->far_rest > 0 && f->gap > 0)
    {
      draw_strip (cr, scene, left, -f->gap, far_top, far_top + f->far_rest);
      draw_strip (cr, scene, f->gap, right, far_top, far_top + f->far_rest);
    }
  else if (f->far_rest > 0)
    draw_strip (cr, scene, left, right, far_top, far_top + f->far_rest);
  draw_groove (cr, scene);
}

void
spelch_scene_draw_still (const SpelchScene *scene, cairo_t *cr)
{
  spelch_colour_set (cr, &scene->palette->ground, 1.0);
  cairo_rectangle (cr, 0, 0, scene->view.width, scene->view.height);
  cairo_fill (cr);
  spelch_scene_enter (scene, cr);
  draw_rests (cr, scene);
  draw_board (cr, scene);
  cairo_restore (cr);
  spelch_scene_draw_rule (scene, cr);
  spelch_scene_draw_labels (scene, SPELCH_LAYER_STILL, cr);
}

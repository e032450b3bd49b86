/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The edges layer: splinters at an arris that tears, a crisp line where it is clean. Their size shows the
 * grade and nothing else: no published work supports a predicted length.
 */
#include "drawing/grain.h"
#include "drawing/scene-private.h"

#include <math.h>

#define CRISP_LINE  2.6
#define CRISP_ALONG 26.0
#define CRISP_DOWN  9.0

/* How a grade looks; picture units. */
typedef struct
{
  guint fibres;
  double height, reach;             /* of the fibres, over the face */
  double notch_along, notch_inward; /* broken out of the arris */
} Look;

/* By grade, from 2. */
static const Look LOOKS[] = {
  { 2, 7.0, 12.0, 0, 0 },
  { 3, 11.0, 19.0, 7.0, 5.0 },
  { 5, 16.0, 28.0, 13.0, 10.0 },
  { 6, 21.0, 38.0, 20.0, 15.0 },
};
#define REACH_MOST  42.0 /* along the face, of anything drawn */
#define HEIGHT_MOST 24.0
#define LEAN_MOST   14.0 /* over the kerf */
#define INWARD_MOST 17.0

static const Look *
look_of (int grade)
{
  return &LOOKS[CLAMP (grade, 2, 5) - 2];
}

static bool
is_drawn (const SpelchEdge *edge)
{
  return edge->stays && edge->grade >= 1;
}

/* The layer at a side's face. */
static const SpelchLayer *
face_layer (const SpelchScene *scene, SpelchSide side)
{
  return &scene->board.layers[side == SPELCH_SIDE_MOTOR ? 0 : MAX (scene->board.n_layers, 1) - 1];
}

/* The wall at an edge, local x: at the motor side as it stands now, at the far side as it will be. */
static double
wall_of (const SpelchScene *scene, const SpelchEdge *edge)
{
  const SpelchOpening *opening = &scene->opening;
  guint last = edge->side == SPELCH_SIDE_MOTOR ? scene->shown : opening->n - 1;
  double from = opening->spans[last].from, to = opening->spans[last].to;

  return (edge->wall == SPELCH_WALL_LEFT ? from : to) * scene->frame.scale;
}

/* Puts the arris at the origin, x over the face away from the kerf, y into the board. */
static void
enter_arris (const SpelchScene *scene, cairo_t *cr, const SpelchEdge *edge)
{
  bool far = edge->side == SPELCH_SIDE_FAR;

  cairo_save (cr);
  cairo_translate (cr, wall_of (scene, edge), far ? scene->plan.thickness * scene->frame.scale : 0);
  cairo_scale (cr, edge->wall == SPELCH_WALL_LEFT ? -1 : 1, far ? -1 : 1);
}

/* A fibre lifted out of the face, curling toward the kerf. */
static void
add_fibre (cairo_t *cr, double base, double half_width, double height, double lean)
{
  cairo_move_to (cr, base - half_width, 0.6);
  cairo_curve_to (cr, base - half_width * 0.9, -height * 0.35, base - half_width - lean * 0.3, -height * 0.7,
                  base - lean, -height);
  cairo_curve_to (cr, base - lean * 0.15, -height * 0.72, base + half_width * 0.8, -height * 0.35,
                  base + half_width, 0.6);
  cairo_close_path (cr);
}

/* What broke out of the arris, shown as ground. */
static void
draw_notch (cairo_t *cr, const SpelchScene *scene, const Look *look, guint seed, bool angular)
{
  double a = look->notch_along * (0.9 + 0.2 * spelch_grain_chance (seed, 1, 1)), i = look->notch_inward;

  if (a <= 0)
    return;
  cairo_move_to (cr, -0.4, -1);
  cairo_line_to (cr, a, -1);
  cairo_line_to (cr, a, 0);
  if (angular)
    {
      cairo_line_to (cr, a * 0.72, i * 0.5);
      cairo_line_to (cr, a * 0.4, i * 0.42);
      cairo_line_to (cr, a * 0.2, i * 0.8);
    }
  else
    cairo_curve_to (cr, a * 0.6, i * 0.12, a * 0.3, i * 0.4, a * 0.22, i * 0.55);
  cairo_line_to (cr, -0.4, i);
  cairo_close_path (cr);
  spelch_colour_set (cr, &scene->palette->ground, 1.0);
  cairo_fill (cr);

  cairo_move_to (cr, a, 0);
  if (angular)
    {
      cairo_line_to (cr, a * 0.72, i * 0.5);
      cairo_line_to (cr, a * 0.4, i * 0.42);
      cairo_line_to (cr, a * 0.2, i * 0.8);
    }
  else
    cairo_curve_to (cr, a * 0.6, i * 0.12, a * 0.3, i * 0.4, a * 0.22, i * 0.55);
  cairo_line_to (cr, 0, i);
  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  cairo_set_line_width (cr, 1.0);
  cairo_stroke (cr);
}

static void
draw_fibres (cairo_t *cr, const SpelchScene *scene, const Look *look, guint seed, double thickness)
{
  for (guint i = 0; i < look->fibres; i++)
    {
      double share = (i + 0.35 + 0.5 * (spelch_grain_chance (seed, i, 2) - 0.5)) / look->fibres;
      double base = 2 + share * (look->reach - 2);
      /* Tallest at the arris, but no two alike. */
      double height
          = look->height * (0.55 + 0.45 * (1 - share)) * (0.65 + 0.35 * spelch_grain_chance (seed, i, 3));
      double lean = height * (0.25 + 0.5 * spelch_grain_chance (seed, i, 4));

      add_fibre (cr, base, thickness * (1.7 + 1.1 * spelch_grain_chance (seed, i, 5)), height, lean);
    }
  spelch_colour_set (cr, &scene->palette->splinter, 1.0);
  cairo_fill_preserve (cr);
  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  cairo_set_line_width (cr, 0.9);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
}

/* Laminate breaks: angular flakes thrown off the skin. */
static void
draw_chips (cairo_t *cr, const SpelchScene *scene, const Look *look, guint seed)
{
  for (guint i = 0; i < look->fibres; i++)
    {
      double share = (i + 0.5 * spelch_grain_chance (seed, i, 6)) / look->fibres;
      double x = 2 + share * (look->reach - 4),
             size = 2.2 + 3.4 * (look->height / 18.0) * spelch_grain_chance (seed, i, 7);
      double y = -2.5 - look->height * 0.75 * spelch_grain_chance (seed, i, 8) * (1 - 0.6 * share);
      double turn = 2 * M_PI * spelch_grain_chance (seed, i, 9);

      for (int corner = 0; corner < 3; corner++)
        {
          double radius = size * (corner == 1 ? 1.0 : 0.62), angle = turn + corner * 2.2;

          cairo_line_to (cr, x + radius * cos (angle), MIN (y + radius * sin (angle) * 0.7, -0.5));
        }
      cairo_close_path (cr);
    }
  spelch_colour_set (cr, &scene->palette->laminate, 1.0);
  cairo_fill_preserve (cr);
  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  cairo_set_line_width (cr, 0.8);
  cairo_stroke (cr);
}

static void
draw_crisp (cairo_t *cr, const SpelchScene *scene)
{
  cairo_move_to (cr, CRISP_ALONG, 0);
  cairo_line_to (cr, 0, 0);
  cairo_line_to (cr, 0, CRISP_DOWN);
  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  cairo_set_line_width (cr, CRISP_LINE);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  cairo_stroke (cr);
}

static void
draw_edge (cairo_t *cr, const SpelchScene *scene, const SpelchEdge *edge)
{
  const SpelchLayer *layer = face_layer (scene, edge->side);
  bool laminate = layer->material == SPELCH_MATERIAL_LAMINATE;
  bool fibreboard
      = layer->material == SPELCH_MATERIAL_MDF || layer->material == SPELCH_MATERIAL_PARTICLEBOARD;
  guint seed = (guint)edge->side * 2u + (guint)edge->wall + 1u;

  enter_arris (scene, cr, edge);
  if (edge->grade == 1)
    draw_crisp (cr, scene);
  else
    {
      draw_notch (cr, scene, look_of (edge->grade), seed, laminate);
      if (laminate)
        draw_chips (cr, scene, look_of (edge->grade), seed);
      else
        draw_fibres (cr, scene, look_of (edge->grade), seed, fibreboard ? 0.35 : 1.0);
    }
  cairo_restore (cr);
}

/* ---- Tabs ---- */

static bool
has_tabs (const SpelchScene *scene)
{
  return scene->cut.tabs.count > 0 && scene->plan.through && scene->opening.n > 0
         && scene->shown + 1 == scene->opening.n;
}

static SpelchRect
tab_of (const SpelchScene *scene)
{
  const SpelchSpan *span = &scene->opening.spans[scene->shown];
  double scale = scene->frame.scale, thickness = scene->plan.thickness;
  double top = MAX (thickness - scene->cut.tabs.thickness.mm, 0);

  return (SpelchRect){ span->from * scale, top * scale, (span->to - span->from) * scale,
                       (thickness - top) * scale };
}

/* Tabs stand elsewhere along the path: their outline is dashed, over the bit. */
static void
draw_tabs (cairo_t *cr, const SpelchScene *scene)
{
  static const double DASH[] = { 3, 2.5 };
  SpelchRect tab = tab_of (scene);

  cairo_rectangle (cr, tab.x, tab.y, tab.width, tab.height);
  spelch_colour_set (cr, &scene->palette->long_grain, 0.55);
  cairo_fill_preserve (cr);
  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  cairo_set_line_width (cr, 1.2);
  cairo_set_dash (cr, DASH, 2, 0);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

void
spelch_scene_draw_edges (const SpelchScene *scene, cairo_t *cr)
{
  if (scene->opening.n == 0)
    return;
  spelch_scene_enter (scene, cr);
  if (has_tabs (scene))
    draw_tabs (cr, scene);
  for (guint i = 0; i < scene->plan.n_edges; i++)
    if (is_drawn (&scene->plan.edges[i]))
      draw_edge (cr, scene, &scene->plan.edges[i]);
  cairo_restore (cr);
}

static SpelchRect
edge_bounds (const SpelchScene *scene, const SpelchEdge *edge)
{
  double wall = wall_of (scene, edge), side = edge->wall == SPELCH_WALL_LEFT ? -1 : 1;
  double face = edge->side == SPELCH_SIDE_FAR ? scene->plan.thickness * scene->frame.scale : 0;
  double inward = edge->side == SPELCH_SIDE_FAR ? -1 : 1;
  bool crisp = edge->grade == 1;
  double along = crisp ? CRISP_ALONG + 1 : REACH_MOST, over = crisp ? CRISP_LINE : LEAN_MOST;
  double out = crisp ? CRISP_LINE : HEIGHT_MOST, in = crisp ? CRISP_DOWN + 1 : INWARD_MOST;

  return spelch_scene_to_picture (scene, wall + side * along, face - inward * out, wall - side * over,
                                  face + inward * in);
}

SpelchRect
spelch_scene_edges_bounds (const SpelchScene *scene)
{
  SpelchRect all = { 0, 0, 0, 0 };

  if (scene->opening.n == 0)
    return all;
  for (guint i = 0; i < scene->plan.n_edges; i++)
    if (is_drawn (&scene->plan.edges[i]))
      all = spelch_rect_union (all, edge_bounds (scene, &scene->plan.edges[i]));
  if (has_tabs (scene))
    {
      SpelchRect tab = tab_of (scene);

      all = spelch_rect_union (all, spelch_scene_to_picture (scene, tab.x - 1, tab.y - 1,
                                                             tab.x + tab.width + 1, tab.y + tab.height + 1));
    }
  return all;
}

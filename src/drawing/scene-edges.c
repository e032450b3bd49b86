/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The edges layer: splinters at an arris that tears, a crisp line where it is clean. Their size shows the
 * grade and nothing else: no published work supports a predicted length.
 */
#include "drawing/scene-private.h"
#include "drawing/splinter.h"

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

static SpelchArrisKind
arris_kind (const SpelchLayer *layer)
{
  switch ((int)layer->material)
    {
    case SPELCH_MATERIAL_LAMINATE:
      return SPELCH_ARRIS_LAMINATE;
    case SPELCH_MATERIAL_MDF:
    case SPELCH_MATERIAL_PARTICLEBOARD:
      return SPELCH_ARRIS_FUZZ;
    default:
      return SPELCH_ARRIS_WOOD;
    }
}

static guint
seed_of (const SpelchEdge *edge)
{
  return (guint)edge->side * 2u + (guint)edge->wall + 1u;
}

void
spelch_scene_draw_opened_edge (const SpelchScene *scene, cairo_t *cr, guint edge, double share)
{
  const SpelchEdge *of = &scene->plan.edges[edge];

  if (scene->opening.n == 0 || !is_drawn (of) || share <= 0)
    return;
  enter_arris (scene, cr, of);
  cairo_scale (cr, share, share);
  spelch_splinter_draw (cr, arris_kind (face_layer (scene, of->side)), of->grade, seed_of (of),
                        scene->palette);
  cairo_restore (cr);
}

/* ---- Tabs ---- */

bool
spelch_scene_shows_tabs (const SpelchScene *scene)
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
void
spelch_scene_draw_tabs (const SpelchScene *scene, cairo_t *cr)
{
  SpelchRect tab;

  if (!spelch_scene_shows_tabs (scene))
    return;
  tab = tab_of (scene);
  cairo_rectangle (cr, tab.x, tab.y, tab.width, tab.height);
  spelch_colour_set (cr, &scene->palette->long_grain, 0.55);
  cairo_fill_preserve (cr);
  spelch_colour_set (cr, &scene->palette->ink, 1.0);
  spelch_scene_set_line (scene, cr, SPELCH_LINE_HIDDEN);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
}

void
spelch_scene_draw_edges (const SpelchScene *scene, cairo_t *cr)
{
  if (scene->opening.n == 0)
    return;
  spelch_scene_enter (scene, cr);
  spelch_scene_draw_tabs (scene, cr);
  for (guint i = 0; i < scene->plan.n_edges; i++)
    spelch_scene_draw_opened_edge (scene, cr, i, 1);
  cairo_restore (cr);
}

static SpelchRect
edge_bounds (const SpelchScene *scene, const SpelchEdge *edge)
{
  double wall = wall_of (scene, edge), side = edge->wall == SPELCH_WALL_LEFT ? -1 : 1;
  double face = edge->side == SPELCH_SIDE_FAR ? scene->plan.thickness * scene->frame.scale : 0;
  double inward = edge->side == SPELCH_SIDE_FAR ? -1 : 1, along, over, out, in;

  spelch_splinter_extent (edge->grade, &along, &over, &out, &in);
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
  if (spelch_scene_shows_tabs (scene))
    {
      SpelchRect tab = tab_of (scene);

      all = spelch_rect_union (all, spelch_scene_to_picture (scene, tab.x - 1, tab.y - 1,
                                                             tab.x + tab.width + 1, tab.y + tab.height + 1));
    }
  return all;
}

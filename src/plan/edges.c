/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/edges.h"

#include <math.h>
#include <string.h>

/* What loads a face layer, and which pass is to blame. */
typedef struct
{
  SpelchLoad load;
  int pass;
  double from, to; /* heights above the tip */
  bool finishing;
} Loading;

/* Heights at which @pass cuts the layer from @top to @bottom; false when it doesn't. */
static bool
span_in (const SpelchPass *pass, double top, double bottom, double *from, double *to)
{
  *from = fmax (0, pass->tip_mm - bottom);
  *to = pass->tip_mm - fmax (top, pass->from_mm);
  return *to - *from > 1e-9;
}

/* By the shop log the turn-over may count as nearer to the face than it is marked. */
static SpelchLoad
load_of (const SpelchCase *c, SpelchSide side, double from, double to)
{
  double nearer = spelch_case_turns_over (c) ? spelch_case_log (c, side)->window_mm : 0;
  double low = side == SPELCH_SIDE_MOTOR ? fmax (from - nearer, 0) : from;
  double high = side == SPELCH_SIDE_FAR ? fmin (to + nearer, fmax (to, c->flutes.length)) : to;
  SpelchHands hands = spelch_flute_hands_between (&c->flutes, low, high);
  bool pulls = side == SPELCH_SIDE_MOTOR ? hands.up : hands.down;
  if (pulls)
    return SPELCH_LOAD_PULL_OUT;
  return hands.neutral ? SPELCH_LOAD_NEUTRAL : SPELCH_LOAD_PRESS_IN;
}

static Loading
loading_of (const SpelchCase *c, SpelchSide side, const SpelchPass *passes, guint n)
{
  Loading worst = { SPELCH_LOAD_NOT_CUT, 0, 0, 0, false };
  double top = side == SPELCH_SIDE_MOTOR ? 0 : c->thickness - c->far_layer;
  double bottom = side == SPELCH_SIDE_MOTOR ? c->near_layer : c->thickness;
  bool finished = n > 0 && passes[n - 1].finishing;
  guint first = 1 + (c->scoring != NULL ? c->scoring->n_passes : 0);
  /* A far face that the floor leaves standing has no arris. */
  if (side == SPELCH_SIDE_FAR && (n == 0 || passes[n - 1].tip_mm < c->thickness - 1e-9))
    return worst;
  for (guint i = finished ? n - 1 : 0; i < n; i++)
    {
      double from, to;
      if (!span_in (&passes[i], top, bottom, &from, &to))
        continue;
      SpelchLoad load = load_of (c, side, from, to);
      if (load > worst.load)
        worst = (Loading){ load, (int)(first + i), from, to, passes[i].finishing };
    }
  return worst;
}

static SpelchStock
stock_of (const SpelchCase *c, SpelchSide side)
{
  switch (spelch_case_facing (c, side))
    {
    case SPELCH_FACING_PLY:
      return spelch_layer_is_solid (spelch_case_face_layer (c, side)) ? SPELCH_STOCK_FIGURED
                                                                      : SPELCH_STOCK_PLYWOOD;
    case SPELCH_FACING_STRAIGHT:
      return SPELCH_STOCK_STRAIGHT;
    case SPELCH_FACING_LAMINATE:
      return SPELCH_STOCK_LAMINATE;
    case SPELCH_FACING_BOARD:
    case SPELCH_N_FACINGS:
    default:
      return SPELCH_STOCK_BOARD;
    }
}

static void
add_term (const SpelchCase *c, SpelchEdge *edge, SpelchTermKind kind, int points)
{
  if (points != 0 || kind == SPELCH_TERM_SHEAR)
    edge->terms[edge->n_terms++]
        = (SpelchTerm){ kind, points, c->k->founding[kind][stock_of (c, edge->side)] };
}

/* Figured grain rises and dives by turns, so its sense isn't known. */
static bool
against_grain (const SpelchCase *c, SpelchSide side)
{
  double angle = spelch_case_fibre_angle (c, side);
  if (spelch_case_face_layer (c, side)->grain == SPELCH_GRAIN_FIGURED)
    angle = fabs (angle);
  return spelch_cut_every_direction (c->cut) || (angle > c->k->grain_bad_from && angle < c->k->grain_bad_to);
}

static int
grain_points (const SpelchCase *c, SpelchSide side, int shear)
{
  const SpelchLayer *layer = spelch_case_face_layer (c, side);
  bool has_grain = layer->grain == SPELCH_GRAIN_STRAIGHT || layer->grain == SPELCH_GRAIN_FIGURED;
  bool counts = has_grain && (spelch_layer_is_solid (layer) || shear > 0);
  return counts && against_grain (c, side) ? 1 : 0;
}

/* An edge the cut runs out over with nothing behind it, across the grain. */
static int
corner_points (const SpelchCase *c, SpelchSide side, int shear)
{
  const SpelchLayer *layer = spelch_case_face_layer (c, side);
  bool has_grain = layer->grain == SPELCH_GRAIN_STRAIGHT || layer->grain == SPELCH_GRAIN_FIGURED;
  bool counts = has_grain && (spelch_layer_is_solid (layer) || shear > 0);
  if (!counts || spelch_cut_every_direction (c->cut) || c->cut->end != SPELCH_END_EDGE
      || spelch_part_outline_follows (c->part, c->cut))
    return 0;
  return fabs (spelch_case_fibre_angle (c, side)) >= c->k->grain_bad_to ? (int)c->k->exit_corner_points : 0;
}

/* A rabbet or a trimmed edge has one wall: the one that is kept, at the left when nobody said. */
static bool
has_wall (const SpelchCase *c, SpelchWall wall)
{
  return !c->single_wall || c->lone_climb == (wall == SPELCH_WALL_RIGHT);
}

static bool
is_climb_wall (const SpelchCase *c, SpelchWall wall)
{
  return c->single_wall ? c->lone_climb : wall == SPELCH_WALL_RIGHT;
}

static int
chip_points (const SpelchCase *c, SpelchSide side, SpelchWall wall, int shear, double chip_max)
{
  SpelchFacing facing = spelch_case_facing (c, side);
  bool splits
      = facing == SPELCH_FACING_PLY ? shear > 0 : facing == SPELCH_FACING_STRAIGHT && against_grain (c, side);
  if (!splits || is_climb_wall (c, wall) || chip_max < c->k->chip_points_one)
    return 0;
  return chip_max > c->k->chip_points_two ? 2 : 1;
}

static int
wear_points (const SpelchCase *c)
{
  return c->blunting > c->k->wear_points_two ? 2 : c->blunting > c->k->wear_points_one ? 1 : 0;
}

/* What the shop log adds to the shear points that backing has @left, which never fall under 0. The terms that
 * follow from the shear go by what is left without it: a result a grade better is one grade better. */
static int
log_points (const SpelchCase *c, SpelchSide side, int left)
{
  return MAX (left + spelch_case_log (c, side)->points, 0) - left;
}

/* Fills the terms for a load and returns the grade. */
static int
weigh (const SpelchCase *c, SpelchEdge *edge, double chip_max, bool net_lift)
{
  SpelchFacing facing = spelch_case_facing (c, edge->side);
  const SpelchLayer *layer = spelch_case_face_layer (c, edge->side);
  int shear = spelch_case_shear_points (c, edge->side, edge->load);
  bool backed = edge->side == SPELCH_SIDE_FAR && edge->load != SPELCH_LOAD_PRESS_IN && spelch_case_backed (c)
                && !net_lift;
  int backing = backed ? -MIN (shear, (int)c->k->backing_points) : 0;
  int scored = edge->scored ? -MIN (shear + backing, (int)c->k->scored_points) : 0;
  int left = shear + backing + scored;
  int log = log_points (c, edge->side, left);
  int grain = grain_points (c, edge->side, left);
  int corner = corner_points (c, edge->side, left);
  int chip = chip_points (c, edge->side, edge->wall, left, chip_max);
  int wear = wear_points (c);
  if (facing == SPELCH_FACING_PLY && (layer->veneer || layer->material >= SPELCH_MATERIAL_BIRCH_PLY))
    {
      grain = MIN (grain, left);
      corner = MIN (corner, left - grain);
      chip = MIN (chip, left - grain - corner);
    }

  edge->n_terms = 0;
  add_term (c, edge, SPELCH_TERM_SHEAR, shear);
  add_term (c, edge, SPELCH_TERM_BACKING, backing);
  add_term (c, edge, SPELCH_TERM_SCORED, scored);
  add_term (c, edge, SPELCH_TERM_LOG, log);
  add_term (c, edge, SPELCH_TERM_GRAIN, grain);
  add_term (c, edge, SPELCH_TERM_EXIT_CORNER, corner);
  add_term (c, edge, SPELCH_TERM_CHIP, chip);
  add_term (c, edge, SPELCH_TERM_WEAR, wear);
  return CLAMP (1 + left + log + grain + corner + chip + wear, 1, 5);
}

/* Length of finished line that the entry opens with the wrong shear. Whatever goes down on the line meets the
 * motor-side layer at every depth from 0: a ramp until it is deep enough, a plunge over the bit's width. */
static double
spoilt_by_entry (const SpelchCase *c, const SpelchPass *passes, guint n, const SpelchEntry *entry)
{
  bool hole = c->cut->kind == SPELCH_CUT_HOLE;
  double whole = spelch_cut_way (c->cut);
  if (n == 0 || !entry->on_line || passes[n - 1].finishing || !spelch_case_turns_over (c)
      || c->start >= c->near_layer)
    return 0;
  switch (entry->kind)
    {
    case SPELCH_ENTRY_PLUNGE:
    case SPELCH_ENTRY_STAGED:
    case SPELCH_ENTRY_LOWERED:
      return hole ? whole : c->diameter;
    case SPELCH_ENTRY_RAMP:
    case SPELCH_ENTRY_HELIX:
      {
        double turn = c->flutes.turn_over + c->flutes.overlap / 2 + c->log.motor.window_mm;
        double wrong = fmin (passes[0].tip_mm, turn + c->near_layer);
        return entry->angle_deg > 0 ? fmin (wrong / tan (entry->angle_deg * M_PI / 180), whole) : 0;
      }
    case SPELCH_ENTRY_EDGE:
    case SPELCH_ENTRY_DRILLED:
    default:
      return 0;
    }
}

static void
grade_edge (const SpelchCase *c, const SpelchPass *passes, guint n, const SpelchEntry *entry, double chip_max,
            bool net_lift, const Loading *loading, SpelchEdge *edge)
{
  edge->load = loading->load;
  edge->pass = loading->pass;
  edge->span_from = loading->from;
  edge->span_to = loading->to;
  edge->on_finishing = loading->finishing;
  edge->chip_mm = chip_max;
  if (edge->load == SPELCH_LOAD_NOT_CUT)
    return;
  edge->grade = edge->line_grade = weigh (c, edge, chip_max, net_lift);
  double spoilt = edge->side == SPELCH_SIDE_MOTOR ? spoilt_by_entry (c, passes, n, entry) : 0;
  if (spoilt <= 0 || edge->load == SPELCH_LOAD_PULL_OUT)
    return;
  SpelchEdge torn = *edge;
  torn.load = SPELCH_LOAD_PULL_OUT;
  int grade = weigh (c, &torn, chip_max, net_lift);
  if (grade > edge->grade)
    {
      torn.line_grade = edge->line_grade;
      torn.grade = grade;
      torn.by_entry_mm = spoilt;
      torn.load = edge->load;
      *edge = torn;
    }
}

/* The edge as the scoring pass left it, where that is worst or all that cuts it; NULL where another pass
 * decides. */
static const SpelchEdge *
left_by_scoring (const SpelchCase *c, int i, const Loading *loading)
{
  const SpelchEdge *scored = c->scoring != NULL && i < 2 ? &c->scoring->edges[i] : NULL;
  return scored != NULL && !loading->finishing && scored->load >= loading->load ? scored : NULL;
}

/* The grades of the model alone, for comparing with what comes out. */
static void
grade_without_log (const SpelchCase *c, const SpelchPass *passes, guint n, const SpelchEntry *entry,
                   double chip_max, bool net_lift, SpelchEdge edges[SPELCH_MAX_EDGES])
{
  static const SpelchCorrection nothing;
  SpelchCase bare = *c;
  SpelchEdge own[SPELCH_MAX_EDGES];
  bare.log = nothing;
  spelch_edges_grade (&bare, passes, n, entry, chip_max, net_lift, own);
  for (int i = 0; i < SPELCH_MAX_EDGES; i++)
    edges[i].model_grade = own[i].model_grade;
}

void
spelch_edges_grade (const SpelchCase *c, const SpelchPass *passes, guint n, const SpelchEntry *entry,
                    double chip_max, bool net_lift, SpelchEdge edges[SPELCH_MAX_EDGES])
{
  memset (edges, 0, SPELCH_MAX_EDGES * sizeof *edges);
  for (int i = 0; i < SPELCH_MAX_EDGES; i++)
    {
      SpelchEdge *edge = &edges[i];
      edge->side = i < 2 ? SPELCH_SIDE_MOTOR : SPELCH_SIDE_FAR;
      edge->wall = i % 2 == 0 ? SPELCH_WALL_LEFT : SPELCH_WALL_RIGHT;
      edge->face = edge->side == SPELCH_SIDE_MOTOR ? c->cut->way_up : spelch_face_other (c->cut->way_up);
      edge->seen = spelch_cut_sees (c->cut, edge->face);
      if (!has_wall (c, edge->wall))
        continue;
      edge->stays = c->cut->kept == SPELCH_WALL_BOTH || c->cut->kept == edge->wall;
      Loading loading = loading_of (c, edge->side, passes, n);
      if (edge->side == SPELCH_SIDE_FAR && n > 0 && passes[n - 1].tip_mm > c->depth_most + 1e-6)
        loading.load = SPELCH_LOAD_NOT_CUT; /* the bit is too short to come out there */
      const SpelchEdge *scored = left_by_scoring (c, i, &loading);
      if (scored != NULL)
        {
          *edge = *scored;
          continue;
        }
      edge->scored = c->scoring != NULL && i < 2 && !loading.finishing
                     && c->scoring->edges[i].load == SPELCH_LOAD_PRESS_IN;
      grade_edge (c, passes, n, entry, chip_max, net_lift, &loading, edge);
      edge->model_grade = edge->grade;
    }
  if (*c->log.bit != '\0')
    grade_without_log (c, passes, n, entry, chip_max, net_lift, edges);
}

int
spelch_edges_worst (const SpelchEdge edges[SPELCH_MAX_EDGES], bool seen)
{
  int worst = 0;
  for (int i = 0; i < SPELCH_MAX_EDGES; i++)
    if (edges[i].stays && edges[i].seen == seen)
      worst = MAX (worst, edges[i].grade);
  return worst;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/cut.h"

#include "shop/fault.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NARROWEST_MM    0.5 /* as a width */
#define ROUND_WITHIN_MM 0.5 /* as people measure a way round */

static const char *const cut_kinds[] = {
  [SPELCH_CUT_OUTLINE] = "outline", [SPELCH_CUT_DADO] = "dado",       [SPELCH_CUT_RABBET] = "rabbet",
  [SPELCH_CUT_POCKET] = "pocket",   [SPELCH_CUT_MORTISE] = "mortise", [SPELCH_CUT_SLOT] = "slot",
  [SPELCH_CUT_TRIM] = "trim",       [SPELCH_CUT_HOLE] = "hole",
};
SPELCH_TABLE_HAS (cut_kinds, SPELCH_N_CUT_KINDS);
const SpelchCodes SPELCH_CUT_KIND_CODES = { N_ ("kind of cut"), cut_kinds, G_N_ELEMENTS (cut_kinds) };

static const SpelchCutShape shapes[] = {
  [SPELCH_CUT_OUTLINE] = { .through = true, .closed = true, .every_direction = true },
  [SPELCH_CUT_DADO] = { .two_walls = true },
  [SPELCH_CUT_RABBET] = { .one_wall = true },
  [SPELCH_CUT_POCKET] = { .pit = true, .closed = true, .every_direction = true },
  [SPELCH_CUT_MORTISE] = { .two_walls = true, .pit = true, .closed = true },
  [SPELCH_CUT_SLOT] = { .two_walls = true },
  [SPELCH_CUT_TRIM] = { .through = true, .one_wall = true },
  [SPELCH_CUT_HOLE] = { .closed = true, .every_direction = true },
};
SPELCH_TABLE_HAS (shapes, SPELCH_N_CUT_KINDS);

SpelchCutShape
spelch_cut_shape (SpelchCutKind kind)
{
  return (guint)kind < G_N_ELEMENTS (shapes) ? shapes[kind] : (SpelchCutShape){ 0 };
}

static const char *const walls[] = {
  [SPELCH_WALL_LEFT] = "left",
  [SPELCH_WALL_RIGHT] = "right",
  [SPELCH_WALL_BOTH] = "both",
};
const SpelchCodes SPELCH_WALL_CODES = { N_ ("wall"), walls, G_N_ELEMENTS (walls) };

static const char *const ends[] = {
  [SPELCH_END_EDGE] = "edge",
  [SPELCH_END_INSIDE] = "inside",
  [SPELCH_END_BACKED] = "backed",
};
const SpelchCodes SPELCH_END_CODES = { N_ ("end of the cut"), ends, G_N_ELEMENTS (ends) };

static const char *const entry_kinds[] = {
  [SPELCH_ENTRY_PLUNGE] = "plunge",   [SPELCH_ENTRY_RAMP] = "ramp",       [SPELCH_ENTRY_HELIX] = "helix",
  [SPELCH_ENTRY_EDGE] = "edge",       [SPELCH_ENTRY_DRILLED] = "drilled", [SPELCH_ENTRY_STAGED] = "staged",
  [SPELCH_ENTRY_LOWERED] = "lowered",
};
const SpelchCodes SPELCH_ENTRY_KIND_CODES = { N_ ("entry"), entry_kinds, G_N_ELEMENTS (entry_kinds) };

static const char *const pass_plans[] = {
  [SPELCH_PASS_PLAN_FULL] = "full",       [SPELCH_PASS_PLAN_STEPPED] = "stepped",
  [SPELCH_PASS_PLAN_SCORED] = "scored",   [SPELCH_PASS_PLAN_FINISHED] = "finished",
  [SPELCH_PASS_PLAN_SKIN] = "onion-skin",
};
const SpelchCodes SPELCH_PASS_PLAN_CODES = { N_ ("pass plan"), pass_plans, G_N_ELEMENTS (pass_plans) };

SpelchFace
spelch_face_other (SpelchFace face)
{
  return face == SPELCH_FACE_A ? SPELCH_FACE_B : SPELCH_FACE_A;
}

bool
spelch_cut_sees (const SpelchCut *cut, SpelchFace face)
{
  return face == SPELCH_FACE_A ? cut->seen_a : cut->seen_b;
}

bool
spelch_held_has_passes (const SpelchHeld *held)
{
  return held->passes_held || held->n_passes > 0;
}

double
spelch_cut_width (const SpelchCut *cut)
{
  return cut->mating.told ? cut->mating.thickness.mm + cut->mating.clearance.mm : cut->width.mm;
}

double
spelch_cut_way (const SpelchCut *cut)
{
  return cut->kind == SPELCH_CUT_HOLE ? G_PI * spelch_cut_width (cut) : cut->length.mm;
}

/* What four rounded corners spare of the way round a rectangle, and no more than a circle's. */
static double
spared (const SpelchCut *cut)
{
  return (8 - 2 * G_PI) * MIN (cut->corner_radius.mm, spelch_cut_width (cut) / 2);
}

double
spelch_cut_pocket_across (const SpelchCut *cut)
{
  return (cut->length.mm + spared (cut)) / 2 - spelch_cut_width (cut);
}

double
spelch_cut_pocket_round (const SpelchCut *cut)
{
  double width = spelch_cut_width (cut), round = MIN (2 * cut->corner_radius.mm, width);
  return 2 * (width + MAX (round, NARROWEST_MM)) - spared (cut);
}

double
spelch_cut_pocket_least (const SpelchCut *cut)
{
  return ceil (spelch_cut_pocket_round (cut) - ROUND_WITHIN_MM);
}

bool
spelch_cut_goes_round (const SpelchCut *cut)
{
  return cut->kind != SPELCH_CUT_POCKET || cut->length.mm >= spelch_cut_pocket_round (cut) - ROUND_WITHIN_MM;
}

bool
spelch_cut_has_one_wall (const SpelchCut *cut)
{
  return spelch_cut_shape (cut->kind).one_wall;
}

bool
spelch_cut_is_way_round (const SpelchCut *cut)
{
  return cut->kind == SPELCH_CUT_OUTLINE || cut->kind == SPELCH_CUT_POCKET;
}

bool
spelch_cut_has_two_walls (const SpelchCut *cut)
{
  return spelch_cut_shape (cut->kind).two_walls;
}

bool
spelch_held_plans (const SpelchHeld *held, SpelchPassPlan plan)
{
  bool allowed = plan == SPELCH_PASS_PLAN_FINISHED && held->allowance_held && held->allowance.mm > 0;
  return held->plan_held ? held->plan == plan : allowed;
}

bool
spelch_cut_every_direction (const SpelchCut *cut)
{
  return cut->every_direction || spelch_cut_shape (cut->kind).every_direction;
}

static char *
fault_of_words (const SpelchCut *cut)
{
  return spelch_fault_id ("id", cut->id, false)
             ?: spelch_fault_text ("name", cut->name, sizeof cut->name)
             ?: spelch_fault_code ("kind", &SPELCH_CUT_KIND_CODES, (int)cut->kind)
             ?: spelch_fault_code ("way_up", &SPELCH_FACE_CODES, (int)cut->way_up)
             ?: spelch_fault_code ("kept", &SPELCH_WALL_CODES, (int)cut->kept)
             ?: spelch_fault_code ("start", &SPELCH_END_CODES, (int)cut->start)
             ?: spelch_fault_code ("end", &SPELCH_END_CODES, (int)cut->end)
             ?: spelch_fault_code ("held.entry", &SPELCH_ENTRY_KIND_CODES, (int)cut->held.entry)
             ?: spelch_fault_code ("held.pass_plan", &SPELCH_PASS_PLAN_CODES, (int)cut->held.plan)
             ?: spelch_fault_id ("held.score_bit", cut->held.score_bit, true)
             ?: spelch_fault_id ("bit", cut->bit, true);
}

static char *
fault_of_bounds (const SpelchCut *cut)
{
  /* An outline is one bit wide, what goes in may say the width, and a hole's path follows from its diameter.
   */
  const SpelchBounds bounds[] = {
    { "width", "mm", cut->width.mm, 0.5, 2000, cut->kind == SPELCH_CUT_OUTLINE || cut->mating.told },
    { "length", "mm", cut->length.mm, 0.5, 100000, cut->kind == SPELCH_CUT_HOLE },
    { "corner_radius", "mm", cut->corner_radius.mm, 0, 1000 },
    { "from_edge", "mm", cut->from_edge.mm, 0, 100000 },
    { "path_deg", "°", cut->path_deg, -360, 360 },
    { "quantity", "", (int)cut->quantity, 1, 100000 },
    { "backer", "mm", cut->backer.mm, 0, 100 },
    { "stick_out", "mm", cut->stick_out.mm, 1, 400, true },
    { "tabs.count", "", (int)cut->tabs.count, 0, 1000 },
  };
  return spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
}

/* What goes in fits between two walls, and says how wide they are apart. */
static char *
fault_of_mating (const SpelchCut *cut)
{
  const SpelchBounds bounds[] = {
    { "mating.thickness", "mm", cut->mating.thickness.mm, 1, 200 },
    { "mating.clearance", "mm", cut->mating.clearance.mm, -0.5, 5 },
  };
  const char *kind = spelch_code_of (&SPELCH_CUT_KIND_CODES, (int)cut->kind);
  if (cut->from_edge.mm > 0 && !spelch_cut_has_two_walls (cut))
    return g_strdup_printf (_ ("from_edge: a cut of the kind %s isn't laid out from an edge."), kind);
  if (!cut->mating.told)
    return NULL;
  if (!spelch_cut_has_two_walls (cut))
    return g_strdup_printf (_ ("mating: nothing is fitted into a cut of the kind %s."), kind);
  char *fault = spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
  if (fault != NULL || cut->width.mm == 0)
    return fault;
  g_autofree char *width = spelch_fault_number (cut->width.mm, "mm");
  return g_strdup_printf (_ ("width (%s) and mating are both told: leave one of them out."), width);
}

static char *
fault_of_depth (const SpelchCut *cut, double thickness)
{
  if (cut->through)
    return NULL;
  if (spelch_cut_shape (cut->kind).through)
    return g_strdup_printf (_ ("through is false, but a cut of the kind %s always goes through the board."),
                            spelch_code_of (&SPELCH_CUT_KIND_CODES, (int)cut->kind));
  char *fault = spelch_fault_bounds (&(SpelchBounds){ "depth", "mm", cut->depth.mm, 0.05, 200 }, 1);
  if (fault != NULL || cut->depth.mm < thickness)
    return fault;
  g_autofree char *depth = spelch_fault_number (cut->depth.mm, "mm");
  g_autofree char *board = spelch_fault_number (thickness, "mm");
  return g_strdup_printf (_ ("depth (%s) is not less than the board's thickness (%s); is the cut meant to go "
                             "through?"),
                          depth, board);
}

static char *
fault_of_tabs (const SpelchCut *cut, double thickness)
{
  if (cut->tabs.count == 0)
    return NULL;
  if (!cut->through)
    return g_strdup_printf (_ ("tabs.count (%u): only a cut right through has tabs."), cut->tabs.count);
  const SpelchBounds bounds[] = {
    { "tabs.width", "mm", cut->tabs.width.mm, 0.5, 1000 },
    { "tabs.thickness", "mm", cut->tabs.thickness.mm, 0.1, thickness },
  };
  return spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
}

static char *
fault_of_held (const SpelchHeld *held, double thickness)
{
  const SpelchBounds bounds[] = {
    { "held.passes", "", held->n_passes, 0, SPELCH_MAX_PASSES },
    { "held.overcut", "mm", held->overcut_held ? held->overcut.mm : 0, -thickness, 100 },
    { "held.allowance", "mm", held->allowance_held ? held->allowance.mm : 0, 0, 20 },
    { "held.score", "mm", held->score.mm, 0, 50 },
    { "held.skin", "mm", held->skin.mm, 0, 20 },
    { "held.speed_rpm", "rpm", held->speed_rpm, 100, 100000, true },
    { "held.feed_mm_min", "mm/min", held->feed_mm_min, 1, 200000, true },
    { "held.entry_deg", "°", held->entry_deg, 0, 45 },
  };
  return spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
}

/* A pass deeper than a blind cut's floor would spoil it. */
static char *
fault_of_passes (const SpelchCut *cut)
{
  double above = 0;
  for (guint i = 0; i < cut->held.n_passes; i++)
    {
      double mm = cut->held.passes[i].mm;
      g_autofree char *member = g_strdup_printf ("held.passes[%u]", i);
      char *fault = spelch_fault_bounds (&(SpelchBounds){ member, "mm", mm, 0.05, 300 }, 1);
      if (fault != NULL)
        return fault;
      g_autofree char *value = spelch_fault_number (mm, "mm");
      g_autofree char *before = spelch_fault_number (above, "mm");
      g_autofree char *depth = spelch_fault_number (cut->depth.mm, "mm");
      if (mm <= above)
        return g_strdup_printf (_ ("%s (%s) must be deeper than the pass before (%s)."), member, value,
                                before);
      if (!cut->through && mm >= cut->depth.mm)
        return g_strdup_printf (_ ("%s (%s) must be less than depth (%s)."), member, value, depth);
      above = mm;
    }
  return NULL;
}

char *
spelch_cut_fault (const SpelchCut *cut, const SpelchBoard *board)
{
  double thickness = spelch_board_thickness (board);
  return fault_of_words (cut)
             ?: fault_of_bounds (cut)
             ?: fault_of_mating (cut)
             ?: fault_of_depth (cut, thickness)
             ?: fault_of_tabs (cut, thickness)
             ?: fault_of_held (&cut->held, thickness)
             ?: fault_of_passes (cut);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/case.h"

#include "plan/passes.h"

#include <math.h>
#include <string.h>

static double
blunting_of (const SpelchConstants *k, SpelchWear wear)
{
  const double states[] = { k->blunting_new, k->blunting_sharp, k->blunting_worn, k->blunting_dull };
  return states[wear];
}

SpelchFlutes
spelch_plan_flutes (const SpelchBit *bit)
{
  SpelchFlutes flutes = { .diameter = spelch_bit_diameter_now (bit),
                          .helix = bit->kind == SPELCH_BIT_STRAIGHT ? 0 : bit->helix_deg * M_PI / 180,
                          .length = bit->cutting_length.mm,
                          .edges_up = bit->edges,
                          .edges_down = bit->edges };
  switch (bit->kind)
    {
    case SPELCH_BIT_STRAIGHT:
    case SPELCH_BIT_DOWN_CUT:
      break;
    case SPELCH_BIT_UP_CUT:
      flutes.turn_over = flutes.length;
      break;
    case SPELCH_BIT_COMPRESSION:
      flutes.turn_over = spelch_bit_up_shear_now (bit);
      flutes.overlap = bit->overlap.mm;
      if (bit->edges_up > 0)
        flutes.edges_up = bit->edges_up;
      break;
    }
  return flutes;
}

static double
told_or (double told, double otherwise)
{
  return told > 0 ? told : otherwise;
}

static void
prepare_tolerances (SpelchCase *c)
{
  const SpelchBoard *board = &c->part->board;
  bool measured = board->measured.mm > 0;
  double within = told_or (board->measured_within_mm, c->k->tolerance_measured);
  c->plus = measured ? within : board->tolerance_plus_mm;
  c->minus = measured ? within : board->tolerance_minus_mm;
  c->depth_tolerance = told_or (c->part->tolerances.depth_mm, c->k->tolerance_depth);
  c->shear_tolerance = told_or (c->part->tolerances.up_shear_mm, c->k->tolerance_up_shear);
  c->datum = spelch_machine_datum (c->machine);
}

/* What is above the cutting edges limits the depth only when it is as thick as the bit. */
static double
reach (const SpelchCase *c, double stick_out)
{
  const SpelchBit *bit = c->bit;
  double above = bit->neck.mm > 0 ? bit->neck.mm : bit->shank.mm;
  double base = c->machine->base_thickness.mm + c->k->clearance_base;
  double depth = fmax (stick_out - base, 0);
  return above >= c->diameter || depth == HUGE_VAL ? fmin (depth, bit->cutting_length.mm) : depth;
}

static void
prepare_reach (SpelchCase *c)
{
  const SpelchBit *bit = c->bit;
  double in_collet = fmax (c->k->collet_least, c->k->collet_diameters * bit->shank.mm);

  c->stick_most = bit->overall_length.mm > 0 ? fmax (bit->overall_length.mm - in_collet, 0) : HUGE_VAL;
  c->depth_free = reach (c, c->stick_most);
  if (c->cut->stick_out.mm > 0)
    c->stick_most = c->cut->stick_out.mm;
  c->depth_most = reach (c, c->stick_most);
  c->step_most = bit->cutting_length.mm;
  if (c->diameter < c->k->slender_below)
    c->step_most = fmin (c->step_most, c->k->slender_step * c->diameter);

  if (c->cut->backer.mm > 0)
    c->overcut_most = fmax (c->cut->backer.mm - c->k->backer_spare, 0);
  else if (c->machine->kind == SPELCH_MACHINE_GANTRY)
    c->overcut_most = c->machine->overcut_allowed_mm;
  else
    {
      /* Nothing below but air: only the bit's reach limits the overcut. */
      c->overcut_free = true;
      c->overcut_most = fmax (c->depth_most - c->thickness, 0);
    }
}

static void
prepare_width (SpelchCase *c)
{
  const SpelchCut *cut = c->cut;
  double width = spelch_cut_width (cut) > 0 ? spelch_cut_width (cut) : c->diameter;
  c->single_wall = spelch_cut_has_one_wall (cut);
  c->lone_climb = c->single_wall && cut->kept == SPELCH_WALL_RIGHT;
  c->tracks = spelch_setting_out_tracks_of (c->k, cut, c->diameter);
  c->engaged = c->single_wall ? fmin (width, c->diameter) : c->diameter;
}

static void
prepare_pass_plan (SpelchCase *c)
{
  const SpelchHeld *held = &c->cut->held;
  bool finished = spelch_held_plans (held, SPELCH_PASS_PLAN_FINISHED);
  bool skin = c->through && spelch_held_plans (held, SPELCH_PASS_PLAN_SKIN);
  c->pass_plan = held->plan_held && held->plan == SPELCH_PASS_PLAN_FULL ? SPELCH_PASS_PLAN_FULL
                                                                        : SPELCH_PASS_PLAN_STEPPED;
  if (finished)
    c->allowance = held->allowance_held ? held->allowance.mm : c->k->finishing_allowance;
  if (skin)
    c->skin = fmin (told_or (held->skin.mm, c->k->skin_left), c->thickness / 2);
  if (c->allowance > 0)
    c->pass_plan = SPELCH_PASS_PLAN_FINISHED;
  if (c->skin > 0)
    c->pass_plan = SPELCH_PASS_PLAN_SKIN;
}

/* What has to be cut rightly for the arris to be clean: a ply or skin as a whole, of other stock the
 * outermost part. */
static double
arris_layer (const SpelchCase *c, guint i)
{
  const SpelchLayer *layer = &c->board.layers[i];
  bool leaf = layer->veneer || layer->material == SPELCH_MATERIAL_LAMINATE;
  return leaf ? layer->thickness.mm : fmin (layer->thickness.mm, c->k->arris_depth);
}

static void
prepare_log (SpelchCase *c)
{
  const SpelchCorrection *correction = spelch_part_correction (c->part, c->bit);
  const SpelchCalibration *calibration = spelch_part_calibration (c->part);
  if (correction != NULL)
    c->log = *correction;
  c->force_factor = calibration != NULL ? calibration->factor : 1;
  c->force_readings = calibration != NULL ? calibration->readings : 0;
}

/* What hands can follow, whatever a face would want; depths that a person holds are that person's. */
static void
prepare_step (SpelchCase *c)
{
  bool hands_feed = c->machine->kind != SPELCH_MACHINE_GANTRY;
  c->step_by_hand = hands_feed && !spelch_passes_held (c) ? c->k->hand_step * c->diameter : HUGE_VAL;
  /* in tenths, as depths are set */
  double by_hand = hands_feed ? floor (c->step_by_hand * 10 + 1e-6) / 10 : HUGE_VAL;
  c->step_planned = fmin (c->step_most, by_hand);
}

void
spelch_case_prepare (SpelchCase *c, const SpelchConstants *constants, const SpelchPart *part,
                     const SpelchCut *cut, const SpelchBit *bit)
{
  memset (c, 0, sizeof *c);
  c->k = constants;
  c->part = part;
  c->cut = cut;
  c->bit = bit;
  c->machine = &part->machine;
  c->board = spelch_board_toward_motor (&part->board, cut->way_up);
  c->flutes = spelch_plan_flutes (bit);
  c->diameter = c->flutes.diameter;
  c->thickness = spelch_board_thickness (&part->board);
  c->near_layer = arris_layer (c, 0);
  c->far_layer = arris_layer (c, c->board.n_layers - 1);
  c->through = cut->through;
  c->floor_depth = c->through ? c->thickness : fmin (cut->depth.mm, c->thickness);
  c->blunting = blunting_of (constants, bit->wear);
  c->rake = told_or (bit->rake_deg, constants->rake_default) * M_PI / 180;
  prepare_log (c);
  prepare_tolerances (c);
  prepare_reach (c);
  prepare_width (c);
  prepare_pass_plan (c);
  prepare_step (c);
}

void
spelch_case_score (SpelchCase *c, const SpelchPlan *scoring)
{
  if (scoring->n_passes == 0)
    return;
  c->scoring = scoring;
  c->start = scoring->passes[scoring->n_passes - 1].tip_mm;
  c->pass_plan = SPELCH_PASS_PLAN_SCORED;
  c->allowance = c->skin = 0;
}

SpelchLoad
spelch_case_scored_load (const SpelchCase *c)
{
  const SpelchEdge *edge = c->scoring != NULL ? spelch_plan_worst (c->scoring, SPELCH_SIDE_MOTOR) : NULL;
  return edge != NULL ? edge->load : SPELCH_LOAD_NOT_CUT;
}

SpelchUncertain
spelch_case_uncertain (const SpelchCase *c, bool exact)
{
  double set = c->depth_tolerance, bed = set + c->machine->flatness_mm;
  if (exact)
    return (SpelchUncertain){ 0, 0, 0, 0 };
  if (c->datum == SPELCH_DATUM_FACE)
    return (SpelchUncertain){ set, set, set + c->plus, set + c->minus };
  return (SpelchUncertain){ bed + c->minus, bed + c->plus, bed, bed };
}

bool
spelch_case_turns_over (const SpelchCase *c)
{
  return c->flutes.turn_over > 0 && c->flutes.turn_over < c->flutes.length
         && c->flutes.helix >= SPELCH_NEUTRAL_HELIX_RAD;
}

const SpelchLearnt *
spelch_case_log (const SpelchCase *c, SpelchSide side)
{
  return side == SPELCH_SIDE_MOTOR ? &c->log.motor : &c->log.far;
}

bool
spelch_case_backed (const SpelchCase *c)
{
  bool spoilboard
      = c->machine->kind == SPELCH_MACHINE_GANTRY && c->machine->spoilboard == SPELCH_SPOILBOARD_FRESH;
  return c->cut->backer.mm > 0 || spoilboard;
}

const SpelchLayer *
spelch_case_face_layer (const SpelchCase *c, SpelchSide side)
{
  return &c->board.layers[side == SPELCH_SIDE_MOTOR ? 0 : c->board.n_layers - 1];
}

bool
spelch_layer_is_solid (const SpelchLayer *layer)
{
  return !layer->veneer
         && (layer->material == SPELCH_MATERIAL_SOFTWOOD || layer->material == SPELCH_MATERIAL_HARDWOOD);
}

SpelchFacing
spelch_facing_of_layer (const SpelchLayer *layer)
{
  if (layer->material == SPELCH_MATERIAL_LAMINATE)
    return SPELCH_FACING_LAMINATE;
  if (layer->material == SPELCH_MATERIAL_MDF || layer->material == SPELCH_MATERIAL_PARTICLEBOARD)
    return SPELCH_FACING_BOARD;
  return spelch_layer_is_solid (layer) && layer->grain == SPELCH_GRAIN_STRAIGHT ? SPELCH_FACING_STRAIGHT
                                                                                : SPELCH_FACING_PLY;
}

SpelchFacing
spelch_case_facing (const SpelchCase *c, SpelchSide side)
{
  return spelch_facing_of_layer (spelch_case_face_layer (c, side));
}

int
spelch_case_shear_points (const SpelchCase *c, SpelchSide side, SpelchLoad load)
{
  const SpelchShearPoints *points = &c->k->shear[spelch_case_facing (c, side)];
  switch (load)
    {
    case SPELCH_LOAD_PRESS_IN:
      return points->press_in;
    case SPELCH_LOAD_NEUTRAL:
      return points->neutral;
    case SPELCH_LOAD_PULL_OUT:
      return points->pull_out;
    case SPELCH_LOAD_NOT_CUT:
    default:
      return 0;
    }
}

double
spelch_case_fibre_angle (const SpelchCase *c, SpelchSide side)
{
  double path = spelch_angle_seen_from (c->cut->way_up, c->cut->path_deg);
  return spelch_angle_of_line (spelch_case_face_layer (c, side)->grain_deg - path);
}

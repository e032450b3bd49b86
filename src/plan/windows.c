/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/windows.h"

#include <math.h>

#define EMPTY ((SpelchRange){ 0, 0, true })

static SpelchRange
range (double from, double to)
{
  return to >= from - 1e-9 ? (SpelchRange){ from, fmax (from, to), false } : EMPTY;
}

/* A face is kept when what loads it costs no points. */
static bool
kept (const SpelchCase *c, SpelchSide side, SpelchLoad load)
{
  int points = spelch_case_shear_points (c, side, load);
  if (side == SPELCH_SIDE_FAR && load != SPELCH_LOAD_PRESS_IN && spelch_case_backed (c))
    points -= 1;
  return points <= 0;
}

static bool
is_compression (const SpelchCase *c)
{
  return c->flutes.turn_over > 0 && c->flutes.turn_over < c->flutes.length
         && c->flutes.helix >= SPELCH_NEUTRAL_HELIX_RAD;
}

/* How a bit with one hand all along loads a face. */
static SpelchLoad
plain_load (const SpelchCase *c, SpelchSide side)
{
  if (c->flutes.helix < SPELCH_NEUTRAL_HELIX_RAD)
    return SPELCH_LOAD_NEUTRAL;
  bool up = c->flutes.turn_over > 0;
  return up == (side == SPELCH_SIDE_FAR) ? SPELCH_LOAD_PRESS_IN : SPELCH_LOAD_PULL_OUT;
}

/* Tip depth from which the motor-side layer of a compression bit lies wholly in the down-shear. */
static double
near_needs (const SpelchCase *c, bool exact)
{
  double tolerance = exact ? 0 : c->shear_tolerance + spelch_case_uncertain (c, false).depth_minus;
  return c->flutes.turn_over + c->flutes.overlap / 2 + c->near_layer + tolerance;
}

/* Largest overcut to set so that nothing below the board is cut more than it may be. */
static double
over_most (const SpelchCase *c, SpelchUncertain off)
{
  return c->overcut_free ? HUGE_VAL : c->overcut_most - off.over_plus;
}

/* Deepest first pass allowed. */
static double
first_most (const SpelchCase *c, bool exact)
{
  SpelchUncertain off = spelch_case_uncertain (c, exact);
  double reach = fmin (c->depth_most, c->bit->cutting_length.mm);
  if (!c->through)
    return fmin (reach - off.depth_plus, c->floor_depth);
  return fmin (reach - off.depth_plus, c->thickness + over_most (c, off));
}

static SpelchRange
first_pass (const SpelchCase *c, bool exact)
{
  double most = first_most (c, exact);
  if (is_compression (c) && !kept (c, SPELCH_SIDE_MOTOR, SPELCH_LOAD_PULL_OUT))
    return range (near_needs (c, exact), most);
  SpelchLoad load = is_compression (c) ? SPELCH_LOAD_PULL_OUT : plain_load (c, SPELCH_SIDE_MOTOR);
  return kept (c, SPELCH_SIDE_MOTOR, load) ? range (0, most) : EMPTY;
}

static SpelchRange
last_tip (const SpelchCase *c, bool exact)
{
  SpelchUncertain off = spelch_case_uncertain (c, exact);
  double least = c->k->cuts_through + off.over_minus, most = over_most (c, off);
  if (is_compression (c) && !kept (c, SPELCH_SIDE_FAR, SPELCH_LOAD_PULL_OUT))
    most = fmin (most, c->flutes.turn_over - c->flutes.overlap / 2 - c->far_layer
                           - (exact ? 0 : c->shear_tolerance) - off.over_plus);
  else if (!is_compression (c) && !kept (c, SPELCH_SIDE_FAR, plain_load (c, SPELCH_SIDE_FAR)))
    return EMPTY;
  return range (c->thickness + least, fmin (c->thickness + most, c->depth_most - off.depth_plus));
}

static SpelchWindow
window (const SpelchCase *c, bool exact)
{
  return (SpelchWindow){ first_pass (c, exact), c->through ? last_tip (c, exact) : EMPTY };
}

static bool
is_open (const SpelchCase *c)
{
  SpelchWindow w = window (c, false);
  return !w.first_pass.empty && (!c->through || !w.last_tip.empty);
}

/* The same case with the board measured, or zero taken on the bed. */
static bool
opens_measured (SpelchCase c)
{
  c.plus = c.minus = c.k->tolerance_measured;
  return is_open (&c);
}

static bool
opens_on_bed (SpelchCase c, bool measured_too)
{
  if (c.machine->kind != SPELCH_MACHINE_GANTRY || c.datum == SPELCH_DATUM_BED)
    return false;
  c.datum = SPELCH_DATUM_BED;
  return is_open (&c) || (measured_too && opens_measured (c));
}

/* Least thickness of a backer under which a window opens; 0 when none does. */
static double
backer_that_opens (SpelchCase c)
{
  SpelchUncertain off = spelch_case_uncertain (&c, false);
  double over = c.k->cuts_through + off.over_minus;
  if (is_compression (&c))
    over = fmax (over, near_needs (&c, false) - c.thickness);
  SpelchCut cut = *c.cut;
  cut.backer = spelch_length_mm (over + off.over_plus + c.k->backer_spare);
  c.cut = &cut;
  c.overcut_most = over + off.over_plus;
  c.overcut_free = false;
  return c.through && is_open (&c) ? cut.backer.mm : 0;
}

static bool
reach_is_short (const SpelchCase *c)
{
  SpelchUncertain off = spelch_case_uncertain (c, false);
  double deepest = c->through ? c->thickness + c->k->cuts_through + off.over_minus : c->floor_depth;
  return deepest > c->depth_most - off.depth_plus + 1e-9;
}

static void
find_opener (const SpelchCase *c, SpelchWindows *w)
{
  if (is_open (c))
    w->opened_by = SPELCH_OPENED_BY_NOTHING_NEEDED;
  else if (reach_is_short (c))
    w->opened_by = SPELCH_OPENED_BY_LONGER_BIT;
  else if (opens_measured (*c))
    w->opened_by = SPELCH_OPENED_BY_MEASURE;
  else if (opens_on_bed (*c, true))
    w->opened_by = SPELCH_OPENED_BY_BED;
  else if ((w->opened_mm = backer_that_opens (*c)) > 0)
    w->opened_by = SPELCH_OPENED_BY_BACKER;
  else
    w->opened_by = SPELCH_OPENED_BY_OTHER_BIT;
}

/* The same inequalities turned about: the longest up-shear that would serve this board, 0 when none would. */
static double
longest_up_shear (const SpelchCase *c)
{
  SpelchUncertain off = spelch_case_uncertain (c, false);
  double around = c->shear_tolerance + c->flutes.overlap / 2;
  double longest = first_most (c, false) - c->near_layer - off.depth_minus - around;
  double shortest
      = c->through ? c->k->cuts_through + off.over_minus + off.over_plus + c->far_layer + around : 0;
  return longest >= shortest ? longest : 0;
}

SpelchWindows
spelch_windows_find (const SpelchCase *c)
{
  SpelchUncertain off = spelch_case_uncertain (c, false);
  SpelchWindows w = { .nominal = window (c, true),
                      .robust = window (c, false),
                      .far_applies = c->through,
                      .depth_uncertain_mm = fmax (off.depth_minus, off.depth_plus),
                      .over_uncertain_mm = fmax (off.over_minus, off.over_plus),
                      .needs_up_shear_to = fmax (longest_up_shear (c), 0) };
  if (is_compression (c))
    w.needs_overcut_mm = fmax (near_needs (c, true) - c->thickness, 0);
  find_opener (c, &w);
  return w;
}

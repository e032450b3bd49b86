/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/windows.h"

#include <math.h>

#define EMPTY ((SpelchRange){ 0, 0, true })

/* Longer than any bit. */
#define LONG_MM 1000

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
    points -= (int)c->k->backing_points;
  return points <= 0;
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
  return c->flutes.turn_over + c->flutes.overlap / 2 + c->log.motor.window_mm + c->near_layer + tolerance;
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
  double reach = fmin (c->depth_most, c->bit->cutting_length.mm) - off.depth_plus;
  return fmin (fmin (reach, c->step_most), c->through ? c->thickness + over_most (c, off) : c->floor_depth);
}

/* How much of the far layer is left for the pass that breaks through, at most: all of it, unless a held pass
 * before it already stands in that layer. */
static double
far_left (const SpelchCase *c, bool exact)
{
  const SpelchHeld *held = &c->cut->held;
  double before = held->n_passes > 0 ? held->passes[held->n_passes - 1].mm : 0;
  if (c->skin > 0)
    before = fmax (before, c->thickness - c->skin);
  if (c->allowance > 0 || before >= c->thickness)
    return c->far_layer;
  return fmin (c->far_layer, c->thickness - before + spelch_case_uncertain (c, exact).over_minus);
}

/* A scoring pass keeps the face when it severs the whole layer and presses it in. */
static SpelchRange
scoring_pass (const SpelchCase *c, bool exact)
{
  SpelchUncertain off = spelch_case_uncertain (c, exact);
  double most = fmin (fmin (c->scoring->step_most, c->scoring->depth_most), c->floor_depth) - off.depth_plus;
  return kept (c, SPELCH_SIDE_MOTOR, spelch_case_scored_load (c))
             ? range (c->near_layer + off.depth_minus, most)
             : EMPTY;
}

static SpelchRange
first_pass (const SpelchCase *c, bool exact)
{
  if (c->scoring != NULL)
    return scoring_pass (c, exact);
  double most = first_most (c, exact);
  if (spelch_case_turns_over (c) && !kept (c, SPELCH_SIDE_MOTOR, SPELCH_LOAD_PULL_OUT))
    return range (near_needs (c, exact), most);
  SpelchLoad load = spelch_case_turns_over (c) ? SPELCH_LOAD_PULL_OUT : plain_load (c, SPELCH_SIDE_MOTOR);
  return kept (c, SPELCH_SIDE_MOTOR, load) ? range (0, most) : EMPTY;
}

static SpelchRange
last_tip (const SpelchCase *c, bool exact)
{
  SpelchUncertain off = spelch_case_uncertain (c, exact);
  double least = c->k->cuts_through + off.over_minus, most = over_most (c, off);
  if (spelch_case_turns_over (c) && !kept (c, SPELCH_SIDE_FAR, SPELCH_LOAD_PULL_OUT))
    most = fmin (most, c->flutes.turn_over - c->flutes.overlap / 2 - c->log.far.window_mm
                           - far_left (c, exact) - (exact ? 0 : c->shear_tolerance) - off.over_plus);
  else if (!spelch_case_turns_over (c) && !kept (c, SPELCH_SIDE_FAR, plain_load (c, SPELCH_SIDE_FAR)))
    return EMPTY;
  return range (c->thickness + least, fmin (c->thickness + most, c->depth_most - off.depth_plus));
}

static SpelchWindow
window (const SpelchCase *c, bool exact)
{
  return (SpelchWindow){ first_pass (c, exact), c->through ? last_tip (c, exact) : EMPTY };
}

/* The faces a window is asked for. */
enum
{
  NEAR = 1 << 0,
  FAR = 1 << 1,
};

/* Whether the first pass has to be deeper than the last tip may stand, or than a skin leaves it: a board
 * thinner than the up-shear is cut in one pass, which can't keep both faces then. */
static bool
is_at_odds (const SpelchCase *c, const SpelchWindow *w)
{
  double deepest = c->skin > 0 ? c->thickness - c->skin : w->last_tip.to;
  return c->scoring == NULL && w->first_pass.from > deepest + 1e-9;
}

static bool
is_open (const SpelchCase *c, guint faces)
{
  SpelchWindow w = window (c, false);
  bool near = (faces & NEAR) && w.first_pass.empty, far = (faces & FAR) && c->through && w.last_tip.empty;
  bool both = faces == (NEAR | FAR) && c->through;
  return !near && !far && !(both && is_at_odds (c, &w));
}

/* The same case with the board measured, or zero taken on the bed, or both. */
static bool
opens_with (SpelchCase c, guint faces, bool measured, bool on_bed)
{
  if (on_bed && (c.machine->kind != SPELCH_MACHINE_GANTRY || c.datum == SPELCH_DATUM_BED))
    return false;
  if (on_bed)
    c.datum = SPELCH_DATUM_BED;
  if (measured)
    c.plus = c.minus = c.k->tolerance_measured;
  return is_open (&c, faces);
}

/* Least thickness of a backer under which a window opens; 0 when none does. */
static double
backer_that_opens (SpelchCase c, guint faces)
{
  SpelchUncertain off = spelch_case_uncertain (&c, false);
  double over = c.k->cuts_through + off.over_minus;
  if (spelch_case_turns_over (&c) && (faces & NEAR) && c.scoring == NULL)
    over = fmax (over, near_needs (&c, false) - c.thickness);
  SpelchCut cut = *c.cut;
  cut.backer = spelch_length_mm (over + off.over_plus + c.k->backer_spare);
  c.cut = &cut;
  c.overcut_most = over + off.over_plus;
  c.overcut_free = false;
  return c.through && is_open (&c, faces) ? cut.backer.mm : 0;
}

/* The same for the board once it is measured. */
static double
backer_once_measured (SpelchCase c, guint faces)
{
  c.plus = c.minus = c.k->tolerance_measured;
  return backer_that_opens (c, faces);
}

static bool
reach_is_short (const SpelchCase *c)
{
  SpelchUncertain off = spelch_case_uncertain (c, false);
  double deepest = c->through ? c->thickness + c->k->cuts_through + off.over_minus : c->floor_depth;
  return deepest > c->depth_most - off.depth_plus + 1e-9;
}

static SpelchOpener find_opener (const SpelchCase *c, guint faces);

/* Whether a bit of the same kind, but as long as may be, would do, at least with one of the other changes. */
static bool
opens_longer (SpelchCase c, guint faces)
{
  SpelchBit bit = *c.bit;
  bool slender = c.step_most < c.bit->cutting_length.mm;
  if (!reach_is_short (&c))
    return false;
  bit.cutting_length = spelch_length_mm (LONG_MM);
  c.bit = &bit;
  c.depth_most = LONG_MM;
  if (!slender)
    c.step_most = LONG_MM;
  return find_opener (&c, faces).by != SPELCH_OPENED_BY_OTHER_BIT;
}

static SpelchOpener
find_opener (const SpelchCase *c, guint faces)
{
  if (is_open (c, faces))
    return (SpelchOpener){ SPELCH_OPENED_BY_NOTHING_NEEDED, 0 };
  if (opens_longer (*c, faces))
    return (SpelchOpener){ SPELCH_OPENED_BY_LONGER_BIT, 0 };
  if (opens_with (*c, faces, true, false))
    return (SpelchOpener){ SPELCH_OPENED_BY_MEASURE, 0 };
  if (opens_with (*c, faces, false, true))
    return (SpelchOpener){ SPELCH_OPENED_BY_BED, 0 };
  if (opens_with (*c, faces, true, true))
    return (SpelchOpener){ SPELCH_OPENED_BY_MEASURE_AND_BED, 0 };
  double backer = backer_that_opens (*c, faces), measured = backer_once_measured (*c, faces);
  if (backer <= 0 && measured > 0)
    return (SpelchOpener){ SPELCH_OPENED_BY_MEASURE_AND_BACKER, measured };
  return (SpelchOpener){ backer > 0 ? SPELCH_OPENED_BY_BACKER : SPELCH_OPENED_BY_OTHER_BIT, backer };
}

/* The same inequalities turned about: the up-shear lengths that would serve this board; none when the longest
 * is shorter than the shortest. Where only air is below the board a tip that just cuts through is asked for.
 */
static void
find_up_shear (const SpelchCase *c, SpelchWindows *w)
{
  SpelchUncertain off = spelch_case_uncertain (c, false);
  double around = c->shear_tolerance + c->flutes.overlap / 2;
  double over = c->k->cuts_through + off.over_minus, deepest = fmin (first_most (c, false), c->step_planned);
  if (c->through && c->overcut_free)
    deepest = fmin (deepest, c->thickness + over);
  double near = c->scoring == NULL ? c->near_layer + off.depth_minus + around + c->log.motor.window_mm : 0;
  double longest = deepest - near;
  double shortest = 0;
  bool serves = true;
  if (c->through && !kept (c, SPELCH_SIDE_FAR, SPELCH_LOAD_PULL_OUT))
    {
      shortest = over + off.over_plus + c->far_layer + around + c->log.far.window_mm;
      /* A deeper tip takes a longer up-shear with it: in a board too thin for both faces none serves. */
      serves = longest >= shortest && c->thickness + over - near >= shortest - 1e-9;
    }
  w->needs_up_shear_from = serves && longest > 0 ? shortest : 0;
  w->needs_up_shear_to = serves && longest > 0 ? longest : 0;
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
                      .near = find_opener (c, NEAR),
                      .far = find_opener (c, FAR) };
  SpelchOpener both = find_opener (c, NEAR | FAR);
  w.at_odds = c->through && is_open (c, NEAR) && is_open (c, FAR) && is_at_odds (c, &w.robust);
  w.opened_by = both.by;
  w.opened_mm = both.backer_mm;
  if (spelch_case_turns_over (c) && c->scoring == NULL)
    w.needs_overcut_mm = fmax (near_needs (c, true) - c->thickness, 0);
  find_up_shear (c, &w);
  return w;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/checks.h"

#include "plan/entry.h"
#include "plan/hold.h"
#include "plan/solve.h"

#include <math.h>

#define SLACK            1e-6
#define WIDTH_WITHIN_MM  0.005
#define LENGTH_WITHIN_MM 0.5
#define RPM_WITHIN       0.5

static void
add_stop (SpelchPlan *plan, SpelchStop stop)
{
  if (plan->n_stops < G_N_ELEMENTS (plan->stops))
    plan->stops[plan->n_stops++] = stop;
}

static void
add (SpelchPlan *plan, SpelchStopKind kind, double value, double limit)
{
  add_stop (plan, (SpelchStop){ .kind = kind, .value = value, .limit = limit });
}

static void
check_tool (const SpelchCase *c, SpelchPlan *plan)
{
  const SpelchBit *bit = c->bit;
  double least = fmax (c->k->collet_least, c->k->collet_diameters * bit->shank.mm);
  bool fits = c->machine->n_collets == 0;
  for (guint i = 0; i < c->machine->n_collets; i++)
    fits |= fabs (c->machine->collets[i].mm - bit->shank.mm) < 0.02;

  if (bit->hand == SPELCH_HAND_LEFT)
    add (plan, SPELCH_STOP_HAND, 0, 0);
  if (bit->max_rpm <= 0)
    add (plan, SPELCH_ASK_SPEED_MARK, plan->speed_rpm, 0);
  else if (plan->speed_rpm > bit->max_rpm + SLACK)
    add (plan, SPELCH_STOP_SPEED_MARK, plan->speed_rpm, bit->max_rpm);
  if (!fits)
    add (plan, SPELCH_STOP_COLLET_SIZE, bit->shank.mm, 0);
  if (bit->overall_length.mm <= 0)
    add (plan, SPELCH_ASK_OVERALL, 0, least);
  else if (plan->in_collet_mm < least - SLACK)
    add (plan, SPELCH_STOP_COLLET, plan->in_collet_mm, least);
  if (c->machine->kind != SPELCH_MACHINE_GANTRY && c->diameter >= c->k->hand_feed_mark && !bit->hand_feed)
    add (plan, SPELCH_STOP_HAND_FEED_MARK, c->diameter, c->k->hand_feed_mark);
}

/* A bit that leaves an allowance on the walls needs room for it too. */
static void
check_width (const SpelchCase *c, SpelchPlan *plan)
{
  const SpelchCut *cut = c->cut;
  bool finishes = plan->n_passes > 0 && plan->passes[plan->n_passes - 1].finishing;
  double allowance = finishes ? plan->passes[plan->n_passes - 1].side_allowance_mm : 0;
  double narrow = spelch_cut_width (cut);
  bool closes = spelch_cut_goes_round (cut);
  if (!closes)
    add_stop (plan, (SpelchStop){ .kind = SPELCH_STOP_POCKET_ROUND,
                                  .value = cut->length.mm,
                                  .limit = spelch_cut_pocket_least (cut),
                                  .also = narrow });
  else if (cut->kind == SPELCH_CUT_POCKET)
    narrow = fmin (narrow, spelch_cut_pocket_across (cut));
  double room = narrow - allowance * (cut->kept == SPELCH_WALL_BOTH ? 2 : 1);
  if (!c->single_wall && spelch_cut_width (cut) > 0 && c->diameter > room + WIDTH_WITHIN_MM)
    add (plan, SPELCH_STOP_TOO_WIDE, c->diameter, fmax (room, 0));
  else if (cut->corner_radius.mm > 0 && c->diameter > 2 * cut->corner_radius.mm + WIDTH_WITHIN_MM)
    add (plan, SPELCH_STOP_TOO_WIDE, c->diameter, 2 * cut->corner_radius.mm);
}

/* A finishing pass cuts its whole depth at once, with the cutting length. */
static void
check_depth (const SpelchCase *c, SpelchPlan *plan)
{
  const SpelchPass *last = plan->n_passes > 0 ? &plan->passes[plan->n_passes - 1] : NULL;
  double deepest = last != NULL ? last->tip_mm : plan->through_depth;
  double edges = last != NULL && last->finishing ? c->bit->cutting_length.mm : HUGE_VAL;
  double reach = fmin (c->depth_most, edges), freely = fmin (c->depth_free, edges);
  if (deepest > reach + SLACK)
    add_stop (plan, (SpelchStop){ .kind = SPELCH_STOP_TOO_SHORT,
                                  .value = deepest,
                                  .limit = reach,
                                  .also = deepest <= freely + SLACK ? c->cut->stick_out.mm : 0 });
  if (c->through && !c->overcut_free && plan->overcut > c->overcut_most + SLACK)
    add (plan, SPELCH_STOP_OVERCUT, plan->overcut, c->overcut_most);
  if (c->through && plan->overcut < c->k->cuts_through - SLACK)
    add (plan, SPELCH_STOP_NOT_THROUGH, plan->overcut, c->k->cuts_through);
}

static void
check_entry (const SpelchCase *c, SpelchPlan *plan)
{
  const SpelchEntry *entry = &plan->entry;
  double steepest = spelch_entry_steepest (c);
  bool down_cut = c->bit->kind == SPELCH_BIT_DOWN_CUT;
  bool told = c->bit->end_cutting || c->bit->uncut_centre.mm > 0;
  if (plan->n_passes == 0)
    return;
  if (!spelch_entry_suits (entry->kind, c->machine->kind))
    add (plan, SPELCH_STOP_ENTRY, entry->kind, c->machine->kind);
  if (entry->kind == SPELCH_ENTRY_LOWERED && !c->cut->held.entry_stops)
    add (plan, SPELCH_ASK_STOPS, 0, 0);
  if (entry->kind == SPELCH_ENTRY_HELIX && entry->circle_mm <= 0)
    add (plan, SPELCH_STOP_HELIX, 0, 0);
  if (spelch_entry_is_plunge (entry->kind))
    {
      if (down_cut || !c->bit->end_cutting)
        add (plan, SPELCH_STOP_PLUNGE, c->bit->end_cutting ? 1 : 0, 0);
    }
  else if (entry->angle_deg > 0 && !told)
    add (plan, SPELCH_ASK_END, entry->angle_deg, 0);
  else if (entry->angle_deg > steepest + SLACK)
    add (plan, SPELCH_STOP_RAMP, entry->angle_deg, steepest);
}

/* Only where backing would spare the far face something. */
static void
check_backing (const SpelchCase *c, SpelchPlan *plan)
{
  const SpelchEdge *far = spelch_plan_worst (plan, SPELCH_SIDE_FAR);
  bool on_bed = c->machine->kind == SPELCH_MACHINE_GANTRY && c->cut->backer.mm <= 0;
  bool bare
      = far != NULL && far->load != SPELCH_LOAD_PRESS_IN && spelch_edge_points (far, SPELCH_TERM_SHEAR) > 0;
  if (on_bed && bare && c->machine->spoilboard == SPELCH_SPOILBOARD_UNTOLD)
    add (plan, SPELCH_ASK_SPOILBOARD, 0, 0);
}

static void
check_loads (const SpelchCase *c, SpelchPlan *plan)
{
  double hands = spelch_solve_hands_limit (c), set = c->cut->held.speed_rpm;
  double turns = set > 0 ? CLAMP (set, c->machine->rpm_min, c->machine->rpm_max) : 0;
  if (plan->n_passes == 0 || plan->feed_mm_min <= 0 || fabs (turns - set) > RPM_WITHIN)
    add (plan, SPELCH_STOP_NO_SPEED, set, turns);
  if (plan->stress_share > 1 + SLACK)
    add (plan, SPELCH_STOP_STRESS, plan->stress_mpa, spelch_solve_stress_limit (c));
  if (hands > 0 && plan->sideways_peak_n > hands + SLACK)
    add (plan, SPELCH_STOP_HANDS, plan->sideways_peak_n, hands);
  if (c->cut->held.feed_mm_min > 0 && plan->wall_heat > c->k->heat_burns + SLACK)
    add (plan, SPELCH_STOP_HEAT, plan->wall_heat, c->k->heat_burns);
}

/* At a router table the work is fed by hand, and nothing presses it down, unless that is told. */
static void
check_holding (const SpelchCase *c, SpelchPlan *plan)
{
  SpelchHold method = c->part->holding.method;
  bool off_table = c->machine->kind == SPELCH_MACHINE_TABLE && plan->n_seats > 0 && plan->seats[0].apart;
  bool untold = method == SPELCH_HOLD_UNTOLD;
  if (untold)
    add (plan, SPELCH_ASK_HOLDING, plan->hold_needed_n, 0);
  if (off_table && (untold || method == SPELCH_HOLD_HANDS))
    add_stop (plan, (SpelchStop){ .kind = SPELCH_STOP_PUSHED_OFF,
                                  .value = plan->seats[0].bound_n,
                                  .also = untold ? 1 : 0 });
  if (c->machine->kind != SPELCH_MACHINE_GANTRY || method == SPELCH_HOLD_UNTOLD)
    return;
  if (plan->hold_factor <= 0)
    add (plan, SPELCH_ASK_HOLD_FORCE, plan->hold_needed_n, 0);
  else if (!spelch_hold_suffices (c, plan->hold_factor, plan->hold_factor_worst))
    add_stop (plan, (SpelchStop){ .kind = SPELCH_STOP_HOLDING,
                                  .value = plan->hold_factor,
                                  .limit = c->k->hold_factor,
                                  .also = plan->hold_factor_worst });
  if (plan->hold_factor > 0 && (c->part->length.mm <= 0 || c->part->width.mm <= 0))
    add (plan, SPELCH_ASK_SIZE, 0, 0);
}

/* A whole piece that is cut out, or the middle of an opening that is gone round. */
static bool
comes_free (const SpelchCase *c, const SpelchPlan *plan)
{
  return c->through && (c->cut->kind == SPELCH_CUT_OUTLINE || plan->setting_out.drops_out);
}

/* Whether a piece is so small that hands come too near the bit, as far as its size is told. */
static bool
is_small (const SpelchCase *c)
{
  double length = c->part->length.mm, width = c->part->width.mm;
  double longer = fmax (length, width), shorter = fmin (length, width);
  if (length > 0 && width > 0)
    return longer < c->k->small_length - SLACK || shorter < c->k->small_width - SLACK;
  return (length > 0 && length < c->k->small_length - SLACK)
         || (width > 0 && width < c->k->small_width - SLACK);
}

/* At a router table hands feed it unless something else is told; under a held router it may be clamped. */
static void
check_size (const SpelchCase *c, SpelchPlan *plan)
{
  SpelchMachineKind machine = c->machine->kind;
  bool untold = c->part->holding.method == SPELCH_HOLD_UNTOLD;
  bool by_hands = c->part->holding.method == SPELCH_HOLD_HANDS;
  if (machine == SPELCH_MACHINE_GANTRY || !(untold || by_hands) || !is_small (c))
    return;
  bool stops = by_hands || machine == SPELCH_MACHINE_TABLE;
  add_stop (plan, (SpelchStop){ .kind = stops ? SPELCH_STOP_SMALL : SPELCH_ASK_SMALL,
                                .value = c->part->length.mm,
                                .limit = c->part->width.mm,
                                .also = machine });
}

/* How long a straight cut in the direction of this one can be within the piece; HUGE_VAL where that isn't
 * told. */
static double
longest_within (const SpelchCase *c)
{
  double along = fabs (cos (c->cut->path_deg * M_PI / 180)),
         across = fabs (sin (c->cut->path_deg * M_PI / 180));
  double by_length = c->part->length.mm > 0 && along > SLACK ? c->part->length.mm / along : HUGE_VAL;
  double by_width = c->part->width.mm > 0 && across > SLACK ? c->part->width.mm / across : HUGE_VAL;
  return fmin (by_length, by_width);
}

static void
check_length (const SpelchCase *c, SpelchPlan *plan)
{
  bool straight
      = (c->single_wall || spelch_cut_has_two_walls (c->cut)) && !spelch_cut_every_direction (c->cut);
  double most = longest_within (c);
  if (straight && c->cut->length.mm > most + LENGTH_WITHIN_MM)
    add (plan, SPELCH_ASK_LENGTH, c->cut->length.mm, most);
}

static void
check_tabs (const SpelchCase *c, SpelchPlan *plan)
{
  const SpelchTabHold *tabs = &plan->tabs;
  bool weak = !spelch_hold_suffices (c, tabs->factor, tabs->factor_worst);
  bool clamped = c->machine->kind == SPELCH_MACHINE_GANTRY && c->part->holding.method == SPELCH_HOLD_CLAMPS;
  if (clamped && comes_free (c, plan) && c->cut->tabs.count == 0)
    add (plan, SPELCH_ASK_TABS, plan->setting_out.drops_out, 0);
  if (tabs->alone && tabs->needed_n > 0 && weak)
    add_stop (plan, (SpelchStop){ .kind = SPELCH_STOP_TABS,
                                  .value = tabs->factor,
                                  .limit = tabs->needs_count,
                                  .also = tabs->needs_width_mm });
}

/* Fed by hand, a climb cut pulls the bit along. A full slot is exempt, taking more off one of its walls is
 * not, be it in a finishing pass or in further tracks; along a table's fence these lie at the other wall. */
static void
check_climb (const SpelchCase *c, SpelchPlan *plan)
{
  bool finishes = plan->n_passes > 0 && plan->passes[plan->n_passes - 1].finishing;
  bool widens = plan->setting_out.tracks > 1 && plan->setting_out.round != SPELCH_ROUND_ALONG;
  bool one_wall = c->single_wall || finishes || widens;
  if (c->machine->kind != SPELCH_MACHINE_GANTRY && one_wall && c->cut->kept == SPELCH_WALL_RIGHT)
    add (plan, SPELCH_STOP_CLIMB, 0, 0);
}

/* Neither fence nor pattern leads a slot all round, and what it parts comes free beside the running bit. */
static void
check_freehand (const SpelchCase *c, SpelchPlan *plan)
{
  if (c->machine->kind == SPELCH_MACHINE_TABLE && comes_free (c, plan))
    add (plan, SPELCH_STOP_FREEHAND, plan->setting_out.drops_out, 0);
}

void
spelch_checks_run (const SpelchCase *c, SpelchPlan *plan)
{
  check_freehand (c, plan); /* first: whatever else is mended, it mustn't be cut so */
  check_tool (c, plan);
  check_width (c, plan);
  check_depth (c, plan);
  check_entry (c, plan);
  check_backing (c, plan);
  check_loads (c, plan);
  check_holding (c, plan);
  check_size (c, plan);
  check_length (c, plan);
  check_tabs (c, plan);
  check_climb (c, plan);
  plan->verdict = SPELCH_VERDICT_NO_OBJECTION;
  for (guint i = 0; i < plan->n_stops; i++)
    {
      bool asks = plan->stops[i].kind >= SPELCH_ASK_SPEED_MARK;
      plan->verdict = MAX (plan->verdict, asks ? SPELCH_VERDICT_NOT_CHECKED : SPELCH_VERDICT_DO_NOT_CUT);
    }
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/plan.h"

#include "plan/checks.h"
#include "plan/edges.h"
#include "plan/entry.h"
#include "plan/hold.h"
#include "plan/numbers.h"
#include "plan/passes.h"
#include "plan/stages.h"
#include "plan/travel.h"
#include "plan/windows.h"

#include "mechanics/chip.h"

#include <math.h>
#include <string.h>

/* How many more passes than the fewest are tried, once one can be cut: the time of a cut grows again long
 * before. */
#define EXTRA_STEPS 5

#define N_CODES(name, what, ...)                                                                             \
  static const char *const name##_words[] = { __VA_ARGS__ };                                                 \
  const SpelchCodes name = { what, name##_words, G_N_ELEMENTS (name##_words) }

N_CODES (SPELCH_EVIDENCE_CODES, "evidence", "measured", "memory", "analogy", "geometry", "practice");
N_CODES (SPELCH_SIDE_CODES, "side", "motor", "far");
N_CODES (SPELCH_LOAD_CODES, "shear", "not-cut", "press-in", "neutral", "pull-out");
N_CODES (SPELCH_TERM_CODES, "term", "shear", "backing", "scored", "grain", "exit-corner", "chip", "wear",
         "log");
SPELCH_TABLE_HAS (SPELCH_TERM_CODES_words, SPELCH_N_TERMS);
N_CODES (SPELCH_STOCK_CODES, "stock", "plywood", "figured", "straight", "laminate", "board");
SPELCH_TABLE_HAS (SPELCH_STOCK_CODES_words, SPELCH_N_STOCKS);
N_CODES (SPELCH_OPENED_BY_CODES, "opened_by", "nothing-needed", "measure", "bed", "backer", "other-bit",
         "longer-bit", "measure-and-bed", "measure-and-backer");
N_CODES (SPELCH_SENSE_CODES, "sense", "conventional", "climb", "slot");
N_CODES (SPELCH_LIMIT_CODES, "limit", "chip", "edge", "bending", "stress", "power", "machine", "hands",
         "holding", "room", "heat");
SPELCH_TABLE_HAS (SPELCH_LIMIT_CODES_words, SPELCH_N_LIMITS);
N_CODES (SPELCH_SPEED_BY_CODES, "speed_held_by", "hand", "mark", "machine", "heat", "gain");
N_CODES (SPELCH_PAIR_CODES, "pair", "board-bed", "board-table", "base-board", "board-bench");
N_CODES (SPELCH_STOP_CODES, "stop", "speed-mark", "hand", "stress", "collet", "collet-size", "too-wide",
         "pocket-length", "too-short", "overcut", "not-through", "plunge", "ramp", "helix", "entry",
         "hand-feed-mark", "hands", "no-speed", "climb-by-hand", "freehand", "pushed-off", "holding", "tabs",
         "heat", "small-piece", "ask-speed-mark", "ask-holding", "ask-hold-force", "ask-overall-length",
         "ask-spoilboard", "ask-stop-blocks", "ask-end", "ask-size", "ask-tabs", "ask-small-piece",
         "ask-length");
SPELCH_TABLE_HAS (SPELCH_STOP_CODES_words, SPELCH_N_STOPS);
N_CODES (SPELCH_GIVES_CODES, "gives_way_by", "sliding", "lifting", "tilting");
N_CODES (SPELCH_VERDICT_CODES, "verdict", "no_objection", "not_checked", "do_not_cut");

#define AT_HAND 4 /* loads of one trial for which there is room at once */

/* The loads of a trial's passes, each reckoned once. Most passes are alike, so the few that aren't lie on the
 * stack; room for all would be a megabyte, and fetching that for every plan takes longer than the plan. */
typedef struct
{
  SpelchLoads at_hand[AT_HAND];
  SpelchLoads *more[SPELCH_MAX_PASSES - AT_HAND]; /* NULL until needed */
  const SpelchLoads *of[SPELCH_MAX_PASSES];
} LoadSet;

static void
load_set_init (LoadSet *set)
{
  memset (set->more, 0, sizeof set->more); /* the rest is written before it is read */
}

static void
load_set_clear (LoadSet *set)
{
  for (guint i = 0; i < G_N_ELEMENTS (set->more) && set->more[i] != NULL; i++)
    g_free (set->more[i]);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (LoadSet, load_set_clear)

/* A way of cutting under trial. */
typedef struct
{
  guint n;
  SpelchPass passes[SPELCH_MAX_PASSES];
  SpelchEntry entry;
  double stick_out;
  double chip_limit;
  LoadSet *loads;
  SpelchSolution solution;
  SpelchEdge edges[SPELCH_MAX_EDGES];
  double time;
} Trial;

static double
stick_out_for (const SpelchCase *c, double deepest)
{
  double needed = deepest + c->machine->base_thickness.mm + c->k->clearance_base;
  if (c->cut->stick_out.mm > 0)
    return c->cut->stick_out.mm;
  return fmax (needed, c->bit->cutting_length.mm);
}

static SpelchLoads *
room_for (LoadSet *set, guint i)
{
  if (i < AT_HAND)
    return &set->at_hand[i];
  if (set->more[i - AT_HAND] == NULL)
    set->more[i - AT_HAND] = g_new (SpelchLoads, 1);
  return set->more[i - AT_HAND];
}

static void
find_loads (const SpelchCase *c, const Trial *t)
{
  LoadSet *set = t->loads;
  guint used = 0;
  for (guint i = 0; i < t->n; i++)
    {
      set->of[i] = NULL;
      for (guint j = 0; j < i && set->of[i] == NULL; j++)
        if (spelch_loads_alike (c, &t->passes[i], &t->passes[j]))
          set->of[i] = set->of[j];
      if (set->of[i] == NULL)
        {
          SpelchLoads *loads = room_for (set, used++);
          spelch_loads_find (c, &t->passes[i], t->stick_out, loads);
          set->of[i] = loads;
        }
    }
}

static int
seen_grade_at (const SpelchCase *c, const Trial *t, double chip)
{
  SpelchEdge edges[SPELCH_MAX_EDGES];
  spelch_edges_grade (c, t->passes, t->n, &t->entry, chip, false, edges);
  return spelch_edges_worst (edges, true);
}

/* The chip above which a seen edge would drop out of what is accepted or, where that can't be had, fall
 * behind the best it can be. */
static double
chip_limit_of (const SpelchCase *c, const Trial *t)
{
  double one = c->k->chip_points_one, two = c->k->chip_points_two;
  int wanted = MAX (c->part->accepted_seen, seen_grade_at (c, t, 0));
  if (seen_grade_at (c, t, two * 2) <= wanted)
    return HUGE_VAL;
  return seen_grade_at (c, t, one) <= wanted ? two : one * (1 - 1e-6);
}

/* What can be told of a trial before its forces. */
static void
set_up (const SpelchCase *c, Trial *t)
{
  t->entry = spelch_entry_find (c, &t->passes[0]);
  t->stick_out = stick_out_for (c, t->passes[t->n - 1].tip_mm);
  t->chip_limit = chip_limit_of (c, t);
}

static void
try_out (const SpelchCase *c, Trial *t)
{
  find_loads (c, t);
  t->solution = spelch_solve (c, t->loads->of, t->n, t->chip_limit);
  const SpelchLoads *last = t->loads->of[t->n - 1];
  double f = t->solution.feed_per_tooth, chip = spelch_chip_max (f, c->diameter, last->engaged);
  bool raised = c->machine->kind != SPELCH_MACHINE_TABLE && f * last->moving.axial > spelch_hold_press (c);
  spelch_edges_grade (c, t->passes, t->n, &t->entry, chip, raised, t->edges);
  t->time = spelch_travel_time (c, t->passes, t->n, &t->entry, t->solution.feed_mm_min);
}

static bool
can_be_cut (const SpelchCase *c, const Trial *t)
{
  return t->solution.feed_mm_min > 0 && t->passes[t->n - 1].tip_mm <= c->depth_most + 1e-6;
}

/* Thinner passes may hold where deeper ones don't. */
static bool
is_held_down (const Trial *t)
{
  return t->solution.share[SPELCH_LIMIT_HOLDING] <= 1 + 1e-6;
}

static bool
bends_too_much (const Trial *t)
{
  return t->solution.share[SPELCH_LIMIT_BENDING] > 1 + 1e-6;
}

/* How far a trial goes beyond what bit, machine and hands can bear at a feed that is held, and so can't give
 * way; 1 where nothing is exceeded. Heat asks for more feed, not less, so passes don't mend it. */
static double
excess (const SpelchCase *c, const Trial *t)
{
  double most = 1;
  for (int i = 0; c->cut->held.feed_mm_min > 0 && i < SPELCH_N_LIMITS; i++)
    if (i != SPELCH_LIMIT_HEAT && i != SPELCH_LIMIT_HOLDING)
      most = fmax (most, t->solution.share[i]);
  return most;
}

/* Above 0: @a goes further beyond the limits of bit, machine or hands than @b. */
static int
strains_more (const SpelchCase *c, const Trial *a, const Trial *b)
{
  double x = excess (c, a), y = excess (c, b);
  if (fabs (x - y) > 1e-6)
    return x > y ? 1 : -1;
  return bends_too_much (a) - bends_too_much (b);
}

/* Accepted grades first, then what a held feed asks too much of, then bending, then least time; where grades
 * miss, the best seen, then hidden, then time. An edge that is spoilt either way isn't worth a limit. */
static bool
is_better (const SpelchCase *c, const Trial *a, const Trial *b)
{
  int accepted[2] = { c->part->accepted_seen, c->part->accepted_hidden };
  if (can_be_cut (c, a) != can_be_cut (c, b))
    return can_be_cut (c, a);
  if (is_held_down (a) != is_held_down (b))
    return is_held_down (a);
  int strain = strains_more (c, a, b);
  for (int i = 0; i < 2; i++)
    {
      int x = MAX (spelch_edges_worst (a->edges, i == 0), accepted[i]);
      int y = MAX (spelch_edges_worst (b->edges, i == 0), accepted[i]);
      if (x != y)
        return MIN (x, y) > accepted[i] && strain != 0 ? strain < 0 : x < y;
    }
  if (strain != 0)
    return strain < 0;
  return a->time < b->time - 1e-9;
}

/* Whether a trial that was only set up can't be better than @best, however little force it should take: not
 * with the thinnest chip and the quickest feed. Spares the reckoning of its forces. */
static bool
cannot_win (const SpelchCase *c, Trial *t, const Trial *best)
{
  if (!can_be_cut (c, best) || bends_too_much (best) || excess (c, best) > 1 + 1e-6)
    return false;
  spelch_edges_grade (c, t->passes, t->n, &t->entry, 0, false, t->edges);
  int accepted[2] = { c->part->accepted_seen, c->part->accepted_hidden };
  for (int i = 0; i < 2; i++)
    {
      int x = MAX (spelch_edges_worst (t->edges, i == 0), accepted[i]);
      int y = MAX (spelch_edges_worst (best->edges, i == 0), accepted[i]);
      if (x != y)
        return x > y;
    }
  double limit = t->passes[t->n - 1].finishing ? HUGE_VAL : t->chip_limit;
  double feed = spelch_solve_quickest (c, limit);
  return spelch_travel_time (c, t->passes, t->n, &t->entry, feed) >= best->time;
}

/* Tries the ways of dividing the depth, @only those into that many passes unless it is 0; false when none can
 * be made. The best keeps one set of loads while the next is tried in the other. */
static bool
find_best (const SpelchCase *c, const SpelchWindows *windows, double final_depth, guint only, LoadSet *one,
           LoadSet *other, Trial *best)
{
  double height = final_depth - c->start;
  guint fewest = (guint)fmax (1, ceil (height / fmax (c->step_planned, 0.1) - 1e-9));
  /* Whoever asks for steps gets two at least. */
  if (c->cut->held.plan_held && c->pass_plan == SPELCH_PASS_PLAN_STEPPED)
    fewest = MAX (fewest, 2);
  bool found = false, feasible = false, held = spelch_passes_held (c);
  bool reaches = final_depth <= c->depth_most + 1e-6;
  for (guint steps = fewest;
       steps < SPELCH_MAX_PASSES && (steps <= fewest + EXTRA_STEPS || (reaches && !feasible)); steps++)
    {
      Trial t = { .loads = best->loads == one ? other : one };
      t.n = spelch_passes_divide (c, windows, final_depth, steps, t.passes);
      if (t.n == 0 || (only > 0 && t.n != only))
        continue;
      set_up (c, &t);
      if (found && cannot_win (c, &t, best))
        continue;
      try_out (c, &t);
      if (!found || is_better (c, &t, best))
        *best = t;
      found = true;
      feasible |= can_be_cut (c, &t);
      if (held) /* they are all there are, whatever comes of them */
        break;
    }
  return found;
}

#define OVER 1.005 /* of a limit: by half a per cent, so that it isn't 100 % when shown */

static bool
asks_too_much (const Trial *t)
{
  for (int i = 0; i < SPELCH_N_LIMITS; i++)
    if (i != SPELCH_LIMIT_HEAT && t->solution.share[i] > OVER)
      return true;
  return false;
}

/* A pass more within the deepest step of @best; false where there is no room for one. */
static bool
add_pass (const Trial *best, Trial *t, guint *where)
{
  *t = *best;
  *where = 0;
  for (guint i = 1; i < t->n; i++)
    if (!t->passes[i].finishing
        && t->passes[i].tip_mm - t->passes[i].from_mm
               > t->passes[*where].tip_mm - t->passes[*where].from_mm + 1e-9)
      *where = i;
  SpelchPass *deep = &t->passes[*where];
  double middle = round ((deep->from_mm + deep->tip_mm) / 2 * 10) / 10;
  if (t->n >= SPELCH_MAX_PASSES || middle <= deep->from_mm + 1e-6 || middle >= deep->tip_mm - 1e-6)
    return false;
  memmove (deep + 1, deep, (t->n - *where) * sizeof *deep);
  t->n++;
  deep->tip_mm = deep[1].from_mm = middle;
  deep->held = false;
  return true;
}

/* Where passes set by hand ask too much, the depth of a further one with which nothing is asked too much, and
 * no edge comes out worse; 0 where there is none. Passes that are recommended are as many as serve. */
static double
further_pass (const SpelchCase *c, const Trial *best, LoadSet *spare)
{
  Trial t;
  guint where;
  if (!spelch_passes_held (c) || !asks_too_much (best) || !add_pass (best, &t, &where))
    return 0;
  t.loads = spare;
  set_up (c, &t);
  try_out (c, &t);
  bool within = can_be_cut (c, &t);
  for (int i = 0; i < SPELCH_N_LIMITS; i++)
    within &= t.solution.share[i] <= 1 + 1e-6;
  for (int seen = 0; seen < 2; seen++)
    within &= spelch_edges_worst (t.edges, seen == 1) <= spelch_edges_worst (best->edges, seen == 1);
  return within ? t.passes[where].tip_mm : 0;
}

static void
describe_question (const SpelchCase *c, SpelchPlan *plan)
{
  plan->near = c->cut->way_up;
  plan->thickness = c->thickness;
  plan->near_layer = c->near_layer;
  plan->far_layer = c->far_layer;
  plan->near_facing = spelch_case_facing (c, SPELCH_SIDE_MOTOR);
  plan->far_facing = spelch_case_facing (c, SPELCH_SIDE_FAR);
  plan->near_is_veneer = c->board.layers[0].veneer;
  plan->far_is_veneer = c->board.layers[c->board.n_layers - 1].veneer;
  plan->machine = c->machine->kind;
  plan->bit_kind = c->bit->kind;
  plan->through = c->through;
  plan->through_depth = c->floor_depth;
  plan->flutes = c->flutes;
  plan->blunting = c->blunting;
  plan->log_motor = c->log.motor;
  plan->log_far = c->log.far;
  plan->force_factor = c->force_factor;
  plan->force_readings = c->force_readings;
  plan->overcut_most = c->overcut_most;
  plan->depth_most = c->depth_most;
  plan->step_most = c->step_most;
  plan->step_by_hand = c->step_by_hand < HUGE_VAL ? c->step_by_hand : 0;
  plan->sense = !c->single_wall ? SPELCH_SENSE_SLOT
                : c->lone_climb ? SPELCH_SENSE_CLIMB
                                : SPELCH_SENSE_CONVENTIONAL;
}

static void
take (const SpelchCase *c, const Trial *t, SpelchPlan *plan)
{
  plan->n_passes = t->n;
  memcpy (plan->passes, t->passes, sizeof plan->passes);
  plan->skin_mm = c->skin;
  plan->pass_plan = c->pass_plan == SPELCH_PASS_PLAN_STEPPED && t->n == 1 ? SPELCH_PASS_PLAN_FULL
                    : c->pass_plan == SPELCH_PASS_PLAN_FULL && t->n > 1   ? SPELCH_PASS_PLAN_STEPPED
                                                                          : c->pass_plan;
  plan->entry = t->entry;
  plan->n_edges = SPELCH_MAX_EDGES;
  memcpy (plan->edges, t->edges, sizeof plan->edges);
  plan->stick_out_mm = t->stick_out;
  if (c->bit->overall_length.mm > 0)
    plan->in_collet_mm = fmax (c->bit->overall_length.mm - t->stick_out, 0);
  spelch_numbers_fill (c, t->loads->of, &t->solution, plan);
  for (guint i = 0; i < t->n; i++)
    {
      plan->passes[i].speed_rpm = plan->speed_rpm;
      plan->passes[i].feed_mm_min = plan->feed_mm_min;
      plan->passes[i].plunge_feed_mm_min = plan->plunge_feed_mm_min;
    }
}

/* How far the bit goes straight down with its chips around it: by hand, and in a hole as wide as the bit. */
static double
straight_down (const SpelchCase *c, const SpelchPlan *plan)
{
  bool drills = c->cut->kind == SPELCH_CUT_HOLE && c->tracks == 1;
  if (plan->n_passes == 0 || !(drills || plan->entry.kind == SPELCH_ENTRY_STAGED))
    return 0;
  return plan->passes[drills ? plan->n_passes - 1 : 0].tip_mm;
}

/* What one bit does of the cut: all of it, or what is left by a scoring pass. */
static void
make_stage (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
            const SpelchBit *bit, const SpelchPlan *scoring, guint only, SpelchPlan *plan)
{
  SpelchCase c;
  Trial best = { 0 };
  g_auto (LoadSet) one, other;
  load_set_init (&one);
  load_set_init (&other);
  memset (plan, 0, sizeof *plan);
  spelch_case_prepare (&c, constants, part, cut, bit);
  if (scoring != NULL)
    spelch_case_score (&c, scoring);
  describe_question (&c, plan);
  plan->windows = spelch_windows_find (&c);
  plan->overcut = spelch_passes_overcut (&c, &plan->windows);
  if (find_best (&c, &plan->windows, c.floor_depth + plan->overcut, only, &one, &other, &best))
    {
      take (&c, &best, plan);
      plan->further_pass_mm = further_pass (&c, &best, best.loads == &one ? &other : &one);
    }
  plan->setting_out = spelch_setting_out_find (constants, part, cut, bit, straight_down (&c, plan));
  spelch_checks_run (&c, plan);
}

void
spelch_plan_make_two (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                      const SpelchBit *bit, const SpelchBit *scorer, SpelchPlan *plan)
{
  SpelchCut groove = spelch_stages_groove (constants, part, cut, bit, scorer);
  SpelchPlan scoring;
  make_stage (constants, part, &groove, scorer, NULL, 0, &scoring);
  make_stage (constants, part, cut, bit, &scoring, 0, plan);
  spelch_stages_join (&scoring, scorer, plan);
}

void
spelch_plan_make (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                  const SpelchBit *bit, SpelchPlan *plan)
{
  bool scored = spelch_held_plans (&cut->held, SPELCH_PASS_PLAN_SCORED);
  int scorer = scored ? spelch_part_find_bit (part, cut->held.score_bit) : -1;
  if (scorer >= 0)
    spelch_plan_make_two (constants, part, cut, bit, &part->bits[scorer], plan);
  else
    make_stage (constants, part, cut, bit, NULL, 0, plan);
}

bool
spelch_plan_make_in (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                     const SpelchBit *bit, guint n_passes, SpelchPlan *plan)
{
  make_stage (constants, part, cut, bit, NULL, n_passes, plan);
  return plan->n_passes > 0;
}

const SpelchEdge *
spelch_plan_worst (const SpelchPlan *plan, SpelchSide side)
{
  const SpelchEdge *worst = NULL;
  for (guint i = 0; i < plan->n_edges; i++)
    {
      const SpelchEdge *edge = &plan->edges[i];
      if (edge->side == side && edge->stays && edge->grade > 0
          && (worst == NULL || edge->grade > worst->grade))
        worst = edge;
    }
  return worst;
}

bool
spelch_plan_is_accepted (const SpelchPlan *plan, const SpelchPart *part, SpelchSide side)
{
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  return edge == NULL || edge->grade <= (edge->seen ? part->accepted_seen : part->accepted_hidden);
}

bool
spelch_plan_sure (const SpelchPlan *plan, SpelchSide side)
{
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  if (edge == NULL || plan->n_passes == 0)
    return true;
  const SpelchRange *near = &plan->windows.robust.first_pass, *far = &plan->windows.robust.last_tip;
  double last = plan->passes[plan->n_passes - 1].tip_mm;
  /* How deep the first pass may go is a matter of reach and bed, not of its face. */
  if (side == SPELCH_SIDE_MOTOR)
    return !near->empty && (edge->on_finishing ? last : plan->passes[0].tip_mm) >= near->from - 1e-6;
  return !far->empty && last >= far->from - 1e-6 && last <= far->to + 1e-6;
}

bool
spelch_plan_machine_gives (const SpelchPlan *plan)
{
  return plan->deflection_machine_mm > plan->deflection_mm / 2;
}

SpelchFacing
spelch_plan_facing (const SpelchPlan *plan, SpelchSide side)
{
  return side == SPELCH_SIDE_MOTOR ? plan->near_facing : plan->far_facing;
}

bool
spelch_plan_is_laminate (const SpelchPlan *plan, SpelchSide side)
{
  return spelch_plan_facing (plan, side) == SPELCH_FACING_LAMINATE;
}

int
spelch_edge_points (const SpelchEdge *edge, SpelchTermKind kind)
{
  for (guint i = 0; i < edge->n_terms; i++)
    if (edge->terms[i].kind == kind)
      return edge->terms[i].points;
  return 0;
}

const SpelchLimit *
spelch_plan_limit (const SpelchPlan *plan, SpelchLimitKind kind)
{
  for (guint i = 0; i < plan->n_limits; i++)
    if (plan->limits[i].kind == kind)
      return &plan->limits[i];
  return NULL;
}

const SpelchLimit *
spelch_plan_binding (const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_limits; i++)
    if (plan->limits[i].binding)
      return &plan->limits[i];
  return NULL;
}

bool
spelch_plan_has_stop (const SpelchPlan *plan, SpelchStopKind kind)
{
  for (guint i = 0; i < plan->n_stops; i++)
    if (plan->stops[i].kind == kind)
      return true;
  return false;
}

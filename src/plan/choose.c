/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/choose.h"

#include "plan/edges.h"
#include "plan/reasons.h"

#include <math.h>
#include <string.h>

/* What the order goes by, beside the choices themselves. */
typedef struct
{
  const SpelchConstants *constants;
  const SpelchBit *bits;
} Order;

/* How many bits are tried with a scoring pass, and how many to score for each. */
#define SCORED_MOST 8

/* A cut whose bits are being ranked. */
typedef struct
{
  const SpelchConstants *constants;
  const SpelchPart *part;
  const SpelchCut *cut;
  const SpelchBit *bits;
  guint n_bits;
  GPtrArray *ranking;
} Ranking;

static int
by_number (double a, double b)
{
  return (a > b) - (a < b);
}

double
spelch_choose_time (const SpelchConstants *constants, const SpelchChoice *choice)
{
  return choice->plan.time_s + (choice->scorer >= 0 ? constants->bit_change : 0);
}

/* Times closer than a tenth of a second are a tie. */
static double
shown_time (const Order *order, const SpelchChoice *choice)
{
  return round (spelch_choose_time (order->constants, choice) * 10);
}

static bool
may_not (const SpelchChoice *choice)
{
  return choice->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT;
}

static bool
bends_too_much (const SpelchChoice *choice)
{
  return choice->plan.deflection_mm > choice->plan.deflection_limit_mm + 1e-6;
}

/* Whether the machine can't take the bit at all: of bits that may not be used the worse one to look at, as
 * nothing about the cut mends it. */
static bool
cannot_be_clamped (const SpelchChoice *choice)
{
  return spelch_plan_has_stop (&choice->plan, SPELCH_STOP_COLLET_SIZE)
         || spelch_plan_has_stop (&choice->plan, SPELCH_STOP_HAND);
}

static int
by_grades (const SpelchChoice *a, const SpelchChoice *b)
{
  if (a->meets || b->meets)
    return b->meets - a->meets;
  return a->seen != b->seen ? a->seen - b->seen : a->hidden - b->hidden;
}

/* What counts before time. */
static int
by_merit (const SpelchChoice *a, const SpelchChoice *b)
{
  int by = may_not (a) - may_not (b);
  if (by == 0)
    by = cannot_be_clamped (a) - cannot_be_clamped (b);
  if (by == 0)
    by = by_grades (a, b);
  return by != 0 ? by : bends_too_much (a) - bends_too_much (b);
}

static int
by_preference (gconstpointer x, gconstpointer y, gpointer data)
{
  const SpelchChoice *a = *(SpelchChoice *const *)x, *b = *(SpelchChoice *const *)y;
  const Order *order = data;
  int by = by_merit (a, b);
  if (by == 0)
    by = by_number (shown_time (order, a), shown_time (order, b));
  if (by == 0)
    by = by_number (a->plan.edge_path_m, b->plan.edge_path_m);
  if (by == 0)
    by = strcmp (order->bits[a->bit].id, order->bits[b->bit].id);
  if (by == 0)
    by = (int)a->way_up - (int)b->way_up;
  return by != 0 ? by : (a->scorer + (int)a->pass_plan * 10000) - (b->scorer + (int)b->pass_plan * 10000);
}

SpelchCut
spelch_choose_cut (const SpelchCut *cut, const SpelchBit *bit, SpelchFace way_up)
{
  SpelchCut as_planned = *cut;
  as_planned.way_up = way_up;
  if (strcmp (cut->bit, bit->id) == 0)
    return as_planned;
  as_planned.held = (SpelchHeld){ .entry_held = cut->held.entry_held,
                                  .entry = cut->held.entry,
                                  .entry_on_line = cut->held.entry_on_line,
                                  .entry_deg = cut->held.entry_deg };
  return as_planned;
}

SpelchCut
spelch_choose_chosen (const SpelchCut *cut, const SpelchBit *bits, const SpelchChoice *choice)
{
  SpelchCut chosen = spelch_choose_cut (cut, &bits[choice->bit], choice->way_up);
  if (!choice->pinned)
    return chosen;
  chosen.held.plan_held = true;
  chosen.held.plan = choice->pass_plan;
  if (choice->scorer >= 0)
    g_strlcpy (chosen.held.score_bit, bits[choice->scorer].id, sizeof chosen.held.score_bit);
  return chosen;
}

/* Plans a choice whose bit, way up and pass plan are set, and grades it. */
static void
plan_choice (const Ranking *r, SpelchChoice *choice)
{
  SpelchCut cut = spelch_choose_chosen (r->cut, r->bits, choice);
  const SpelchBit *bit = &r->bits[choice->bit];
  if (choice->scorer >= 0)
    spelch_plan_make_two (r->constants, r->part, &cut, bit, &r->bits[choice->scorer], &choice->plan);
  else
    spelch_plan_make (r->constants, r->part, &cut, bit, &choice->plan);
  choice->n_reasons = 0;
  choice->seen = spelch_edges_worst (choice->plan.edges, true);
  choice->hidden = spelch_edges_worst (choice->plan.edges, false);
  choice->meets = choice->seen <= r->part->accepted_seen && choice->hidden <= r->part->accepted_hidden;
}

/* Keeps @choice when it is better than @plain in more than time. */
static void
keep_if_better (Ranking *r, const SpelchChoice *plain, const SpelchChoice *choice)
{
  if (!may_not (choice) && by_merit (choice, plain) < 0)
    g_ptr_array_add (r->ranking, g_memdup2 (choice, sizeof *choice));
}

/* A bit of one hand meets every face alike at any depth, so another way of dividing it changes no grade. */
static bool
has_both_hands (const SpelchFlutes *flutes)
{
  return flutes->turn_over > 0 && flutes->turn_over < flutes->length
         && flutes->helix >= SPELCH_NEUTRAL_HELIX_RAD;
}

/* Whether every reason not to cut is one that a thinner last pass may mend. */
static bool
only_tabs_stop (const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_stops; i++)
    if (plan->stops[i].kind < SPELCH_ASK_SPEED_MARK && plan->stops[i].kind != SPELCH_STOP_TABS)
      return false;
  return true;
}

/* Whether a pass of full depth is one that hands can follow, where they feed. */
static bool
may_finish (const SpelchPlan *plan)
{
  return plan->step_by_hand <= 0 || plan->passes[plan->n_passes - 1].tip_mm <= plan->step_by_hand + 1e-6;
}

/* The pass plans with one bit beside the plain one, where that leaves something to be desired. */
static void
consider_pass_plans (Ranking *r, const SpelchChoice *plain)
{
  const SpelchPlan *plan = &plain->plan;
  bool weak = spelch_plan_has_stop (plan, SPELCH_STOP_TABS), both = has_both_hands (&plan->flutes);
  bool good = plain->meets && !may_not (plain);
  if (plain->pinned || good || !(both || weak) || !only_tabs_stop (plan) || plan->n_passes == 0)
    return;
  const SpelchPassPlan plans[] = { SPELCH_PASS_PLAN_FINISHED, SPELCH_PASS_PLAN_SKIN };
  for (guint i = 0; i < G_N_ELEMENTS (plans); i++)
    {
      SpelchChoice choice = *plain;
      bool applies
          = plans[i] == SPELCH_PASS_PLAN_FINISHED ? both && !weak && may_finish (plan) : r->cut->through;
      choice.pinned = true;
      choice.pass_plan = plans[i];
      if (!applies)
        continue;
      plan_choice (r, &choice);
      keep_if_better (r, plain, &choice);
    }
}

static void
consider (Ranking *r, guint bit, SpelchFace way_up)
{
  SpelchChoice *choice = g_new (SpelchChoice, 1);
  choice->bit = bit;
  choice->scorer = -1;
  choice->way_up = way_up;
  choice->pinned = false;
  plan_choice (r, choice);
  choice->pass_plan = choice->plan.pass_plan;
  g_ptr_array_add (r->ranking, choice);
}

/* ---- Scoring with a second bit ---- */

/* A choice as it would be were its motor-side face severed cleanly before. */
typedef struct
{
  const SpelchChoice *plain;
  int seen, hidden;
} Scorable;

/* Worst grade of the far face among the walls that stay, when it is seen, or when it isn't; 1 without. */
static int
far_grade (const SpelchPlan *plan, bool seen)
{
  int worst = 1;
  for (guint i = 2; i < SPELCH_MAX_EDGES; i++)
    if (plan->edges[i].stays && plan->edges[i].seen == seen)
      worst = MAX (worst, plan->edges[i].grade);
  return worst;
}

/* Whether scoring could make the motor-side face better. */
static bool
is_scorable (const Ranking *r, const SpelchChoice *choice)
{
  const SpelchEdge *edge = spelch_plan_worst (&choice->plan, SPELCH_SIDE_MOTOR);
  if (may_not (choice) || choice->pinned || edge == NULL)
    return false;
  int accepted = edge->seen ? r->part->accepted_seen : r->part->accepted_hidden;
  return edge->grade > accepted && spelch_edge_points (edge, SPELCH_TERM_SHEAR) > 0;
}

static int
by_promise (gconstpointer x, gconstpointer y, gpointer data)
{
  const Scorable *a = x, *b = y;
  const Order *order = data;
  int by = a->seen != b->seen ? a->seen - b->seen : a->hidden - b->hidden;
  if (by == 0)
    by = bends_too_much (a->plain) - bends_too_much (b->plain);
  if (by == 0)
    by = by_number (a->plain->plan.time_s, b->plain->plan.time_s);
  if (by == 0)
    by = strcmp (order->bits[a->plain->bit].id, order->bits[b->plain->bit].id);
  return by != 0 ? by : (int)a->plain->way_up - (int)b->plain->way_up;
}

static GArray *
find_scorable (const Ranking *r, Order *order)
{
  GArray *found = g_array_new (FALSE, FALSE, sizeof (Scorable));
  for (guint i = 0; i < r->ranking->len; i++)
    {
      const SpelchChoice *choice = r->ranking->pdata[i];
      Scorable one = { choice, MAX (far_grade (&choice->plan, true), r->part->accepted_seen),
                       MAX (far_grade (&choice->plan, false), r->part->accepted_hidden) };
      if (is_scorable (r, choice))
        g_array_append_val (found, one);
    }
  g_array_sort_with_data (found, by_promise, order);
  return found;
}

/* A bit that presses the face in as deep as it goes. */
static bool
can_score (const SpelchBit *bit)
{
  SpelchFlutes flutes = spelch_plan_flutes (bit);
  return flutes.turn_over <= 0 && flutes.helix >= SPELCH_NEUTRAL_HELIX_RAD;
}

/* How far from @bit's diameter; a bit alike in that cuts the same kerf. */
static double
unlike (const Ranking *r, guint scorer, guint bit)
{
  return fabs (spelch_bit_diameter_now (&r->bits[scorer]) - spelch_bit_diameter_now (&r->bits[bit]));
}

/* The bits most alike in diameter that can score for @bit, in order; their number. */
static guint
find_scorers (const Ranking *r, guint bit, guint scorers[SCORED_MOST])
{
  guint n = 0;
  for (guint i = 0; i < r->n_bits; i++)
    {
      if (i == bit || !can_score (&r->bits[i]))
        continue;
      guint place = n;
      while (place > 0 && unlike (r, i, bit) < unlike (r, scorers[place - 1], bit))
        place--;
      if (place == SCORED_MOST)
        continue;
      n = MIN (n + 1, SCORED_MOST);
      memmove (&scorers[place + 1], &scorers[place], (n - place - 1) * sizeof *scorers);
      scorers[place] = i;
    }
  return n;
}

/* Scoring for one bit: with whichever does it best. */
static void
consider_scorers (Ranking *r, const SpelchChoice *plain, Order *order)
{
  guint scorers[SCORED_MOST], n = find_scorers (r, plain->bit, scorers);
  SpelchChoice tried[2];
  SpelchChoice *best = NULL, *next = &tried[0];
  for (guint i = 0; i < n; i++)
    {
      *next = *plain;
      next->scorer = (int)scorers[i];
      next->pinned = true;
      next->pass_plan = SPELCH_PASS_PLAN_SCORED;
      plan_choice (r, next);
      if (best != NULL && by_preference (&next, &best, order) >= 0)
        continue;
      best = next;
      next = best == &tried[0] ? &tried[1] : &tried[0];
    }
  if (best != NULL)
    keep_if_better (r, plain, best);
}

static void
consider_scoring (Ranking *r, Order *order)
{
  g_autoptr (GArray) scorable = find_scorable (r, order);
  for (guint i = 0; i < scorable->len && i < SCORED_MOST; i++)
    consider_scorers (r, g_array_index (scorable, Scorable, i).plain, order);
}

/* Time is compared with the first of those that are as good in every other way: the order has put the
 * quickest there. */
static void
find_reasons (const SpelchConstants *constants, const SpelchPart *part, GPtrArray *ranking)
{
  double quickest = 0;
  const SpelchChoice *first = NULL;
  for (guint i = 0; i < ranking->len; i++)
    {
      SpelchChoice *choice = ranking->pdata[i];
      bool as_good = first != NULL && may_not (first) == may_not (choice) && by_grades (first, choice) == 0
                     && bends_too_much (first) == bends_too_much (choice);
      if (!as_good)
        {
          first = choice;
          quickest = spelch_choose_time (constants, choice);
        }
      spelch_reasons_find (constants, part, quickest, choice);
    }
}

GPtrArray *
spelch_choose_rank (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                    const SpelchBit *bits, guint n_bits)
{
  Ranking r = { constants, part, cut, bits, n_bits, g_ptr_array_new_with_free_func (g_free) };
  Order order = { constants, bits };
  for (guint i = 0; i < n_bits; i++)
    {
      consider (&r, i, cut->way_up);
      if (cut->through)
        consider (&r, i, spelch_face_other (cut->way_up));
    }
  guint plain = r.ranking->len;
  for (guint i = 0; i < plain; i++)
    consider_pass_plans (&r, r.ranking->pdata[i]);
  consider_scoring (&r, &order);
  g_ptr_array_sort_with_data (r.ranking, by_preference, &order);
  find_reasons (constants, part, r.ranking);
  return r.ranking;
}

const SpelchChoice *
spelch_choose_best (const GPtrArray *ranking)
{
  const SpelchChoice *first = ranking->len > 0 ? ranking->pdata[0] : NULL;
  return first != NULL && !may_not (first) ? first : NULL;
}

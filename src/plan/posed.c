/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/posed.h"

#include "plan/edges.h"
#include "plan/posed-private.h"

#include <math.h>
#include <string.h>

/* A depth that is shown to a tenth counts as what it was rounded from. */
#define DEPTH_WITHIN_MM 0.006

/* A limit used so much less than the feed is of the feed that reaches it isn't reached there: no quicker one
 * was looked for. */
#define HARDLY_USED 0.5

/* ---- What the model says of a part ---- */

void
spelch_posed_plan (const SpelchConstants *constants, const SpelchPart *part, int way_up, SpelchPlan *plan)
{
  SpelchCut cut = part->cuts[0];
  int bit = spelch_part_find_bit (part, cut.bit);
  memset (plan, 0, sizeof *plan);
  if (way_up >= 0)
    cut.way_up = (SpelchFace)way_up;
  if (bit >= 0)
    spelch_plan_make (constants, part, &cut, &part->bits[bit], plan);
}

bool
spelch_posed_torn (const SpelchPlan *plan, SpelchSide side)
{
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  return edge != NULL && edge->grade >= SPELCH_TORN_FROM;
}

const char *
spelch_posed_tears (const SpelchPlan *plan)
{
  bool motor = spelch_posed_torn (plan, SPELCH_SIDE_MOTOR), far = spelch_posed_torn (plan, SPELCH_SIDE_FAR);
  return motor && far ? SPELCH_ANSWER_BOTH
         : motor      ? SPELCH_ANSWER_MOTOR
         : far        ? SPELCH_ANSWER_FAR
                      : SPELCH_ANSWER_NEITHER;
}

bool
spelch_posed_serves (const SpelchPart *part, const SpelchPlan *plan)
{
  return plan->n_passes > 0 && plan->verdict != SPELCH_VERDICT_DO_NOT_CUT
         && spelch_edges_worst (plan->edges, true) <= part->accepted_seen
         && spelch_edges_worst (plan->edges, false) <= part->accepted_hidden;
}

const char *
spelch_posed_ways (const SpelchPart *part, const SpelchPlan *a, const SpelchPlan *b)
{
  bool with_a = spelch_posed_serves (part, a), with_b = spelch_posed_serves (part, b);
  return with_a && with_b ? SPELCH_ANSWER_EITHER
         : with_a         ? spelch_code_of (&SPELCH_FACE_CODES, SPELCH_FACE_A)
         : with_b         ? spelch_code_of (&SPELCH_FACE_CODES, SPELCH_FACE_B)
                          : SPELCH_ANSWER_NEITHER;
}

const char *
spelch_posed_gives (const SpelchPlan *plan)
{
  bool held = spelch_plan_has_stop (plan, SPELCH_STOP_HOLDING),
       tabs = spelch_plan_has_stop (plan, SPELCH_STOP_TABS);
  if (spelch_plan_has_stop (plan, SPELCH_STOP_PUSHED_OFF))
    return spelch_code_of (&SPELCH_GIVES_CODES, SPELCH_GIVES_LIFTING);
  if (held && tabs)
    return NULL;
  return tabs   ? SPELCH_ANSWER_TABS
         : held ? spelch_code_of (&SPELCH_GIVES_CODES, (int)plan->hold_way)
                : SPELCH_ANSWER_STAYS;
}

/* Whether a limit is reached at the feed it tells of; else no such feed was found. */
static bool
is_reached (const SpelchPlan *plan, const SpelchLimit *limit)
{
  return limit->feed_mm_min >= 1 && limit->share > HARDLY_USED * plan->feed_mm_min / limit->feed_mm_min;
}

const SpelchLimit *
spelch_posed_next (const SpelchPlan *plan)
{
  const SpelchLimit *next = NULL;
  for (guint i = 0; i < plan->n_limits; i++)
    {
      const SpelchLimit *limit = &plan->limits[i];
      bool caps = !limit->binding && limit->kind != SPELCH_LIMIT_HEAT && is_reached (plan, limit);
      if (caps && (next == NULL || limit->feed_mm_min < next->feed_mm_min))
        next = limit;
    }
  return next;
}

/* The bits of the part ranked as the board lies, each in its plain pass plan: SpelchChoice *. */
static GPtrArray *
rank_plainly (const SpelchConstants *constants, const SpelchPart *part)
{
  const SpelchCut *cut = &part->cuts[0];
  GPtrArray *ranking = spelch_choose_rank (constants, part, cut, part->bits, part->n_bits);
  for (guint i = 0; i < ranking->len;)
    {
      const SpelchChoice *choice = ranking->pdata[i];
      if (choice->way_up != cut->way_up || choice->scorer >= 0 || choice->pinned)
        g_ptr_array_remove_index (ranking, i);
      else
        i++;
    }
  return ranking;
}

/* ---- Choices ---- */

G_STATIC_ASSERT (SPELCH_N_LIMITS <= SPELCH_CHOICES_MOST);

static void
offer (SpelchPosed *posed, const char *code)
{
  g_return_if_fail (posed->n_choices < SPELCH_CHOICES_MOST);
  g_strlcpy (posed->choices[posed->n_choices++], code, SPELCH_ID_SIZE);
}

static void
answer_tears (SpelchPosed *posed)
{
  bool through = posed->part->cuts[0].through;
  offer (posed, SPELCH_ANSWER_MOTOR);
  if (through)
    {
      offer (posed, SPELCH_ANSWER_FAR);
      offer (posed, SPELCH_ANSWER_BOTH);
    }
  offer (posed, SPELCH_ANSWER_NEITHER);
  posed->right = spelch_posed_find (posed, spelch_posed_tears (&posed->plan));
}

static void
answer_first_pass (SpelchPosed *posed)
{
  const SpelchWindows *w = &posed->plan.windows;
  posed->by_depth = true;
  posed->depth_most = posed->plan.through_depth;
  posed->depths = w->robust.first_pass;
  posed->just = w->nominal.first_pass;
  offer (posed, SPELCH_ANSWER_NONE);
  posed->right = posed->depths.empty && posed->just.empty ? 0 : -1;
}

/* The bits in an order that the seed settles, so that the place of the right one tells nothing. */
static void
answer_bit (SpelchPosed *posed)
{
  const SpelchPart *part = posed->part;
  guint order[SPELCH_BITS_MOST], n = MIN (part->n_bits, SPELCH_BITS_MOST), turned = posed->seed % n;
  posed->ranking = rank_plainly (posed->constants, part);
  for (guint i = 0; i < n; i++)
    order[i] = (i + turned) % n;
  for (guint i = 0; i < n; i++)
    offer (posed, part->bits[order[i]].id);
  if (posed->ranking->len == 0)
    return;
  const SpelchChoice *best = posed->ranking->pdata[0];
  posed->right = spelch_posed_find (posed, part->bits[best->bit].id);
  posed->plan = best->plan;
}

static void
answer_way_up (SpelchPosed *posed)
{
  SpelchFace as_drawn = posed->part->cuts[0].way_up;
  spelch_posed_plan (posed->constants, posed->part, (int)spelch_face_other (as_drawn), &posed->turned);
  offer (posed, spelch_code_of (&SPELCH_FACE_CODES, SPELCH_FACE_A));
  offer (posed, spelch_code_of (&SPELCH_FACE_CODES, SPELCH_FACE_B));
  offer (posed, SPELCH_ANSWER_EITHER);
  offer (posed, SPELCH_ANSWER_NEITHER);
  bool is_a = as_drawn == SPELCH_FACE_A;
  posed->right
      = spelch_posed_find (posed, spelch_posed_ways (posed->part, is_a ? &posed->plan : &posed->turned,
                                                     is_a ? &posed->turned : &posed->plan));
}

/* All that could cap the feed here, in an order of their own, so that how near they are isn't told by it. */
static void
answer_limit (SpelchPosed *posed)
{
  const SpelchPlan *plan = &posed->plan;
  const SpelchLimit *binding = spelch_plan_binding (plan);
  for (int kind = 0; kind < SPELCH_N_LIMITS; kind++)
    if (kind != SPELCH_LIMIT_HEAT && spelch_plan_limit (plan, (SpelchLimitKind)kind) != NULL)
      offer (posed, spelch_code_of (&SPELCH_LIMIT_CODES, kind));
  if (binding != NULL)
    posed->right = spelch_posed_find (posed, spelch_code_of (&SPELCH_LIMIT_CODES, (int)binding->kind));
}

static void
answer_hold (SpelchPosed *posed)
{
  bool gantry = posed->part->machine.kind == SPELCH_MACHINE_GANTRY;
  const char *gives = spelch_posed_gives (&posed->plan);
  offer (posed, SPELCH_ANSWER_STAYS);
  for (int way = SPELCH_GIVES_SLIDING; way <= SPELCH_GIVES_TILTING; way++)
    if (gantry || way == SPELCH_GIVES_LIFTING)
      offer (posed, spelch_code_of (&SPELCH_GIVES_CODES, way));
  if (posed->part->cuts[0].tabs.count > 0)
    offer (posed, SPELCH_ANSWER_TABS);
  posed->right = gives == NULL ? -1 : spelch_posed_find (posed, gives);
}

static void (*const ANSWERS[]) (SpelchPosed *posed) = {
  [SPELCH_ASKS_TEARS] = answer_tears, [SPELCH_ASKS_FIRST_PASS] = answer_first_pass,
  [SPELCH_ASKS_BIT] = answer_bit,     [SPELCH_ASKS_WAY_UP] = answer_way_up,
  [SPELCH_ASKS_LIMIT] = answer_limit, [SPELCH_ASKS_HOLD] = answer_hold,
};
SPELCH_TABLE_HAS (ANSWERS, SPELCH_N_ASKS);

SpelchPosed *
spelch_posed_new (const SpelchConstants *constants, SpelchExercise *exercise, guint32 seed, bool follow_up)
{
  SpelchPosed *posed = g_new0 (SpelchPosed, 1);
  posed->exercise = spelch_exercise_ref (exercise);
  posed->seed = seed;
  posed->follow_up = follow_up;
  posed->constants = constants;
  posed->part
      = follow_up ? spelch_exercise_draw_follow_up (exercise, seed) : spelch_exercise_draw (exercise, seed);
  posed->right = -1;
  posed->depths.empty = posed->just.empty = true;
  spelch_posed_plan (constants, posed->part, -1, &posed->plan);
  ANSWERS[exercise->asks](posed);
  posed->decides = spelch_posed_deciding (posed);
  return posed;
}

void
spelch_posed_free (SpelchPosed *posed)
{
  g_clear_pointer (&posed->ranking, g_ptr_array_unref);
  spelch_part_unref (posed->part);
  spelch_exercise_unref (posed->exercise);
  g_free (posed);
}

int
spelch_posed_find (const SpelchPosed *posed, const char *code)
{
  for (guint i = 0; i < posed->n_choices; i++)
    if (g_str_equal (posed->choices[i], code))
      return (int)i;
  return -1;
}

/* ---- Grading ---- */

bool
spelch_posed_agree (const SpelchPosed *a, const SpelchPosed *b)
{
  if (a->by_depth && b->by_depth && !a->depths.empty && !b->depths.empty)
    return fabs (a->depths.from - b->depths.from) < SPELCH_CLEAR_DEPTH;
  if ((a->right < 0) != (b->right < 0))
    return false;
  return a->right < 0 || g_str_equal (a->choices[a->right], b->choices[b->right]);
}

SpelchGiven
spelch_posed_grade (const SpelchPosed *posed, const char *answer, SpelchUnit unit)
{
  SpelchLength depth;
  int choice = spelch_posed_find (posed, answer);
  if (choice >= 0)
    return (SpelchGiven){ .understood = true, .right = choice == posed->right, .choice = choice };
  if (!posed->by_depth || !spelch_length_parse (answer, unit, &depth, NULL) || depth.mm < 0)
    return (SpelchGiven){ .choice = -1 };
  bool right = !posed->depths.empty && depth.mm >= posed->depths.from - DEPTH_WITHIN_MM
               && depth.mm <= posed->depths.to + DEPTH_WITHIN_MM;
  return (SpelchGiven){ .understood = true, .right = right, .choice = -1, .depth_mm = depth.mm };
}

void
spelch_posed_attempt (const SpelchPosed *posed, const SpelchGiven *given, const char *learner,
                      SpelchAttempt *attempt)
{
  g_autofree char *depth
      = spelch_length_format (given->depth_mm, SPELCH_UNIT_MM, SPELCH_INCH_DECIMAL, 2, '.');
  *attempt = (SpelchAttempt){ .seed = posed->seed, .follow_up = posed->follow_up, .right = given->right };
  g_strlcpy (attempt->learner, learner, sizeof attempt->learner);
  g_strlcpy (attempt->exercise, posed->exercise->id, sizeof attempt->exercise);
  g_strlcpy (attempt->answer, given->choice >= 0 ? posed->choices[given->choice] : depth,
             sizeof attempt->answer);
  g_strlcpy (attempt->model_version, SPELCH_MODEL_VERSION, sizeof attempt->model_version);
}

char *
spelch_posed_right_answer (const SpelchPosed *posed)
{
  if (posed->right >= 0)
    return g_strdup (posed->choices[posed->right]);
  if (posed->depths.empty)
    return g_strdup ("");
  double tenth = fmin (ceil (posed->depths.from * 10 - DEPTH_WITHIN_MM * 10) / 10, posed->depths.to);
  return spelch_length_format (tenth, SPELCH_UNIT_MM, SPELCH_INCH_DECIMAL, 1, '.');
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What comes of an answer to a question that is posed, and why the right one is right, in plain words. The
 * two never say the same thing: one tells what comes out, the other why.
 */
#include "plan/posed-private.h"
#include "plan/words-choose.h"
#include "plan/words-plain.h"
#include "plan/words-posed-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define FAULTS_MOST 2

/* ---- Edges ---- */

static const char *
grade_words (const SpelchPlan *plan, SpelchSide side)
{
  return spelch_words_grade (spelch_plan_worst (plan, side)->grade, spelch_plan_facing (plan, side));
}

static void
why_tears (const SpelchPosed *posed, GPtrArray *list)
{
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    {
      g_autofree char *face = spelch_words_face (&posed->plan, &posed->part->cuts[0], (SpelchSide)side);
      g_autofree char *cause = spelch_words_plain_edge (posed->part, &posed->plan, (SpelchSide)side);
      if (*cause != '\0')
        spelch_words_say (list, g_strdup_printf (_ ("%s: %s"), face, cause));
    }
}

static bool
claims (const char *code, SpelchSide side)
{
  return g_str_equal (code, SPELCH_ANSWER_BOTH)
         || g_str_equal (code, side == SPELCH_SIDE_MOTOR ? SPELCH_ANSWER_MOTOR : SPELCH_ANSWER_FAR);
}

/* How the faces come out that were taken wrongly. */
static char *
wrong_tears (const SpelchPosed *posed, const char *code)
{
  GPtrArray *list = g_ptr_array_new ();
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    {
      g_autofree char *face = spelch_words_face (&posed->plan, &posed->part->cuts[0], (SpelchSide)side);
      bool torn = spelch_posed_torn (&posed->plan, (SpelchSide)side);
      if (spelch_plan_worst (&posed->plan, (SpelchSide)side) != NULL
          && claims (code, (SpelchSide)side) != torn)
        /* TRANSLATORS: a face, and how its edge comes out: "Show face, motor side: torn grain, so it tears."
         */
        spelch_words_say (
            list, g_strdup_printf (torn ? _ ("%s: %s, so it tears.") : _ ("%s: %s, so it doesn't tear."),
                                   face, grade_words (&posed->plan, (SpelchSide)side)));
    }
  return spelch_words_joined (list);
}

/* ---- Depths ---- */

static double
reach_of_up_shear (const SpelchPlan *plan)
{
  return plan->flutes.turn_over + plan->flutes.overlap / 2;
}

static void
why_first_pass (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  const SpelchPlan *plan = &posed->plan;
  double reach = reach_of_up_shear (plan), together = reach + plan->near_layer;
  g_autofree char *up = spelch_words_exactly (numbers, reach);
  g_autofree char *layer = spelch_words_exactly (numbers, plan->near_layer);
  g_autofree char *both = spelch_words_exactly (numbers, together);
  g_autofree char *whole = spelch_words_exactly (numbers, plan->through_depth);
  g_autofree char *spare = spelch_words_exactly (numbers, posed->depths.from - together);
  spelch_words_say (
      list,
      g_strdup_printf (_ ("The lowest %s of the bit pull toward the motor. The face layer, %s thick, must "
                          "lie wholly above them: together that is %s."),
                       up, layer, both));
  if (posed->right == 0)
    spelch_words_say (
        list, g_strdup_printf (_ ("The cut is only %s deep, so no first pass is deep enough."), whole));
  else if (posed->depths.from - together > 0.005)
    spelch_words_say (
        list,
        g_strdup_printf (_ ("No depth is set and no bit is ground exactly: %s more make it sure."), spare));
}

static char *
wrong_depth (const SpelchPosed *posed, double depth, const SpelchNumbers *numbers)
{
  const SpelchPlan *plan = &posed->plan;
  g_autofree char *at = spelch_words_length (numbers, depth);
  g_autofree char *bottom = spelch_words_length (numbers, fmax (depth - plan->near_layer, 0));
  g_autofree char *up = spelch_words_exactly (numbers, reach_of_up_shear (plan));
  g_autofree char *sure = spelch_words_at_least (numbers, posed->depths.from);
  g_autofree char *most
      = spelch_words_at_most (numbers, posed->depths.empty ? plan->through_depth : posed->depths.to);
  if (posed->depths.empty ? depth > plan->through_depth : depth > posed->depths.to)
    return g_strdup_printf (_ ("%s is too deep: a first pass goes no deeper than %s here."), at, most);
  if (!posed->just.empty && depth >= posed->just.from)
    return g_strdup_printf (
        _ ("%s would do with everything exact; depth and up-shear are only known so well, and "
           "%s is sure."),
        at, sure);
  return g_strdup_printf (
      _ ("With the tip %s deep the face layer begins %s above it, and the up-shear reaches %s: "
         "it pulls the layer out."),
      at, bottom, up);
}

static char *
wrong_first_pass (const SpelchPosed *posed, const SpelchGiven *given, const SpelchNumbers *numbers)
{
  if (given->choice < 0)
    return wrong_depth (posed, given->depth_mm, numbers);
  return g_strdup (
      _ ("There is one: the cut goes deep enough for the whole face layer to come above the part of "
         "the bit that pulls."));
}

/* ---- Bits ---- */

static const SpelchChoice *
choice_of (const SpelchPosed *posed, const char *id)
{
  for (guint i = 0; i < posed->ranking->len; i++)
    {
      const SpelchChoice *choice = posed->ranking->pdata[i];
      if (g_str_equal (posed->part->bits[choice->bit].id, id))
        return choice;
    }
  return NULL;
}

/* What sets bits apart first; how the board is lifted or the chips are carried only where nothing else does.
 */
static bool
is_weighty (SpelchReasonKind kind)
{
  return kind == SPELCH_REASON_STOP || kind == SPELCH_REASON_TEARS || kind == SPELCH_REASON_TIP_TOO_LONG
         || kind == SPELCH_REASON_TIP_TOO_SHORT || kind == SPELCH_REASON_BENDS;
}

/* One that rules it out says all. */
static void
say_faults (const SpelchChoice *choice, bool weighty, const SpelchNumbers *numbers, GPtrArray *list)
{
  bool stopped = false;
  for (guint i = 0; i < choice->n_reasons && list->len < FAULTS_MOST && !stopped; i++)
    if (!spelch_reason_is_for (choice->reasons[i].kind) && is_weighty (choice->reasons[i].kind) == weighty)
      {
        spelch_words_say (list, spelch_words_reason (choice, &choice->reasons[i], numbers));
        stopped = choice->reasons[i].kind == SPELCH_REASON_STOP;
      }
}

static bool
is_as_good (const SpelchPosed *posed, const SpelchChoice *choice)
{
  return spelch_posed_serves (posed->part, &choice->plan);
}

static bool
bends (const SpelchChoice *choice)
{
  return choice->plan.deflection_mm > choice->plan.deflection_limit_mm + 1e-6;
}

/* The stop that rules out all bits but the best; -1 where it isn't the same. */
static int
ruled_out_by (const SpelchPosed *posed)
{
  int kind = -1;
  for (guint i = 1; i < posed->ranking->len; i++)
    {
      const SpelchPlan *plan = &((const SpelchChoice *)posed->ranking->pdata[i])->plan;
      int own = plan->n_stops > 0 ? (int)plan->stops[0].kind : -1;
      if (i > 1 && own != kind)
        return -1;
      kind = own;
    }
  return kind;
}

static void
why_only_one (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  switch (ruled_out_by (posed))
    {
    case SPELCH_STOP_TOO_SHORT:
      spelch_words_say (list, g_strdup (_ ("It is the only one of them that reaches deep enough.")));
      break;
    case SPELCH_STOP_TOO_WIDE:
      spelch_words_say (
          list, g_strdup (_ ("It is the only one of them that is narrow enough to get into the corners.")));
      break;
    case SPELCH_STOP_HAND_FEED_MARK:
      spelch_words_say (list, g_strdup (_ ("It is the only one of them that may be fed by hand.")));
      break;
    case SPELCH_STOP_PUSHED_OFF:
      spelch_words_why_seat (&((const SpelchChoice *)posed->ranking->pdata[0])->plan, numbers, list);
      break;
    default:
      spelch_words_say (list, g_strdup (_ ("It is the only one of them with which this cut may be made.")));
    }
}

/* What sets the best bit apart from the others: that it alone may be used, or cuts clean, or stays on its
 * line, or is the quickest. */
static void
why_bit (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  if (posed->ranking->len == 0)
    return;
  const SpelchChoice *best = posed->ranking->pdata[0];
  guint others = posed->n_choices - 1, may = 0, good = 0, straight = 0, give = 0;
  for (guint i = 1; i < posed->ranking->len; i++)
    {
      const SpelchChoice *choice = posed->ranking->pdata[i];
      may += choice->plan.verdict != SPELCH_VERDICT_DO_NOT_CUT;
      good += is_as_good (posed, choice);
      straight += is_as_good (posed, choice) && !bends (choice);
      give += is_as_good (posed, choice) && spelch_plan_machine_gives (&choice->plan);
    }
  if (others > 0 && may == 0)
    why_only_one (posed, numbers, list);
  else if (straight > 0)
    {
      g_autofree char *time = spelch_words_time (best->plan.time_s);
      spelch_words_say (
          list,
          g_strdup_printf (_ ("Its edges come out as accepted, and of the bits that do as well it is the "
                              "quickest: %s."),
                           time));
    }
  else if (good > 0)
    spelch_words_say (
        list,
        g_strdup (
            give > 0
                ? _ ("Its edges come out as accepted, and it doesn't push the machine off its line.")
                : _ ("Its edges come out as accepted, and it is stout enough not to bend off its line.")));
  else
    why_tears (posed, list);
}

/* What a lift that must be held against means. */
static void
say_hold_for (const SpelchChoice *choice, const SpelchNumbers *numbers, GPtrArray *list)
{
  for (guint i = 0; i < choice->n_reasons; i++)
    {
      const SpelchReason *reason = &choice->reasons[i];
      g_autofree char *words = spelch_words_reason (choice, reason, numbers);
      if (reason->kind == SPELCH_REASON_LIFTS && list->len > 0
          && g_str_equal (list->pdata[list->len - 1], words))
        spelch_words_say (list, spelch_words_posed_press (reason->limit, numbers));
    }
}

static char *
wrong_bit (const SpelchPosed *posed, const char *id, const SpelchNumbers *numbers)
{
  const SpelchChoice *choice = choice_of (posed, id), *best = choice_of (posed, posed->choices[posed->right]);
  GPtrArray *list = g_ptr_array_new ();
  bool as_good = choice != NULL && is_as_good (posed, choice);
  if (choice == NULL)
    return spelch_words_joined (list);
  if (as_good && !bends (choice))
    {
      g_autofree char *time = spelch_words_time (choice->plan.time_s);
      g_autofree char *quicker = spelch_words_time (best->plan.time_s);
      spelch_words_say (
          list, g_strdup_printf (_ ("Its edges are as good, but it takes %s instead of %s."), time, quicker));
    }
  else if (as_good)
    spelch_words_say (
        list,
        g_strdup (
            spelch_plan_machine_gives (&choice->plan)
                ? _ ("Its edges would be as good, but the machine gives way to it, and it leaves its line.")
                : _ ("Its edges would be as good, but it is so slender that it bends off its line.")));
  else
    say_faults (choice, true, numbers, list);
  if (list->len == 0)
    say_faults (choice, false, numbers, list);
  say_hold_for (choice, numbers, list);
  return spelch_words_joined (list);
}

/* ---- Ways up ---- */

static const SpelchPlan *
plan_of_way (const SpelchPosed *posed, SpelchFace face)
{
  return posed->plan.near == face ? &posed->plan : &posed->turned;
}

static char *
way_words (const SpelchPosed *posed, SpelchFace face, const SpelchNumbers *numbers)
{
  int i = spelch_posed_find (posed, spelch_code_of (&SPELCH_FACE_CODES, (int)face));
  return spelch_words_posed_choice (posed, (guint)i, numbers);
}

static char *
stop_of (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  for (guint s = 0; s < plan->n_stops; s++)
    if (plan->stops[s].kind < SPELCH_ASK_SPEED_MARK)
      return spelch_words_stop (&plan->stops[s], numbers);
  return NULL;
}

static int
accepted_of (const SpelchPosed *posed, const SpelchEdge *edge)
{
  return edge->seen ? posed->part->accepted_seen : posed->part->accepted_hidden;
}

/* The side that decides one way up: the one whose edge isn't as accepted, else the worst of those that are
 * seen. */
static SpelchSide
deciding_side (const SpelchPosed *posed, const SpelchPlan *plan)
{
  const SpelchEdge *motor = spelch_plan_worst (plan, SPELCH_SIDE_MOTOR);
  const SpelchEdge *far = spelch_plan_worst (plan, SPELCH_SIDE_FAR);
  if (far == NULL || (motor != NULL && motor->grade > accepted_of (posed, motor)))
    return SPELCH_SIDE_MOTOR;
  if (motor == NULL || far->grade > accepted_of (posed, far))
    return SPELCH_SIDE_FAR;
  if (motor->seen != far->seen)
    return motor->seen ? SPELCH_SIDE_MOTOR : SPELCH_SIDE_FAR;
  return far->grade > motor->grade ? SPELCH_SIDE_FAR : SPELCH_SIDE_MOTOR;
}

/* What comes of one way up: "Show face toward the motor: fuzzy grain on the motor side; clean is accepted."
 */
static char *
way_result (const SpelchPosed *posed, SpelchFace face, const SpelchNumbers *numbers)
{
  const SpelchPlan *plan = plan_of_way (posed, face);
  SpelchSide side = deciding_side (posed, plan);
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  g_autofree char *way = way_words (posed, face, numbers);
  g_autofree char *stop = stop_of (plan, numbers);
  if (stop != NULL)
    return g_strdup_printf (_ ("%s: %s"), way, stop);
  if (edge == NULL || edge->grade <= accepted_of (posed, edge))
    return g_strdup_printf (_ ("%s: every edge comes out as accepted."), way);
  /* TRANSLATORS: a way up, how an edge comes out, and how it may: "Hidden face toward the motor: fuzzy grain
   * on the far side; clean is accepted." */
  return g_strdup_printf (side == SPELCH_SIDE_MOTOR ? _ ("%s: %s on the motor side; %s is accepted.")
                                                    : _ ("%s: %s on the far side; %s is accepted."),
                          way, grade_words (plan, side),
                          spelch_words_grade (accepted_of (posed, edge), spelch_plan_facing (plan, side)));
}

/* The sentence on one way up that names the face which the reason is about: the one toward the motor, as the
 * way up does, else by itself; a stop is about no face. */
static char *
way_reason (const SpelchPosed *posed, const SpelchPlan *plan, const char *way, const char *cause,
            bool stopped)
{
  g_autofree char *face = spelch_words_face (plan, &posed->part->cuts[0], deciding_side (posed, plan));
  if (stopped || deciding_side (posed, plan) == SPELCH_SIDE_MOTOR)
    return g_strdup_printf (_ ("%s: %s"), way, cause);
  /* TRANSLATORS: a way up, a face, and the reason: "Hidden face toward the motor. Show face, far side: The
   * bit …" */
  return g_strdup_printf (_ ("%s. %s: %s"), way, face, cause);
}

/* An edge that tears, and may. */
static void
say_torn_as_accepted (const SpelchPosed *posed, const SpelchPlan *plan, GPtrArray *list)
{
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    {
      const SpelchEdge *edge = spelch_plan_worst (plan, (SpelchSide)side);
      if (edge == NULL || edge->grade < SPELCH_TORN_FROM || edge->grade > accepted_of (posed, edge))
        continue;
      g_autofree char *face = spelch_words_face (plan, &posed->part->cuts[0], (SpelchSide)side);
      /* TRANSLATORS: a face and how its edge comes out: "Hidden face, far side: fuzzy grain, …" */
      spelch_words_say_on (list, g_strdup_printf (_ ("%s: %s, which is accepted there."), face,
                                                  grade_words (plan, (SpelchSide)side)));
    }
}

/* One reason for both ways where it is the same. */
static void
why_way_up (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  char *causes[2];
  bool stopped[2];
  for (int face = SPELCH_FACE_A; face <= SPELCH_FACE_B; face++)
    {
      const SpelchPlan *plan = plan_of_way (posed, (SpelchFace)face);
      char *stop = stop_of (plan, numbers);
      stopped[face] = stop != NULL;
      causes[face]
          = stop != NULL ? stop : spelch_words_plain_edge (posed->part, plan, deciding_side (posed, plan));
    }
  bool same = g_str_equal (causes[SPELCH_FACE_A], causes[SPELCH_FACE_B]);
  const SpelchPlan *first = plan_of_way (posed, SPELCH_FACE_A);
  bool far = !stopped[SPELCH_FACE_A] && deciding_side (posed, first) == SPELCH_SIDE_FAR;
  if (same)
    spelch_words_say (list, g_strdup_printf (far ? _ ("Whichever face is on the far side: %s")
                                                 : _ ("Whichever face is toward the motor: %s"),
                                             causes[SPELCH_FACE_A]));
  for (int face = SPELCH_FACE_A; face <= SPELCH_FACE_B; face++)
    {
      g_autofree char *way = way_words (posed, (SpelchFace)face, numbers);
      const SpelchPlan *plan = plan_of_way (posed, (SpelchFace)face);
      if (!same)
        spelch_words_say (list, way_reason (posed, plan, way, causes[face], stopped[face]));
      if (!stopped[face] && spelch_posed_serves (posed->part, plan))
        say_torn_as_accepted (posed, plan, list);
    }
  g_free (causes[SPELCH_FACE_A]);
  g_free (causes[SPELCH_FACE_B]);
}

/* One way that was answered: what comes of it, or that it isn't the only one. */
static char *
wrong_one_way (const SpelchPosed *posed, SpelchFace face, const SpelchNumbers *numbers)
{
  g_autofree char *way = way_words (posed, face, numbers);
  if (!spelch_posed_serves (posed->part, plan_of_way (posed, face)))
    return way_result (posed, face, numbers);
  return g_strdup_printf (_ ("%s: every edge comes out as accepted, but the other way up as well."), way);
}

static char *
wrong_way_up (const SpelchPosed *posed, const char *code, const SpelchNumbers *numbers)
{
  bool either = g_str_equal (code, SPELCH_ANSWER_EITHER);
  int one;
  if (spelch_code_read (&SPELCH_FACE_CODES, code, &one))
    return wrong_one_way (posed, (SpelchFace)one, numbers);
  GPtrArray *list = g_ptr_array_new ();
  for (int face = SPELCH_FACE_A; face <= SPELCH_FACE_B; face++)
    if (either != spelch_posed_serves (posed->part, plan_of_way (posed, (SpelchFace)face)))
      spelch_words_say (list, way_result (posed, (SpelchFace)face, numbers));
  if (either && list->len == 1)
    g_ptr_array_insert (list, 0, g_strdup (_ ("Not both ways will do.")));
  return spelch_words_joined (list);
}

/* ---- Limits ---- */

static void
why_limit (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  const SpelchPlan *plan = &posed->plan;
  const SpelchLimit *binding = spelch_plan_binding (plan);
  if (binding == NULL)
    return;
  g_autofree char *feed = spelch_words_feed (numbers, plan->feed_mm_min);
  spelch_words_say (list, g_strdup (spelch_words_plain_limit (binding->kind, plan)));
  spelch_words_say (list, g_strdup_printf (_ ("Of all limits this one is reached first, at %s."), feed));
}

/* What the limit would mean, and how far off it is. */
static char *
wrong_limit (const SpelchPosed *posed, const char *code, const SpelchNumbers *numbers)
{
  const SpelchPlan *plan = &posed->plan;
  g_autofree char *feed = spelch_words_feed (numbers, plan->feed_mm_min);
  int kind = -1;
  spelch_code_read (&SPELCH_LIMIT_CODES, code, &kind);
  for (guint i = 0; i < plan->n_limits; i++)
    {
      const SpelchLimit *limit = &plan->limits[i];
      int used = spelch_words_per_cent (limit->share);
      if ((int)limit->kind == kind)
        return g_strdup_printf (_ ("%s Here something else comes first: at %s %d %% of this is used."),
                                spelch_words_plain_limit (limit->kind, plan), feed, used);
    }
  return g_strdup ("");
}

/* ---- Any ---- */

char **
spelch_words_posed_why (const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  GPtrArray *list = g_ptr_array_new ();
  switch (posed->exercise->asks)
    {
    case SPELCH_ASKS_FIRST_PASS:
      why_first_pass (posed, numbers, list);
      break;
    case SPELCH_ASKS_BIT:
      why_bit (posed, numbers, list);
      break;
    case SPELCH_ASKS_WAY_UP:
      why_way_up (posed, numbers, list);
      break;
    case SPELCH_ASKS_LIMIT:
      why_limit (posed, numbers, list);
      break;
    case SPELCH_ASKS_HOLD:
      if (posed->right >= 0)
        spelch_words_why_hold (posed, numbers, list);
      break;
    case SPELCH_ASKS_TEARS:
    case SPELCH_N_ASKS:
    default:
      why_tears (posed, list);
    }
  g_ptr_array_add (list, NULL);
  return (char **)g_ptr_array_free (list, FALSE);
}

char *
spelch_words_posed_wrong (const SpelchPosed *posed, const SpelchGiven *given, const SpelchNumbers *numbers)
{
  const char *code = given->choice >= 0 ? posed->choices[given->choice] : "";
  if (!given->understood || given->right || (posed->right < 0 && !posed->by_depth))
    return g_strdup ("");
  switch (posed->exercise->asks)
    {
    case SPELCH_ASKS_FIRST_PASS:
      return wrong_first_pass (posed, given, numbers);
    case SPELCH_ASKS_BIT:
      return wrong_bit (posed, code, numbers);
    case SPELCH_ASKS_WAY_UP:
      return wrong_way_up (posed, code, numbers);
    case SPELCH_ASKS_LIMIT:
      return wrong_limit (posed, code, numbers);
    case SPELCH_ASKS_HOLD:
      return spelch_words_wrong_hold (posed, code);
    case SPELCH_ASKS_TEARS:
    case SPELCH_N_ASKS:
    default:
      return wrong_tears (posed, code);
    }
}

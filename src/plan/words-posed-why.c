/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Why an answer to a question that is posed is right, or wrong.
 */
#include "plan/posed-private.h"
#include "plan/words-choose.h"
#include "plan/words-posed.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define REASONS_MOST 3

static void
say (GPtrArray *list, char *sentence)
{
  if (sentence != NULL && *sentence != '\0')
    g_ptr_array_add (list, sentence);
  else
    g_free (sentence);
}

/* The sentences one after the other; takes @list. */
static char *
joined (GPtrArray *list)
{
  g_ptr_array_add (list, NULL);
  g_auto (GStrv) sentences = (char **)g_ptr_array_free (list, FALSE);
  return g_strjoinv (" ", sentences);
}

/* ---- Edges ---- */

/* "Show face, motor side: torn grain. Up-shear lifts the face ply out at every depth." */
static char *
face_line (const SpelchPart *part, const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers)
{
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  if (edge == NULL)
    return NULL;
  g_autofree char *face = spelch_words_face (plan, &part->cuts[0], side);
  g_autofree char *shear = spelch_words_edge_reason (plan, side, numbers);
  const char *grade = spelch_words_grade (edge->grade, spelch_plan_is_laminate (plan, side));
  g_autofree char *other = edge->load == SPELCH_LOAD_PRESS_IN || edge->grade < SPELCH_TORN_FROM
                               ? NULL
                               : spelch_words_edge_other (edge, numbers);
  return other == NULL ? g_strdup_printf ("%s: %s. %s", face, grade, shear)
                       : g_strdup_printf ("%s: %s. %s %s", face, grade, shear, other);
}

static void
why_tears (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    say (list, face_line (posed->part, &posed->plan, (SpelchSide)side, numbers));
}

static bool
claims (const char *code, SpelchSide side)
{
  return g_str_equal (code, SPELCH_ANSWER_BOTH)
         || g_str_equal (code, side == SPELCH_SIDE_MOTOR ? SPELCH_ANSWER_MOTOR : SPELCH_ANSWER_FAR);
}

/* Only of the faces that were taken wrongly. */
static char *
wrong_tears (const SpelchPosed *posed, const char *code, const SpelchNumbers *numbers)
{
  GPtrArray *list = g_ptr_array_new ();
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    if (claims (code, (SpelchSide)side) != spelch_posed_torn (&posed->plan, (SpelchSide)side))
      say (list, face_line (posed->part, &posed->plan, (SpelchSide)side, numbers));
  return joined (list);
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
  say (list,
       g_strdup_printf (_ ("The up-shear reaches %s above the tip, and the face layer is %s thick: only a "
                           "pass deeper than both together, %s, leaves that layer to the down-shear."),
                        up, layer, both));
  if (posed->right == 0)
    say (list, g_strdup_printf (_ ("The cut is only %s deep, so no first pass is deep enough."), whole));
  else if (posed->depths.from - together > 0.005)
    say (list,
         g_strdup_printf (_ ("Depth and up-shear are only known so well: go %s deeper to be sure."), spare));
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
  g_autofree char *sure = spelch_words_at_least (numbers, posed->depths.from);
  if (given->choice < 0)
    return wrong_depth (posed, given->depth_mm, numbers);
  return g_strdup_printf (_ ("From %s on the whole face layer lies above the up-shear, and is pressed in."),
                          sure);
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

static void
say_merits (const SpelchChoice *choice, const SpelchNumbers *numbers, GPtrArray *list)
{
  for (guint i = 0; i < choice->n_reasons && list->len < REASONS_MOST; i++)
    if (spelch_reason_is_for (choice->reasons[i].kind))
      say (list, spelch_words_reason (choice, &choice->reasons[i], numbers));
}

static void
say_faults (const SpelchChoice *choice, bool weighty, const SpelchNumbers *numbers, GPtrArray *list)
{
  for (guint i = 0; i < choice->n_reasons && list->len < REASONS_MOST - 1; i++)
    if (!spelch_reason_is_for (choice->reasons[i].kind) && is_weighty (choice->reasons[i].kind) == weighty)
      say (list, spelch_words_reason (choice, &choice->reasons[i], numbers));
}

static void
why_bit (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  if (posed->ranking->len > 0)
    say_merits (posed->ranking->pdata[0], numbers, list);
}

static char *
wrong_bit (const SpelchPosed *posed, const char *id, const SpelchNumbers *numbers)
{
  const SpelchChoice *choice = choice_of (posed, id), *best = choice_of (posed, posed->choices[posed->right]);
  GPtrArray *list = g_ptr_array_new ();
  bool as_good = choice != NULL && spelch_posed_serves (posed->part, &choice->plan);
  if (choice != NULL && !as_good)
    say_faults (choice, true, numbers, list);
  if (choice != NULL && !as_good && list->len == 0)
    say_faults (choice, false, numbers, list);
  if (as_good)
    {
      g_autofree char *time = spelch_words_time (choice->plan.time_s);
      g_autofree char *quicker = spelch_words_time (best->plan.time_s);
      say (list,
           g_strdup_printf (_ ("Its edges are as good, but it takes %s instead of %s."), time, quicker));
    }
  return joined (list);
}

/* ---- Ways up ---- */

static const SpelchPlan *
plan_of_way (const SpelchPosed *posed, SpelchFace face)
{
  return posed->plan.near == face ? &posed->plan : &posed->turned;
}

/* What comes of one way up: what speaks against it, or that it serves. */
static char *
way_line (const SpelchPosed *posed, SpelchFace face, const SpelchNumbers *numbers)
{
  const SpelchPart *part = posed->part;
  const SpelchPlan *plan = plan_of_way (posed, face);
  int i = spelch_posed_find (posed, spelch_code_of (&SPELCH_FACE_CODES, (int)face));
  g_autofree char *way = spelch_words_posed_choice (posed, (guint)i, numbers);
  g_autofree char *said = NULL;
  for (guint s = 0; said == NULL && s < plan->n_stops; s++)
    if (plan->stops[s].kind < SPELCH_ASK_SPEED_MARK)
      said = spelch_words_stop (&plan->stops[s], numbers);
  for (int side = SPELCH_SIDE_MOTOR; said == NULL && side <= SPELCH_SIDE_FAR; side++)
    {
      const SpelchEdge *edge = spelch_plan_worst (plan, (SpelchSide)side);
      if (edge != NULL && edge->grade > (edge->seen ? part->accepted_seen : part->accepted_hidden))
        said = face_line (part, plan, (SpelchSide)side, numbers);
    }
  if (said == NULL)
    said = g_strdup (_ ("Every edge comes out as accepted."));
  return g_strdup_printf ("%s: %s", way, said);
}

static void
why_way_up (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  say (list, way_line (posed, SPELCH_FACE_A, numbers));
  say (list, way_line (posed, SPELCH_FACE_B, numbers));
}

static char *
wrong_way_up (const SpelchPosed *posed, const char *code, const SpelchNumbers *numbers)
{
  bool either = g_str_equal (code, SPELCH_ANSWER_EITHER), neither = g_str_equal (code, SPELCH_ANSWER_NEITHER);
  GPtrArray *list = g_ptr_array_new ();
  for (int face = SPELCH_FACE_A; face <= SPELCH_FACE_B; face++)
    {
      bool claimed = either || (!neither && g_str_equal (code, spelch_code_of (&SPELCH_FACE_CODES, face)));
      if (claimed != spelch_posed_serves (posed->part, plan_of_way (posed, (SpelchFace)face)))
        say (list, way_line (posed, (SpelchFace)face, numbers));
    }
  return joined (list);
}

/* ---- Limits ---- */

static void
why_limit (const SpelchPosed *posed, SpelchSourceOf source, const SpelchNumbers *numbers, GPtrArray *list)
{
  const SpelchPart *part = posed->part;
  int bit = spelch_part_find_bit (part, part->cuts[0].bit);
  const SpelchWhyCase of = { .constants = posed->constants,
                             .source = source,
                             .part = part,
                             .cut = &part->cuts[0],
                             .bit = &part->bits[MAX (bit, 0)],
                             .plan = &posed->plan };
  g_auto (GStrv) chain = spelch_words_why (SPELCH_WHY_FEED, &of, numbers);
  const SpelchLimit *binding = spelch_posed_binding (&posed->plan);
  bool holding = binding != NULL && binding->kind == SPELCH_LIMIT_HOLDING;
  for (guint i = 0; i < (holding ? 1 : REASONS_MOST) && chain[i] != NULL; i++)
    say (list, g_strdup (chain[i]));
  if (holding)
    say (list, spelch_words_seat_advice (&posed->plan, part, numbers));
}

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
      if ((int)limit->kind != kind)
        continue;
      const char *name = spelch_words_limit_subject (limit->kind, plan->machine);
      g_autofree char *at = spelch_words_feed (numbers, limit->feed_mm_min);
      int used = (int)round (fmin (limit->share, 99) * 100);
      if (!spelch_posed_reaches (plan, limit))
        /* TRANSLATORS: the first %s is a limit: "Bit bending" */
        return g_strdup_printf (_ ("%s: only %d %% used at %s."), name, used, feed);
      return g_strdup_printf (_ ("%s would only be reached at %s; at %s no more than %d %% of it is used."),
                              name, at, feed, used);
    }
  return g_strdup ("");
}

/* ---- Holding ---- */

static const char *
gives_words (const SpelchPlan *plan)
{
  switch (plan->hold_way)
    {
    case SPELCH_GIVES_LIFTING:
      return _ ("It would lift before it slid or tilted.");
    case SPELCH_GIVES_TILTING:
      return _ ("It is so narrow for its height that it would tilt before it slid or lifted.");
    case SPELCH_GIVES_SLIDING:
    default:
      return _ ("It would slide before it lifted or tilted.");
    }
}

/* A way that isn't the one in which it gives. */
static char *
not_so_words (const char *code)
{
  int way = SPELCH_GIVES_SLIDING;
  spelch_code_read (&SPELCH_GIVES_CODES, code, &way);
  return g_strdup (way == SPELCH_GIVES_LIFTING   ? _ ("Lifting isn't what gives first.")
                   : way == SPELCH_GIVES_TILTING ? _ ("Tilting isn't what gives first.")
                                                 : _ ("Sliding isn't what gives first."));
}

/* What the plan has against it; whether there is something. */
static bool
say_stops (const SpelchPlan *plan, const SpelchNumbers *numbers, GPtrArray *list)
{
  guint before = list->len;
  for (guint i = 0; i < plan->n_stops; i++)
    {
      SpelchStopKind kind = plan->stops[i].kind;
      if (kind == SPELCH_STOP_HOLDING || kind == SPELCH_STOP_TABS || kind == SPELCH_STOP_PUSHED_OFF)
        say (list, spelch_words_stop (&plan->stops[i], numbers));
    }
  return list->len > before;
}

static void
say_sheet (const SpelchPlan *plan, const SpelchNumbers *numbers, GPtrArray *list)
{
  g_autofree char *factor = spelch_words_hold (plan, numbers);
  if (*factor != '\0')
    /* TRANSLATORS: "23.7 times the force, 9.1 at worst" */
    say (list, g_strdup_printf (_ ("The sheet is held with %s, but the piece hangs on its tabs."), factor));
}

static void
why_hold (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  const SpelchPlan *plan = &posed->plan;
  bool tabs = plan->tabs.count > 0 && plan->tabs.alone, stopped = say_stops (plan, numbers, list);
  g_autofree char *factor = spelch_words_hold (plan, numbers);
  if (tabs && !stopped)
    say (list, spelch_words_tabs (plan, numbers));
  if (!stopped && *factor != '\0')
    /* TRANSLATORS: "23.7 times the force, 9.1 at worst" */
    say (list, g_strdup_printf (_ ("Held with %s."), factor));
  if (tabs && stopped && !spelch_plan_has_stop (plan, SPELCH_STOP_HOLDING))
    say_sheet (plan, numbers, list);
  if (plan->hold_factor > 0 && (!tabs || spelch_plan_has_stop (plan, SPELCH_STOP_HOLDING)))
    say (list, g_strdup (gives_words (plan)));
  say (list, spelch_words_seat (plan));
}

/* It does give, but not so. */
static void
say_other_way (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  const SpelchPlan *plan = &posed->plan;
  if (g_str_equal (posed->choices[posed->right], SPELCH_ANSWER_TABS))
    say_sheet (plan, numbers, list);
  else
    say (list, g_strdup (gives_words (plan)));
}

/* It gives no way at all, least of all so. */
static void
say_no_way (const SpelchPosed *posed, const char *code, const SpelchNumbers *numbers, GPtrArray *list)
{
  const SpelchPlan *plan = &posed->plan;
  bool first = g_str_equal (code, spelch_code_of (&SPELCH_GIVES_CODES, (int)plan->hold_way));
  g_autofree char *factor = spelch_words_decimal (numbers, plan->hold_factor, 1);
  if (plan->hold_factor <= 0)
    say (list, g_strdup (_ ("It stays put.")));
  else if (first)
    say (list, g_strdup_printf (_ ("That would give first, but only at %s times the force: it stays put."),
                                factor));
  else
    {
      say (list, not_so_words (code));
      say (list, plan->tabs.alone && plan->tabs.count > 0
                     ? spelch_words_tabs (plan, numbers)
                     : g_strdup_printf (_ ("It stays put, %s times over."), factor));
    }
}

static char *
wrong_hold (const SpelchPosed *posed, const char *code, const SpelchNumbers *numbers)
{
  const SpelchPlan *plan = &posed->plan;
  GPtrArray *list = g_ptr_array_new_with_free_func (g_free);
  bool said_stays = g_str_equal (code, SPELCH_ANSWER_STAYS),
       said_tabs = g_str_equal (code, SPELCH_ANSWER_TABS);
  /* What was answered, by name, so that each answer has words of its own. */
  if (said_tabs)
    {
      say (list, spelch_words_tabs (plan, numbers));
      say (list, g_strdup (posed->right == 0 ? _ ("It stays put.") : gives_words (plan)));
    }
  else if (!said_stays && posed->right == 0)
    say_no_way (posed, code, numbers, list);
  else if (!said_stays)
    {
      say (list, not_so_words (code));
      say_other_way (posed, numbers, list);
    }
  why_hold (posed, numbers, list);
  if (list->len > REASONS_MOST - 1)
    g_ptr_array_set_size (list, REASONS_MOST - 1);
  g_ptr_array_set_free_func (list, NULL);
  return joined (list);
}

/* ---- Any ---- */

char **
spelch_words_posed_why (const SpelchPosed *posed, SpelchSourceOf source, const SpelchNumbers *numbers)
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
      why_limit (posed, source, numbers, list);
      break;
    case SPELCH_ASKS_HOLD:
      why_hold (posed, numbers, list);
      break;
    case SPELCH_ASKS_TEARS:
    case SPELCH_N_ASKS:
    default:
      why_tears (posed, numbers, list);
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
      return wrong_hold (posed, code, numbers);
    case SPELCH_ASKS_TEARS:
    case SPELCH_N_ASKS:
    default:
      return wrong_tears (posed, code, numbers);
    }
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The full reckoning behind the answer to a question that is posed.
 */
#include "plan/posed-private.h"
#include "plan/words-choose.h"
#include "plan/words-posed-private.h"

#include <glib/gi18n-lib.h>

/* Takes @sentences. The last @spare of them are left out. */
static void
say_all (GPtrArray *list, char **sentences, guint spare)
{
  guint n = g_strv_length (sentences);
  for (guint i = 0; i + spare < n; i++)
    spelch_words_say (list, g_strdup (sentences[i]));
  g_strfreev (sentences);
}

/* ---- Edges ---- */

/* "Show face, motor side:" and its chain. */
static void
reckon_edge (const SpelchPosed *posed, const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers,
             GPtrArray *list)
{
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  if (edge == NULL)
    return;
  g_autofree char *face = spelch_words_face (plan, &posed->part->cuts[0], side);
  spelch_words_say (
      list,
      g_strdup_printf ("%s: %s.", face, spelch_words_grade (edge->grade, spelch_plan_facing (plan, side))));
  say_all (list, spelch_words_edge_reckoning (plan, side, numbers), 0);
}

static void
reckon_edges (const SpelchPosed *posed, const SpelchPlan *plan, const SpelchNumbers *numbers, GPtrArray *list)
{
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    reckon_edge (posed, plan, (SpelchSide)side, numbers, list);
}

static void
reckon_way_up (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  for (int face = SPELCH_FACE_A; face <= SPELCH_FACE_B; face++)
    {
      int i = spelch_posed_find (posed, spelch_code_of (&SPELCH_FACE_CODES, face));
      g_autofree char *way = spelch_words_posed_choice (posed, (guint)i, numbers);
      spelch_words_say (list, g_strdup_printf ("%s:", way));
      reckon_edges (posed, posed->plan.near == (SpelchFace)face ? &posed->plan : &posed->turned, numbers,
                    list);
    }
}

/* ---- Depths ---- */

static void
reckon_first_pass (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  const SpelchPlan *plan = &posed->plan;
  double reach = plan->flutes.turn_over + plan->flutes.overlap / 2, together = reach + plan->near_layer;
  g_autofree char *up = spelch_words_exactly (numbers, reach);
  g_autofree char *layer = spelch_words_exactly (numbers, plan->near_layer);
  g_autofree char *both = spelch_words_exactly (numbers, together);
  g_autofree char *whole = spelch_words_exactly (numbers, plan->through_depth);
  g_autofree char *spare = spelch_words_exactly (numbers, posed->depths.from - together);
  g_autofree char *sum = spelch_words_exactly (numbers, posed->depths.from);
  /* TRANSLATORS: lengths: "6.35 mm of up-shear + 1.3 mm of face layer = 7.65 mm (geometry)." */
  spelch_words_say (list, g_strdup_printf (_ ("%s of up-shear + %s of face layer = %s (%s)."), up, layer,
                                           both, spelch_words_evidence (SPELCH_EVIDENCE_GEOMETRY)));
  if (posed->right == 0)
    spelch_words_say (list, g_strdup_printf (_ ("That is more than the %s of the cut."), whole));
  else if (posed->depths.from - together > 0.005)
    spelch_words_say (
        list, g_strdup_printf (_ ("%s + %s for what depth and up-shear may be off = %s."), both, spare, sum));
}

/* ---- Bits ---- */

static void
reckon_bit (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  if (posed->ranking->len == 0)
    return;
  const SpelchChoice *best = posed->ranking->pdata[0];
  for (guint i = 0; i < best->n_reasons; i++)
    if (spelch_reason_is_for (best->reasons[i].kind))
      spelch_words_say (list, spelch_words_reason (best, &best->reasons[i], numbers));
  reckon_edges (posed, &best->plan, numbers, list);
}

/* ---- Limits and holding ---- */

static SpelchWhyCase
case_of (const SpelchPosed *posed, SpelchSourceOf source)
{
  const SpelchPart *part = posed->part;
  int bit = spelch_part_find_bit (part, part->cuts[0].bit);
  return (SpelchWhyCase){ .constants = posed->constants,
                          .source = source,
                          .part = part,
                          .cut = &part->cuts[0],
                          .bit = &part->bits[MAX (bit, 0)],
                          .plan = &posed->plan };
}

/* On a table and by hand the chain of the seat ends with advice. */
static guint
advice_in (const SpelchPlan *plan)
{
  return plan->machine == SPELCH_MACHINE_GANTRY ? 0 : 1;
}

static void
reckon_press (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list)
{
  if (posed->plan.hold_needed_n > 0)
    spelch_words_say (list, spelch_words_posed_press (posed->plan.hold_needed_n, numbers));
}

static void
reckon_limit (const SpelchPosed *posed, SpelchSourceOf source, const SpelchNumbers *numbers, GPtrArray *list)
{
  const SpelchWhyCase of = case_of (posed, source);
  const SpelchLimit *binding = spelch_plan_binding (&posed->plan);
  bool holding = binding != NULL && binding->kind == SPELCH_LIMIT_HOLDING;
  say_all (list, spelch_words_why (SPELCH_WHY_BINDING, &of, numbers), holding ? advice_in (&posed->plan) : 0);
  if (holding)
    reckon_press (posed, numbers, list);
}

static void
reckon_hold (const SpelchPosed *posed, SpelchSourceOf source, const SpelchNumbers *numbers, GPtrArray *list)
{
  const SpelchPlan *plan = &posed->plan;
  const SpelchWhyCase of = case_of (posed, source);
  g_autofree char *factor = spelch_words_hold (plan, numbers);
  if (plan->tabs.count > 0)
    {
      g_autofree char *holds = spelch_words_count (plan->tabs.holds_n);
      g_autofree char *needed = spelch_words_count (plan->tabs.needed_n);
      spelch_words_say (
          list,
          g_strdup_printf (_ ("The tabs bear %s N sideways at the least; to bear twice the force of the bit "
                              "takes %s N (%s)."),
                           holds, needed, spelch_words_evidence (SPELCH_EVIDENCE_ANALOGY)));
    }
  if (*factor != '\0')
    /* TRANSLATORS: "23.7 times the bit's force, 9.1 at worst" */
    spelch_words_say (list, g_strdup_printf (_ ("Held with %s."), factor));
  say_all (list, spelch_words_why (SPELCH_WHY_SEAT, &of, numbers), advice_in (plan));
  reckon_press (posed, numbers, list);
}

char **
spelch_words_posed_reckoning (const SpelchPosed *posed, SpelchSourceOf source, const SpelchNumbers *numbers)
{
  GPtrArray *list = g_ptr_array_new ();
  switch (posed->exercise->asks)
    {
    case SPELCH_ASKS_FIRST_PASS:
      reckon_first_pass (posed, numbers, list);
      break;
    case SPELCH_ASKS_BIT:
      reckon_bit (posed, numbers, list);
      break;
    case SPELCH_ASKS_WAY_UP:
      reckon_way_up (posed, numbers, list);
      break;
    case SPELCH_ASKS_LIMIT:
      reckon_limit (posed, source, numbers, list);
      break;
    case SPELCH_ASKS_HOLD:
      reckon_hold (posed, source, numbers, list);
      break;
    case SPELCH_ASKS_TEARS:
    case SPELCH_N_ASKS:
    default:
      reckon_edges (posed, &posed->plan, numbers, list);
    }
  g_ptr_array_add (list, NULL);
  return (char **)g_ptr_array_free (list, FALSE);
}

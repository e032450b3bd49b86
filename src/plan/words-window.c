/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is said about the clean windows: where they lie, and what would open an empty one.
 */
#include "plan/words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* ---- What would open it ---- */

/* "of 7.2 mm or less", "of 2.2 mm to 16.5 mm". */
static char *
up_shear_asked_for (const SpelchWindows *w, const SpelchNumbers *numbers)
{
  g_autofree char *least = spelch_words_at_least (numbers, w->needs_up_shear_from);
  g_autofree char *most = spelch_words_at_most (numbers, w->needs_up_shear_to);
  /* TRANSLATORS: follows "a compression bit with an up-shear" */
  return w->needs_up_shear_from > 0 ? g_strdup_printf (_ ("of %s to %s"), least, most)
                                    : g_strdup_printf (_ ("of %s or less"), most);
}

/* Which other bit would keep the face. A down-cut one pushes the board off a router table. */
static char *
other_bit_sentence (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers)
{
  g_autofree char *shear = up_shear_asked_for (&plan->windows, numbers);
  bool down = side == SPELCH_SIDE_MOTOR, table = plan->machine == SPELCH_MACHINE_TABLE;
  const char *simply = !down   ? _ ("An up-cut bit would keep it.")
                       : table ? _ ("With featherboards a down-cut bit would keep it.")
                               : _ ("A down-cut bit would keep it.");
  const char *blind
      = table ? _ ("With featherboards a down-cut bit would keep it, and so would a compression bit with an "
                   "up-shear %s.")
              : _ ("A down-cut bit would keep it, and so would a compression bit with an up-shear %s.");
  const char *through
      = !down
            ? _ ("An up-cut bit would keep it; a compression bit with an up-shear %s would keep both faces.")
        : table
            ? _ ("With featherboards a down-cut bit would keep it; a compression bit with an up-shear %s "
                 "would keep both faces.")
            : _ (
                "A down-cut bit would keep it; a compression bit with an up-shear %s would keep both faces.");
  if (plan->windows.needs_up_shear_to <= 0)
    return g_strdup (simply);
  return g_strdup_printf (plan->through ? through : blind, shear);
}

static char *
backer_sentence (const SpelchPlan *plan, const SpelchOpener *opener, const SpelchNumbers *numbers)
{
  double needs = plan->windows.needs_overcut_mm;
  g_autofree char *backer = spelch_words_at_least (numbers, opener->backer_mm);
  g_autofree char *below = spelch_words_at_least (numbers, needs);
  g_autofree char *allowed = spelch_words_length (numbers, plan->overcut_most);
  if (needs <= plan->overcut_most)
    return g_strdup_printf (_ ("A backer at least %s thick against the far face opens a depth that holds."),
                            backer);
  return g_strdup_printf (
      _ ("The tip would have to run %s below the board, and only %s is allowed. A backer at least "
         "%s thick against the far face allows it, tolerances included."),
      below, allowed, backer);
}

static char *
measured_backer_sentence (const SpelchOpener *opener, const SpelchNumbers *numbers)
{
  g_autofree char *backer = spelch_words_at_least (numbers, opener->backer_mm);
  return g_strdup_printf (
      _ ("Measure the board and put a backer at least %s thick against the far face, and a depth will hold."),
      backer);
}

static char *
remedy (const SpelchPlan *plan, SpelchSide side, const SpelchOpener *opener, const SpelchNumbers *numbers)
{
  switch (opener->by)
    {
    case SPELCH_OPENED_BY_MEASURE:
      return g_strdup (
          _ ("The board may be thicker or thinner than it is sold as. Measure it, and a depth will hold."));
    case SPELCH_OPENED_BY_BED:
      return g_strdup (_ ("Set zero on the bed, and a depth will hold."));
    case SPELCH_OPENED_BY_MEASURE_AND_BED:
      return g_strdup (_ ("Measure the board and set zero on the bed, and a depth will hold."));
    case SPELCH_OPENED_BY_BACKER:
      return backer_sentence (plan, opener, numbers);
    case SPELCH_OPENED_BY_MEASURE_AND_BACKER:
      return measured_backer_sentence (opener, numbers);
    case SPELCH_OPENED_BY_LONGER_BIT:
      return g_strdup (_ ("The bit doesn't reach deep enough: take a longer one."));
    case SPELCH_OPENED_BY_OTHER_BIT:
      return other_bit_sentence (plan, side, numbers);
    case SPELCH_OPENED_BY_NOTHING_NEEDED:
    default:
      return g_strdup ("");
    }
}

char *
spelch_words_opener (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers)
{
  const SpelchWindows *w = &plan->windows;
  return remedy (plan, side, side == SPELCH_SIDE_MOTOR ? &w->near : &w->far, numbers);
}

/* What to do where each face has its depths, but not the same ones. */
static char *
odds_sentence (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  const SpelchWindows *w = &plan->windows;
  SpelchOpener both = { w->opened_by, w->opened_mm };
  g_autofree char *first = spelch_words_at_least (numbers, w->robust.first_pass.from);
  g_autofree char *last = spelch_words_at_most (numbers, w->robust.last_tip.to);
  g_autofree char *how
      = both.by != SPELCH_OPENED_BY_OTHER_BIT
            ? remedy (plan, SPELCH_SIDE_MOTOR, &both, numbers)
            : g_strdup (
                _ ("No compression bit keeps both faces of so thin a board: score the motor-side face "
                   "with a down-cut bit first, and cut through with an up-cut one."));
  return g_strdup_printf (
      _ ("No single pass keeps both faces of this board: the one on the motor side asks for %s or deeper, "
         "the far one for %s or less. %s"),
      first, last, how);
}

/* ---- Where it lies ---- */

/* A window so narrow that both its ends look the same is one depth. */
static bool
is_one_depth (const SpelchRange *range, const SpelchNumbers *numbers)
{
  g_autofree char *from = spelch_words_at_least (numbers, range->from);
  g_autofree char *to = spelch_words_at_most (numbers, range->to);
  return !spelch_words_fits (numbers, range->from, range->to) || g_str_equal (from, to);
}

/* "from 8.3 mm to 18.3 mm deep", "18.3 mm deep" */
static char *
depths (const SpelchRange *range, const SpelchNumbers *numbers)
{
  g_autofree char *from = spelch_words_at_least (numbers, range->from);
  g_autofree char *to = spelch_words_at_most (numbers, range->to);
  g_autofree char *between = spelch_words_exactly (numbers, (range->from + range->to) / 2);
  if (!is_one_depth (range, numbers))
    return g_strdup_printf (_ ("from %s to %s deep"), from, to);
  return g_strdup_printf (_ ("%s deep"),
                          spelch_words_fits (numbers, range->from, range->to) ? from : between);
}

static char *
open_window (const SpelchRange *just, const SpelchRange *sure, bool first, const SpelchNumbers *numbers)
{
  g_autofree char *where = depths (sure->empty ? just : sure, numbers);
  g_autofree char *exact = spelch_words_at_least (numbers, just->from);
  if (first && just->from <= 0)
    return g_strdup (_ ("This face is kept at any depth of the first pass."));
  if (sure->empty)
    return g_strdup_printf (
        first ? _ ("With everything exact, this face is kept by a first pass %s; with tolerances, by none.")
              : _ ("With everything exact, this face is kept by a last pass %s; with tolerances, by none."),
        where);
  if (is_one_depth (sure, numbers))
    return g_strdup_printf (first ? _ ("This face is kept by a first pass %s, tolerances included.")
                                  : _ ("This face is kept by a last pass %s, tolerances included."),
                            where);
  return g_strdup_printf (
      first ? _ ("This face is kept by a first pass %s, tolerances included (from %s with everything exact).")
            : _ ("This face is kept by a last pass %s, tolerances included (from %s with everything exact)."),
      where, exact);
}

/* Where hands feed, a face that asks for a pass deeper than hands can follow isn't kept, or only with
 * everything exact; NULL elsewhere. */
static char *
by_hand_sentence (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  const SpelchRange *just = &plan->windows.nominal.first_pass, *sure = &plan->windows.robust.first_pass;
  const SpelchEdge *edge = spelch_plan_worst (plan, SPELCH_SIDE_MOTOR);
  g_autofree char *deep = spelch_words_exactly (numbers, plan->step_by_hand);
  double first = plan->n_passes > 0 ? plan->passes[0].tip_mm : 0;
  /* It is as deep as that, in tenths, unless something else keeps it shallower. */
  bool other_reason
      = plan->n_passes == 0 || first < plan->step_by_hand - 0.1 || edge == NULL || edge->on_finishing;
  if (plan->step_by_hand <= 0 || other_reason)
    return NULL;
  if (!just->empty && just->from > first + 1e-6)
    return g_strdup_printf (_ ("But fed by hand no pass is planned deeper than the bit is thick, %s: so this "
                               "face isn't kept."),
                            deep);
  if (!sure->empty && sure->from > first + 1e-6)
    return g_strdup_printf (_ ("But fed by hand no pass is planned deeper than the bit is thick, %s: so this "
                               "face is kept only with everything exact."),
                            deep);
  return NULL;
}

char *
spelch_words_window (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers)
{
  bool first = side == SPELCH_SIDE_MOTOR;
  const SpelchRange *just = first ? &plan->windows.nominal.first_pass : &plan->windows.nominal.last_tip;
  const SpelchRange *sure = first ? &plan->windows.robust.first_pass : &plan->windows.robust.last_tip;
  if (!first && !plan->windows.far_applies)
    return g_strdup (_ ("This cut doesn't open this face."));
  g_autofree char *opener = sure->empty ? spelch_words_opener (plan, side, numbers) : NULL;
  if (just->empty)
    return g_strdup_printf (first ? _ ("No depth of the first pass keeps this face. %s")
                                  : _ ("No depth keeps this face. %s"),
                            opener);
  g_autofree char *open = open_window (just, sure, first, numbers);
  if (plan->windows.at_odds)
    opener = odds_sentence (plan, numbers);
  char *by_hand = first ? by_hand_sentence (plan, numbers) : NULL;
  if (by_hand != NULL)
    {
      g_free (opener);
      opener = by_hand;
    }
  return opener != NULL ? g_strdup_printf ("%s %s", open, opener) : g_steal_pointer (&open);
}

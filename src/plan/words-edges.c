/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is said about the edges: the face's name, the deciding reason, the whole chain of reasons, the window.
 */
#include "plan/words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static bool
is_compression (const SpelchPlan *plan)
{
  return plan->bit_kind == SPELCH_BIT_COMPRESSION;
}

/* The face layer with its article, to stand in a sentence. */
static const char *
layer_noun (const SpelchPlan *plan, SpelchSide side)
{
  bool motor = side == SPELCH_SIDE_MOTOR;
  if (spelch_plan_is_laminate (plan, side))
    return motor ? _ ("the face skin") : _ ("the back skin");
  if (motor ? plan->near_is_veneer : plan->far_is_veneer)
    return motor ? _ ("the face ply") : _ ("the back ply");
  return motor ? _ ("the face") : _ ("the back");
}

char *
spelch_words_face (const SpelchPlan *plan, const SpelchCut *cut, SpelchSide side)
{
  SpelchFace face = side == SPELCH_SIDE_MOTOR ? plan->near : spelch_face_other (plan->near);
  const char *where = side == SPELCH_SIDE_MOTOR ? _ ("motor side") : _ ("far side");
  if (cut->seen_a && cut->seen_b)
    /* TRANSLATORS: "Show face 1, motor side" */
    return g_strdup_printf (_ ("Show face %d, %s"), face == SPELCH_FACE_A ? 1 : 2, where);
  return g_strdup_printf (spelch_cut_sees (cut, face) ? _ ("Show face, %s") : _ ("Hidden face, %s"), where);
}

/* ---- The deciding reason ---- */

static char *
first_pass_advice (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  const SpelchRange *sure = &plan->windows.robust.first_pass, *just = &plan->windows.nominal.first_pass;
  if (sure->empty && just->empty)
    return spelch_words_window (plan, SPELCH_SIDE_MOTOR, numbers);
  g_autofree char *depth = spelch_words_at_least (numbers, (sure->empty ? just : sure)->from);
  return g_strdup_printf (_ ("Set the first pass to %s or deeper."), depth);
}

/* What an entry on the finished line does to the motor-side face, and how to spare it. */
static char *
entry_reason (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers)
{
  const char *noun = layer_noun (plan, SPELCH_SIDE_MOTOR);
  bool long_way = edge->by_entry_mm >= 10;
  g_autofree char *length
      = spelch_words_length (numbers, long_way ? round (edge->by_entry_mm) : edge->by_entry_mm);
  const char *format = plan->entry.kind == SPELCH_ENTRY_RAMP ? _ ("The ramp lifts %s over its first %s. %s")
                       : plan->entry.kind == SPELCH_ENTRY_HELIX ? _ ("The spiral lifts %s over %s. %s")
                                                                : _ ("The plunge lifts %s over %s. %s");
  return g_strdup_printf (format, noun, length,
                          plan->entry.waste ? _ ("Plunge or ramp in the waste.")
                                            : _ ("A drilled hole, or a start from an edge, spares it."));
}

static char *
motor_reason (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers)
{
  const char *noun = layer_noun (plan, SPELCH_SIDE_MOTOR);
  if (edge->load == SPELCH_LOAD_PULL_OUT && is_compression (plan))
    {
      g_autofree char *advice = first_pass_advice (plan, numbers);
      return g_strdup_printf (_ ("The up-shear still reaches %s. %s"), noun, advice);
    }
  if (edge->load == SPELCH_LOAD_PULL_OUT)
    return g_strdup_printf (
        _ ("Up-shear lifts %s out at every depth. A down-cut or compression bit presses it in."), noun);
  if (edge->load == SPELCH_LOAD_NEUTRAL)
    return g_strdup_printf (_ ("Straight edges neither lift nor press %s."), noun);
  if (edge->by_entry_mm > 0)
    return entry_reason (plan, edge, numbers);
  if (!is_compression (plan))
    return g_strdup_printf (_ ("Down-shear presses %s in at every depth."), noun);
  if (!spelch_plan_sure (plan, SPELCH_SIDE_MOTOR) && !plan->windows.robust.first_pass.empty)
    {
      g_autofree char *advice = first_pass_advice (plan, numbers);
      return g_strdup_printf (_ ("Down-shear presses %s in, but only just. %s"), noun, advice);
    }
  g_autofree char *inside = spelch_words_length (numbers, edge->span_from - plan->flutes.turn_over);
  return g_strdup_printf (_ ("Down-shear presses %s in, with %s to spare."), noun, inside);
}

static char *
tip_place (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *over = spelch_words_length (numbers, plan->overcut);
  return plan->machine == SPELCH_MACHINE_GANTRY
             ? g_strdup_printf (_ ("The tip runs %s into what the board lies on;"), over)
             : g_strdup_printf (_ ("The tip runs %s past the board;"), over);
}

static char *
far_reason (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers)
{
  const char *noun = layer_noun (plan, SPELCH_SIDE_FAR);
  g_autofree char *tip = tip_place (plan, numbers);
  bool backed = spelch_edge_points (edge, SPELCH_TERM_BACKING) < 0;
  switch (edge->load)
    {
    case SPELCH_LOAD_PRESS_IN:
      return g_strdup_printf (_ ("%s up-shear draws %s in."), tip, noun);
    case SPELCH_LOAD_NEUTRAL:
      return g_strdup_printf (backed
                                  ? _ ("%s straight edges, and the backing holds %s.")
                                  : _ ("%s straight edges neither press nor lift %s, and nothing backs it."),
                              tip, noun);
    case SPELCH_LOAD_PULL_OUT:
    case SPELCH_LOAD_NOT_CUT:
    default:
      if (is_compression (plan))
        return g_strdup_printf (
            _ ("%s that brings the down-shear to %s and pushes it out. Run it less deep."), tip, noun);
      return g_strdup_printf (backed ? _ ("%s down-shear pushes %s out, and the backing holds part of it.")
                                     : _ ("%s down-shear pushes %s out, and nothing backs it."),
                              tip, noun);
    }
}

/* What spoils an edge whose shear is right. */
static char *
other_reason (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers)
{
  if (spelch_edge_points (edge, SPELCH_TERM_WEAR) > 0)
    return g_strdup (_ ("The bit is no longer sharp."));
  if (spelch_edge_points (edge, SPELCH_TERM_CHIP) > 0)
    {
      g_autofree char *chip = spelch_words_decimal (numbers, edge->chip_mm, 2);
      return g_strdup_printf (_ ("Chips of %s mm split ahead against the grain."), chip);
    }
  if (spelch_edge_points (edge, SPELCH_TERM_GRAIN) > 0)
    return g_strdup (_ ("The cut runs against the grain."));
  if (spelch_edge_points (edge, SPELCH_TERM_EXIT_CORNER) > 0)
    return g_strdup (_ ("It runs out across the grain over an edge with nothing behind it."));
  return NULL;
}

char *
spelch_words_edge_reason (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers)
{
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  if (edge == NULL)
    return g_strdup (plan->n_passes == 0 ? _ ("No way of cutting it was found.")
                                         : _ ("This cut doesn't open this face."));
  g_autofree char *shear
      = side == SPELCH_SIDE_MOTOR ? motor_reason (plan, edge, numbers) : far_reason (plan, edge, numbers);
  g_autofree char *other = edge->load == SPELCH_LOAD_PRESS_IN ? other_reason (plan, edge, numbers) : NULL;
  if (other != NULL)
    return g_strdup_printf ("%s %s", shear, other);
  return g_steal_pointer (&shear);
}

/* ---- The chain of reasons ---- */

static const char *
evidence_words (SpelchEvidence evidence)
{
  switch (evidence)
    {
    case SPELCH_EVIDENCE_MEASURED:
      return _ ("measured");
    case SPELCH_EVIDENCE_ANALOGY:
      return _ ("by analogy");
    case SPELCH_EVIDENCE_GEOMETRY:
      return _ ("geometry");
    case SPELCH_EVIDENCE_PRACTICE:
    default:
      return _ ("shop practice");
    }
}

static char *
term_sentence (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchTerm *term,
               const SpelchNumbers *numbers)
{
  g_autofree char *chip = spelch_words_decimal (numbers, edge->chip_mm, 2);
  g_autofree char *blunting = spelch_words_decimal (numbers, plan->blunting, 1);
  const char *noun = layer_noun (plan, edge->side);
  switch (term->kind)
    {
    case SPELCH_TERM_SHEAR:
      if (term->points == 0)
        return g_strdup_printf (_ ("The shear that meets %s costs no points"), noun);
      return g_strdup_printf (edge->load == SPELCH_LOAD_NEUTRAL ? _ ("No shear presses %s in: %d points")
                                                                : _ ("The shear pulls %s out: %d points"),
                              noun, term->points);
    case SPELCH_TERM_BACKING:
      return g_strdup_printf (_ ("A firm backing holds %s: %d point fewer"), noun, -term->points);
    case SPELCH_TERM_SCORED:
      return g_strdup_printf (_ ("Its outer part was severed before: %d point fewer"), -term->points);
    case SPELCH_TERM_GRAIN:
      return g_strdup_printf (_ ("The cut meets its grain the wrong way: %d point"), term->points);
    case SPELCH_TERM_EXIT_CORNER:
      return g_strdup_printf (_ ("The cut runs out across the grain over an unbacked edge: %d point"),
                              term->points);
    case SPELCH_TERM_CHIP:
      return g_strdup_printf (_ ("The largest chip is %s mm thick and splits ahead: %d points"), chip,
                              term->points);
    case SPELCH_TERM_WEAR:
      return g_strdup_printf (_ ("The bit cuts with %s times a new edge's rubbing: %d points"), blunting,
                              term->points);
    case SPELCH_N_TERMS:
    default:
      return g_strdup ("");
    }
}

static char *
span_sentence (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers)
{
  g_autofree char *from = spelch_words_exactly (numbers, edge->span_from);
  g_autofree char *to = spelch_words_exactly (numbers, edge->span_to);
  g_autofree char *turn = spelch_words_exactly (numbers, plan->flutes.turn_over);
  const char *noun = layer_noun (plan, edge->side);
  if (is_compression (plan))
    return g_strdup_printf (_ ("Pass %d meets %s %s to %s above the tip; the shear turns over at %s"),
                            edge->pass, noun, from, to, turn);
  return g_strdup_printf (_ ("Pass %d meets %s %s to %s above the tip"), edge->pass, noun, from, to);
}

static char *
slow_sentence (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *speed = spelch_words_decimal (numbers, plan->cutting_speed, 1);
  return g_strdup_printf (_ ("The edge moves at only %s m/s: forces and power may be out by half either way"),
                          speed);
}

static void
add_reason (GPtrArray *list, char *sentence, SpelchEvidence evidence)
{
  /* TRANSLATORS: a reason, then how well it is founded: "… : 2 points (measured)." */
  g_ptr_array_add (list, g_strdup_printf (_ ("%s (%s)."), sentence, evidence_words (evidence)));
  g_free (sentence);
}

static void
add_arris_reasons (GPtrArray *list, const SpelchPlan *plan, const SpelchEdge *edge,
                   const SpelchNumbers *numbers)
{
  add_reason (list, span_sentence (plan, edge, numbers), SPELCH_EVIDENCE_GEOMETRY);
  for (guint i = 0; i < edge->n_terms; i++)
    add_reason (list, term_sentence (plan, edge, &edge->terms[i], numbers), edge->terms[i].evidence);
  if (edge->on_finishing)
    add_reason (
        list,
        g_strdup (_ ("The finishing pass cuts this edge again: clean if the tear before it is smaller than "
                     "the allowance. Confirm it on the test strip")),
        SPELCH_EVIDENCE_GEOMETRY);
  g_ptr_array_add (
      list, g_strdup_printf (_ ("Grade %d of 5: %s."), edge->grade,
                             spelch_words_grade (edge->grade, spelch_plan_is_laminate (plan, edge->side))));
}

static char **
why (const SpelchPlan *plan, const SpelchEdge *edge, SpelchSide side, const SpelchNumbers *numbers)
{
  GPtrArray *list = g_ptr_array_new ();
  if (edge != NULL && edge->grade > 0)
    add_arris_reasons (list, plan, edge, numbers);
  if (plan->slow && side == SPELCH_SIDE_MOTOR)
    add_reason (list, slow_sentence (plan, numbers), SPELCH_EVIDENCE_PRACTICE);
  g_ptr_array_add (list, spelch_words_window (plan, side, numbers));
  g_ptr_array_add (list, NULL);
  return (char **)g_ptr_array_free (list, FALSE);
}

char **
spelch_words_edge_why (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers)
{
  return why (plan, spelch_plan_worst (plan, side), side, numbers);
}

char **
spelch_words_arris_why (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers)
{
  return why (plan, edge, edge->side, numbers);
}

/* ---- The window ---- */

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

/* Which other bit would keep the face. */
static char *
other_bit_sentence (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers)
{
  const SpelchWindows *w = &plan->windows;
  g_autofree char *shear = up_shear_asked_for (w, numbers);
  bool down = side == SPELCH_SIDE_MOTOR, both = plan->through;
  if (w->needs_up_shear_to <= 0)
    return g_strdup (down ? _ ("A down-cut bit would keep it.") : _ ("An up-cut bit would keep it."));
  if (!both)
    return g_strdup_printf (
        _ ("A down-cut bit would keep it, and so would a compression bit with an up-shear %s."), shear);
  return g_strdup_printf (
      down ? _ ("A down-cut bit would keep it; a compression bit with an up-shear %s would keep both faces.")
           : _ ("An up-cut bit would keep it; a compression bit with an up-shear %s would keep both faces."),
      shear);
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
      _ ("The tip would have to run %s below the board, and only %s is allowed. A backer at least %s thick "
         "against the far face allows it, tolerances included."),
      below, allowed, backer);
}

/* What would open the window of a face; empty when it is open. */
static char *
opener_sentence (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers)
{
  const SpelchOpener *opener = side == SPELCH_SIDE_MOTOR ? &plan->windows.near : &plan->windows.far;
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
    case SPELCH_OPENED_BY_LONGER_BIT:
      return g_strdup (_ ("The bit doesn't reach deep enough: take a longer one."));
    case SPELCH_OPENED_BY_OTHER_BIT:
      return other_bit_sentence (plan, side, numbers);
    case SPELCH_OPENED_BY_NOTHING_NEEDED:
    default:
      return g_strdup ("");
    }
}

static char *
open_window (const SpelchRange *just, const SpelchRange *sure, bool first, const SpelchNumbers *numbers)
{
  const SpelchRange *range = sure->empty ? just : sure;
  g_autofree char *from = spelch_words_at_least (numbers, range->from);
  g_autofree char *to = spelch_words_at_most (numbers, range->to);
  g_autofree char *exact = spelch_words_at_least (numbers, just->from);
  if (first && just->from <= 0)
    return g_strdup (_ ("This face is kept at any depth of the first pass."));
  if (!sure->empty && g_str_equal (from, to))
    return g_strdup_printf (first ? _ ("This face is kept by a first pass %s deep, tolerances included.")
                                  : _ ("This face is kept by a last pass %s deep, tolerances included."),
                            from);
  if (sure->empty)
    return g_strdup_printf (
        first ? _ ("With everything exact, this face is kept by a first pass from %s to %s deep.")
              : _ ("With everything exact, this face is kept by a last pass from %s to %s deep."),
        from, to);
  return g_strdup_printf (
      first ? _ ("This face is kept by a first pass from %s to %s deep, tolerances included (from %s with "
                 "everything exact).")
            : _ ("This face is kept by a last pass from %s to %s deep, tolerances included (from %s with "
                 "everything exact)."),
      from, to, exact);
}

char *
spelch_words_window (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers)
{
  bool first = side == SPELCH_SIDE_MOTOR;
  const SpelchRange *just = first ? &plan->windows.nominal.first_pass : &plan->windows.nominal.last_tip;
  const SpelchRange *sure = first ? &plan->windows.robust.first_pass : &plan->windows.robust.last_tip;
  if (!first && !plan->windows.far_applies)
    return g_strdup (_ ("This cut doesn't open this face."));
  g_autofree char *opener = sure->empty ? opener_sentence (plan, side, numbers) : NULL;
  if (just->empty)
    return g_strdup_printf (first ? _ ("No depth of the first pass keeps this face. %s")
                                  : _ ("No depth keeps this face. %s"),
                            opener);
  g_autofree char *open = open_window (just, sure, first, numbers);
  return opener != NULL ? g_strdup_printf ("%s %s", open, opener) : g_steal_pointer (&open);
}

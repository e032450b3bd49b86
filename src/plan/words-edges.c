/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is said about the edges: the face's name, the deciding reason, the whole chain of reasons.
 */
#include "plan/words-source.h"
#include "plan/words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>

#define NEARLY_CLEAN 2 /* grade */

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

char *
spelch_words_face_alone (const SpelchPlan *plan, const SpelchCut *cut, SpelchSide side)
{
  SpelchFace face = side == SPELCH_SIDE_MOTOR ? plan->near : spelch_face_other (plan->near);
  if (cut->seen_a && cut->seen_b)
    return g_strdup_printf (_ ("Show face %d"), face == SPELCH_FACE_A ? 1 : 2);
  return g_strdup (spelch_cut_sees (cut, face) ? _ ("Show face") : _ ("Hidden face"));
}

/* ---- The deciding reason ---- */

/* A reason and what to do about it, or the reason alone. Takes both. */
static char *
with_advice (char *reason, char *advice)
{
  char *both = *advice != '\0' ? g_strdup_printf ("%s %s", reason, advice) : g_strdup (reason);
  g_free (reason);
  g_free (advice);
  return both;
}

/* What would open the window of a face that has none; empty when it has one. */
static char *
opener_if_shut (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers)
{
  const SpelchWindow *w = &plan->windows.nominal;
  bool shut = side == SPELCH_SIDE_MOTOR ? w->first_pass.empty : w->last_tip.empty;
  return shut ? spelch_words_opener (plan, side, numbers) : g_strdup ("");
}

static char *
first_pass_advice (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  const SpelchRange *sure = &plan->windows.robust.first_pass, *just = &plan->windows.nominal.first_pass;
  if (sure->empty && just->empty)
    return spelch_words_opener (plan, SPELCH_SIDE_MOTOR, numbers);
  g_autofree char *depth = spelch_words_at_least (numbers, (sure->empty ? just : sure)->from);
  return g_strdup_printf (_ ("Set the first pass to %s or deeper."), depth);
}

/* What an entry on the finished line does to the motor-side face, and how to spare it. */
static char *
entry_reason (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers)
{
  const char *noun = layer_noun (plan, SPELCH_SIDE_MOTOR);
  bool ramp = plan->entry.kind == SPELCH_ENTRY_RAMP, spiral = plan->entry.kind == SPELCH_ENTRY_HELIX;
  bool far = numbers->unit == SPELCH_UNIT_MM && edge->by_entry_mm >= 10;
  g_autofree char *length = far ? spelch_words_exactly (numbers, round (edge->by_entry_mm))
                                : spelch_words_length (numbers, edge->by_entry_mm);
  /* only the rim of a hole is longer than the bit is wide */
  bool rim = !ramp && !spiral && edge->by_entry_mm > plan->flutes.diameter + 0.01;
  if (rim)
    return g_strdup_printf (_ ("The plunge lifts %s all round. Drill the hole with a brad point instead."),
                            noun);
  return g_strdup_printf (ramp     ? _ ("The ramp lifts %s over its first %s. %s")
                          : spiral ? _ ("The spiral lifts %s over %s. %s")
                                   : _ ("The plunge lifts %s over %s. %s"),
                          noun, length,
                          plan->entry.waste ? _ ("Plunge or ramp in the waste.")
                                            : _ ("A drilled hole, or a start from an edge, spares it."));
}

/* Pressed in by the down-shear of a compression bit: by how much, and how surely. */
static char *
pressed_in_reason (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers)
{
  const char *noun = layer_noun (plan, SPELCH_SIDE_MOTOR);
  double above = plan->flutes.turn_over + plan->flutes.overlap / 2;
  g_autofree char *inside = spelch_words_length (numbers, edge->span_from - above);
  if (spelch_plan_sure (plan, SPELCH_SIDE_MOTOR))
    return g_strdup_printf (_ ("Down-shear presses %s in, with %s to spare."), noun, inside);
  if (plan->windows.robust.first_pass.empty)
    return with_advice (
        g_strdup_printf (_ ("Down-shear presses %s in, but only with everything exact."), noun),
        spelch_words_opener (plan, SPELCH_SIDE_MOTOR, numbers));
  return with_advice (g_strdup_printf (_ ("Down-shear presses %s in, but only just."), noun),
                      first_pass_advice (plan, numbers));
}

static bool
is_by_scoring (const SpelchPlan *plan, const SpelchEdge *edge)
{
  return edge->pass > 0 && plan->passes[edge->pass - 1].bit == 1;
}

/* What the scoring pass did to the motor-side face, where that decides. */
static char *
scoring_reason (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers)
{
  const char *noun = layer_noun (plan, SPELCH_SIDE_MOTOR);
  const SpelchRange *sure = &plan->windows.robust.first_pass;
  if (edge->load == SPELCH_LOAD_PULL_OUT)
    return g_strdup_printf (_ ("The scoring pass itself lifts %s out."), noun);
  if (edge->load == SPELCH_LOAD_NEUTRAL)
    return g_strdup_printf (_ ("The scoring pass neither lifts nor presses %s."), noun);
  if (sure->empty || spelch_plan_sure (plan, SPELCH_SIDE_MOTOR))
    return g_strdup_printf (_ ("The scoring pass presses %s in before the other bit reaches it."), noun);
  g_autofree char *depth = spelch_words_at_least (numbers, sure->from);
  return g_strdup_printf (_ ("The scoring pass presses %s in, but only just: %s or deeper is surer."), noun,
                          depth);
}

static char *
rest_of_scored_reason (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  const char *noun = layer_noun (plan, SPELCH_SIDE_MOTOR);
  const SpelchRange *sure = &plan->windows.robust.first_pass, *just = &plan->windows.nominal.first_pass;
  if (sure->empty && just->empty)
    return g_strdup_printf (_ ("The scoring pass severed only the outer part of %s."), noun);
  g_autofree char *depth = spelch_words_at_least (numbers, (sure->empty ? just : sure)->from);
  return g_strdup_printf (_ ("The scoring pass severed only the outer part of %s: score %s deep or deeper."),
                          noun, depth);
}

/* A board without grain that up-shear lifts: MDF, particleboard. */
static bool
hardly_breaks_out (const SpelchPlan *plan, const SpelchEdge *edge)
{
  return edge->grade <= NEARLY_CLEAN && !plan->near_is_veneer
         && !spelch_plan_is_laminate (plan, SPELCH_SIDE_MOTOR)
         && spelch_edge_points (edge, SPELCH_TERM_GRAIN) == 0;
}

static char *
motor_reason (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers)
{
  const char *noun = layer_noun (plan, SPELCH_SIDE_MOTOR);
  if (is_by_scoring (plan, edge))
    return scoring_reason (plan, edge, numbers);
  if (edge->scored && edge->load != SPELCH_LOAD_PRESS_IN)
    return rest_of_scored_reason (plan, numbers);
  if (edge->load == SPELCH_LOAD_PULL_OUT && is_compression (plan))
    return with_advice (g_strdup_printf (plan->windows.nominal.first_pass.empty
                                             ? _ ("The up-shear reaches %s at every depth this cut allows.")
                                             : _ ("The up-shear still reaches %s."),
                                         noun),
                        first_pass_advice (plan, numbers));
  if (edge->load == SPELCH_LOAD_PULL_OUT && hardly_breaks_out (plan, edge))
    return g_strdup_printf (_ ("Up-shear lifts %s, but it has no grain to split along: little breaks out."),
                            noun);
  if (edge->load == SPELCH_LOAD_PULL_OUT)
    return with_advice (g_strdup_printf (_ ("Up-shear lifts %s out at every depth."), noun),
                        opener_if_shut (plan, SPELCH_SIDE_MOTOR, numbers));
  if (edge->load == SPELCH_LOAD_NEUTRAL)
    return with_advice (
        g_strdup_printf (spelch_edge_points (edge, SPELCH_TERM_SHEAR) > 0
                             ? _ ("Straight edges neither lift nor press %s: nothing holds its fibres, and "
                                  "some bend away uncut.")
                             : _ ("Straight edges neither lift nor press %s."),
                         noun),
        opener_if_shut (plan, SPELCH_SIDE_MOTOR, numbers));
  if (edge->by_entry_mm > 0)
    return entry_reason (plan, edge, numbers);
  if (!is_compression (plan))
    return g_strdup_printf (_ ("Down-shear presses %s in at every depth."), noun);
  return pressed_in_reason (plan, edge, numbers);
}

static char *
tip_place (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *over = spelch_words_length (numbers, plan->overcut);
  return plan->machine == SPELCH_MACHINE_GANTRY
             ? g_strdup_printf (_ ("The tip runs %s into what the board lies on;"), over)
             : g_strdup_printf (_ ("The tip runs %s past the board;"), over);
}

/* Drawn in by up-shear: how surely. */
static char *
drawn_in_reason (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  const char *noun = layer_noun (plan, SPELCH_SIDE_FAR);
  const SpelchRange *sure = &plan->windows.robust.last_tip;
  g_autofree char *tip = tip_place (plan, numbers);
  if (spelch_plan_sure (plan, SPELCH_SIDE_FAR))
    return g_strdup_printf (_ ("%s up-shear draws %s in."), tip, noun);
  if (sure->empty)
    return with_advice (
        g_strdup_printf (_ ("%s up-shear draws %s in, but only with everything exact."), tip, noun),
        spelch_words_opener (plan, SPELCH_SIDE_FAR, numbers));
  g_autofree char *from = spelch_words_at_least (numbers, sure->from - plan->thickness);
  g_autofree char *to = spelch_words_at_most (numbers, sure->to - plan->thickness);
  return g_strdup_printf (plan->overcut < sure->from - plan->thickness
                              ? _ ("%s up-shear draws %s in, but only just: %s is surer.")
                              : _ ("%s up-shear draws %s in, but only just: no more than %s is surer."),
                          tip, noun, plan->overcut < sure->from - plan->thickness ? from : to);
}

static char *
far_reason (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers)
{
  const char *noun = layer_noun (plan, SPELCH_SIDE_FAR);
  g_autofree char *tip = tip_place (plan, numbers);
  bool backed = spelch_edge_points (edge, SPELCH_TERM_BACKING) < 0;
  char *opener = opener_if_shut (plan, SPELCH_SIDE_FAR, numbers);
  switch (edge->load)
    {
    case SPELCH_LOAD_PRESS_IN:
      g_free (opener);
      return drawn_in_reason (plan, numbers);
    case SPELCH_LOAD_NEUTRAL:
      return with_advice (
          g_strdup_printf (backed ? _ ("%s straight edges don't press %s in, but the backing holds it.")
                                  : _ ("%s straight edges don't press %s in, and nothing backs it."),
                           tip, noun),
          opener);
    case SPELCH_LOAD_PULL_OUT:
    case SPELCH_LOAD_NOT_CUT:
    default:
      if (is_compression (plan))
        return with_advice (
            g_strdup_printf (_ ("%s that brings the down-shear to %s and pushes it out."), tip, noun),
            *opener != '\0' ? opener : (g_free (opener), g_strdup (_ ("Run it less deep."))));
      return with_advice (
          g_strdup_printf (backed ? _ ("%s down-shear pushes %s out, and the backing holds part of it.")
                                  : _ ("%s down-shear pushes %s out, and nothing backs it."),
                           tip, noun),
          opener);
    }
}

/* What spoils an edge beside its shear, in a sentence: a blunt bit, thick chips, the grain; NULL where
 * nothing does. */
static char *
other_cause (const SpelchEdge *edge, const SpelchNumbers *numbers)
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

static char *
uncut_reason (const SpelchPlan *plan, SpelchSide side)
{
  if (plan->n_passes == 0)
    return g_strdup (_ ("No way of cutting it was found."));
  if (!plan->through || side == SPELCH_SIDE_MOTOR)
    return g_strdup (_ ("This cut doesn't open this face."));
  if (plan->passes[plan->n_passes - 1].tip_mm > plan->depth_most + 1e-6)
    return g_strdup (_ ("The bit doesn't reach through the board: take a longer one."));
  return g_strdup (_ ("The last pass doesn't reach this face."));
}

char *
spelch_words_edge_reason (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers)
{
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  if (edge == NULL)
    return uncut_reason (plan, side);
  g_autofree char *shear
      = side == SPELCH_SIDE_MOTOR ? motor_reason (plan, edge, numbers) : far_reason (plan, edge, numbers);
  g_autofree char *other = edge->load == SPELCH_LOAD_PRESS_IN ? other_cause (edge, numbers) : NULL;
  if (other != NULL)
    return g_strdup_printf ("%s %s", shear, other);
  return g_steal_pointer (&shear);
}

/* ---- The chain of reasons ---- */

/* "2 points" */
static char *
points_words (int points)
{
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d point", "%d points", (gulong)abs (points)),
                          abs (points));
}

static const SpelchLearnt *
learnt_about (const SpelchPlan *plan, const SpelchEdge *edge)
{
  return edge->side == SPELCH_SIDE_MOTOR ? &plan->log_motor : &plan->log_far;
}

/* What the shop log adds or takes away, and the results it does so for. */
static char *
log_sentence (const SpelchPlan *plan, const SpelchEdge *edge, int by)
{
  guint cuts = learnt_about (plan, edge)->points_cuts;
  g_autofree char *points = points_words (by);
  return g_strdup_printf (
      by < 0 ? g_dngettext (GETTEXT_PACKAGE, "Your log: %u cut came out cleaner than expected, %s less",
                            "Your log: %u cuts came out cleaner than expected, %s less", cuts)
             : g_dngettext (GETTEXT_PACKAGE, "Your log: %u cut came out worse than expected, %s more",
                            "Your log: %u cuts came out worse than expected, %s more", cuts),
      cuts, points);
}

static char *
log_window_sentence (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers)
{
  const SpelchLearnt *learnt = learnt_about (plan, edge);
  g_autofree char *nearer = spelch_words_exactly (numbers, learnt->window_mm);
  return g_strdup_printf (
      g_dngettext (
          GETTEXT_PACKAGE,
          "Your log: %u cut tore though it was clear of where the shear turns over, which counts as %s "
          "nearer",
          "Your log: %u cuts tore though they were clear of where the shear turns over, which counts "
          "as %s nearer",
          learnt->window_cuts),
      learnt->window_cuts, nearer);
}

static char *
term_sentence (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchTerm *term,
               const SpelchNumbers *numbers)
{
  g_autofree char *chip = spelch_words_decimal (numbers, edge->chip_mm, 2);
  g_autofree char *blunting = spelch_words_decimal (numbers, plan->blunting, 1);
  g_autofree char *points = points_words (term->points);
  const char *noun = layer_noun (plan, edge->side);
  switch (term->kind)
    {
    case SPELCH_TERM_SHEAR:
      if (term->points == 0)
        return g_strdup_printf (_ ("The shear that meets %s costs no points"), noun);
      if (edge->by_entry_mm > 0)
        return g_strdup_printf (_ ("Where the bit goes in, the shear pulls %s out: %s"), noun, points);
      return g_strdup_printf (edge->load == SPELCH_LOAD_NEUTRAL ? _ ("No shear presses %s in: %s")
                                                                : _ ("The shear pulls %s out: %s"),
                              noun, points);
    case SPELCH_TERM_BACKING:
      return g_strdup_printf (_ ("A firm backing holds %s: %s fewer"), noun, points);
    case SPELCH_TERM_SCORED:
      return g_strdup_printf (_ ("Its outer part was severed before: %s fewer"), points);
    case SPELCH_TERM_GRAIN:
      return g_strdup_printf (_ ("The cut meets its grain the wrong way: %s"), points);
    case SPELCH_TERM_EXIT_CORNER:
      return g_strdup_printf (_ ("The cut runs out across the grain over an unbacked edge: %s"), points);
    case SPELCH_TERM_CHIP:
      return g_strdup_printf (_ ("The largest chip is %s mm thick and splits ahead: %s"), chip, points);
    case SPELCH_TERM_WEAR:
      return g_strdup_printf (_ ("The bit cuts with %s times a new edge's rubbing: %s"), blunting, points);
    case SPELCH_TERM_LOG:
      return log_sentence (plan, edge, term->points);
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
  if (is_compression (plan) && !is_by_scoring (plan, edge))
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
  g_ptr_array_add (list, g_strdup_printf (_ ("%s (%s)."), sentence, spelch_words_evidence (evidence)));
  g_free (sentence);
}

/* A term with the work it stands on, as cited; shop practice has none. */
static void
add_term_reason (GPtrArray *list, char *sentence, const SpelchFounding *founding)
{
  if (founding->evidence == SPELCH_EVIDENCE_PRACTICE)
    {
      add_reason (list, sentence, founding->evidence);
      return;
    }
  /* TRANSLATORS: a reason, how well it is founded, and the work: "… : 2 points (measured: Smith 2017, ch.
   * 6)." */
  g_ptr_array_add (list,
                   g_strdup_printf (_ ("%s (%s: %s)."), sentence, spelch_words_evidence (founding->evidence),
                                    spelch_words_source (founding->source)));
  g_free (sentence);
}

static void
add_arris_reasons (GPtrArray *list, const SpelchPlan *plan, const SpelchEdge *edge,
                   const SpelchNumbers *numbers)
{
  add_reason (list, span_sentence (plan, edge, numbers), SPELCH_EVIDENCE_GEOMETRY);
  if (is_compression (plan) && learnt_about (plan, edge)->window_mm > 0)
    add_reason (list, log_window_sentence (plan, edge, numbers), SPELCH_EVIDENCE_PRACTICE);
  for (guint i = 0; i < edge->n_terms; i++)
    add_term_reason (list, term_sentence (plan, edge, &edge->terms[i], numbers), &edge->terms[i].founding);
  if (edge->on_finishing)
    add_reason (
        list,
        g_strdup (_ ("The finishing pass cuts this edge again: clean if the tear before it is smaller than "
                     "the allowance. Confirm it on the test strip")),
        SPELCH_EVIDENCE_GEOMETRY);
  g_ptr_array_add (list,
                   g_strdup_printf (_ ("Grade %d of 5: %s."), edge->grade,
                                    spelch_words_grade (edge->grade, spelch_plan_facing (plan, edge->side))));
}

static char **
why (const SpelchPlan *plan, const SpelchEdge *edge, SpelchSide side, bool windows,
     const SpelchNumbers *numbers)
{
  GPtrArray *list = g_ptr_array_new ();
  if (edge != NULL && edge->grade > 0)
    add_arris_reasons (list, plan, edge, numbers);
  if (plan->slow && side == SPELCH_SIDE_MOTOR)
    add_reason (list, slow_sentence (plan, numbers), SPELCH_EVIDENCE_PRACTICE);
  if (windows)
    g_ptr_array_add (list, spelch_words_window (plan, side, numbers));
  g_ptr_array_add (list, NULL);
  return (char **)g_ptr_array_free (list, FALSE);
}

char **
spelch_words_edge_why (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers)
{
  return why (plan, spelch_plan_worst (plan, side), side, true, numbers);
}

char **
spelch_words_edge_reckoning (const SpelchPlan *plan, SpelchSide side, const SpelchNumbers *numbers)
{
  return why (plan, spelch_plan_worst (plan, side), side, false, numbers);
}

char **
spelch_words_arris_why (const SpelchPlan *plan, const SpelchEdge *edge, const SpelchNumbers *numbers)
{
  return why (plan, edge, edge->side, true, numbers);
}

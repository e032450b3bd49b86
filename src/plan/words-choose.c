/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/words-choose.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const char *
side_word (SpelchSide side, bool seen)
{
  bool motor = side == SPELCH_SIDE_MOTOR;
  if (seen)
    return motor ? _ ("show face on the motor side") : _ ("show face on the far side");
  return motor ? _ ("hidden face on the motor side") : _ ("hidden face on the far side");
}

static const char *
face_word (const SpelchReason *reason)
{
  return side_word (reason->side, reason->seen);
}

/* What leaves a face worse than accepted: the face, how it comes out, what is accepted. */
static const char *
tears_format (const SpelchReason *reason)
{
  switch (reason->term)
    {
    case SPELCH_TERM_GRAIN:
      return _ ("Cuts against the grain of the %s: %s; %s is accepted.");
    case SPELCH_TERM_EXIT_CORNER:
      return _ ("Runs out across the grain of the %s with nothing behind it: %s; %s is accepted.");
    case SPELCH_TERM_WEAR:
      return _ ("Its blunt edge spoils the %s: %s; %s is accepted.");
    case SPELCH_TERM_SHEAR:
    case SPELCH_TERM_CHIP:
    case SPELCH_TERM_BACKING:
    case SPELCH_TERM_SCORED:
    case SPELCH_TERM_LOG:
    case SPELCH_N_TERMS:
    default:
      return reason->load == SPELCH_LOAD_PULL_OUT ? _ ("Pulls the %s out: %s; %s is accepted.")
                                                  : _ ("Doesn't press the %s in: %s; %s is accepted.");
    }
}

static char *
of_face (const SpelchChoice *choice, const SpelchReason *reason, const SpelchNumbers *numbers)
{
  SpelchFacing facing = spelch_plan_facing (&choice->plan, reason->side);
  const char *grade = spelch_words_grade ((int)reason->value, facing);
  const char *accepted = spelch_words_grade ((int)reason->limit, facing);
  g_autofree char *chip = spelch_words_decimal (numbers, reason->chip_mm, 2);
  if (reason->kind == SPELCH_REASON_PRESSES_IN)
    return g_strdup_printf (_ ("Presses the %s in: %s."), face_word (reason), grade);
  if (reason->kind == SPELCH_REASON_BACKED)
    return g_strdup_printf (_ ("A firm backing that nothing has cut into holds the %s: %s."),
                            face_word (reason), grade);
  if (reason->term == SPELCH_TERM_CHIP)
    return g_strdup_printf (_ ("Chips up to %s mm thick split the %s: %s; %s is accepted."), chip,
                            face_word (reason), grade, accepted);
  return g_strdup_printf (tears_format (reason), face_word (reason), grade, accepted);
}

static char *
of_chips (const SpelchReason *reason)
{
  if (reason->kind == SPELCH_REASON_CARRIES_UP && reason->value > 0.995)
    return g_strdup_printf (_ ("Carries chips up over the whole pass; %d %% of their room is used."),
                            spelch_words_per_cent (reason->limit));
  if (reason->value < 0.005)
    return g_strdup_printf (_ ("Presses its chips down into the cut; %d %% of their room is used."),
                            spelch_words_per_cent (reason->limit));
  return g_strdup_printf (
      reason->kind == SPELCH_REASON_CARRIES_UP
          ? _ ("Carries chips up over %d %% of the pass; %d %% of their room is used.")
          : _ (
              "Carries chips up over only %d %% of the pass and presses the others down; %d %% of their room "
              "is used."),
      spelch_words_per_cent (reason->value), spelch_words_per_cent (reason->limit));
}

static char *
of_seat (const SpelchChoice *choice, const SpelchReason *reason)
{
  g_autofree char *force = spelch_words_rough (fmax (reason->value, 1));
  g_autofree char *hold = spelch_words_rough (fmax (reason->limit, 1));
  bool gantry = choice->plan.machine == SPELCH_MACHINE_GANTRY;
  bool table = choice->plan.machine == SPELCH_MACHINE_TABLE;
  if (reason->kind == SPELCH_REASON_PRESSES_DOWN)
    return g_strdup_printf (gantry  ? _ ("Presses the board down, about %s N.")
                            : table ? _ ("Draws the board to the table, about %s N.")
                                    : _ ("Draws router and board together, about %s N."),
                            force);
  if (gantry)
    return g_strdup_printf (_ ("Lifts the board about %s N; hold for %s N, a small piece most of all."),
                            force, hold);
  return g_strdup_printf (table ? _ ("Pushes the board off the table, about %s N.")
                                : _ ("Pushes the router off the board, about %s N."),
                          force);
}

static char *
of_tip (const SpelchReason *reason, const SpelchNumbers *numbers)
{
  g_autofree char *value = spelch_words_exactly (numbers, reason->value);
  g_autofree char *most = spelch_words_at_most (numbers, reason->limit);
  g_autofree char *least = spelch_words_at_least (numbers, reason->limit);
  if (reason->kind == SPELCH_REASON_TIP_TOO_SHORT)
    return g_strdup_printf (_ ("Tip too short: %s of up-shear; it takes %s or more."), value, least);
  if (reason->limit <= 0)
    return g_strdup_printf (_ ("Tip too long: %s of up-shear, and no length serves this cut."), value);
  return g_strdup_printf (_ ("Tip too long: %s of up-shear; it takes %s or less."), value, most);
}

static char *
of_time (const SpelchChoice *choice, const SpelchReason *reason)
{
  g_autofree char *time = spelch_words_time (reason->value);
  g_autofree char *quickest = spelch_words_time (reason->limit);
  return g_strdup_printf (
      choice->scorer >= 0 ? _ ("Slow: %s with the change of the bit; the quickest that is as good takes %s.")
                          : _ ("Slow: %s; the quickest that is as good takes %s."),
      time, quickest);
}

static char *
of_bending (const SpelchChoice *choice, const SpelchReason *reason, const SpelchNumbers *numbers)
{
  g_autofree char *value = spelch_words_decimal (numbers, reason->value, 2);
  g_autofree char *limit = spelch_words_decimal (numbers, reason->limit, 2);
  if (spelch_plan_machine_gives (&choice->plan))
    return g_strdup_printf (
        _ ("The machine gives way to it: %s mm off the line; %s mm is the limit for the edge asked for."),
        value, limit);
  return g_strdup_printf (_ ("Bends about %s mm; %s mm is the limit for the edge asked for."), value, limit);
}

/* The wall heat as a share of what burns. */
static double
burning_share (const SpelchPlan *plan)
{
  const SpelchLimit *heat = spelch_plan_limit (plan, SPELCH_LIMIT_HEAT);
  return heat == NULL ? 0 : heat->share;
}

static char *
of_heat (const SpelchChoice *choice, const SpelchReason *reason)
{
  double share = burning_share (&choice->plan);
  g_autofree char *value = spelch_words_count (reason->value);
  g_autofree char *limit = spelch_words_count (reason->limit);
  g_autofree char *burns = spelch_words_count (share > 0 ? reason->value / share : 0);
  if (share >= 1)
    return g_strdup_printf (_ ("Burns the wall: %s mJ/mm², and it burns from %s on."), value, burns);
  return g_strdup_printf (_ ("Heats the wall: %s mJ/mm², with caution from %s."), value, limit);
}

char *
spelch_words_reason (const SpelchChoice *choice, const SpelchReason *reason, const SpelchNumbers *numbers)
{
  switch (reason->kind)
    {
    case SPELCH_REASON_ACCEPTED:
      return g_strdup_printf (_ ("Every edge comes out as accepted, at worst grade %d of 5."),
                              MAX (choice->seen, choice->hidden));
    case SPELCH_REASON_PRESSES_IN:
    case SPELCH_REASON_BACKED:
    case SPELCH_REASON_TEARS:
      return of_face (choice, reason, numbers);
    case SPELCH_REASON_CARRIES_UP:
    case SPELCH_REASON_PACKS_CHIPS:
      return of_chips (reason);
    case SPELCH_REASON_PRESSES_DOWN:
    case SPELCH_REASON_LIFTS:
      return of_seat (choice, reason);
    case SPELCH_REASON_STOP:
      return spelch_words_stop (&reason->stop, numbers);
    case SPELCH_REASON_TIP_TOO_LONG:
    case SPELCH_REASON_TIP_TOO_SHORT:
      return of_tip (reason, numbers);
    case SPELCH_REASON_BENDS:
      return of_bending (choice, reason, numbers);
    case SPELCH_REASON_HOT:
      return of_heat (choice, reason);
    case SPELCH_REASON_WORN:
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "A blunt edge costs it %d grade.",
                                           "A blunt edge costs it %d grades.", (gulong)reason->value),
                              (int)reason->value);
    case SPELCH_REASON_SLOW:
      return of_time (choice, reason);
    case SPELCH_N_REASONS:
    default:
      return g_strdup ("");
    }
}

char *
spelch_words_knife (const SpelchKnife *knife, const SpelchNumbers *numbers)
{
  g_autofree char *deep = spelch_words_exactly (numbers, knife->deep_mm);
  if (!knife->helps)
    return g_strdup ("");
  return g_strdup_printf (_ ("Or knife the line on the %s before routing, %s deep, through its whole ply, in "
                             "light strokes along a "
                             "straightedge: fibres that are severed don't tear past the line (%s)."),
                          side_word (knife->side, true), deep,
                          spelch_words_evidence (SPELCH_EVIDENCE_PRACTICE));
}

static const char *
kind_word (SpelchBitKind kind)
{
  switch (kind)
    {
    case SPELCH_BIT_UP_CUT:
      return _ ("An up-cut");
    case SPELCH_BIT_DOWN_CUT:
      return _ ("A down-cut");
    case SPELCH_BIT_COMPRESSION:
      return _ ("A compression bit");
    case SPELCH_BIT_STRAIGHT:
    default:
      return _ ("A straight bit");
    }
}

/* "6 mm to 13 mm", or one length where both are shown alike. */
static char *
range_words (const SpelchNumbers *numbers, double least, double most)
{
  g_autofree char *from = spelch_words_at_least (numbers, least);
  g_autofree char *to = spelch_words_at_most (numbers, most);
  if (!spelch_words_fits (numbers, least, most))
    return spelch_words_exactly (numbers, most);
  return g_str_equal (from, to) ? g_steal_pointer (&to) : g_strdup_printf (_ ("%s to %s"), from, to);
}

static char *
wanted_kind (const SpelchWantedKind *wanted, SpelchBitKind kind, const SpelchNumbers *numbers)
{
  g_autofree char *across = range_words (numbers, wanted->diameter_least, wanted->diameter_most);
  g_autofree char *length = spelch_words_at_least (numbers, wanted->cutting_length_least);
  g_autofree char *up_shear = range_words (numbers, wanted->up_shear_least, wanted->up_shear_most);
  if (kind == SPELCH_BIT_COMPRESSION)
    return g_strdup_printf (_ ("%s would do: %s across, cutting %s deep or more, with %s of up-shear."),
                            kind_word (kind), across, length, up_shear);
  return g_strdup_printf (_ ("%s would do: %s across, cutting %s deep or more."), kind_word (kind), across,
                          length);
}

/* What to change about the cut first; "" when nothing. */
static const char *
change_first (SpelchWantedChange change)
{
  switch (change)
    {
    case SPELCH_WANTED_OTHER_WAY:
      return _ (
          "As the cut stands, none would: it is a climb cut fed by hand. Feed it the other way, with the "
          "wall that stays on the bit's left.");
    case SPELCH_WANTED_BACKED:
      return _ ("As the cut stands, none would: it breaks out where the bit leaves the edge. Clamp a scrap "
                "behind that edge, and say that the cut ends so.");
    case SPELCH_WANTED_OTHER_AND_BACKED:
      return _ ("As the cut stands, none would: feed it the other way, with the wall that stays on the bit's "
                "left, and clamp a scrap behind the edge where the bit then leaves.");
    case SPELCH_WANTED_AS_IT_IS:
    default:
      return "";
    }
}

char **
spelch_words_wanted (const SpelchWanted *wanted, const SpelchCut *cut, const SpelchNumbers *numbers)
{
  GPtrArray *sentences = g_ptr_array_new ();
  bool turned = false;
  if (!spelch_wanted_serves (wanted))
    g_ptr_array_add (sentences,
                     g_strdup (_ ("Nor would any other straight, up-cut, down-cut or compression bit: change "
                                  "the cut, hold the board in another way, or accept more.")));
  else if (wanted->change != SPELCH_WANTED_AS_IT_IS)
    g_ptr_array_add (sentences, g_strdup (change_first (wanted->change)));
  for (int kind = 0; kind < SPELCH_N_BIT_KINDS; kind++)
    {
      const SpelchWantedKind *one = &wanted->kinds[kind];
      if (one->serves)
        g_ptr_array_add (sentences, wanted_kind (one, (SpelchBitKind)kind, numbers));
      turned |= one->serves && one->way_up != cut->way_up;
    }
  if (wanted->at_hand[0] != '\0')
    g_ptr_array_add (sentences, g_strdup_printf (_ ("Then “%s” would do."), wanted->at_hand));
  if (turned)
    g_ptr_array_add (sentences, g_strdup (_ ("That is with the board turned over; as it lies, none would.")));
  g_ptr_array_add (sentences, NULL);
  return (char **)g_ptr_array_free (sentences, FALSE);
}

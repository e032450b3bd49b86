/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is said about the board's seat, about reasons not to cut, and under a bit in the drawer.
 */
#include "plan/words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const char *
seat_format (const SpelchSeat *seat)
{
  switch (seat->pair)
    {
    case SPELCH_PAIR_BOARD_BED:
      return seat->apart ? _ ("Lifts the board about %s N (%s to %s)")
                         : _ ("Presses the board down about %s N (%s to %s)");
    case SPELCH_PAIR_BOARD_TABLE:
      return seat->apart ? _ ("Lifts the board off the table, about %s N (%s to %s)")
                         : _ ("Draws the board to the table, about %s N (%s to %s)");
    case SPELCH_PAIR_BASE_BOARD:
      return seat->apart ? _ ("Pushes the router off the board, about %s N (%s to %s)")
                         : _ ("Draws router and board together, about %s N (%s to %s)");
    case SPELCH_PAIR_BOARD_BENCH:
    default:
      return seat->apart ? _ ("Lifts the board off the bench, about %s N (%s to %s)")
                         : _ ("Presses the board to the bench, about %s N (%s to %s)");
    }
}

char *
spelch_words_seat (const SpelchPlan *plan)
{
  if (plan->n_seats == 0)
    return g_strdup ("");
  const SpelchSeat *seat = &plan->seats[0];
  g_autofree char *mean = spelch_words_rough (seat->mean_n);
  g_autofree char *low = spelch_words_rough (seat->low_n);
  g_autofree char *high = spelch_words_rough (seat->high_n);
  g_autofree char *needed = spelch_words_rough (plan->hold_needed_n);
  g_autofree char *force = seat->mean_n >= 0.5    ? g_strdup_printf (seat_format (seat), mean, low, high)
                           : seat->bound_n >= 0.5 ? g_strdup (_ ("Lifts about as much as it presses"))
                                                  : g_strdup (_ ("Neither lifts nor presses"));
  return plan->hold_needed_n > 0 ? g_strdup_printf (_ ("%s; hold for %s N."), force, needed)
                                 : g_strdup_printf (_ ("%s."), force);
}

char *
spelch_words_seat_advice (const SpelchPlan *plan, const SpelchPart *part, const SpelchNumbers *numbers)
{
  if (plan->machine == SPELCH_MACHINE_TABLE)
    return g_strdup (plan->n_seats > 0 && plan->seats[0].apart
                         ? _ ("Hold the board down with featherboards; an up-cut would draw it to the table.")
                         : _ ("Feed against the rotation; never trap the work between bit and fence."));
  if (plan->machine == SPELCH_MACHINE_HAND)
    return g_strdup (_ ("Clamp the work; both hands on the router; feed against the rotation."));
  if (plan->hold_factor <= 0)
    return g_strdup (part->holding.method == SPELCH_HOLD_UNTOLD
                         ? _ ("Say how the work is held, and this is checked.")
                         : _ ("How hard it is held isn't known, so this isn't checked."));
  g_autofree char *available = spelch_words_rough (plan->hold_available_n);
  g_autofree char *factor = spelch_words_times (numbers, plan->hold_factor);
  g_autofree char *worst = spelch_words_times (numbers, plan->hold_factor_worst);
  g_autofree char *needed = spelch_words_rough (plan->hold_needed_n);
  g_autofree char *held = g_strdup_printf (
      part->holding.method == SPELCH_HOLD_VACUUM
          ? _ ("Vacuum gives about %s N, which bears %s times the bit's force, %s times with everything at "
               "its "
               "worst; %s N would bear it twice, as it should be.")
          : _ ("The clamps give %s N, which bears %s times the bit's force, %s times with everything at its "
               "worst; %s N would bear it twice, as it should be."),
      available, factor, worst, needed);
  if (plan->hold_way != SPELCH_GIVES_TILTING)
    return g_steal_pointer (&held);
  return g_strdup_printf (_ ("%s It is so narrow that it would tilt before it slid."), held);
}

char *
spelch_words_hold (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *factor = spelch_words_times (numbers, plan->hold_factor);
  g_autofree char *worst = spelch_words_times (numbers, plan->hold_factor_worst);
  return plan->hold_factor > 0 ? g_strdup_printf (_ ("%s times the bit's force, %s at worst"), factor, worst)
                               : g_strdup ("");
}

/* "Four", beginning a sentence; figures from thirteen on. */
static char *
number_word (guint n)
{
  static const char *const words[]
      = { N_ ("One"),   N_ ("Two"),   N_ ("Three"), N_ ("Four"), N_ ("Five"),   N_ ("Six"),
          N_ ("Seven"), N_ ("Eight"), N_ ("Nine"),  N_ ("Ten"),  N_ ("Eleven"), N_ ("Twelve") };
  return n >= 1 && n <= G_N_ELEMENTS (words) ? g_strdup (_ (words[n - 1])) : spelch_words_count (n);
}

char *
spelch_words_tabs (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  const SpelchTabHold *tabs = &plan->tabs;
  if (tabs->count == 0 || tabs->factor <= 0)
    return g_strdup ("");
  g_autofree char *count = number_word (tabs->count);
  g_autofree char *factor = spelch_words_times (numbers, tabs->factor);
  g_autofree char *enough = spelch_words_count (tabs->needs_count);
  g_autofree char *width = spelch_words_at_least (numbers, tabs->needs_width_mm);
  /* Translators: the first %s of each is a number word, "Four". */
  if (tabs->needs_count <= tabs->count)
    return g_strdup_printf (
        g_dngettext (GETTEXT_PACKAGE, "%s tab holds %s times the force against it at the least.",
                     "%s tabs hold %s times the force against them at the least.", tabs->count),
        count, factor);
  if (!tabs->alone)
    return g_strdup_printf (
        g_dngettext (GETTEXT_PACKAGE, "%s tab by itself would hold %s times the force against it.",
                     "%s tabs by themselves would hold %s times the force against them.", tabs->count),
        count, factor);
  return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE,
                   "%s tab holds only %s times the force against it: %s such tabs would do, "
                   "or one %s wide.",
                   "%s tabs hold only %s times the force against them: %s such tabs would "
                   "do, or as many %s wide.",
                   tabs->count),
      count, factor, enough, width);
}

/* Two figures: it is a rough guess. */
static char *
way_left (double metres, const SpelchNumbers *numbers)
{
  bool feet = numbers->unit == SPELCH_UNIT_INCH;
  double way = feet ? metres / 0.3048 : metres;
  double step = way >= 10 ? pow (10, floor (log10 (way)) - 1) : 1;
  g_autofree char *count = spelch_words_count (round (way / step) * step);
  return g_strdup_printf (feet ? _ ("%s ft") : _ ("%s m"), count);
}

char *
spelch_words_upkeep (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *left = way_left (plan->life_m_left, numbers);
  g_autofree char *cost = spelch_words_decimal (numbers, plan->cost, 2);
  if (!plan->life_known)
    return g_strdup ("");
  if (plan->life_m_left < 0.5)
    return g_strdup (_ ("The edge is dull: change the bit, or have it sharpened."));
  if (plan->cost < 0.005)
    return g_strdup_printf (_ ("Dull after about %s of such cuts."), left);
  return g_strdup_printf (_ ("Dull after about %s of such cuts; one piece costs %s in wear."), left, cost);
}

char *
spelch_words_life (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *left = way_left (plan->life_m_left, numbers);
  if (!plan->life_known)
    return g_strdup ("");
  return plan->life_m_left < 0.5 ? g_strdup (C_ ("life of an edge", "dull already"))
                                 : g_strdup_printf (_ ("about %s of such cuts"), left);
}

/* Why a machine can't make an entry of a kind that others can. */
static const char *
entry_fault (SpelchMachineKind machine)
{
  switch (machine)
    {
    case SPELCH_MACHINE_TABLE:
      return _ (
          "Start from the edge or a drilled hole, or let the work down onto the bit between stop blocks: "
          "on a router table the bit can't be brought down.");
    case SPELCH_MACHINE_HAND:
      return _ (
          "Plunge in short stages, or start from the edge or a drilled hole: by hand the bit can't go in "
          "this way.");
    case SPELCH_MACHINE_GANTRY:
    default:
      return _ ("Plunge or ramp: only on a router table is the work let down onto the bit.");
    }
}

/* How far short of cutting through the last pass stays, above the far face or below it. */
static char *
not_through_sentence (const SpelchStop *stop, const SpelchNumbers *numbers)
{
  g_autofree char *needs = spelch_words_exactly (numbers, stop->limit);
  g_autofree char *runs = spelch_words_exactly (numbers, fabs (stop->value));
  return g_strdup_printf (
      stop->value < 0
          ? _ ("Set the last pass deeper: it ends %s above the far face, and needs to run %s past it.")
          : _ ("Set the last pass deeper: it runs %s past the board, and needs %s to cut through."),
      runs, needs);
}

#define HARDLY_HELD 0.1 /* times the force; there's no telling how much harder in tenths */

static char *
holding_sentence (const SpelchStop *stop, const SpelchNumbers *numbers)
{
  g_autofree char *factor = spelch_words_times (numbers, stop->value);
  g_autofree char *worst = spelch_words_times (numbers, stop->also);
  if (stop->value < HARDLY_HELD)
    return g_strdup (_ ("Hold the work harder: as it is told, it is hardly held at all against the forces of "
                        "this cut."));
  if (stop->value >= stop->limit && stop->also < HARDLY_HELD)
    return g_strdup (_ ("Hold the work harder: with everything at its worst it is hardly held at all."));
  if (stop->value >= stop->limit)
    return g_strdup_printf (_ ("Hold the work harder: with everything at its worst it is held with only %s "
                               "times the force against it, and it takes at least once."),
                            worst);
  return g_strdup_printf (_ ("Hold the work harder: it is held with only %s times the force against it, and "
                             "it takes 2 times, and at least once with everything at its worst."),
                          factor);
}

static char *
tabs_sentence (const SpelchStop *stop, const SpelchNumbers *numbers)
{
  g_autofree char *factor = spelch_words_times (numbers, stop->value);
  g_autofree char *count = spelch_words_count (stop->limit);
  g_autofree char *width = spelch_words_at_least (numbers, stop->also);
  return g_strdup_printf (
      _ ("Leave %s such tabs, or make these %s wide: as they are, they hold only %s times the force "
         "against them, and it takes 2 times, and at least once with everything at its "
         "worst."),
      count, width, factor);
}

/* The bit: what to take or set instead. */
static char *
stop_of_bit (const SpelchStop *stop, const SpelchNumbers *numbers)
{
  g_autofree char *value = spelch_words_exactly (numbers, stop->value);
  g_autofree char *limit = spelch_words_exactly (numbers, stop->limit);
  g_autofree char *also = spelch_words_exactly (numbers, stop->also);
  g_autofree char *count = spelch_words_count (stop->value);
  g_autofree char *count_limit = spelch_words_count (stop->limit);
  switch ((int)stop->kind)
    {
    case SPELCH_STOP_SPEED_MARK:
      return g_strdup_printf (_ ("Turn no faster than the %s rpm marked on the bit: this is %s rpm."),
                              count_limit, count);
    case SPELCH_STOP_HAND:
      return g_strdup (_ ("Take a bit that cuts turning as the spindle turns: this one cuts the other way."));
    case SPELCH_STOP_STRESS:
      return g_strdup_printf (
          _ ("Take less depth or feed: the bit would carry %s MPa, more than the %s MPa it may."), count,
          count_limit);
    case SPELCH_STOP_COLLET:
      return g_strdup_printf (
          _ ("Take a longer bit, or let it stick out less: only %s of shank would be in the "
             "collet, and it needs %s."),
          value, limit);
    case SPELCH_STOP_COLLET_SIZE:
      return g_strdup_printf (_ ("Take a bit with another shank: the machine has no collet for one of %s."),
                              value);
    case SPELCH_STOP_TOO_WIDE:
      if (stop->limit <= 0)
        return g_strdup (
            _ ("Leave less on the walls for the finishing pass, or make the cut wider: what is to "
               "be left there fills it, and no bit gets in between."));
      return g_strdup_printf (
          _ ("Take a narrower bit: this one is %s across, and the cut leaves room for %s."), value, limit);
    case SPELCH_STOP_POCKET_ROUND:
      return g_strdup_printf (
          _ ("Set the length to the way once round the pocket, not to one of its sides: a "
             "pocket %s wide is at least %s round, and its length is set to %s."),
          also, limit, value);
    case SPELCH_STOP_TOO_SHORT:
      if (stop->also > 0)
        return g_strdup_printf (
            _ ("Let the bit stick out further than the %s set for it: the cut is %s deep, "
               "and so it reaches %s."),
            also, value, limit);
      return g_strdup_printf (_ ("Take a longer bit: the cut is %s deep, and this one reaches %s."), value,
                              limit);
    case SPELCH_STOP_HAND_FEED_MARK:
      return g_strdup_printf (
          _ ("Take a bit marked for feeding by hand (MAN): one that is %s across must be."), value);
    default:
      return NULL;
    }
}

/* The way it goes in. */
static char *
stop_of_entry (const SpelchStop *stop, const SpelchNumbers *numbers)
{
  g_autofree char *angle = spelch_words_decimal (numbers, stop->value, 1);
  g_autofree char *allowed = spelch_words_decimal (numbers, stop->limit, 1);
  switch ((int)stop->kind)
    {
    case SPELCH_STOP_PLUNGE:
      return g_strdup (stop->value > 0
                           ? _ ("Start from an edge or a drilled hole, ramp under a gantry, or go in with "
                                "another bit: a down-cut bit presses its chips into the hole it plunges.")
                           : _ ("Start from an edge or a drilled hole, ramp under a gantry, or go in with "
                                "another bit: this one doesn't cut at its centre and can't plunge."));
    case SPELCH_STOP_RAMP:
      if (stop->limit <= 0)
        return g_strdup (_ ("Start from an edge or a drilled hole: the bit's end allows no ramp."));
      return g_strdup_printf (_ ("Ramp at no more than %s°, as the bit's end allows: this is %s°."), allowed,
                              angle);
    case SPELCH_STOP_HELIX:
      return g_strdup (
          _ ("Start from a drilled hole, or take a narrower bit: there is no room for this one to "
             "spiral in."));
    case SPELCH_STOP_ENTRY:
      return g_strdup (entry_fault ((SpelchMachineKind)stop->limit));
    default:
      return NULL;
    }
}

static char *
no_speed_sentence (const SpelchStop *stop)
{
  g_autofree char *set = spelch_words_count (stop->value);
  g_autofree char *limit = spelch_words_count (stop->limit);
  if (stop->value <= 0)
    return g_strdup (_ ("Take less depth, or another bit: no speed and feed satisfy every limit."));
  if (stop->value > stop->limit)
    return g_strdup_printf (_ ("Turn slower: %s rpm are set, and the spindle turns no faster than %s rpm."),
                            set, limit);
  if (stop->value < stop->limit)
    return g_strdup_printf (_ ("Turn faster: %s rpm are set, and the spindle turns no slower than %s rpm."),
                            set, limit);
  return g_strdup_printf (_ ("Set another speed, take less depth, or another bit: at the %s rpm set, no feed "
                             "satisfies every limit."),
                          set);
}

/* In one decimal, and never rounded down to none too much. */
static char *
heat_sentence (const SpelchStop *stop, const SpelchNumbers *numbers)
{
  double times = ceil (stop->value / stop->limit * 10 - 1e-6) / 10;
  g_autofree char *many = times < 10 ? spelch_words_decimal (numbers, times, 1) : spelch_words_count (times);
  return g_strdup_printf (_ ("Feed quicker, or turn slower: the wall takes %s times the heat at which it "
                             "burns, and dust can catch fire."),
                          many);
}

static char *
freehand_sentence (const SpelchStop *stop)
{
  if (stop->value > 0)
    return g_strdup (_ (
        "Saw the opening out a little smaller, and trim it along a pattern: on a router table nothing would "
        "lead the work all round, and the middle would come free beside the running bit (shop practice)."));
  return g_strdup (_ (
      "Saw it out a little larger, and trim the edge along a fence or a pattern: on a router table nothing "
      "would lead the work all round, and the piece would come free beside the running bit (shop "
      "practice)."));
}

/* "80 mm by 50 mm", or what of it is told. */
static char *
piece_words (const SpelchStop *stop, const SpelchNumbers *numbers)
{
  g_autofree char *length = spelch_words_exactly (numbers, stop->value);
  g_autofree char *width = spelch_words_exactly (numbers, stop->limit);
  if (stop->limit <= 0)
    return g_strdup_printf (C_ ("piece", "%s long"), length);
  /* Translators: a piece's length and width: "a piece 80 mm by 50 mm" */
  return stop->value > 0 ? g_strdup_printf (C_ ("piece", "%s by %s"), length, width)
                         : g_strdup_printf (C_ ("piece", "%s wide"), width);
}

static char *
small_sentence (const SpelchStop *stop, const SpelchNumbers *numbers)
{
  g_autofree char *piece = piece_words (stop, numbers);
  /* Translators: the %s of each is "80 mm by 50 mm", "80 mm long" or "50 mm wide". */
  if (stop->kind == SPELCH_ASK_SMALL)
    return g_strdup_printf (_ ("Say how the piece is clamped: %s is too small to be held under a router by "
                               "hand (shop practice)."),
                            piece);
  if ((SpelchMachineKind)stop->also == SPELCH_MACHINE_HAND)
    return g_strdup_printf (
        _ ("Hold the piece with clamps or screws and say so, or rout a larger piece and cut it up: %s is too "
           "small to be held under a router by hand (shop practice)."),
        piece);
  return g_strdup_printf (
      _ ("Hold the piece in a sled or a holder with clamps and say so, or rout a larger piece and cut it up: "
         "%s is too small to be fed past the bit with bare hands (shop practice)."),
      piece);
}

/* Each begins with what to change. */
static char *
stop_of_cut (const SpelchStop *stop, const SpelchNumbers *numbers)
{
  g_autofree char *value = spelch_words_length (numbers, stop->value);
  g_autofree char *limit = spelch_words_length (numbers, stop->limit);
  g_autofree char *count = spelch_words_count (stop->value);
  g_autofree char *count_limit = spelch_words_count (stop->limit);
  switch ((int)stop->kind)
    {
    case SPELCH_STOP_OVERCUT:
      return g_strdup_printf (_ ("Let the last pass run less deep, or put a backer behind the board: the tip "
                                 "would run %s past it, and only %s is allowed."),
                              value, limit);
    case SPELCH_STOP_NOT_THROUGH:
      return not_through_sentence (stop, numbers);
    case SPELCH_STOP_HANDS:
      return g_strdup_printf (
          _ ("Take less depth: sideways force up to %s N is more than hands hold (%s N)."), count,
          count_limit);
    case SPELCH_STOP_NO_SPEED:
      return no_speed_sentence (stop);
    case SPELCH_STOP_CLIMB:
      return g_strdup (
          _ ("Feed the other way, with the kept wall at the left: by hand, the wall right of the travel is a "
             "climb cut, and the bit would pull work or router along."));
    case SPELCH_STOP_FREEHAND:
      return freehand_sentence (stop);
    case SPELCH_STOP_PUSHED_OFF:
      return g_strdup_printf (
          stop->also > 0
              ? _ ("Use featherboards and say so, or an up-cut bit: this one pushes the board off the table "
                   "with up to %s N, and as long as nothing else is told only hands hold it down.")
              : _ ("Use featherboards, or an up-cut bit: this one pushes the board off the table "
                   "with up to %s N, and only hands hold it down."),
          count);
    case SPELCH_STOP_HOLDING:
      return holding_sentence (stop, numbers);
    case SPELCH_STOP_TABS:
      return tabs_sentence (stop, numbers);
    case SPELCH_STOP_HEAT:
      return heat_sentence (stop, numbers);
    case SPELCH_STOP_SMALL:
    case SPELCH_ASK_SMALL:
      return small_sentence (stop, numbers);
    case SPELCH_ASK_LENGTH:
      return g_strdup_printf (_ ("Measure the cut and the piece again: the cut is told as %s long, and the "
                                 "piece has only %s in its direction."),
                              value, limit);
    default:
      return NULL;
    }
}

static char *
question_sentence (const SpelchStop *stop)
{
  g_autofree char *count = spelch_words_count (stop->value);
  switch ((int)stop->kind)
    {
    case SPELCH_ASK_SPEED_MARK:
      return g_strdup (_ ("No highest speed is marked on the bit: ask its maker."));
    case SPELCH_ASK_HOLDING:
      return g_strdup (_ ("Say how the work is held."));
    case SPELCH_ASK_HOLD_FORCE:
      return g_strdup_printf (_ ("How hard the work is held isn't known: it takes %s N on the bed."), count);
    case SPELCH_ASK_OVERALL:
      return g_strdup (_ ("Measure the bit's overall length, to know how much of it the collet holds."));
    case SPELCH_ASK_SPOILBOARD:
      return g_strdup (
          _ ("Say whether the spoilboard has been cut here before: a fresh one would back the far face."));
    case SPELCH_ASK_STOPS:
      return g_strdup (_ ("Say whether stop blocks are set at both ends: without them the bit can throw work "
                          "that is let down "
                          "onto it."));
    case SPELCH_ASK_END:
      return g_strdup (
          _ ("Measure the uncut centre under the bit's end and the hollow there, to know how steeply it "
             "can ramp."));
    case SPELCH_ASK_SIZE:
      return g_strdup (_ ("Say how long and wide the piece is, to know whether it could tilt."));
    case SPELCH_ASK_TABS:
      return g_strdup (
          stop->value > 0
              ? _ ("Leave tabs, or say that screws hold what is cut out: clamps hold the sheet, and "
                   "the middle of the opening would come free beside the running bit.")
              : _ ("Leave tabs, or say that screws hold the piece: clamps hold the sheet, and the piece "
                   "would come free beside the running bit."));
    default:
      return g_strdup ("");
    }
}

char *
spelch_words_asked_why (const SpelchPlan *plan, const SpelchStop *stop, const SpelchNumbers *numbers)
{
  if (stop->kind == SPELCH_ASK_SPEED_MARK)
    {
      g_autofree char *speed = spelch_words_count (stop->value);
      return g_strdup_printf (
          _ ("It would turn at %s rpm, and no bit may turn faster than the speed marked on it."), speed);
    }
  if (stop->kind == SPELCH_ASK_OVERALL)
    {
      g_autofree char *least = spelch_words_length (numbers, stop->limit);
      g_autofree char *out = spelch_words_length (numbers, plan->stick_out_mm);
      g_autofree char *whole = spelch_words_length (numbers, stop->limit + plan->stick_out_mm);
      return g_strdup_printf (
          _ ("At least %s of its shank belong in the collet; as it sticks out by %s it must be %s "
             "long or longer."),
          least, out, whole);
    }
  return g_strdup ("");
}

static char *
stop_sentence (const SpelchStop *stop, const SpelchNumbers *numbers)
{
  char *sentence = stop_of_bit (stop, numbers);
  if (sentence == NULL)
    sentence = stop_of_entry (stop, numbers);
  if (sentence == NULL)
    sentence = stop_of_cut (stop, numbers);
  return sentence != NULL ? sentence : question_sentence (stop);
}

char *
spelch_words_stop (const SpelchStop *stop, const SpelchNumbers *numbers)
{
  g_autofree char *sentence = stop_sentence (stop, numbers);
  return stop->bit == 1 ? g_strdup_printf (_ ("With the scoring bit: %s"), sentence)
                        : g_steal_pointer (&sentence);
}

#define NEARLY_CLEAN 2 /* grades */
#define FUZZY        3

static const char *
spoiled_words (const SpelchPlan *plan, SpelchSide side, bool seen)
{
  if (spelch_plan_worst (plan, side)->grade == NEARLY_CLEAN)
    return _ ("nearly clean");
  if (spelch_plan_is_laminate (plan, side))
    return seen ? _ ("chips show face") : _ ("chips hidden face");
  if (spelch_plan_worst (plan, side)->grade <= FUZZY
      || spelch_plan_facing (plan, side) == SPELCH_FACING_BOARD)
    return seen ? _ ("fuzzy show face") : _ ("fuzzy hidden face");
  return seen ? _ ("tears show face") : _ ("tears hidden face");
}

/* Whether nothing but the stick-out set by hand keeps the bit from reaching the depth. */
static bool
sticks_out_too_little (const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_stops; i++)
    if (plan->stops[i].kind == SPELCH_STOP_TOO_SHORT && plan->stops[i].also > 0)
      return true;
  return false;
}

const char *
spelch_words_bit_caption (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit,
                          const SpelchPlan *plan)
{
  if (spelch_plan_has_stop (plan, SPELCH_STOP_TOO_WIDE))
    return _ ("too wide");
  if (sticks_out_too_little (plan))
    return _ ("stick-out short");
  if (spelch_plan_has_stop (plan, SPELCH_STOP_TOO_SHORT))
    return _ ("too short");
  if (spelch_plan_has_stop (plan, SPELCH_STOP_COLLET_SIZE))
    return _ ("no collet");
  if (plan->verdict == SPELCH_VERDICT_DO_NOT_CUT)
    return _ ("do not cut");
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    if (!spelch_plan_is_accepted (plan, part, (SpelchSide)side))
      {
        SpelchFace face = side == SPELCH_SIDE_MOTOR ? plan->near : spelch_face_other (plan->near);
        bool up_shear = bit->kind == SPELCH_BIT_COMPRESSION
                        && spelch_plan_worst (plan, (SpelchSide)side)->load == SPELCH_LOAD_PULL_OUT;
        /* The tip would do where a deeper first pass, other than the one that is held, would keep the face.
         */
        if (side == SPELCH_SIDE_MOTOR && up_shear)
          return plan->flutes.turn_over > plan->windows.needs_up_shear_to ? _ ("tip too long")
                                                                          : _ ("pass too shallow");
        return spoiled_words (plan, (SpelchSide)side, spelch_cut_sees (cut, face));
      }
  return "";
}

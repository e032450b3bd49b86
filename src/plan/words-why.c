/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/words-why.h"

#include "plan/words-source.h"
#include "plan/words-why-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* ---- Sentences ---- */

void
spelch_chain_say (SpelchChain *chain, char *sentence)
{
  if (*sentence != '\0')
    g_ptr_array_add (chain->list, sentence);
  else
    g_free (sentence);
}

void
spelch_chain_add (SpelchChain *chain, SpelchEvidence evidence, char *sentence)
{
  /* TRANSLATORS: a reason, then how well it is founded: "… : 2 points (measured)." */
  g_ptr_array_add (chain->list, g_strdup_printf (_ ("%s (%s)."), sentence, spelch_words_evidence (evidence)));
  g_free (sentence);
}

void
spelch_chain_constant (SpelchChain *chain, const char *id, char *sentence)
{
  const char *told = chain->of->source (id);
  const char *bracket = told == NULL ? NULL : g_strrstr (told, " (");
  int evidence = SPELCH_EVIDENCE_PRACTICE;
  if (bracket == NULL)
    {
      spelch_chain_add (chain, SPELCH_EVIDENCE_PRACTICE, sentence);
      return;
    }
  g_autofree char *code = g_strndup (bracket + 2, strlen (bracket + 2) - 1);
  g_autofree char *source = g_strndup (told, (gsize)(bracket - told));
  spelch_code_read (&SPELCH_EVIDENCE_CODES, code, &evidence);
  if (spelch_words_source_is_nobodys (source))
    {
      spelch_chain_add (chain, (SpelchEvidence)evidence, sentence);
      return;
    }
  /* TRANSLATORS: a reason, how well it is founded, and the work: "… : 2 points (measured: Smith 2017, ch.
   * 6)." */
  g_ptr_array_add (chain->list, g_strdup_printf (_ ("%s (%s: %s)."), sentence,
                                                 spelch_words_evidence ((SpelchEvidence)evidence),
                                                 spelch_words_source (source)));
  g_free (sentence);
}

double
spelch_chain_share (const SpelchChain *chain, SpelchLimitKind kind)
{
  const SpelchLimit *limit = spelch_plan_limit (chain->of->plan, kind);
  return limit == NULL ? 0 : limit->share;
}

char *
spelch_chain_decimal (const SpelchChain *chain, double value, int decimals)
{
  return spelch_words_decimal (chain->numbers, value, decimals);
}

/* ---- Limits ---- */

static void
limit_of_machine (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchMachine *machine = &of->part->machine;
  bool hand = machine->kind == SPELCH_MACHINE_HAND;
  double by_hand = hand ? of->constants->hand_feed_max : of->constants->table_feed_max;
  bool own = machine->kind == SPELCH_MACHINE_GANTRY
             || (machine->max_feed_mm_min > 0 && machine->max_feed_mm_min < by_hand);
  g_autofree char *feed = spelch_words_feed (chain->numbers, own ? machine->max_feed_mm_min : by_hand);
  if (own)
    spelch_chain_say (chain, g_strdup_printf (_ ("The machine feeds no quicker than %s."), feed));
  else
    spelch_chain_constant (chain, hand ? "hand-feed-max" : "table-feed-max",
                           g_strdup_printf (_ ("Hands feed evenly up to about %s"), feed));
}

static void
limit_of_hands (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  const SpelchMachine *machine = &of->part->machine;
  bool trim = machine->kind == SPELCH_MACHINE_HAND && machine->mass_kg <= of->constants->trim_router_mass;
  g_autofree char *limit
      = spelch_words_count (trim ? of->constants->hand_force_trim : of->constants->hand_force_router);
  g_autofree char *peak = spelch_words_count (of->plan->sideways_peak_n);
  spelch_chain_constant (
      chain, trim ? "hand-force-trim" : "hand-force-router",
      g_strdup_printf (_ ("Hands hold against about %s N; here the bit pushes sideways with up to %s N"),
                       limit, peak));
}

static void
limit_of_chip (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  g_autofree char *cap = spelch_chain_decimal (chain, of->constants->chip_cap * 100, 1);
  g_autofree char *thick
      = spelch_chain_decimal (chain, of->constants->chip_cap * of->plan->flutes.diameter, 2);
  spelch_chain_constant (
      chain, "chip-cap",
      g_strdup_printf (_ ("A chip may be %s %% of the bit's diameter thick at most, here %s mm"), cap,
                       thick));
}

/* The step of the grade that is nearest above. */
static void
limit_of_edge (SpelchChain *chain)
{
  const SpelchWhyCase *of = chain->of;
  double share = spelch_chain_share (chain, SPELCH_LIMIT_EDGE);
  double at = share > 0 ? of->plan->chip_max / share : 0;
  bool first = at < (of->constants->chip_points_one + of->constants->chip_points_two) / 2;
  g_autofree char *thick = spelch_chain_decimal (
      chain, first ? of->constants->chip_points_one : of->constants->chip_points_two, 2);
  spelch_chain_constant (
      chain, first ? "chip-points-one" : "chip-points-two",
      g_strdup_printf (_ ("A chip of more than %s mm would split ahead and cost the seen edge a grade"),
                       thick));
}

void
spelch_chain_limit (SpelchChain *chain, SpelchLimitKind kind)
{
  switch (kind)
    {
    case SPELCH_LIMIT_CHIP:
      limit_of_chip (chain);
      return;
    case SPELCH_LIMIT_EDGE:
      limit_of_edge (chain);
      return;
    case SPELCH_LIMIT_BENDING:
    case SPELCH_LIMIT_STRESS:
      spelch_chain_bending (chain);
      return;
    case SPELCH_LIMIT_POWER:
      spelch_chain_power (chain);
      return;
    case SPELCH_LIMIT_MACHINE:
      limit_of_machine (chain);
      return;
    case SPELCH_LIMIT_HANDS:
      limit_of_hands (chain);
      return;
    case SPELCH_LIMIT_HOLDING:
      spelch_chain_seat (chain);
      return;
    case SPELCH_LIMIT_ROOM:
      spelch_chain_room (chain);
      return;
    case SPELCH_LIMIT_HEAT:
      spelch_chain_heat (chain);
      return;
    case SPELCH_N_LIMITS:
    default:
      return;
    }
}

/* ---- All ---- */

typedef struct
{
  const char *title;
  void (*chain) (SpelchChain *chain);
} Why;

static const Why WHYS[] = {
  [SPELCH_WHY_SPINDLE] = { NC_ ("title of reasons", "Spindle speed"), spelch_chain_spindle },
  [SPELCH_WHY_FEED] = { NC_ ("title of reasons", "Feed"), spelch_chain_feed },
  [SPELCH_WHY_BINDING] = { NC_ ("title of reasons", "Feed"), spelch_chain_binding },
  [SPELCH_WHY_CHIP] = { NC_ ("title of reasons", "Largest chip"), spelch_chain_chip },
  [SPELCH_WHY_ENTRY] = { NC_ ("title of reasons", "Entry"), spelch_chain_entry },
  [SPELCH_WHY_PASSES] = { NC_ ("title of reasons", "Passes"), spelch_chain_passes },
  [SPELCH_WHY_TIME] = { NC_ ("title of reasons", "Cutting time"), spelch_chain_time },
  [SPELCH_WHY_POWER] = { NC_ ("title of reasons", "Power"), spelch_chain_power },
  [SPELCH_WHY_BENDING]
  = { NC_ ("title of reasons", "How far the tip gives way, and the bit's strength"), spelch_chain_bending },
  [SPELCH_WHY_ROOM] = { NC_ ("title of reasons", "Room for chips"), spelch_chain_room },
  [SPELCH_WHY_HEAT] = { NC_ ("title of reasons", "Wall heat"), spelch_chain_heat },
  [SPELCH_WHY_SEAT] = { NC_ ("title of reasons", "Lift, press and holding"), spelch_chain_seat },
  [SPELCH_WHY_TABS] = { NC_ ("title of reasons", "Tabs"), spelch_chain_tabs },
  [SPELCH_WHY_WEAR] = { NC_ ("title of reasons", "Wear and cost"), spelch_chain_wear },
};
SPELCH_TABLE_HAS (WHYS, SPELCH_N_WHYS);

const char *
spelch_words_why_title (SpelchWhyKind kind)
{
  return g_dpgettext2 (GETTEXT_PACKAGE, "title of reasons", WHYS[kind].title);
}

char **
spelch_words_why (SpelchWhyKind kind, const SpelchWhyCase *of, const SpelchNumbers *numbers)
{
  SpelchChain chain = { of, numbers, g_ptr_array_new () };
  if (of->plan->n_passes == 0)
    spelch_chain_say (&chain, g_strdup (_ ("No way of cutting it was found.")));
  else
    WHYS[kind].chain (&chain);
  g_ptr_array_add (chain.list, NULL);
  return (char **)g_ptr_array_free (chain.list, FALSE);
}

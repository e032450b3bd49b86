/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is said about setting a cut out: width and tracks, which way round, straightedge, bush, fence, pecks,
 * tabs.
 */
#include "plan/words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* More depths, or tabs, than these are summed up. */
#define MOST_LISTED 8

typedef struct
{
  const SpelchPlan *plan;
  const SpelchPart *part;
  const SpelchSettingOut *out;
  const SpelchCut *cut;
  const SpelchMachine *machine;
  const SpelchNumbers *numbers;
  GPtrArray *sentences;
} Talk;

/* Takes @sentence. */
static void
say (Talk *talk, char *sentence)
{
  g_ptr_array_add (talk->sentences, sentence);
}

/* "4.5 mm and 9.0 mm". Takes the texts of @values, which has @n. */
static char *
listed (char **values, guint n)
{
  GString *list = g_string_new (NULL);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *value = values[i];
      const char *between = i == 0 ? "" : i + 1 == n ? _ (" and ") : ", ";
      g_string_append_printf (list, "%s%s", between, value);
    }
  return g_string_free (list, FALSE);
}

/* ---- Width ---- */

static void
say_fit (Talk *talk)
{
  const SpelchSettingOut *out = talk->out;
  g_autofree char *part = spelch_words_exactly (talk->numbers, talk->cut->mating.thickness.mm);
  g_autofree char *play = spelch_words_exactly (talk->numbers, fabs (talk->cut->mating.clearance.mm));
  g_autofree char *width = spelch_words_exactly (talk->numbers, out->width_mm);
  g_autofree char *left = spelch_words_exactly (talk->numbers, fabs (out->left_mm));
  g_autofree char *alone = spelch_words_exactly (talk->numbers, fabs (out->play_mm));
  if (!out->fitted)
    return;
  say (talk,
       talk->cut->mating.clearance.mm < 0
           ? g_strdup_printf (_ ("A part of %s that is to go in %s tight asks for a cut %s wide."), part,
                              play, width)
           : g_strdup_printf (_ ("A part of %s with %s of play asks for a cut %s wide."), part, play, width));
  if (out->left_mm == 0)
    say (talk, g_strdup (_ ("The bit is just as wide: one track will do.")));
  else if (out->left_mm > 0)
    say (talk, g_strdup_printf (_ ("One track with this bit would leave %s to take off."), left));
  else if (out->play_mm >= 0)
    say (talk, g_strdup_printf (_ ("This bit is %s too wide: it would leave %s of play."), left, alone));
  else
    say (talk, g_strdup_printf (_ ("This bit is %s too wide."), left));
}

static void
say_tracks (Talk *talk)
{
  const SpelchSettingOut *out = talk->out;
  g_autofree char *step = spelch_words_exactly (talk->numbers, out->step_over_mm);
  g_autofree char *overlap = spelch_words_exactly (talk->numbers, out->overlap_mm);
  g_autofree char *ground = spelch_words_exactly (talk->numbers, out->ground_off_mm);
  g_autofree char *radius = spelch_words_exactly (talk->numbers, out->corner_mm);
  if (out->drops_out)
    say (talk,
         g_strdup (
             _ ("The bit goes once round the opening, and its middle comes loose: hold it, or leave tabs.")));
  else if (out->tracks > 1)
    say (talk,
         g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "%d track side by side, %s from one to the next; they overlap by %s.",
                                       "%d tracks side by side, %s from one to the next; they overlap by %s.",
                                       (gulong)out->tracks),
                          out->tracks, step, overlap));
  if (out->ground_off_mm > 0)
    say (talk,
         g_strdup_printf (
             _ ("Sharpening has made the bit %s narrower than it is marked; that is allowed for."), ground));
  if (out->corner_mm > 0 && talk->cut->corner_radius.mm <= 0)
    say (talk,
         g_strdup_printf (
             _ ("Inside corners come out round, with a radius of %s: square them with a chisel, or round "
                "what goes in."),
             radius));
}

/* ---- Way ---- */

static const char *
round_sentence (const SpelchSettingOut *out)
{
  bool with_clock = out->round == SPELCH_ROUND_WITH_CLOCK;
  if (out->inside)
    return with_clock ? _ ("Go round the inside with the clock, seen from above.")
                      : _ ("Go round the inside against the clock, seen from above.");
  return with_clock ? _ ("Go round the outside with the clock, seen from above.")
                    : _ ("Go round the outside against the clock, seen from above.");
}

static const char *
way_on_table (const SpelchSettingOut *out)
{
  if (out->round == SPELCH_ROUND_ALONG)
    return _ ("Feed from right to left along the fence, against the turn of the bit.");
  if (!out->inside)
    return out->round == SPELCH_ROUND_WITH_CLOCK
               ? _ ("Start from a pin and feed from right to left between you and the bit: it goes round the "
                    "outside with "
                    "the clock, seen from above.")
               : _ ("The bit would go round the outside against the clock, seen from above.");
  return round_sentence (out);
}

/* Between two walls the way is there and back rather than round. */
static const char *
round_or_back (const Talk *talk)
{
  return spelch_cut_has_two_walls (talk->cut) && talk->out->round == SPELCH_ROUND_WITH_CLOCK
             ? _ ("Go along one wall and come back along the other: with the clock, seen from above.")
             : round_sentence (talk->out);
}

static const char *
way_by_hand (const Talk *talk)
{
  if (talk->out->round != SPELCH_ROUND_ALONG)
    return round_or_back (talk);
  if (spelch_cut_has_one_wall (talk->cut))
    return _ ("With the edge toward you, go from left to right.");
  if (spelch_cut_has_two_walls (talk->cut))
    return _ ("Push the router away from you with the straightedge at its left: the bit draws it there.");
  return NULL;
}

static const char *
way_on_gantry (const Talk *talk)
{
  bool climb = talk->cut->kept == SPELCH_WALL_RIGHT;
  if (talk->out->round != SPELCH_ROUND_ALONG)
    return round_or_back (talk);
  if (!spelch_cut_has_one_wall (talk->cut))
    return NULL;
  return climb ? _ ("Run with the wall that stays at the right of the travel: a climb cut.")
               : _ ("Run with the wall that stays at the left of the travel: conventional.");
}

/* By hand a climb cut isn't told how to be made; it is a reason not to cut. A full slot isn't one whichever
 * wall stays, but the way round that was asked for is the worse one. */
static void
say_way (Talk *talk)
{
  SpelchMachineKind kind = talk->machine->kind;
  bool gantry = kind == SPELCH_MACHINE_GANTRY, table = kind == SPELCH_MACHINE_TABLE;
  bool wrong_way = talk->cut->kept == SPELCH_WALL_RIGHT && talk->out->round != SPELCH_ROUND_ALONG && !gantry;
  const char *sentence = gantry                                                 ? way_on_gantry (talk)
                         : spelch_plan_has_stop (talk->plan, SPELCH_STOP_CLIMB) ? NULL
                         : wrong_way                                            ? round_sentence (talk->out)
                         : table                                                ? way_on_table (talk->out)
                                                                                : way_by_hand (talk);
  if (sentence == NULL)
    return;
  say (talk, g_strdup (sentence));
  if (wrong_way)
    say (talk,
         g_strdup (table ? _ ("The wall that stays is then at the right of the travel, where the bit pushes "
                              "the work off its guide: better go the other way round.")
                         : _ ("The wall that stays is then at the right of the travel, where the bit pushes "
                              "the router off its guide: better go the other way round.")));
}

static bool
runs_out_across (const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_edges; i++)
    if (plan->edges[i].stays && spelch_edge_points (&plan->edges[i], SPELCH_TERM_EXIT_CORNER) > 0)
      return true;
  return false;
}

/* Some plies of plywood lie across the way, whichever that is, and break out of the edge though the faces
 * hold. */
static bool
runs_out_of_plies (const Talk *talk)
{
  const SpelchBoard *board = &talk->part->board;
  bool has_end = spelch_cut_has_two_walls (talk->cut) || spelch_cut_has_one_wall (talk->cut);
  return has_end && talk->cut->end == SPELCH_END_EDGE && !spelch_cut_every_direction (talk->cut)
         && !spelch_part_outline_follows (talk->part, talk->cut) && board->n_layers > 2
         && board->layers[1].veneer;
}

static void
say_exit (Talk *talk)
{
  if (runs_out_across (talk->plan) || runs_out_of_plies (talk))
    say (talk, g_strdup (_ ("Clamp a scrap against the edge where the bit runs out.")));
}

/* A held router cuts into whatever lies below the board. */
static void
say_below (Talk *talk)
{
  const SpelchPlan *plan = talk->plan;
  g_autofree char *over = spelch_words_exactly (talk->numbers, plan->overcut);
  if (talk->machine->kind != SPELCH_MACHINE_HAND || !plan->through || plan->n_passes == 0)
    return;
  say (talk,
       g_strdup_printf (
           talk->cut->backer.mm > 0
               ? _ ("See that nothing but the backer lies under the line: the bit runs %s below the board.")
               : _ ("Lay a scrap board under the line, or leave a gap beneath it, and see that nothing "
                    "else lies there: the bit comes out %s below the board."),
           over));
}

/* ---- Guides ---- */

/* A straight way by hand, and nobody told how wide the base is. */
static bool
needs_base (const Talk *talk)
{
  bool straight = spelch_cut_has_one_wall (talk->cut) ? !talk->cut->every_direction
                                                      : spelch_cut_has_two_walls (talk->cut);
  return straight && talk->machine->kind == SPELCH_MACHINE_HAND && talk->machine->base_radius.mm <= 0;
}

/* What the passes before a finishing pass leave on the wall. */
static double
allowance_of (const SpelchPlan *plan)
{
  const SpelchPass *last = plan->n_passes > 0 ? &plan->passes[plan->n_passes - 1] : NULL;
  return last != NULL && last->finishing ? last->side_allowance_mm : 0;
}

static void
say_straightedge (Talk *talk)
{
  const SpelchSettingOut *out = talk->out;
  g_autofree char *offset = spelch_words_exactly (talk->numbers, out->fence_offset_mm);
  g_autofree char *base = spelch_words_exactly (talk->numbers, talk->machine->base_radius.mm);
  g_autofree char *half = spelch_words_exactly (talk->numbers, out->diameter_mm / 2);
  g_autofree char *guide = spelch_words_exactly (talk->numbers, out->guide_mm);
  double allowance = allowance_of (talk->plan);
  g_autofree char *farther = spelch_words_exactly (talk->numbers, allowance);
  bool both = spelch_cut_has_two_walls (talk->cut) && out->tracks > 1;
  bool inward = spelch_cut_has_one_wall (talk->cut) && out->tracks > 1;
  if (talk->machine->kind == SPELCH_MACHINE_HAND && inward)
    say (talk,
         g_strdup (_ ("Begin with the track at the board's edge and end with the one at the wall: the other "
                      "way round a strip would be left along which the bit climbs.")));
  if (out->fence_offset_mm > 0)
    say (talk,
         g_strdup_printf (
             both
                 ? _ ("Set the straightedge %s from the line of each wall in turn: %s of base less %s, "
                      "half the bit.")
                 : _ ("Set the straightedge %s from the line of the wall: %s of base less %s, half the bit."),
             offset, base, half));
  if (out->fence_offset_mm > 0 && allowance > 0)
    say (talk, g_strdup_printf (_ ("Until the finishing pass, keep it %s farther off."), farther));
  if (needs_base (talk))
    say (talk, g_strdup (_ ("Measure from the edge of the router's base to the middle of the spindle, and it "
                            "is said here where "
                            "the straightedge goes.")));
  if (out->guide_mm > 0)
    say (talk, g_strdup_printf (_ ("Or set the edge guide %s from the near side of the bit."), guide));
}

static void
say_bush (Talk *talk)
{
  const SpelchSettingOut *out = talk->out;
  g_autofree char *bush = spelch_words_exactly (talk->numbers, out->bush_mm);
  g_autofree char *offset = spelch_words_exactly (talk->numbers, out->bush_offset_mm);
  if (out->bush_mm <= 0)
    return;
  if (out->inside)
    say (talk,
         g_strdup_printf (
             _ ("With the %s guide bush, make the opening in the template %s larger than the cut all round."),
             bush, offset));
  else if (out->round != SPELCH_ROUND_ALONG)
    say (talk, g_strdup_printf (
                   _ ("With the %s guide bush, make the template %s smaller than the piece all round."), bush,
                   offset));
  else
    say (talk, g_strdup_printf (_ ("With the %s guide bush, keep the template's edge %s back from the line."),
                                bush, offset));
}

static void
say_bit_height (Talk *talk)
{
  const SpelchPlan *plan = talk->plan;
  char *heights[MOST_LISTED] = { NULL };
  guint n = MIN (plan->n_passes, MOST_LISTED);
  for (guint i = 0; i < n; i++)
    heights[i] = spelch_words_length (talk->numbers, plan->passes[i].tip_mm);
  g_autofree char *list = listed (heights, n);
  g_autofree char *last = spelch_words_length (talk->numbers, plan->bit_height_mm);
  if (plan->n_passes > MOST_LISTED)
    say (talk, g_strdup_printf (_ ("Set the bit above the table in %u steps, to %s at last."), plan->n_passes,
                                last));
  else if (n > 0)
    say (talk, g_strdup_printf (n > 1 ? _ ("Set the bit above the table, pass by pass: %s.")
                                      : _ ("Set the bit %s above the table."),
                                list));
}

/* "6.35 mm, then 9.2 mm": of the tracks after the first one. */
static char *
further_fences (const Talk *talk)
{
  GString *list = g_string_new (NULL);
  for (int i = 1; i < talk->out->tracks; i++)
    {
      g_autofree char *stands_out
          = spelch_words_exactly (talk->numbers, spelch_setting_out_stands_out (talk->out, i));
      g_string_append_printf (list, "%s%s", i > 1 ? _ (", then ") : "", stands_out);
    }
  return g_string_free (list, FALSE);
}

/* A rabbet or an edge wider than the bit, from the board's edge inward: in the other order a strip would be
 * left between bit and fence, and taking it off would be a climb cut. */
static void
say_fence_by_track (Talk *talk)
{
  const SpelchSettingOut *out = talk->out;
  g_autofree char *first = spelch_words_exactly (talk->numbers, spelch_setting_out_stands_out (out, 0));
  g_autofree char *last = spelch_words_exactly (talk->numbers, out->stands_out_mm);
  g_autofree char *step = spelch_words_exactly (talk->numbers, out->step_over_mm);
  g_autofree char *further = further_fences (talk);
  if (talk->cut->through)
    say (talk, g_strdup_printf (
                   _ ("Set the fence so that the bit stands out %s from it first, and cut that track right "
                      "through; then by %s for each further one, since the board's edge goes with every "
                      "track: never so that a strip is left between bit and fence."),
                   first, step));
  else if (out->tracks > MOST_LISTED)
    say (talk, g_strdup_printf (
                   _ ("Set the fence so that the bit stands out %s from it first, then %s more for each "
                      "further track, to %s at last: the other way round a strip would run trapped between "
                      "bit and fence, and taking it off would be a climb cut."),
                   first, step, last));
  else
    say (talk, g_strdup_printf (
                   _ ("Set the fence so that the bit stands out %s from it first, then %s: the other way "
                      "round a strip would run trapped between bit and fence, and taking it off would be a "
                      "climb cut."),
                   first, further));
}

static void
say_fence (Talk *talk)
{
  const SpelchSettingOut *out = talk->out;
  g_autofree char *guide = spelch_words_exactly (talk->numbers, out->guide_mm);
  g_autofree char *stands_out = spelch_words_exactly (talk->numbers, out->stands_out_mm);
  g_autofree char *step = spelch_words_exactly (talk->numbers, out->step_over_mm);
  bool two_walls = spelch_cut_has_two_walls (talk->cut);
  if (out->guide_mm > 0)
    say (talk, g_strdup_printf (_ ("Set the fence %s from the near side of the bit."), guide));
  if (out->stands_out_mm > 0 && out->tracks > 1)
    say_fence_by_track (talk);
  else if (out->stands_out_mm > 0)
    say (talk, g_strdup_printf (_ ("Set the fence so that the bit stands out %s from it."), stands_out));
  if (two_walls && out->tracks > 1)
    say (talk, g_strdup_printf (_ ("Cut the track nearest the fence first; for each further one set the "
                                   "fence %s farther from the "
                                   "bit: the other way would be a climb cut."),
                                step));
}

/* ---- Going in, tabs ---- */

static void
say_pecks (Talk *talk)
{
  const SpelchSettingOut *out = talk->out;
  g_autofree char *deep = spelch_words_at_most (talk->numbers, out->peck_mm);
  bool by_hand = talk->machine->kind == SPELCH_MACHINE_HAND;
  if (out->pecks < 2)
    return;
  say (talk,
       g_strdup_printf (by_hand ? _ ("Plunge in %u stages of about %s, drawing the bit out between them.")
                                : _ ("Drill in %u pecks of about %s, drawing the bit out between them."),
                        out->pecks, deep));
}

/* How to make an entry that isn't one movement of a machine. */
static void
say_entry (Talk *talk)
{
  const SpelchEntry *entry = &talk->plan->entry;
  g_autofree char *diameter = spelch_words_at_least (talk->numbers, talk->out->diameter_mm);
  g_autofree char *length = spelch_words_length (talk->numbers, entry->length_mm);
  g_autofree char *circle = spelch_words_length (talk->numbers, entry->circle_mm);
  if (entry->kind == SPELCH_ENTRY_DRILLED)
    say (talk, g_strdup_printf (_ ("Drill a hole of %s or more to start from, or go in with another bit."),
                                diameter));
  if (entry->kind == SPELCH_ENTRY_LOWERED)
    say (
        talk,
        g_strdup (_ (
            "Set stop blocks at both ends, hold the work to fence and block, and let it down slowly onto the "
            "turning bit, hands well clear; ask a trained person to show it first.")));
  if (entry->kind == SPELCH_ENTRY_RAMP)
    say (talk, entry->legs > 1 ? g_strdup_printf (
                   _ ("The ramp is %s long: there and back, %u times along the way."), length, entry->legs)
                               : g_strdup_printf (_ ("The ramp is %s long."), length));
  if (entry->kind == SPELCH_ENTRY_HELIX && entry->circle_mm > 0)
    say (talk, g_strdup_printf (_ ("Spiral in with the bit's middle on a circle %s across."), circle));
}

/* A tab stands well enough to a millimetre: "360, 880 and 1400 mm", "14 11/64 in and 34 41/64 in". */
static char *
tab_places (const Talk *talk, guint n)
{
  char *places[MOST_LISTED] = { NULL };
  bool inches = talk->numbers->unit == SPELCH_UNIT_INCH;
  for (guint i = 0; i < n; i++)
    {
      double place = spelch_setting_out_tab (talk->out, i);
      places[i] = inches ? spelch_words_length (talk->numbers, place) : spelch_words_count (round (place));
    }
  g_autofree char *list = listed (places, n);
  return inches ? g_steal_pointer (&list) : g_strdup_printf (_ ("%s mm"), list);
}

static void
say_tabs (Talk *talk)
{
  guint n = spelch_setting_out_tabs (talk->out);
  bool corner = talk->out->side_mm[1] > 0;
  if (n == 0)
    return;
  g_autofree char *width = spelch_words_length (talk->numbers, talk->cut->tabs.width.mm);
  g_autofree char *thickness = spelch_words_length (talk->numbers, talk->cut->tabs.thickness.mm);
  g_autofree char *list = tab_places (talk, MIN (n, MOST_LISTED));
  g_autofree char *first = spelch_words_length (talk->numbers, spelch_setting_out_tab (talk->out, 0));
  g_autofree char *apart = spelch_words_length (talk->numbers, spelch_cut_way (talk->cut) / n);
  if (n > MOST_LISTED)
    say (talk,
         g_strdup_printf (_ ("Leave tabs %s wide and %s thick about every %s, the first %s from the start."),
                          width, thickness, apart, first));
  else if (corner)
    say (talk,
         g_strdup_printf (_ ("Leave tabs %s wide and %s thick at %s from a corner, along the length first."),
                          width, thickness, list));
  else
    say (talk, g_strdup_printf (_ ("Leave tabs %s wide and %s thick at %s from the start."), width, thickness,
                                list));
}

char **
spelch_words_setting_out (const SpelchPlan *plan, const SpelchPart *part, const SpelchCut *cut,
                          const SpelchNumbers *numbers)
{
  Talk talk = { plan, part, &plan->setting_out, cut, &part->machine, numbers, g_ptr_array_new () };
  if (spelch_plan_has_stop (plan, SPELCH_STOP_FREEHAND)) /* nor is that told how to be done */
    {
      g_ptr_array_add (talk.sentences, NULL);
      return (char **)g_ptr_array_free (talk.sentences, FALSE);
    }
  say_fit (&talk);
  say_tracks (&talk);
  say_way (&talk);
  say_exit (&talk);
  say_below (&talk);
  if (part->machine.kind == SPELCH_MACHINE_TABLE)
    {
      say_bit_height (&talk);
      say_fence (&talk);
    }
  else
    say_straightedge (&talk);
  say_bush (&talk);
  say_entry (&talk);
  say_pecks (&talk);
  say_tabs (&talk);
  g_ptr_array_add (talk.sentences, NULL);
  return (char **)g_ptr_array_free (talk.sentences, FALSE);
}

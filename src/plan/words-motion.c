/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/words-motion.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define WHOLE_FROM 10 /* N; larger forces, and their bands, are written without decimals */

char *
spelch_words_motion_way (bool up, SpelchMachineKind machine)
{
  if (machine == SPELCH_MACHINE_TABLE)
    return g_strdup (up ? _ ("draws to the table") : _ ("pushes off the table"));
  return g_strdup (up ? _ ("lifts") : _ ("presses"));
}

static char *
newtons (const SpelchNumbers *numbers, double value, const SpelchBand *of)
{
  return spelch_words_decimal (numbers, fabs (value), fabs (of->mid) < WHOLE_FROM ? 1 : 0);
}

char *
spelch_words_motion_force (const SpelchBand *axial, SpelchMachineKind machine, const SpelchNumbers *numbers)
{
  if (fabs (axial->mid) < SPELCH_WORDS_NEXT_TO_NOTHING)
    return g_strdup (machine == SPELCH_MACHINE_TABLE ? _ ("neither draws nor pushes")
                                                     : _ ("neither lifts nor presses"));
  bool up = axial->mid > 0;
  g_autofree char *way = spelch_words_motion_way (up, machine);
  g_autofree char *mid = newtons (numbers, axial->mid, axial);
  g_autofree char *least = newtons (numbers, up ? axial->low : axial->high, axial);
  g_autofree char *most = newtons (numbers, up ? axial->high : axial->low, axial);
  /* Translators: "lifts 3.1 N (1.5 to 6.2)". */
  return g_strdup_printf (_ ("%s %s N (%s to %s)"), way, mid, least, most);
}

char *
spelch_words_motion_chips (const SpelchMotionPass *pass)
{
  const SpelchFlutes *flutes = &pass->force.flutes;
  double s0 = pass->depth - pass->stock_to, s1 = pass->depth - pass->stock_from;
  SpelchHands hands = spelch_flute_hands_between (flutes, s0, s1);
  if (hands.up && hands.down)
    return g_strdup (
        _ ("Chips go up the flutes below the turn-over and down above it, and meet in the kerf."));
  if (hands.up && s1 < flutes->turn_over && flutes->turn_over < flutes->length
      && pass->depth > flutes->turn_over)
    return g_strdup (_ ("Chips go up the flutes as far as the turn-over."));
  if (hands.up)
    return g_strdup (_ ("Chips go up the flutes and out."));
  if (hands.down)
    return g_strdup (_ ("Chips go down into the kerf."));
  return g_strdup (_ ("Chips stay at their height, thrown back into the kerf."));
}

char *
spelch_words_motion_room (const SpelchMotionPass *pass)
{
  if (pass->chip_room <= 0)
    return g_strdup (_ ("The cut is open at a side, so they fall out freely."));
  if (pass->chip_room > 1)
    return g_strdup_printf (_ ("They would fill %.0f %% of the flutes’ room: they jam."),
                            pass->chip_room * 100);
  /* Translators: the share of the flutes' room that chips fill. */
  return g_strdup_printf (_ ("They fill %.0f %% of the flutes’ room."), pass->chip_room * 100);
}

char *
spelch_words_motion_extent (const SpelchMotionPass *pass)
{
  g_autofree char *time = spelch_words_time (pass->cutting_s);
  if (pass->cutting_s <= 0)
    return g_strdup_printf (_ ("%d turns of the bit are shown."), SPELCH_MOTION_TURNS);
  /* Translators: %d is a number of turns, 4; %s a time, "1 min 52 s". */
  return g_strdup_printf (_ ("%d turns of the bit are shown; the whole pass takes %s."), SPELCH_MOTION_TURNS,
                          time);
}

char *
spelch_words_motion_speed (double ratio, double teeth, bool blurred, const SpelchNumbers *numbers)
{
  g_autofree char *slower = ratio > 0 && ratio < 0.95 ? spelch_words_count (round (1 / ratio)) : NULL;
  g_autofree char *count
      = spelch_words_decimal (numbers, teeth, teeth < 9.95 && fabs (teeth - round (teeth)) > 0.04);
  /* Translators: how much slower than in reality; %s is a whole number. */
  g_autofree char *real
      = slower == NULL ? g_strdup (_ ("real time")) : g_strdup_printf (_ ("1/%s of real time"), slower);
  if (blurred)
    return g_strdup_printf (_ ("%s, %s teeth a second, drawn evenly blurred"), real, count);
  if (fabs (teeth - 1) < 0.05)
    return g_strdup_printf (_ ("%s, one tooth a second"), real);
  return g_strdup_printf (_ ("%s, %s teeth a second"), real, count);
}

char *
spelch_words_motion_pass (const SpelchMotion *motion, guint pass, const SpelchNumbers *numbers)
{
  g_autofree char *depth = spelch_words_length (numbers, motion->passes[pass].depth);
  /* Translators: "Pass 1 of 2, to 9.2 mm". */
  return g_strdup_printf (_ ("Pass %u of %u, to %s"), pass + 1, motion->n_passes, depth);
}

char *
spelch_words_motion_frame (const SpelchMotion *motion, const SpelchMotionFrame *frame,
                           SpelchMachineKind machine, const SpelchNumbers *numbers)
{
  const SpelchMotionPass *pass = &motion->passes[frame->pass];
  guint teeth = (guint)MAX (pass->teeth, 1) * SPELCH_MOTION_TURNS;
  guint tooth = MIN ((guint)floor (frame->turned / spelch_motion_tooth (pass) + 1e-6) + 1, teeth);
  guint turn = (tooth - 1) / (guint)MAX (pass->teeth, 1) + 1;
  g_autofree char *which = spelch_words_motion_pass (motion, frame->pass, numbers);
  g_autofree char *force = spelch_words_motion_force (&frame->axial, machine, numbers);
  g_autofree char *mean = spelch_words_motion_force (&pass->axial, machine, numbers);
  g_autofree char *chips = spelch_words_motion_chips (pass);
  g_autofree char *room = spelch_words_motion_room (pass);
  /* Translators: which pass; which tooth of how many, in which turn; what the force on the board does now,
   * and on average; and two sentences on chips. */
  return g_strdup_printf (_ ("%s. Tooth %u of %u, turn %u. Now: %s; on average over a turn: %s. %s %s"),
                          which, tooth, teeth, turn, force, mean, chips, room);
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What can be drawn for a question, or changed by its follow-up, and what it is.
 */
#include "plan/case.h"
#include "plan/words-posed.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdlib.h>

/* ---- Words for single things ---- */

static const char *
bit_kind_word (SpelchBitKind kind)
{
  switch (kind)
    {
    case SPELCH_BIT_UP_CUT:
      return _ ("up-cut bit");
    case SPELCH_BIT_DOWN_CUT:
      return _ ("down-cut bit");
    case SPELCH_BIT_COMPRESSION:
      return _ ("compression bit");
    case SPELCH_BIT_STRAIGHT:
    default:
      return _ ("straight bit");
    }
}

char *
spelch_words_bit (const SpelchBit *bit, const SpelchNumbers *numbers)
{
  g_autofree char *across = spelch_words_exactly (numbers, spelch_bit_diameter_now (bit));
  g_autofree char *up_shear = spelch_words_exactly (numbers, spelch_bit_up_shear_now (bit));
  g_autofree char *cutting = spelch_words_length (numbers, bit->cutting_length.mm);
  if (bit->kind == SPELCH_BIT_COMPRESSION)
    /* TRANSLATORS: "compression bit, 6.35 mm across, 6.35 mm of up-shear, cuts 22 mm deep" */
    return g_strdup_printf (_ ("%s, %s across, %s of up-shear, cuts %s deep"), bit_kind_word (bit->kind),
                            across, up_shear, cutting);
  return g_strdup_printf (_ ("%s, %s across, cuts %s deep"), bit_kind_word (bit->kind), across, cutting);
}

static const char *
wear_word (SpelchWear wear)
{
  switch (wear)
    {
    case SPELCH_WEAR_NEW:
      return C_ ("cutting edge", "new");
    case SPELCH_WEAR_WORN:
      return C_ ("cutting edge", "worn");
    case SPELCH_WEAR_DULL:
      return C_ ("cutting edge", "dull");
    case SPELCH_WEAR_SHARP:
    default:
      return C_ ("cutting edge", "sharp");
    }
}

static const char *
end_word (SpelchEnd end)
{
  switch (end)
    {
    case SPELCH_END_EDGE:
      return _ ("over the edge, with nothing behind it");
    case SPELCH_END_BACKED:
      return _ ("over the edge, against a backing piece");
    case SPELCH_END_INSIDE:
    default:
      return _ ("within the board");
    }
}

static const char *
spoilboard_word (SpelchSpoilboard spoilboard)
{
  switch (spoilboard)
    {
    case SPELCH_SPOILBOARD_FRESH:
      return _ ("a fresh spoilboard");
    case SPELCH_SPOILBOARD_CUT_HERE_BEFORE:
      return _ ("a spoilboard that has been cut here before");
    case SPELCH_SPOILBOARD_UNTOLD:
    default:
      return _ ("a spoilboard");
    }
}

static const char *
kept_word (SpelchWall kept)
{
  return kept == SPELCH_WALL_LEFT    ? _ ("the left wall stays")
         : kept == SPELCH_WALL_RIGHT ? _ ("the right wall stays")
                                     : _ ("both walls stay");
}

/* ---- What can be drawn or changed ---- */

const char *
spelch_words_change_name (SpelchChangeKind what)
{
  static const char *const names[] = {
    [SPELCH_CHANGE_THICKNESS] = N_ ("Board, measured"),
    [SPELCH_CHANGE_PIECE_LENGTH] = N_ ("Length of the piece"),
    [SPELCH_CHANGE_PIECE_WIDTH] = N_ ("Width of the piece"),
    [SPELCH_CHANGE_DEPTH] = N_ ("Depth of the cut"),
    [SPELCH_CHANGE_WIDTH] = N_ ("Width of the cut"),
    [SPELCH_CHANGE_FIRST_PASS] = N_ ("First pass"),
    [SPELCH_CHANGE_OVERCUT] = N_ ("Overcut"),
    [SPELCH_CHANGE_UP_SHEAR] = N_ ("Up-shear of the bit"),
    [SPELCH_CHANGE_STICK_OUT] = N_ ("Stick-out"),
    [SPELCH_CHANGE_BACKER] = N_ ("Backer board"),
    [SPELCH_CHANGE_TAB_WIDTH] = N_ ("Width of a tab"),
    [SPELCH_CHANGE_TAB_THICKNESS] = N_ ("Thickness of a tab"),
    [SPELCH_CHANGE_TABS] = N_ ("Number of tabs"),
    [SPELCH_CHANGE_FEED] = N_ ("Feed"),
    [SPELCH_CHANGE_SPEED] = N_ ("Spindle speed"),
    [SPELCH_CHANGE_AREA] = N_ ("Area on the bed"),
    [SPELCH_CHANGE_VACUUM] = N_ ("Vacuum"),
    [SPELCH_CHANGE_CLAMP_FORCE] = N_ ("Force of the clamps"),
    [SPELCH_CHANGE_PATH] = N_ ("Way of the cut"),
    [SPELCH_CHANGE_ACCEPTED] = N_ ("Accepted on seen edges"),
    [SPELCH_CHANGE_BIT] = N_ ("Bit"),
    [SPELCH_CHANGE_WAY_UP] = N_ ("Toward the motor"),
    [SPELCH_CHANGE_WEAR] = N_ ("Cutting edge"),
    [SPELCH_CHANGE_DATUM] = N_ ("Zero"),
    [SPELCH_CHANGE_SPOILBOARD] = N_ ("Under the board"),
    [SPELCH_CHANGE_KEPT] = N_ ("Walls"),
    [SPELCH_CHANGE_END] = N_ ("Runs out"),
    [SPELCH_CHANGE_ENTRY] = N_ ("Goes in"),
  };
  return _ (names[what]);
}

/* From the cut's way toward its left, in (-90, 90], seen from the motor, of the face that lies there. */
static int
fibre_angle (const SpelchBoard *board, const SpelchCut *cut)
{
  const SpelchLayer *near = spelch_board_face_layer (board, cut->way_up);
  double angle = spelch_angle_seen_from (cut->way_up, near->grain_deg - cut->path_deg);
  return (int)spelch_angle_of_line (round (angle));
}

/* How the cut's way lies to the grain of the face toward the motor. */
static char *
grain_words (const SpelchBoard *board, const SpelchCut *cut)
{
  int angle = fibre_angle (board, cut);
  if (spelch_cut_every_direction (cut))
    return g_strdup (_ ("meets the grain from every side"));
  if (angle == 0)
    return g_strdup (_ ("along the grain"));
  if (angle == 90)
    return g_strdup (_ ("straight across the grain"));
  /* TRANSLATORS: the cut's way, with which the fibres make an angle */
  return g_strdup_printf (angle > 0 ? _ ("the fibres run off to its left, at %d°")
                                    : _ ("the fibres run off to its right, at %d°"),
                          abs (angle));
}

static char *
face_words (const SpelchCut *cut, SpelchFace face)
{
  if (cut->seen_a == cut->seen_b)
    return g_strdup_printf (_ ("face %s"), spelch_code_of (&SPELCH_FACE_CODES, (int)face));
  return g_strdup (spelch_cut_sees (cut, face) ? _ ("the show face") : _ ("the hidden face"));
}

static char *
code_value (const SpelchChange *change, const SpelchPart *part, const SpelchNumbers *numbers)
{
  const SpelchCut *cut = &part->cuts[0];
  const SpelchCodes *codes = spelch_change_codes (change->what);
  int value = 0, bit = spelch_part_find_bit (part, change->code);
  if (codes != NULL)
    spelch_code_read (codes, change->code, &value);
  switch ((int)change->what)
    {
    case SPELCH_CHANGE_BIT:
      return bit < 0 ? g_strdup (change->code) : spelch_words_bit (&part->bits[bit], numbers);
    case SPELCH_CHANGE_WAY_UP:
      return face_words (cut, (SpelchFace)value);
    case SPELCH_CHANGE_WEAR:
      return g_strdup (wear_word ((SpelchWear)value));
    case SPELCH_CHANGE_DATUM:
      return g_strdup (value == SPELCH_DATUM_BED ? _ ("on the bed") : _ ("on the face"));
    case SPELCH_CHANGE_SPOILBOARD:
      return g_strdup (spoilboard_word ((SpelchSpoilboard)value));
    case SPELCH_CHANGE_KEPT:
      return g_strdup (kept_word ((SpelchWall)value));
    case SPELCH_CHANGE_END:
      return g_strdup (end_word ((SpelchEnd)value));
    default:
      return g_strdup (value == 1 ? _ ("on the finished line") : _ ("in the waste"));
    }
}

static char *
square_centimetres (double mm2)
{
  g_autofree char *count = spelch_words_count (mm2 / 100);
  return g_strdup_printf (_ ("%s cm²"), count);
}

static char *
number_value (const SpelchChange *change, const SpelchPart *part, const SpelchNumbers *numbers)
{
  g_autofree char *count = spelch_words_count (change->number);
  SpelchCut cut = part->cuts[0];
  switch ((int)change->what)
    {
    case SPELCH_CHANGE_FEED:
      return spelch_words_feed (numbers, change->number);
    case SPELCH_CHANGE_SPEED:
      return g_strdup_printf (_ ("%s rpm"), count);
    case SPELCH_CHANGE_AREA:
      return square_centimetres (change->number);
    case SPELCH_CHANGE_VACUUM:
      return g_strdup_printf (_ ("%s kPa"), count);
    case SPELCH_CHANGE_CLAMP_FORCE:
      return g_strdup_printf (_ ("%s N"), count);
    case SPELCH_CHANGE_PATH:
      cut.path_deg = change->number;
      return grain_words (&part->board, &cut);
    case SPELCH_CHANGE_ACCEPTED:
      return g_strdup (spelch_words_grade (
          (int)change->number, spelch_facing_of_layer (spelch_board_face_layer (&part->board, cut.way_up))));
    default:
      return g_steal_pointer (&count);
    }
}

char *
spelch_words_change_value (const SpelchChange *change, const SpelchPart *part, const SpelchNumbers *numbers)
{
  switch (spelch_change_value (change->what))
    {
    case SPELCH_CHANGE_IS_CODE:
      return code_value (change, part, numbers);
    case SPELCH_CHANGE_IS_NUMBER:
      return number_value (change, part, numbers);
    case SPELCH_CHANGE_IS_LENGTH:
    default:
      if (change->what == SPELCH_CHANGE_BACKER && change->number <= 0)
        return g_strdup (_ ("none"));
      if (change->what == SPELCH_CHANGE_STICK_OUT && change->number <= 0)
        return g_strdup (_ ("as short as it goes"));
      return change->what == SPELCH_CHANGE_UP_SHEAR ? spelch_words_exactly (numbers, change->number)
                                                    : spelch_words_length (numbers, change->number);
    }
}

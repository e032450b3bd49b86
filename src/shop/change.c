/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/change.h"

static const char *const WHATS[] = {
  [SPELCH_CHANGE_THICKNESS] = "thickness",
  [SPELCH_CHANGE_PIECE_LENGTH] = "piece-length",
  [SPELCH_CHANGE_PIECE_WIDTH] = "piece-width",
  [SPELCH_CHANGE_DEPTH] = "depth",
  [SPELCH_CHANGE_WIDTH] = "width",
  [SPELCH_CHANGE_FIRST_PASS] = "first-pass",
  [SPELCH_CHANGE_OVERCUT] = "overcut",
  [SPELCH_CHANGE_UP_SHEAR] = "up-shear",
  [SPELCH_CHANGE_STICK_OUT] = "stick-out",
  [SPELCH_CHANGE_BACKER] = "backer",
  [SPELCH_CHANGE_TAB_WIDTH] = "tab-width",
  [SPELCH_CHANGE_TAB_THICKNESS] = "tab-thickness",
  [SPELCH_CHANGE_TABS] = "tabs",
  [SPELCH_CHANGE_FEED] = "feed",
  [SPELCH_CHANGE_SPEED] = "speed",
  [SPELCH_CHANGE_AREA] = "area",
  [SPELCH_CHANGE_VACUUM] = "vacuum",
  [SPELCH_CHANGE_CLAMP_FORCE] = "clamp-force",
  [SPELCH_CHANGE_PATH] = "path",
  [SPELCH_CHANGE_ACCEPTED] = "accepted",
  [SPELCH_CHANGE_BIT] = "bit",
  [SPELCH_CHANGE_WAY_UP] = "way-up",
  [SPELCH_CHANGE_WEAR] = "wear",
  [SPELCH_CHANGE_DATUM] = "datum",
  [SPELCH_CHANGE_SPOILBOARD] = "spoilboard",
  [SPELCH_CHANGE_KEPT] = "kept",
  [SPELCH_CHANGE_END] = "end",
  [SPELCH_CHANGE_ENTRY] = "entry",
};
SPELCH_TABLE_HAS (WHATS, SPELCH_N_CHANGES);
const SpelchCodes SPELCH_CHANGE_CODES = { "change", WHATS, G_N_ELEMENTS (WHATS) };

static const char *const PLACES[] = { "waste", "line" };
const SpelchCodes SPELCH_ENTRY_PLACE_CODES = { "entry", PLACES, G_N_ELEMENTS (PLACES) };

SpelchChangeValue
spelch_change_value (SpelchChangeKind what)
{
  return what < SPELCH_CHANGE_TABS  ? SPELCH_CHANGE_IS_LENGTH
         : what < SPELCH_CHANGE_BIT ? SPELCH_CHANGE_IS_NUMBER
                                    : SPELCH_CHANGE_IS_CODE;
}

const SpelchCodes *
spelch_change_codes (SpelchChangeKind what)
{
  switch ((int)what)
    {
    case SPELCH_CHANGE_WAY_UP:
      return &SPELCH_FACE_CODES;
    case SPELCH_CHANGE_WEAR:
      return &SPELCH_WEAR_CODES;
    case SPELCH_CHANGE_DATUM:
      return &SPELCH_DATUM_CODES;
    case SPELCH_CHANGE_SPOILBOARD:
      return &SPELCH_SPOILBOARD_CODES;
    case SPELCH_CHANGE_KEPT:
      return &SPELCH_WALL_CODES;
    case SPELCH_CHANGE_END:
      return &SPELCH_END_CODES;
    case SPELCH_CHANGE_ENTRY:
      return &SPELCH_ENTRY_PLACE_CODES;
    default:
      return NULL;
    }
}

bool
spelch_change_of_bit (SpelchChangeKind what)
{
  return what == SPELCH_CHANGE_UP_SHEAR || what == SPELCH_CHANGE_WEAR;
}

static SpelchBit *
bit_of (const SpelchPart *part)
{
  int i = spelch_part_find_bit (part, part->cuts[0].bit);
  return i < 0 ? NULL : &part->bits[i];
}

/* The length that a change is about; NULL when it is about something else. */
static SpelchLength *
length_in (SpelchChangeKind what, const SpelchPart *part)
{
  SpelchPart *own = (SpelchPart *)part;
  SpelchCut *cut = &own->cuts[0];
  SpelchBit *bit = bit_of (own);
  switch ((int)what)
    {
    case SPELCH_CHANGE_THICKNESS:
      return &own->board.measured;
    case SPELCH_CHANGE_PIECE_LENGTH:
      return &own->length;
    case SPELCH_CHANGE_PIECE_WIDTH:
      return &own->width;
    case SPELCH_CHANGE_DEPTH:
      return &cut->depth;
    case SPELCH_CHANGE_WIDTH:
      return &cut->width;
    case SPELCH_CHANGE_OVERCUT:
      return &cut->held.overcut;
    case SPELCH_CHANGE_UP_SHEAR:
      return bit == NULL ? NULL : bit->sharpened_up_shear.mm > 0 ? &bit->sharpened_up_shear : &bit->up_shear;
    case SPELCH_CHANGE_STICK_OUT:
      return &cut->stick_out;
    case SPELCH_CHANGE_BACKER:
      return &cut->backer;
    case SPELCH_CHANGE_TAB_WIDTH:
      return &cut->tabs.width;
    case SPELCH_CHANGE_TAB_THICKNESS:
      return &cut->tabs.thickness;
    default:
      return NULL;
    }
}

/* The plain number that a change is about, in the same way. */
static double *
number_in (SpelchChangeKind what, const SpelchPart *part)
{
  SpelchPart *own = (SpelchPart *)part;
  SpelchHeld *held = &own->cuts[0].held;
  switch ((int)what)
    {
    case SPELCH_CHANGE_FEED:
      return &held->feed_mm_min;
    case SPELCH_CHANGE_SPEED:
      return &held->speed_rpm;
    case SPELCH_CHANGE_AREA:
      return &own->holding.area_mm2;
    case SPELCH_CHANGE_VACUUM:
      return &own->holding.vacuum_kpa;
    case SPELCH_CHANGE_CLAMP_FORCE:
      return &own->holding.clamp_force_n;
    case SPELCH_CHANGE_PATH:
      return &own->cuts[0].path_deg;
    default:
      return NULL;
    }
}

static void
set_first_pass (SpelchPart *part, double mm)
{
  SpelchCut *cut = &part->cuts[0];
  double whole = cut->through ? spelch_board_thickness (&part->board) : cut->depth.mm;
  cut->held.passes_held = true;
  cut->held.n_passes = mm > 0 && mm < whole - 1e-6 ? 1 : 0;
  cut->held.passes[0] = spelch_length_mm (cut->held.n_passes > 0 ? mm : 0);
}

static void
set_code (SpelchPart *part, SpelchChangeKind what, const char *code)
{
  SpelchCut *cut = &part->cuts[0];
  SpelchBit *bit = bit_of (part);
  int value = 0;
  if (what == SPELCH_CHANGE_BIT)
    {
      if (spelch_part_find_bit (part, code) >= 0)
        g_strlcpy (cut->bit, code, sizeof cut->bit);
      return;
    }
  if (!spelch_code_read (spelch_change_codes (what), code, &value))
    return;
  if (what == SPELCH_CHANGE_WAY_UP)
    cut->way_up = (SpelchFace)value;
  else if (what == SPELCH_CHANGE_WEAR && bit != NULL)
    bit->wear = (SpelchWear)value;
  else if (what == SPELCH_CHANGE_DATUM)
    part->machine.datum = (SpelchDatum)value;
  else if (what == SPELCH_CHANGE_SPOILBOARD)
    part->machine.spoilboard = (SpelchSpoilboard)value;
  else if (what == SPELCH_CHANGE_KEPT)
    cut->kept = (SpelchWall)value;
  else if (what == SPELCH_CHANGE_END)
    cut->end = (SpelchEnd)value;
  else if (what == SPELCH_CHANGE_ENTRY)
    cut->held.entry_on_line = value == 1;
}

static double
first_pass_now (const SpelchPart *part)
{
  const SpelchCut *cut = &part->cuts[0];
  return cut->held.n_passes > 0 ? cut->held.passes[0].mm
         : cut->through         ? spelch_board_thickness (&part->board)
                                : cut->depth.mm;
}

static double
number_now (SpelchChangeKind what, const SpelchPart *part)
{
  const SpelchLength *length = length_in (what, part);
  const double *number = number_in (what, part);
  if (what == SPELCH_CHANGE_FIRST_PASS)
    return first_pass_now (part);
  if (what == SPELCH_CHANGE_THICKNESS)
    return spelch_board_thickness (&part->board);
  if (what == SPELCH_CHANGE_TABS)
    return part->cuts[0].tabs.count;
  if (what == SPELCH_CHANGE_ACCEPTED)
    return part->accepted_seen;
  return length != NULL ? length->mm : number != NULL ? *number : 0;
}

void
spelch_change_apply (const SpelchChange *change, SpelchPart *part)
{
  SpelchLength *length = length_in (change->what, part);
  double *number = number_in (change->what, part);
  double value = change->number + (change->by ? number_now (change->what, part) : 0);
  value = (double)(gint64)(value * 1e6 + (value < 0 ? -0.5 : 0.5)) / 1e6;
  if (change->what == SPELCH_CHANGE_OVERCUT)
    part->cuts[0].held.overcut_held = true;
  if (length != NULL)
    *length = spelch_length_mm (value);
  else if (number != NULL)
    *number = value;
  else if (change->what == SPELCH_CHANGE_FIRST_PASS)
    set_first_pass (part, value);
  else if (change->what == SPELCH_CHANGE_TABS)
    part->cuts[0].tabs.count = (guint)MAX (value, 0);
  else if (change->what == SPELCH_CHANGE_ACCEPTED)
    part->accepted_seen = (int)CLAMP (value, 1, 5);
  else
    set_code (part, change->what, change->code);
}

static int
code_now (SpelchChangeKind what, const SpelchPart *part)
{
  const SpelchCut *cut = &part->cuts[0];
  const SpelchBit *bit = bit_of (part);
  switch ((int)what)
    {
    case SPELCH_CHANGE_WAY_UP:
      return (int)cut->way_up;
    case SPELCH_CHANGE_WEAR:
      return bit == NULL ? 0 : (int)bit->wear;
    case SPELCH_CHANGE_DATUM:
      return (int)spelch_machine_datum (&part->machine);
    case SPELCH_CHANGE_SPOILBOARD:
      return (int)part->machine.spoilboard;
    case SPELCH_CHANGE_KEPT:
      return (int)cut->kept;
    case SPELCH_CHANGE_END:
      return (int)cut->end;
    case SPELCH_CHANGE_ENTRY:
    default:
      return cut->held.entry_on_line ? 1 : 0;
    }
}

SpelchChange
spelch_change_now (SpelchChangeKind what, const SpelchPart *part)
{
  SpelchChange now = { .what = what };
  if (what == SPELCH_CHANGE_BIT)
    g_strlcpy (now.code, part->cuts[0].bit, sizeof now.code);
  else if (spelch_change_value (what) == SPELCH_CHANGE_IS_CODE)
    g_strlcpy (now.code, spelch_code_of (spelch_change_codes (what), code_now (what, part)), sizeof now.code);
  else
    now.number = number_now (what, part);
  return now;
}

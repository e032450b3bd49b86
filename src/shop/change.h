/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Change: one thing about a part and its first cut that can be set to another value, as an exercise draws
 * it at random or its follow-up changes it.
 */
#pragma once

#include "shop/part.h"

typedef enum
{
  /* lengths */
  SPELCH_CHANGE_THICKNESS,     /* of the board, measured */
  SPELCH_CHANGE_PIECE_LENGTH,  /* of the piece */
  SPELCH_CHANGE_PIECE_WIDTH,   /* of the piece */
  SPELCH_CHANGE_DEPTH,         /* of a blind cut */
  SPELCH_CHANGE_WIDTH,         /* of the cut */
  SPELCH_CHANGE_FIRST_PASS,    /* the only one before the last; 0, or the whole depth: a single pass */
  SPELCH_CHANGE_OVERCUT,       /* held */
  SPELCH_CHANGE_UP_SHEAR,      /* of the cut's bit */
  SPELCH_CHANGE_STICK_OUT,     /* of the bit from the collet */
  SPELCH_CHANGE_BACKER,        /* 0: none */
  SPELCH_CHANGE_TAB_WIDTH,     /* of each */
  SPELCH_CHANGE_TAB_THICKNESS, /* of each */
  /* numbers */
  SPELCH_CHANGE_TABS,        /* how many */
  SPELCH_CHANGE_FEED,        /* held, mm/min */
  SPELCH_CHANGE_SPEED,       /* held, rpm */
  SPELCH_CHANGE_AREA,        /* touching the bed, mm2 */
  SPELCH_CHANGE_VACUUM,      /* kPa */
  SPELCH_CHANGE_CLAMP_FORCE, /* all clamps together, N */
  SPELCH_CHANGE_PATH,        /* travel, degrees */
  SPELCH_CHANGE_ACCEPTED,    /* worst grade accepted on a seen edge */
  /* codes */
  SPELCH_CHANGE_BIT, /* the cut's, by its id in the part */
  SPELCH_CHANGE_WAY_UP,
  SPELCH_CHANGE_WEAR, /* of the cut's bit */
  SPELCH_CHANGE_DATUM,
  SPELCH_CHANGE_SPOILBOARD,
  SPELCH_CHANGE_KEPT,  /* which wall stays */
  SPELCH_CHANGE_END,   /* of the path */
  SPELCH_CHANGE_ENTRY, /* in the waste, or on the finished line; the kind is the cut's */
  SPELCH_N_CHANGES,
} SpelchChangeKind;
extern const SpelchCodes SPELCH_CHANGE_CODES; /* "thickness", "first-pass", … */

/* Where an entry is made. */
extern const SpelchCodes SPELCH_ENTRY_PLACE_CODES; /* waste, line */

typedef enum
{
  SPELCH_CHANGE_IS_LENGTH, /* mm */
  SPELCH_CHANGE_IS_NUMBER,
  SPELCH_CHANGE_IS_CODE,
} SpelchChangeValue;

typedef struct
{
  SpelchChangeKind what;
  bool by;                   /* @number is added to what it is now */
  double number;             /* of a length, mm */
  char code[SPELCH_ID_SIZE]; /* of a code */
} SpelchChange;

/* How its value is told: as a length, a number or a code. */
SpelchChangeValue spelch_change_value (SpelchChangeKind what);

/* The codes that one is written with; NULL for a bit's id and for numbers. */
const SpelchCodes *spelch_change_codes (SpelchChangeKind what);

/* Whether @what is about the bit of the cut, so that there must be one. */
bool spelch_change_of_bit (SpelchChangeKind what);

/* Makes the change in @part, which has a cut and isn't shared. Codes and ids that aren't known change
 * nothing; a first pass that leaves nothing to a second one asks for a single pass. */
void spelch_change_apply (const SpelchChange *change, SpelchPart *part);

/* What it is now in @part, as a change to just that. */
SpelchChange spelch_change_now (SpelchChangeKind what, const SpelchPart *part);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edits: later parts for the choices made around the drawing. Pure functions; each gives a new part with a
 * reference count of one.
 */
#pragma once

#include "shop/part.h"

#include <glib.h>

/* The cut made with @bit, of which the part keeps a copy. Depths held for another bit are let go. */
SpelchPart *spelch_edit_bit (const SpelchPart *part, guint cut, const SpelchBit *bit);

/* The same, but with the passes of @made held, which was planned with @bit. */
SpelchPart *spelch_edit_bit_at (const SpelchPart *part, guint cut, const SpelchBit *bit,
                                const SpelchCut *made);

/* The cut with @bit accepted and what was held when it was planned as @made; a cut that has accepted that bit
 * is as it is. What is set by hand goes with the bit it was set for. */
SpelchPart *spelch_edit_accept (const SpelchPart *part, guint cut, const SpelchCut *made,
                                const SpelchBit *bit);

/* The cut made with the board's other face toward the motor. */
SpelchPart *spelch_edit_turn_over (const SpelchPart *part, guint cut);

/* The part made on another machine, or from another board. */
SpelchPart *spelch_edit_machine (const SpelchPart *part, const SpelchMachine *machine);
SpelchPart *spelch_edit_board (const SpelchPart *part, const SpelchBoard *board);

/* What a cut holds by hand beside single quantities. */
typedef enum
{
  SPELCH_HELD_DEPTHS, /* passes, overcut and allowance */
  SPELCH_HELD_SPEED,
  SPELCH_HELD_FEED,
  SPELCH_HELD_ENTRY,
} SpelchHeldThing;

/* The cut following the recommendation again in that. */
SpelchPart *spelch_edit_let_go (const SpelchPart *part, guint cut, SpelchHeldThing thing);

/* The cut with a speed in rpm, or a feed in mm/min, held by hand, and the bit accepted as above. @thing:
 * SPELCH_HELD_SPEED or SPELCH_HELD_FEED. */
SpelchPart *spelch_edit_hold (const SpelchPart *part, guint cut, const SpelchCut *made, const SpelchBit *bit,
                              SpelchHeldThing thing, double value);

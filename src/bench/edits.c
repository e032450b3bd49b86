/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/edits.h"
#include "plan/choose.h"

#include <string.h>

SpelchPart *
spelch_edit_bit (const SpelchPart *part, guint cut, const SpelchBit *bit)
{
  SpelchPart *next = spelch_part_copy (part);
  spelch_part_put_bit (next, bit);
  next->cuts[cut] = spelch_choose_cut (&part->cuts[cut], bit, part->cuts[cut].way_up);
  g_strlcpy (next->cuts[cut].bit, bit->id, sizeof next->cuts[cut].bit);
  return next;
}

SpelchPart *
spelch_edit_bit_at (const SpelchPart *part, guint cut, const SpelchBit *bit, const SpelchCut *made)
{
  SpelchPart *next = spelch_edit_bit (part, cut, bit);
  SpelchHeld *held = &next->cuts[cut].held;
  held->passes_held = made->held.passes_held;
  held->n_passes = made->held.n_passes;
  memcpy (held->passes, made->held.passes, sizeof held->passes);
  return next;
}

SpelchPart *
spelch_edit_accept (const SpelchPart *part, guint cut, const SpelchCut *made, const SpelchBit *bit)
{
  SpelchPart *next = spelch_part_copy (part);
  if (g_str_equal (next->cuts[cut].bit, bit->id))
    return next;
  spelch_part_put_bit (next, bit);
  g_strlcpy (next->cuts[cut].bit, bit->id, sizeof next->cuts[cut].bit);
  next->cuts[cut].held = made->held;
  return next;
}

SpelchPart *
spelch_edit_turn_over (const SpelchPart *part, guint cut)
{
  SpelchPart *next = spelch_part_copy (part);
  next->cuts[cut].way_up = spelch_face_other (next->cuts[cut].way_up);
  return next;
}

SpelchPart *
spelch_edit_machine (const SpelchPart *part, const SpelchMachine *machine)
{
  SpelchPart *next = spelch_part_copy (part);
  next->machine = *machine;
  return next;
}

SpelchPart *
spelch_edit_board (const SpelchPart *part, const SpelchBoard *board)
{
  SpelchPart *next = spelch_part_copy (part);
  next->board = *board;
  return next;
}

SpelchPart *
spelch_edit_let_go (const SpelchPart *part, guint cut, SpelchHeldThing thing)
{
  SpelchPart *next = spelch_part_copy (part);
  SpelchHeld *held = &next->cuts[cut].held;
  switch (thing)
    {
    case SPELCH_HELD_SPEED:
      held->speed_rpm = 0;
      break;
    case SPELCH_HELD_FEED:
      held->feed_mm_min = 0;
      break;
    case SPELCH_HELD_ENTRY:
      held->entry_held = false;
      break;
    case SPELCH_HELD_DEPTHS:
    default:
      held->passes_held = false;
      held->n_passes = 0;
      held->overcut_held = false;
      held->allowance_held = false;
    }
  return next;
}

SpelchPart *
spelch_edit_hold (const SpelchPart *part, guint cut, const SpelchCut *made, const SpelchBit *bit,
                  SpelchHeldThing thing, double value)
{
  SpelchPart *next = spelch_edit_accept (part, cut, made, bit);
  if (thing == SPELCH_HELD_SPEED)
    next->cuts[cut].held.speed_rpm = value;
  else
    next->cuts[cut].held.feed_mm_min = value;
  return next;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/entry.h"

#include <math.h>

/* Waste beside the finished line to go down in: around an outline, inside a pocket. */
static bool
has_waste (const SpelchCase *c)
{
  bool one_kept = c->cut->kept != SPELCH_WALL_BOTH && !c->single_wall;
  return one_kept || c->tracks > 1 || c->cut->kind == SPELCH_CUT_POCKET;
}

double
spelch_entry_steepest (const SpelchCase *c)
{
  if (c->bit->end_cutting)
    return 90;
  if (c->bit->uncut_centre.mm <= 0)
    return 0;
  return atan2 (c->bit->end_hollow.mm, c->bit->uncut_centre.mm) * 180 / M_PI;
}

bool
spelch_entry_suits (SpelchEntryKind entry, SpelchMachineKind machine)
{
  switch (entry)
    {
    case SPELCH_ENTRY_RAMP:
    case SPELCH_ENTRY_HELIX:
      return machine == SPELCH_MACHINE_GANTRY;
    case SPELCH_ENTRY_PLUNGE:
    case SPELCH_ENTRY_STAGED:
      return machine != SPELCH_MACHINE_TABLE;
    case SPELCH_ENTRY_LOWERED:
      return machine == SPELCH_MACHINE_TABLE;
    case SPELCH_ENTRY_EDGE:
    case SPELCH_ENTRY_DRILLED:
    default:
      return true;
    }
}

bool
spelch_entry_is_plunge (SpelchEntryKind entry)
{
  return entry == SPELCH_ENTRY_PLUNGE || entry == SPELCH_ENTRY_STAGED || entry == SPELCH_ENTRY_LOWERED;
}

static bool
plunges (const SpelchCase *c)
{
  return c->bit->end_cutting && c->bit->kind != SPELCH_BIT_DOWN_CUT;
}

/* Down into a hole as wide as the bit there is only one way. */
static SpelchEntryKind
straight_down (SpelchMachineKind machine)
{
  return machine == SPELCH_MACHINE_GANTRY  ? SPELCH_ENTRY_PLUNGE
         : machine == SPELCH_MACHINE_TABLE ? SPELCH_ENTRY_LOWERED
                                           : SPELCH_ENTRY_STAGED;
}

/* The bit's axis goes round a circle no wider than the bit, or a post would stay in its middle, and no
 * narrower than the part of its end that doesn't cut, or that would run on the bottom; nor may it leave the
 * opening. Half way between; 0 where there is no such circle. */
static double
circle_of (const SpelchCase *c)
{
  bool closed = c->cut->kind == SPELCH_CUT_HOLE || c->cut->kind == SPELCH_CUT_POCKET
                || spelch_cut_has_two_walls (c->cut);
  double room = closed ? spelch_cut_width (c->cut) - c->diameter : c->diameter;
  double least = c->bit->end_cutting ? 0 : c->bit->uncut_centre.mm, most = fmin (c->diameter, room);
  return most > 0 && most >= least ? (least + most) / 2 : 0;
}

static SpelchEntryKind
entry_kind (const SpelchCase *c)
{
  SpelchMachineKind machine = c->machine->kind;
  if (c->single_wall || (c->cut->start == SPELCH_END_EDGE && !spelch_cut_every_direction (c->cut)))
    return SPELCH_ENTRY_EDGE;
  if (c->cut->kind == SPELCH_CUT_HOLE && c->tracks == 1)
    return straight_down (machine);
  if (machine == SPELCH_MACHINE_TABLE)
    return SPELCH_ENTRY_DRILLED;
  if (plunges (c))
    return straight_down (machine);
  if (machine == SPELCH_MACHINE_HAND || spelch_entry_steepest (c) <= 0)
    return SPELCH_ENTRY_DRILLED;
  bool circles = c->cut->kind == SPELCH_CUT_HOLE || (c->cut->kind == SPELCH_CUT_POCKET && c->tracks > 1);
  if (!circles)
    return SPELCH_ENTRY_RAMP;
  return circle_of (c) > 0 ? SPELCH_ENTRY_HELIX : SPELCH_ENTRY_DRILLED;
}

/* A ramp longer than the way goes there and back along it. */
static guint
legs_of (const SpelchCase *c, const SpelchEntry *entry)
{
  double way = c->cut->length.mm - (spelch_cut_has_two_walls (c->cut) ? c->diameter : 0);
  if (spelch_cut_every_direction (c->cut) || way <= 0)
    return 1;
  return (guint)fmin (fmax (ceil (entry->length_mm / way - 1e-9), 1), 1000);
}

SpelchEntry
spelch_entry_find (const SpelchCase *c, const SpelchPass *first)
{
  const SpelchHeld *held = &c->cut->held;
  SpelchEntry entry = { .kind = held->entry_held ? held->entry : entry_kind (c),
                        .waste = has_waste (c),
                        .held = held->entry_held };
  double usual = c->bit->kind == SPELCH_BIT_DOWN_CUT ? c->k->ramp_down_cut : c->k->ramp_default;
  entry.on_line = !entry.waste || (held->entry_held && held->entry_on_line);
  if (entry.kind == SPELCH_ENTRY_RAMP || entry.kind == SPELCH_ENTRY_HELIX)
    {
      bool told = held->entry_held && held->entry_deg > 0;
      double steepest = spelch_entry_steepest (c);
      entry.angle_deg = told ? held->entry_deg : steepest > 0 ? fmin (usual, steepest) : usual;
      entry.length_mm = (first->tip_mm - first->from_mm) / tan (entry.angle_deg * M_PI / 180);
    }
  entry.uncut_edge = entry.kind == SPELCH_ENTRY_EDGE && spelch_part_outline_follows (c->part, c->cut);
  if (entry.kind == SPELCH_ENTRY_RAMP)
    entry.legs = legs_of (c, &entry);
  if (entry.kind == SPELCH_ENTRY_HELIX)
    entry.circle_mm = circle_of (c);
  return entry;
}

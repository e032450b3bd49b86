/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Chip flow: the way of a chip once its edge has let it go, as the shear sends it: along the flute, up where
 * the flute is right-handed, down where it is left-handed, staying at its height where it is straight.
 *
 * Relative to the flute a chip slides along the edge; friction on the wall lets it keep the share cos^2 of
 * the bit's turning, so that it moves R sin(beta) cos(beta) along the axis for each radian that the bit turns
 * further: the speed that spelch_chip_room_axial() carries chips away with. A chip stays in the flute of its
 * own edge at every instant (an identity of the two, checked in tests/mechanics/test-chip-flow.c).
 */
#pragma once

#include "mechanics/flute.h"

typedef struct
{
  double height;  /* above the tip, mm; above the cutting length it is out of the flute */
  double gained;  /* by how much its angle about the axis has grown, clockwise seen from the motor, rad */
  bool arrived;   /* the shear sends it no further: at the tip, or at the turn-over */
  double arrival; /* by how much the bit had turned since when it did, rad; HUGE_VAL: it never does */
} SpelchChipPlace;

/* mm along the axis, + toward the motor, for each rad that the bit turns, of a chip at height @s. */
double spelch_chip_flow_speed (const SpelchFlutes *flutes, double s);

/* Where a chip from height @s is when the bit has turned by @age rad (0 or more) since its edge let it go.
 * One that has arrived is carried round with the bit. */
SpelchChipPlace spelch_chip_flow_at (const SpelchFlutes *flutes, double s, double age);

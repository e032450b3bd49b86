/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks of the cutting forces and of what chips and heat follow from them.
 */
#include "published.h"

#include "mechanics/chip-room.h"
#include "mechanics/chip.h"
#include "mechanics/force.h"

#include <math.h>

#define OBLIQUE                                                                                              \
  "orthogonal to oblique with Stabler's rule (Altintas, Manufacturing Automation, ch. 2, from memory)"
#define WOODSON  "Woodson 1979, USDA Forest Service Res. Pap. SO-146 (abstract)"
#define MCKENZIE "McKenzie and Karpovich 1968, Wood Sci. Technol. 2:139 (abstract)"

static double
axial_ratio_without_friction (double helix_degrees, double unused)
{
  return spelch_force_axial_ratio (helix_degrees * G_PI / 180, 20 * G_PI / 180, 0);
}

static double
axial_ratio (double helix_degrees, double friction)
{
  return spelch_force_axial_ratio (helix_degrees * G_PI / 180, 20 * G_PI / 180, friction);
}

/* A slot with a straight bit; edge force left out so that only the cutting part speaks. */
static SpelchForceCase
cutting_part_only (double rake_degrees)
{
  SpelchForceCase force = { 0 };
  force.flutes = (SpelchFlutes){ 10, 0, 0, 0, 30, 2, 2 };
  force.engaged = 10;
  force.blunting = 1;
  force.friction = 0.4;
  force.rake = rake_degrees * G_PI / 180;
  force.edge_radial_share = 0.5;
  force.n_slices = 1;
  force.slices[0] = (SpelchSlice){ 0, 10, 0, 20 };
  return force;
}

/* Sign of the radial cutting force: in a slot, only it pushes along the feed, on average. */
static double
radial_sign (double rake_degrees, double unused)
{
  SpelchForceCase force = cutting_part_only (rake_degrees);
  SpelchTurn turn;
  double sum = 0;
  spelch_force_turn (&force, &turn);
  for (int i = 0; i < turn.n; i++)
    sum += turn.weight[i] * turn.moving[i].along;
  return sum < 0 ? 1 : -1; /* back along the feed: the work pushes the bit away */
}

/* Sideways ripple over a turn of a bit with so much helix over that of a straight one, two edges, a slot. */
static double
ripple_over_straight (double helix_degrees, double unused)
{
  SpelchForceCase force = cutting_part_only (20);
  SpelchTurn turn;
  double straight;
  force.slices[0].a = 2;
  force.engaged = 3;
  spelch_force_turn (&force, &turn);
  straight = spelch_force_peaks (&turn, 0.2).ripple;
  force.flutes.helix = helix_degrees * G_PI / 180;
  force.flutes.turn_over = force.flutes.length;
  spelch_force_turn (&force, &turn);
  return spelch_force_peaks (&turn, 0.2).ripple / straight < 1;
}

/* 1 when a compression step so deep nets away from the motor, up-shear 6.35 mm. */
static double
compression_nets_down (double depth, double unused)
{
  SpelchForceCase force = cutting_part_only (20);
  force.flutes = (SpelchFlutes){ 6.35, G_PI / 6, 6.35, 0, 25, 2, 2 };
  force.engaged = 6.35;
  force.slices[0] = (SpelchSlice){ 0, depth, 2, 20 };
  return spelch_force_means (&force, 0.2).axial < 0;
}

/* Slot, D 10, f_z 0.2, two edges: 4 mm3 of wood a turn for each mm of depth, bulked four times, in
 * 0.4 pi 100 / 4 mm2 of flute. */
static double
room_in_slot (double bulking, double clearing)
{
  return spelch_chip_room (bulking, 10, 0.2, 2, 10, 0.4, clearing);
}

/* Edge force 2.64 N/mm over half a circumference of 12 mm, f_z 0.1. */
static double
heat_in_slot (double feed_per_tooth, double diameter)
{
  return spelch_wall_heat (2.2 * 1.2, spelch_chip_arc (diameter, diameter), feed_per_tooth, 1);
}

static double
rubbing (double edge_force, double chip)
{
  return spelch_rubbing_share (edge_force, 24, chip);
}

#define RATIO_ROW(degrees, friction, value)                                                                  \
  {                                                                                                          \
    "axial over tangential cutting force, helix " #degrees ", rake 20, friction " #friction, OBLIQUE,        \
        PUBLISHED_MEMORY, value, 0.0006, axial_ratio, degrees, friction                                      \
  }

static const PublishedCheck CHECKS[] = {
  { "axial ratio without friction, helix 30: tan 30", OBLIQUE, PUBLISHED_IDENTITY, 0.5773502692, 1e-9,
    axial_ratio_without_friction, 30, 0 },
  { "axial ratio without friction, helix 45: 1", OBLIQUE, PUBLISHED_IDENTITY, 1, 1e-9,
    axial_ratio_without_friction, 45, 0 },
  RATIO_ROW (10, 0.2, 0.140),
  RATIO_ROW (30, 0.2, 0.434),
  RATIO_ROW (45, 0.2, 0.669),
  RATIO_ROW (10, 0.4, 0.110),
  RATIO_ROW (15, 0.4, 0.164),
  RATIO_ROW (20, 0.4, 0.218),
  RATIO_ROW (25, 0.4, 0.271),
  RATIO_ROW (30, 0.4, 0.323),
  RATIO_ROW (35, 0.4, 0.372),
  RATIO_ROW (45, 0.4, 0.458),
  RATIO_ROW (30, 0.6, 0.234),
  RATIO_ROW (45, 0.6, 0.312),
  { "radial cutting force at 20 degrees of rake pushes off (1); consistency, no validation", WOODSON,
    PUBLISHED_MEASURED, 1, 0, radial_sign, 20, 0 },
  { "and at 30 degrees draws in (-1); consistency, follows from a friction of 0.4, " MCKENZIE, WOODSON,
    PUBLISHED_MEASURED, -1, 0, radial_sign, 30, 0 },
  { "a helix of 30 degrees ripples less than a straight edge (1: yes)", "common practice, no source",
    PUBLISHED_PRACTICE, 1, 0, ripple_over_straight, 30, 0 },
  { "compression bit, up-shear 6.35, 12.6 mm deep: nets away from the motor (0: no)", "geometry: half is up",
    PUBLISHED_IDENTITY, 0, 0, compression_nets_down, 12.6, 0 },
  { "the same, 12.8 mm deep (1: yes)", "geometry: half is up", PUBLISHED_IDENTITY, 1, 0,
    compression_nets_down, 12.8, 0 },
  { "room used in a slot, D 10, f_z 0.2, two edges, bulked 4 times", "worked by hand: 16 / 31.416",
    PUBLISHED_IDENTITY, 0.509296, 1e-6, room_in_slot, 4, 1 },
  { "the same where down-shear clears half as well", "worked by hand: 16 / 15.708", PUBLISHED_IDENTITY,
    1.018592, 1e-6, room_in_slot, 4, 0.5 },
  { "wall heat, 2.64 N/mm, D 12 slot, f_z 0.1, mJ/mm2", "worked by hand: 2.64 x 6 pi / 0.1",
    PUBLISHED_IDENTITY, 497.628, 5e-4, heat_in_slot, 0.1, 12 },
  { "rubbing share, 2.64 N/mm, 24 MPa, chip 0.11 mm", "worked by hand: 2.64 / 5.28", PUBLISHED_IDENTITY, 0.5,
    1e-9, rubbing, 2.64, 0.11 },
};

const PublishedGroup PUBLISHED_FORCES = { "forces", CHECKS, G_N_ELEMENTS (CHECKS) };

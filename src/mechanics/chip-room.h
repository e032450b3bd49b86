/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Chip room: whether the chips find room in the flutes, and heat on the wall they leave behind. Loose chips
 * take up bulking times the room of the wood they were (after Dobie and Wright 1972, as given by Briggs
 * 1994).
 */
#pragma once

/* Share of the flutes' room that is used in one turn in a closed slot; 1 is full. @flute_share: share of the
 * bit's cross-section that is flute; @clearing: how well the shear carries chips out, 0..1. mm. */
double spelch_chip_room (double bulking, double engaged, double feed_per_tooth, int edges, double diameter,
                         double flute_share, double clearing);

/* Share used of the way out along an up-shear flute: chips of @height mm of cut against what the helix
 * carries up. @helix rad. */
double spelch_chip_room_axial (double bulking, double height, double engaged, double feed_per_tooth,
                               int edges, double diameter, double flute_share, double helix);

/* Heat on the wall, mJ/mm2: edge force u a along the arc over the feed per tooth, held back by poor clearing.
 */
double spelch_wall_heat (double edge_force, double arc, double feed_per_tooth, double clearing);

/* Share of the tangential force that is rubbing: u a / (u a + b h_m). */
double spelch_rubbing_share (double edge_force, double b, double chip_mean);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Chip: thickness and length of the chip a cutting edge takes. Exact for the usual replacement of the edge's
 * path by a circle; textbook identities of peripheral milling (Martellotti 1941; Koch 1964; from memory,
 * re-derived in the tests).
 */
#pragma once

/* Feed per tooth, mm: @feed_mm_min over @edges times @rpm; 0 when either is 0. */
double spelch_chip_feed_per_tooth (double feed_mm_min, double rpm, int edges);

/* Feed, mm/min, that gives @feed_per_tooth mm. */
double spelch_chip_feed (double feed_per_tooth, double rpm, int edges);

/* Engagement angle, rad: acos(1 - 2 a_e/D). @engaged is taken as 0..@diameter. pi for a slot. */
double spelch_chip_engagement (double diameter, double engaged);

/* Way of an edge through the wood in one turn, mm: D phi / 2. */
double spelch_chip_arc (double diameter, double engaged);

/* Thickest chip, mm: f_z when a_e >= D/2, else 2 f_z sqrt(a_e/D - (a_e/D)^2). */
double spelch_chip_max (double feed_per_tooth, double diameter, double engaged);

/* Mean thickness over the arc, mm: f_z a_e / L_arc; 0 when nothing is engaged. */
double spelch_chip_mean (double feed_per_tooth, double diameter, double engaged);

/* Feed per tooth, mm, at which the thickest chip is @chip mm. */
double spelch_chip_feed_for_max (double chip, double diameter, double engaged);

/* Height of the knife marks left on a wall, mm: f_z^2 / (4 D). For teaching; fibre damage limits a routed
 * wall, not this. */
double spelch_chip_mark_height (double feed_per_tooth, double diameter);

/* Cutting speed, m/s. */
double spelch_chip_cutting_speed (double diameter, double rpm);

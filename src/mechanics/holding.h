/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Holding: the tabs that keep a piece in its sheet while the last pass cuts it free. A tab is sheared off
 * across its section, width times thickness: sideways by the bit's push along the board, upward by its lift.
 * Plywood and boards are far weaker upward, where plies roll off one another. Strength is counted at what all
 * but one in twenty pieces of such stock exceed, mean (1 - 1.645 CV) of a normal distribution.
 */
#pragma once

typedef struct
{
  double section; /* of all tabs together, mm2: number times width times thickness */
  double side;    /* mean shear strength sideways, MPa */
  double lift;    /* and upward, MPa */
  double scatter; /* coefficient of variation of both, 0..1 */
} SpelchTabStrength;

/* What all but a few exceed: @mean times 1 - @quantile * @scatter, never less than 0. Unit of @mean. */
double spelch_holding_low (double mean, double scatter, double quantile);

/* Force sideways that the tabs hold, N, when nothing lifts. */
double spelch_holding_tabs (const SpelchTabStrength *tabs, double quantile);

/* The same section bears both forces at once, and each takes its share of the strength: the force sideways,
 * N, that would ask as much of the tabs as @side N sideways and @lift N upward together. A negative lift
 * counts as none. @tabs' lift strength must be more than 0. */
double spelch_holding_tabs_load (const SpelchTabStrength *tabs, double side, double lift);

/* How many times its present number, or width, tabs need that hold @factor times the force to hold it
 * @wanted times, at least 1; 0 when they hold nothing. */
double spelch_holding_tabs_growth (double factor, double wanted);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Holding: work pressed on its bed, which a bit may slide, lift or tilt, and the tabs that keep a piece in
 * its sheet while the last pass cuts it free. The first is statics with dry friction. A tab is sheared off
 * across its section, width times thickness: sideways by the bit's push along the board, upward by its lift.
 * Plywood and boards are far weaker upward, where plies roll off one another. Strength is counted at what all
 * but one in twenty pieces of such stock exceed, mean (1 - 1.645 CV) of a normal distribution.
 */
#pragma once

/* How work gives way. */
typedef enum
{
  SPELCH_GIVES_SLIDING,
  SPELCH_GIVES_LIFTING,
  SPELCH_GIVES_TILTING,
} SpelchGives;

typedef struct
{
  double friction;   /* coefficient, work on bed, more than 0 */
  double half_width; /* of the work, across its shorter way, mm; 0: not known, and tilting isn't reckoned */
} SpelchHoldBed;

typedef struct
{
  double side;   /* force along the bed, N */
  double height; /* at which it acts above the bed, mm */
  double lift;   /* N; none when negative */
} SpelchHoldLoad;

/* The press, N, spread evenly, with which nothing gives way at @factor times the force. Then
 * friction (press - lift) is factor side or more, press is factor lift or more, and press half_width is
 * factor height side or more, the balance about the work's long edge. */
double spelch_holding_press (const SpelchHoldBed *bed, const SpelchHoldLoad *load, double factor);

/* How many times the force @press holds, not under 0, and in which @way the work would give first. 0 when
 * there is no force. */
double spelch_holding_factor (const SpelchHoldBed *bed, const SpelchHoldLoad *load, double press,
                              SpelchGives *way);

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

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reference force: cutting forces by numerical integration, for random bits, boards and cuts. It knows
 * nothing of the library's sums: it places each edge by the lead of its helix, takes the chip as f_z
 * sin(phi), resolves the forces at each height, and integrates over height or over the turn.
 */
#pragma once

#include "mechanics/force.h"

#include <gsl/gsl_integration.h>

#define REFERENCE_INTERVALS 2000

typedef enum
{
  ALONG,
  ACROSS,
  AXIAL,
  LIFT,
  PRESS,
  TANGENTIAL,
  N_PARTS,
} Part;

/* A random number, from g_test_rand. */
double reference_between (double from, double to);

/* A bit over one to six layers, cutting a slot or an edge, climbing or not. */
SpelchForceCase reference_random_case (void);

/* N at one instant, the bit turned by @turned rad. */
double reference_instant (const SpelchForceCase *force, double feed_per_tooth, double turned, Part part,
                          gsl_integration_workspace *space);

/* N, mean over a turn. */
double reference_mean (const SpelchForceCase *force, double feed_per_tooth, Part part,
                       gsl_integration_workspace *space);

/* Size that gaps are measured against: every edge fully in the wood. N */
double reference_scale (const SpelchForceCase *force, double feed_per_tooth);

/* Whether an upright edge stands exactly where the wood begins or ends: any answer is right there. */
bool reference_on_the_brink (const SpelchForceCase *force, double turned);

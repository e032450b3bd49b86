/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Upkeep: what a cut takes of the bit's edge, and what that costs.
 */
#pragma once

#include "plan/loads.h"

/* Fills edge path, life and cost of @plan; its passes are there. @paths: way of each pass, mm. */
void spelch_upkeep_find (const SpelchCase *c, const SpelchLoads *const *loads, double feed_per_tooth,
                         const double *paths, SpelchPlan *plan);

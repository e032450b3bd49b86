/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tabs: whether those that a cut leaves keep the piece in its sheet while it is cut free.
 */
#pragma once

#include "plan/loads.h"

/* Reckons the tabs of a through cut with them, in the passes that reach into their height, at the design
 * load. What vacuum or clamps press is read off @plan. @part: how far forces may be out, either way. Leaves
 * @plan's tabs alone where there are none. */
void spelch_tabs_find (const SpelchCase *c, const SpelchLoads *const *loads, double feed_per_tooth,
                       double part, SpelchPlan *plan);

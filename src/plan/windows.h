/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Windows: the depths at which each face is kept from being pulled out, exactly and over all tolerances, and
 * what would open an empty window. All of it is geometry.
 */
#pragma once

#include "plan/case.h"

/* The windows of the case as it is prepared, its scoring pass counted in, and what opens those that are
 * empty.
 */
SpelchWindows spelch_windows_find (const SpelchCase *c);

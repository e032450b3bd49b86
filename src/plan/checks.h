/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks: reasons not to cut, questions left open, and the verdict on the whole plan.
 */
#pragma once

#include "plan/case.h"

/* Fills stops and verdict of @plan from its numbers. */
void spelch_checks_run (const SpelchCase *c, SpelchPlan *plan);

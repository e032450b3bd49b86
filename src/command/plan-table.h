/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plan as a table to read: one block for each cut.
 */
#pragma once

#include "command/plan-json.h"
#include "plan/words.h"

/* Free with g_free(). */
char *spelch_plan_table (const SpelchPart *part, const SpelchPlanned *planned, guint n,
                         const SpelchNumbers *numbers);

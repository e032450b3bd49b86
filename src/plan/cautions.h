/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cautions: what to do before the real piece: the test strip and the usual cautions for this machine. They
 * are general; the tool's and machine's instructions, local rules and trained people come first, and the
 * words say so.
 */
#pragma once

#include "plan/plan.h"
#include "plan/words.h"

/* "Cut a 150 mm test strip of the same board first; look at ...". Free with g_free(). */
char *spelch_caution_strip (const SpelchPart *part, const SpelchNumbers *numbers);

/* The most needed cautions for this machine as one short paragraph. Free with g_free(). */
char *spelch_caution_words (const SpelchPart *part);

/* What this plan's numbers ask to beware of: a bit drawn out of its collet, a router lifted off the board,
 * one that comes out below it, a hot wall. NULL-terminated, may be empty; free with g_strfreev(). */
char **spelch_caution_plan (const SpelchConstants *constants, const SpelchPart *part, const SpelchPlan *plan);

/* Every general caution for this machine, a sentence or two each. NULL-terminated; free with g_strfreev(). */
char **spelch_caution_all (const SpelchPart *part);

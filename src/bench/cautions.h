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

/* The cautions as one paragraph. Free with g_free(). */
char *spelch_caution_words (const SpelchPart *part);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ranking as text to read: for each cut the bits in order of preference, with what speaks for and against
 * them.
 */
#pragma once

#include "command/rank-json.h"
#include "plan/words.h"

/* @order may be NULL. Free with g_free(). */
char *spelch_rank_table (const SpelchPart *part, const SpelchBit *bits, const SpelchRanked *ranked, guint n,
                         const SpelchOrder *order, const SpelchNumbers *numbers);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Log fields: what the forms of the shop log share.
 */
#pragma once

#include "plan/words.h"
#include "shop/log-entry.h"

/* By SpelchPiece, marked with N_(), ended by NULL. */
extern const char *const SPELCH_LOG_PIECES[];

/* How an edge came out, as SpelchOutcome counts it: not looked at, as reckoned, then by grade. Marked with
 * N_(), ended by NULL. */
extern const char *const SPELCH_LOG_OUTCOMES[];

/* The same in the words that fit an edge of that facing, translated; SPELCH_N_FACINGS: it isn't known. Free
 * with g_strfreev(). */
char **spelch_log_outcomes (SpelchFacing facing);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice marks: answers kept under a learner's name, written as a table, and graded anew. Each gives the
 * exit status.
 */
#pragma once

#include "command/practice-asked.h"
#include "plan/posed.h"

/* Keeps an answer that was graded; nothing without a learner. */
int spelch_practice_keep (const SpelchPracticeAsked *asked, const SpelchPosed *posed,
                          const SpelchGiven *given);

/* Writes the answers that were kept. */
int spelch_practice_progress (const SpelchPracticeAsked *asked);

/* Grades a table, or a log, anew and writes it as a table; what can't be read or graded, and what changed, is
 * said. */
int spelch_practice_regrade (const SpelchPracticeAsked *asked);

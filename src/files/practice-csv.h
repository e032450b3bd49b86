/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice table: answers as comma-separated values (RFC 4180), for spreadsheets; also as a teacher types
 * them from paper. A value that a spreadsheet would take for a formula gets an apostrophe before it, which
 * reading takes off again.
 */
#pragma once

#include "shop/attempt.h"

#include <stdbool.h>

/* A row as it was read, and what became of it when it was graded anew. */
typedef struct
{
  SpelchAttempt attempt; /* its `right` as graded now */
  bool was_told, was;    /* right when it was told so in the table */
  bool graded;           /* false when its exercise isn't known or its answer isn't understood */
  char right_answer[SPELCH_ID_SIZE];
  char *remark; /* why it isn't graded, or that the grade changed; may be NULL */
} SpelchMarked;

/* The answers of @learner, of everyone when NULL: SpelchAttempt. Free with g_free(). */
char *spelch_attempts_to_csv (const GArray *attempts, const char *learner, char separator);

/* The same with the right answers and remarks beside: SpelchMarked. */
char *spelch_marked_to_csv (const GArray *marked, char separator);

/* The answers of a log, SpelchAttempt, as rows to grade anew. Free with g_array_unref(). */
GArray *spelch_marked_of (const GArray *attempts);

/* Reads a table; the columns learner, exercise, seed and answer must be there, the others may, in any order.
 * Gives SpelchMarked not graded yet; each line that can't be taken is left out, with a sentence in @problems
 * (char *). Free with g_array_unref(). */
GArray *spelch_attempts_from_csv (const char *text, gsize length, GPtrArray *problems);

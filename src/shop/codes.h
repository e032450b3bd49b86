/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Codes: the fixed English words that stand for enumerated values in files and on the command line.
 * They are never translated; the words shown to people come from the code that shows them.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>

/* A table of codes; the index is the enumerated value. `what` names the thing in error sentences. */
typedef struct
{
  const char *what;
  const char *const *codes;
  guint n;
} SpelchCodes;

/* Doesn't compile where @table, one entry for each value of an enumeration in its order, hasn't @n entries: a
 * value was added to the enumeration and not here, or its count wasn't moved. */
#define SPELCH_TABLE_HAS(table, n)                                                                           \
  _Static_assert(G_N_ELEMENTS (table) == (n), "the entries of " #table " aren't one for each value: " #n)

/* The code of @value, or "" when the value is not in the table. */
const char *spelch_code_of (const SpelchCodes *table, int value);

/* Finds the value whose code is @code; false (and @value untouched) when there is none. */
bool spelch_code_read (const SpelchCodes *table, const char *code, int *value);

/* All codes of the table, joined for an error sentence: "straight, up-cut, down-cut". Free with g_free(). */
char *spelch_codes_list (const SpelchCodes *table);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bit table: the bits of a drawer as comma-separated values (RFC 4180), for spreadsheets. The first line
 * names the columns by the members of the bits' JSON, and what is read may name them as the form of a bit
 * does, in English or in the language that is spoken, and so kinds, materials and the like; their order is
 * free. With semicolons between the values, numbers have a decimal comma. A figure that may be thousands, as
 * "18.000" rpm, or with the other sign before three digits, isn't guessed at.
 */
#pragma once

#include "shop/bit.h"

#include <stdbool.h>

/* The table, one line for each SpelchBit of @bits. @separator: ',' or ';'. Free with g_free(). */
char *spelch_bits_to_csv (const GArray *bits, char separator);

/* What became of a table that was read. */
typedef struct
{
  GArray *bits;        /* of SpelchBit, those that were read; an id of "" is to be made from the name */
  guint n_rows;        /* lines with a bit in them */
  GPtrArray *problems; /* sentences naming line, column and value and what to do; none: all was read */
} SpelchBitTable;

/* Reads a table. A line with anything in it that can't be taken is left out whole and told of, as is a column
 * that isn't known; the others are read. Never NULL; free with spelch_bit_table_free(). */
SpelchBitTable *spelch_bits_from_csv (const char *text, gsize length);
void spelch_bit_table_free (SpelchBitTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchBitTable, spelch_bit_table_free)

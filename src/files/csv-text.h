/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * CSV text: lines of values as RFC 4180 writes them: values that hold the separator, a quote or a line break
 * stand in quotes, a quote in them is doubled.
 */
#pragma once

#include <glib.h>

typedef struct
{
  guint line;        /* where it begins, from 1 */
  GPtrArray *values; /* char * */
  gboolean torn;     /* ends within quotes, or has something after them */
} SpelchCsvRow;

/* The separator that the first line of @text uses: ';' or a tab when one stands there outside quotes, else
 * ','. */
char spelch_csv_separator (const char *text);

/* The rows of @text (UTF-8, ended by NUL), empty lines left out: SpelchCsvRow. Free with g_ptr_array_unref().
 */
GPtrArray *spelch_csv_rows (const char *text, char separator);

/* Adds @value, in quotes where it needs them. */
void spelch_csv_append (GString *text, const char *value, char separator);

/* Whether a spreadsheet would take @value for a formula: it begins with =, +, -, @ or a control character,
 * also after apostrophes. */
gboolean spelch_csv_is_formula (const char *value);

/* Adds @value as above, with an apostrophe before it where a spreadsheet would take it for a formula. */
void spelch_csv_append_plain (GString *text, const char *value, char separator);

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/csv-text.h"

#include <stdbool.h>
#include <string.h>

char
spelch_csv_separator (const char *text)
{
  bool quoted = false;
  for (const char *c = text; *c != '\0'; c++)
    if (*c == '"')
      quoted = !quoted;
    else if (!quoted && (*c == '\n' || *c == '\r'))
      break;
    else if (!quoted && (*c == ';' || *c == '\t'))
      return *c;
  return ',';
}

static void
row_free (gpointer data)
{
  SpelchCsvRow *row = data;
  g_ptr_array_unref (row->values);
  g_free (row);
}

/* Reads one value from @c on; gives where it ended: at a separator, a line break or the end. */
static const char *
read_value (const char *c, char separator, SpelchCsvRow *row, guint *line)
{
  GString *value = g_string_new (NULL);
  bool quoted = *c == '"';
  if (quoted)
    c++;
  for (; *c != '\0'; c++)
    {
      if (quoted && c[0] == '"' && c[1] == '"')
        g_string_append_c (value, *c++);
      else if (quoted && *c == '"')
        {
          quoted = false;
          row->torn = row->torn || (c[1] != '\0' && c[1] != separator && c[1] != '\n' && c[1] != '\r');
        }
      else if (!quoted && (*c == separator || *c == '\n' || *c == '\r'))
        break;
      else
        {
          g_string_append_c (value, *c);
          *line += *c == '\n';
        }
    }
  row->torn = row->torn || quoted;
  g_ptr_array_add (row->values, g_string_free (value, FALSE));
  return c;
}

static bool
is_empty (const SpelchCsvRow *row)
{
  for (guint i = 0; i < row->values->len; i++)
    if (((const char *)g_ptr_array_index (row->values, i))[0] != '\0')
      return false;
  return true;
}

GPtrArray *
spelch_csv_rows (const char *text, char separator)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func (row_free);
  guint line = 1;
  for (const char *c = text; *c != '\0';)
    {
      SpelchCsvRow *row = g_new0 (SpelchCsvRow, 1);
      row->line = line;
      row->values = g_ptr_array_new_with_free_func (g_free);
      c = read_value (c, separator, row, &line);
      while (*c == separator)
        c = read_value (c + 1, separator, row, &line);
      if (c[0] == '\r' && c[1] == '\n')
        c++;
      line++;
      if (*c != '\0')
        c++;
      if (is_empty (row) && !row->torn)
        row_free (row);
      else
        g_ptr_array_add (rows, row);
    }
  return rows;
}

void
spelch_csv_append (GString *text, const char *value, char separator)
{
  bool plain = strpbrk (value, "\"\r\n") == NULL && strchr (value, separator) == NULL;
  if (plain)
    {
      g_string_append (text, value);
      return;
    }
  g_string_append_c (text, '"');
  for (const char *c = value; *c != '\0'; c++)
    g_string_append_printf (text, *c == '"' ? "\"\"" : "%c", *c);
  g_string_append_c (text, '"');
}

gboolean
spelch_csv_is_formula (const char *value)
{
  /* An apostrophe that stands there already is no guard: it would be taken off in reading. */
  while (*value == '\'')
    value++;
  return *value != '\0' && (strchr ("=+-@", *value) != NULL || g_ascii_iscntrl (*value));
}

void
spelch_csv_append_plain (GString *text, const char *value, char separator)
{
  g_autofree char *guarded
      = spelch_csv_is_formula (value) ? g_strconcat ("'", value, NULL) : g_strdup (value);
  spelch_csv_append (text, guarded, separator);
}

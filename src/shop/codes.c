/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/codes.h"

const char *
spelch_code_of (const SpelchCodes *table, int value)
{
  return value >= 0 && (guint)value < table->n ? table->codes[value] : "";
}

bool
spelch_code_read (const SpelchCodes *table, const char *code, int *value)
{
  for (guint i = 0; code != NULL && i < table->n; i++)
    if (g_str_equal (table->codes[i], code))
      {
        *value = (int)i;
        return true;
      }
  return false;
}

char *
spelch_codes_list (const SpelchCodes *table)
{
  GString *list = g_string_new (NULL);
  for (guint i = 0; i < table->n; i++)
    g_string_append_printf (list, "%s%s", i == 0 ? "" : ", ", table->codes[i]);
  return g_string_free (list, FALSE);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/fault.h"

#include "shop/bit.h"
#include "shop/decimal-sign.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

char *
spelch_fault_number (double value, const char *unit)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  if (!isfinite (value))
    return g_strdup (_ ("not a number"));
  g_ascii_formatd (digits, sizeof digits, fabs (value) < 1e6 ? "%.6g" : "%.0f", value);
  g_strdelimit (digits, ".", spelch_decimal_sign ());
  bool apart = *unit != '\0' && !g_str_equal (unit, "°");
  return g_strconcat (digits, apart ? " " : "", *unit != '\0' ? _ (unit) : "", NULL);
}

static bool
is_within (const SpelchBounds *bounds)
{
  if (bounds->may_be_none && bounds->value == 0.0)
    return true;
  return isfinite (bounds->value) && bounds->value >= bounds->least && bounds->value <= bounds->most;
}

static char *
out_of_bounds (const SpelchBounds *bounds)
{
  g_autofree char *value = spelch_fault_number (bounds->value, bounds->unit);
  g_autofree char *least = spelch_fault_number (bounds->least, bounds->unit);
  g_autofree char *most = spelch_fault_number (bounds->most, bounds->unit);
  /* Translators: "diameter (0.5 mm) must be 1 mm to 60 mm." The first word is a member of a file; keep it. */
  return g_strdup_printf (_ ("%s (%s) must be %s to %s."), bounds->member, value, least, most);
}

char *
spelch_fault_bounds (const SpelchBounds *bounds, guint n)
{
  for (guint i = 0; i < n; i++)
    if (!is_within (&bounds[i]))
      return out_of_bounds (&bounds[i]);
  return NULL;
}

static bool
is_id_letter (char c)
{
  return g_ascii_islower (c) || g_ascii_isdigit (c);
}

char *
spelch_fault_id (const char *member, const char *id, bool may_be_empty)
{
  gsize length = strnlen (id, SPELCH_ID_SIZE);
  if (length == 0)
    return may_be_empty ? NULL : g_strdup_printf (_ ("%s is empty; give it a short name."), member);
  if (length == SPELCH_ID_SIZE)
    return g_strdup_printf (_ ("%s is longer than %d letters."), member, SPELCH_ID_SIZE - 1);

  bool good = is_id_letter (id[0]);
  for (gsize i = 1; good && i < length; i++)
    good = is_id_letter (id[i]) || id[i] == '-' || id[i] == '.';
  if (good)
    return NULL;
  g_autofree char *shown = g_utf8_make_valid (id, (gssize)length);
  return g_strdup_printf (_ ("%s (“%s”) may only have the letters a to z, digits, points and hyphens, and "
                             "begins with a letter or a digit."),
                          member, shown);
}

/* The digits of a part of a date; 0, which no part may be, when anything else stands there. */
static guint
number_in (const char *text, guint n)
{
  guint number = 0;
  for (guint i = 0; i < n; i++)
    if (!g_ascii_isdigit (text[i]))
      return 0;
    else
      number = number * 10 + (guint)g_ascii_digit_value (text[i]);
  return number;
}

static bool
is_date (const char *text)
{
  if (strnlen (text, SPELCH_DATE_SIZE) != SPELCH_DATE_SIZE - 1 || text[4] != '-' || text[7] != '-')
    return false;
  guint year = number_in (text, 4), month = number_in (text + 5, 2), day = number_in (text + 8, 2);
  return year >= 1900 && year < 3000 && month >= 1 && month <= 12
         && g_date_valid_dmy ((GDateDay)day, (GDateMonth)month, (GDateYear)year);
}

char *
spelch_fault_date (const char *member, const char *date, bool may_be_empty)
{
  if ((*date == '\0' && may_be_empty) || is_date (date))
    return NULL;
  gsize length = strnlen (date, SPELCH_DATE_SIZE);
  g_autofree char *shown = g_utf8_make_valid (date, (gssize)length);
  return g_strdup_printf (_ ("%s (“%s”) isn't a day; write it as 2026-05-31."), member, shown);
}

char *
spelch_fault_text (const char *member, const char *text, gsize size)
{
  gsize length = strnlen (text, size);
  if (length == size)
    return g_strdup_printf (_ ("%s is too long."), member);
  if (!g_utf8_validate (text, (gssize)length, NULL))
    return g_strdup_printf (_ ("%s isn't readable text (UTF-8)."), member);
  return NULL;
}

char *
spelch_fault_code (const char *member, const SpelchCodes *table, int value)
{
  if (*spelch_code_of (table, value) != '\0')
    return NULL;
  g_autofree char *codes = spelch_codes_list (table);
  return g_strdup_printf (_ ("%s must be one of %s."), member, codes);
}

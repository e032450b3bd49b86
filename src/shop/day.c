/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/day.h"
#include "shop/fault.h"
#include "shop/length.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define ISO "2026-05-31"

static void
set_day (char day[SPELCH_DATE_SIZE], const char *text)
{
  memset (day, 0, SPELCH_DATE_SIZE);
  g_strlcpy (day, text, SPELCH_DATE_SIZE);
}

void
spelch_day_today (char day[SPELCH_DATE_SIZE])
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *text = g_date_time_format (now, "%Y-%m-%d");
  set_day (day, text);
}

const char *
spelch_day_example (void)
{
  /* Translators: the 31st of May 2026 as people type it, by digits. Days are read like this; where they are
   * written in more than one order, leave it as it is. */
  return C_ ("day by digits", "2026-05-31");
}

/* The three numbers of a date with one sign between them; that sign, or 0 when it isn't one. */
static char
split (const char *text, guint numbers[3], gsize digits[3])
{
  char sign = '\0';
  for (guint i = 0; i < 3; i++)
    {
      digits[i] = strspn (text, "0123456789");
      if (digits[i] == 0 || digits[i] > 4)
        return '\0';
      numbers[i] = (guint)g_ascii_strtoull (text, NULL, 10);
      text += digits[i];
      if (i == 0)
        sign = *text;
      if (*text != (i < 2 ? sign : '\0') || sign == '\0')
        return '\0';
      text += i < 2 ? 1 : 0;
    }
  return sign;
}

/* Which of the three numbers of @example is the year, the month and the day. */
static char
order_of (const char *example, guint *year, guint *month, guint *day)
{
  guint numbers[3];
  gsize digits[3];
  char sign = split (example, numbers, digits);
  for (guint i = 0; sign != '\0' && i < 3; i++)
    *(numbers[i] == 2026 ? year : numbers[i] == 5 ? month : day) = i;
  return sign;
}

static bool
read_like (const char *typed, const char *example, char into[SPELCH_DATE_SIZE])
{
  guint numbers[3], year = 0, month = 1, day = 2;
  gsize digits[3];
  char sign = order_of (example, &year, &month, &day);
  if (sign == '\0' || split (typed, numbers, digits) != sign || digits[year] != 4 || digits[month] > 2
      || digits[day] > 2)
    return false;
  g_autofree char *iso = g_strdup_printf ("%04u-%02u-%02u", numbers[year], numbers[month], numbers[day]);
  g_autofree char *fault = spelch_fault_date ("", iso, false);
  if (fault == NULL)
    set_day (into, iso);
  return fault == NULL;
}

bool
spelch_day_read (const char *typed, const char *example, char day[SPELCH_DATE_SIZE], GError **error)
{
  g_autofree char *trimmed = g_strstrip (g_strdup (typed));
  if (read_like (trimmed, ISO, day) || read_like (trimmed, example, day))
    return true;
  if (g_str_equal (example, ISO))
    g_set_error (error, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_NOT_NUMBER,
                 _ ("“%s” isn't a day; write it as %s: year, month, day."), trimmed, ISO);
  else
    g_set_error (error, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_NOT_NUMBER,
                 _ ("“%s” isn't a day; write it as %s or %s."), trimmed, example, ISO);
  return false;
}

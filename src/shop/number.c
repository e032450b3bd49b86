/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/number.h"

#include "shop/length.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define MOST_WHOLE  1e6
#define LARGER_UNIT 1000

/* What a figure in a unit looks like. */
typedef struct
{
  const char *unit;    /* NULL: none */
  bool counted;        /* usually a whole number in the trade */
  const char *example; /* with a point */
} Measure;

static const Measure MEASURES[] = {
  { "rpm", true, "18000" }, { "mm/min", true, "3000" }, { "kg/m³", true, "650" }, { "W", true, "1400" },
  { "N", true, "400" },     { "N/mm", true, "1500" },   { "cm²", true, "1200" },  { "m", true, "120" },
  { "°", false, "30" },     { "mm", false, "0.2" },     { "kPa", false, "70" },   { "kg", false, "4.5" },
  { "%", false, "60" },     { NULL, true, "35.50" },
};

/* Units that people write in place of one, and how many of it they are. */
typedef struct
{
  const char *unit, *written;
  double times;
} Other;

static const Other OTHERS[] = {
  { "rpm", "/min", 1 },
  { "rpm", "r/min", 1 },
  { "rpm", "min-1", 1 },
  { "mm/min", "m/min", 1000 },
  { "mm/min", "cm/min", 10 },
  { "mm/min", "in/min", SPELCH_MM_PER_INCH },
  { "mm/min", "ft/min", 12 * SPELCH_MM_PER_INCH },
  { "mm/min", "mm/s", 60 },
  { "W", "kW", 1000 },
  { "N", "kN", 1000 },
  { "kg/m³", "kg/m3", 1 },
  { "kg/m³", "g/cm³", 1000 },
  { "kg/m³", "g/cm3", 1000 },
  { "cm²", "cm2", 1 },
  { "cm²", "mm²", 0.01 },
  { "cm²", "mm2", 0.01 },
  { "cm²", "m²", 10000 },
  { "cm²", "m2", 10000 },
  { "m", "km", 1000 },
  { "m", "ft", 0.012 * SPELCH_MM_PER_INCH },
  { "mm", "in", SPELCH_MM_PER_INCH },
  { "mm", "\"", SPELCH_MM_PER_INCH },
  { "mm", "cm", 10 },
  { "kPa", "bar", 100 },
  { "kPa", "mbar", 0.1 },
  { "kg", "g", 0.001 },
};

static const Measure *
measure_of (const char *unit)
{
  guint i = 0;
  while (MEASURES[i].unit != NULL && g_strcmp0 (MEASURES[i].unit, unit) != 0)
    i++;
  return &MEASURES[i];
}

/* "18000", "2,5": what could be written. */
static char *
with_sign (const char *plain, char decimal_sign)
{
  char *text = g_strdup (plain);
  return decimal_sign == ',' ? g_strdelimit (text, ".", ',') : text;
}

static bool
refuse (const char *unit, char decimal_sign, GError **error)
{
  g_autofree char *example = with_sign (measure_of (unit)->example, decimal_sign);
  if (unit == NULL)
    g_set_error (error, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_NOT_NUMBER,
                 _ ("Write a number here, such as %s."), example);
  else
    g_set_error (error, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_NOT_NUMBER,
                 _ ("Write a number here, in %s: for example %s."), _ (unit), example);
  return false;
}

static gsize
digits_at (const char *p)
{
  return strspn (p, "0123456789");
}

bool
spelch_number_is_plain (const char *text, bool counted, char decimal_sign, GError **error)
{
  const char *signs = counted ? ".," : decimal_sign == ',' ? "." : ",";
  while (*text == ' ')
    text++;
  gsize sign = *text == '-' || *text == '+' ? 1 : 0;
  const char *digits = text + sign;
  gsize group = digits_at (digits);
  if (group < 1 || group > 3 || digits[0] == '0' || digits[group] == '\0'
      || strchr (signs, digits[group]) == NULL)
    return true;
  const char *three = digits + group + 1;
  if (digits_at (three) != 3 || three[3] == '.' || three[3] == ',')
    return true;
  const char *rest = three + 3;
  /* A decimal that would be doubtful again is written with a nought more. */
  gsize kept = 3;
  while (kept > 0 && three[kept - 1] == '0')
    kept--;
  char point[] = { decimal_sign, '\0' };
  g_autofree char *thousands
      = g_strdup_printf ("%.*s%.*s%.3s%s", (int)sign, text, (int)group, digits, three, rest);
  g_autofree char *decimal
      = g_strdup_printf ("%.*s%.*s%s%.*s%s%s", (int)sign, text, (int)group, digits, kept > 0 ? point : "",
                         (int)kept, three, kept == 3 ? "0" : "", rest);
  g_set_error (error, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_AMBIGUOUS,
               _ ("“%s” can be read in two ways; write %s, or %s."), text, thousands, decimal);
  return false;
}

/* The figure and its unit apart, without white space. */
static char *
split (const char *text, char **unit)
{
  GString *plain = g_string_new (NULL);
  g_autofree char *words = g_strdup (text);
  if (g_str_has_suffix (words, " 1/min"))
    strcpy (words + strlen (words) - strlen ("1/min"), "/min"); /* the 1 is no digit of the figure */
  for (const char *c = words; *c != '\0'; c = g_utf8_next_char (c))
    if (g_utf8_get_char (c) == 0x2212) /* minus sign */
      g_string_append_c (plain, '-');
    else if (!g_unichar_isspace (g_utf8_get_char (c)))
      g_string_append_unichar (plain, g_utf8_get_char (c));
  gsize figures = strspn (plain->str, "+-.,0123456789");
  *unit = g_strdup (plain->str + figures);
  g_string_truncate (plain, figures);
  return g_string_free (plain, FALSE);
}

/* How many of @unit the @written one is; 0 when it isn't known there. */
static double
times_of (const char *written, const char *unit)
{
  if (*written == '\0')
    return 1;
  if (unit == NULL)
    return 0;
  g_autofree char *own = g_strdup (_ (unit));
  if (g_ascii_strcasecmp (written, unit) == 0 || g_ascii_strcasecmp (written, own) == 0)
    return 1;
  for (guint i = 0; i < G_N_ELEMENTS (OTHERS); i++)
    if (strcmp (OTHERS[i].unit, unit) == 0 && g_ascii_strcasecmp (OTHERS[i].written, written) == 0)
      return OTHERS[i].times;
  return 0;
}

static bool
read_plain (const char *figures, double *number)
{
  g_autofree char *plain = g_strdelimit (g_strdup (figures), ",", '.');
  char *end = NULL;
  *number = g_ascii_strtod (plain, &end);
  return end != plain && *end == '\0' && isfinite (*number);
}

bool
spelch_number_parse (const char *text, const char *unit, char decimal_sign, double *number, GError **error)
{
  g_autofree char *written = NULL;
  g_autofree char *figures = g_utf8_validate (text, -1, NULL) ? split (text, &written) : NULL;
  double times = figures == NULL ? 0 : times_of (written, unit), read = 0;
  if (times <= 0 || !read_plain (figures, &read))
    return refuse (unit, decimal_sign, error);
  /* In a larger unit nobody means thousands. */
  if (times < LARGER_UNIT
      && !spelch_number_is_plain (figures, measure_of (unit)->counted, decimal_sign, error))
    return false;
  *number = read * times;
  return true;
}

bool
spelch_number_parse_whole (const char *text, char decimal_sign, int *whole, GError **error)
{
  double number = 0;
  g_autoptr (GError) local = NULL;
  bool taken = spelch_number_parse (text, NULL, decimal_sign, &number, &local);
  if (taken && number == floor (number) && fabs (number) <= MOST_WHOLE)
    {
      *whole = (int)number;
      return true;
    }
  if (g_error_matches (local, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_AMBIGUOUS))
    g_propagate_error (error, g_steal_pointer (&local));
  else
    g_set_error_literal (error, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_NOT_NUMBER,
                         _ ("Write a whole number here: 1, 2, 3 ..."));
  return false;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/length.h"

#include "shop/number.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define MOST_MM            100000.0
#define FINEST_DENOMINATOR 1000
#define SIXTY_FOURTH_MM    (SPELCH_MM_PER_INCH / 64.0)
#define FRACTION_WITHIN_MM 0.005

G_DEFINE_QUARK (spelch - length - error - quark, spelch_length_error)

SpelchLength
spelch_length_mm (double mm)
{
  SpelchLength length = { 0 };
  g_return_val_if_fail (isfinite (mm), length);
  length.mm = mm;
  return length;
}

/* ---- Reading ---- */

/* What the words say, before the unit is known. */
typedef struct
{
  double value;
  bool is_fraction;
} Number;

static const char *
sentence_of (SpelchLengthError code)
{
  switch (code)
    {
    case SPELCH_LENGTH_ERROR_EMPTY:
      return _ ("Type a length, such as 18 mm or 23/32 in.");
    case SPELCH_LENGTH_ERROR_UNIT:
      return _ ("“%s” has a unit that Spelch doesn't read; use mm, cm, m, in or ft.");
    case SPELCH_LENGTH_ERROR_AMBIGUOUS:
      return _ ("“%s” has more than one decimal sign; use one, and spaces between thousands.");
    case SPELCH_LENGTH_ERROR_FRACTION:
      return _ ("“%s” isn't a fraction of an inch, such as 5/8 or 1 1/4 in; write millimetres as decimals.");
    case SPELCH_LENGTH_ERROR_RANGE:
      return _ ("“%s” is too long; a length is at most 100 m and written in at most 31 letters.");
    case SPELCH_LENGTH_ERROR_NOT_NUMBER:
    default:
      return _ ("“%s” isn't a length; type one such as 18 mm, 15.9 or 5/8 in.");
    }
}

static bool
refuse (GError **error, SpelchLengthError code, const char *text)
{
  g_autofree char *whole = g_utf8_make_valid (text, (gssize)strnlen (text, 4 * SPELCH_TYPED_SIZE));
  g_autofree char *shown = g_utf8_substring (whole, 0, MIN (g_utf8_strlen (whole, -1), SPELCH_TYPED_SIZE));
  g_set_error (error, SPELCH_LENGTH_ERROR, (int)code, sentence_of (code), shown);
  return false;
}

/* @text without the white space at its ends, whatever kind of space it is; *bytes gets what is left. */
static const char *
trim (const char *text, gsize *bytes)
{
  while (*text != '\0' && g_unichar_isspace (g_utf8_get_char (text)))
    text = g_utf8_next_char (text);
  const char *end = text;
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    if (!g_unichar_isspace (g_utf8_get_char (p)))
      end = g_utf8_next_char (p);
  *bytes = (gsize)(end - text);
  return text;
}

/* ½ and its like: " 1/2 ", set apart so that it can't run into the digits beside it. */
static bool
append_vulgar_fraction (GString *plain, gunichar c)
{
  gunichar parts[G_UNICHAR_MAX_DECOMPOSITION_LENGTH];
  gsize n = g_unichar_fully_decompose (c, TRUE, parts, G_N_ELEMENTS (parts));
  if (n < 3 || parts[1] != 0x2044)
    return false;
  if (plain->len > 0 && g_ascii_isdigit (plain->str[plain->len - 1]))
    g_string_append_c (plain, ' ');
  for (gsize i = 0; i < n; i++)
    g_string_append_unichar (plain, parts[i] == 0x2044 ? '/' : parts[i]);
  g_string_append_c (plain, ' ');
  return true;
}

/* The words in ASCII: every space a space, every inch mark a '"', every minus a '-'. What has no such form is
 * kept and refused later. */
static char *
to_plain (const char *text, gsize bytes)
{
  GString *plain = g_string_new (NULL);
  for (const char *p = text; p < text + bytes; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);
      if (g_unichar_type (c) == G_UNICODE_SPACE_SEPARATOR)
        g_string_append_c (plain, ' ');
      else if (c == 0x2033 || c == 0x201D) /* double prime, closing quote */
        g_string_append_c (plain, '"');
      else if (c == 0x2032 || c == 0x2019) /* prime, closing single quote */
        g_string_append_c (plain, '\'');
      else if (c == 0x2212) /* minus sign */
        g_string_append_c (plain, '-');
      else if (c == 0x2044) /* fraction slash */
        g_string_append_c (plain, '/');
      else if (!append_vulgar_fraction (plain, c))
        g_string_append_unichar (plain, c);
    }
  return g_string_free (plain, FALSE);
}

static const char *
skip_spaces (const char *p)
{
  return p + strspn (p, " ");
}

static gsize
digits_at (const char *p)
{
  return strspn (p, "0123456789");
}

static double
read_digits (const char *p, gsize n)
{
  double value = 0;
  for (gsize i = 0; i < n; i++)
    value = value * 10 + (p[i] - '0');
  return value;
}

/* A whole number whose digits may stand in groups of three: "1200", "1 200". Returns what follows, or NULL. A
 * group that a fraction begins with ("1 200/64") isn't taken. */
static const char *
read_whole (const char *p, double *value)
{
  gsize n = digits_at (p);
  if (n == 0)
    return NULL;
  *value = read_digits (p, n);
  p += n;
  for (bool grouped = n <= 3; grouped;)
    {
      const char *next = skip_spaces (p);
      grouped = next > p && digits_at (next) == 3 && next[3] != '/';
      if (grouped)
        {
          *value = *value * 1000 + read_digits (next, 3);
          p = next + 3;
        }
    }
  return p;
}

/* "5/8". Returns what follows, or NULL; *bad when it looks like a fraction but can't be one. */
static const char *
read_fraction (const char *p, double *value, bool *bad)
{
  gsize over = digits_at (p);
  if (over == 0 || p[over] != '/')
    return NULL;
  gsize under = digits_at (p + over + 1);
  if (under == 0)
    return NULL;
  double numerator = read_digits (p, over);
  double denominator = read_digits (p + over + 1, under);
  *bad = denominator < 1 || denominator > FINEST_DENOMINATOR;
  *value = *bad ? 0 : numerator / denominator;
  return p + over + 1 + under;
}

/* "1 1/4" or "1-1/4" once the whole number has been read; the fraction must be a proper one, or the whole
 * number would be doubtful. */
static const char *
read_rest_of_mixed (const char *p, double *value, bool *bad)
{
  const char *next = *p == '-' ? p + 1 : skip_spaces (p);
  double fraction;
  const char *end = next > p ? read_fraction (next, &fraction, bad) : NULL;
  if (end == NULL)
    return NULL;
  *bad = *bad || fraction >= 1;
  *value += fraction;
  return end;
}

/* The decimals after a decimal sign; g_ascii_strtod() is given a point, so that 0.1 is the double that 0.1
 * is. */
static const char *
read_decimals (const char *p, double *value)
{
  gsize n = digits_at (p);
  g_autofree char *number = g_strdup_printf ("%.0f.%.*s", *value, (int)n, p);
  *value = g_ascii_strtod (number, NULL);
  return p + n;
}

static bool
is_decimal_sign (char c)
{
  return c == '.' || c == ',';
}

/* The number at the beginning of @p; *rest gets what follows it. Returns an error code, or -1 when all is
 * well. */
static int
read_number (const char *p, Number *number, const char **rest)
{
  bool bad = false;
  *rest = read_fraction (p, &number->value, &bad);
  if (*rest == NULL)
    {
      number->is_fraction = false;
      number->value = 0;
      const char *after = read_whole (p, &number->value);
      if (after == NULL && !(is_decimal_sign (*p) && digits_at (p + 1) > 0))
        return SPELCH_LENGTH_ERROR_NOT_NUMBER;
      after = after == NULL ? p : after;
      *rest = read_rest_of_mixed (after, &number->value, &bad);
      if (*rest == NULL)
        {
          *rest = is_decimal_sign (*after) ? read_decimals (after + 1, &number->value) : after;
          return is_decimal_sign (**rest) ? SPELCH_LENGTH_ERROR_AMBIGUOUS : -1;
        }
    }
  number->is_fraction = true;
  return bad ? SPELCH_LENGTH_ERROR_FRACTION : -1;
}

static bool
is_word (const char *p)
{
  for (; *p != '\0' && *p != ' '; p++)
    if (g_ascii_isdigit (*p) || g_ascii_iscntrl (*p) || strchr ("/-+.,", *p) != NULL)
      return false;
  return *skip_spaces (p) == '\0';
}

/* A unit as a ratio of whole numbers, so that 1 1/2 in is 38.1 to the last bit. */
typedef struct
{
  const char *name;
  double mm, per;
} Unit;

static const Unit MILLIMETRE = { "mm", 1, 1 };
static const Unit INCH = { "in", 254, 10 };

/* The unit named at @p (spaces around it allowed); false when it is none that this program reads. */
static bool
read_unit (const char *p, Unit *unit)
{
  static const Unit units[] = {
    { "mm", 1, 1 },        { "cm", 10, 1 },   { "m", 1000, 1 },   { "in", 254, 10 },    { "inch", 254, 10 },
    { "inches", 254, 10 }, { "\"", 254, 10 }, { "ft", 3048, 10 }, { "feet", 3048, 10 }, { "'", 3048, 10 },
  };
  g_autofree char *name = g_strchomp (g_strdup (p));
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_ascii_strcasecmp (name, units[i].name) == 0)
      {
        *unit = units[i];
        return true;
      }
  return false;
}

/* Reads the trimmed, plain words. Returns an error code, or -1 when all is well. */
static int
read_plain (const char *plain, SpelchUnit shown, double *mm)
{
  bool minus = *plain == '-';
  Number number;
  const char *rest;
  int code = read_number (skip_spaces (plain + minus), &number, &rest);
  if (code >= 0)
    return code;

  rest = skip_spaces (rest);
  Unit unit = number.is_fraction || shown == SPELCH_UNIT_INCH ? INCH : MILLIMETRE;
  if (*rest != '\0' && !read_unit (rest, &unit))
    return is_word (rest) ? SPELCH_LENGTH_ERROR_UNIT : SPELCH_LENGTH_ERROR_NOT_NUMBER;
  if (number.is_fraction && unit.mm != INCH.mm)
    return SPELCH_LENGTH_ERROR_FRACTION;
  double read = number.value * unit.mm / unit.per;
  if (!(read <= MOST_MM))
    return SPELCH_LENGTH_ERROR_RANGE;
  *mm = minus && read > 0 ? -read : read;
  return -1;
}

bool
spelch_length_parse (const char *text, SpelchUnit shown, SpelchLength *length, GError **error)
{
  if (text == NULL)
    return refuse (error, SPELCH_LENGTH_ERROR_EMPTY, "");
  if (!g_utf8_validate (text, -1, NULL))
    return refuse (error, SPELCH_LENGTH_ERROR_NOT_NUMBER, text);
  gsize bytes;
  const char *words = trim (text, &bytes);
  if (bytes == 0)
    return refuse (error, SPELCH_LENGTH_ERROR_EMPTY, "");
  if (bytes >= SPELCH_TYPED_SIZE)
    return refuse (error, SPELCH_LENGTH_ERROR_RANGE, words);

  g_autofree char *plain = to_plain (words, bytes);
  double mm;
  int code = read_plain (plain, shown, &mm);
  if (code >= 0)
    return refuse (error, (SpelchLengthError)code, words);
  *length = spelch_length_mm (mm);
  memcpy (length->typed, words, bytes);
  return true;
}

bool
spelch_length_read (const char *text, SpelchUnit shown, char decimal_sign, SpelchLength *length,
                    GError **error)
{
  SpelchLength read;
  if (!spelch_length_parse (text, shown, &read, error))
    return false;
  /* What would be longer than any length as thousands is in no doubt. */
  if (fabs (read.mm) * 1000 <= MOST_MM && !spelch_number_is_plain (read.typed, false, decimal_sign, error))
    return false;
  *length = read;
  return true;
}

/* ---- Writing ---- */

#define HALF_UP 1e-9 /* 1/8 in is 3.175 mm, which the computer holds as a trace less: still 3.18 */

/* @value with its decimals; a value that rounds to nothing loses its minus. */
static char *
write_decimal (double value, int decimals, bool keep_zeros, char decimal_sign)
{
  char digits[64];
  char format[8];
  g_snprintf (format, sizeof format, "%%.%df", CLAMP (decimals, 0, 6));
  g_ascii_formatd (digits, sizeof digits, format, value + copysign (HALF_UP, value));
  char *point = strchr (digits, '.');
  if (point != NULL && !keep_zeros)
    for (char *last = digits + strlen (digits) - 1; last >= point && (*last == '0' || last == point); last--)
      *last = '\0';
  if (point != NULL && *point == '.')
    *point = decimal_sign;
  bool is_zero = strpbrk (digits, "123456789") == NULL;
  return g_strdup (is_zero && digits[0] == '-' ? digits + 1 : digits);
}

/* "1 1/4", "23/32", "2"; NULL when no 64th is near enough. */
static char *
write_fraction (double mm)
{
  double count = round (fabs (mm) / SIXTY_FOURTH_MM);
  if (fabs (fabs (mm) - count * SIXTY_FOURTH_MM) > FRACTION_WITHIN_MM || count > 64.0 * 1e6)
    return NULL;
  guint64 sixty_fourths = (guint64)count;
  guint64 whole = sixty_fourths / 64;
  guint over = (guint)(sixty_fourths % 64);
  guint under = 64;
  for (; over > 0 && over % 2 == 0; over /= 2)
    under /= 2;
  const char *sign = mm < 0 && sixty_fourths > 0 ? "-" : "";
  if (over == 0)
    return g_strdup_printf ("%s%" G_GUINT64_FORMAT, sign, whole);
  if (whole == 0)
    return g_strdup_printf ("%s%u/%u", sign, over, under);
  return g_strdup_printf ("%s%" G_GUINT64_FORMAT " %u/%u", sign, whole, over, under);
}

static char *
write_length (double mm, SpelchUnit unit, SpelchInchStyle style, int decimals, bool keep_zeros,
              char decimal_sign)
{
  g_autofree char *number = NULL;
  if (unit == SPELCH_UNIT_MM)
    number = write_decimal (mm, decimals, keep_zeros, decimal_sign);
  else if (style == SPELCH_INCH_FRACTION)
    number = write_fraction (mm);
  if (number == NULL)
    number = write_decimal (mm / SPELCH_MM_PER_INCH, MIN (2 * MAX (decimals, 0) + 1, 4), keep_zeros,
                            decimal_sign);
  return g_strconcat (number, unit == SPELCH_UNIT_MM ? " mm" : " in", NULL);
}

char *
spelch_length_format (double mm, SpelchUnit unit, SpelchInchStyle style, int decimals, char decimal_sign)
{
  g_return_val_if_fail (isfinite (mm), g_strdup (""));
  return write_length (mm, unit, style, decimals, true, decimal_sign);
}

char *
spelch_length_show (const SpelchLength *length, SpelchUnit unit, SpelchInchStyle style, char decimal_sign)
{
  /* The typed words serve when, read in @unit, they still say this length. */
  SpelchLength read;
  if (*length->typed != '\0' && spelch_length_parse (length->typed, unit, &read, NULL)
      && fabs (read.mm - length->mm) < 1e-9)
    return g_strdup (length->typed);
  g_return_val_if_fail (isfinite (length->mm), g_strdup (""));
  return write_length (length->mm, unit, style, 2, false, decimal_sign);
}

void
spelch_length_take_sign (SpelchLength *length, char decimal_sign)
{
  for (char *c = length->typed; *c != '\0'; c++)
    if (is_decimal_sign (*c))
      *c = decimal_sign;
}

char *
spelch_length_show_whole (const SpelchLength *length, SpelchUnit unit, SpelchInchStyle style,
                          char decimal_sign)
{
  SpelchLength told = *length;
  spelch_length_take_sign (&told, decimal_sign);
  g_autofree char *shown = spelch_length_show (&told, unit, style, decimal_sign);
  gsize n = strlen (shown);
  if (n == 0 || !(g_ascii_isdigit (shown[n - 1]) || is_decimal_sign (shown[n - 1])))
    return g_steal_pointer (&shown);
  bool inches = unit == SPELCH_UNIT_INCH || strchr (shown, '/') != NULL;
  return g_strdup_printf ("%s %s", shown, inches ? INCH.name : MILLIMETRE.name);
}

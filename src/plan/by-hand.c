/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/by-hand.h"
#include "shop/decimal-sign.h"
#include "shop/number.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define MM_PER_FOOT   (12 * SPELCH_MM_PER_INCH)
#define MOST_DECIMALS 3
#define SPEED_WITHIN  0.5
#define LEAST_FEED    1.0 /* mm/min; slower isn't a feed */
#define LEAST_RPM     100.0

/* ---- Reading ---- */

static bool
refuse (GError **error, const char *format, const char *text)
{
  g_autofree char *whole = g_utf8_make_valid (text, -1);
  g_autofree char *shown = g_utf8_substring (whole, 0, MIN (g_utf8_strlen (whole, -1), SPELCH_TYPED_SIZE));
  g_set_error (error, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_NOT_NUMBER, format, shown);
  return false;
}

/* Small letters, one ordinary space between words and none at the ends. */
static char *
plain (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  g_autofree char *small = g_utf8_strdown (valid, -1);
  GString *words = g_string_new (NULL);
  for (const char *c = small; *c != '\0'; c = g_utf8_next_char (c))
    if (!g_unichar_isspace (g_utf8_get_char (c)))
      g_string_append_unichar (words, g_utf8_get_char (c));
    else if (words->len > 0 && words->str[words->len - 1] != ' ')
      g_string_append_c (words, ' ');
  return g_strchomp (g_string_free (words, FALSE));
}

/* @text before @suffix, or NULL when it doesn't end so. */
static char *
before (const char *text, const char *suffix)
{
  if (!g_str_has_suffix (text, suffix))
    return NULL;
  return g_strchomp (g_strndup (text, strlen (text) - strlen (suffix)));
}

/* The same for the first of @suffixes that fits; a text of its own in any case. */
static char *
before_any (const char *text, const char *const *suffixes, bool *found)
{
  *found = false;
  for (; *suffixes != NULL; suffixes++)
    {
      char *rest = before (text, *suffixes);
      *found = rest != NULL;
      if (rest != NULL)
        return rest;
    }
  return g_strdup (text);
}

/* A number without a unit, or with groups of digits. */
static bool
read_number (const char *text, double *number, GError **error)
{
  SpelchLength length;
  if (text[strspn (text, "0123456789., ")] != '\0'
      || !spelch_length_parse (text, SPELCH_UNIT_MM, &length, error))
    return false;
  *number = length.mm;
  return true;
}

/* A speed or a feed is a whole number: "18,000" is asked about. */
static bool
is_plain (const char *text, GError **error)
{
  return spelch_number_is_plain (text, true, spelch_decimal_sign (), error);
}

bool
spelch_by_hand_read_speed (const char *text, double *rpm, GError **error)
{
  static const char *const units[] = { "rpm", "u/min", "tr/min", "r/min", "1/min", "/min", "min-1", NULL };
  g_autofree char *words = plain (text);
  g_autoptr (GError) trouble = NULL;
  bool told = false;
  g_autofree char *count = before_any (words, units, &told);
  double number = 0;
  if (!is_plain (count, &trouble) || !read_number (count, &number, &trouble))
    {
      if (!g_error_matches (trouble, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_AMBIGUOUS))
        return refuse (error, _ ("“%s” isn't a spindle speed; type one such as 18 000 rpm."), text);
      g_propagate_error (error, g_steal_pointer (&trouble));
      return false;
    }
  if (round (number) < LEAST_RPM)
    return refuse (error, _ ("“%s” is too slow for a spindle; type a speed such as 18 000 rpm."), text);
  *rpm = round (number);
  return true;
}

/* A way of whatever unit: "5 400 mm", "5.4 m", "213 in", "17.7 ft", "a metre". */
static bool
read_way (const char *text, double *mm, GError **error)
{
  static const char *const feet[] = { "ft", "foot", "feet", NULL };
  static const char *const metres[] = { "metres", "metre", "meters", "meter", NULL };
  bool in_feet = false, in_metres = false;
  g_autofree char *count = before_any (text, feet, &in_feet);
  g_autofree char *of_metres = before_any (text, metres, &in_metres);
  const char *number = in_feet ? count : of_metres;
  if (in_feet || in_metres)
    {
      double many = g_str_equal (number, "a") || g_str_equal (number, "one") ? 1 : 0;
      if (many == 0 && !read_number (number, &many, error))
        return false;
      *mm = many * (in_feet ? MM_PER_FOOT : 1000);
      return true;
    }
  SpelchLength length;
  if (!spelch_length_parse (text, SPELCH_UNIT_MM, &length, error))
    return false;
  *mm = length.mm;
  return true;
}

/* What stands for the %s of @format in @text, or NULL when they differ elsewhere. */
static char *
between (const char *text, const char *format)
{
  g_autofree char *small = g_utf8_strdown (format, -1);
  g_auto (GStrv) ends = g_strsplit (small, "%s", 2);
  if (g_strv_length (ends) != 2 || !g_str_has_prefix (text, ends[0]))
    return NULL;
  return before (text + strlen (ends[0]), ends[1]);
}

/* "a metre in 22 s", in the person's own language as well, and any other way in so many seconds. */
static bool
read_pace (const char *text, double *mm_min)
{
  static const char *const seconds[] = { "seconds", "second", "sec", "s", NULL };
  g_autofree char *metre = between (text, _ ("a metre in %s s"));
  g_autofree char *foot = metre == NULL ? between (text, _ ("a foot in %s s")) : NULL;
  const char *known = metre != NULL ? metre : foot;
  double time = 0, way = metre != NULL ? 1000 : MM_PER_FOOT;
  if (known == NULL || !read_number (known, &time, NULL))
    {
      const char *in = g_strrstr (text, " in ");
      bool timed = false;
      if (in == NULL)
        return false;
      g_autofree char *head = g_strndup (text, (gsize)(in - text));
      g_autofree char *count = before_any (in + strlen (" in "), seconds, &timed);
      if (!timed || !read_number (count, &time, NULL) || !read_way (head, &way, NULL))
        return false;
    }
  if (!(time > 0) || !isfinite (way / time))
    return false;
  *mm_min = round (way / time * 60);
  return true;
}

static double
unit_mm (const SpelchNumbers *numbers)
{
  switch (numbers->feed_unit)
    {
    case SPELCH_FEED_M_MIN:
      return 1000;
    case SPELCH_FEED_IN_MIN:
      return SPELCH_MM_PER_INCH;
    case SPELCH_FEED_FT_MIN:
      return MM_PER_FOOT;
    case SPELCH_FEED_MM_MIN:
      return 1;
    case SPELCH_FEED_AS_LENGTHS:
    default:
      return numbers->unit == SPELCH_UNIT_INCH ? SPELCH_MM_PER_INCH : 1;
    }
}

static bool
read_feed (const char *text, const SpelchNumbers *numbers, double *mm_min, GError **error)
{
  static const char *const a_minute[] = { "/ min", "/min", "/minute", " a minute", " per minute", NULL };
  bool told = false;
  double number = 0;
  g_autofree char *way = before_any (text, a_minute, &told);
  if (told)
    return (!g_str_has_suffix (way, "mm") || is_plain (way, error)) && read_way (way, mm_min, error);
  if (read_pace (text, mm_min))
    return true;
  if ((unit_mm (numbers) <= 1 && !is_plain (text, error)) || !read_number (text, &number, error))
    return false;
  *mm_min = number * unit_mm (numbers);
  return true;
}

bool
spelch_by_hand_read_feed (const char *text, const SpelchNumbers *numbers, double *mm_min, GError **error)
{
  g_autofree char *words = plain (text);
  g_autoptr (GError) trouble = NULL;
  double feed = 0;
  if (!read_feed (words, numbers, &feed, &trouble))
    {
      if (!g_error_matches (trouble, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_AMBIGUOUS))
        return refuse (error,
                       _ ("“%s” isn't a feed; type one such as 5 400 mm/min, 213 in/min or a metre in 22 s."),
                       text);
      g_propagate_error (error, g_steal_pointer (&trouble));
      return false;
    }
  if (feed < LEAST_FEED)
    return refuse (error, _ ("“%s” is too slow for a feed; type one such as 5 400 mm/min."), text);
  *mm_min = feed;
  return true;
}

/* ---- Writing ---- */

char *
spelch_by_hand_write_feed (const SpelchNumbers *numbers, double mm_min)
{
  double per = unit_mm (numbers), value = mm_min / per;
  g_autofree char *usual = spelch_words_feed (numbers, mm_min);
  double read = 0;
  if (spelch_by_hand_read_feed (usual, numbers, &read, NULL) && fabs (read - mm_min) < per * 0.0005)
    return g_steal_pointer (&usual);
  int decimals = 1;
  double ten = 10;
  for (; decimals < MOST_DECIMALS && fabs (round (value * ten) / ten - value) > 0.0005; ten *= 10)
    decimals++;
  g_autofree char *count = spelch_words_decimal (numbers, value, decimals);
  const char *unit = strrchr (usual, ' ');
  return g_strdup_printf ("%s%s", count, unit == NULL ? "" : unit);
}

/* ---- What the machine can do ---- */

char *
spelch_by_hand_speed_fault (const SpelchMachine *machine, double rpm)
{
  g_autofree char *least = spelch_words_count (machine->rpm_min);
  g_autofree char *most = spelch_words_count (machine->rpm_max);
  if (rpm < machine->rpm_min - SPEED_WITHIN || rpm > machine->rpm_max + SPEED_WITHIN)
    return g_strdup_printf (_ ("The machine turns at %s to %s rpm."), least, most);
  if (machine->n_steps == 0)
    return NULL;
  g_autoptr (GString) steps = g_string_new (NULL);
  for (guint i = 0; i < machine->n_steps; i++)
    {
      g_autofree char *step = spelch_words_count (machine->steps_rpm[i]);
      if (fabs (machine->steps_rpm[i] - rpm) <= SPEED_WITHIN)
        return NULL;
      g_string_append_printf (steps, "%s%s", i == 0 ? "" : "; ", step);
    }
  return g_strdup_printf (_ ("The machine's dial has no such step; it has %s rpm."), steps->str);
}

char *
spelch_by_hand_feed_fault (const SpelchPlan *plan, double mm_min, const SpelchNumbers *numbers)
{
  for (guint i = 0; i < plan->n_limits; i++)
    {
      const SpelchLimit *limit = &plan->limits[i];
      if (limit->kind != SPELCH_LIMIT_MACHINE || mm_min <= limit->feed_mm_min * (1 + 1e-6))
        continue;
      g_autofree char *most = spelch_words_feed (numbers, limit->feed_mm_min);
      return g_strdup_printf (plan->machine == SPELCH_MACHINE_GANTRY
                                  ? _ ("The machine feeds no quicker than %s.")
                                  : _ ("Fed by hand it goes no quicker than about %s."),
                              most);
    }
  return NULL;
}

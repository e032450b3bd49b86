/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/field.h"
#include "bench/typed-list.h"
#include "shop/day.h"
#include "shop/number.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

static gconstpointer
member_of (const SpelchField *field, gconstpointer value)
{
  return (const char *)value + field->offset;
}

static gpointer
member_to_change (const SpelchField *field, gpointer value)
{
  return (char *)value + field->offset;
}

/* ---- Writing ---- */

static char *
write_number (double number, char decimal_sign)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (text, sizeof text, "%.10g", number);
  char *point = strchr (text, '.');
  if (point != NULL)
    *point = decimal_sign;
  return g_strdup (text);
}

static guint
count_of (const SpelchField *field, gconstpointer value)
{
  return *(const guint *)(gconstpointer)((const char *)value + field->count);
}

/* Set apart so that nothing can be taken for a group of digits or a mixed fraction. */
static char *
write_list (const SpelchField *field, gconstpointer value, const SpelchNumbers *numbers)
{
  g_autoptr (GString) list = g_string_new (NULL);
  for (guint i = 0; i < count_of (field, value); i++)
    {
      gconstpointer member = member_of (field, value);
      g_autofree char *one = field->kind == SPELCH_FIELD_NUMBERS
                                 ? write_number (((const double *)member)[i], numbers->decimal_sign)
                                 : spelch_length_show (&((const SpelchLength *)member)[i], numbers->unit,
                                                       numbers->inch_style, numbers->decimal_sign);
      g_string_append_printf (list, "%s%s", i > 0 ? "; " : "", one);
    }
  return g_string_free (g_steal_pointer (&list), FALSE);
}

char *
spelch_field_write (const SpelchField *field, gconstpointer value, const SpelchNumbers *numbers)
{
  gconstpointer member = member_of (field, value);
  switch (field->kind)
    {
    case SPELCH_FIELD_TEXT:
      return g_strdup (field->name == NULL ? member : field->name (member));
    case SPELCH_FIELD_LENGTH:
      {
        const SpelchLength *length = member;
        if (length->mm == 0 && field->none != NULL)
          return g_strdup ("");
        return spelch_length_show (length, numbers->unit, numbers->inch_style, numbers->decimal_sign);
      }
    case SPELCH_FIELD_NUMBER:
      {
        double number = *(const double *)member;
        return number == 0 && field->none != NULL ? g_strdup ("")
                                                  : write_number (number, numbers->decimal_sign);
      }
    case SPELCH_FIELD_WHOLE:
      {
        int number = *(const int *)member;
        return number == 0 && field->none != NULL ? g_strdup ("") : g_strdup_printf ("%d", number);
      }
    case SPELCH_FIELD_NUMBERS:
    case SPELCH_FIELD_LENGTHS:
      return write_list (field, value, numbers);
    case SPELCH_FIELD_HEADING:
    case SPELCH_FIELD_CHOICE:
    case SPELCH_FIELD_FLAG:
    case SPELCH_FIELD_PICK:
    default:
      return g_strdup ("");
    }
}

/* ---- Reading ---- */

static bool
is_blank (const char *typed)
{
  for (const char *c = typed; *c != '\0'; c = g_utf8_next_char (c))
    if (!g_unichar_isspace (g_utf8_get_char (c)))
      return false;
  return true;
}

/* Days sort as they are written. Whether there must be one is told of with the other faults. */
static bool
read_past_day (const char *typed, char *into, GError **error)
{
  char today[SPELCH_DATE_SIZE], day[SPELCH_DATE_SIZE] = "";
  if (!is_blank (typed) && !spelch_day_read (typed, spelch_day_example (), day, error))
    return false;
  spelch_day_today (today);
  if (strcmp (day, today) > 0)
    {
      g_set_error (error, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_RANGE,
                   _ ("%s is still to come: write today, %s, or a day before."), day, today);
      return false;
    }
  memcpy (into, day, sizeof day);
  return true;
}

static bool
read_text (const SpelchField *field, const char *typed, char *into, GError **error)
{
  if (field->is_past)
    return read_past_day (typed, into, error);
  g_autofree char *trimmed = g_strstrip (g_strdup (typed));
  if (strlen (trimmed) >= field->size)
    {
      g_set_error (error, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_RANGE,
                   _ ("That is too long: there is room for %u letters."), (guint)field->size - 1);
      return false;
    }
  if (field->keep != NULL)
    field->keep (trimmed, into, field->size);
  else
    g_strlcpy (into, trimmed, field->size);
  return true;
}

static bool
read_one (const SpelchField *field, const char *typed, const SpelchNumbers *numbers, gpointer member, guint i,
          GError **error)
{
  if (field->kind == SPELCH_FIELD_NUMBERS)
    return spelch_number_parse (typed, field->unit, numbers->decimal_sign, (double *)member + i, error);
  return spelch_length_read (typed, numbers->unit, numbers->decimal_sign, (SpelchLength *)member + i, error);
}

/* All of the list or nothing. */
static bool
read_list (const SpelchField *field, const char *typed, const SpelchNumbers *numbers, gpointer value,
           GError **error)
{
  gsize item = field->kind == SPELCH_FIELD_NUMBERS ? sizeof (double) : sizeof (SpelchLength);
  g_auto (GStrv) words = spelch_typed_list_split (typed);
  guint n = g_strv_length (words);
  if (n > field->size)
    {
      g_set_error (error, SPELCH_LENGTH_ERROR, SPELCH_LENGTH_ERROR_RANGE,
                   g_dngettext (GETTEXT_PACKAGE, "There is room for %u.", "There is room for %u of them.",
                                field->size),
                   (guint)field->size);
      return false;
    }
  g_autofree gpointer list = g_malloc0_n (field->size, item);
  for (guint i = 0; i < n; i++)
    if (!read_one (field, words[i], numbers, list, i, error))
      return false;
  memcpy (member_to_change (field, value), list, field->size * item);
  *(guint *)(gpointer)((char *)value + field->count) = n;
  return true;
}

bool
spelch_field_read (const SpelchField *field, const char *typed, const SpelchNumbers *numbers, gpointer value,
                   GError **error)
{
  gpointer member = member_to_change (field, value);
  bool nothing = field->none != NULL && is_blank (typed);
  switch (field->kind)
    {
    case SPELCH_FIELD_TEXT:
      return read_text (field, typed, member, error);
    case SPELCH_FIELD_LENGTH:
      {
        SpelchLength length = spelch_length_mm (0);
        if (!nothing && !spelch_length_read (typed, numbers->unit, numbers->decimal_sign, &length, error))
          return false;
        *(SpelchLength *)member = length;
        return true;
      }
    case SPELCH_FIELD_NUMBER:
      {
        double number = 0;
        if (!nothing && !spelch_number_parse (typed, field->unit, numbers->decimal_sign, &number, error))
          return false;
        *(double *)member = number;
        return true;
      }
    case SPELCH_FIELD_WHOLE:
      {
        int whole = 0;
        if (!nothing && !spelch_number_parse_whole (typed, numbers->decimal_sign, &whole, error))
          return false;
        *(int *)member = whole;
        return true;
      }
    case SPELCH_FIELD_NUMBERS:
    case SPELCH_FIELD_LENGTHS:
      return read_list (field, typed, numbers, value, error);
    case SPELCH_FIELD_HEADING:
    case SPELCH_FIELD_CHOICE:
    case SPELCH_FIELD_FLAG:
    case SPELCH_FIELD_PICK:
    default:
      return false;
    }
}

guint
spelch_field_choice (const SpelchField *field, gconstpointer value)
{
  gconstpointer member = member_of (field, value);
  return field->kind == SPELCH_FIELD_FLAG ? *(const bool *)member : *(const guint *)member;
}

void
spelch_field_choose (const SpelchField *field, guint choice, gpointer value)
{
  gpointer member = member_to_change (field, value);
  if (field->kind == SPELCH_FIELD_FLAG)
    *(bool *)member = choice != 0;
  else
    *(guint *)member = choice;
}

char *
spelch_field_reading (const SpelchField *field, const char *typed, const SpelchNumbers *numbers)
{
  SpelchLength length;
  char day[SPELCH_DATE_SIZE];
  if (field->is_past)
    return spelch_day_read (typed, spelch_day_example (), day, NULL) && !g_str_equal (typed, day)
               ? g_strdup_printf ("= %s", day)
               : NULL;
  if (field->kind != SPELCH_FIELD_LENGTH
      || !spelch_length_read (typed, numbers->unit, numbers->decimal_sign, &length, NULL))
    return NULL;
  g_autofree char *reading
      = spelch_length_format (length.mm, SPELCH_UNIT_MM, numbers->inch_style, 3, numbers->decimal_sign);
  SpelchLength read;
  bool known = spelch_length_parse (typed, SPELCH_UNIT_MM, &read, NULL) && read.mm == length.mm
               && strpbrk (typed, "/\"if'") == NULL;
  return known ? NULL : g_strdup_printf ("= %s", reading);
}

/* ---- Faults ---- */

static bool
is_word (char c)
{
  return g_ascii_isalnum (c) || c == '_';
}

/* The field whose member stands at @text, or -1. Where a member is an ordinary word too ("hand"), it is meant
 * only at the beginning or before its value in brackets. */
static int
member_at (const SpelchField *fields, guint n_fields, const char *text, const char *start)
{
  if (text > start && is_word (text[-1]))
    return -1;
  for (guint i = 0; i < n_fields; i++)
    {
      gsize length = fields[i].member == NULL ? 0 : strlen (fields[i].member);
      if (length == 0 || strncmp (text, fields[i].member, length) != 0 || is_word (text[length]))
        continue;
      if (text == start || g_str_has_prefix (text + length, " (") || strchr (fields[i].member, '_') != NULL)
        return (int)i;
    }
  return -1;
}

/* "[2]" after the name of a list counts from 0; people count from 1. Gives how much was read. */
static gsize
say_place (const char *text, GString *said)
{
  gsize digits = text[0] == '[' ? strspn (text + 1, "0123456789") : 0;
  if (digits == 0 || text[digits + 1] != ']')
    return 0;
  g_string_append_printf (said, " %" G_GUINT64_FORMAT, g_ascii_strtoull (text + 1, NULL, 10) + 1);
  return digits + 2;
}

char *
spelch_fields_say (const SpelchField *fields, guint n_fields, const char *fault, int *at)
{
  GString *said = g_string_new (NULL);
  if (at != NULL)
    *at = -1;
  for (const char *c = fault; *c != '\0';)
    {
      int found = member_at (fields, n_fields, c, fault);
      if (found < 0)
        {
          g_string_append_c (said, *c++);
          continue;
        }
      if (at != NULL && *at < 0)
        *at = found;
      g_string_append_printf (said, _ ("“%s”"), _ (fields[found].label));
      c += strlen (fields[found].member);
      c += say_place (c, said);
    }
  return g_string_free (said, FALSE);
}

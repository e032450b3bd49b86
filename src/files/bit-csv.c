/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/bit-csv.h"
#include "files/bit-names.h"
#include "files/csv-text.h"
#include "shop/number.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

typedef enum
{
  COLUMN_TEXT,
  COLUMN_LENGTH,
  COLUMN_NUMBER,
  COLUMN_WHOLE,
  COLUMN_CODE,
  COLUMN_FLAG,
} ColumnKind;

typedef struct
{
  const char *name;
  ColumnKind kind;
  gsize offset;
  gsize size;               /* TEXT */
  const SpelchCodes *codes; /* CODE */
  const char *const *names; /* CODE: what people call its values, by value */
  const char *label;        /* as the form of a bit calls it; NULL: it isn't there */
  const char *short_label;  /* and as it is usually shortened; may be NULL */
  bool needed;
  bool counted; /* NUMBER, WHOLE: usually a whole number in the trade */
} Column;

#define AT(member) G_STRUCT_OFFSET (SpelchBit, member)

static const Column COLUMNS[] = {
  { "id", COLUMN_TEXT, AT (id), SPELCH_ID_SIZE },
  { "name", COLUMN_TEXT, AT (name), SPELCH_NAME_SIZE, .label = N_ ("Name") },
  { "kind", COLUMN_CODE, AT (kind), .codes = &SPELCH_BIT_KIND_CODES, .needed = true, .label = N_ ("Kind"),
    .names = SPELCH_BIT_KIND_NAMES },
  { "diameter", COLUMN_LENGTH, AT (diameter), .needed = true, .label = N_ ("Diameter") },
  { "shank", COLUMN_LENGTH, AT (shank), .needed = true, .label = N_ ("Shank diameter"),
    .short_label = N_ ("Shank") },
  { "cutting_length", COLUMN_LENGTH, AT (cutting_length), .needed = true, .label = N_ ("Cutting length") },
  { "overall_length", COLUMN_LENGTH, AT (overall_length), .label = N_ ("Overall length") },
  { "up_shear", COLUMN_LENGTH, AT (up_shear), .label = N_ ("Up-shear length") },
  { "overlap", COLUMN_LENGTH, AT (overlap), .label = N_ ("Overlap at the turn-over") },
  { "neck", COLUMN_LENGTH, AT (neck), .label = N_ ("Neck diameter") },
  { "edges", COLUMN_WHOLE, AT (edges), .needed = true, .counted = true, .label = N_ ("Cutting edges") },
  { "edges_up", COLUMN_WHOLE, AT (edges_up), .counted = true, .label = N_ ("Edges near the tip") },
  { "helix_deg", COLUMN_NUMBER, AT (helix_deg), .label = N_ ("Helix") },
  { "rake_deg", COLUMN_NUMBER, AT (rake_deg), .label = N_ ("Rake") },
  { "hand", COLUMN_CODE, AT (hand), .codes = &SPELCH_HAND_CODES, .label = N_ ("Turns"),
    .names = SPELCH_HAND_NAMES },
  { "edge_material", COLUMN_CODE, AT (edge_material), .codes = &SPELCH_TOOL_MATERIAL_CODES,
    .label = N_ ("Edges of"), .names = SPELCH_EDGE_MATERIAL_NAMES },
  { "body_material", COLUMN_CODE, AT (body_material), .codes = &SPELCH_TOOL_MATERIAL_CODES,
    .label = N_ ("Body of"), .names = SPELCH_BODY_MATERIAL_NAMES },
  { "coated", COLUMN_FLAG, AT (coated), .label = N_ ("Coated") },
  { "end_cutting", COLUMN_FLAG, AT (end_cutting), .label = N_ ("Cuts at its end") },
  { "uncut_centre", COLUMN_LENGTH, AT (uncut_centre), .label = N_ ("Uncut centre") },
  { "end_hollow", COLUMN_LENGTH, AT (end_hollow), .label = N_ ("Height of the hollow") },
  { "bearing", COLUMN_CODE, AT (bearing), .codes = &SPELCH_BEARING_CODES, .label = N_ ("Bearing"),
    .names = SPELCH_BEARING_NAMES },
  { "max_rpm", COLUMN_NUMBER, AT (max_rpm), .counted = true, .label = N_ ("Highest speed marked") },
  { "hand_feed", COLUMN_FLAG, AT (hand_feed), .label = N_ ("Marked for feeding by hand") },
  { "price", COLUMN_NUMBER, AT (price), .label = N_ ("Price") },
  { "metres_cut", COLUMN_NUMBER, AT (metres_cut), .label = N_ ("Metres cut") },
  { "wear", COLUMN_CODE, AT (wear), .codes = &SPELCH_WEAR_CODES, .label = N_ ("State"),
    .names = SPELCH_WEAR_NAMES },
  { "sharpened", COLUMN_TEXT, AT (sharpened), SPELCH_DATE_SIZE, .label = N_ ("Sharpened on") },
  { "sharpened_diameter", COLUMN_LENGTH, AT (sharpened_diameter), .label = N_ ("Diameter after that") },
  { "sharpened_up_shear", COLUMN_LENGTH, AT (sharpened_up_shear),
    .label = N_ ("Up-shear length after that") },
  { "retired", COLUMN_FLAG, AT (retired) },
};

/* What stands between the values says what numbers are written with. */
static char
decimal_sign_of (char separator)
{
  return separator == ';' ? ',' : '.';
}

/* ---- Writing ---- */

/* As typed, but for the decimal sign where the table's own reader would take it for one between thousands. */
static char *
write_typed (const char *typed, char decimal_sign)
{
  SpelchLength read;
  char *text = g_strdup (typed);
  return spelch_length_read (typed, SPELCH_UNIT_MM, decimal_sign, &read, NULL)
             ? text
             : g_strdelimit (text, ".,", decimal_sign);
}

static char *
write_number (double number, char decimal_sign)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (text, sizeof text, "%.15g", number);
  if (g_ascii_strtod (text, NULL) != number)
    g_ascii_formatd (text, sizeof text, "%.17g", number);
  char *point = strchr (text, '.');
  if (point != NULL)
    *point = decimal_sign;
  return g_strdup (text);
}

static char *
write_value (const Column *column, const SpelchBit *bit, char decimal_sign)
{
  gconstpointer member = (const char *)bit + column->offset;
  switch (column->kind)
    {
    case COLUMN_TEXT:
      return g_strdup (member);
    case COLUMN_LENGTH:
      {
        const SpelchLength *length = member;
        if (length->mm == 0)
          return g_strdup ("");
        /* Bare numbers are millimetres; what was typed with its unit stays so. */
        bool has_unit = strpbrk (length->typed, "/\"'mcin") != NULL;
        return has_unit ? write_typed (length->typed, decimal_sign) : write_number (length->mm, decimal_sign);
      }
    case COLUMN_NUMBER:
      return *(const double *)member == 0 ? g_strdup ("")
                                          : write_number (*(const double *)member, decimal_sign);
    case COLUMN_WHOLE:
      return *(const int *)member == 0 ? g_strdup ("") : g_strdup_printf ("%d", *(const int *)member);
    case COLUMN_CODE:
      return g_strdup (spelch_code_of (column->codes, (int)*(const guint *)member));
    case COLUMN_FLAG:
    default:
      return g_strdup (*(const bool *)member ? "yes" : "");
    }
}

char *
spelch_bits_to_csv (const GArray *bits, char separator)
{
  GString *text = g_string_new (NULL);
  char decimal_sign = decimal_sign_of (separator);
  for (guint c = 0; c < G_N_ELEMENTS (COLUMNS); c++)
    g_string_append_printf (text, "%.*s%s", c > 0 ? 1 : 0, &separator, COLUMNS[c].name);
  g_string_append (text, "\r\n");
  for (guint i = 0; i < bits->len; i++)
    {
      for (guint c = 0; c < G_N_ELEMENTS (COLUMNS); c++)
        {
          g_autofree char *value
              = write_value (&COLUMNS[c], &g_array_index (bits, SpelchBit, i), decimal_sign);
          if (c > 0)
            g_string_append_c (text, separator);
          spelch_csv_append (text, value, separator);
        }
      g_string_append (text, "\r\n");
    }
  return g_string_free (text, FALSE);
}

/* ---- Reading one value: what is wrong with it and what to do, or NULL ---- */

static char *
read_text (const Column *column, const char *value, char *into)
{
  if (strlen (value) >= column->size)
    return g_strdup_printf (_ ("is too long; write at most %u letters."), (guint)column->size - 1);
  g_strlcpy (into, value, column->size);
  return NULL;
}

static bool
read_number (const char *value, char decimal_sign, double *number)
{
  g_autofree char *plain = g_strdelimit (g_strdup (value), ",", '.');
  char *end = NULL;
  *number = g_ascii_strtod (plain, &end);
  if (plain[strspn (plain, "+-.0123456789eE")] == '\0' && end != plain && *end == '\0' && isfinite (*number))
    return true;
  return spelch_number_parse (value, NULL, decimal_sign, number, NULL); /* "22 000" */
}

/* Whether both are the same, in capitals or not. */
static bool
same_word (const char *one, const char *other)
{
  g_autofree char *a = g_utf8_casefold (one, -1), *b = g_utf8_casefold (other, -1);
  return g_str_equal (a, b);
}

/* By its code, or by its name in English or in the language that is spoken. */
static bool
find_code (const Column *column, const char *value, int *code)
{
  for (int i = 0; column->names != NULL && column->names[i] != NULL; i++)
    if (same_word (column->names[i], value) || same_word (_ (column->names[i]), value))
      {
        *code = i;
        return true;
      }
  return spelch_code_read (column->codes, value, code);
}

static char *
list_names (const Column *column)
{
  GString *known = g_string_new (NULL);
  for (guint i = 0; column->names[i] != NULL; i++)
    g_string_append_printf (known, "%s%s", i > 0 ? ", " : "", _ (column->names[i]));
  return g_string_free (known, FALSE);
}

static char *
read_code (const Column *column, const char *value, guint *into)
{
  int code = 0;
  if (!find_code (column, value, &code))
    {
      g_autofree char *known = list_names (column);
      return g_strdup_printf (_ ("isn't one of: %s."), known);
    }
  *into = (guint)code;
  return NULL;
}

static char *
read_flag (const char *value, bool *into)
{
  static const char *const YES[] = { "yes", "true", "1", NULL }, *const NO[] = { "no", "false", "0", NULL };
  g_autofree char *lower = g_ascii_strdown (value, -1);
  *into = g_strv_contains (YES, lower);
  return *into || g_strv_contains (NO, lower) ? NULL : g_strdup (_ ("isn't yes or no."));
}

/* What it isn't, after its name. */
static char *
read_value (const Column *column, const char *value, char decimal_sign, SpelchBit *bit)
{
  gpointer member = (char *)bit + column->offset;
  double number = 0;
  g_autoptr (GError) error = NULL;
  switch (column->kind)
    {
    case COLUMN_TEXT:
      return read_text (column, value, member);
    case COLUMN_LENGTH:
      if (spelch_length_read (value, SPELCH_UNIT_MM, decimal_sign, member, &error))
        return NULL;
      return g_strdup (error->message);
    case COLUMN_NUMBER:
      if (!read_number (value, decimal_sign, member))
        return g_strdup (_ ("isn't a number; write it without a unit."));
      return NULL;
    case COLUMN_WHOLE:
      if (!read_number (value, decimal_sign, &number) || number != floor (number) || fabs (number) > 1000)
        return g_strdup (_ ("isn't a whole number."));
      *(int *)member = (int)number;
      return NULL;
    case COLUMN_CODE:
      return read_code (column, value, member);
    case COLUMN_FLAG:
    default:
      return read_flag (value, member);
    }
}

/* What is wrong with a value, as a sentence; NULL: nothing. */
static char *
complaint (const Column *column, const char *value, char decimal_sign, SpelchBit *bit)
{
  bool figure = column->kind == COLUMN_NUMBER || column->kind == COLUMN_WHOLE;
  g_autoptr (GError) doubt = NULL;
  if (value == NULL || value[0] == '\0')
    return column->needed ? g_strdup (_ ("nothing stands there, but every bit needs it.")) : NULL;
  if (figure && !spelch_number_is_plain (value, column->counted, decimal_sign, &doubt))
    return g_strdup (doubt->message);
  g_autofree char *wrong = read_value (column, value, decimal_sign, bit);
  /* What is wrong with a length names it already. */
  if (wrong == NULL || column->kind == COLUMN_LENGTH)
    return g_steal_pointer (&wrong);
  return g_strdup_printf (_ ("“%s” %s"), value, wrong);
}

/* ---- Reading the table ---- */

typedef struct
{
  SpelchBitTable *table;
  GPtrArray *columns; /* Column, NULL for those not known */
  GHashTable *ids;    /* of the bits so far */
  char decimal_sign;
} Reading;

G_GNUC_PRINTF (2, 3)
static void
tell (SpelchBitTable *table, const char *format, ...)
{
  va_list values;
  va_start (values, format);
  g_ptr_array_add (table->problems, g_strdup_vprintf (format, values));
  va_end (values);
}

static bool
is_labelled (const char *label, const char *name)
{
  return label != NULL && (same_word (label, name) || same_word (_ (label), name));
}

/* By its member of a bit, or as the form of a bit calls it. */
static const Column *
column_named (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (COLUMNS); i++)
    if (same_word (COLUMNS[i].name, name) || is_labelled (COLUMNS[i].label, name)
        || is_labelled (COLUMNS[i].short_label, name))
      return &COLUMNS[i];
  return NULL;
}

static const char *
shown_name (const Column *column)
{
  return column->label == NULL ? column->name : _ (column->label);
}

static void
tell_columns (SpelchBitTable *table)
{
  g_autoptr (GString) known = g_string_new (NULL);
  for (guint i = 0; i < G_N_ELEMENTS (COLUMNS); i++)
    g_string_append_printf (known, "%s%s", i > 0 ? ", " : "", shown_name (&COLUMNS[i]));
  tell (table, _ ("These columns are known: %s."), known->str);
}

/* The columns that the first row names, NULL for those not known. False when the table can't be read without
 * one that is missing. */
static bool
read_header (SpelchBitTable *table, const SpelchCsvRow *row, GPtrArray *columns)
{
  bool all = true, unknown = false;
  for (guint i = 0; i < row->values->len; i++)
    {
      char *name = g_strstrip (g_ptr_array_index (row->values, i));
      const Column *column = column_named (name);
      bool twice = column != NULL && g_ptr_array_find (columns, column, NULL);
      if (twice)
        tell (table, _ ("Column “%s” stands twice; the first one was read."), name);
      else if (column == NULL && name[0] != '\0')
        {
          tell (table, _ ("Column “%s” isn't known; what stands in it was left out."), name);
          unknown = true;
        }
      g_ptr_array_add (columns, twice ? NULL : (gpointer)column);
    }
  for (guint i = 0; i < G_N_ELEMENTS (COLUMNS); i++)
    if (COLUMNS[i].needed && !g_ptr_array_find (columns, &COLUMNS[i], NULL))
      {
        tell (table, _ ("Column “%s” is missing, so nothing was read; name it in the first line."),
              shown_name (&COLUMNS[i]));
        all = false;
      }
  if (unknown || !all)
    tell_columns (table);
  return all;
}

static bool
read_places (const Reading *reading, const SpelchCsvRow *row, SpelchBit *bit)
{
  bool all = true;
  for (guint i = 0; i < reading->columns->len; i++)
    {
      const Column *column = g_ptr_array_index (reading->columns, i);
      char *value = i < row->values->len ? g_strstrip (g_ptr_array_index (row->values, i)) : NULL;
      g_autofree char *wrong = column == NULL ? NULL : complaint (column, value, reading->decimal_sign, bit);
      if (wrong == NULL)
        continue;
      tell (reading->table, _ ("Line %u, column %s: %s The line was left out."), row->line, column->name,
            wrong);
      all = false;
    }
  return all;
}

static bool
read_row (const Reading *reading, const SpelchCsvRow *row)
{
  SpelchBitTable *table = reading->table;
  SpelchBit bit = { .wear = SPELCH_WEAR_SHARP }; /* unless it is told */
  if (row->torn || row->values->len > reading->columns->len)
    {
      tell (table,
            row->torn ? _ ("Line %u: a quote isn't closed where it should be. The line was left out.")
                      : _ ("Line %u has more values than there are columns; put quotes about a value "
                           "that holds a separator. The line was left out."),
            row->line);
      return false;
    }
  if (!read_places (reading, row, &bit))
    return false;
  bool no_id = bit.id[0] == '\0';
  if (bit.name[0] == '\0')
    g_strlcpy (bit.name, no_id ? spelch_code_of (&SPELCH_BIT_KIND_CODES, (int)bit.kind) : bit.id,
               sizeof bit.name);
  if (no_id)
    g_strlcpy (bit.id, "untold", sizeof bit.id);
  g_autofree char *fault = spelch_bit_fault (&bit);
  bool again = fault == NULL && !no_id && !g_hash_table_add (reading->ids, g_strdup (bit.id));
  if (fault != NULL || again)
    {
      tell (table, _ ("Line %u, “%s”: %s The line was left out."), row->line, bit.name,
            fault != NULL ? fault : _ ("id stands twice in the table."));
      return false;
    }
  if (no_id)
    bit.id[0] = '\0';
  g_array_append_val (table->bits, bit);
  return true;
}

static void
read_rows (SpelchBitTable *table, const char *text)
{
  char separator = spelch_csv_separator (text);
  g_autoptr (GPtrArray) rows = spelch_csv_rows (text, separator);
  g_autoptr (GPtrArray) columns = g_ptr_array_new ();
  g_autoptr (GHashTable) ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  if (rows->len == 0)
    {
      tell (table, "%s", _ ("The file is empty."));
      return;
    }
  table->n_rows = rows->len - 1;
  if (!read_header (table, g_ptr_array_index (rows, 0), columns))
    return;
  Reading reading = { table, columns, ids, decimal_sign_of (separator) };
  for (guint i = 1; i < rows->len; i++)
    read_row (&reading, g_ptr_array_index (rows, i));
}

SpelchBitTable *
spelch_bits_from_csv (const char *text, gsize length)
{
  SpelchBitTable *table = g_new0 (SpelchBitTable, 1);
  table->bits = g_array_new (FALSE, TRUE, sizeof (SpelchBit));
  table->problems = g_ptr_array_new_with_free_func (g_free);
  if (length >= 3 && memcmp (text, "\xEF\xBB\xBF", 3) == 0)
    {
      text += 3; /* the mark that spreadsheets put before UTF-8 */
      length -= 3;
    }
  g_autofree char *whole = g_strndup (text, length);
  if (!g_utf8_validate (text, (gssize)length, NULL))
    tell (table, "%s", _ ("The file isn't UTF-8 text; save it from the spreadsheet as UTF-8."));
  else
    read_rows (table, whole);
  return table;
}

void
spelch_bit_table_free (SpelchBitTable *table)
{
  if (table == NULL)
    return;
  g_array_unref (table->bits);
  g_ptr_array_unref (table->problems);
  g_free (table);
}

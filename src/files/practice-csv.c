/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/practice-csv.h"

#include "files/csv-text.h"

#include <glib/gi18n-lib.h>

typedef enum
{
  COLUMN_LEARNER,
  COLUMN_EXERCISE,
  COLUMN_SEED,
  COLUMN_FOLLOW_UP,
  COLUMN_ANSWER,
  COLUMN_RIGHT,
  COLUMN_WHEN,
  COLUMN_VERSION,
  N_COLUMNS,
} Column;

static const char *const NAMES[N_COLUMNS]
    = { "learner", "exercise", "seed", "follow_up", "answer", "right", "when", "model_version" };
static const Column NEEDED[] = { COLUMN_LEARNER, COLUMN_EXERCISE, COLUMN_SEED, COLUMN_ANSWER };

/* ---- Writing ---- */

static void
add (GString *text, const char *value, char separator, bool first)
{
  if (!first)
    g_string_append_c (text, separator);
  spelch_csv_append_plain (text, value, separator);
}

static void
add_head (GString *text, char separator)
{
  for (int c = 0; c < N_COLUMNS; c++)
    add (text, NAMES[c], separator, c == 0);
}

static void
add_attempt (GString *text, const SpelchAttempt *attempt, char separator)
{
  g_autofree char *seed = g_strdup_printf ("%u", attempt->seed);
  const char *const values[N_COLUMNS] = { attempt->learner,
                                          attempt->exercise,
                                          seed,
                                          attempt->follow_up ? "yes" : "no",
                                          attempt->answer,
                                          attempt->right ? "yes" : "no",
                                          attempt->when,
                                          attempt->model_version };
  for (int c = 0; c < N_COLUMNS; c++)
    add (text, values[c], separator, c == 0);
}

char *
spelch_attempts_to_csv (const GArray *attempts, const char *learner, char separator)
{
  GString *text = g_string_new (NULL);
  add_head (text, separator);
  g_string_append (text, "\r\n");
  for (guint i = 0; i < attempts->len; i++)
    {
      const SpelchAttempt *attempt = &g_array_index (attempts, SpelchAttempt, i);
      if (learner != NULL && !g_str_equal (attempt->learner, learner))
        continue;
      add_attempt (text, attempt, separator);
      g_string_append (text, "\r\n");
    }
  return g_string_free (text, FALSE);
}

char *
spelch_marked_to_csv (const GArray *marked, char separator)
{
  GString *text = g_string_new (NULL);
  add_head (text, separator);
  add (text, "right_answer", separator, false);
  add (text, "remark", separator, false);
  g_string_append (text, "\r\n");
  for (guint i = 0; i < marked->len; i++)
    {
      const SpelchMarked *one = &g_array_index (marked, SpelchMarked, i);
      add_attempt (text, &one->attempt, separator);
      add (text, one->right_answer, separator, false);
      add (text, one->remark != NULL ? one->remark : "", separator, false);
      g_string_append (text, "\r\n");
    }
  return g_string_free (text, FALSE);
}

/* ---- Reading ---- */

static void
marked_clear (gpointer data)
{
  g_free (((SpelchMarked *)data)->remark);
}

/* The value of a column in a row, without the apostrophe that guards it; "" where there is none. */
static const char *
value_in (const SpelchCsvRow *row, const int *places, Column column)
{
  int place = places[column];
  const char *value = place >= 0 && (guint)place < row->values->len ? row->values->pdata[place] : "";
  return value[0] == '\'' && spelch_csv_is_formula (value + 1) ? value + 1 : value;
}

/* Takes a text as it stands, less the white space at its ends; false when there is no room for it. */
static bool
take_text (const char *value, char *into, gsize size)
{
  g_autofree char *plain = g_strstrip (g_strdup (value));
  return g_strlcpy (into, plain, size) < size;
}

/* yes, no, or nothing; also as spreadsheets write them. */
static bool
take_flag (const char *value, bool *into, bool *told)
{
  g_autofree char *plain = g_strstrip (g_ascii_strdown (value, -1));
  bool yes = g_str_equal (plain, "yes") || g_str_equal (plain, "true") || g_str_equal (plain, "1");
  bool no = g_str_equal (plain, "no") || g_str_equal (plain, "false") || g_str_equal (plain, "0");
  *into = yes;
  *told = yes || no;
  return yes || no || *plain == '\0';
}

static bool
take_seed (const char *value, guint32 *seed)
{
  g_autofree char *plain = g_strstrip (g_strdup (value));
  guint64 number = 0;
  bool whole = g_ascii_string_to_unsigned (plain, 10, 0, G_MAXINT, &number, NULL);
  *seed = (guint32)number;
  return whole;
}

static char *
refuse (const SpelchCsvRow *row, const int *places, Column column)
{
  return g_strdup_printf (_ ("Line %u: %s is \"%s\", which can't be taken."), row->line, NAMES[column],
                          value_in (row, places, column));
}

/* What can't be taken of a row, as a sentence; NULL when all is read. */
static char *
read_row (const SpelchCsvRow *row, const int *places, SpelchMarked *marked)
{
  SpelchAttempt *attempt = &marked->attempt;
  bool told;
  if (row->torn)
    return g_strdup_printf (_ ("Line %u: a quote isn't closed."), row->line);
  if (!take_text (value_in (row, places, COLUMN_LEARNER), attempt->learner, sizeof attempt->learner))
    return refuse (row, places, COLUMN_LEARNER);
  if (!take_text (value_in (row, places, COLUMN_EXERCISE), attempt->exercise, sizeof attempt->exercise))
    return refuse (row, places, COLUMN_EXERCISE);
  if (!take_seed (value_in (row, places, COLUMN_SEED), &attempt->seed))
    return refuse (row, places, COLUMN_SEED);
  if (!take_flag (value_in (row, places, COLUMN_FOLLOW_UP), &attempt->follow_up, &told))
    return refuse (row, places, COLUMN_FOLLOW_UP);
  if (!take_text (value_in (row, places, COLUMN_ANSWER), attempt->answer, sizeof attempt->answer))
    return refuse (row, places, COLUMN_ANSWER);
  if (!take_flag (value_in (row, places, COLUMN_RIGHT), &marked->was, &marked->was_told))
    return refuse (row, places, COLUMN_RIGHT);
  if (!take_text (value_in (row, places, COLUMN_WHEN), attempt->when, sizeof attempt->when))
    return refuse (row, places, COLUMN_WHEN);
  take_text (value_in (row, places, COLUMN_VERSION), attempt->model_version, sizeof attempt->model_version);
  g_autofree char *fault = spelch_attempt_fault (attempt);
  return fault == NULL ? NULL : g_strdup_printf (_ ("Line %u: %s"), row->line, fault);
}

/* Where each column stands; false, with a sentence, when one that is needed doesn't. */
static bool
find_columns (const SpelchCsvRow *head, int *places, GPtrArray *problems)
{
  for (int c = 0; c < N_COLUMNS; c++)
    {
      places[c] = -1;
      for (guint i = 0; i < head->values->len; i++)
        {
          g_autofree char *name = g_strstrip (g_ascii_strdown (head->values->pdata[i], -1));
          if (g_str_equal (name, NAMES[c]))
            places[c] = (int)i;
        }
    }
  for (guint i = 0; i < G_N_ELEMENTS (NEEDED); i++)
    if (places[NEEDED[i]] < 0)
      {
        /* TRANSLATORS: the missing column, then all that are needed */
        g_ptr_array_add (
            problems, g_strdup_printf (_ ("Line 1: no column is called \"%s\"; the first line of the table "
                                          "has to name its columns, %s, %s, %s and %s at the least."),
                                       NAMES[NEEDED[i]], NAMES[NEEDED[0]], NAMES[NEEDED[1]], NAMES[NEEDED[2]],
                                       NAMES[NEEDED[3]]));
        return false;
      }
  return true;
}

static GArray *
nothing_marked (void)
{
  GArray *marked = g_array_new (FALSE, TRUE, sizeof (SpelchMarked));
  g_array_set_clear_func (marked, marked_clear);
  return marked;
}

GArray *
spelch_marked_of (const GArray *attempts)
{
  GArray *marked = nothing_marked ();
  for (guint i = 0; i < attempts->len; i++)
    {
      SpelchMarked one = { .attempt = g_array_index (attempts, SpelchAttempt, i), .was_told = true };
      one.was = one.attempt.right;
      g_array_append_val (marked, one);
    }
  return marked;
}

GArray *
spelch_attempts_from_csv (const char *text, gsize length, GPtrArray *problems)
{
  GArray *marked = nothing_marked ();
  int places[N_COLUMNS];
  if (!g_utf8_validate (text, (gssize)length, NULL))
    {
      g_ptr_array_add (problems, g_strdup (_ ("The table isn't UTF-8 text; save it as such.")));
      return marked;
    }
  if (g_str_has_prefix (text, "\xef\xbb\xbf"))
    text += 3;
  g_autoptr (GPtrArray) rows = spelch_csv_rows (text, spelch_csv_separator (text));
  if (rows->len == 0)
    g_ptr_array_add (problems, g_strdup (_ ("The table is empty.")));
  if (rows->len == 0 || !find_columns (rows->pdata[0], places, problems))
    return marked;
  for (guint i = 1; i < rows->len; i++)
    {
      SpelchMarked one = { 0 };
      char *problem = read_row (rows->pdata[i], places, &one);
      if (problem != NULL)
        g_ptr_array_add (problems, problem);
      else
        g_array_append_val (marked, one);
    }
  return marked;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/practice-marks.h"

#include "command/asked.h"
#include "command/commands.h"
#include "files/file-io.h"
#include "files/json-text.h"
#include "files/practice-csv.h"
#include "files/practice-data.h"
#include "files/practice-log.h"
#include "files/shop-data.h"

#include <glib/gi18n.h>
#include <string.h>

static GFile *
log_file (const SpelchPracticeAsked *asked)
{
  return asked->log != NULL ? g_file_new_for_commandline_arg (asked->log) : spelch_practice_log_own ();
}

/* Spreadsheets take semicolons where the decimal sign is a comma. */
static char
separator (const SpelchPracticeAsked *asked)
{
  return asked->numbers.decimal_sign == ',' ? ';' : ',';
}

/* Writes a table to where it was asked for, and frees it. */
static int
write_table (const SpelchPracticeAsked *asked, char *table)
{
  g_autofree char *text = table;
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) file = asked->output == NULL ? NULL : g_file_new_for_commandline_arg (asked->output);
  if (file == NULL)
    g_print ("%s", text);
  else if (!spelch_file_save_bytes (file, text, strlen (text), &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_NOT_WRITTEN);
  return SPELCH_EXIT_DONE;
}

int
spelch_practice_keep (const SpelchPracticeAsked *asked, const SpelchPosed *posed, const SpelchGiven *given)
{
  SpelchAttempt attempt;
  g_autoptr (GFile) file = log_file (asked);
  g_autoptr (GError) error = NULL;
  if (asked->learner == NULL)
    return SPELCH_EXIT_DONE;
  spelch_posed_attempt (posed, given, asked->learner, &attempt);
  spelch_attempt_now (attempt.when);
  g_autofree char *fault = spelch_attempt_fault (&attempt);
  if (fault != NULL)
    return spelch_command_fail (fault, SPELCH_EXIT_BAD_INPUT);
  return spelch_practice_log_add (file, &attempt, &error)
             ? SPELCH_EXIT_DONE
             : spelch_command_fail (error->message, SPELCH_EXIT_NOT_WRITTEN);
}

int
spelch_practice_progress (const SpelchPracticeAsked *asked)
{
  g_autoptr (GFile) file = log_file (asked);
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchPracticeLog) log = spelch_practice_log_load (file, NULL, &error);
  if (log == NULL)
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  return write_table (asked, spelch_attempts_to_csv (log->attempts, asked->learner, separator (asked)));
}

/* ---- Grading anew ---- */

static void
regrade_one (const SpelchPracticeAsked *asked, SpelchMarked *one)
{
  SpelchAttempt *attempt = &one->attempt;
  SpelchExercise *exercise = spelch_exercises_find (asked->exercises, attempt->exercise);
  if (exercise == NULL || (attempt->follow_up && !exercise->follow_up.told))
    {
      one->remark = g_strdup (exercise == NULL ? _ ("there is no such exercise") : _ ("it has no follow-up"));
      return;
    }
  g_autoptr (SpelchPosed) posed
      = spelch_posed_new (spelch_shop_constants (), exercise, attempt->seed, attempt->follow_up);
  SpelchGiven given = spelch_posed_grade (posed, attempt->answer, asked->numbers.unit);
  g_autofree char *right = spelch_posed_right_answer (posed);
  g_strlcpy (one->right_answer, right, sizeof one->right_answer);
  g_strlcpy (attempt->model_version, SPELCH_MODEL_VERSION, sizeof attempt->model_version);
  one->graded = given.understood;
  attempt->right = given.right;
  if (!given.understood)
    one->remark = g_strdup (_ ("the answer isn't understood"));
  else if (one->was_told && one->was != given.right)
    one->remark = g_strdup (given.right ? _ ("was graded not right") : _ ("was graded right"));
}

static void
say_summary (const GArray *marked)
{
  guint right = 0, changed = 0, ungraded = 0;
  for (guint i = 0; i < marked->len; i++)
    {
      const SpelchMarked *one = &g_array_index (marked, SpelchMarked, i);
      ungraded += one->graded ? 0 : 1;
      right += one->graded && one->attempt.right ? 1 : 0;
      changed += one->graded && one->was_told && one->was != one->attempt.right ? 1 : 0;
    }
  g_printerr (
      g_dngettext (GETTEXT_PACKAGE, "%u answer: %u right, %u graded otherwise than before, %u not graded.\n",
                   "%u answers: %u right, %u graded otherwise than before, %u not graded.\n", marked->len),
      marked->len, right, changed, ungraded);
}

static bool
is_log (const char *text, gsize length)
{
  g_autoptr (JsonNode) root = spelch_json_parse (text, length, "", NULL);
  return root != NULL && spelch_practice_log_is (json_node_get_object (root));
}

static GArray *
read_log (GFile *file, GError **error)
{
  g_autoptr (SpelchPracticeLog) log = spelch_practice_log_load (file, NULL, error);
  return log == NULL ? NULL : spelch_marked_of (log->attempts);
}

int
spelch_practice_regrade (const SpelchPracticeAsked *asked)
{
  g_autoptr (GFile) file = g_file_new_for_commandline_arg (asked->regrade);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *name = spelch_file_name (file);
  gsize length = 0;
  g_autofree char *text = spelch_file_read (file, &length, NULL, &error);
  g_autoptr (GArray) marked = text == NULL            ? NULL
                              : is_log (text, length) ? read_log (file, &error)
                                                      : spelch_attempts_from_csv (text, length, problems);
  if (marked == NULL)
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  for (guint i = 0; i < problems->len; i++)
    g_printerr ("spelch: %s: %s\n", name, (char *)problems->pdata[i]);
  if (marked->len == 0)
    return problems->len > 0 ? SPELCH_EXIT_BAD_INPUT : SPELCH_EXIT_DONE;
  for (guint i = 0; i < marked->len; i++)
    regrade_one (asked, &g_array_index (marked, SpelchMarked, i));
  int status = write_table (asked, spelch_marked_to_csv (marked, separator (asked)));
  say_summary (marked);
  return status == SPELCH_EXIT_DONE && problems->len > 0 ? SPELCH_EXIT_BAD_INPUT : status;
}

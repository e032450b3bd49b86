/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/practice-asked.h"

#include "command/asked.h"
#include "command/commands.h"
#include "files/exercise-file.h"
#include "files/practice-data.h"
#include "shop/decimal-sign.h"

#include <glib/gi18n.h>

/* Short enough to be copied from a sheet by hand. */
#define SEED_MOST 999999

void
spelch_practice_asked_clear (SpelchPracticeAsked *asked)
{
  char **texts[] = { &asked->show,  &asked->seed,   &asked->answer, &asked->learner, &asked->sheet,
                     &asked->paper, &asked->only,   &asked->asks,   &asked->level,   &asked->regrade,
                     &asked->log,   &asked->output, &asked->units };
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_clear_pointer (texts[i], g_free);
  g_clear_pointer (&asked->exercises, g_ptr_array_unref);
}

/* Says what is wrong; takes @sentence. */
static bool
refuse (char *sentence, int *status)
{
  *status = spelch_command_fail (sentence, SPELCH_EXIT_BAD_INPUT);
  g_free (sentence);
  return false;
}

static bool
read_whole (const char *option, const char *text, guint least, guint most, guint *value, int *status)
{
  guint64 number = 0;
  if (g_ascii_string_to_unsigned (text, 10, least, most, &number, NULL))
    {
      *value = (guint)number;
      return true;
    }
  return refuse (
      g_strdup_printf (_ ("%s “%s”: write a whole number from %u to %u."), option, text, least, most),
      status);
}

/* ---- Exercises ---- */

static bool
read_files (char **files, GPtrArray *exercises, int *status)
{
  for (guint i = 0; files[i] != NULL; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GFile) file = g_file_new_for_commandline_arg (files[i]);
      g_autoptr (SpelchExercise) exercise = spelch_exercise_load (file, &error);
      if (exercise == NULL)
        return refuse (g_strdup (error->message), status);
      spelch_exercises_put (exercises, exercise);
    }
  return true;
}

/* What can't be read of a person's own is said; the others are there all the same. */
static GPtrArray *
read_all (void)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  GPtrArray *exercises = spelch_exercises_all (problems);
  for (guint i = 0; i < problems->len; i++)
    g_printerr ("spelch: %s\n", (char *)problems->pdata[i]);
  return exercises;
}

/* Keeps those named; an unknown id is refused. */
static bool
keep_only (SpelchPracticeAsked *asked, int *status)
{
  g_auto (GStrv) ids = g_strsplit (asked->only, ",", -1);
  g_autoptr (GPtrArray) kept = spelch_exercises_new ();
  for (guint i = 0; ids[i] != NULL; i++)
    {
      SpelchExercise *exercise = spelch_exercises_find (asked->exercises, ids[i]);
      if (exercise == NULL)
        return refuse (g_strdup_printf (_ ("There is no exercise “%s”. See spelch practice --list."), ids[i]),
                       status);
      spelch_exercises_put (kept, exercise);
    }
  g_ptr_array_unref (asked->exercises);
  asked->exercises = g_steal_pointer (&kept);
  return true;
}

static bool
keep_asked (SpelchPracticeAsked *asked, int *status)
{
  int asks = -1;
  guint level = 0;
  g_autofree char *codes = spelch_codes_list (&SPELCH_ASKS_CODES);
  if (asked->only != NULL && !keep_only (asked, status))
    return false;
  if (asked->asks != NULL && !spelch_code_read (&SPELCH_ASKS_CODES, asked->asks, &asks))
    return refuse (g_strdup_printf (_ ("%s “%s”: write one of %s."), "--asks", asked->asks, codes), status);
  if (asked->level != NULL && !read_whole ("--level", asked->level, 1, SPELCH_LEVELS, &level, status))
    return false;
  for (guint i = 0; i < asked->exercises->len;)
    {
      const SpelchExercise *exercise = asked->exercises->pdata[i];
      bool wanted = (asks < 0 || (int)exercise->asks == asks) && (level == 0 || exercise->level == level);
      if (wanted)
        i++;
      else
        g_ptr_array_remove_index (asked->exercises, i);
    }
  return true;
}

/* ---- Options ---- */

static bool
read_values (SpelchPracticeAsked *asked, int *status)
{
  asked->drawn_by = 1 + g_random_int () % SEED_MOST;
  asked->numbers = (SpelchNumbers){ SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, spelch_decimal_sign () };
  if (asked->seed != NULL && !read_whole ("--seed", asked->seed, 0, SEED_MOST, &asked->drawn_by, status))
    return false;
  if (asked->units != NULL && !g_str_equal (asked->units, "mm") && !g_str_equal (asked->units, "in"))
    return refuse (g_strdup_printf (_ ("--units is “%s”; write mm or in."), asked->units), status);
  if (asked->paper != NULL && !g_str_equal (asked->paper, "a4") && !g_str_equal (asked->paper, "letter"))
    return refuse (g_strdup_printf (_ ("--paper is “%s”; write a4 or letter."), asked->paper), status);
  if (g_strcmp0 (asked->units, "in") == 0)
    asked->numbers.unit = SPELCH_UNIT_INCH;
  if ((asked->answer != NULL || asked->follow_up) && asked->show == NULL)
    return refuse (g_strdup (_ ("--answer and --follow-up go with --show ID. See spelch practice --help.")),
                   status);
  if (asked->answer != NULL && asked->seed == NULL)
    return refuse (g_strdup (_ ("--answer goes with the --seed N that its question was drawn by.")), status);
  return true;
}

static bool
parse (SpelchPracticeAsked *asked, int *argc, char ***argv, int *status)
{
  gboolean help = FALSE;
  const GOptionEntry entries[] = {
    { "help", 'h', 0, G_OPTION_ARG_NONE, &help, N_ ("show this"), NULL },
    { "list", 0, 0, G_OPTION_ARG_NONE, &asked->list, N_ ("list the exercises"), NULL },
    { "show", 0, 0, G_OPTION_ARG_STRING, &asked->show, N_ ("ask this one"), "ID" },
    { "seed", 0, 0, G_OPTION_ARG_STRING, &asked->seed, N_ ("draw its numbers by this seed, 0 to 999999"),
      "N" },
    { "follow-up", 0, 0, G_OPTION_ARG_NONE, &asked->follow_up, N_ ("ask its follow-up"), NULL },
    { "answer", 0, 0, G_OPTION_ARG_STRING, &asked->answer,
      N_ ("grade this answer, a choice's code or a depth, and say why"), "ANSWER" },
    { "reckoning", 0, 0, G_OPTION_ARG_NONE, &asked->reckoning,
      N_ ("with --answer: the full reckoning too, with its sources"), NULL },
    { "learner", 0, 0, G_OPTION_ARG_STRING, &asked->learner,
      N_ ("who answers: keep the answer under this name; with --progress, whose answers"), "NAME" },
    { "progress", 0, 0, G_OPTION_ARG_NONE, &asked->progress,
      N_ ("write the answers that were kept as a table (CSV)"), NULL },
    { "regrade", 0, 0, G_OPTION_ARG_FILENAME, &asked->regrade,
      N_ ("grade the answers of such a table, or of a kept file, again and write a table"), "FILE" },
    { "sheet", 0, 0, G_OPTION_ARG_FILENAME, &asked->sheet, N_ ("write a sheet of questions to print (PDF)"),
      "FILE" },
    { "answers", 0, 0, G_OPTION_ARG_NONE, &asked->answers, N_ ("with --sheet: the sheet of answers"), NULL },
    { "paper", 0, 0, G_OPTION_ARG_STRING, &asked->paper, N_ ("with --sheet: its size, a4 when left out"),
      "a4|letter" },
    { "only", 0, 0, G_OPTION_ARG_STRING, &asked->only, N_ ("only these exercises, with commas"), "ID,ID" },
    { "asks", 0, 0, G_OPTION_ARG_STRING, &asked->asks, N_ ("only this kind of question"), "KIND" },
    { "level", 0, 0, G_OPTION_ARG_STRING, &asked->level, N_ ("only this difficulty, 1 to 5"), "N" },
    { "log", 0, 0, G_OPTION_ARG_FILENAME, &asked->log, N_ ("keep answers in this file instead of your own"),
      "FILE" },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &asked->output, N_ ("write the table to this file"), "FILE" },
    { "units", 0, 0, G_OPTION_ARG_STRING, &asked->units,
      N_ ("how lengths are written; a bare number is read so too"), "mm|in" },
    { "json", 0, 0, G_OPTION_ARG_NONE, &asked->json, N_ ("print JSON"), NULL },
    G_OPTION_ENTRY_NULL
  };
  g_autoptr (GError) error = NULL;
  g_autoptr (GOptionContext) context = g_option_context_new ("[FILE…]");
  g_option_context_set_summary (
      context,
      _ ("Asks what a cut will do, and says why afterwards. Without files: the exercises that come with "
         "the program and your own."));
  g_option_context_set_help_enabled (context, FALSE);
  g_option_context_add_main_entries (context, entries, GETTEXT_PACKAGE);
  if (!g_option_context_parse (context, argc, argv, &error))
    return refuse (spelch_asked_see_help (error, "practice"), status);
  if (!help)
    return true;
  spelch_asked_help (context, "practice");
  *status = SPELCH_EXIT_DONE;
  return false;
}

bool
spelch_practice_asked_read (SpelchPracticeAsked *asked, int argc, char **argv, int *status)
{
  if (!parse (asked, &argc, &argv, status) || !read_values (asked, status))
    return false;
  asked->exercises = argc > 1 ? spelch_exercises_new () : read_all ();
  if (argc > 1 && !read_files (argv + 1, asked->exercises, status))
    return false;
  if (asked->show != NULL && spelch_exercises_find (asked->exercises, asked->show) == NULL)
    return refuse (
        g_strdup_printf (_ ("There is no exercise “%s”. See spelch practice --list."), asked->show), status);
  return keep_asked (asked, status);
}

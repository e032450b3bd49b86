/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/check-practice.h"

#include "command/asked.h"
#include "command/commands.h"
#include "command/unread-list.h"

#include "files/exercise-file.h"
#include "files/lesson-file.h"
#include "files/part-file.h"
#include "files/practice-data.h"
#include "files/practice-log.h"
#include "files/shop-data.h"
#include "plan/posed-sound.h"
#include "plan/words-posed.h"

#include <glib/gi18n.h>

#define SEEDS 200

/* What is wrong at the first seed where something is, as a sentence. */
static char *
doubt_sentence (const SpelchExercise *exercise, const SpelchSound *sound)
{
  g_autofree char *drawn = spelch_posed_drawn (exercise, sound->seed);
  const char *what = !sound->meant ? spelch_words_doubt (sound->doubt)
                     : exercise->follow_up.same
                         ? _ ("the answer changes, though \"same\" says that it stays")
                         : _ ("the answer stays the same; say so by \"same\": true, or change more");
  /* Translators: seed, what was drawn by it ("thickness=17.8"), and what is wrong. */
  return g_strdup_printf (sound->in_follow_up ? _ ("With seed %u (%s), in the follow-up: %s.")
                                              : _ ("With seed %u (%s): %s."),
                          sound->seed, drawn, what);
}

static void
print_exercise (const SpelchExercise *exercise, const SpelchSound *sound, const char *name)
{
  if (sound->n_doubts == 0)
    {
      g_print (g_dngettext (GETTEXT_PACKAGE,
                            "%s: in order: one right answer, whatever is drawn (%u draw tried).\n",
                            "%s: in order: one right answer, whatever is drawn (%u different draws tried).\n",
                            sound->draws),
               name, sound->draws);
      return;
    }
  g_autofree char *sentence = doubt_sentence (exercise, sound);
  g_print (_ ("%s: can be read, but not asked: of %u different draws %u have no clear answer.\n"), name,
           sound->draws, sound->n_doubts);
  g_print ("%s\n", sentence);
}

static void
print_exercise_json (const SpelchExercise *exercise, const SpelchSound *sound, const GPtrArray *unread)
{
  SpelchWriter *w = spelch_writer_new (NULL);
  g_autofree char *sentence = sound->n_doubts > 0 ? doubt_sentence (exercise, sound) : NULL;
  spelch_writer_text (w, "kind", "exercise");
  spelch_writer_number (w, "format_version", SPELCH_FORMAT_VERSION);
  spelch_writer_text (w, "exercise", exercise->id);
  spelch_writer_code (w, "asks", &SPELCH_ASKS_CODES, (int)exercise->asks);
  spelch_writer_number (w, "draws", sound->draws);
  spelch_writer_number (w, "doubts", sound->n_doubts);
  if (sentence != NULL)
    spelch_writer_text (w, "sentence", sentence);
  else
    spelch_writer_null (w, "sentence");
  spelch_unread_write (w, unread);
  g_autofree char *text = spelch_writer_end (w);
  g_print ("%s", text);
}

int
spelch_check_exercise (const char *text, gsize length, const char *name, gboolean json)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchExercise) exercise = spelch_exercise_from_json (text, length, name, &error);
  g_autoptr (GPtrArray) unread = spelch_exercise_unread (text, length, name);
  if (exercise == NULL)
    return spelch_unread_refuse (unread, error, json);
  SpelchSound sound = spelch_posed_sound (spelch_shop_constants (), exercise, SEEDS);
  if (json)
    print_exercise_json (exercise, &sound, unread);
  else
    {
      print_exercise (exercise, &sound, name);
      spelch_unread_print (unread);
    }
  return sound.n_doubts == 0 ? SPELCH_EXIT_DONE : SPELCH_EXIT_BAD_INPUT;
}

/* The first step whose exercise isn't among those there are; n_steps when all are. */
static guint
find_missing (const SpelchLesson *lesson, const GPtrArray *exercises)
{
  guint i = 0;
  while (i < lesson->n_steps && spelch_exercises_find (exercises, lesson->steps[i].exercise) != NULL)
    i++;
  return i;
}

int
spelch_check_lesson (const char *text, gsize length, const char *name, gboolean json)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchLesson) lesson = spelch_lesson_from_json (text, length, name, &error);
  g_autoptr (GPtrArray) unread = spelch_lesson_unread (text, length, name);
  g_autoptr (GPtrArray) exercises = spelch_exercises_all (NULL);
  if (lesson == NULL)
    return spelch_unread_refuse (unread, error, json);
  guint missing = find_missing (lesson, exercises);
  if (missing < lesson->n_steps)
    {
      g_autofree char *sentence = g_strdup_printf (_ ("%s: steps[%u]: there is no exercise “%s”, neither "
                                                      "among those of the program nor among your own."),
                                                   name, missing, lesson->steps[missing].exercise);
      return spelch_command_fail (sentence, SPELCH_EXIT_BAD_INPUT);
    }
  if (json)
    {
      SpelchWriter *w = spelch_writer_new (NULL);
      spelch_writer_text (w, "kind", "lesson");
      spelch_writer_number (w, "format_version", SPELCH_FORMAT_VERSION);
      spelch_writer_number (w, "steps", lesson->n_steps);
      spelch_unread_write (w, unread);
      g_autofree char *out = spelch_writer_end (w);
      g_print ("%s", out);
      return SPELCH_EXIT_DONE;
    }
  g_print (
      g_dngettext (GETTEXT_PACKAGE, "%s: in order, %u step.\n", "%s: in order, %u steps.\n", lesson->n_steps),
      name, lesson->n_steps);
  spelch_unread_print (unread);
  return SPELCH_EXIT_DONE;
}

int
spelch_check_practice_log (GFile *file, const char *name, gboolean json)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchPracticeLog) log = spelch_practice_log_load (file, NULL, &error);
  if (log == NULL)
    return spelch_command_fail (error->message, SPELCH_EXIT_BAD_INPUT);
  if (json)
    {
      SpelchWriter *w = spelch_writer_new (NULL);
      spelch_writer_text (w, "kind", "practice");
      spelch_writer_number (w, "format_version", SPELCH_FORMAT_VERSION);
      spelch_writer_number (w, "answers", log->attempts->len);
      g_autofree char *out = spelch_writer_end (w);
      g_print ("%s", out);
      return SPELCH_EXIT_DONE;
    }
  g_print (g_dngettext (GETTEXT_PACKAGE, "%s: in order, %u answer.\n", "%s: in order, %u answers.\n",
                        log->attempts->len),
           name, log->attempts->len);
  return SPELCH_EXIT_DONE;
}

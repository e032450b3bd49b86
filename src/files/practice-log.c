/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/practice-log.h"

#include "files/json-fields.h"
#include "files/json-text.h"
#include "files/json-writer.h"
#include "files/log-text.h"
#include "files/part-file.h"

#define ATTEMPTS_MOST 10000

/* How often it is tried anew when another program was quicker. */
#define TRIES 5

static const char *const NEEDED[] = { "format_version", "practice", NULL };
static const char *const PLACE_NEEDS[] = { "learner", "lesson", "exercise", "seed", NULL };
static const char *const ATTEMPT_NEEDS[] = { "learner", "exercise", "seed", "answer", "right", NULL };

SpelchPracticeLog *
spelch_practice_log_new (void)
{
  SpelchPracticeLog *log = g_new (SpelchPracticeLog, 1);
  log->attempts = g_array_new (FALSE, TRUE, sizeof (SpelchAttempt));
  log->places = g_array_new (FALSE, TRUE, sizeof (SpelchLessonPlace));
  log->unknown = spelch_log_text_unknown ();
  return log;
}

void
spelch_practice_log_free (SpelchPracticeLog *log)
{
  g_array_unref (log->attempts);
  g_array_unref (log->places);
  g_hash_table_unref (log->unknown);
  g_free (log);
}

GFile *
spelch_practice_log_own (void)
{
  g_autofree char *path = g_build_filename (g_get_user_data_dir (), "spelch", "practice.json", NULL);
  return g_file_new_for_path (path);
}

gboolean
spelch_practice_log_is (JsonObject *root)
{
  return json_object_has_member (root, "practice");
}

/* ---- Reading ---- */

static SpelchAttempt
read_attempt (SpelchFields *fields)
{
  SpelchAttempt attempt = { 0 };
  spelch_fields_need (fields, ATTEMPT_NEEDS);
  spelch_fields_text (fields, "learner", attempt.learner, sizeof attempt.learner);
  spelch_fields_text (fields, "exercise", attempt.exercise, sizeof attempt.exercise);
  attempt.seed = spelch_fields_whole (fields, "seed", 0, 0, G_MAXINT);
  attempt.follow_up = spelch_fields_flag (fields, "follow_up", false);
  spelch_fields_text (fields, "answer", attempt.answer, sizeof attempt.answer);
  attempt.right = spelch_fields_flag (fields, "right", false);
  spelch_fields_text (fields, "when", attempt.when, sizeof attempt.when);
  spelch_fields_text (fields, "model_version", attempt.model_version, sizeof attempt.model_version);
  return attempt;
}

static void
read_attempts (SpelchFields *fields, SpelchReading *reading, GArray *attempts)
{
  guint n = spelch_fields_count (fields, "practice", ATTEMPTS_MOST);
  for (guint i = 0; i < n && reading->error == NULL; i++)
    {
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, "practice", i);
      if (item == NULL)
        continue;
      SpelchAttempt attempt = read_attempt (item);
      g_autofree char *fault = reading->error == NULL ? spelch_attempt_fault (&attempt) : NULL;
      if (fault != NULL)
        spelch_reading_fault (reading, g_strdup_printf ("practice[%u]: %s", i, fault));
      g_array_append_val (attempts, attempt);
    }
}

static SpelchLessonPlace
read_place (SpelchFields *fields)
{
  SpelchLessonPlace place = { 0 };
  spelch_fields_need (fields, PLACE_NEEDS);
  spelch_fields_text (fields, "learner", place.learner, sizeof place.learner);
  spelch_fields_text (fields, "lesson", place.lesson, sizeof place.lesson);
  spelch_fields_text (fields, "exercise", place.exercise, sizeof place.exercise);
  place.seed = spelch_fields_whole (fields, "seed", 0, 0, G_MAXINT);
  place.told = spelch_fields_flag (fields, "told", false);
  place.follow_up = spelch_fields_flag (fields, "follow_up", false);
  place.finished = spelch_fields_flag (fields, "finished", false);
  return place;
}

static void
read_places (SpelchFields *fields, SpelchReading *reading, GArray *places)
{
  guint n = spelch_fields_count (fields, "lessons", ATTEMPTS_MOST);
  for (guint i = 0; i < n && reading->error == NULL; i++)
    {
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, "lessons", i);
      if (item == NULL)
        continue;
      SpelchLessonPlace place = read_place (item);
      g_autofree char *fault = reading->error == NULL ? spelch_lesson_place_fault (&place) : NULL;
      if (fault != NULL)
        spelch_reading_fault (reading, g_strdup_printf ("lessons[%u]: %s", i, fault));
      g_array_append_val (places, place);
    }
}

static gpointer
read_log (const char *text, gsize length, const char *name, GError **error)
{
  g_autoptr (JsonNode) root = spelch_json_parse (text, length, name, error);
  if (root == NULL)
    return NULL;
  g_autoptr (SpelchPracticeLog) log = spelch_practice_log_new ();
  SpelchReading reading = { .name = name, .unknown = log->unknown };
  g_autoptr (SpelchFields) fields = spelch_fields_root (&reading, root);
  spelch_fields_need (fields, NEEDED);
  spelch_fields_format (fields, SPELCH_FORMAT_VERSION);
  read_attempts (fields, &reading, log->attempts);
  read_places (fields, &reading, log->places);
  g_clear_pointer (&fields, spelch_fields_done);
  if (reading.error == NULL)
    return g_steal_pointer (&log);
  g_propagate_error (error, reading.error);
  return NULL;
}

SpelchPracticeLog *
spelch_practice_log_load (GFile *file, char **etag, GError **error)
{
  if (!g_file_query_exists (file, NULL))
    return spelch_practice_log_new ();
  return spelch_log_text_load (file, read_log, etag, error);
}

/* ---- Writing ---- */

static void
write_attempt (SpelchWriter *w, const SpelchAttempt *attempt)
{
  spelch_writer_text (w, "learner", attempt->learner);
  spelch_writer_text (w, "exercise", attempt->exercise);
  spelch_writer_number (w, "seed", attempt->seed);
  spelch_writer_flag_told (w, "follow_up", attempt->follow_up);
  spelch_writer_text (w, "answer", attempt->answer);
  spelch_writer_flag (w, "right", attempt->right);
  spelch_writer_text_told (w, "when", attempt->when);
  spelch_writer_text_told (w, "model_version", attempt->model_version);
}

static void
write_place (SpelchWriter *w, const SpelchLessonPlace *place)
{
  spelch_writer_text (w, "learner", place->learner);
  spelch_writer_text (w, "lesson", place->lesson);
  spelch_writer_text (w, "exercise", place->exercise);
  spelch_writer_number (w, "seed", place->seed);
  spelch_writer_flag_told (w, "told", place->told);
  spelch_writer_flag_told (w, "follow_up", place->follow_up);
  spelch_writer_flag_told (w, "finished", place->finished);
}

static void
write_places (SpelchWriter *w, const GArray *places)
{
  if (places->len == 0)
    return;
  spelch_writer_open_list (w, "lessons");
  for (guint i = 0; i < places->len; i++)
    {
      spelch_writer_open_item (w, NULL, true);
      write_place (w, &g_array_index (places, SpelchLessonPlace, i));
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
}

static char *
log_text (const SpelchPracticeLog *log)
{
  SpelchWriter *w = spelch_writer_new (log->unknown);
  spelch_writer_number (w, "format_version", SPELCH_FORMAT_VERSION);
  spelch_writer_open_list (w, "practice");
  for (guint i = 0; i < log->attempts->len; i++)
    {
      spelch_writer_open_item (w, NULL, true);
      write_attempt (w, &g_array_index (log->attempts, SpelchAttempt, i));
      spelch_writer_close (w);
    }
  spelch_writer_close (w);
  write_places (w, log->places);
  return spelch_writer_end (w);
}

static gboolean
save (const SpelchPracticeLog *log, GFile *file, const char *etag, GError **error)
{
  g_autofree char *text = log_text (log);
  bool full = log->attempts->len > ATTEMPTS_MOST || log->places->len > ATTEMPTS_MOST;
  return spelch_log_text_save (file, text, full, etag, NULL, error);
}

/* Does something to a log that was read; whether it has to be saved. */
typedef bool (*Change) (SpelchPracticeLog *log, gconstpointer with);

static bool
add_attempt (SpelchPracticeLog *log, gconstpointer attempt)
{
  g_array_append_vals (log->attempts, attempt, 1);
  return true;
}

static bool
put_place (SpelchPracticeLog *log, gconstpointer place)
{
  return spelch_lesson_places_put (log->places, place);
}

static gboolean
change_once (GFile *file, Change change, gconstpointer with, GError **error)
{
  g_autofree char *etag = NULL;
  g_autoptr (SpelchPracticeLog) log = spelch_practice_log_load (file, &etag, error);
  if (log == NULL)
    return FALSE;
  return !change (log, with) || save (log, file, etag, error);
}

static gboolean
change_log (GFile *file, Change change, gconstpointer with, GError **error)
{
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_autofree char *path = folder == NULL ? NULL : g_file_get_path (folder);
  if (path != NULL)
    g_mkdir_with_parents (path, 0700);
  for (int i = 0; i < TRIES; i++)
    {
      g_autoptr (GError) local = NULL;
      if (change_once (file, change, with, &local))
        return TRUE;
      if (i + 1 < TRIES && g_error_matches (local, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_CHANGED))
        continue;
      g_propagate_error (error, g_steal_pointer (&local));
      return FALSE;
    }
  return FALSE;
}

gboolean
spelch_practice_log_add (GFile *file, const SpelchAttempt *attempt, GError **error)
{
  return change_log (file, add_attempt, attempt, error);
}

gboolean
spelch_practice_log_put_place (GFile *file, const SpelchLessonPlace *place, GError **error)
{
  return change_log (file, put_place, place, error);
}

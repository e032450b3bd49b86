/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/lesson-file.h"

#include "files/by-language-json.h"
#include "files/json-text.h"
#include "files/part-file.h"
#include "files/unread.h"

static const char *const NEEDED[] = { "format_version", "id", "title", "steps", NULL };
static const char *const STEP_NEEDS[] = { "exercise", NULL };

static SpelchLesson *
read_lesson (JsonNode *root, SpelchReading *reading)
{
  g_autoptr (SpelchFields) fields = spelch_fields_root (reading, root);
  SpelchLesson *lesson = spelch_lesson_new ();
  spelch_fields_need (fields, NEEDED);
  spelch_fields_format (fields, SPELCH_FORMAT_VERSION);
  spelch_fields_text (fields, "id", lesson->id, sizeof lesson->id);
  spelch_by_language_read (fields, "title", &lesson->title);
  spelch_by_language_read (fields, "closing", &lesson->closing);
  lesson->minutes = spelch_fields_whole (fields, "minutes", 0, 1, 240);
  lesson->n_steps = spelch_fields_count (fields, "steps", SPELCH_STEPS_MOST);
  for (guint i = 0; i < lesson->n_steps; i++)
    {
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, "steps", i);
      SpelchStep *step = &lesson->steps[i];
      if (item == NULL)
        continue;
      spelch_fields_need (item, STEP_NEEDS);
      spelch_fields_text (item, "exercise", step->exercise, sizeof step->exercise);
      step->follow_up = spelch_fields_flag (item, "follow_up", false);
      spelch_by_language_read (item, "telling", &step->telling);
    }
  return lesson;
}

SpelchLesson *
spelch_lesson_from_json (const char *text, gsize length, const char *name, GError **error)
{
  g_autoptr (JsonNode) root = spelch_json_parse (text, length, name, error);
  if (root == NULL)
    return NULL;
  SpelchReading reading = { .name = name };
  g_autoptr (SpelchLesson) lesson = read_lesson (root, &reading);
  if (reading.error == NULL)
    spelch_reading_fault (&reading, spelch_lesson_fault (lesson));
  if (reading.error == NULL)
    return g_steal_pointer (&lesson);
  g_propagate_error (error, reading.error);
  return NULL;
}

gboolean
spelch_lesson_is (JsonObject *root)
{
  return json_object_has_member (root, "steps") && !json_object_has_member (root, "board");
}

GPtrArray *
spelch_lesson_unread (const char *text, gsize length, const char *name)
{
  g_autoptr (JsonNode) root = spelch_json_parse (text, length, name, NULL);
  GPtrArray *unread = spelch_unread_list_new ();
  SpelchReading reading = { .name = name, .unread = unread };
  if (root != NULL)
    spelch_lesson_free (read_lesson (root, &reading));
  g_clear_error (&reading.error);
  return unread;
}

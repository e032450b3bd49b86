/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The corpus of exercise files: those in good/ are read, each in bad/ is refused in a sentence that names the
 * file and what bad.ini says: the member and its value. The guide's example is a good one, with one right
 * answer.
 */
#include "corpus.h"
#include "files/exercise-file.h"
#include "files/lesson-file.h"
#include "files/part-file.h"
#include "files/shop-data.h"
#include "files/unread.h"
#include "plan/posed-sound.h"

#include <string.h>

static char *
text_of (const char *folder, const char *name, gsize *length)
{
  g_autofree char *path = corpus_path ("exercise-corpus", folder, name);
  char *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, length, NULL));
  return text;
}

static SpelchExercise *
load (const char *folder, const char *name, GError **error)
{
  g_autofree char *path = corpus_path ("exercise-corpus", folder, name);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  return spelch_exercise_load (file, error);
}

static void
test_good (gconstpointer name)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchExercise) exercise = load ("good", name, &error);
  g_assert_no_error (error);
  g_assert_nonnull (exercise);
}

static void
test_bad (gconstpointer data)
{
  const char *const *row = data; /* name, member, value */
  g_autofree char *name = g_strconcat (row[0], ".json", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchExercise) exercise = load ("bad", name, &error);
  g_assert_null (exercise);
  g_test_message ("%s", error->message);
  g_assert_cmpint (error->domain, ==, SPELCH_FILE_ERROR);
  g_assert_true (g_str_has_prefix (error->message, name));
  g_assert_nonnull (strstr (error->message, row[1]));
  g_assert_nonnull (strstr (error->message, row[2]));
  g_assert_nonnull (strchr (".?", error->message[strlen (error->message) - 1]));
}

/* Every member arrives where it belongs. */
static void
test_full (void)
{
  const char *const german[] = { "de", NULL };
  g_autoptr (SpelchExercise) exercise = load ("good", "full.json", NULL);
  const SpelchPart *part = exercise->part;
  g_assert_cmpstr (exercise->id, ==, "full");
  g_assert_cmpint (exercise->asks, ==, SPELCH_ASKS_FIRST_PASS);
  g_assert_cmpuint (exercise->level, ==, 4);
  g_assert_cmpstr (spelch_by_language (&exercise->title, german), ==, "Voll");
  g_assert_cmpstr (spelch_by_language (&exercise->lead, german), ==, "Sie misst {thickness}.");
  g_assert_cmpstr (spelch_by_language (&exercise->hint, german), ==, "Think.");
  g_assert_cmpstr (part->board.id, ==, "board-6");
  g_assert_cmpuint (part->board.n_layers, ==, 3);
  g_assert_cmpfloat (part->machine.power_w, ==, 3000);
  g_assert_cmpuint (part->n_bits, ==, 2);
  g_assert_cmpfloat (part->bits[0].up_shear.mm, ==, 6.35); /* of the starter set */
  g_assert_cmpfloat (part->bits[1].up_shear.mm, ==, 2);
  g_assert_cmpfloat (part->length.mm, ==, 300);
  g_assert_cmpfloat (part->tolerances.up_shear_mm, ==, 0.2);
  g_assert_cmpint (part->holding.method, ==, SPELCH_HOLD_VACUUM);
  g_assert_cmpuint (part->n_cuts, ==, 1);
  g_assert_cmpstr (part->cuts[0].bit, ==, "tiny");
  g_assert_cmpuint (exercise->n_vary, ==, 3);
  g_assert_cmpint (exercise->vary[0].what, ==, SPELCH_CHANGE_THICKNESS);
  g_assert_cmpuint (spelch_vary_count (&exercise->vary[0]), ==, 3);
  g_assert_cmpfloat_with_epsilon (spelch_vary_nth (&exercise->vary[0], 2).number, 6.1, 1e-9);
  g_assert_cmpfloat (spelch_vary_nth (&exercise->vary[1], 1).number, ==, 3000);
  g_assert_cmpstr (spelch_vary_nth (&exercise->vary[2], 0).code, ==, "new");
  g_assert_true (exercise->follow_up.told && exercise->follow_up.change.by && !exercise->follow_up.same);
  g_assert_cmpfloat (exercise->follow_up.change.number, ==, 0.6);
  g_assert_cmpstr (spelch_by_language (&exercise->follow_up.lead, german), ==, "Länger.");
}

/* A good file cut off after each of its bytes is refused, and never crashes the reader. */
static void
test_cut_off (void)
{
  gsize length;
  g_autofree char *text = text_of ("good", "full.json", &length);
  for (gsize n = 0; n + 2 < length; n++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_null (spelch_exercise_from_json (text, n, "cut.json", &error));
      g_assert_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_SYNTAX);
    }
}

/* With one byte another, a file is read or refused in a sentence; what is read can be drawn. */
static void
test_other_bytes (void)
{
  static const char BYTES[] = { '9', '-', '"', '}' };
  gsize length;
  g_autofree char *text = text_of ("good", "full.json", &length);
  for (gsize n = 0; n < length; n++)
    for (guint i = n % 2; !g_ascii_isspace (text[n]) && i < G_N_ELEMENTS (BYTES); i += 2)
      {
        g_autoptr (GError) error = NULL;
        char was = text[n];
        text[n] = BYTES[i];
        g_autoptr (SpelchExercise) exercise = spelch_exercise_from_json (text, length, "other.json", &error);
        text[n] = was;
        g_assert_true ((exercise == NULL) == (error != NULL));
        g_assert_true (error == NULL || g_str_has_prefix (error->message, "other.json"));
        if (exercise != NULL)
          {
            g_autoptr (SpelchPart) part = spelch_exercise_draw_follow_up (exercise, 7);
            g_assert_cmpuint (part->n_cuts, ==, 1);
          }
      }
}

/* What isn't read is told of, save notes. */
static void
test_unread (void)
{
  gsize length;
  g_autofree char *text = text_of ("good", "unknown.json", &length), *full = NULL;
  g_autoptr (GPtrArray) unread = spelch_exercise_unread (text, length, "unknown.json");
  g_assert_cmpuint (unread->len, ==, 2);
  g_assert_cmpstr (((SpelchUnread *)unread->pdata[0])->member, ==, "mood");
  g_assert_cmpstr (((SpelchUnread *)unread->pdata[1])->member, ==, "colour");
  full = text_of ("good", "full.json", &length);
  g_autoptr (GPtrArray) none = spelch_exercise_unread (full, length, "full.json");
  g_assert_cmpuint (none->len, ==, 0);
}

/* ---- Lessons ---- */

static void
refuse_lesson (const char *text, const char *word)
{
  g_autoptr (GError) error = NULL;
  g_assert_null (spelch_lesson_from_json (text, strlen (text), "lesson.json", &error));
  g_assert_cmpint (error->domain, ==, SPELCH_FILE_ERROR);
  g_assert_true (g_str_has_prefix (error->message, "lesson.json"));
  g_assert_nonnull (strstr (error->message, word));
}

static void
test_lesson (void)
{
  const char *const text
      = "{\"format_version\": 1, \"id\": \"l\", \"title\": \"L\", \"minutes\": 10, \"steps\": "
        "[{\"exercise\": \"a\", \"telling\": \"First.\"}, {\"exercise\": \"b\", \"follow_up\": "
        "true}], \"closing\": {\"en\": \"Done.\"}}";
  const char *const english[] = { "en", NULL };
  g_autoptr (SpelchLesson) lesson = spelch_lesson_from_json (text, strlen (text), "lesson.json", NULL);
  g_assert_cmpuint (lesson->minutes, ==, 10);
  g_assert_cmpuint (lesson->n_steps, ==, 2);
  g_assert_cmpstr (lesson->steps[0].exercise, ==, "a");
  g_assert_cmpstr (spelch_by_language (&lesson->steps[0].telling, english), ==, "First.");
  g_assert_true (lesson->steps[1].follow_up && !lesson->steps[0].follow_up);
  g_assert_cmpstr (spelch_by_language (&lesson->closing, english), ==, "Done.");
  refuse_lesson ("{\"format_version\": 1, \"id\": \"l\", \"title\": \"L\", \"steps\": []}", "steps");
  refuse_lesson ("{\"format_version\": 1, \"id\": \"l\", \"title\": \"L\", \"steps\": [{}]}",
                 "steps[0]: exercise");
  refuse_lesson ("{\"format_version\": 1, \"id\": \"l\", \"steps\": [{\"exercise\": \"a\"}]}", "title");
  refuse_lesson (
      "{\"format_version\": 3, \"id\": \"l\", \"title\": \"L\", \"steps\": [{\"exercise\": \"a\"}]}", "3");
  refuse_lesson (
      "{\"format_version\": 1, \"id\": \"l\", \"title\": \"L\", \"minutes\": 999, \"steps\": [{\"exercise\": "
      "\"a\"}]}",
      "minutes");
}

/* ---- The guide ---- */

static char *
guide (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "..", "docs", "exercises.md", NULL);
  char *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

/* The first block that begins with ```json and the words @from. */
static char *
block_of (const char *text, const char *holds)
{
  g_auto (GStrv) blocks = g_strsplit (text, "```json\n", -1);
  for (guint i = 1; blocks[i] != NULL; i++)
    {
      char *end = strstr (blocks[i], "```");
      g_assert_nonnull (end);
      *end = '\0';
      if (strstr (blocks[i], holds) != NULL)
        return g_strdup (blocks[i]);
    }
  return NULL;
}

static void
test_guide (void)
{
  g_autofree char *text = guide ();
  g_autofree char *example = block_of (text, "\"asks\""), *lesson_example = block_of (text, "\"steps\"");
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchExercise) exercise
      = spelch_exercise_from_json (example, strlen (example), "exercises.md", &error);
  g_assert_no_error (error);
  g_autoptr (GPtrArray) unread = spelch_exercise_unread (example, strlen (example), "exercises.md");
  g_assert_cmpuint (unread->len, ==, 0);
  g_assert_cmpuint (spelch_posed_sound (spelch_shop_constants (), exercise, 1000).n_doubts, ==, 0);
  g_autoptr (SpelchLesson) lesson
      = spelch_lesson_from_json (lesson_example, strlen (lesson_example), "exercises.md", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (lesson->n_steps, >, 1);
}

/* Everything that can be drawn or changed, and every kind of question, is named in the guide. */
static void
test_guide_names (void)
{
  g_autofree char *text = guide ();
  const SpelchCodes *const tables[] = { &SPELCH_CHANGE_CODES, &SPELCH_ASKS_CODES };
  for (guint t = 0; t < G_N_ELEMENTS (tables); t++)
    for (guint i = 0; i < tables[t]->n; i++)
      {
        g_autofree char *named = g_strdup_printf ("`%s`", tables[t]->codes[i]);
        if (strstr (text, named) == NULL)
          g_error ("docs/exercises.md doesn't name %s", named);
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  corpus_add ("exercise-corpus", "exercise-file", test_good, test_bad);
  g_test_add_func ("/exercise-file/full", test_full);
  g_test_add_func ("/exercise-file/cut-off", test_cut_off);
  g_test_add_func ("/exercise-file/other-bytes", test_other_bytes);
  g_test_add_func ("/exercise-file/unread", test_unread);
  g_test_add_func ("/exercise-file/lesson", test_lesson);
  g_test_add_func ("/exercise-file/guide", test_guide);
  g_test_add_func ("/exercise-file/guide-names", test_guide_names);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice: answers that are kept are all there again, in the log and in the table; a table is read as a
 * teacher types it, and nothing in it is a formula.
 */
#include "corpus.h"

#include "files/part-file.h"
#include "files/practice-csv.h"
#include "files/practice-log.h"

#include <glib/gstdio.h>
#include <string.h>

static const SpelchAttempt ADA = { .learner = "Ada",
                                   .exercise = "first-pass-plywood",
                                   .seed = 42,
                                   .answer = "8.50 mm",
                                   .right = true,
                                   .when = "2026-05-31T14:05:00",
                                   .model_version = "1.0" };

static void
same_attempt (const SpelchAttempt *a, const SpelchAttempt *b)
{
  g_assert_cmpstr (a->learner, ==, b->learner);
  g_assert_cmpstr (a->exercise, ==, b->exercise);
  g_assert_cmpuint (a->seed, ==, b->seed);
  g_assert_true (a->follow_up == b->follow_up);
  g_assert_cmpstr (a->answer, ==, b->answer);
  g_assert_true (a->right == b->right);
  g_assert_cmpstr (a->when, ==, b->when);
  g_assert_cmpstr (a->model_version, ==, b->model_version);
}

static GFile *
log_at (const char *name)
{
  g_autofree char *path = g_test_build_filename (G_TEST_BUILT, name, NULL);
  g_remove (path);
  return g_file_new_for_path (path);
}

static void
test_log (void)
{
  g_autoptr (GFile) file = log_at ("practice-kept.json");
  g_autoptr (GError) error = NULL;
  SpelchAttempt bo = ADA;
  g_strlcpy (bo.learner, "Bo \"the\" Bär", sizeof bo.learner);
  bo.follow_up = true;
  bo.right = false;
  g_autoptr (SpelchPracticeLog) none = spelch_practice_log_load (file, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (none->attempts->len, ==, 0);
  g_assert_true (spelch_practice_log_add (file, &ADA, &error));
  g_assert_true (spelch_practice_log_add (file, &bo, &error));
  g_autoptr (SpelchPracticeLog) log = spelch_practice_log_load (file, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (log->attempts->len, ==, 2);
  same_attempt (&ADA, &g_array_index (log->attempts, SpelchAttempt, 0));
  same_attempt (&bo, &g_array_index (log->attempts, SpelchAttempt, 1));
}

/* Each learner has one place in each lesson, beside the answers. */
static void
test_places (void)
{
  SpelchLessonPlace place
      = { .learner = "Ada", .lesson = "first-lesson", .exercise = "hold-tabs", .seed = 7 };
  g_autoptr (GFile) file = log_at ("practice-places.json");
  g_autoptr (GError) error = NULL;
  g_assert_true (spelch_practice_log_put_place (file, &place, &error));
  g_assert_true (spelch_practice_log_add (file, &ADA, &error));
  g_strlcpy (place.learner, "Bo", sizeof place.learner);
  g_assert_true (spelch_practice_log_put_place (file, &place, &error));
  place.told = place.follow_up = place.finished = true;
  place.seed = 8;
  g_strlcpy (place.exercise, "tears-up-cut-ply", sizeof place.exercise);
  g_assert_true (spelch_practice_log_put_place (file, &place, &error));
  g_autoptr (SpelchPracticeLog) log = spelch_practice_log_load (file, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (log->attempts->len, ==, 1);
  g_assert_cmpuint (log->places->len, ==, 2);
  const SpelchLessonPlace *ada = spelch_lesson_places_find (log->places, "Ada", "first-lesson");
  const SpelchLessonPlace *bo = spelch_lesson_places_find (log->places, "Bo", "first-lesson");
  g_assert_cmpstr (ada->exercise, ==, "hold-tabs");
  g_assert_cmpuint (ada->seed, ==, 7);
  g_assert_false (ada->told || ada->follow_up || ada->finished);
  g_assert_cmpstr (bo->exercise, ==, "tears-up-cut-ply");
  g_assert_cmpuint (bo->seed, ==, 8);
  g_assert_true (bo->told && bo->follow_up && bo->finished);
  g_assert_null (spelch_lesson_places_find (log->places, "Ada", "second-lesson"));
}

/* What somebody else wrote into the file stays in it. */
static void
test_unknown (void)
{
  g_autoptr (GFile) file = log_at ("practice-unknown.json");
  g_autoptr (GError) error = NULL;
  const char *const text
      = "{\"format_version\": 1, \"class\": \"7b\", \"practice\": [{\"learner\": \"Cy\", "
        "\"exercise\": \"e\", \"seed\": 1, \"answer\": \"far\", \"right\": false, \"mood\": 3}]}";
  g_assert_true (g_file_set_contents (g_file_peek_path (file), text, -1, NULL));
  g_assert_true (spelch_practice_log_add (file, &ADA, &error));
  g_autofree char *saved = NULL;
  g_assert_true (g_file_get_contents (g_file_peek_path (file), &saved, NULL, NULL));
  g_assert_nonnull (strstr (saved, "\"class\": \"7b\""));
  g_assert_nonnull (strstr (saved, "\"mood\": 3"));
  g_assert_nonnull (strstr (saved, "\"Ada\""));
}

/* A file that can't be read is told of and left alone. */
static void
test_spoilt (void)
{
  static const char *const TEXTS[][2] = {
    { "{\"format_version\": 2, \"practice\": []}", "format_version" },
    { "{\"format_version\": 1}", "practice" },
    { "{\"format_version\": 1, \"practice\": [{\"learner\": \"\", \"exercise\": \"e\", \"seed\": 1, "
      "\"answer\": "
      "\"far\", \"right\": false}]}",
      "practice[0]" },
    { "{\"format_version\": 1, \"practice\": [{\"learner\": \"A\", \"exercise\": \"e\", \"seed\": -1, "
      "\"answer\": "
      "\"far\", \"right\": false}]}",
      "seed" },
    { "{\"format_version\": 1, \"practice\": [{\"learner\": \"A\", \"exercise\": \"e\", \"seed\": 1, "
      "\"answer\": "
      "\"far\", \"right\": false, \"when\": \"noon\"}]}",
      "noon" },
  };
  g_autoptr (GFile) file = log_at ("practice-spoilt.json");
  for (guint i = 0; i < G_N_ELEMENTS (TEXTS); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *after = NULL;
      g_assert_true (g_file_set_contents (g_file_peek_path (file), TEXTS[i][0], -1, NULL));
      g_assert_false (spelch_practice_log_add (file, &ADA, &error));
      g_assert_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_MEMBER);
      g_assert_nonnull (strstr (error->message, TEXTS[i][1]));
      g_assert_true (g_file_get_contents (g_file_peek_path (file), &after, NULL, NULL));
      g_assert_cmpstr (after, ==, TEXTS[i][0]);
    }
}

static void
test_progress (void)
{
  g_autoptr (GArray) attempts = g_array_new (FALSE, FALSE, sizeof (SpelchAttempt));
  SpelchAttempt one = ADA;
  g_array_append_val (attempts, one);
  one.right = false;
  g_array_append_val (attempts, one);
  one.follow_up = true;
  one.right = true;
  g_array_append_val (attempts, one);
  g_strlcpy (one.learner, "Bo", sizeof one.learner);
  g_array_append_val (attempts, one);
  SpelchProgress progress = spelch_attempts_progress (attempts, "Ada", "first-pass-plywood");
  g_assert_cmpuint (progress.tried, ==, 3);
  g_assert_cmpuint (progress.right, ==, 2);
  g_assert_false (progress.last_right);
  g_assert_cmpuint (spelch_attempts_progress (attempts, NULL, NULL).tried, ==, 4);
  g_assert_cmpuint (spelch_attempts_progress (attempts, "Ada", "other").tried, ==, 0);
}

/* ---- Tables ---- */

static GArray *
read_table (const char *text, guint n_problems)
{
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  GArray *marked = spelch_attempts_from_csv (text, strlen (text), problems);
  for (guint i = 0; i < problems->len; i++)
    g_test_message ("%s", (char *)problems->pdata[i]);
  g_assert_cmpuint (problems->len, ==, n_problems);
  return marked;
}

/* Names that a spreadsheet would reckon with, and those with marks of the table in them. */
static void
test_table (void)
{
  static const char *const LEARNERS[]
      = { "Ada", "=1+1", "+49 30", "-3", "@here", "'=2", "a,b", "a;b", "say \"hi\"" };
  static const char SEPARATORS[] = { ',', ';' };
  for (guint s = 0; s < G_N_ELEMENTS (SEPARATORS); s++)
    {
      g_autoptr (GArray) attempts = g_array_new (FALSE, FALSE, sizeof (SpelchAttempt));
      for (guint i = 0; i < G_N_ELEMENTS (LEARNERS); i++)
        {
          SpelchAttempt one = ADA;
          g_strlcpy (one.learner, LEARNERS[i], sizeof one.learner);
          one.follow_up = i % 2 == 1;
          one.right = i % 3 == 1;
          g_array_append_val (attempts, one);
        }
      g_autofree char *table = spelch_attempts_to_csv (attempts, NULL, SEPARATORS[s]);
      g_auto (GStrv) lines = g_strsplit (table, "\r\n", -1);
      for (guint i = 0; lines[i] != NULL; i++)
        g_assert_true (lines[i][0] == '\0' || strchr ("=+-@", lines[i][lines[i][0] == '"' ? 1 : 0]) == NULL);
      g_autoptr (GArray) marked = read_table (table, 0);
      g_assert_cmpuint (marked->len, ==, attempts->len);
      for (guint i = 0; i < marked->len; i++)
        {
          SpelchMarked *one = &g_array_index (marked, SpelchMarked, i);
          g_assert_true (one->was_told);
          one->attempt.right = one->was;
          same_attempt (&one->attempt, &g_array_index (attempts, SpelchAttempt, i));
        }
    }
}

static void
test_of_one_learner (void)
{
  g_autoptr (GArray) attempts = g_array_new (FALSE, FALSE, sizeof (SpelchAttempt));
  SpelchAttempt one = ADA;
  g_array_append_val (attempts, one);
  g_strlcpy (one.learner, "Bo", sizeof one.learner);
  g_array_append_val (attempts, one);
  g_autofree char *table = spelch_attempts_to_csv (attempts, "Bo", ',');
  g_assert_null (strstr (table, "Ada"));
  g_assert_nonnull (strstr (table, "Bo,first-pass-plywood,42,no,8.50 mm,yes,2026-05-31T14:05:00,1.0\r\n"));
}

/* As a teacher types it from paper: other columns, another order, blanks, nothing that needn't be there. */
static void
test_typed (void)
{
  g_autoptr (GArray) marked = read_table ("\xef\xbb\xbf"
                                          "Exercise;Seed;class;Answer;Learner\n"
                                          " tears-up-cut-ply ; 7 ;7b; motor ;Ada\n\n"
                                          "first-pass-plywood;8;7b;8,5 mm;Bo\n",
                                          0);
  g_assert_cmpuint (marked->len, ==, 2);
  const SpelchMarked *one = &g_array_index (marked, SpelchMarked, 0),
                     *two = &g_array_index (marked, SpelchMarked, 1);
  g_assert_cmpstr (one->attempt.exercise, ==, "tears-up-cut-ply");
  g_assert_cmpuint (one->attempt.seed, ==, 7);
  g_assert_cmpstr (one->attempt.answer, ==, "motor");
  g_assert_false (one->was_told);
  g_assert_cmpstr (two->attempt.answer, ==, "8,5 mm");
}

static void
test_table_spoilt (void)
{
  static const struct
  {
    const char *text;
    guint read, problems;
  } TABLES[] = {
    { "", 0, 1 },
    { "learner,exercise,seed\nAda,e,1\n", 0, 1 },
    { "learner,exercise,seed,answer\nAda,e,1\n", 0, 1 },
    { "learner,exercise,seed,answer\nAda,e,many,far\nBo,e,1,far\n", 1, 1 },
    { "learner,exercise,seed,answer,right\nAda,e,1,far,maybe\n", 0, 1 },
    { "learner,exercise,seed,answer\n\"Ada,e,1,far\n", 0, 1 },
    { "learner,exercise,seed,answer\nAda,Not an id,1,far\n", 0, 1 },
    { "learner,exercise,seed,answer\n\xff,e,1,far\n", 0, 1 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (TABLES); i++)
    {
      g_autoptr (GArray) marked = read_table (TABLES[i].text, TABLES[i].problems);
      g_assert_cmpuint (marked->len, ==, TABLES[i].read);
    }
}

/* ---- One test for each file ---- */

static SpelchPracticeLog *
load_kept (const char *folder, const char *name, GError **error)
{
  g_autofree char *path = corpus_path ("practice-corpus", folder, name);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  return spelch_practice_log_load (file, NULL, error);
}

static void
test_good (gconstpointer name)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchPracticeLog) log = load_kept ("good", name, &error);
  g_assert_no_error (error);
  g_assert_true ((log->attempts->len == 0) == g_str_equal (name, "empty.json"));
}

static void
test_bad (gconstpointer data)
{
  const char *const *row = data; /* name, member, value */
  g_autofree char *name = g_strconcat (row[0], ".json", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchPracticeLog) log = load_kept ("bad", name, &error);
  g_assert_null (log);
  g_test_message ("%s", error->message);
  g_assert_cmpint (error->domain, ==, SPELCH_FILE_ERROR);
  g_assert_true (g_str_has_prefix (error->message, name));
  g_assert_nonnull (strstr (error->message, row[1]));
  g_assert_nonnull (strstr (error->message, row[2]));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  corpus_add ("practice-corpus", "practice", test_good, test_bad);
  g_test_add_func ("/practice/log", test_log);
  g_test_add_func ("/practice/places", test_places);
  g_test_add_func ("/practice/unknown", test_unknown);
  g_test_add_func ("/practice/spoilt", test_spoilt);
  g_test_add_func ("/practice/progress", test_progress);
  g_test_add_func ("/practice/table", test_table);
  g_test_add_func ("/practice/of-one-learner", test_of_one_learner);
  g_test_add_func ("/practice/typed", test_typed);
  g_test_add_func ("/practice/table-spoilt", test_table_spoilt);
  return g_test_run ();
}

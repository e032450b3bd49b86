/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The shop log's file: good ones are read and written without loss, bad ones are refused in a sentence that
 * names the file, the member and the value; saving keeps what it doesn't know.
 */
#include "corpus.h"
#include "files/list-file.h"
#include "files/log-file.h"
#include "reading.h"

#include <glib/gstdio.h>
#include <string.h>

static SpelchLog *
load (const char *path, GError **error)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  return spelch_log_load (file, NULL, error);
}

/* Every member goes to its own place and comes back, byte for byte. */
static void
test_every_member (void)
{
  g_autofree char *path = corpus_path ("log-corpus", "good", "full.json");
  g_autofree char *text = reading_file ("log-corpus/good/full.json");
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchLog) log = load (path, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (log->entries->len, ==, 2);
  const SpelchLogEntry *one = &g_array_index (log->entries, SpelchLogEntry, 0), *two = one + 1;
  g_assert_cmpstr (one->id, ==, "one");
  g_assert_cmpstr (one->date, ==, "2024-02-29");
  g_assert_cmpstr (one->board, ==, "melamine-mdf-18");
  g_assert_cmpstr (one->bit, ==, "compression-6.35x22");
  g_assert_cmpstr (one->machine, ==, "medium-gantry");
  g_assert_cmpint (one->kind, ==, SPELCH_CUT_OUTLINE);
  g_assert_cmpint (one->piece, ==, SPELCH_PIECE_TEST_STRIP);
  g_assert_cmpint (two->piece, ==, SPELCH_PIECE_FINISHED);
  g_assert_cmpint (one->face, ==, SPELCH_FACE_B);
  g_assert_cmpint (one->way_up, ==, SPELCH_FACE_A);
  g_assert_false (spelch_log_entry_at_motor (one) || spelch_log_entry_at_motor (two));
  g_assert_cmpuint (one->n_passes, ==, 3);
  reading_same_length (one->passes[0], 9.525, "3/8 in");
  reading_same_length (one->overcut, -0.1, "");
  g_assert_cmpfloat (one->speed_rpm, ==, 17500);
  g_assert_cmpfloat (one->feed_mm_min, ==, 4321);
  g_assert_cmpint (one->predicted, ==, 1);
  g_assert_true (one->clear_known && !two->clear_known);
  g_assert_cmpfloat (one->clear_mm, ==, 0.35);
  g_assert_cmpfloat (one->power_w, ==, 512.5);
  g_assert_cmpstr (one->model_version, ==, "1.0");
  g_assert_cmpstr (one->revision, ==, "5 of 31 May");
  g_assert_true (one->burnt && one->chattered && one->clogged && one->moved);
  g_assert_false (two->burnt || two->chattered || two->clogged || two->moved);
  g_assert_nonnull (strstr (one->note, "two lines,\n"));
  g_assert_cmpint (spelch_log_entry_grade (one), ==, 4);
  g_assert_cmpint (spelch_log_entry_grade (two), ==, 2);
  g_assert_cmpfloat (spelch_log_entry_load (one), ==, 640);
  g_assert_cmpfloat (spelch_log_entry_load (two), ==, 375); /* an eighth of 3000 W */
  g_autofree char *written = spelch_list_to_json (SPELCH_LIST_LOG, log->entries, log->unknown);
  g_assert_cmpstr (written, ==, text);
}

static void
test_good (gconstpointer name)
{
  g_autofree char *path = corpus_path ("log-corpus", "good", name);
  g_autofree char *copy = g_test_build_filename (G_TEST_BUILT, "saved-log.json", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (copy);
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchLog) log = load (path, &error);
  g_assert_no_error (error);
  g_assert_true (spelch_log_save (log, file, NULL, NULL, &error));
  g_autoptr (SpelchLog) again = load (copy, &error);
  g_assert_no_error (error);
  g_remove (copy);
  g_autofree char *first = spelch_list_to_json (SPELCH_LIST_LOG, log->entries, log->unknown);
  g_autofree char *second = spelch_list_to_json (SPELCH_LIST_LOG, again->entries, again->unknown);
  g_assert_cmpstr (first, ==, second);
}

static void
test_unknown_kept (void)
{
  g_autofree char *path = corpus_path ("log-corpus", "good", "unknown.json");
  g_autofree char *text = reading_file ("log-corpus/good/unknown.json");
  g_autoptr (SpelchLog) log = load (path, NULL);
  g_autofree char *written = spelch_list_to_json (SPELCH_LIST_LOG, log->entries, log->unknown);
  g_assert_cmpstr (written, ==, text);
}

static void
test_bad (gconstpointer data)
{
  const char *const *row = data; /* name, member, value */
  g_autofree char *file_name = g_strconcat (row[0], ".json", NULL);
  g_autofree char *path = corpus_path ("log-corpus", "bad", file_name);
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchLog) log = load (path, &error);
  g_assert_null (log);
  g_test_message ("%s", error->message);
  g_assert_cmpint (error->domain, ==, SPELCH_FILE_ERROR);
  g_assert_true (g_str_has_prefix (error->message, file_name));
  g_assert_nonnull (strstr (error->message, row[1]));
  g_assert_nonnull (strstr (error->message, row[2]));
}

/* A log that would be more than is read again isn't saved, and the old file stays. */
static void
test_full (void)
{
  g_autofree char *path = g_test_build_filename (G_TEST_BUILT, "full-log.json", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (SpelchLog) log = spelch_log_new ();
  g_autoptr (GError) error = NULL;
  SpelchLogEntry entry = { .date = "2026-05-31", .board = "mdf-18", .bit = "up", .predicted = 1, .grade = 1 };
  g_assert_true (spelch_log_save (log, file, NULL, NULL, &error));
  memset (entry.note, 'n', sizeof entry.note - 1);
  for (gsize i = 0; i * sizeof entry.note < 2 * SPELCH_FILE_MOST; i++)
    {
      g_snprintf (entry.id, sizeof entry.id, "entry-%u", (guint)i);
      g_array_append_val (log->entries, entry);
    }
  g_assert_false (spelch_log_save (log, file, NULL, NULL, &error));
  g_assert_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_TOO_BIG);
  g_autoptr (SpelchLog) old = load (path, NULL);
  g_assert_cmpuint (old->entries->len, ==, 0);
  g_remove (path);
}

/* The example in the guide is the one the corpus holds, and the guide names every member. */
static void
test_guide (void)
{
  g_autofree char *guide = reading_file ("../../docs/file-format.md");
  g_autofree char *example = reading_file ("log-corpus/good/small.json");
  g_autofree char *full = reading_file ("log-corpus/good/full.json");
  g_assert_nonnull (strstr (guide, example));
  g_autoptr (GRegex) member = g_regex_new ("\"([a-z_]+)\":", 0, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;
  for (g_regex_match (member, full, 0, &match); g_match_info_matches (match); g_match_info_next (match, NULL))
    {
      g_autofree char *name = g_match_info_fetch (match, 1);
      g_autofree char *word = g_strdup_printf ("\\b%s\\b", name);
      g_test_message ("%s", name);
      g_assert_true (g_regex_match_simple (word, guide, 0, 0));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  corpus_add ("log-corpus", "log", test_good, test_bad);
  g_test_add_func ("/log/every-member", test_every_member);
  g_test_add_func ("/log/unknown-kept", test_unknown_kept);
  g_test_add_func ("/log/full", test_full);
  g_test_add_func ("/log/guide", test_guide);
  return g_test_run ();
}

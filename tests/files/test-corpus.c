/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The corpus of part files: those in good/ are read and written without loss, each in bad/ is refused in a
 * sentence that names the file and what bad.ini says: the member and its value. Neither changes the file.
 */
#include "corpus.h"
#include "files/part-file.h"

#include <glib/gstdio.h>
#include <string.h>

static char *
text_of (const char *path, gsize *length)
{
  char *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, length, NULL));
  return text;
}

static SpelchPart *
load (const char *path, GError **error)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  return spelch_part_load (file, NULL, error);
}

static SpelchPart *
again (const SpelchPart *part, char **text)
{
  g_autoptr (GError) error = NULL;
  *text = spelch_part_to_json (part);
  SpelchPart *copy = spelch_part_from_json (*text, strlen (*text), "again", &error);
  g_assert_no_error (error);
  return copy;
}

static void
test_good (gconstpointer name)
{
  g_autofree char *path = corpus_path ("corpus", "good", name);
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchPart) part = load (path, &error);
  g_assert_no_error (error);
  g_assert_cmpint (part->read_only, ==, g_str_equal (name, "newer.spelch"));
  if (part->read_only)
    return;
  g_autofree char *first = NULL, *second = NULL;
  g_autoptr (SpelchPart) copy = again (part, &first);
  g_autoptr (SpelchPart) last = again (copy, &second);
  g_assert_cmpstr (first, ==, second);
}

/* What the newer file's own words for things are, this program can't know; the rest is there to be looked at.
 */
static void
test_newer (void)
{
  g_autofree char *path = corpus_path ("corpus", "good", "newer.spelch");
  g_autoptr (SpelchPart) part = load (path, NULL);
  g_autoptr (GError) error = NULL;
  g_assert_cmpint (part->file_version, ==, 2);
  g_assert_cmpstr (part->name, ==, "Tray bottom");
  g_assert_cmpstr (part->board.id, ==, "melamine-mdf-18");
  g_assert_cmpint (part->holding.method, ==, SPELCH_HOLD_UNTOLD);
  g_assert_cmpuint (part->n_cuts, ==, 2);

  g_autofree char *target = g_test_build_filename (G_TEST_BUILT, "newer-saved.spelch", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (target);
  g_assert_false (spelch_part_save (part, file, NULL, NULL, &error));
  g_assert_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_READ_ONLY);
  g_assert_nonnull (strstr (error->message, "format_version 2"));
  g_assert_false (g_file_test (target, G_FILE_TEST_EXISTS));
}

static void
test_bad (gconstpointer data)
{
  const char *const *row = data; /* name, member, value */
  g_autofree char *file_name = g_strconcat (row[0], ".spelch", NULL);
  g_autofree char *path = corpus_path ("corpus", "bad", file_name);
  gsize before, after;
  g_autofree char *was = text_of (path, &before);
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchPart) part = load (path, &error);
  g_assert_null (part);
  g_test_message ("%s", error->message);
  g_assert_cmpint (error->domain, ==, SPELCH_FILE_ERROR);
  g_assert_true (g_str_has_prefix (error->message, file_name));
  g_assert_nonnull (strstr (error->message, row[1]));
  g_assert_nonnull (strstr (error->message, row[2]));
  g_assert_nonnull (strchr (".?", error->message[strlen (error->message) - 1]));
  g_autofree char *is = text_of (path, &after);
  g_assert_cmpuint (before, ==, after);
  g_assert_cmpint (memcmp (was, is, before), ==, 0);
}

/* ---- Texts too big to keep as files ---- */

static void
refuse (const char *text, gsize length, int code)
{
  g_autoptr (GError) error = NULL;
  g_assert_null (spelch_part_from_json (text, length, "made.spelch", &error));
  g_assert_error (error, SPELCH_FILE_ERROR, code);
  g_assert_true (g_str_has_prefix (error->message, "made.spelch"));
}

/* 200 000 brackets overflow the stack of a parser that follows them. */
static void
test_deep (void)
{
  g_autoptr (GString) text = g_string_new ("{\"a\":");
  for (int i = 0; i < 200000; i++)
    g_string_append_c (text, '[');
  refuse (text->str, text->len, SPELCH_FILE_ERROR_NESTED);
}

static void
test_big (void)
{
  gsize length = SPELCH_FILE_MOST + 1;
  g_autofree char *text = g_malloc (length);
  memset (text, ' ', length);
  refuse (text, length, SPELCH_FILE_ERROR_TOO_BIG);
  refuse (text, length - 1, SPELCH_FILE_ERROR_SYNTAX);

  g_autofree char *path = g_test_build_filename (G_TEST_BUILT, "big.spelch", NULL);
  g_assert_true (g_file_set_contents (path, text, (gssize)length, NULL));
  g_autoptr (GError) error = NULL;
  g_assert_null (load (path, &error));
  g_assert_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_TOO_BIG);
  g_remove (path);
}

/* A good file cut off after each of its bytes is refused, and never crashes the reader. */
static void
test_cut_off (void)
{
  g_autofree char *path = corpus_path ("corpus", "good", "small.spelch");
  gsize length;
  g_autofree char *text = text_of (path, &length);
  for (gsize n = 0; n + 2 < length; n++)
    refuse (text, n, SPELCH_FILE_ERROR_SYNTAX);
}

static void
test_not_there (void)
{
  g_autoptr (GError) error = NULL;
  g_assert_null (load ("/nowhere/at-all.spelch", &error));
  g_assert_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_READ);
  g_assert_true (g_str_has_prefix (error->message, "at-all.spelch"));
  g_clear_error (&error);
  g_assert_null (load ("/", &error));
  g_assert_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_READ);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  corpus_add ("corpus", "corpus", test_good, test_bad);
  g_test_add_func ("/corpus/newer", test_newer);
  g_test_add_func ("/corpus/deep", test_deep);
  g_test_add_func ("/corpus/big", test_big);
  g_test_add_func ("/corpus/cut-off", test_cut_off);
  g_test_add_func ("/corpus/not-there", test_not_there);
  return g_test_run ();
}

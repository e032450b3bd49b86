/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fuzzer of what the program keeps for a person beside lists and parts: answers given in practice, and
 * preferences. Whatever bytes the files hold, the answers are refused in a sentence that names the file, or
 * another one can be added and all are there; preferences come out within their limits.
 */
#include "bench/preferences.h"
#include "files/practice-log.h"

#include <glib/gstdio.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

static void
check_log (const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchPracticeLog) log = spelch_practice_log_load (file, NULL, &error);
  g_assert_true ((log == NULL) == (error != NULL));
  if (log == NULL)
    {
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
      g_assert_nonnull (strstr (error->message, "answers.json"));
      return;
    }
  SpelchAttempt attempt = { .seed = 7 };
  g_strlcpy (attempt.learner, "Somebody", sizeof attempt.learner);
  g_strlcpy (attempt.exercise, "which-bit", sizeof attempt.exercise);
  g_strlcpy (attempt.answer, "up-shear", sizeof attempt.answer);
  if (!spelch_practice_log_add (file, &attempt, &error))
    {
      g_assert_true (g_utf8_validate (error->message, -1, NULL)); /* it is full */
      return;
    }
  g_autoptr (SpelchPracticeLog) again = spelch_practice_log_load (file, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (again->attempts->len, ==, log->attempts->len + 1);
}

static void
check_preferences (const char *folder)
{
  g_autofree char *trouble = NULL;
  SpelchPreferences read = spelch_preferences_load (folder, &trouble);
  g_assert_true (trouble == NULL || g_utf8_validate (trouble, -1, NULL));
  g_assert_true (read.accepted_seen >= 1 && read.accepted_seen <= 5);
  g_assert_true (read.accepted_hidden >= 1 && read.accepted_hidden <= 5);
  g_assert_true (read.tolerances.depth_mm >= 0 && read.tolerances.depth_mm <= 5);
  g_assert_true (read.tolerances.up_shear_mm >= 0 && read.tolerances.up_shear_mm <= 5);
  g_assert_true (g_utf8_validate (read.learner, -1, NULL));
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autofree char *folder = g_dir_make_tmp ("spelch-fuzz-XXXXXX", NULL);
  g_autofree char *answers = g_build_filename (folder, "answers.json", NULL);
  g_autofree char *preferences = g_build_filename (folder, "preferences.ini", NULL);
  g_assert_true (g_file_set_contents (answers, (const char *)data, (gssize)size, NULL));
  g_assert_true (g_file_set_contents (preferences, (const char *)data, (gssize)size, NULL));
  check_log (answers);
  check_preferences (folder);
  g_unlink (answers);
  g_unlink (preferences);
  g_rmdir (folder);
  return 0;
}

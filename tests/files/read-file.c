/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Says of each file named whether the program reads it as a part or, when its name ends in .json, as a shop
 * log or, after --exercise, as an exercise, after --practice, as a practice log: "accepted" or "refused" and
 * the reason, a line for each. For check-schema.py.
 */
#include "files/exercise-file.h"
#include "files/log-file.h"
#include "files/part-file.h"
#include "files/practice-log.h"

static bool
reads (const char *path, const char *as, GError **error)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  if (g_strcmp0 (as, "--exercise") == 0)
    {
      g_autoptr (SpelchExercise) one = spelch_exercise_load (file, error);
      return one != NULL;
    }
  if (g_strcmp0 (as, "--practice") == 0)
    {
      g_autoptr (SpelchPracticeLog) log = spelch_practice_log_load (file, NULL, error);
      return log != NULL;
    }
  if (g_str_has_suffix (path, ".json"))
    {
      g_autoptr (SpelchLog) log = spelch_log_load (file, NULL, error);
      return log != NULL;
    }
  g_autoptr (SpelchPart) part = spelch_part_load (file, NULL, error);
  return part != NULL;
}

int
main (int argc, char **argv)
{
  const char *as = argc > 1 && g_str_has_prefix (argv[1], "--") ? argv[1] : NULL;
  for (int i = as != NULL ? 2 : 1; i < argc; i++)
    {
      g_autoptr (GError) error = NULL;
      bool accepted = reads (argv[i], as, &error);
      g_print ("%s %s\n", accepted ? "accepted" : "refused", accepted ? "" : error->message);
    }
  return 0;
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Says of each file named whether the program reads it as a part or, when its name ends in .json, as a shop
 * log or, after --exercise, as an exercise: "accepted" or "refused" and the reason, a line for each. For
 * check-schema.py.
 */
#include "files/exercise-file.h"
#include "files/log-file.h"
#include "files/part-file.h"

static bool
reads (const char *path, bool exercise, GError **error)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  if (exercise)
    {
      g_autoptr (SpelchExercise) one = spelch_exercise_load (file, error);
      return one != NULL;
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
  bool exercise = argc > 1 && g_str_equal (argv[1], "--exercise");
  for (int i = exercise ? 2 : 1; i < argc; i++)
    {
      g_autoptr (GError) error = NULL;
      bool accepted = reads (argv[i], exercise, &error);
      g_print ("%s %s\n", accepted ? "accepted" : "refused", accepted ? "" : error->message);
    }
  return 0;
}

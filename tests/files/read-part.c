/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Says of each file named whether the program reads it as a part: "accepted" or "refused" and the reason, a
 * line for each. For check-schema.py.
 */
#include "files/part-file.h"

int
main (int argc, char **argv)
{
  for (int i = 1; i < argc; i++)
    {
      g_autoptr (GFile) file = g_file_new_for_path (argv[i]);
      g_autoptr (GError) error = NULL;
      g_autoptr (SpelchPart) part = spelch_part_load (file, NULL, &error);
      g_print ("%s %s\n", part != NULL ? "accepted" : "refused", part != NULL ? "" : error->message);
    }
  return 0;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reading.h"

#include <string.h>

SpelchPart *
reading_part (const char *text)
{
  g_autoptr (GError) error = NULL;
  SpelchPart *part = spelch_part_from_json (text, strlen (text), "test.spelch", &error);
  g_assert_no_error (error);
  return part;
}

char *
reading_file (const char *name)
{
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "files", name, NULL);
  char *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

void
reading_same_length (SpelchLength length, double mm, const char *typed)
{
  g_assert_cmpfloat (length.mm, ==, mm);
  g_assert_cmpstr (length.typed, ==, typed);
}

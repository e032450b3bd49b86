/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "corpus.h"

char *
corpus_path (const char *corpus, const char *folder, const char *name)
{
  return g_test_build_filename (G_TEST_DIST, "files", corpus, folder, name, NULL);
}

static char **
files_in (const char *corpus, const char *folder)
{
  g_autofree char *path = corpus_path (corpus, folder, NULL);
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();
  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir))
    g_strv_builder_add (names, name);
  return g_strv_builder_end (names);
}

static void
add_good (const char *corpus, const char *tests, GTestDataFunc good)
{
  g_auto (GStrv) names = files_in (corpus, "good");
  for (guint i = 0; names[i] != NULL; i++)
    {
      g_autofree char *path = g_strdup_printf ("/%s/good/%s", tests, names[i]);
      g_test_add_data_func_full (path, g_strdup (names[i]), good, g_free);
    }
}

static void
add_bad (const char *corpus, const char *tests, GTestDataFunc bad)
{
  g_autoptr (GKeyFile) list = g_key_file_new ();
  g_autofree char *ini = g_test_build_filename (G_TEST_DIST, "files", corpus, "bad.ini", NULL);
  g_autoptr (GError) error = NULL;
  g_key_file_load_from_file (list, ini, G_KEY_FILE_NONE, &error);
  g_assert_no_error (error);
  g_auto (GStrv) groups = g_key_file_get_groups (list, NULL);
  g_auto (GStrv) files = files_in (corpus, "bad");
  g_assert_cmpuint (g_strv_length (groups), ==, g_strv_length (files));
  for (guint i = 0; groups[i] != NULL; i++)
    {
      char **row = g_new0 (char *, 4);
      row[0] = g_strdup (groups[i]);
      row[1] = g_key_file_get_value (list, groups[i], "member", NULL);
      row[2] = g_key_file_get_value (list, groups[i], "value", NULL);
      g_autofree char *path = g_strdup_printf ("/%s/bad/%s", tests, groups[i]);
      g_test_add_data_func_full (path, row, bad, (GDestroyNotify)g_strfreev);
    }
}

void
corpus_add (const char *corpus, const char *tests, GTestDataFunc good, GTestDataFunc bad)
{
  add_good (corpus, tests, good);
  add_bad (corpus, tests, bad);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "running.h"

#include <sys/resource.h>
#include <sys/wait.h>

Running
running_words (const char *const *words)
{
  g_autoptr (GPtrArray) all = g_ptr_array_new ();
  Running ran = { NULL, NULL, -1 };
  g_ptr_array_add (all, (char *)g_getenv ("SPELCH_PROGRAM"));
  for (guint i = 0; words[i] != NULL; i++)
    g_ptr_array_add (all, (char *)words[i]);
  g_ptr_array_add (all, NULL);
  g_auto (GStrv) environment
      = g_environ_unsetenv (g_environ_unsetenv (g_get_environ (), "DISPLAY"), "WAYLAND_DISPLAY");
  g_autoptr (GError) error = NULL;
  int wait = 0;
  g_spawn_sync (NULL, (char **)all->pdata, environment, G_SPAWN_DEFAULT, NULL, NULL, &ran.out, &ran.err,
                &wait, &error);
  g_assert_no_error (error);
  g_assert_true (WIFEXITED (wait));
  ran.status = WEXITSTATUS (wait);
  return ran;
}

Running
running (const char *first, ...)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  va_list more;
  va_start (more, first);
  for (const char *word = first; word != NULL; word = va_arg (more, const char *))
    g_ptr_array_add (words, (char *)word);
  va_end (more);
  g_ptr_array_add (words, NULL);
  return running_words ((const char *const *)words->pdata);
}

void
running_clear (Running *ran)
{
  g_free (ran->out);
  g_free (ran->err);
}

double
running_took_s (void)
{
  struct rusage used;
  getrusage (RUSAGE_CHILDREN, &used);
  return (double)(used.ru_utime.tv_sec + used.ru_stime.tv_sec)
         + (double)(used.ru_utime.tv_usec + used.ru_stime.tv_usec) / 1e6;
}

char *
running_demo (void)
{
  return g_build_filename (g_getenv ("SPELCH_DATA"), "demo.spelch", NULL);
}

JsonObject *
running_object (JsonParser *parser, const char *text)
{
  g_autoptr (GError) error = NULL;
  json_parser_load_from_data (parser, text, -1, &error);
  g_assert_no_error (error);
  return json_node_get_object (json_parser_get_root (parser));
}

JsonObject *
running_cut (JsonParser *parser, const char *text)
{
  JsonArray *cuts = json_object_get_array_member (running_object (parser, text), "cuts");
  return json_array_get_object_element (cuts, 0);
}

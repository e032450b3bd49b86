/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/quitting.h"
#include "bench/bench-files.h"
#include "bench/practice-window.h"

/* Held by the question that is open; gone with it when it isn't answered by going ahead. */
typedef struct
{
  GtkApplication *application;
  GPtrArray *settled; /* SpelchBenchWindow whose work may be left */
} SpelchQuit;

static void
quit_clear (gpointer data)
{
  SpelchQuit *quit = data;
  g_ptr_array_unref (quit->settled);
  g_object_unref (quit->application);
}

static void
quit_release (gpointer quit)
{
  g_rc_box_release_full (quit, quit_clear);
}

/* Windows held, since closing one may end others. */
static GPtrArray *
all_windows (GtkApplication *application)
{
  GPtrArray *windows = g_ptr_array_new_with_free_func (g_object_unref);
  for (GList *item = gtk_application_get_windows (application); item != NULL; item = item->next)
    g_ptr_array_add (windows, g_object_ref (item->data));
  return windows;
}

static bool
is_open (GtkApplication *application, gconstpointer window)
{
  return g_list_find (gtk_application_get_windows (application), window) != NULL;
}

/* Practice tells of answers that can't be kept before it closes, and then stays once. */
static bool
practice_stays (GtkApplication *application)
{
  g_autoptr (GPtrArray) windows = all_windows (application);
  for (guint i = 0; i < windows->len; i++)
    {
      GtkWindow *window = windows->pdata[i];
      if (!SPELCH_IS_PRACTICE_WINDOW (window))
        continue;
      gtk_window_close (window);
      if (!is_open (application, window))
        continue;
      gtk_window_present (window);
      return true;
    }
  return false;
}

static void
close_all (GtkApplication *application)
{
  if (practice_stays (application))
    return;
  g_autoptr (GPtrArray) windows = all_windows (application);
  for (guint i = 0; i < windows->len; i++)
    if (!is_open (application, windows->pdata[i]))
      continue;
    else if (SPELCH_IS_BENCH_WINDOW (windows->pdata[i]))
      spelch_bench_window_close_unasked (windows->pdata[i]);
    else
      gtk_window_close (windows->pdata[i]);
}

static void ask_next (SpelchQuit *quit);

static void
settled (SpelchBenchWindow *window, gpointer quit)
{
  g_ptr_array_add (((SpelchQuit *)quit)->settled, g_object_ref (window));
  ask_next (quit);
}

static void
ask_next (SpelchQuit *quit)
{
  g_autoptr (GPtrArray) windows = all_windows (quit->application);
  for (guint i = 0; i < windows->len; i++)
    {
      SpelchBenchWindow *window = windows->pdata[i];
      if (!SPELCH_IS_BENCH_WINDOW (window) || g_ptr_array_find (quit->settled, window, NULL)
          || !spelch_session_is_unsaved (spelch_bench_window_get_session (window)))
        continue;
      spelch_files_ask_first (window, settled, g_rc_box_acquire (quit), quit_release);
      return;
    }
  close_all (quit->application);
}

/* A question, or something that is being written down. */
static GtkWindow *
open_question (void)
{
  GtkWindow *found = NULL;
  GList *toplevels = gtk_window_list_toplevels ();
  for (GList *item = toplevels; item != NULL && found == NULL; item = item->next)
    if (gtk_window_get_modal (item->data) && gtk_widget_get_visible (item->data)
        && !GTK_IS_ABOUT_DIALOG (item->data))
      found = item->data;
  g_list_free (toplevels);
  return found;
}

void
spelch_quit_all (GtkApplication *application)
{
  GtkWindow *question = open_question ();
  if (question != NULL)
    {
      gtk_window_present (question);
      return;
    }
  SpelchQuit *quit = g_rc_box_new0 (SpelchQuit);
  quit->application = g_object_ref (application);
  quit->settled = g_ptr_array_new_with_free_func (g_object_unref);
  ask_next (quit);
  quit_release (quit);
}

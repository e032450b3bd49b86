/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/one-window.h"

#define KEY "spelch-opened-by" /* of a window's data: the action that made it */

/* Belongs to the action. */
typedef struct
{
  GtkWindow *bench;
  SpelchSession *session;
  SpelchAppearance *appearance;
  SpelchOneMake make;
} Opening;

static void
opening_free (gpointer data, GClosure *closure)
{
  Opening *opening = data;
  g_object_unref (opening->session);
  g_clear_object (&opening->appearance);
  g_free (opening);
}

static GtkWindow *
find_window (GtkWindow *bench, GSimpleAction *action)
{
  GtkApplication *application = gtk_window_get_application (bench);
  for (GList *item = gtk_application_get_windows (application); item != NULL; item = item->next)
    if (g_object_get_data (G_OBJECT (item->data), KEY) == action)
      return item->data;
  return NULL;
}

static void
open_window (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  const Opening *opening = data;
  GtkWindow *window = find_window (opening->bench, action);
  if (window == NULL)
    {
      window = opening->make (opening->bench, opening->session, opening->appearance);
      g_object_set_data (G_OBJECT (window), KEY, action);
      g_signal_connect_object (opening->bench, "destroy", G_CALLBACK (gtk_window_destroy), window,
                               G_CONNECT_SWAPPED);
    }
  gtk_window_present (window);
}

GSimpleAction *
spelch_one_window_add_action (GtkApplicationWindow *bench, const char *name, SpelchSession *session,
                              SpelchAppearance *appearance, SpelchOneMake make)
{
  g_autoptr (GSimpleAction) action = g_simple_action_new (name, NULL);
  Opening *opening = g_new0 (Opening, 1);
  *opening = (Opening){ GTK_WINDOW (bench), g_object_ref (session), NULL, make };
  g_set_object (&opening->appearance, appearance);
  g_signal_connect_data (action, "activate", G_CALLBACK (open_window), opening, opening_free, 0);
  g_action_map_add_action (G_ACTION_MAP (bench), G_ACTION (action));
  return action;
}

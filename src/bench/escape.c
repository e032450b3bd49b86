/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/escape.h"

static gboolean
close_window (GtkWidget *window, GVariant *arguments, gpointer data)
{
  gtk_window_close (GTK_WINDOW (window));
  return TRUE;
}

void
spelch_escape_closes (GtkWindow *window)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();
  gtk_shortcut_controller_add_shortcut (
      GTK_SHORTCUT_CONTROLLER (keys), gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                        gtk_callback_action_new (close_window, NULL, NULL)));
  gtk_widget_add_controller (GTK_WIDGET (window), keys);
}

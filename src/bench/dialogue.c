/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/dialogue.h"

void
spelch_dialogue_end (GtkWindow *dialogue)
{
  GtkWindow *window = gtk_window_get_transient_for (dialogue);
  gtk_window_destroy (dialogue);
  if (window != NULL)
    gtk_window_present (window);
}

void
spelch_dialogue_end_native (GtkNativeDialog *dialogue)
{
  GtkWindow *window = gtk_native_dialog_get_transient_for (dialogue);
  gtk_native_dialog_destroy (dialogue);
  g_object_unref (dialogue);
  if (window != NULL)
    gtk_window_present (window);
}

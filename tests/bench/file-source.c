/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * file-source FILE...: a small window from which the files can be dragged, as from a file manager.
 */
#include <gtk/gtk.h>

#define WIDTH  160
#define HEIGHT 100

static GdkContentProvider *
drag_prepared (GtkDragSource *source, double x, double y, char **paths)
{
  GSList *files = NULL;
  for (; *paths != NULL; paths++)
    files = g_slist_append (files, g_file_new_for_commandline_arg (*paths));
  GdkContentProvider *content = gdk_content_provider_new_typed (GDK_TYPE_FILE_LIST, files);
  g_slist_free_full (files, g_object_unref);
  return content;
}

static void
activate (GtkApplication *application, char **paths)
{
  GtkWidget *window = gtk_application_window_new (application);
  GtkWidget *label = gtk_label_new ("Files to drop");
  GtkDragSource *source = gtk_drag_source_new ();
  g_signal_connect (source, "prepare", G_CALLBACK (drag_prepared), paths);
  gtk_widget_add_controller (label, GTK_EVENT_CONTROLLER (source));
  gtk_window_set_title (GTK_WINDOW (window), "Files to drop");
  gtk_window_set_decorated (GTK_WINDOW (window), FALSE);
  gtk_window_set_default_size (GTK_WINDOW (window), WIDTH, HEIGHT);
  gtk_window_set_child (GTK_WINDOW (window), label);
  gtk_window_present (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  g_autoptr (GtkApplication) application
      = gtk_application_new ("org.spelch.FileSource", G_APPLICATION_NON_UNIQUE);
  g_signal_connect (application, "activate", G_CALLBACK (activate), argv + 1);
  return g_application_run (G_APPLICATION (application), 1, argv);
}

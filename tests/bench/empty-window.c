/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * empty-window WIDTH HEIGHT [--animate]: a window of that size with nothing in it but a ground, painted whole
 * on every pointer motion, or in every frame, with the same meter as the program's own window: what the
 * benchmark compares with.
 */
#include "bench/frame-meter.h"

#include <stdlib.h>

static void
pointer_moved (GtkEventControllerMotion *motion, double x, double y, GtkWidget *area)
{
  gtk_widget_queue_draw (area);
}

static void
draw (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  cairo_set_source_rgb (cr, 0.98, 0.98, 0.97);
  cairo_paint (cr);
}

static gboolean
tick (GtkWidget *area, GdkFrameClock *clock, gpointer data)
{
  gtk_widget_queue_draw (area);
  return G_SOURCE_CONTINUE;
}

/* What is asked for: width, height, whether it is animated. */
static void
activate (GtkApplication *application, const int *size)
{
  GtkWidget *window = gtk_application_window_new (application);
  GtkWidget *area = gtk_drawing_area_new ();
  GtkEventController *motion = gtk_event_controller_motion_new ();
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw, NULL, NULL);
  g_signal_connect (motion, "motion", G_CALLBACK (pointer_moved), area);
  gtk_widget_add_controller (area, motion);
  if (size[2])
    gtk_widget_add_tick_callback (area, tick, NULL, NULL);
  gtk_window_set_title (GTK_WINDOW (window), "Empty window");
  gtk_window_set_decorated (GTK_WINDOW (window), FALSE);
  gtk_window_set_default_size (GTK_WINDOW (window), size[0], size[1]);
  gtk_window_set_child (GTK_WINDOW (window), area);
  gtk_window_present (GTK_WINDOW (window));
  spelch_frame_meter_attach (window, "");
}

int
main (int argc, char **argv)
{
  int size[3] = { argc > 2 ? atoi (argv[1]) : 1360, argc > 2 ? atoi (argv[2]) : 860, argc > 3 };
  g_setenv ("GSK_RENDERER", "cairo", FALSE);
  g_setenv ("GDK_DEBUG", "gl-disable", FALSE);
  g_autoptr (GtkApplication) application
      = gtk_application_new ("org.spelch.EmptyWindow", G_APPLICATION_NON_UNIQUE);
  g_signal_connect (application, "activate", G_CALLBACK (activate), size);
  return g_application_run (G_APPLICATION (application), 1, argv);
}

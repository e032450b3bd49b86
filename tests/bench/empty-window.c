/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * empty-window WIDTH HEIGHT [--animate | --titled | AREA-WIDTH AREA-HEIGHT TEXTS LETTERS [--filled]]: a
 * window of that size with nothing in it but a ground, painted whole on every pointer motion, or in every
 * frame, or under a title bar; or with an area in it that is repainted by Cairo on every motion, or only
 * filled with a colour, with so many texts of so many letters in it that all change. It has the same meter as
 * the program's own window: what the benchmarks compare with.
 */
#include "bench/frame-meter.h"

#include <stdbool.h>
#include <stdlib.h>

/* The numbers asked for, in the order they are told in. */
typedef struct
{
  int width, height;
  bool animated, titled;
  int area_width, area_height, texts, letters;
  bool filled;
} Asked;

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

/* ---- Texts that change ---- */

#define ROW 22 /* pixels */

typedef struct
{
  GtkWidget parent_instance;
  GPtrArray *layouts;
  bool filled; /* not painted */
  int letters;
  int drawn; /* so often */
} TextsArea;

typedef GtkWidgetClass TextsAreaClass;
GType texts_area_get_type (void);
G_DEFINE_TYPE (TextsArea, texts_area, GTK_TYPE_WIDGET)

static void
texts_area_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  static const char letters[] = "12.5 mm at 1460 mm a minute, ";
  const GdkRGBA ground = { 0.98f, 0.98f, 0.97f, 1 }, ink = { 0.1f, 0.1f, 0.1f, 1 };
  TextsArea *self = (TextsArea *)widget;
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  int rows = MAX (height / ROW, 1), columns = ((int)self->layouts->len + rows - 1) / rows;
  graphene_rect_t whole = GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height);
  if (self->filled)
    gtk_snapshot_append_color (snapshot, &ground, &whole);
  else
    {
      cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &whole);
      gdk_cairo_set_source_rgba (cr, &ground);
      cairo_paint (cr);
      cairo_destroy (cr);
    }
  self->drawn++;
  for (guint i = 0; i < self->layouts->len; i++)
    {
      g_autoptr (GString) text = g_string_new (NULL);
      for (int letter = 0; letter < self->letters; letter++)
        g_string_append_c (text, letters[(guint)(self->drawn + letter + (int)i) % (sizeof letters - 1)]);
      pango_layout_set_text (self->layouts->pdata[i], text->str, -1);
      float x = (float)((int)i / rows * width / columns), y = (float)((int)i % rows * ROW);
      gtk_snapshot_save (snapshot);
      gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (x, y));
      gtk_snapshot_append_layout (snapshot, self->layouts->pdata[i], &ink);
      gtk_snapshot_restore (snapshot);
    }
}

static void
texts_area_finalize (GObject *object)
{
  g_ptr_array_unref (((TextsArea *)object)->layouts);
  G_OBJECT_CLASS (texts_area_parent_class)->finalize (object);
}

static void
texts_area_class_init (TextsAreaClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = texts_area_finalize;
  klass->snapshot = texts_area_snapshot;
}

static void
texts_area_init (TextsArea *self)
{
  self->layouts = g_ptr_array_new_with_free_func (g_object_unref);
}

static GtkWidget *
texts_area_new (const Asked *asked)
{
  TextsArea *self = g_object_new (texts_area_get_type (), NULL);
  GtkWidget *widget = (GtkWidget *)self;
  self->letters = asked->letters;
  self->filled = asked->filled;
  for (int i = 0; i < asked->texts; i++)
    g_ptr_array_add (self->layouts, gtk_widget_create_pango_layout (widget, NULL));
  gtk_widget_set_size_request (widget, asked->area_width, asked->area_height);
  gtk_widget_set_halign (widget, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (widget, GTK_ALIGN_CENTER);
  return widget;
}

/* ---- The window ---- */

static GtkWidget *
ground_new (bool animated)
{
  GtkWidget *area = gtk_drawing_area_new ();
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw, NULL, NULL);
  if (animated)
    gtk_widget_add_tick_callback (area, tick, NULL, NULL);
  return area;
}

static void
activate (GtkApplication *application, const Asked *asked)
{
  GtkWidget *window = gtk_application_window_new (application);
  GtkWidget *area = asked->texts == 0 ? ground_new (asked->animated) : texts_area_new (asked);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  g_signal_connect (motion, "motion", G_CALLBACK (pointer_moved), area);
  gtk_widget_add_controller (area, motion);
  gtk_window_set_title (GTK_WINDOW (window), "Empty window");
  if (asked->titled)
    {
      gtk_window_set_titlebar (GTK_WINDOW (window), gtk_header_bar_new ());
      gtk_header_bar_pack_start (GTK_HEADER_BAR (gtk_window_get_titlebar (GTK_WINDOW (window))),
                                 gtk_label_new ("A line of text"));
    }
  gtk_window_set_decorated (GTK_WINDOW (window), asked->titled);
  gtk_window_set_default_size (GTK_WINDOW (window), asked->width, asked->height);
  gtk_window_set_child (GTK_WINDOW (window), area);
  gtk_window_present (GTK_WINDOW (window));
  spelch_frame_meter_attach (window, "");
}

int
main (int argc, char **argv)
{
  Asked asked = { .width = argc > 2 ? atoi (argv[1]) : 1360, .height = argc > 2 ? atoi (argv[2]) : 860 };
  asked.titled = argc == 4 && g_str_equal (argv[3], "--titled");
  asked.animated = argc == 4 && !asked.titled;
  if (argc >= 7)
    {
      asked.area_width = atoi (argv[3]);
      asked.area_height = atoi (argv[4]);
      asked.texts = atoi (argv[5]);
      asked.letters = atoi (argv[6]);
      asked.filled = argc > 7;
    }
  g_setenv ("GSK_RENDERER", "cairo", FALSE);
  g_setenv ("GDK_DEBUG", "gl-disable", FALSE);
  g_autoptr (GtkApplication) application
      = gtk_application_new ("org.spelch.EmptyWindow", G_APPLICATION_NON_UNIQUE);
  g_signal_connect (application, "activate", G_CALLBACK (activate), &asked);
  return g_application_run (G_APPLICATION (application), 1, argv);
}

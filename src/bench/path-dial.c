/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/path-dial.h"
#include "bench/telling.h"
#include "bench/tooltip.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <stdbool.h>

#define WIDTH       260
#define HEIGHT      132
#define GRAIN_APART 7.0  /* pixels between lines of grain */
#define ARROW       46.0 /* half length of the path */
#define GRIP        7.0
#define PAGE        15.0
#define CATCH       3.0 /* degrees beside a multiple of 15 at which a drag comes to rest on it */

struct _SpelchPathDial
{
  GtkRange parent_instance;
  const SpelchPalette *palette;
  SpelchLayer face; /* a's */
  bool showing;
  bool dragging;
  GtkGesture *drag;
};

G_DEFINE_FINAL_TYPE (SpelchPathDial, spelch_path_dial, GTK_TYPE_RANGE)

enum
{
  SIGNAL_TURNED,
  SIGNAL_DROPPED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- Angles ---- */

/* In -180 (excluded) to 180 degrees. */
static double
half_turns (double degrees)
{
  double rest = fmod (degrees, 360);
  return rest > 180 ? rest - 360 : rest <= -180 ? rest + 360 : rest;
}

/* Fibre angle from the travel toward its left, seen from the motor: above 0 against the grain. */
static double
fibre_angle (const SpelchLayer *face, const SpelchCut *cut)
{
  return spelch_angle_of_line (spelch_angle_seen_from (cut->way_up, face->grain_deg - cut->path_deg));
}

/* "32 degrees to the grain of face a, with it", "along the grain of face a". Free with g_free(). */
static char *
path_words (const SpelchBoard *board, const SpelchCut *cut)
{
  const SpelchLayer *face = &board->layers[0];
  if (face->grain == SPELCH_GRAIN_NONE)
    return g_strdup (_ ("face a has no grain"));
  if (face->grain == SPELCH_GRAIN_END)
    return g_strdup (_ ("face a is end grain"));
  double angle = fibre_angle (face, cut);
  guint whole = (guint)lround (fabs (angle));
  if (whole == 0)
    return g_strdup (_ ("along the grain of face a"));
  if (whole == 90)
    return g_strdup (_ ("across the grain of face a"));
  const char *format = angle > 0
                           ? g_dngettext (GETTEXT_PACKAGE, "%u degree to the grain of face a, against it",
                                          "%u degrees to the grain of face a, against it", whole)
                           : g_dngettext (GETTEXT_PACKAGE, "%u degree to the grain of face a, with it",
                                          "%u degrees to the grain of face a, with it", whole);
  return g_strdup_printf (format, whole);
}

static double
now (SpelchPathDial *self)
{
  return gtk_range_get_value (GTK_RANGE (self));
}

static void
turn_to (SpelchPathDial *self, double degrees)
{
  gtk_range_set_value (GTK_RANGE (self), half_turns (degrees));
}

static void
value_changed (SpelchPathDial *self)
{
  gtk_widget_queue_draw (GTK_WIDGET (self));
  if (!self->showing)
    g_signal_emit (self, signals[SIGNAL_TURNED], 0, now (self), (gboolean)!self->dragging);
}

/* ---- Dragging ---- */

static void
point_at (SpelchPathDial *self, double x, double y)
{
  double right = x - gtk_widget_get_width (GTK_WIDGET (self)) / 2.0;
  double up = gtk_widget_get_height (GTK_WIDGET (self)) / 2.0 - y;
  if (hypot (right, up) < GRIP)
    return;
  double degrees = round (atan2 (up, right) * 180 / G_PI), catch_at = round (degrees / PAGE) * PAGE;
  turn_to (self, fabs (degrees - catch_at) <= CATCH ? catch_at : degrees);
}

static void
drag_begun (GtkGestureDrag *drag, double x, double y, SpelchPathDial *self)
{
  gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_CLAIMED);
  gtk_widget_grab_focus (GTK_WIDGET (self));
  self->dragging = true;
  point_at (self, x, y);
}

static void
drag_moved (GtkGestureDrag *drag, double dx, double dy, SpelchPathDial *self)
{
  double x = 0, y = 0;
  gtk_gesture_drag_get_start_point (drag, &x, &y);
  if (self->dragging)
    point_at (self, x + dx, y + dy);
}

static void
drag_ended (GtkGestureDrag *drag, double dx, double dy, SpelchPathDial *self)
{
  if (!self->dragging)
    return;
  self->dragging = false;
  g_signal_emit (self, signals[SIGNAL_TURNED], 0, now (self), TRUE);
}

static void
drag_cancelled (SpelchPathDial *self)
{
  if (!self->dragging)
    return;
  self->dragging = false;
  g_signal_emit (self, signals[SIGNAL_DROPPED], 0);
}

/* ---- Keys ---- */

static gboolean
key_turns (GtkWidget *widget, GVariant *args, gpointer data)
{
  SpelchPathDial *self = SPELCH_PATH_DIAL (widget);
  turn_to (self, now (self) + g_variant_get_double (args));
  return TRUE;
}

static gboolean
key_turns_to (GtkWidget *widget, GVariant *args, gpointer data)
{
  turn_to (SPELCH_PATH_DIAL (widget), g_variant_get_double (args));
  return TRUE;
}

static gboolean
key_restores (GtkWidget *widget, GVariant *args, gpointer data)
{
  SpelchPathDial *self = SPELCH_PATH_DIAL (widget);
  if (!self->dragging)
    return FALSE;
  drag_cancelled (self);
  gtk_gesture_set_state (self->drag, GTK_EVENT_SEQUENCE_DENIED);
  return TRUE;
}

static void
bind_keys (GtkWidgetClass *widget_class)
{
  const struct
  {
    guint key, on_keypad;
    double by;
  } turns[] = {
    { GDK_KEY_Up, GDK_KEY_KP_Up, 1 },
    { GDK_KEY_Right, GDK_KEY_KP_Right, 1 },
    { GDK_KEY_plus, GDK_KEY_KP_Add, 1 },
    { GDK_KEY_Down, GDK_KEY_KP_Down, -1 },
    { GDK_KEY_Left, GDK_KEY_KP_Left, -1 },
    { GDK_KEY_minus, GDK_KEY_KP_Subtract, -1 },
    { GDK_KEY_Page_Up, GDK_KEY_KP_Page_Up, PAGE },
    { GDK_KEY_Page_Down, GDK_KEY_KP_Page_Down, -PAGE },
  };
  for (guint i = 0; i < G_N_ELEMENTS (turns); i++)
    {
      gtk_widget_class_add_binding (widget_class, turns[i].key, 0, key_turns, "d", turns[i].by);
      gtk_widget_class_add_binding (widget_class, turns[i].on_keypad, 0, key_turns, "d", turns[i].by);
    }
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Home, 0, key_turns_to, "d", 0.0);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_End, 0, key_turns_to, "d", 90.0);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, key_restores, NULL);
}

/* ---- Looks ---- */

static void
set_colour (cairo_t *cr, SpelchColour colour)
{
  cairo_set_source_rgb (cr, colour.r, colour.g, colour.b);
}

/* Lines of grain over the whole board, which is clipped to. */
static void
draw_grain (SpelchPathDial *self, cairo_t *cr, double reach)
{
  if (self->face.grain == SPELCH_GRAIN_NONE || self->face.grain == SPELCH_GRAIN_END)
    return;
  cairo_save (cr);
  cairo_rotate (cr, -self->face.grain_deg * G_PI / 180);
  for (double y = -reach; y <= reach; y += GRAIN_APART)
    {
      cairo_move_to (cr, -reach, y);
      if (self->face.grain == SPELCH_GRAIN_FIGURED)
        cairo_curve_to (cr, -reach / 3, y + GRAIN_APART * 2, reach / 3, y - GRAIN_APART * 2, reach, y);
      else
        cairo_line_to (cr, reach, y);
    }
  set_colour (cr, self->palette->ink_soft);
  cairo_set_line_width (cr, 0.8);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_path (SpelchPathDial *self, cairo_t *cr, bool focused)
{
  cairo_save (cr);
  cairo_rotate (cr, -now (self) * G_PI / 180);
  cairo_move_to (cr, -ARROW, 0);
  cairo_line_to (cr, ARROW, 0);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  set_colour (cr, self->palette->ground);
  cairo_set_line_width (cr, 11);
  cairo_stroke_preserve (cr);
  set_colour (cr, self->palette->ink);
  cairo_set_line_width (cr, focused ? 3 : 2);
  cairo_stroke (cr);
  cairo_move_to (cr, ARROW + GRIP + 5, 0);
  cairo_line_to (cr, ARROW - GRIP, -GRIP);
  cairo_line_to (cr, ARROW - GRIP, GRIP);
  cairo_close_path (cr);
  cairo_fill (cr);
  cairo_restore (cr);
}

static void
spelch_path_dial_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SpelchPathDial *self = SPELCH_PATH_DIAL (widget);
  if (self->palette == NULL)
    return;
  double width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  bool focused = gtk_widget_has_visible_focus (widget);
  double line = focused ? 2.5 : 1.2;
  cairo_rectangle (cr, line / 2, line / 2, width - line, height - line);
  set_colour (cr, self->palette->label_ground);
  cairo_fill_preserve (cr);
  cairo_save (cr);
  cairo_clip_preserve (cr);
  cairo_new_path (cr);
  cairo_translate (cr, width / 2, height / 2);
  draw_grain (self, cr, hypot (width, height) / 2);
  draw_path (self, cr, focused);
  cairo_restore (cr);
  cairo_rectangle (cr, line / 2, line / 2, width - line, height - line);
  set_colour (cr, self->palette->ink);
  cairo_set_line_width (cr, line);
  cairo_stroke (cr);
  cairo_destroy (cr);
}

static void
spelch_path_dial_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                          int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH : HEIGHT;
}

static void
spelch_path_dial_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  /* No trough and slider to lay out. */
}

/* ---- Showing ---- */

static bool
has_direction (const SpelchCut *cut)
{
  return !spelch_cut_every_direction (cut);
}

void
spelch_path_dial_show (SpelchPathDial *self, const SpelchPart *part, const SpelchCut *cut,
                       const SpelchPalette *palette)
{
  g_autofree char *words = path_words (&part->board, cut);
  g_autofree char *label = g_strdup_printf (_ ("Direction of the path, %s"), words);
  self->palette = palette;
  self->face = part->board.layers[0];
  self->showing = true;
  turn_to (self, cut->path_deg);
  self->showing = false;
  gtk_widget_set_visible (GTK_WIDGET (self), has_direction (cut));
  spelch_tooltip_set (GTK_WIDGET (self), words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_VALUE_TEXT, words, -1);
  spelch_tell_soon (GTK_WIDGET (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* ---- Object ---- */

static void
spelch_path_dial_class_init (SpelchPathDialClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  widget_class->snapshot = spelch_path_dial_snapshot;
  widget_class->measure = spelch_path_dial_measure;
  widget_class->size_allocate = spelch_path_dial_size_allocate;
  signals[SIGNAL_TURNED] = g_signal_new ("turned", SPELCH_TYPE_PATH_DIAL, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                         NULL, G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_BOOLEAN);
  signals[SIGNAL_DROPPED] = g_signal_new ("dropped", SPELCH_TYPE_PATH_DIAL, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                          NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (widget_class, "pathdial");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_SLIDER);
  bind_keys (widget_class);
}

/* A form that is scrolled with the pointer over the dial is to scroll, and nothing else. */
static void
leave_the_wheel (GtkWidget *widget)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);
  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
      if (GTK_IS_EVENT_CONTROLLER_SCROLL (controller))
        gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_NONE);
    }
}

static void
spelch_path_dial_init (SpelchPathDial *self)
{
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_halign (GTK_WIDGET (self), GTK_ALIGN_START);
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "grab");
  self->drag = gtk_gesture_drag_new ();
  /* Before the range's own gestures, which would look for a slider. */
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (self->drag), GTK_PHASE_CAPTURE);
  g_signal_connect (self->drag, "drag-begin", G_CALLBACK (drag_begun), self);
  g_signal_connect (self->drag, "drag-update", G_CALLBACK (drag_moved), self);
  g_signal_connect (self->drag, "drag-end", G_CALLBACK (drag_ended), self);
  g_signal_connect_swapped (self->drag, "cancel", G_CALLBACK (drag_cancelled), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (self->drag));
  leave_the_wheel (GTK_WIDGET (self));
}

SpelchPathDial *
spelch_path_dial_new (void)
{
  GtkAdjustment *degrees = gtk_adjustment_new (0, -180, 180, 1, PAGE, 0);
  SpelchPathDial *self = g_object_new (SPELCH_TYPE_PATH_DIAL, "adjustment", degrees, NULL);
  g_signal_connect_swapped (degrees, "value-changed", G_CALLBACK (value_changed), self);
  return self;
}

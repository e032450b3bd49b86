/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/depth-mark.h"
#include "bench/glyph.h"
#include "bench/telling.h"
#include "bench/word-help.h"
#include "drawing/lettering.h"

#include <math.h>

#define FINGER 10 /* units beside a mark: with its own height more than the 44 of a fingertip */

struct _SpelchDepthMark
{
  GtkRange parent_instance;
  SpelchQuantity *quantity;
  const SpelchPalette *palette;
  PangoLayout *layout;
  char *drawn; /* words on the pill */
  bool held;
  double per_right, per_down; /* mm for each pixel */
  bool shown;

  GtkGesture *drag;
  bool dragging;
  double begun_at; /* mm */
  double begun_right, begun_down;
  double begun_x, begun_y; /* of the pointer, in the parent's pixels: the mark moves away under the pointer */
};

G_DEFINE_FINAL_TYPE (SpelchDepthMark, spelch_depth_mark, GTK_TYPE_RANGE)

/* ---- Dragging ---- */

void
spelch_depth_mark_drag_begin (SpelchDepthMark *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
  guint pass = spelch_quantity_get_pass (self->quantity);
  if (pass > 0)
    spelch_session_show_pass (spelch_quantity_get_session (self->quantity), pass);
  self->dragging = true;
  self->begun_at = spelch_quantity_get_reading (self->quantity)->value;
  self->begun_right = self->per_right;
  self->begun_down = self->per_down;
  spelch_quantity_begin (self->quantity);
}

bool
spelch_depth_mark_is_dragged (SpelchDepthMark *self)
{
  return self->dragging;
}

void
spelch_depth_mark_drag_to (SpelchDepthMark *self, double dx, double dy)
{
  if (self->dragging)
    spelch_quantity_move (self->quantity, self->begun_at + dx * self->begun_right + dy * self->begun_down);
}

void
spelch_depth_mark_drag_end (SpelchDepthMark *self, bool keep)
{
  if (!self->dragging)
    return;
  self->dragging = false;
  spelch_quantity_end (self->quantity, keep);
}

static double
distance_from (double at, double begin, double length)
{
  return MAX (MAX (begin - at, at - begin - length), 0);
}

SpelchDepthMark *
spelch_depth_mark_near (const GPtrArray *marks, GtkWidget *view, double x, double y)
{
  SpelchDepthMark *nearest = NULL;
  double least = FINGER;
  for (guint i = 0; i < marks->len; i++)
    {
      graphene_rect_t place;
      if (!gtk_widget_get_child_visible (marks->pdata[i])
          || !gtk_widget_compute_bounds (marks->pdata[i], view, &place))
        continue;
      double away = hypot (distance_from (x, place.origin.x, place.size.width),
                           distance_from (y, place.origin.y, place.size.height));
      if (away > least)
        continue;
      least = away;
      nearest = marks->pdata[i];
    }
  return nearest;
}

static void
pointer_in_parent (SpelchDepthMark *self, double x, double y, double *px, double *py)
{
  GtkWidget *parent = gtk_widget_get_parent (GTK_WIDGET (self));
  gtk_widget_translate_coordinates (GTK_WIDGET (self), parent, x, y, px, py);
}

static void
drag_begun (GtkGestureDrag *drag, double x, double y, SpelchDepthMark *self)
{
  gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_CLAIMED);
  pointer_in_parent (self, x, y, &self->begun_x, &self->begun_y);
  spelch_depth_mark_drag_begin (self);
}

static void
drag_moved (GtkGestureDrag *drag, double dx, double dy, SpelchDepthMark *self)
{
  double x = 0, y = 0, px = 0, py = 0;
  gtk_gesture_drag_get_start_point (drag, &x, &y);
  pointer_in_parent (self, x + dx, y + dy, &px, &py);
  spelch_depth_mark_drag_to (self, px - self->begun_x, py - self->begun_y);
}

static void
drag_ended (GtkGestureDrag *drag, double dx, double dy, SpelchDepthMark *self)
{
  spelch_depth_mark_drag_end (self, true);
}

static void
drag_cancelled (GtkGesture *gesture, GdkEventSequence *sequence, SpelchDepthMark *self)
{
  spelch_depth_mark_drag_end (self, false);
}

/* ---- Keys ---- */

/* @args: (right, down, pages, deeper): which way a key points on screen, or 0 with @deeper its sense for the
 * value. */
static gboolean
key_moves (GtkWidget *widget, GVariant *args, gpointer data)
{
  SpelchDepthMark *self = SPELCH_DEPTH_MARK (widget);
  int right = 0, down = 0, page = 0, more = 0;
  g_variant_get (args, "(iiii)", &right, &down, &page, &more);
  double way = right * self->per_right + down * self->per_down + more;
  if (way == 0)
    return TRUE; /* an arrow across the mark's way must not carry the focus off */
  int sense = way > 0 ? 1 : -1;
  spelch_quantity_nudge (self->quantity, page ? 0 : sense, page ? sense : 0);
  return TRUE;
}

static gboolean
key_to_end (GtkWidget *widget, GVariant *args, gpointer data)
{
  SpelchDepthMark *self = SPELCH_DEPTH_MARK (widget);
  const SpelchReading *reading = spelch_quantity_get_reading (self->quantity);
  spelch_quantity_move (self->quantity, g_variant_get_boolean (args) ? reading->upper : reading->lower);
  return TRUE;
}

static gboolean
key_restores (GtkWidget *widget, GVariant *args, gpointer data)
{
  SpelchDepthMark *self = SPELCH_DEPTH_MARK (widget);
  if (!self->dragging)
    return FALSE;
  spelch_depth_mark_drag_end (self, false);
  gtk_gesture_set_state (self->drag, GTK_EVENT_SEQUENCE_DENIED);
  return TRUE;
}

static gboolean
key_shows (GtkWidget *widget, GVariant *args, gpointer data)
{
  SpelchDepthMark *self = SPELCH_DEPTH_MARK (widget);
  spelch_session_show_pass (spelch_quantity_get_session (self->quantity),
                            spelch_quantity_get_pass (self->quantity));
  return TRUE;
}

static void
bind_keys (GtkWidgetClass *widget_class)
{
  const struct
  {
    guint key;
    int right, down, page, more;
  } moves[] = {
    { GDK_KEY_Right, 1, 0, 0, 0 },        { GDK_KEY_KP_Right, 1, 0, 0, 0 },
    { GDK_KEY_Left, -1, 0, 0, 0 },        { GDK_KEY_KP_Left, -1, 0, 0, 0 },
    { GDK_KEY_Down, 0, 1, 0, 0 },         { GDK_KEY_KP_Down, 0, 1, 0, 0 },
    { GDK_KEY_Up, 0, -1, 0, 0 },          { GDK_KEY_KP_Up, 0, -1, 0, 0 },
    { GDK_KEY_Page_Down, 1, 1, 1, 0 },    { GDK_KEY_KP_Page_Down, 1, 1, 1, 0 },
    { GDK_KEY_Page_Up, -1, -1, 1, 0 },    { GDK_KEY_KP_Page_Up, -1, -1, 1, 0 },
    { GDK_KEY_plus, 0, 0, 0, 1 },         { GDK_KEY_KP_Add, 0, 0, 0, 1 },
    { GDK_KEY_equal, 0, 0, 0, 1 },        { GDK_KEY_minus, 0, 0, 0, -1 },
    { GDK_KEY_KP_Subtract, 0, 0, 0, -1 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (moves); i++)
    gtk_widget_class_add_binding (widget_class, moves[i].key, 0, key_moves, "(iiii)", moves[i].right,
                                  moves[i].down, moves[i].page, moves[i].more);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_plus, GDK_SHIFT_MASK, key_moves, "(iiii)", 0, 0, 0, 1);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Home, 0, key_to_end, "b", FALSE);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_End, 0, key_to_end, "b", TRUE);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, key_restores, NULL);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Return, 0, key_shows, NULL);
}

/* ---- Looks ---- */

static PangoLayout *
ensure_layout (SpelchDepthMark *self)
{
  if (self->layout == NULL)
    {
      self->layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), NULL);
      spelch_lettering_plainly (self->layout);
    }
  pango_layout_set_text (self->layout, spelch_quantity_get_pill (self->quantity), -1);
  return self->layout;
}

static void
set_colour (cairo_t *cr, SpelchColour colour)
{
  cairo_set_source_rgb (cr, colour.r, colour.g, colour.b);
}

static void
pill_path (cairo_t *cr, double x, double y, double width, double height)
{
  double r = height / 2;
  cairo_new_sub_path (cr);
  cairo_arc (cr, x + r, y + r, r, G_PI / 2, 3 * G_PI / 2);
  cairo_arc (cr, x + width - r, y + r, r, -G_PI / 2, G_PI / 2);
  cairo_close_path (cr);
}

/* A pin when the value is held by hand, else a dot to take hold of. */
static void
draw_grip (SpelchDepthMark *self, cairo_t *cr, double height)
{
  double size = height * 0.42;
  if (spelch_quantity_get_reading (self->quantity)->held)
    {
      cairo_save (cr);
      cairo_translate (cr, height * 0.34, (height - size) / 2);
      spelch_glyph_draw (cr, SPELCH_GLYPH_PIN, size);
      cairo_restore (cr);
      return;
    }
  cairo_arc (cr, height * 0.52, height / 2, size * 0.38, 0, 2 * G_PI);
  cairo_fill (cr);
}

static void
words_drawn (GtkWidget *widget, GString *text)
{
  g_string_append_printf (text, "%s\n", spelch_quantity_get_pill (SPELCH_DEPTH_MARK (widget)->quantity));
}

static void
spelch_depth_mark_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SpelchDepthMark *self = SPELCH_DEPTH_MARK (widget);
  if (self->palette == NULL)
    return;
  double width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float)width, (float)height));
  bool focused = gtk_widget_has_visible_focus (widget);
  double line = focused ? 2.5 : self->shown ? 1.8 : 1.1;
  pill_path (cr, line / 2, line / 2, width - line, height - line);
  set_colour (cr, self->palette->ground);
  cairo_fill_preserve (cr);
  set_colour (cr, self->palette->ink);
  cairo_set_line_width (cr, line);
  cairo_stroke (cr);
  bool small = spelch_quantity_get_id (self->quantity).kind == SPELCH_MARK_THICKNESS;
  if (!small)
    draw_grip (self, cr, height);
  int text_width = 0, text_height = 0;
  PangoLayout *layout = ensure_layout (self);
  pango_layout_get_pixel_size (layout, &text_width, &text_height);
  double left = small ? 0 : height * 0.86, right = small ? 0 : height * 0.4;
  cairo_move_to (cr, floor (left + MAX (0, (width - left - right - text_width) / 2)),
                 floor ((height - text_height) / 2));
  pango_cairo_show_layout (cr, layout);
  cairo_destroy (cr);
}

static void
spelch_depth_mark_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                           int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = 8; /* the scene says where and how large */
}

static void
spelch_depth_mark_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  /* No trough and slider to lay out: the range's own layout is left out on purpose. */
}

static void
spelch_depth_mark_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  SpelchDepthMark *self = SPELCH_DEPTH_MARK (widget);
  GTK_WIDGET_CLASS (spelch_depth_mark_parent_class)->css_changed (widget, change);
  g_clear_object (&self->layout);
}

/* ---- Object ---- */

/* A board's thickness and depths are always there, an allowance only when something is left on. */
static bool
has_mark (SpelchQuantity *quantity)
{
  const SpelchReading *reading = spelch_quantity_get_reading (quantity);
  return spelch_quantity_get_id (quantity).kind != SPELCH_MARK_ALLOWANCE || reading->held
         || reading->value > 0;
}

static void
quantity_changed (SpelchDepthMark *self)
{
  const char *label = spelch_quantity_get_label (self->quantity);
  const char *pill = spelch_quantity_get_pill (self->quantity);
  bool held = spelch_quantity_get_reading (self->quantity)->held;
  gtk_widget_set_visible (GTK_WIDGET (self), has_mark (self->quantity));
  spelch_tell_soon (GTK_WIDGET (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label);
  if (held == self->held && g_strcmp0 (self->drawn, pill) == 0)
    return;
  g_free (self->drawn);
  self->drawn = g_strdup (pill);
  self->held = held;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
spelch_depth_mark_set_scale (SpelchDepthMark *self, double per_right, double per_down)
{
  self->per_right = per_right;
  self->per_down = per_down;
}

void
spelch_depth_mark_set_palette (SpelchDepthMark *self, const SpelchPalette *palette)
{
  self->palette = palette;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
spelch_depth_mark_set_shown (SpelchDepthMark *self, bool shown)
{
  if (self->shown == shown)
    return;
  self->shown = shown;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

SpelchQuantity *
spelch_depth_mark_get_quantity (SpelchDepthMark *self)
{
  return self->quantity;
}

static void
spelch_depth_mark_dispose (GObject *object)
{
  SpelchDepthMark *self = SPELCH_DEPTH_MARK (object);
  spelch_depth_mark_drag_end (self, true);
  if (self->quantity != NULL)
    g_signal_handlers_disconnect_by_data (self->quantity, self);
  g_clear_object (&self->quantity);
  g_clear_object (&self->layout);
  G_OBJECT_CLASS (spelch_depth_mark_parent_class)->dispose (object);
}

static void
spelch_depth_mark_finalize (GObject *object)
{
  SpelchDepthMark *self = SPELCH_DEPTH_MARK (object);
  g_free (self->drawn);
  G_OBJECT_CLASS (spelch_depth_mark_parent_class)->finalize (object);
}

static void
spelch_depth_mark_class_init (SpelchDepthMarkClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_depth_mark_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_depth_mark_finalize;
  widget_class->snapshot = spelch_depth_mark_snapshot;
  widget_class->measure = spelch_depth_mark_measure;
  widget_class->size_allocate = spelch_depth_mark_size_allocate;
  widget_class->css_changed = spelch_depth_mark_css_changed;
  gtk_widget_class_set_css_name (widget_class, "depthmark");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_SLIDER);
  bind_keys (widget_class);
}

static void
spelch_depth_mark_init (SpelchDepthMark *self)
{
  spelch_word_help_set_drawn (GTK_WIDGET (self), words_drawn);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  self->drag = gtk_gesture_drag_new ();
  /* Before the range's own gestures, which would look for a slider. */
  gtk_event_controller_set_propagation_phase (GTK_EVENT_CONTROLLER (self->drag), GTK_PHASE_CAPTURE);
  g_signal_connect (self->drag, "drag-begin", G_CALLBACK (drag_begun), self);
  g_signal_connect (self->drag, "drag-update", G_CALLBACK (drag_moved), self);
  g_signal_connect (self->drag, "drag-end", G_CALLBACK (drag_ended), self);
  g_signal_connect (self->drag, "cancel", G_CALLBACK (drag_cancelled), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (self->drag));
}

SpelchDepthMark *
spelch_depth_mark_new (SpelchQuantity *quantity)
{
  SpelchDepthMark *self
      = g_object_new (SPELCH_TYPE_DEPTH_MARK, "adjustment", spelch_quantity_get_adjustment (quantity), NULL);
  self->quantity = g_object_ref (quantity);
  g_signal_connect_swapped (quantity, "changed", G_CALLBACK (quantity_changed), self);
  bool sideways = spelch_quantity_get_id (quantity).kind == SPELCH_MARK_ALLOWANCE;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), sideways ? "ew-resize" : "ns-resize");
  quantity_changed (self);
  return self;
}

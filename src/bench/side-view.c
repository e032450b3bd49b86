/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/side-view.h"
#include "bench/bit-tile.h"
#include "bench/depth-mark.h"
#include "bench/face-toggle.h"
#include "bench/kept-scene.h"
#include "bench/text-size.h"
#include "bench/word-help.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define LEAST_WIDTH  420
#define LEAST_HEIGHT 290
#define BAND_MARGIN  20
#define BAND_SLACK   12
#define FACE_MARGIN  4 /* around a face's name, still part of what is clicked */

struct _SpelchSideView
{
  GtkWidget parent_instance;
  SpelchSession *session;
  GListModel *quantities;
  GPtrArray *marks;    /* SpelchDepthMark, in the order of @quantities */
  GtkWidget *faces[2]; /* by SpelchSide: over the names of the faces */
  GtkWidget *corner;   /* what stands in the corner that the scene keeps free */
  SpelchLook look;
  SpelchScene *scene; /* NULL: to be laid out anew */
  int laid_out_width, laid_out_height;
  SpelchRect corner_room; /* and band, when the corner was placed last */
  int corner_band;
  bool dragging;              /* when the scene was laid out */
  SpelchSceneHold hold;       /* what is kept while something is dragged */
  int band;                   /* height left above the scene for a corner that is too small */
  SpelchLettering *lettering; /* kept from scene to scene */
  SpelchKeptScene kept;
  bool one_pass, without_windows; /* as of a view */

  GtkGesture *drag;
  SpelchDepthMark *dragged; /* the mark of the pass whose bit is dragged */
  bool over_bit;
};

G_DEFINE_FINAL_TYPE (SpelchSideView, spelch_side_view, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_BIT_DROPPED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- The scene ---- */

static SpelchScene *
lay_out (SpelchSideView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);
  spelch_text_keep_lettering (widget, &self->lettering);
  SpelchView view = { .width = gtk_widget_get_width (widget),
                      .height = MAX (gtk_widget_get_height (widget) - self->band, 1),
                      .text = spelch_text_factor (widget),
                      .look = self->look,
                      .numbers = *spelch_session_get_numbers (self->session),
                      .family = spelch_text_family (widget),
                      .lettering = self->lettering,
                      .shown_pass = spelch_session_get_shown_pass (self->session),
                      .corner_taken = self->corner != NULL && self->band == 0,
                      .corner_unused = self->corner != NULL && self->band > 0,
                      .one_pass = self->one_pass,
                      .without_windows = self->without_windows,
                      .hold = self->hold,
                      .asking = spelch_session_is_asked (self->session) };
  return spelch_scene_new (spelch_session_get_part (self->session), spelch_session_get_cut (self->session),
                           spelch_session_get_bit (self->session), spelch_session_get_plan (self->session),
                           &view);
}

/* Height of a band above the drawing for what doesn't fit into the corner of @scene; 0 when it does. */
static int
needed_band (SpelchSideView *self, const SpelchScene *scene)
{
  SpelchRect room = spelch_scene_corner (scene);
  int least = 0, height = 0, wide = gtk_widget_get_width (GTK_WIDGET (self)) - 2 * BAND_MARGIN;
  if (self->corner == NULL)
    return 0;
  gtk_widget_measure (self->corner, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  if (least <= room.width)
    {
      gtk_widget_measure (self->corner, GTK_ORIENTATION_VERTICAL, (int)room.width, &height, NULL, NULL, NULL);
      if (height <= room.height + BAND_SLACK)
        return 0;
    }
  gtk_widget_measure (self->corner, GTK_ORIENTATION_VERTICAL, MAX (wide, least), &height, NULL, NULL, NULL);
  return height + BAND_MARGIN;
}

static SpelchScene *
ensure_scene (SpelchSideView *self)
{
  const SpelchPlan *plan = self->session == NULL ? NULL : spelch_session_get_plan (self->session);
  if (self->scene != NULL || plan == NULL || gtk_widget_get_width (GTK_WIDGET (self)) < 1)
    return self->scene;
  bool settled = !spelch_session_in_gesture (self->session);
  int before = self->band;
  if (settled)
    { /* asked anew; while something is dragged the drawing keeps its place */
      self->band = 0;
      self->hold = (SpelchSceneHold){ 0 };
    }
  self->scene = lay_out (self);
  int band = settled ? needed_band (self, self->scene) : before;
  if (band != self->band)
    {
      self->band = band;
      spelch_scene_free (self->scene);
      self->scene = lay_out (self);
    }
  if (settled)
    self->hold = spelch_scene_hold (self->scene);
  self->dragging = !settled;
  return self->scene;
}

static bool
same_room (SpelchSideView *self, SpelchRect room)
{
  const SpelchRect *last = &self->corner_room;
  return room.x == last->x && room.y == last->y && room.width == last->width && room.height == last->height
         && self->band == self->corner_band;
}

/* How the scene numbers a quantity's mark: passes from 1, the others 0. */
static guint
scene_index (SpelchQuantity *quantity)
{
  bool is_pass = spelch_quantity_get_id (quantity).kind == SPELCH_MARK_PASS;
  return is_pass ? spelch_quantity_get_pass (quantity) : 0;
}

static void place_corner (SpelchSideView *self);
static void place_marks (SpelchSideView *self);

/* Before the first layout of a drag, while the one that it began at is there. */
static void
hold_dragged_mark (SpelchSideView *self)
{
  if (self->scene == NULL || self->hold.dragged || !spelch_session_in_gesture (self->session))
    return;
  for (guint i = 0; i < self->marks->len; i++)
    {
      SpelchQuantity *quantity = spelch_depth_mark_get_quantity (self->marks->pdata[i]);
      if (spelch_depth_mark_is_dragged (self->marks->pdata[i]))
        spelch_scene_hold_mark (self->scene, spelch_quantity_get_id (quantity).kind, scene_index (quantity),
                                &self->hold);
    }
}

/* Lays the scene out anew. Its children are moved at once rather than through a layout of the window, for
 * which GTK asks the display how large the screen is: a round trip in every frame of a drag. */
static void
drop_scene (SpelchSideView *self)
{
  if (self->session != NULL)
    hold_dragged_mark (self);
  g_clear_pointer (&self->scene, spelch_scene_free);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  if (ensure_scene (self) == NULL)
    {
      self->band = 0;
      gtk_widget_queue_allocate (GTK_WIDGET (self));
      return;
    }
  if (!same_room (self, spelch_scene_corner (self->scene)))
    place_corner (self);
  place_marks (self);
}

/* ---- Marks ---- */

static void
place_mark (SpelchSideView *self, SpelchDepthMark *mark)
{
  SpelchQuantity *quantity = spelch_depth_mark_get_quantity (mark);
  SpelchMarkKind kind = spelch_quantity_get_id (quantity).kind;
  SpelchRect rect = { 0 };
  bool there = self->scene != NULL && spelch_scene_mark (self->scene, kind, scene_index (quantity), &rect);
  gtk_widget_set_child_visible (GTK_WIDGET (mark), there);
  if (!there)
    return;
  double down = spelch_scene_depth (self->scene, rect.y + 1) - spelch_scene_depth (self->scene, rect.y);
  double right = spelch_scene_across (self->scene, rect.x + 1) - spelch_scene_across (self->scene, rect.x);
  if (kind == SPELCH_MARK_ALLOWANCE)
    spelch_depth_mark_set_scale (mark, right, 0);
  else
    spelch_depth_mark_set_scale (mark, 0, down);
  guint pass = spelch_quantity_get_pass (quantity);
  spelch_depth_mark_set_shown (mark, pass > 0 && pass == spelch_session_get_shown_pass (self->session));
  gtk_widget_size_allocate (GTK_WIDGET (mark),
                            &(GtkAllocation){ (int)round (rect.x), (int)round (rect.y) + self->band,
                                              MAX ((int)ceil (rect.width), 8),
                                              MAX ((int)ceil (rect.height), 8) },
                            -1);
}

static void
place_faces (SpelchSideView *self)
{
  for (guint side = 0; side < G_N_ELEMENTS (self->faces) && self->faces[side] != NULL; side++)
    {
      bool there = self->scene != NULL && !spelch_session_is_asked (self->session);
      gtk_widget_set_child_visible (self->faces[side], there);
      if (!there)
        continue;
      SpelchRect face = spelch_scene_face (self->scene, (SpelchSide)side);
      int least = 0, high = 0;
      gtk_widget_measure (self->faces[side], GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
      gtk_widget_measure (self->faces[side], GTK_ORIENTATION_VERTICAL, -1, &high, NULL, NULL, NULL);
      int width = MAX (least, (int)face.width + 2 * FACE_MARGIN);
      int height = MAX (high, (int)face.height + 2 * FACE_MARGIN);
      gtk_widget_size_allocate (self->faces[side],
                                &(GtkAllocation){ (int)face.x - FACE_MARGIN,
                                                  (int)face.y - FACE_MARGIN + self->band, width, height },
                                -1);
    }
}

static void
place_corner (SpelchSideView *self)
{
  if (self->corner == NULL)
    return;
  /* Without a cut there's no drawing, but board and machine can be chosen all the same. */
  SpelchRect room
      = self->scene == NULL
            ? (SpelchRect){ BAND_MARGIN, BAND_MARGIN / 2.0,
                            gtk_widget_get_width (GTK_WIDGET (self)) - 2 * BAND_MARGIN, LEAST_HEIGHT }
            : spelch_scene_corner (self->scene);
  int least = 0, height = 0;
  self->corner_room = room;
  self->corner_band = self->band;
  if (self->band > 0)
    room = (SpelchRect){ BAND_MARGIN, BAND_MARGIN / 2.0,
                         gtk_widget_get_width (GTK_WIDGET (self)) - 2 * BAND_MARGIN, self->band };
  gtk_widget_measure (self->corner, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
  int width = MAX (least, (int)room.width);
  gtk_widget_measure (self->corner, GTK_ORIENTATION_VERTICAL, width, &height, NULL, NULL, NULL);
  gtk_widget_size_allocate (self->corner,
                            &(GtkAllocation){ (int)room.x, (int)room.y, width, MAX (height, 1) }, -1);
}

static void
place_marks (SpelchSideView *self)
{
  for (guint i = 0; i < self->marks->len; i++)
    place_mark (self, g_ptr_array_index (self->marks, i));
  place_faces (self);
}

static void
drop_mark (gpointer mark)
{
  gtk_widget_unparent (mark);
}

static void
quantities_changed (GListModel *quantities, guint position, guint removed, guint added, SpelchSideView *self)
{
  if (removed > 0)
    g_ptr_array_remove_range (self->marks, position, removed);
  for (guint i = 0; i < added; i++)
    {
      g_autoptr (SpelchQuantity) quantity = g_list_model_get_item (quantities, position + i);
      SpelchDepthMark *mark = spelch_depth_mark_new (quantity);
      spelch_depth_mark_set_palette (mark, spelch_palette (self->look));
      guint at = position + i;
      GtkWidget *next = at < self->marks->len ? g_ptr_array_index (self->marks, at) : NULL;
      gtk_widget_insert_before (GTK_WIDGET (mark), GTK_WIDGET (self), next);
      g_ptr_array_insert (self->marks, (int)at, mark);
    }
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

/* ---- Dragging the bit ---- */

static bool
on_bit (SpelchSideView *self, double x, double y)
{
  if (self->scene == NULL)
    return false;
  SpelchRect bit = spelch_scene_bit (self->scene);
  bit.y += self->band;
  return x >= bit.x && x <= bit.x + bit.width && y >= bit.y && y <= bit.y + bit.height;
}

static SpelchDepthMark *
mark_of_shown_pass (SpelchSideView *self)
{
  for (guint i = 0; i < self->marks->len; i++)
    {
      SpelchDepthMark *mark = g_ptr_array_index (self->marks, i);
      guint pass = spelch_quantity_get_pass (spelch_depth_mark_get_quantity (mark));
      if (pass > 0 && pass == spelch_session_get_shown_pass (self->session))
        return mark;
    }
  return NULL;
}

/* The bit stands for the pass that is shown. */
static SpelchDepthMark *
mark_meant (SpelchSideView *self, double x, double y)
{
  SpelchDepthMark *near = spelch_depth_mark_near (self->marks, GTK_WIDGET (self), x, y);
  return near == NULL && on_bit (self, x, y) ? mark_of_shown_pass (self) : near;
}

static void
bit_drag_begun (GtkGestureDrag *drag, double x, double y, SpelchSideView *self)
{
  SpelchDepthMark *mark = mark_meant (self, x, y);
  if (mark == NULL)
    {
      gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_DENIED);
      return;
    }
  gtk_gesture_set_state (GTK_GESTURE (drag), GTK_EVENT_SEQUENCE_CLAIMED);
  g_set_object (&self->dragged, mark);
  spelch_depth_mark_drag_begin (mark);
}

static void
bit_dragged (GtkGestureDrag *drag, double dx, double dy, SpelchSideView *self)
{
  if (self->dragged != NULL)
    spelch_depth_mark_drag_to (self->dragged, dx, dy);
}

static void
end_bit_drag (SpelchSideView *self, bool keep)
{
  g_autoptr (SpelchDepthMark) mark = g_steal_pointer (&self->dragged);
  if (mark != NULL)
    spelch_depth_mark_drag_end (mark, keep);
}

static void
bit_drag_ended (GtkGestureDrag *drag, double dx, double dy, SpelchSideView *self)
{
  end_bit_drag (self, true);
}

static void
bit_drag_cancelled (GtkGesture *gesture, GdkEventSequence *sequence, SpelchSideView *self)
{
  end_bit_drag (self, false);
}

static void
pointer_moved (GtkEventControllerMotion *motion, double x, double y, SpelchSideView *self)
{
  bool over = self->dragged != NULL || mark_meant (self, x, y) != NULL;
  if (over == self->over_bit)
    return;
  self->over_bit = over;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), over ? "grab" : NULL);
}

static gboolean
bit_dropped (GtkDropTarget *target, const GValue *value, double x, double y, SpelchSideView *self)
{
  g_signal_emit (self, signals[SIGNAL_BIT_DROPPED], 0,
                 spelch_bit_tile_get_bit (g_value_get_object (value))->id);
  return TRUE;
}

/* ---- Drawing ---- */

static void
append_mark_line (SpelchSideView *self, GtkSnapshot *snapshot, SpelchDepthMark *mark)
{
  SpelchQuantity *quantity = spelch_depth_mark_get_quantity (mark);
  double x0 = 0, x1 = 0, y = 0;
  if (!spelch_scene_mark_line (self->scene, spelch_quantity_get_id (quantity).kind, scene_index (quantity),
                               &x0, &x1, &y))
    return;
  double left = floor (MIN (x0, x1)), right = ceil (MAX (x0, x1)), top = floor (y) - 2;
  if (right - left < 1)
    return;
  const SpelchPalette *palette = spelch_palette (self->look);
  cairo_t *cr = gtk_snapshot_append_cairo (
      snapshot, &GRAPHENE_RECT_INIT ((float)left, (float)top, (float)(right - left), 5));
  cairo_set_source_rgb (cr, palette->ink.r, palette->ink.g, palette->ink.b);
  cairo_set_line_width (cr, 1.2);
  cairo_set_dash (cr, (const double[]){ 7, 4 }, 2, 0);
  cairo_move_to (cr, x0, y);
  cairo_line_to (cr, x1, y);
  cairo_stroke (cr);
  cairo_destroy (cr);
}

static void
append_scene (SpelchSideView *self, GtkSnapshot *snapshot, const SpelchScene *scene)
{
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (0, (float)self->band));
  spelch_kept_scene_append (&self->kept, snapshot, scene, gtk_widget_get_scale_factor (GTK_WIDGET (self)));
  spelch_kept_scene_append_grip (snapshot, scene, spelch_palette (self->look),
                                 gtk_widget_get_height (GTK_WIDGET (self)));
  for (guint i = 0; i < self->marks->len; i++)
    append_mark_line (self, snapshot, g_ptr_array_index (self->marks, i));
  gtk_snapshot_restore (snapshot);
}

static void
words_drawn (GtkWidget *widget, GString *text)
{
  spelch_scene_gather (ensure_scene (SPELCH_SIDE_VIEW (widget)), text);
}

static void
spelch_side_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SpelchSideView *self = SPELCH_SIDE_VIEW (widget);
  const SpelchScene *scene = ensure_scene (self);
  if (scene != NULL)
    append_scene (self, snapshot, scene);
  for (guint side = 0; side < G_N_ELEMENTS (self->faces); side++)
    if (self->faces[side] != NULL)
      gtk_widget_snapshot_child (widget, self->faces[side], snapshot);
  if (self->corner != NULL)
    gtk_widget_snapshot_child (widget, self->corner, snapshot);
  for (guint i = 0; i < self->marks->len; i++)
    gtk_widget_snapshot_child (widget, g_ptr_array_index (self->marks, i), snapshot);
}

static void
spelch_side_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SpelchSideView *self = SPELCH_SIDE_VIEW (widget);
  if (width != self->laid_out_width || height != self->laid_out_height)
    g_clear_pointer (&self->scene, spelch_scene_free);
  self->laid_out_width = width;
  self->laid_out_height = height;
  ensure_scene (self);
  place_corner (self);
  place_marks (self);
}

static void
spelch_side_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                          int *natural, int *minimum_baseline, int *natural_baseline)
{
  double text = spelch_text_factor (widget);
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? (int)(LEAST_WIDTH * text) : LEAST_HEIGHT;
}

static void
spelch_side_view_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (spelch_side_view_parent_class)->css_changed (widget, change);
  drop_scene (SPELCH_SIDE_VIEW (widget));
}

/* ---- Following the session ---- */

static void
session_settled (SpelchSession *session, guint change, SpelchSideView *self)
{
  if (self->dragging && !spelch_session_in_gesture (session))
    drop_scene (self); /* it needn't keep its place any longer */
  ensure_scene (self);
  g_autofree char *words = self->scene == NULL ? g_strdup ("") : spelch_scene_describe (self->scene);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

static void
session_changed (SpelchSession *session, guint change, SpelchSideView *self)
{
  if (change & (SPELCH_CHANGE_PLAN | SPELCH_CHANGE_NUMBERS | SPELCH_CHANGE_PART | SPELCH_CHANGE_CUT))
    drop_scene (self);
}

void
spelch_side_view_set_session (SpelchSideView *self, SpelchSession *session, GListModel *quantities)
{
  g_return_if_fail (self->session == NULL);
  self->session = g_object_ref (session);
  self->quantities = g_object_ref (quantities);
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed), self, 0);
  g_signal_connect_object (session, "settled", G_CALLBACK (session_settled), self, 0);
  g_signal_connect_object (quantities, "items-changed", G_CALLBACK (quantities_changed), self, 0);
  for (guint side = 0; side < G_N_ELEMENTS (self->faces); side++)
    {
      self->faces[side] = spelch_face_toggle_new (session, (SpelchSide)side);
      gtk_widget_set_parent (self->faces[side], GTK_WIDGET (self));
    }
  quantities_changed (quantities, 0, 0, g_list_model_get_n_items (quantities), self);
  drop_scene (self);
}

void
spelch_side_view_set_look (SpelchSideView *self, SpelchLook look)
{
  self->look = look;
  for (guint i = 0; i < self->marks->len; i++)
    spelch_depth_mark_set_palette (g_ptr_array_index (self->marks, i), spelch_palette (look));
  drop_scene (self);
}

void
spelch_side_view_set_small (SpelchSideView *self, bool one_pass, bool without_windows)
{
  self->one_pass = one_pass;
  self->without_windows = without_windows;
}

void
spelch_side_view_set_corner (SpelchSideView *self, GtkWidget *corner)
{
  g_return_if_fail (self->corner == NULL);
  self->corner = corner;
  gtk_widget_insert_after (corner, GTK_WIDGET (self), NULL);
}

/* ---- Object ---- */

static void
spelch_side_view_dispose (GObject *object)
{
  SpelchSideView *self = SPELCH_SIDE_VIEW (object);
  end_bit_drag (self, true);
  g_ptr_array_set_size (self->marks, 0);
  for (guint side = 0; side < G_N_ELEMENTS (self->faces); side++)
    g_clear_pointer (&self->faces[side], gtk_widget_unparent);
  g_clear_pointer (&self->corner, gtk_widget_unparent);
  g_clear_pointer (&self->scene, spelch_scene_free);
  spelch_kept_scene_clear (&self->kept);
  g_clear_object (&self->quantities);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (spelch_side_view_parent_class)->dispose (object);
}

static void
spelch_side_view_finalize (GObject *object)
{
  SpelchSideView *self = SPELCH_SIDE_VIEW (object);
  g_ptr_array_unref (self->marks);
  g_clear_pointer (&self->lettering, spelch_lettering_unref);
  G_OBJECT_CLASS (spelch_side_view_parent_class)->finalize (object);
}

static void
spelch_side_view_class_init (SpelchSideViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_side_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_side_view_finalize;
  widget_class->snapshot = spelch_side_view_snapshot;
  widget_class->size_allocate = spelch_side_view_size_allocate;
  widget_class->measure = spelch_side_view_measure;
  widget_class->css_changed = spelch_side_view_css_changed;
  signals[SIGNAL_BIT_DROPPED] = g_signal_new ("bit-dropped", SPELCH_TYPE_SIDE_VIEW, G_SIGNAL_RUN_LAST, 0,
                                              NULL, NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_css_name (widget_class, "sideview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
add_bit_drag (SpelchSideView *self)
{
  self->drag = gtk_gesture_drag_new ();
  g_signal_connect (self->drag, "drag-begin", G_CALLBACK (bit_drag_begun), self);
  g_signal_connect (self->drag, "drag-update", G_CALLBACK (bit_dragged), self);
  g_signal_connect (self->drag, "drag-end", G_CALLBACK (bit_drag_ended), self);
  g_signal_connect (self->drag, "cancel", G_CALLBACK (bit_drag_cancelled), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (self->drag));
  GtkEventController *motion = gtk_event_controller_motion_new ();
  g_signal_connect (motion, "motion", G_CALLBACK (pointer_moved), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
}

static void
spelch_side_view_init (SpelchSideView *self)
{
  self->marks = g_ptr_array_new_with_free_func (drop_mark);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Side view"), -1);
  spelch_word_help_set_drawn (GTK_WIDGET (self), words_drawn);
  add_bit_drag (self);
  GtkDropTarget *drop
      = gtk_drop_target_new (SPELCH_TYPE_BIT_TILE, GDK_ACTION_COPY); /* not text: files are that too */
  g_signal_connect (drop, "drop", G_CALLBACK (bit_dropped), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drop));
}

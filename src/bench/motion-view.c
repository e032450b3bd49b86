/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/motion-view.h"
#include "bench/kept-scene.h"
#include "bench/telling.h"
#include "bench/text-size.h"
#include "drawing/motion-scene.h"
#include "plan/words-motion.h"

#include <glib/gi18n-lib.h>

#define LEAST_WIDTH  420
#define LEAST_HEIGHT 380
#define LONGEST_S    0.2 /* that a frame may let go by: after a pause of the machine it goes on where it was */
#define KEPT_SCENES  3
#define BEAT_MS      100 /* where nothing moves smoothly: frames for nothing would only keep the machine busy */

/* What was planned when it was taken over. */
typedef struct
{
  SpelchPart *part;
  SpelchCut cut;
  SpelchBit bit;
  SpelchPlan plan;
  SpelchNumbers numbers;
  SpelchMotion *motion;
} Shown;

typedef struct
{
  SpelchMotionScene *scene; /* NULL: free */
  GskRenderNode *still;
  guint pass;
  guint used; /* when it was shown last */
} Kept;

typedef struct
{
  GskRenderNode *node;
  const SpelchMotionScene *scene;
  double value;
  bool blurred;
} KeptPart;

struct _SpelchMotionView
{
  GtkWidget parent_instance;
  Shown *shown; /* NULL: nothing */
  SpelchMotionClock clock;
  SpelchMotionFrame *frame;
  SpelchLook look;
  int laid_out_width, laid_out_height;
  SpelchLettering *lettering;
  Kept scenes[KEPT_SCENES];
  guint uses;
  guint preparing; /* source */
  guint prepared;  /* pass that is, from 1; 0: none */
  KeptPart parts[SPELCH_MOTION_N_PARTS];
  guint tick, beat; /* one of them, while it plays: for every frame, or now and then */
  gint64 last_us;   /* of the frame clock; 0: it has just begun to play */
};

G_DEFINE_FINAL_TYPE (SpelchMotionView, spelch_motion_view, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_MOVED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- What is shown ---- */

static void
shown_free (Shown *shown)
{
  if (shown == NULL)
    return;
  spelch_part_unref (shown->part);
  g_free (shown->motion);
  g_free (shown);
}

static Shown *
shown_new (SpelchSession *session)
{
  const SpelchPlan *plan = spelch_session_get_plan (session);
  if (plan == NULL)
    return NULL;
  Shown *shown = g_new0 (Shown, 1);
  shown->part = spelch_part_ref (spelch_session_get_part (session));
  shown->cut = *spelch_session_get_cut (session);
  shown->bit = *spelch_session_get_bit (session);
  shown->plan = *plan;
  shown->numbers = *spelch_session_get_numbers (session);
  shown->motion = spelch_motion_new (spelch_session_get_constants (session), shown->part, &shown->cut,
                                     &shown->bit, &shown->plan);
  return shown;
}

static bool
moves (SpelchMotionView *self)
{
  return self->shown != NULL && self->shown->motion->n_passes > 0;
}

static void
drop_scenes (SpelchMotionView *self)
{
  self->prepared = 0;
  for (guint i = 0; i < SPELCH_MOTION_N_PARTS; i++)
    g_clear_pointer (&self->parts[i].node, gsk_render_node_unref);
  for (guint i = 0; i < KEPT_SCENES; i++)
    {
      g_clear_pointer (&self->scenes[i].still, gsk_render_node_unref);
      g_clear_pointer (&self->scenes[i].scene, spelch_motion_scene_free);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* The scene of a pass, or the room for it: what wasn't used for longest. */
static Kept *
find_kept (SpelchMotionView *self, guint pass)
{
  Kept *oldest = &self->scenes[0];
  for (guint i = 0; i < KEPT_SCENES; i++)
    {
      Kept *kept = &self->scenes[i];
      if (kept->scene != NULL && kept->pass == pass)
        return kept;
      if (oldest->scene != NULL && (kept->scene == NULL || kept->used < oldest->used))
        oldest = kept;
    }
  g_clear_pointer (&oldest->still, gsk_render_node_unref);
  g_clear_pointer (&oldest->scene, spelch_motion_scene_free);
  return oldest;
}

static SpelchMotionScene *
lay_out (SpelchMotionView *self, guint pass)
{
  GtkWidget *widget = GTK_WIDGET (self);
  spelch_text_keep_lettering (widget, &self->lettering);
  SpelchView view = { .width = gtk_widget_get_width (widget),
                      .height = gtk_widget_get_height (widget),
                      .text = spelch_text_factor (widget),
                      .look = self->look,
                      .numbers = self->shown->numbers,
                      .family = spelch_text_family (widget),
                      .lettering = self->lettering };
  return spelch_motion_scene_new (self->shown->part, &self->shown->cut, &self->shown->bit, &self->shown->plan,
                                  self->shown->motion, pass, &view, gtk_widget_get_scale_factor (widget));
}

static Kept *
ensure_scene (SpelchMotionView *self, guint pass)
{
  Kept *kept = find_kept (self, pass);
  kept->used = ++self->uses;
  if (kept->scene != NULL)
    return kept;
  kept->pass = pass;
  kept->scene = lay_out (self, pass);
  return kept;
}

static GskRenderNode *
still_of (SpelchMotionView *self, Kept *kept)
{
  GtkWidget *widget = GTK_WIDGET (self);
  if (kept->still == NULL)
    kept->still = spelch_kept_tiles (spelch_motion_scene_still (kept->scene), gtk_widget_get_width (widget),
                                     gtk_widget_get_height (widget));
  return kept->still;
}

/* The pictures of the pass that follows are made meanwhile, one at a time, so that no frame has to wait for
 * them. */
static gboolean
prepare (gpointer data)
{
  SpelchMotionView *self = data;
  if (moves (self) && gtk_widget_get_mapped (GTK_WIDGET (self)))
    {
      guint next = (self->clock.pass + 1) % self->shown->motion->n_passes;
      if (spelch_motion_scene_prepare (ensure_scene (self, next)->scene))
        return G_SOURCE_CONTINUE;
      self->prepared = next + 1;
    }
  self->preparing = 0;
  return G_SOURCE_REMOVE;
}

static void
prepare_next (SpelchMotionView *self)
{
  guint next = (self->clock.pass + 1) % self->shown->motion->n_passes;
  if (self->preparing == 0 && self->prepared != next + 1)
    self->preparing = g_idle_add_full (G_PRIORITY_LOW, prepare, self, NULL);
}

/* ---- Drawing ---- */

static GskRenderNode *
part_node (SpelchMotionView *self, SpelchMotionScene *scene, SpelchMotionPart part, bool blurred)
{
  SpelchRect b = spelch_motion_scene_bounds (scene, part, self->frame);
  GskRenderNode *node
      = gsk_cairo_node_new (&GRAPHENE_RECT_INIT ((float)b.x, (float)b.y, (float)b.width, (float)b.height));
  cairo_t *cr = gsk_cairo_node_get_draw_context (node);
  spelch_motion_scene_draw_part (scene, part, cr, self->frame, blurred);
  cairo_destroy (cr);
  return node;
}

static void
append_part (SpelchMotionView *self, GtkSnapshot *snapshot, SpelchMotionScene *scene, SpelchMotionPart part,
             bool blurred)
{
  KeptPart *kept = &self->parts[part];
  double value = spelch_motion_scene_value (scene, part, self->frame, blurred);
  if (kept->node == NULL || kept->scene != scene || kept->value != value || kept->blurred != blurred)
    {
      g_clear_pointer (&kept->node, gsk_render_node_unref);
      *kept = (KeptPart){ part_node (self, scene, part, blurred), scene, value, blurred };
    }
  gtk_snapshot_append_node (snapshot, kept->node);
}

static void
spelch_motion_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SpelchMotionView *self = SPELCH_MOTION_VIEW (widget);
  if (!moves (self) || gtk_widget_get_width (widget) < 1 || gtk_widget_get_height (widget) < 1)
    return;
  Kept *kept = ensure_scene (self, self->clock.pass);
  bool blurred = spelch_motion_clock_is_blurred (&self->clock);
  spelch_motion_at (self->shown->motion, self->clock.pass, self->clock.turned, self->frame);
  gtk_snapshot_append_node (snapshot, still_of (self, kept));
  for (int part = 0; part < SPELCH_MOTION_N_PARTS; part++)
    append_part (self, snapshot, kept->scene, (SpelchMotionPart)part, blurred);
  prepare_next (self);
}

static void
spelch_motion_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SpelchMotionView *self = SPELCH_MOTION_VIEW (widget);
  if (width != self->laid_out_width || height != self->laid_out_height)
    drop_scenes (self);
  self->laid_out_width = width;
  self->laid_out_height = height;
}

static void
spelch_motion_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                            int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? LEAST_WIDTH : LEAST_HEIGHT;
}

static void
spelch_motion_view_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (spelch_motion_view_parent_class)->css_changed (widget, change);
  drop_scenes (SPELCH_MOTION_VIEW (widget));
}

/* ---- Going on ---- */

/* While it plays nobody is told of every frame; once it stands the instant is described. */
static void
tell (SpelchMotionView *self)
{
  g_autofree char *words = NULL;
  if (!moves (self))
    words = g_strdup (_ ("No pass can be cut as this is set, so there is nothing to show in motion."));
  else if (self->clock.playing && !self->clock.reduced)
    words = g_strdup (_ ("It is playing; Space pauses it."));
  else
    {
      spelch_motion_at (self->shown->motion, self->clock.pass, self->clock.turned, self->frame);
      bool stop = self->shown->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT;
      g_autofree char *instant = spelch_words_motion_frame (self->shown->motion, self->frame,
                                                            self->shown->plan.machine, &self->shown->numbers);
      words = stop
                  ? g_strdup_printf ("%s %s", _ ("Do not cut this as it is set; the plan says why."), instant)
                  : g_steal_pointer (&instant);
    }
  spelch_tell_soon (GTK_WIDGET (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words);
}

static gboolean tick (GtkWidget *widget, GdkFrameClock *frame_clock, gpointer data);
static gboolean beat (gpointer self);

static void
stop (SpelchMotionView *self)
{
  if (self->tick != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->tick);
  self->tick = 0;
  self->last_us = 0;
  g_clear_handle_id (&self->beat, g_source_remove);
}

/* Whether it moves smoothly may change from pass to pass: with another bit teeth follow faster. */
static void
keep_time (SpelchMotionView *self)
{
  bool smooth = !self->clock.reduced && !spelch_motion_clock_is_blurred (&self->clock);
  bool ticks = self->clock.playing && smooth, beats = self->clock.playing && !smooth;
  if (ticks != (self->tick != 0) || beats != (self->beat != 0))
    {
      stop (self);
      if (ticks)
        self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self), tick, NULL, NULL);
      if (beats)
        self->beat = g_timeout_add (BEAT_MS, beat, self);
    }
}

static void
go_on (SpelchMotionView *self, gint64 now_us)
{
  double seconds = self->last_us == 0 ? 0 : (double)(now_us - self->last_us) / G_USEC_PER_SEC;
  self->last_us = now_us;
  if (!spelch_motion_clock_advance (&self->clock, MIN (seconds, LONGEST_S)))
    return;
  keep_time (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  if (self->clock.reduced)
    tell (self);
  g_signal_emit (self, signals[SIGNAL_MOVED], 0);
}

static gboolean
tick (GtkWidget *widget, GdkFrameClock *frame_clock, gpointer data)
{
  go_on (SPELCH_MOTION_VIEW (widget), gdk_frame_clock_get_frame_time (frame_clock));
  return G_SOURCE_CONTINUE;
}

static gboolean
beat (gpointer self)
{
  go_on (self, g_get_monotonic_time ());
  return G_SOURCE_CONTINUE;
}

static void
follow_clock (SpelchMotionView *self)
{
  keep_time (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  tell (self);
  g_signal_emit (self, signals[SIGNAL_MOVED], 0);
}

void
spelch_motion_view_play (SpelchMotionView *self, bool playing)
{
  self->clock.playing = playing && moves (self);
  self->clock.waited = 0;
  follow_clock (self);
}

void
spelch_motion_view_step (SpelchMotionView *self, int teeth)
{
  spelch_motion_clock_step (&self->clock, teeth);
  follow_clock (self);
}

void
spelch_motion_view_seek (SpelchMotionView *self, guint pass, double turned)
{
  spelch_motion_clock_set (&self->clock, pass, turned);
  follow_clock (self);
}

void
spelch_motion_view_set_ratio (SpelchMotionView *self, double ratio)
{
  self->clock.ratio = ratio;
  self->clock.waited = 0;
  follow_clock (self);
}

void
spelch_motion_view_show (SpelchMotionView *self, SpelchSession *session)
{
  Shown *shown = shown_new (session);
  spelch_motion_clock_take (&self->clock, shown == NULL ? NULL : shown->motion);
  drop_scenes (self);
  shown_free (self->shown);
  self->shown = shown;
  follow_clock (self);
}

void
spelch_motion_view_set_look (SpelchMotionView *self, SpelchLook look)
{
  self->look = look;
  drop_scenes (self);
}

const SpelchMotion *
spelch_motion_view_get_motion (SpelchMotionView *self)
{
  return moves (self) ? self->shown->motion : NULL;
}

const SpelchMotionClock *
spelch_motion_view_get_clock (SpelchMotionView *self)
{
  return &self->clock;
}

/* ---- Keys ---- */

static gboolean
key_plays (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  SpelchMotionView *self = SPELCH_MOTION_VIEW (widget);
  spelch_motion_view_play (self, !self->clock.playing);
  return TRUE;
}

/* The way time goes on screen, which is that of reading. */
static gboolean
key_steps (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  bool mirrored = gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL;
  int right = g_variant_get_int32 (arguments);
  spelch_motion_view_step (SPELCH_MOTION_VIEW (widget), mirrored ? -right : right);
  return TRUE;
}

static gboolean
key_changes_pass (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  SpelchMotionView *self = SPELCH_MOTION_VIEW (widget);
  int on = g_variant_get_int32 (arguments), n = moves (self) ? (int)self->shown->motion->n_passes : 0;
  if (n > 0)
    spelch_motion_view_seek (self, (guint)CLAMP ((int)self->clock.pass + on, 0, n - 1), 0);
  return TRUE;
}

static gboolean
key_goes_to_end (GtkWidget *widget, GVariant *arguments, gpointer data)
{
  SpelchMotionView *self = SPELCH_MOTION_VIEW (widget);
  if (moves (self))
    spelch_motion_view_seek (self, self->clock.pass, g_variant_get_int32 (arguments) == 0 ? 0 : G_MAXDOUBLE);
  return TRUE;
}

static void
add_keys (GtkWidgetClass *klass)
{
  gtk_widget_class_add_binding (klass, GDK_KEY_space, 0, key_plays, NULL);
  gtk_widget_class_add_binding (klass, GDK_KEY_KP_Space, 0, key_plays, NULL);
  gtk_widget_class_add_binding (klass, GDK_KEY_Right, 0, key_steps, "i", 1);
  gtk_widget_class_add_binding (klass, GDK_KEY_Left, 0, key_steps, "i", -1);
  gtk_widget_class_add_binding (klass, GDK_KEY_Down, 0, key_changes_pass, "i", 1);
  gtk_widget_class_add_binding (klass, GDK_KEY_Up, 0, key_changes_pass, "i", -1);
  gtk_widget_class_add_binding (klass, GDK_KEY_Page_Down, 0, key_changes_pass, "i", 1);
  gtk_widget_class_add_binding (klass, GDK_KEY_Page_Up, 0, key_changes_pass, "i", -1);
  gtk_widget_class_add_binding (klass, GDK_KEY_Home, 0, key_goes_to_end, "i", 0);
  gtk_widget_class_add_binding (klass, GDK_KEY_End, 0, key_goes_to_end, "i", 1);
}

static void
pressed (GtkGestureClick *click, int count, double x, double y, SpelchMotionView *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self));
}

/* ---- Object ---- */

static void
settings_changed (GtkSettings *settings, GParamSpec *spec, SpelchMotionView *self)
{
  gboolean animations = TRUE;
  g_object_get (settings, "gtk-enable-animations", &animations, NULL);
  if (self->clock.reduced == !animations)
    return;
  self->clock.reduced = !animations;
  follow_clock (self);
}

static void
spelch_motion_view_realize (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (spelch_motion_view_parent_class)->realize (widget);
  settings_changed (gtk_widget_get_settings (widget), NULL, SPELCH_MOTION_VIEW (widget));
}

static void
spelch_motion_view_dispose (GObject *object)
{
  SpelchMotionView *self = SPELCH_MOTION_VIEW (object);
  stop (self);
  g_clear_handle_id (&self->preparing, g_source_remove);
  drop_scenes (self);
  g_clear_pointer (&self->shown, shown_free);
  self->clock = (SpelchMotionClock){ 0 };
  G_OBJECT_CLASS (spelch_motion_view_parent_class)->dispose (object);
}

static void
spelch_motion_view_finalize (GObject *object)
{
  SpelchMotionView *self = SPELCH_MOTION_VIEW (object);
  g_clear_pointer (&self->lettering, spelch_lettering_unref);
  g_free (self->frame);
  G_OBJECT_CLASS (spelch_motion_view_parent_class)->finalize (object);
}

static void
spelch_motion_view_class_init (SpelchMotionViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_motion_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_motion_view_finalize;
  widget_class->snapshot = spelch_motion_view_snapshot;
  widget_class->size_allocate = spelch_motion_view_size_allocate;
  widget_class->measure = spelch_motion_view_measure;
  widget_class->css_changed = spelch_motion_view_css_changed;
  widget_class->realize = spelch_motion_view_realize;
  signals[SIGNAL_MOVED] = g_signal_new ("moved", SPELCH_TYPE_MOTION_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                        NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (widget_class, "motionview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  add_keys (widget_class);
}

static void
spelch_motion_view_init (SpelchMotionView *self)
{
  GtkGesture *click = gtk_gesture_click_new ();
  self->frame = g_new0 (SpelchMotionFrame, 1);
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Slow motion"),
                                  -1);
  g_signal_connect (click, "pressed", G_CALLBACK (pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (click));
  g_signal_connect_object (gtk_settings_get_default (), "notify::gtk-enable-animations",
                           G_CALLBACK (settings_changed), self, 0);
}

SpelchMotionView *
spelch_motion_view_new (void)
{
  return g_object_new (SPELCH_TYPE_MOTION_VIEW, NULL);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/speed-row.h"
#include "bench/glyph.h"
#include "bench/template.h"
#include "plan/by-hand.h"
#include "plan/words-limits.h"

#include <glib/gi18n-lib.h>

struct _SpelchSpeedRow
{
  GtkWidget parent_instance;
  GtkLabel *title;
  GtkButton *pin;
  SpelchGlyph *pin_glyph;
  GtkEditable *entry;
  GtkLabel *remark;

  SpelchSession *session;
  SpelchHeldThing thing;
  char *shown; /* what was written into the field last; anything else was typed */
  bool writing;
};

G_DEFINE_FINAL_TYPE (SpelchSpeedRow, spelch_speed_row, GTK_TYPE_WIDGET)

enum
{
  PROP_TITLE = 1,
  N_PROPS
};
static GParamSpec *props[N_PROPS];

enum
{
  SIGNAL_LET_GO,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static bool
is_typed (SpelchSpeedRow *self)
{
  return g_strcmp0 (gtk_editable_get_text (self->entry), self->shown) != 0;
}

static void
remark (SpelchSpeedRow *self, const char *words, bool complaint)
{
  if (g_str_equal (gtk_label_get_text (self->remark), words))
    return;
  gtk_label_set_text (self->remark, words);
  gtk_widget_set_visible (GTK_WIDGET (self->remark), words[0] != '\0');
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_STATE_INVALID,
                               complaint ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words,
                                  -1);
  if (complaint)
    gtk_widget_add_css_class (GTK_WIDGET (self->entry), "wrong");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->entry), "wrong");
}

/* ---- Values ---- */

static double
held_value (SpelchSpeedRow *self)
{
  const SpelchHeld *held = &spelch_session_get_cut (self->session)->held;
  return self->thing == SPELCH_HELD_SPEED ? held->speed_rpm : held->feed_mm_min;
}

static char *
write_speed (double rpm)
{
  g_autofree char *count = spelch_words_count (rpm);
  return g_strdup_printf (_ ("%s rpm"), count);
}

/* What is held is written so that reading it gives the same again. */
static char *
write_value (SpelchSpeedRow *self)
{
  const SpelchPlan *plan = spelch_session_get_plan (self->session);
  const SpelchNumbers *numbers = spelch_session_get_numbers (self->session);
  double held = held_value (self);
  if (self->thing == SPELCH_HELD_SPEED)
    return held <= 0 && plan->feed_mm_min <= 0 ? g_strdup ("–")
                                               : write_speed (held > 0 ? held : plan->speed_rpm);
  if (held > 0)
    return spelch_by_hand_write_feed (numbers, held);
  return plan->feed_mm_min <= 0 ? g_strdup ("–") : spelch_words_feed (numbers, plan->feed_mm_min);
}

static bool
read_value (SpelchSpeedRow *self, double *value, GError **error)
{
  const char *text = gtk_editable_get_text (self->entry);
  return self->thing == SPELCH_HELD_SPEED
             ? spelch_by_hand_read_speed (text, value, error)
             : spelch_by_hand_read_feed (text, spelch_session_get_numbers (self->session), value, error);
}

/* Why the machine can't do it, or NULL. */
static char *
fault_of (SpelchSpeedRow *self, double value)
{
  return self->thing == SPELCH_HELD_SPEED
             ? spelch_by_hand_speed_fault (&spelch_session_get_part (self->session)->machine, value)
             : spelch_by_hand_feed_fault (spelch_session_get_plan (self->session), value,
                                          spelch_session_get_numbers (self->session));
}

/* ---- Showing ---- */

static void
show_value (SpelchSpeedRow *self)
{
  g_free (self->shown);
  self->shown = write_value (self);
  self->writing = true;
  if (is_typed (self))
    gtk_editable_set_text (self->entry, self->shown);
  self->writing = false;
  /* What a file, or another machine, made impossible is said without being touched. */
  g_autofree char *fault = held_value (self) > 0 ? fault_of (self, held_value (self)) : NULL;
  g_autofree char *slow = self->thing == SPELCH_HELD_SPEED && spelch_session_get_plan (self->session) != NULL
                              ? spelch_words_slow (spelch_session_get_plan (self->session),
                                                   spelch_session_get_numbers (self->session))
                              : g_strdup ("");
  remark (self, fault == NULL ? slow : fault, fault != NULL);
}

static bool
has_focus (SpelchSpeedRow *self)
{
  return gtk_widget_get_state_flags (GTK_WIDGET (self->entry)) & GTK_STATE_FLAG_FOCUS_WITHIN;
}

void
spelch_speed_row_follow (SpelchSpeedRow *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->pin), held_value (self) > 0);
  if (!is_typed (self) || !has_focus (self))
    show_value (self);
}

/* ---- Typing ---- */

static bool
is_blank (const char *text)
{
  g_autofree char *rest = g_strstrip (g_strdup (text));
  return rest[0] == '\0';
}

static void
hold (SpelchSpeedRow *self, double value)
{
  SpelchPart *next = spelch_edit_hold (
      spelch_session_get_part (self->session), spelch_session_get_cut_index (self->session),
      spelch_session_get_cut (self->session), spelch_session_get_bit (self->session), self->thing, value);
  /* Once it is taken the field shows what is held, whatever way it was typed. */
  g_autofree char *before = g_steal_pointer (&self->shown);
  self->shown = g_strdup (gtk_editable_get_text (self->entry));
  const char *name = self->thing == SPELCH_HELD_SPEED ? _ ("set spindle speed") : _ ("set feed");
  if (!spelch_session_edit (self->session, next, name, NULL))
    {
      g_free (self->shown);
      self->shown = g_steal_pointer (&before);
    }
}

static void
take (SpelchSpeedRow *self)
{
  g_autoptr (GError) error = NULL;
  double value = 0;
  if (self->session == NULL || spelch_session_get_plan (self->session) == NULL || !is_typed (self))
    return;
  if (is_blank (gtk_editable_get_text (self->entry)))
    {
      if (held_value (self) > 0)
        g_signal_emit (self, signals[SIGNAL_LET_GO], 0);
      show_value (self);
      return;
    }
  if (!read_value (self, &value, &error))
    {
      remark (self, error->message, true);
      return;
    }
  g_autofree char *fault = fault_of (self, value);
  if (fault != NULL)
    remark (self, fault, true);
  else if (value == held_value (self))
    show_value (self);
  else
    hold (self, value);
}

/* While typing: what it reads as, where that isn't what was typed. */
static void
text_changed (SpelchSpeedRow *self)
{
  double value = 0;
  if (self->writing || self->session == NULL || !is_typed (self))
    return;
  if (!read_value (self, &value, NULL))
    {
      remark (self, "", false);
      return;
    }
  const SpelchNumbers *numbers = spelch_session_get_numbers (self->session);
  g_autofree char *reading
      = self->thing == SPELCH_HELD_SPEED ? write_speed (value) : spelch_by_hand_write_feed (numbers, value);
  g_autofree char *words = g_strdup_printf ("= %s", reading);
  remark (self, words, false);
}

static gboolean
key_pressed (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, SpelchSpeedRow *self)
{
  if (key != GDK_KEY_Escape || !is_typed (self))
    return GDK_EVENT_PROPAGATE;
  show_value (self);
  return GDK_EVENT_STOP;
}

static void
pin_clicked (SpelchSpeedRow *self)
{
  g_signal_emit (self, signals[SIGNAL_LET_GO], 0);
}

/* ---- Object ---- */

void
spelch_speed_row_set_session (SpelchSpeedRow *self, SpelchSession *session, SpelchHeldThing thing)
{
  self->session = session;
  self->thing = thing;
}

static void
set_title (SpelchSpeedRow *self, const char *title)
{
  gtk_label_set_text (self->title, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  g_autofree char *let_go = g_strdup_printf (_ ("%s: held by hand; let go"), title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->pin), GTK_ACCESSIBLE_PROPERTY_LABEL, let_go, -1);
}

static void
spelch_speed_row_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  g_value_set_string (value, gtk_label_get_text (SPELCH_SPEED_ROW (object)->title));
}

static void
spelch_speed_row_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  set_title (SPELCH_SPEED_ROW (object), g_value_get_string (value));
}

static void
spelch_speed_row_dispose (GObject *object)
{
  SPELCH_SPEED_ROW (object)->session = NULL;
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_SPEED_ROW);
  G_OBJECT_CLASS (spelch_speed_row_parent_class)->dispose (object);
}

static void
spelch_speed_row_finalize (GObject *object)
{
  g_free (SPELCH_SPEED_ROW (object)->shown);
  G_OBJECT_CLASS (spelch_speed_row_parent_class)->finalize (object);
}

static void
spelch_speed_row_class_init (SpelchSpeedRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  object_class->get_property = spelch_speed_row_get_property;
  object_class->set_property = spelch_speed_row_set_property;
  object_class->dispose = spelch_speed_row_dispose;
  object_class->finalize = spelch_speed_row_finalize;
  props[PROP_TITLE]
      = g_param_spec_string ("title", NULL, NULL, "", G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[SIGNAL_LET_GO] = g_signal_new ("let-go", SPELCH_TYPE_SPEED_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                         NULL, G_TYPE_NONE, 0);
  g_type_ensure (SPELCH_TYPE_GLYPH);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/speed-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchSpeedRow, title);
  gtk_widget_class_bind_template_child (widget_class, SpelchSpeedRow, pin);
  gtk_widget_class_bind_template_child (widget_class, SpelchSpeedRow, pin_glyph);
  gtk_widget_class_bind_template_child (widget_class, SpelchSpeedRow, entry);
  gtk_widget_class_bind_template_child (widget_class, SpelchSpeedRow, remark);
  gtk_widget_class_bind_template_callback (widget_class, pin_clicked);
  gtk_widget_class_bind_template_callback (widget_class, text_changed);
  gtk_widget_class_bind_template_callback (widget_class, take);
  gtk_widget_class_set_css_name (widget_class, "speedrow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_speed_row_init (SpelchSpeedRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  spelch_glyph_set_kind (self->pin_glyph, SPELCH_GLYPH_PIN);
  /* Numbers run from left to right everywhere, and GTK mirrors the place of a text by the text alone. */
  if (gtk_widget_get_direction (GTK_WIDGET (self)) == GTK_TEXT_DIR_RTL)
    gtk_editable_set_alignment (self->entry, 0);
  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self->entry), keys);
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (take), self);
  gtk_widget_add_controller (GTK_WIDGET (self->entry), focus);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/length-entry.h"
#include "bench/glyph.h"
#include "bench/template.h"

#include <glib/gi18n-lib.h>

#define DIGITS 6 /* kept by the spin button; what is shown is written by the session's numbers */

struct _SpelchLengthEntry
{
  GtkWidget parent_instance;
  GtkLabel *caption;
  GtkSpinButton *spin;
  GtkButton *pin;
  SpelchGlyph *pin_glyph;

  SpelchQuantity *quantity;
  char *shown;     /* what was written into the field last; anything else was typed */
  bool complained; /* what is typed can't be taken */
  bool remarked;   /* something is said about it */
  bool writing;
};

G_DEFINE_FINAL_TYPE (SpelchLengthEntry, spelch_length_entry, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_REMARKED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static const char *
typed_text (SpelchLengthEntry *self)
{
  return gtk_editable_get_text (GTK_EDITABLE (self->spin));
}

static bool
is_typed (SpelchLengthEntry *self)
{
  return g_strcmp0 (typed_text (self), self->shown) != 0;
}

static void
remark (SpelchLengthEntry *self, const char *words, bool complaint)
{
  if (words[0] == '\0' && !self->remarked)
    return;
  self->remarked = words[0] != '\0';
  self->complained = complaint;
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->spin), GTK_ACCESSIBLE_STATE_INVALID,
                               complaint ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->spin), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words,
                                  -1);
  if (complaint)
    gtk_widget_add_css_class (GTK_WIDGET (self->spin), "wrong");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->spin), "wrong");
  g_signal_emit (self, signals[SIGNAL_REMARKED], 0, words);
}

/* ---- Writing ---- */

static void
write_value (SpelchLengthEntry *self)
{
  const SpelchNumbers *numbers = spelch_session_get_numbers (spelch_quantity_get_session (self->quantity));
  const SpelchReading *reading = spelch_quantity_get_reading (self->quantity);
  g_free (self->shown);
  self->shown
      = reading->typed.typed[0] != '\0'
            ? spelch_length_show (&reading->typed, numbers->unit, numbers->inch_style, numbers->decimal_sign)
            : spelch_words_length (numbers, reading->value);
  self->writing = true;
  if (is_typed (self))
    gtk_editable_set_text (GTK_EDITABLE (self->spin), self->shown);
  self->writing = false;
}

static gboolean
write_output (SpelchLengthEntry *self)
{
  if (self->quantity != NULL && !self->complained)
    write_value (self);
  return TRUE;
}

static void
restore (SpelchLengthEntry *self)
{
  remark (self, "", false);
  write_value (self);
}

/* ---- Reading ---- */

static bool
parse (SpelchLengthEntry *self, SpelchLength *length, GError **error)
{
  const SpelchNumbers *numbers = spelch_session_get_numbers (spelch_quantity_get_session (self->quantity));
  return spelch_length_read (typed_text (self), numbers->unit, numbers->decimal_sign, length, error);
}

static int
read_input (SpelchLengthEntry *self, double *value)
{
  *value = gtk_spin_button_get_value (self->spin);
  if (self->quantity == NULL || !is_typed (self))
    return TRUE;
  g_autoptr (GError) error = NULL;
  SpelchLength length;
  if (!parse (self, &length, &error))
    {
      remark (self, error->message, true);
      return GTK_INPUT_ERROR;
    }
  g_autofree char *complaint = NULL;
  if (!spelch_quantity_enter (self->quantity, &length, &complaint))
    {
      remark (self, complaint, true);
      return GTK_INPUT_ERROR;
    }
  remark (self, "", false);
  *value = gtk_spin_button_get_value (self->spin);
  return TRUE;
}

/* While typing: what the text so far reads as. */
static void
text_changed (SpelchLengthEntry *self)
{
  if (self->writing || self->quantity == NULL || !is_typed (self))
    return;
  const SpelchNumbers *numbers = spelch_session_get_numbers (spelch_quantity_get_session (self->quantity));
  SpelchLength length;
  if (!parse (self, &length, NULL))
    {
      remark (self, "", false);
      return;
    }
  g_autofree char *reading
      = spelch_length_format (length.mm, SPELCH_UNIT_MM, numbers->inch_style, 3, numbers->decimal_sign);
  g_autofree char *words = g_strdup_printf ("= %s", reading);
  remark (self, words, false);
}

static gboolean
key_pressed (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state,
             SpelchLengthEntry *self)
{
  if (key != GDK_KEY_Escape || !is_typed (self))
    return GDK_EVENT_PROPAGATE;
  restore (self);
  return GDK_EVENT_STOP;
}

static void
focus_left (SpelchLengthEntry *self)
{
  gtk_spin_button_update (self->spin);
}

/* ---- Following the quantity ---- */

static void
pin_clicked (SpelchLengthEntry *self)
{
  spelch_quantity_let_go (self->quantity);
}

static void
show_pin (SpelchLengthEntry *self, bool held)
{
  /* Its room stays, so that nothing moves while a drag begins to hold a value. */
  if (gtk_widget_get_child_visible (GTK_WIDGET (self->pin)) == held && self->shown != NULL)
    return;
  gtk_widget_set_child_visible (GTK_WIDGET (self->pin), held);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->pin), GTK_ACCESSIBLE_STATE_HIDDEN, !held, -1);
}

static void
quantity_changed (SpelchLengthEntry *self)
{
  show_pin (self, spelch_quantity_get_reading (self->quantity)->held);
  bool being_typed
      = is_typed (self) && gtk_widget_get_state_flags (GTK_WIDGET (self->spin)) & GTK_STATE_FLAG_FOCUS_WITHIN;
  if (!being_typed)
    restore (self);
}

/* ---- Object ---- */

static void
spelch_length_entry_dispose (GObject *object)
{
  SpelchLengthEntry *self = SPELCH_LENGTH_ENTRY (object);
  if (self->quantity != NULL)
    g_signal_handlers_disconnect_by_data (self->quantity, self);
  g_clear_object (&self->quantity);
  spelch_template_dispose (GTK_WIDGET (self), SPELCH_TYPE_LENGTH_ENTRY);
  G_OBJECT_CLASS (spelch_length_entry_parent_class)->dispose (object);
}

static void
spelch_length_entry_finalize (GObject *object)
{
  SpelchLengthEntry *self = SPELCH_LENGTH_ENTRY (object);
  g_free (self->shown);
  G_OBJECT_CLASS (spelch_length_entry_parent_class)->finalize (object);
}

static void
spelch_length_entry_class_init (SpelchLengthEntryClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_length_entry_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_length_entry_finalize;
  signals[SIGNAL_REMARKED] = g_signal_new ("remarked", SPELCH_TYPE_LENGTH_ENTRY, G_SIGNAL_RUN_LAST, 0, NULL,
                                           NULL, NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/length-entry.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchLengthEntry, caption);
  gtk_widget_class_bind_template_child (widget_class, SpelchLengthEntry, spin);
  gtk_widget_class_bind_template_child (widget_class, SpelchLengthEntry, pin);
  gtk_widget_class_bind_template_child (widget_class, SpelchLengthEntry, pin_glyph);
  gtk_widget_class_bind_template_callback (widget_class, read_input);
  gtk_widget_class_bind_template_callback (widget_class, write_output);
  gtk_widget_class_bind_template_callback (widget_class, text_changed);
  gtk_widget_class_bind_template_callback (widget_class, pin_clicked);
  gtk_widget_class_set_css_name (widget_class, "lengthentry");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_length_entry_init (SpelchLengthEntry *self)
{
  g_type_ensure (SPELCH_TYPE_GLYPH);
  gtk_widget_init_template (GTK_WIDGET (self));
  spelch_glyph_set_kind (self->pin_glyph, SPELCH_GLYPH_PIN);
  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed), self);
  gtk_widget_add_controller (GTK_WIDGET (self->spin), keys);
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (focus_left), self);
  gtk_widget_add_controller (GTK_WIDGET (self->spin), focus);
}

SpelchLengthEntry *
spelch_length_entry_new (SpelchQuantity *quantity)
{
  SpelchLengthEntry *self = g_object_new (SPELCH_TYPE_LENGTH_ENTRY, NULL);
  self->quantity = g_object_ref (quantity);
  g_autofree char *name = spelch_quantity_name (spelch_quantity_get_id (quantity));
  gtk_label_set_text (self->caption, name);
  g_autofree char *let_go = g_strdup_printf (_ ("%s: held by hand; let go"), name);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->pin), GTK_ACCESSIBLE_PROPERTY_LABEL, let_go, -1);
  gtk_spin_button_configure (self->spin, spelch_quantity_get_adjustment (quantity), 0, DIGITS);
  g_signal_connect_swapped (quantity, "changed", G_CALLBACK (quantity_changed), self);
  quantity_changed (self);
  return self;
}

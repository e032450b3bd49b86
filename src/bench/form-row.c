/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/form-row.h"
#include "bench/paragraph.h"
#include "bench/tooltip.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define NAME_CHARS 17

struct _SpelchFormRow
{
  GtkWidget parent_instance;
  const SpelchField *field;
  GtkWidget *label;
  GtkWidget *control; /* entry, drop-down or switch; NULL for a heading */
  GtkWidget *remark;
  char *shown; /* what was written into the entry last */
  char **ids;  /* PICK: by choice; ended by NULL */
  char **names;
  bool writing;
};

G_DEFINE_FINAL_TYPE (SpelchFormRow, spelch_form_row, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_TYPED,
  SIGNAL_ENTERED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- Signals of the control ---- */

static void
text_changed (SpelchFormRow *self)
{
  if (!self->writing)
    g_signal_emit (self, signals[SIGNAL_TYPED], 0);
}

static void
entered (SpelchFormRow *self)
{
  if (!self->writing)
    g_signal_emit (self, signals[SIGNAL_ENTERED], 0);
}

static void
left (SpelchFormRow *self)
{
  if (spelch_form_row_is_typed (self))
    entered (self);
}

static gboolean
key_pressed (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, SpelchFormRow *self)
{
  if (key != GDK_KEY_Escape || !spelch_form_row_is_typed (self))
    return GDK_EVENT_PROPAGATE;
  gtk_editable_set_text (GTK_EDITABLE (self->control), self->shown);
  gtk_editable_set_position (GTK_EDITABLE (self->control), -1);
  spelch_form_row_remark (self, NULL, false);
  return GDK_EVENT_STOP;
}

/* ---- Making ---- */

static GtkWidget *
make_entry (SpelchFormRow *self)
{
  GtkWidget *entry = gtk_entry_new ();
  bool words = self->field->kind == SPELCH_FIELD_TEXT || self->field->kind == SPELCH_FIELD_NUMBERS
               || self->field->kind == SPELCH_FIELD_LENGTHS;
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), words ? 16 : 12);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), words ? 40 : 12);
  if (!words)
    gtk_widget_add_css_class (entry, "short");
  if (self->field->none != NULL)
    gtk_entry_set_placeholder_text (GTK_ENTRY (entry), _ (self->field->none));
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (text_changed), self);
  g_signal_connect_swapped (entry, "activate", G_CALLBACK (entered), self);
  GtkEventController *focus = gtk_event_controller_focus_new ();
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (left), self);
  gtk_widget_add_controller (entry, focus);
  GtkEventController *keys = gtk_event_controller_key_new ();
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed), self);
  gtk_widget_add_controller (entry, keys);
  return entry;
}

static GtkWidget *
make_drop_down (SpelchFormRow *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  for (const char *const *name = self->field->choices; name != NULL && *name != NULL; name++)
    gtk_string_list_append (names, _ (*name));
  GtkWidget *control = gtk_drop_down_new (G_LIST_MODEL (g_steal_pointer (&names)), NULL);
  g_signal_connect_swapped (control, "notify::selected", G_CALLBACK (entered), self);
  return control;
}

static GtkWidget *
make_switch (SpelchFormRow *self)
{
  GtkWidget *control = gtk_switch_new ();
  g_signal_connect_swapped (control, "notify::active", G_CALLBACK (entered), self);
  return control;
}

static GtkWidget *
make_control (SpelchFormRow *self)
{
  switch (self->field->kind)
    {
    case SPELCH_FIELD_HEADING:
      return NULL;
    case SPELCH_FIELD_CHOICE:
    case SPELCH_FIELD_PICK:
      return make_drop_down (self);
    case SPELCH_FIELD_FLAG:
      return make_switch (self);
    case SPELCH_FIELD_TEXT:
    case SPELCH_FIELD_LENGTH:
    case SPELCH_FIELD_NUMBER:
    case SPELCH_FIELD_WHOLE:
    case SPELCH_FIELD_NUMBERS:
    case SPELCH_FIELD_LENGTHS:
    default:
      return make_entry (self);
    }
}

static GtkWidget *
make_remark (void)
{
  GtkWidget *remark = spelch_paragraph_new (NULL, "small");
  /* It asks for no room of its own, or the controls of its row would stand elsewhere than the others'. */
  gtk_label_set_max_width_chars (GTK_LABEL (remark), 1);
  gtk_widget_set_hexpand (remark, TRUE);
  gtk_widget_set_visible (remark, FALSE);
  return remark;
}

/* The control with its unit behind it. */
static GtkWidget *
with_unit (SpelchFormRow *self)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gtk_box_append (GTK_BOX (line), self->control);
  gtk_widget_set_halign (self->control, GTK_ALIGN_START);
  gtk_widget_set_valign (self->control, GTK_ALIGN_CENTER);
  if (self->field->unit != NULL)
    {
      GtkWidget *unit = gtk_label_new (_ (self->field->unit));
      gtk_widget_add_css_class (unit, "soft");
      gtk_box_append (GTK_BOX (line), unit);
    }
  return line;
}

static void
build (SpelchFormRow *self)
{
  /* A grid and not a box: that would make names narrower in a row that a remark makes higher, and the control
   * would leave its place. */
  GtkWidget *sides = gtk_grid_new ();
  self->label = gtk_label_new (_ (self->field->label));
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_label_set_wrap (GTK_LABEL (self->label), TRUE);
  gtk_grid_set_column_spacing (GTK_GRID (sides), 12);
  gtk_grid_attach (GTK_GRID (sides), self->label, 0, 0, 1, 1);
  gtk_widget_set_parent (sides, GTK_WIDGET (self));
  self->control = make_control (self);
  if (self->control == NULL)
    {
      gtk_widget_add_css_class (self->label, "heading");
      return;
    }
  gtk_label_set_width_chars (GTK_LABEL (self->label), NAME_CHARS);
  gtk_label_set_max_width_chars (GTK_LABEL (self->label), NAME_CHARS);
  gtk_label_set_mnemonic_widget (GTK_LABEL (self->label), self->control);
  gtk_widget_set_valign (self->label, GTK_ALIGN_START);
  GtkWidget *right = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  gtk_widget_set_hexpand (right, TRUE);
  gtk_box_append (GTK_BOX (right), with_unit (self));
  self->remark = make_remark ();
  gtk_box_append (GTK_BOX (right), self->remark);
  gtk_grid_attach (GTK_GRID (sides), right, 1, 0, 1, 1);
  if (self->field->hint != NULL)
    spelch_tooltip_set (self->control, _ (self->field->hint));
}

/* ---- Showing ---- */

static bool
has_text (SpelchFormRow *self)
{
  return self->control != NULL && GTK_IS_EDITABLE (self->control);
}

static bool
lists (GtkStringList *list, const char *const *names)
{
  guint n = 0;
  while (names[n] != NULL && g_strcmp0 (gtk_string_list_get_string (list, n), names[n]) == 0)
    n++;
  return names[n] == NULL && n == g_list_model_get_n_items (G_LIST_MODEL (list));
}

/* May be called while something is being picked, so the list stays the same object. */
static void
list_names (SpelchFormRow *self, const char *const *names)
{
  GtkStringList *list = GTK_STRING_LIST (gtk_drop_down_get_model (GTK_DROP_DOWN (self->control)));
  if (!lists (list, names))
    gtk_string_list_splice (list, 0, g_list_model_get_n_items (G_LIST_MODEL (list)), names);
}

/* What is picked may not be among what there is to pick any more: it stands behind that, by its id. */
static void
show_pick (SpelchFormRow *self, const char *id)
{
  guint at = 0, n = self->ids == NULL ? 0 : g_strv_length (self->ids);
  g_autofree const char **names = g_new0 (const char *, n + 2);
  for (guint i = 0; i < n; i++)
    names[i] = self->names[i];
  while (at < n && strcmp (self->ids[at], id) != 0)
    at++;
  if (at == n)
    names[n] = id;
  list_names (self, names);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->control), at);
}

void
spelch_form_row_set_picks (SpelchFormRow *self, const char *const *ids, const char *const *names)
{
  g_strfreev (self->ids);
  g_strfreev (self->names);
  self->ids = g_strdupv ((char **)ids);
  self->names = g_strdupv ((char **)names);
}

void
spelch_form_row_set_choices (SpelchFormRow *self, const char *const *names)
{
  guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->control));
  bool writing = self->writing;
  self->writing = true; /* another name is no other choice */
  list_names (self, names);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->control), chosen);
  self->writing = writing;
}

const char *
spelch_form_row_get_pick (SpelchFormRow *self)
{
  guint at = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->control));
  return self->ids != NULL && at < g_strv_length (self->ids) ? self->ids[at] : NULL;
}

void
spelch_form_row_show (SpelchFormRow *self, gconstpointer value, const char *typed,
                      const SpelchNumbers *numbers)
{
  bool applies = self->field->applies == NULL || self->field->applies (value);
  gtk_widget_set_visible (GTK_WIDGET (self), applies);
  if (self->control == NULL)
    return;
  self->writing = true;
  if (has_text (self))
    {
      g_free (self->shown);
      self->shown = spelch_field_write (self->field, value, numbers);
      const char *text = typed != NULL ? typed : self->shown;
      if (g_strcmp0 (text, gtk_editable_get_text (GTK_EDITABLE (self->control))) != 0)
        gtk_editable_set_text (GTK_EDITABLE (self->control), text);
    }
  else if (self->field->kind == SPELCH_FIELD_PICK)
    show_pick (self, (const char *)value + self->field->offset);
  else if (self->field->kind == SPELCH_FIELD_CHOICE)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->control), spelch_field_choice (self->field, value));
  else
    gtk_switch_set_active (GTK_SWITCH (self->control), spelch_field_choice (self->field, value) != 0);
  self->writing = false;
}

void
spelch_form_row_remark (SpelchFormRow *self, const char *words, bool complaint)
{
  if (self->remark == NULL)
    return;
  gtk_label_set_text (GTK_LABEL (self->remark), words == NULL ? "" : words);
  gtk_widget_set_visible (self->remark, words != NULL);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->control), GTK_ACCESSIBLE_STATE_INVALID,
                               complaint ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->control), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  words != NULL               ? words
                                  : self->field->hint != NULL ? _ (self->field->hint)
                                                              : "",
                                  -1);
  if (GTK_IS_ENTRY (
          self->control)) /* what is refused isn't told from what has the focus by its frame alone */
    gtk_entry_set_icon_from_icon_name (GTK_ENTRY (self->control), GTK_ENTRY_ICON_SECONDARY,
                                       complaint ? "dialog-warning-symbolic" : NULL);
  if (complaint)
    gtk_widget_add_css_class (self->control, "wrong");
  else
    gtk_widget_remove_css_class (self->control, "wrong");
}

const SpelchField *
spelch_form_row_get_field (SpelchFormRow *self)
{
  return self->field;
}

const char *
spelch_form_row_get_typed (SpelchFormRow *self)
{
  return has_text (self) ? gtk_editable_get_text (GTK_EDITABLE (self->control)) : "";
}

bool
spelch_form_row_is_typed (SpelchFormRow *self)
{
  return has_text (self) && g_strcmp0 (spelch_form_row_get_typed (self), self->shown) != 0;
}

guint
spelch_form_row_get_choice (SpelchFormRow *self)
{
  if (self->field->kind == SPELCH_FIELD_CHOICE)
    return gtk_drop_down_get_selected (GTK_DROP_DOWN (self->control));
  return self->field->kind == SPELCH_FIELD_FLAG && gtk_switch_get_active (GTK_SWITCH (self->control));
}

void
spelch_form_row_align (SpelchFormRow *self, GtkSizeGroup *group)
{
  if (self->control != NULL) /* a heading is as wide as it is */
    gtk_size_group_add_widget (group, self->label);
}

/* Not by grab_focus() of the row: that would bring the focus back when Shift+Tab leaves it. */
void
spelch_form_row_focus (SpelchFormRow *self)
{
  if (self->control != NULL)
    gtk_widget_grab_focus (self->control);
}

/* ---- Object ---- */

static void
spelch_form_row_dispose (GObject *object)
{
  SpelchFormRow *self = SPELCH_FORM_ROW (object);
  self->writing = true; /* nothing is entered by taking the row apart */
  GtkWidget *child;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  self->control = NULL;
  G_OBJECT_CLASS (spelch_form_row_parent_class)->dispose (object);
}

static void
spelch_form_row_finalize (GObject *object)
{
  SpelchFormRow *self = SPELCH_FORM_ROW (object);
  g_free (self->shown);
  g_strfreev (self->ids);
  g_strfreev (self->names);
  G_OBJECT_CLASS (spelch_form_row_parent_class)->finalize (object);
}

/* The first line of the name stands level with what stands in the control, however large the text is. */
static void
spelch_form_row_map (GtkWidget *widget)
{
  SpelchFormRow *self = SPELCH_FORM_ROW (widget);
  if (self->control != NULL)
    {
      int height = 0;
      PangoFontMetrics *metrics
          = pango_context_get_metrics (gtk_widget_get_pango_context (self->label), NULL, NULL);
      int line = PANGO_PIXELS (pango_font_metrics_get_height (metrics));
      pango_font_metrics_unref (metrics);
      gtk_widget_measure (self->control, GTK_ORIENTATION_VERTICAL, -1, NULL, &height, NULL, NULL);
      gtk_widget_set_margin_top (self->label, MAX ((height - line + 1) / 2, 0));
    }
  GTK_WIDGET_CLASS (spelch_form_row_parent_class)->map (widget);
}

static void
spelch_form_row_class_init (SpelchFormRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_form_row_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_form_row_finalize;
  widget_class->map = spelch_form_row_map;
  signals[SIGNAL_TYPED]
      = g_signal_new ("typed", SPELCH_TYPE_FORM_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_ENTERED] = g_signal_new ("entered", SPELCH_TYPE_FORM_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                          NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "formrow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
spelch_form_row_init (SpelchFormRow *self)
{
}

SpelchFormRow *
spelch_form_row_new (const SpelchField *field)
{
  SpelchFormRow *self = g_object_new (SPELCH_TYPE_FORM_ROW, NULL);
  self->field = field;
  build (self);
  return self;
}

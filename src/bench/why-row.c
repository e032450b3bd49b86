/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/why-row.h"
#include "bench/glyph.h"
#include "bench/live-text.h"
#include "bench/template.h"
#include "bench/tooltip.h"

struct _SpelchWhyRow
{
  GtkWidget parent_instance;
  GtkBox *head;
  GtkToggleButton *toggle;
  SpelchGlyph *sign;
  GtkBox *reasons;
  GtkWidget *child;
  char *title;
  guint said; /* lines, while they are being told */
};

G_DEFINE_FINAL_TYPE (SpelchWhyRow, spelch_why_row, GTK_TYPE_WIDGET)

enum
{
  PROP_CHILD = 1,
  PROP_TITLE,
  N_PROPS
};
static GParamSpec *props[N_PROPS];

enum
{
  SIGNAL_TOGGLED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- What is said ---- */

static SpelchLiveText *
next_line (SpelchWhyRow *self)
{
  GtkWidget *line = gtk_widget_get_first_child (GTK_WIDGET (self->reasons));
  for (guint i = 0; line != NULL && i < self->said; i++)
    line = gtk_widget_get_next_sibling (line);
  if (line == NULL)
    {
      line = g_object_new (SPELCH_TYPE_LIVE_TEXT, "lines", 1, "width-chars", 12, "hanging", TRUE, NULL);
      gtk_box_append (self->reasons, line);
    }
  self->said++;
  gtk_widget_set_visible (line, TRUE);
  return SPELCH_LIVE_TEXT (line);
}

void
spelch_why_row_begin (SpelchWhyRow *self)
{
  self->said = 0;
}

static void
set_heading (SpelchLiveText *line, bool heading)
{
  gboolean hanging = FALSE;
  g_object_get (line, "hanging", &hanging, NULL);
  if (hanging != heading)
    return;
  g_object_set (line, "hanging", !heading, NULL);
  if (heading)
    gtk_widget_add_css_class (GTK_WIDGET (line), "strong");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (line), "strong");
}

void
spelch_why_row_add_heading (SpelchWhyRow *self, const char *heading)
{
  SpelchLiveText *line = next_line (self);
  set_heading (line, true);
  spelch_live_text_set_text (line, heading);
}

void
spelch_why_row_add (SpelchWhyRow *self, const char *sentence)
{
  SpelchLiveText *line = next_line (self);
  g_autofree char *item = g_strdup_printf ("• %s", sentence);
  set_heading (line, false);
  spelch_live_text_set_text (line, item);
}

void
spelch_why_row_end (SpelchWhyRow *self)
{
  GtkWidget *line = gtk_widget_get_first_child (GTK_WIDGET (self->reasons));
  for (guint i = 0; line != NULL; i++, line = gtk_widget_get_next_sibling (line))
    if (i >= self->said)
      gtk_widget_set_visible (line, FALSE);
}

void
spelch_why_row_settle (SpelchWhyRow *self)
{
  if (!spelch_why_row_is_open (self))
    return;
  GtkWidget *line = gtk_widget_get_first_child (GTK_WIDGET (self->reasons));
  for (; line != NULL; line = gtk_widget_get_next_sibling (line))
    spelch_live_text_settle (SPELCH_LIVE_TEXT (line));
}

/* ---- Opening and closing ---- */

bool
spelch_why_row_is_open (SpelchWhyRow *self)
{
  return gtk_toggle_button_get_active (self->toggle);
}

void
spelch_why_row_set_open (SpelchWhyRow *self, bool open)
{
  gtk_toggle_button_set_active (self->toggle, open);
}

void
spelch_why_row_set_offered (SpelchWhyRow *self, bool offered)
{
  if (gtk_widget_get_sensitive (GTK_WIDGET (self->toggle)) == offered)
    return;
  gtk_widget_set_sensitive (GTK_WIDGET (self->toggle), offered);
  gtk_widget_set_opacity (GTK_WIDGET (self->toggle), offered ? 1 : 0);
  if (!offered)
    spelch_why_row_set_open (self, false);
}

static void
toggled (SpelchWhyRow *self)
{
  bool open = spelch_why_row_is_open (self);
  gtk_widget_set_visible (GTK_WIDGET (self->reasons), open);
  spelch_glyph_set_kind (self->sign, open ? SPELCH_GLYPH_LESS : SPELCH_GLYPH_MORE);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->toggle), GTK_ACCESSIBLE_STATE_EXPANDED, open, -1);
  g_signal_emit (self, signals[SIGNAL_TOGGLED], 0);
}

/* Whether a click there is meant for something else than the row. */
static bool
is_taken (SpelchWhyRow *self, double x, double y)
{
  GtkWidget *at = gtk_widget_pick (GTK_WIDGET (self->head), x, y, GTK_PICK_DEFAULT);
  for (; at != NULL && at != GTK_WIDGET (self->head); at = gtk_widget_get_parent (at))
    if (GTK_IS_BUTTON (at) || GTK_IS_EDITABLE (at))
      return true;
  return false;
}

static void
head_clicked (GtkGestureClick *click, int times, double x, double y, SpelchWhyRow *self)
{
  if (is_taken (self, x, y) || !gtk_widget_get_sensitive (GTK_WIDGET (self->toggle)))
    return;
  gtk_gesture_set_state (GTK_GESTURE (click), GTK_EVENT_SEQUENCE_CLAIMED);
  gtk_widget_grab_focus (GTK_WIDGET (self->toggle)); /* so that Escape closes it again */
  spelch_why_row_set_open (self, !spelch_why_row_is_open (self));
}

/* ---- Object ---- */

void
spelch_why_row_set_title (SpelchWhyRow *self, const char *title)
{
  if (g_strcmp0 (self->title, title) == 0)
    return;
  g_free (self->title);
  self->title = g_strdup (title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->toggle), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->reasons), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
  spelch_tooltip_set (GTK_WIDGET (self->toggle), title);
}

static void
set_child (SpelchWhyRow *self, GtkWidget *child)
{
  if (self->child != NULL)
    gtk_box_remove (self->head, self->child);
  self->child = child;
  if (child == NULL)
    return;
  gtk_widget_set_hexpand (child, TRUE);
  gtk_box_append (self->head, child);
}

static void
spelch_why_row_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  SpelchWhyRow *self = SPELCH_WHY_ROW (object);
  if (id == PROP_CHILD)
    g_value_set_object (value, self->child);
  else
    g_value_set_string (value, self->title);
}

static void
spelch_why_row_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  SpelchWhyRow *self = SPELCH_WHY_ROW (object);
  if (id == PROP_CHILD)
    set_child (self, g_value_get_object (value));
  else
    spelch_why_row_set_title (self, g_value_get_string (value));
}

static void
spelch_why_row_dispose (GObject *object)
{
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_WHY_ROW);
  G_OBJECT_CLASS (spelch_why_row_parent_class)->dispose (object);
}

static void
spelch_why_row_finalize (GObject *object)
{
  g_free (SPELCH_WHY_ROW (object)->title);
  G_OBJECT_CLASS (spelch_why_row_parent_class)->finalize (object);
}

static void
spelch_why_row_class_init (SpelchWhyRowClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  GParamFlags flags = G_PARAM_READWRITE | G_PARAM_STATIC_STRINGS;
  object_class->get_property = spelch_why_row_get_property;
  object_class->set_property = spelch_why_row_set_property;
  object_class->dispose = spelch_why_row_dispose;
  object_class->finalize = spelch_why_row_finalize;
  props[PROP_CHILD] = g_param_spec_object ("child", NULL, NULL, GTK_TYPE_WIDGET, flags);
  props[PROP_TITLE] = g_param_spec_string ("title", NULL, NULL, NULL, flags);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[SIGNAL_TOGGLED]
      = g_signal_new ("toggled", SPELCH_TYPE_WHY_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  g_type_ensure (SPELCH_TYPE_GLYPH);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/why-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchWhyRow, head);
  gtk_widget_class_bind_template_child (widget_class, SpelchWhyRow, toggle);
  gtk_widget_class_bind_template_child (widget_class, SpelchWhyRow, sign);
  gtk_widget_class_bind_template_child (widget_class, SpelchWhyRow, reasons);
  gtk_widget_class_bind_template_callback (widget_class, toggled);
  gtk_widget_class_set_css_name (widget_class, "whyrow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_why_row_init (SpelchWhyRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  spelch_glyph_set_kind (self->sign, SPELCH_GLYPH_MORE);
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->toggle), GTK_ACCESSIBLE_STATE_EXPANDED, FALSE, -1);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (self->toggle), GTK_ACCESSIBLE_RELATION_CONTROLS,
                                  self->reasons, NULL, -1);
  GtkGesture *click = gtk_gesture_click_new ();
  g_signal_connect (click, "released", G_CALLBACK (head_clicked), self);
  gtk_widget_add_controller (GTK_WIDGET (self->head), GTK_EVENT_CONTROLLER (click));
}

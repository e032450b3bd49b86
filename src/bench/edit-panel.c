/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/edit-panel.h"
#include "bench/template.h"

struct _SpelchEditPanel
{
  GtkWidget parent_instance;
  GtkLabel *title;
  GtkViewport *room;
};

G_DEFINE_FINAL_TYPE (SpelchEditPanel, spelch_edit_panel, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_DONE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static void
done_clicked (SpelchEditPanel *self)
{
  g_signal_emit (self, signals[SIGNAL_DONE], 0);
}

/* A field with something unfinished takes Escape for itself first. */
static gboolean
key_leaves (GtkWidget *widget, GVariant *args, gpointer data)
{
  done_clicked (SPELCH_EDIT_PANEL (widget));
  return TRUE;
}

void
spelch_edit_panel_set_title (SpelchEditPanel *self, const char *title)
{
  gtk_label_set_text (self->title, title);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, title, -1);
}

void
spelch_edit_panel_set_form (SpelchEditPanel *self, GtkWidget *form)
{
  gtk_viewport_set_child (self->room, form);
}

static void
spelch_edit_panel_dispose (GObject *object)
{
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_EDIT_PANEL);
  G_OBJECT_CLASS (spelch_edit_panel_parent_class)->dispose (object);
}

static void
spelch_edit_panel_class_init (SpelchEditPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_edit_panel_dispose;
  signals[SIGNAL_DONE]
      = g_signal_new ("done", SPELCH_TYPE_EDIT_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/edit-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchEditPanel, title);
  gtk_widget_class_bind_template_child (widget_class, SpelchEditPanel, room);
  gtk_widget_class_bind_template_callback (widget_class, done_clicked);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, key_leaves, NULL);
  gtk_widget_class_set_css_name (widget_class, "editpanel");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_edit_panel_init (SpelchEditPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

SpelchEditPanel *
spelch_edit_panel_new (void)
{
  return g_object_new (SPELCH_TYPE_EDIT_PANEL, NULL);
}

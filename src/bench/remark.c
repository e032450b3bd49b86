/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/remark.h"

#define STAYS_MS 5000

struct _SpelchRemark
{
  GtkWidget parent_instance;
  GtkWidget *label;
  guint forget; /* source that takes a passing remark away */
};

G_DEFINE_FINAL_TYPE (SpelchRemark, spelch_remark, GTK_TYPE_WIDGET)

static void
show (SpelchRemark *self, const char *words)
{
  if (g_strcmp0 (gtk_label_get_text (GTK_LABEL (self->label)), words) != 0)
    gtk_label_set_text (GTK_LABEL (self->label), words);
  gtk_widget_set_visible (self->label, words[0] != '\0');
}

static gboolean
forget (gpointer data)
{
  SpelchRemark *self = data;
  self->forget = 0;
  show (self, "");
  return G_SOURCE_REMOVE;
}

void
spelch_remark_say (SpelchRemark *self, const char *words, bool passing)
{
  g_clear_handle_id (&self->forget, g_source_remove);
  show (self, words);
  if (passing && words[0] != '\0')
    self->forget = g_timeout_add (STAYS_MS, forget, self);
}

static void
spelch_remark_dispose (GObject *object)
{
  SpelchRemark *self = SPELCH_REMARK (object);
  g_clear_handle_id (&self->forget, g_source_remove);
  g_clear_pointer (&self->label, gtk_widget_unparent);
  G_OBJECT_CLASS (spelch_remark_parent_class)->dispose (object);
}

static void
spelch_remark_class_init (SpelchRemarkClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_remark_dispose;
  gtk_widget_class_set_css_name (widget_class, "remark");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_remark_init (SpelchRemark *self)
{
  self->label = g_object_new (GTK_TYPE_LABEL, "accessible-role", GTK_ACCESSIBLE_ROLE_STATUS, "wrap", TRUE,
                              "visible", FALSE, NULL);
  gtk_label_set_xalign (GTK_LABEL (self->label), 0);
  gtk_widget_set_parent (self->label, GTK_WIDGET (self));
  gtk_widget_set_can_target (GTK_WIDGET (self), FALSE);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/depths-row.h"
#include "bench/length-entry.h"
#include "bench/template.h"

struct _SpelchDepthsRow
{
  GtkWidget parent_instance;
  GtkBox *entries;
  SpelchRemark *remark; /* elsewhere in the window */
  GPtrArray *fields;    /* SpelchLengthEntry, in the order of the quantities */
};

G_DEFINE_FINAL_TYPE (SpelchDepthsRow, spelch_depths_row, GTK_TYPE_WIDGET)

static void
entry_remarked (SpelchLengthEntry *entry, const char *words, SpelchDepthsRow *self)
{
  bool has_focus = gtk_widget_get_state_flags (GTK_WIDGET (entry)) & GTK_STATE_FLAG_FOCUS_WITHIN;
  /* An entry that follows a drag says nothing and must not wipe out what was said about the drag. */
  if (words[0] != '\0' || has_focus)
    spelch_remark_say (self->remark, words, false);
}

static void
session_said (SpelchSession *session, const char *words, SpelchDepthsRow *self)
{
  spelch_remark_say (self->remark, words, true);
}

static void
quantities_changed (GListModel *quantities, guint position, guint removed, guint added, SpelchDepthsRow *self)
{
  for (guint i = 0; i < removed; i++)
    gtk_box_remove (self->entries, g_ptr_array_index (self->fields, position + i));
  if (removed > 0)
    g_ptr_array_remove_range (self->fields, position, removed);
  for (guint i = 0; i < added; i++)
    {
      g_autoptr (SpelchQuantity) quantity = g_list_model_get_item (quantities, position + i);
      SpelchLengthEntry *entry = spelch_length_entry_new (quantity);
      g_signal_connect_object (entry, "remarked", G_CALLBACK (entry_remarked), self, 0);
      guint at = position + i;
      GtkWidget *before = at == 0 ? NULL : g_ptr_array_index (self->fields, at - 1);
      gtk_box_insert_child_after (self->entries, GTK_WIDGET (entry), before);
      g_ptr_array_insert (self->fields, (int)at, entry);
    }
}

void
spelch_depths_row_set_session (SpelchDepthsRow *self, SpelchSession *session, GListModel *quantities,
                               SpelchRemark *remark)
{
  self->remark = remark;
  g_signal_connect_object (session, "said", G_CALLBACK (session_said), self, 0);
  g_signal_connect_object (quantities, "items-changed", G_CALLBACK (quantities_changed), self, 0);
  quantities_changed (quantities, 0, 0, g_list_model_get_n_items (quantities), self);
}

static void
spelch_depths_row_dispose (GObject *object)
{
  SpelchDepthsRow *self = SPELCH_DEPTHS_ROW (object);
  g_clear_pointer (&self->fields, g_ptr_array_unref);
  spelch_template_dispose (GTK_WIDGET (self), SPELCH_TYPE_DEPTHS_ROW);
  G_OBJECT_CLASS (spelch_depths_row_parent_class)->dispose (object);
}

static void
spelch_depths_row_class_init (SpelchDepthsRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_depths_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/depths-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchDepthsRow, entries);
  gtk_widget_class_set_css_name (widget_class, "depthsrow");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_depths_row_init (SpelchDepthsRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->fields = g_ptr_array_new ();
}

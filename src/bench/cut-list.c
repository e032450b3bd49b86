/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/cut-list.h"
#include "bench/cut-card.h"
#include "bench/template.h"

struct _SpelchCutList
{
  GtkWidget parent_instance;
  GtkListBox *list;
  SpelchSession *session;
  SpelchLook look;
  bool following;
};

G_DEFINE_FINAL_TYPE (SpelchCutList, spelch_cut_list, GTK_TYPE_WIDGET)

static void
row_selected (SpelchCutList *self, GtkListBoxRow *row, GtkListBox *list)
{
  if (row != NULL && !self->following)
    spelch_session_show_cut (self->session, (guint)gtk_list_box_row_get_index (row));
}

static SpelchCutCard *
nth_card (SpelchCutList *self, guint n)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int)n);
  if (row == NULL)
    {
      row = g_object_new (SPELCH_TYPE_CUT_CARD, NULL);
      gtk_list_box_append (self->list, GTK_WIDGET (row));
    }
  return SPELCH_CUT_CARD (row);
}

static void
follow (SpelchCutList *self)
{
  const SpelchPart *part = spelch_session_get_part (self->session);
  if (part == NULL)
    return;
  self->following = true;
  for (guint i = 0; i < part->n_cuts; i++)
    spelch_cut_card_follow (nth_card (self, i), self->session, i, spelch_palette (self->look));
  GtkListBoxRow *surplus = NULL;
  while ((surplus = gtk_list_box_get_row_at_index (self->list, (int)part->n_cuts)) != NULL)
    gtk_list_box_remove (self->list, GTK_WIDGET (surplus));
  guint current = spelch_session_get_cut_index (self->session);
  gtk_list_box_select_row (self->list, gtk_list_box_get_row_at_index (self->list, (int)current));
  self->following = false;
}

static void
session_settled (SpelchSession *session, guint change, SpelchCutList *self)
{
  if (change & ~(guint)SPELCH_CHANGE_PLAN)
    follow (self);
}

void
spelch_cut_list_set_session (SpelchCutList *self, SpelchSession *session)
{
  self->session = session;
  g_signal_connect_object (session, "settled", G_CALLBACK (session_settled), self, 0);
  follow (self);
}

void
spelch_cut_list_set_look (SpelchCutList *self, SpelchLook look)
{
  self->look = look;
  if (self->session != NULL)
    follow (self);
}

static void
spelch_cut_list_dispose (GObject *object)
{
  SpelchCutList *self = SPELCH_CUT_LIST (object);
  self->following = true;
  spelch_template_dispose (GTK_WIDGET (object), SPELCH_TYPE_CUT_LIST);
  G_OBJECT_CLASS (spelch_cut_list_parent_class)->dispose (object);
}

static void
spelch_cut_list_class_init (SpelchCutListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_cut_list_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/cut-list.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchCutList, list);
  gtk_widget_class_bind_template_callback (widget_class, row_selected);
  gtk_widget_class_set_css_name (widget_class, "cutlist");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_cut_list_init (SpelchCutList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/cut-list.h"
#include "bench/cut-card.h"
#include "bench/cut-menu.h"
#include "bench/later-menu.h"
#include "bench/part-actions.h"
#include "bench/template.h"

struct _SpelchCutList
{
  GtkWidget parent_instance;
  GtkListBox *list;
  GtkMenuButton *add;
  GtkWidget *nothing;
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

static void
row_activated (SpelchCutList *self, GtkListBoxRow *row, GtkListBox *list)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "win.change-cut", NULL);
}

/* ---- Dragging a cut to another place ---- */

static GdkContentProvider *
drag_prepared (GtkDragSource *source, double x, double y, GtkListBoxRow *row)
{
  return gdk_content_provider_new_typed (SPELCH_TYPE_CUT_CARD, row);
}

static void
drag_begun (GtkDragSource *source, GdkDrag *drag, GtkWidget *row)
{
  g_autoptr (GdkPaintable) picture = gtk_widget_paintable_new (row);
  gtk_drag_source_set_icon (source, picture, 0, 0);
}

static gboolean
dropped (GtkDropTarget *target, const GValue *value, double x, double y, SpelchCutList *self)
{
  GtkListBoxRow *row = g_value_get_object (value);
  GtkListBoxRow *at = gtk_list_box_get_row_at_y (self->list, (int)y);
  if (gtk_widget_get_parent (GTK_WIDGET (row)) != GTK_WIDGET (self->list))
    return FALSE; /* another window's */
  const SpelchPart *part = spelch_session_get_part (self->session);
  int to = at == NULL ? (int)part->n_cuts - 1 : gtk_list_box_row_get_index (at);
  spelch_part_actions_move (self->session, (guint)gtk_list_box_row_get_index (row), (guint)to);
  return TRUE;
}

static void
let_drag (GtkWidget *row)
{
  GtkDragSource *source = gtk_drag_source_new ();
  gtk_drag_source_set_actions (source, GDK_ACTION_MOVE);
  g_signal_connect (source, "prepare", G_CALLBACK (drag_prepared), row);
  g_signal_connect (source, "drag-begin", G_CALLBACK (drag_begun), row);
  gtk_widget_add_controller (row, GTK_EVENT_CONTROLLER (source));
}

/* ---- Following the session ---- */

static SpelchCutCard *
nth_card (SpelchCutList *self, guint n)
{
  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int)n);
  if (row == NULL)
    {
      row = g_object_new (SPELCH_TYPE_CUT_CARD, NULL);
      let_drag (GTK_WIDGET (row));
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
  gtk_widget_set_visible (self->nothing, part->n_cuts == 0); /* else it would still be read out */
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
bind_keys (GtkWidgetClass *widget_class)
{
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Delete, 0, "win.delete-cut", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_KP_Delete, 0, "win.delete-cut", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Up, GDK_ALT_MASK, "win.move-cut-up", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Down, GDK_ALT_MASK, "win.move-cut-down", NULL);
}

static void
spelch_cut_list_class_init (SpelchCutListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  G_OBJECT_CLASS (klass)->dispose = spelch_cut_list_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/spelch/Spelch/ui/cut-list.ui");
  gtk_widget_class_bind_template_child (widget_class, SpelchCutList, list);
  gtk_widget_class_bind_template_child (widget_class, SpelchCutList, add);
  gtk_widget_class_bind_template_child (widget_class, SpelchCutList, nothing);
  gtk_widget_class_bind_template_callback (widget_class, row_selected);
  gtk_widget_class_bind_template_callback (widget_class, row_activated);
  bind_keys (widget_class);
  gtk_widget_class_set_css_name (widget_class, "cutlist");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
spelch_cut_list_init (SpelchCutList *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_autoptr (GMenuModel) kinds = spelch_cut_menu_new ();
  spelch_later_menu_set (self->add, kinds);
  GtkDropTarget *target = gtk_drop_target_new (SPELCH_TYPE_CUT_CARD, GDK_ACTION_MOVE);
  g_signal_connect (target, "drop", G_CALLBACK (dropped), self);
  gtk_widget_add_controller (GTK_WIDGET (self->list), GTK_EVENT_CONTROLLER (target));
}

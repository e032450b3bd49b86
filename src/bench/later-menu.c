/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/later-menu.h"
#include "bench/template.h"

/* GTK leaves the focus on an item of a submenu that is no longer shown, and keys are lost with it. */
static void
menu_closed (GtkPopover *popover, GtkMenuButton *button)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (button));
  GtkWidget *focus = root == NULL ? NULL : gtk_root_get_focus (root);
  if (focus != NULL && gtk_widget_is_ancestor (focus, GTK_WIDGET (popover)))
    gtk_widget_grab_focus (GTK_WIDGET (button));
}

static void
make_popover (GtkMenuButton *button, gpointer model)
{
  GMenuModel *before = gtk_menu_button_get_menu_model (button);
  if (before == model)
    return;
  spelch_template_empty_menu (before);
  gtk_menu_button_set_menu_model (button, model);
  g_signal_connect_object (gtk_menu_button_get_popover (button), "closed", G_CALLBACK (menu_closed), button,
                           0);
}

void
spelch_later_menu_set (GtkMenuButton *button, GMenuModel *model)
{
  GtkWidget *toggle = gtk_widget_get_first_child (GTK_WIDGET (button));
  gtk_menu_button_set_create_popup_func (button, make_popover, g_object_ref (model), g_object_unref);
  gtk_accessible_update_property (GTK_ACCESSIBLE (toggle), GTK_ACCESSIBLE_PROPERTY_HAS_POPUP, TRUE, -1);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/template.h"

void
spelch_template_empty_menu (GMenuModel *menu)
{
  if (!G_IS_MENU (menu))
    return;
  for (int i = 0; i < g_menu_model_get_n_items (menu); i++)
    {
      g_autoptr (GMenuModel) section = g_menu_model_get_item_link (menu, i, G_MENU_LINK_SECTION);
      g_autoptr (GMenuModel) submenu = g_menu_model_get_item_link (menu, i, G_MENU_LINK_SUBMENU);
      spelch_template_empty_menu (section);
      spelch_template_empty_menu (submenu);
    }
  g_menu_remove_all (G_MENU (menu));
}

void
spelch_template_empty_menus (GtkWidget *widget)
{
  if (GTK_IS_MENU_BUTTON (widget))
    spelch_template_empty_menu (gtk_menu_button_get_menu_model (GTK_MENU_BUTTON (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    spelch_template_empty_menus (child);
}

void
spelch_template_dispose (GtkWidget *widget, GType type)
{
  GtkWidget *child = NULL;
  spelch_template_empty_menus (widget);
  gtk_widget_dispose_template (widget, type);
  /* GTK 4.8 clears the fields but leaves the outermost children in place. */
  while ((child = gtk_widget_get_first_child (widget)) != NULL)
    gtk_widget_unparent (child);
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Template: taking a composite widget apart.
 */
#pragma once

#include <gtk/gtk.h>

/* Takes everything out of @menu, its sections and its submenus; NULL is none. GTK 4.8 never lets go of a
 * section that was in a menu button's menu, so what is in it would stay for good. */
void spelch_template_empty_menu (GMenuModel *menu);

/* The same for all menu buttons in @widget, which is about to go. */
void spelch_template_empty_menus (GtkWidget *widget);

/* For a dispose function: empties the menus, clears the template's children and lets go of every child
 * @widget has. */
void spelch_template_dispose (GtkWidget *widget, GType type);

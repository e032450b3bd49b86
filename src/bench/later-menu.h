/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Later menu: a menu button's menu whose popover is made when it is opened for the first time. A popover
 * costs as much as a panel of the window, and few are ever opened.
 */
#pragma once

#include <gtk/gtk.h>

/* Gives @button the menu @model, instead of the one it had. */
void spelch_later_menu_set (GtkMenuButton *button, GMenuModel *model);

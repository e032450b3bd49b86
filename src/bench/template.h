/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Template: taking a composite widget apart.
 */
#pragma once

#include <gtk/gtk.h>

/* For a dispose function: clears the template's children and lets go of every child @widget has. */
void spelch_template_dispose (GtkWidget *widget, GType type);

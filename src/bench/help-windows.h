/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Help windows: the keys for everything, and how to read the drawing.
 */
#pragma once

#include <gtk/gtk.h>

/* Each shows a window over @parent. */
void spelch_help_show_keys (GtkWindow *parent);
void spelch_help_show_reading (GtkWindow *parent);

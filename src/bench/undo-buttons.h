/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Undo buttons: a window's Undo and Redo, which say what they would do.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Names the buttons after the steps, NULL for none, and lets the actions "undo" and "redo" of @actions be
 * used where there is one. */
void spelch_undo_buttons_follow (GActionMap *actions, GtkWidget *undo, GtkWidget *redo, const char *undo_name,
                                 const char *redo_name);

G_END_DECLS

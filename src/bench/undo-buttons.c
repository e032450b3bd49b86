/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/undo-buttons.h"
#include "bench/tooltip.h"

#include <glib/gi18n-lib.h>
#include <stdbool.h>

static void
enable (GActionMap *actions, const char *name, bool enabled)
{
  g_simple_action_set_enabled (G_SIMPLE_ACTION (g_action_map_lookup_action (actions, name)), enabled);
}

/* @format: "Undo %s". */
static void
name_step (GtkWidget *button, const char *plain, const char *format, const char *step)
{
  g_autofree char *words = step == NULL ? g_strdup (plain) : g_strdup_printf (format, step);
  spelch_tooltip_set (button, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
}

void
spelch_undo_buttons_follow (GActionMap *actions, GtkWidget *undo, GtkWidget *redo, const char *undo_name,
                            const char *redo_name)
{
  enable (actions, "undo", undo_name != NULL);
  enable (actions, "redo", redo_name != NULL);
  name_step (undo, _ ("Undo"), _ ("Undo %s"), undo_name);
  name_step (redo, _ ("Redo"), _ ("Redo %s"), redo_name);
}

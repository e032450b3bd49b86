/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tooltips. The toolkit asks the display where the pointer is whenever a visible widget gets one, and waits
 * for the answer, which made dozens of questions before the first frame. A widget that isn't on the screen
 * yet gets its own while it is hidden; templates do the same: "visible" false, the tooltip, "visible" true.
 */
#pragma once

#include <gtk/gtk.h>

/* Gives @widget the tooltip @words, or none when they are NULL. */
void spelch_tooltip_set (GtkWidget *widget, const char *words);

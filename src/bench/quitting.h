/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Quitting: everything unsaved is asked about first, window by window, and only then all of them close. Where
 * one is to stay, all stay as they were.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Begins with the first question, or closes all windows where there is none. A question that is open already
 * has to be answered before. */
void spelch_quit_all (GtkApplication *application);

G_END_DECLS

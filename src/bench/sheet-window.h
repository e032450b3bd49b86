/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Window: the bench sheet of the part on the bench as it will be printed, page under page, on either paper;
 * printed or exported from there. It follows the bench, but never during a drag.
 */
#pragma once

#include "bench/bench-session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Adds win.print to @bench, which opens the window about @session, or shows the one there is; it closes with
 * the bench. */
void spelch_sheet_window_add_action (GtkApplicationWindow *bench, SpelchSession *session);

G_END_DECLS

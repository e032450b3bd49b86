/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Window: side by side. The cut that the bench looks at, made with two to four bits: drawings to one scale,
 * numbers with the best and the worst of each row, the grades by depth, and each bit ready to be taken over
 * to the bench. It follows the bench, but never during a drag.
 */
#pragma once

#include "bench/appearance.h"
#include "bench/bench-session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_SIDE_WINDOW (spelch_side_window_get_type ())
G_DECLARE_FINAL_TYPE (SpelchSideWindow, spelch_side_window, SPELCH, SIDE_WINDOW, GtkApplicationWindow)

/* Adds win.side-by-side to @bench, which opens the window about @session, or shows the one there is; it
 * closes with the bench. */
void spelch_side_window_add_action (GtkApplicationWindow *bench, SpelchSession *session,
                                    SpelchAppearance *appearance);

G_END_DECLS

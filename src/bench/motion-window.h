/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Motion window: the bench's cut in slow motion, with what it takes to play it: play and pause, a tooth on or
 * back, any instant, any pass, how slow; and to save it for showing elsewhere. It follows the bench.
 */
#pragma once

#include "bench/appearance.h"
#include "bench/bench-session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_MOTION_WINDOW (spelch_motion_window_get_type ())
G_DECLARE_FINAL_TYPE (SpelchMotionWindow, spelch_motion_window, SPELCH, MOTION_WINDOW, GtkApplicationWindow)

/* Adds win.slow-motion to @bench, which outlives it: shows the one that belongs to it, or a new one; it
 * closes with the bench. Enabled while there is a plan. */
void spelch_motion_window_add_action (GtkApplicationWindow *bench, SpelchSession *session,
                                      SpelchAppearance *appearance);

G_END_DECLS

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice window: exercises that ask first and show afterwards, and the guided first lesson. The part on the
 * bench isn't touched.
 */
#pragma once

#include "bench/appearance.h"
#include "bench/preferred.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_PRACTICE_WINDOW (spelch_practice_window_get_type ())
G_DECLARE_FINAL_TYPE (SpelchPracticeWindow, spelch_practice_window, SPELCH, PRACTICE_WINDOW,
                      GtkApplicationWindow)

/* Shows the application's one window for practice, or makes it. */
void spelch_practice_window_present (GtkApplication *application, SpelchAppearance *appearance,
                                     SpelchPreferred *preferred);

G_END_DECLS

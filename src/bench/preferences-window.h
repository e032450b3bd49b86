/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Preferences window: what a person chooses for the program as a whole. Each choice holds at once.
 */
#pragma once

#include "bench/preferred.h"

#include <gtk/gtk.h>

/* Shows the window over @parent. */
void spelch_preferences_window_show (GtkWindow *parent, SpelchPreferred *preferred);

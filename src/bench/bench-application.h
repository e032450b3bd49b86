/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Application: starts windows, opens files given to it, and holds what belongs to the program as a whole:
 * preferences, appearance, about, quit and the keys for actions.
 */
#pragma once

#include "bench/bench-window.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_APPLICATION (spelch_application_get_type ())
G_DECLARE_FINAL_TYPE (SpelchApplication, spelch_application, SPELCH, APPLICATION, GtkApplication)

SpelchApplication *spelch_application_new (void);

/* Another window with @part in it, not yet shown; NULL: with the demo part. */
SpelchBenchWindow *spelch_application_add_window (SpelchApplication *self, SpelchPart *part);

G_END_DECLS

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One window: what a bench shows in a window beside it (the bench sheet, side by side, slow motion), opened
 * by an action of the bench, at most once for it, and gone with it.
 */
#pragma once

#include "bench/appearance.h"
#include "bench/bench-session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A new window of the bench's application about its session. */
typedef GtkWindow *(*SpelchOneMake) (GtkWindow *bench, SpelchSession *session, SpelchAppearance *appearance);

/* Gives @bench the action @name, which presents the window there is or else the one that @make makes. Owned
 * by the bench. @appearance: what @make gets; may be NULL. */
GSimpleAction *spelch_one_window_add_action (GtkApplicationWindow *bench, const char *name,
                                             SpelchSession *session, SpelchAppearance *appearance,
                                             SpelchOneMake make);

G_END_DECLS

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * First hints: a quiet line above the drawing that leads somebody new through the demo part, one thing to do
 * at a time. Each goes when it was done, all when they are put away. How far somebody came is a preference.
 */
#pragma once

#include "bench/bench-session.h"
#include "bench/preferred.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_FIRST_HINTS (spelch_first_hints_get_type ())
G_DECLARE_FINAL_TYPE (SpelchFirstHints, spelch_first_hints, SPELCH, FIRST_HINTS, GtkWidget)

/* @own_board: the button that is shown when the hints were followed, until it was used; owned by others. Both
 * others must outlive the hints. */
void spelch_first_hints_set_session (SpelchFirstHints *self, SpelchSession *session,
                                     SpelchPreferred *preferred, GtkWidget *own_board);

/* The demo part was just opened: hints are about it and go when another part is opened. */
void spelch_first_hints_begin (SpelchFirstHints *self);

G_END_DECLS

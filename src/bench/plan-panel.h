/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plan panel: the right-hand column: what must not be done, how the edges come out, what to set on the
 * machine, what holds the feed back, what the cut does to the board, and what to do before the real piece.
 * Every word follows a drag in the same frame and none of them moves the others. Each row opens the reasons
 * behind it, one row at a time; speed and feed can be set there by hand.
 */
#pragma once

#include "bench/bench-session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_PLAN_PANEL (spelch_plan_panel_get_type ())
G_DECLARE_FINAL_TYPE (SpelchPlanPanel, spelch_plan_panel, SPELCH, PLAN_PANEL, GtkWidget)

/* @session must outlive the panel; @log is the shop's. Once. */
void spelch_plan_panel_set_session (SpelchPlanPanel *self, SpelchSession *session, SpelchShelf *log);

G_END_DECLS

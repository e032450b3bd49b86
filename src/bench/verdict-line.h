/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Verdict line: how both faces come out, in one line above the drawing, for windows too narrow for the
 * right-hand column.
 */
#pragma once

#include "bench/bench-session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_VERDICT_LINE (spelch_verdict_line_get_type ())
G_DECLARE_FINAL_TYPE (SpelchVerdictLine, spelch_verdict_line, SPELCH, VERDICT_LINE, GtkWidget)

/* @session must outlive the line; once. */
void spelch_verdict_line_set_session (SpelchVerdictLine *self, SpelchSession *session);

/* Whether it is to be shown when there is something to say. */
void spelch_verdict_line_set_wanted (SpelchVerdictLine *self, bool wanted);

G_END_DECLS

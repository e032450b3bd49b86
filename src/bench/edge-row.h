/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edge row: how the edge of one face comes out: face, sign and word, and the deciding reason.
 */
#pragma once

#include "bench/bench-session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_EDGE_ROW (spelch_edge_row_get_type ())
G_DECLARE_FINAL_TYPE (SpelchEdgeRow, spelch_edge_row, SPELCH, EDGE_ROW, GtkWidget)

/* Shows the face on @side of the session's plan. */
void spelch_edge_row_follow (SpelchEdgeRow *self, SpelchSession *session, SpelchSide side);

/* Gives back lines that earlier, longer reasons needed. */
void spelch_edge_row_settle (SpelchEdgeRow *self);

G_END_DECLS

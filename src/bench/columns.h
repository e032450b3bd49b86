/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Columns: the window's three columns. The outer two take what they ask for, the middle one the rest. Where
 * that would leave the middle too narrow, the left one is folded away first, then the right one; either can
 * then be drawn over the middle on demand.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_COLUMNS (spelch_columns_get_type ())
G_DECLARE_FINAL_TYPE (SpelchColumns, spelch_columns, SPELCH, COLUMNS, GtkWidget)

/* Properties: "left", "centre", "right": the widgets. "left-folded", "right-folded" (read only): there's no
 * room for that one. "left-drawn", "right-drawn": it is shown over the middle while it is folded. */

G_END_DECLS

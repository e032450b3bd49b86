/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Columns: the window's three columns. The outer two take what they ask for, the middle one the rest; where
 * that would leave it too narrow, the left one is folded away.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_COLUMNS (spelch_columns_get_type ())
G_DECLARE_FINAL_TYPE (SpelchColumns, spelch_columns, SPELCH, COLUMNS, GtkWidget)

/* Properties "left", "centre", "right": the widgets. */

G_END_DECLS

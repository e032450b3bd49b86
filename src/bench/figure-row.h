/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Figure row: one thing to set on the machine: its name, its value, and a pin when the value is held by hand.
 */
#pragma once

#include <gtk/gtk.h>
#include <stdbool.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_FIGURE_ROW (spelch_figure_row_get_type ())
G_DECLARE_FINAL_TYPE (SpelchFigureRow, spelch_figure_row, SPELCH, FIGURE_ROW, GtkWidget)

/* Property "title". Signal "let-go": the pin was clicked. */
void spelch_figure_row_set_value (SpelchFigureRow *self, const char *value, bool held);

/* Gives back the lines that an earlier value took and this one doesn't need; not in a drag. */
void spelch_figure_row_settle (SpelchFigureRow *self);

G_END_DECLS

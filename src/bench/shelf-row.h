/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shelf row: one entry of a shop's list: its picture, name, decisive sizes, and whether it is retired.
 */
#pragma once

#include "bench/shelf-kind.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_SHELF_ROW (spelch_shelf_row_get_type ())
G_DECLARE_FINAL_TYPE (SpelchShelfRow, spelch_shelf_row, SPELCH, SHELF_ROW, GtkListBoxRow)

/* @shelves must outlive the row. */
SpelchShelfRow *spelch_shelf_row_new (const SpelchShelfKind *kind, SpelchShelves *shelves);

/* @item is copied; @scale in picture units per mm, the same for all rows of the list. */
void spelch_shelf_row_show (SpelchShelfRow *self, gconstpointer item, double scale,
                            const SpelchNumbers *numbers, const SpelchPalette *palette);

/* Owned by the row. */
gconstpointer spelch_shelf_row_get_item (SpelchShelfRow *self);

/* By which rows are sorted by name. Owned by the row. */
const char *spelch_shelf_row_get_key (SpelchShelfRow *self);

/* Whether @words (case-folded) stand in what the row says. */
bool spelch_shelf_row_matches (SpelchShelfRow *self, const char *words);

G_END_DECLS

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shelf window: the bit drawer, the boards or the machines of a shop: the list at the left, the chosen
 * entry's picture and form at the right. Every change is kept at once and can be undone.
 */
#pragma once

#include "bench/appearance.h"
#include "bench/shelf-kind.h"
#include "bench/shelves.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_SHELF_WINDOW (spelch_shelf_window_get_type ())
G_DECLARE_FINAL_TYPE (SpelchShelfWindow, spelch_shelf_window, SPELCH, SHELF_WINDOW, GtkApplicationWindow)

SpelchShelfWindow *spelch_shelf_window_new (GtkApplication *application, SpelchShelves *shelves,
                                            SpelchListKind kind, SpelchAppearance *appearance);

SpelchListKind spelch_shelf_window_get_kind (SpelchShelfWindow *self);

/* Shows it for the first time. The focus is in the list: in the name, typing would rename what is there. */
void spelch_shelf_window_open (SpelchShelfWindow *self);

/* An entry to be filled in: a new one, or one begun before that has no name of its own yet. */
void spelch_shelf_window_begin_own (SpelchShelfWindow *self);

/* Chooses the item with that id and brings it into sight. */
void spelch_shelf_window_show (SpelchShelfWindow *self, const char *id);

/* Chooses the item with @item's id, to have its @member told; one that only the part has is put on the shelf.
 */
void spelch_shelf_window_show_item (SpelchShelfWindow *self, gconstpointer item, const char *member);

/* How numbers are written and read. */
void spelch_shelf_window_set_numbers (SpelchShelfWindow *self, const SpelchNumbers *numbers);

/* For shelf-files.c. The separator is that of tables where numbers are written as they are here. */
char spelch_shelf_window_get_separator (SpelchShelfWindow *self);
SpelchShelf *spelch_shelf_window_get_shelf (SpelchShelfWindow *self);
void spelch_shelf_window_say (SpelchShelfWindow *self, const char *words);

G_END_DECLS

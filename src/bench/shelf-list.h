/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shelf list: the left of a shelf's window: the entries that are searched for, sorted and filtered, one of
 * which is chosen.
 */
#pragma once

#include "bench/appearance.h"
#include "bench/shelf-kind.h"
#include "bench/shelves.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_SHELF_LIST (spelch_shelf_list_get_type ())
G_DECLARE_FINAL_TYPE (SpelchShelfList, spelch_shelf_list, SPELCH, SHELF_LIST, GtkWidget)

/* Signal "chosen" (const char *, the id of an entry): by a person. */

/* What is listed. To be called once. */
void spelch_shelf_list_set_shelves (SpelchShelfList *self, SpelchShelves *shelves,
                                    const SpelchShelfKind *kind);

/* Shows the shelf as it is now. */
void spelch_shelf_list_show (SpelchShelfList *self, const SpelchNumbers *numbers,
                             const SpelchPalette *palette);

/* Selects the entry with that id, or the first one shown; its id, owned by the list, NULL: there is none. */
const char *spelch_shelf_list_select (SpelchShelfList *self, const char *id);

/* The focus goes to the chosen row, or to the search where there is none. */
void spelch_shelf_list_focus (SpelchShelfList *self);

/* Puts the focus into the search, or empties it and the filters so that every entry is shown. */
void spelch_shelf_list_find (SpelchShelfList *self);
void spelch_shelf_list_show_all (SpelchShelfList *self);

G_END_DECLS

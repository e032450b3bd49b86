/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shelf: what a shop keeps of one kind, its bits, boards, machines or log: a list in the person's data
 * folder; until something in it is changed the starter set, of which the log has none. Every change is kept
 * at once, can be undone, and makes a new list, so that an earlier one stays as it was. One shelf serves all
 * windows.
 */
#pragma once

#include "files/list-file.h"

#include <gio/gio.h>
#include <stdbool.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_SHELF (spelch_shelf_get_type ())
G_DECLARE_FINAL_TYPE (SpelchShelf, spelch_shelf, SPELCH, SHELF, GObject)

/* Signals: "changed"; "said" (const char *): a sentence about keeping the list. @folder: the program's data
 * folder; NULL keeps nothing. */
SpelchShelf *spelch_shelf_new (SpelchListKind kind, const char *folder);

SpelchListKind spelch_shelf_get_kind (SpelchShelf *self);

/* The items, SpelchBit, SpelchBoard, SpelchMachine or SpelchLogEntry, retired ones too. Valid until the next
 * change unless a reference is taken; never to be changed. */
GArray *spelch_shelf_get_items (SpelchShelf *self);
guint spelch_shelf_count (SpelchShelf *self);
gconstpointer spelch_shelf_get_nth (SpelchShelf *self, guint n);
gconstpointer spelch_shelf_find (SpelchShelf *self, const char *id);

/* Why the list in the folder can't be read or kept, as a sentence, or NULL. While it can't be read it is left
 * alone: the starter set is shown and can't be changed. */
const char *spelch_shelf_get_trouble (SpelchShelf *self);

/* An id that no item has, made from @name: "Long one" gives "long-one", or "long-one-2". Free with g_free().
 */
char *spelch_shelf_make_id (SpelchShelf *self, const char *name);

/* Puts @item, which has no fault, in the place of the item with its id, or at the end. @what is how undo
 * calls it ("change diameter"). False, with a sentence said, when it can't be kept. */
bool spelch_shelf_put (SpelchShelf *self, gconstpointer item, const char *what);

/* Puts several at once, as one change. */
bool spelch_shelf_put_all (SpelchShelf *self, const GArray *items, const char *what);

/* Without the entry with that id, as one step called @what. False, with the trouble told, when that can't
 * be kept. */
bool spelch_shelf_remove (SpelchShelf *self, const char *id, const char *what);

/* The newest changes can be undone that fit into so many bytes: each keeps the items it changed. */
#define SPELCH_SHELF_MOST_BYTES (32 << 20)

/* What undo and redo would do, or NULL; owned by the shelf. */
const char *spelch_shelf_get_undo_name (SpelchShelf *self);
const char *spelch_shelf_get_redo_name (SpelchShelf *self);
void spelch_shelf_undo (SpelchShelf *self);
void spelch_shelf_redo (SpelchShelf *self);

/* A change stays known by its number while it can be undone or done again. */
typedef enum
{
  SPELCH_STEP_FORGOTTEN,
  SPELCH_STEP_DONE,
  SPELCH_STEP_DONE_LAST, /* undo would take it back */
  SPELCH_STEP_UNDONE,
  SPELCH_STEP_UNDONE_LAST, /* redo would do it again */
} SpelchStepState;

/* The number of the change made last, which undo would take back; 0: there is none. */
guint spelch_shelf_get_step (SpelchShelf *self);
SpelchStepState spelch_shelf_step_state (SpelchShelf *self, guint step);

G_END_DECLS

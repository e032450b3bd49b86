/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shelves: all that a shop keeps, one shelf for bits, boards, machines and the log each, and which parts are
 * open that use something of them. The application has one set for all windows.
 */
#pragma once

#include "bench/bench-session.h"
#include "bench/shelf.h"

G_BEGIN_DECLS

#define SPELCH_TYPE_SHELVES (spelch_shelves_get_type ())
G_DECLARE_FINAL_TYPE (SpelchShelves, spelch_shelves, SPELCH, SHELVES, GObject)

/* Signal "looked-at": another session is the one a person looks at.
 * @folder: the program's data folder; NULL keeps nothing. */
SpelchShelves *spelch_shelves_new (const char *folder);

/* Owned by the shelves. */
SpelchShelf *spelch_shelves_get (SpelchShelves *self, SpelchListKind kind);

/* A session whose part may use what lies on the shelves; forgotten when it ends. */
void spelch_shelves_add_session (SpelchShelves *self, SpelchSession *session);

/* The session is the one a person looks at; another may come to the fore. */
void spelch_shelves_look_at (SpelchShelves *self, SpelchSession *session);

/* The one looked at last, or NULL. */
SpelchSession *spelch_shelves_get_session (SpelchShelves *self);

/* What the bit, board or machine with that id is called: on the shelf, else in a part that is open, else its
 * id. Owned by the shelves or by @id; valid until the next change. */
const char *spelch_shelves_name (SpelchShelves *self, SpelchListKind kind, const char *id);

/* What uses the entry, as a sentence, or NULL: a part that is open, or the shop log; nothing uses what
 * stands in the log. Free with g_free(). */
char *spelch_shelves_use (SpelchShelves *self, SpelchListKind kind, const char *id);

G_END_DECLS

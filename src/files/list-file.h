/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * List file: the bit drawer, the boards, the machines and the shop log as JSON text, each a list of its own.
 * The starter sets and the person's own lists have the same form: {"format_version": 1, "bits": [...]}.
 */
#pragma once

#include <gio/gio.h>
#include <json-glib/json-glib.h>
#include <stdbool.h>

typedef enum
{
  SPELCH_LIST_BITS,     /* of SpelchBit, member "bits" */
  SPELCH_LIST_BOARDS,   /* of SpelchBoard, "boards" */
  SPELCH_LIST_MACHINES, /* of SpelchMachine, "machines" */
  SPELCH_LIST_LOG,      /* of SpelchLogEntry, "log" */
} SpelchListKind;

/* Bytes of one item of such a list. Every item begins with its id. */
gsize spelch_list_item_size (SpelchListKind kind);

/* What is wrong with an item as described, as a sentence naming the member, or NULL. Free with g_free(). */
char *spelch_list_item_fault (SpelchListKind kind, gconstpointer item);

/* The member that holds a list: "bits". Not to be freed. */
const char *spelch_list_member (SpelchListKind kind);

/* Whether a file with that outermost object is a list, and of what; a part, which has an id or a board,
 * isn't.
 */
bool spelch_list_kind_of (JsonObject *root, SpelchListKind *kind);

/* Reads a list; NULL and SPELCH_FILE_ERROR on failure, with a sentence naming file, member and value. Every
 * item is checked and ids are unique. @unknown, when not NULL, gets the members this program doesn't know
 * (path -> JSON text, both freed by the table); a file of a newer format is refused. Free with
 * g_array_unref(). */
GArray *spelch_list_from_json (SpelchListKind kind, const char *text, gsize length, const char *name,
                               GHashTable *unknown, GError **error);

/* The members of a list's text that are kept but not read, up to the first item that can't be read. A list of
 * SpelchUnread; free with g_ptr_array_unref(). */
GPtrArray *spelch_list_unread (SpelchListKind kind, const char *text, gsize length, const char *name);

/* The list as readable JSON text, with the members @unknown (may be NULL) holds. Free with g_free(). */
char *spelch_list_to_json (SpelchListKind kind, const GArray *items, GHashTable *unknown);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * JSON fields: a cursor over the members of a JSON object. It turns members into values, keeps the first
 * fault it meets as a sentence naming file, member and value, and remembers which members it was asked for,
 * so that those nobody asked for (from a newer program, or somebody's own) are kept and can be written back.
 *
 * Every getter gives its fallback when the member isn't told; a wrong one is a fault and gives the fallback
 * too. A reader therefore reads everything in a row and looks for the fault once, at the end.
 */
#pragma once

#include "shop/codes.h"
#include "shop/length.h"

#include <json-glib/json-glib.h>

/* What is shared by all cursors of one file. */
typedef struct
{
  const char *name; /* stands for the file in sentences */
  GHashTable
      *unknown; /* path -> JSON text of an object with the members nobody asked for; NULL: they are dropped */
  GPtrArray *unread; /* SpelchUnread for each of them; NULL: nobody asks */
  bool lenient;      /* a file from a newer program: what can't be understood is passed over */
  GError *error;     /* the first fault */
} SpelchReading;

/* A cursor lives no longer than the one it was got from, nor than the name it was asked for by. */
typedef struct _SpelchFields SpelchFields;

/* The cursor over the whole file. @root holds an object and outlives the cursor. */
SpelchFields *spelch_fields_root (SpelchReading *reading, JsonNode *root);

/* What the cursor's file shares. */
SpelchReading *spelch_fields_reading (SpelchFields *fields);

/* The cursor over an object that is a member. NULL when it isn't told. An object with an id is kept apart in
 * `unknown` by it ("board/birch-ply-18"). */
SpelchFields *spelch_fields_object (SpelchFields *fields, const char *member);

/* Length of the list @member, 0 when it isn't told; at most @most. */
guint spelch_fields_count (SpelchFields *fields, const char *member, guint most);

/* The cursor over the @i-th object of the list @member: "cuts[2] 'shelf-dado'" in sentences,
 * "cuts/shelf-dado" in `unknown` (the index where it has no id). NULL, with a fault, when that isn't an
 * object. */
SpelchFields *spelch_fields_item (SpelchFields *fields, const char *member, guint i);

/* Keeps, and tells of, the members nobody asked for and frees the cursor. */
void spelch_fields_done (SpelchFields *fields);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchFields, spelch_fields_done)

/* Each of @members, which ends with NULL, must be told. */
void spelch_fields_need (SpelchFields *fields, const char *const *members);

/* Whether the member is there, whatever it is. */
bool spelch_fields_told (SpelchFields *fields, const char *member);

/* Text of at most @size - 1 bytes into @into, which keeps what it has when the member isn't told. */
void spelch_fields_text (SpelchFields *fields, const char *member, char *into, gsize size);

/* Whether the member is told as a text, where an object could stand too. */
bool spelch_fields_is_text (SpelchFields *fields, const char *member);

/* The names of all members that are told, in the order they stand in. Free with g_strfreev(). */
char **spelch_fields_members (SpelchFields *fields);

/* A code of @table as its value; true or false; a finite number. @otherwise: where it isn't told. */
int spelch_fields_code (SpelchFields *fields, const char *member, const SpelchCodes *table, int otherwise);
bool spelch_fields_flag (SpelchFields *fields, const char *member, bool otherwise);
double spelch_fields_number (SpelchFields *fields, const char *member, double otherwise);

/* As above; null gives @otherwise too. For tables that say which figures they lack. */
double spelch_fields_number_or_null (SpelchFields *fields, const char *member, double otherwise);

/* A whole number, @least to @most. */
int spelch_fields_integer (SpelchFields *fields, const char *member, int otherwise, int least, int most);
guint spelch_fields_whole (SpelchFields *fields, const char *member, guint otherwise, guint least,
                           guint most);

/* Keeps a fault when format_version isn't @version, the only one that is read. */
void spelch_fields_format (SpelchFields *fields, guint version);

/* A length told as a number of mm, a text with a unit, or {"mm": ..., "typed": ...}, whose two halves must
 * agree within 0.005 mm. 0 when it isn't told. Lengths below 0 are read: the shop's own checks say where they
 * make sense. */
SpelchLength spelch_fields_length (SpelchFields *fields, const char *member);

/* Lists of lengths and of numbers, at most @most; each gives how many. */
guint spelch_fields_lengths (SpelchFields *fields, const char *member, SpelchLength *into, guint most);
guint spelch_fields_numbers (SpelchFields *fields, const char *member, double *into, guint most);

/* A list of texts of at most @size - 1 bytes each, at most @most, one after the other into @into; gives how
 * many. An entry that isn't one is a fault, but passed over where @or_objects: those are left "". */
guint spelch_fields_texts (SpelchFields *fields, const char *member, char *into, gsize size, guint most,
                           bool or_objects);

/* A list of codes, each at most once, as a set of bits: 1 << value. */
guint spelch_fields_codes (SpelchFields *fields, const char *member, const SpelchCodes *table,
                           guint otherwise);

/* Keeps a fault about a member that is told: "FILE: MEMBER is VALUE: ADVICE". @advice is a sentence, or the
 * end of one. */
void spelch_fields_refuse (SpelchFields *fields, const char *member, const char *advice);

/* Keeps a fault found elsewhere: "FILE: SENTENCE". Takes @sentence; does nothing when it is NULL or the
 * reading is lenient. */
void spelch_reading_fault (SpelchReading *reading, char *sentence);

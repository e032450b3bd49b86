/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * JSON writer: readable JSON text, member after member in the order it is told. Two spaces for each level,
 * plain decimal numbers, small values (a length, a layer, a list of numbers) on one line, a new line at the
 * end. Members that the reader didn't know are written back at the end of the object they came from.
 *
 * Functions ending in _told leave a member out that tells nothing (0, "", false).
 */
#pragma once

#include "shop/codes.h"
#include "shop/length.h"

#include <json-glib/json-glib.h>

typedef struct _SpelchWriter SpelchWriter;

/* @unknown: as SpelchReading keeps it; may be NULL, outlives the writer. The outermost object is open. */
SpelchWriter *spelch_writer_new (GHashTable *unknown);

/* Closes the outermost object, frees the writer, and gives the text. Free with g_free(). */
char *spelch_writer_end (SpelchWriter *writer);

/* An object that is a member; @id, when not NULL, is the id it holds, as spelch_fields_object() keeps it
 * apart by. */
void spelch_writer_open (SpelchWriter *writer, const char *member, const char *id);

/* A list of objects, and an object in it, known by @id or, when that is NULL, by its place. @one_line:
 * written on one. */
void spelch_writer_open_list (SpelchWriter *writer, const char *member);
void spelch_writer_open_item (SpelchWriter *writer, const char *id, bool one_line);

/* Whether members are kept for the object @member, so that it must be written though it tells nothing else.
 */
bool spelch_writer_keeps (SpelchWriter *writer, const char *member);

/* Closes what was opened last. */
void spelch_writer_close (SpelchWriter *writer);

/* Members of the object that is open. Numbers must be finite. */
void spelch_writer_text (SpelchWriter *writer, const char *member, const char *text);
void spelch_writer_text_told (SpelchWriter *writer, const char *member, const char *text);
void spelch_writer_code (SpelchWriter *writer, const char *member, const SpelchCodes *table, int value);

/* As above, left out when it is @otherwise, which the reader takes when nothing is told. */
void spelch_writer_code_told (SpelchWriter *writer, const char *member, const SpelchCodes *table, int value,
                              int otherwise);
void spelch_writer_flag_told (SpelchWriter *writer, const char *member, bool flag);
void spelch_writer_flag (SpelchWriter *writer, const char *member, bool flag);
void spelch_writer_null (SpelchWriter *writer, const char *member);
void spelch_writer_number (SpelchWriter *writer, const char *member, double value);
void spelch_writer_number_told (SpelchWriter *writer, const char *member, double value);

/* As {"mm": ..., "typed": ...}, or a bare number of mm when no words were typed. */
void spelch_writer_length (SpelchWriter *writer, const char *member, const SpelchLength *length);
void spelch_writer_length_told (SpelchWriter *writer, const char *member, const SpelchLength *length);

/* A list of texts, one on each line; @texts ends with NULL. */
void spelch_writer_texts (SpelchWriter *writer, const char *member, const char *const *texts);

/* Lists on one line; one that is only written when told is left out when empty. */
void spelch_writer_lengths (SpelchWriter *writer, const char *member, const SpelchLength *lengths, guint n);
void spelch_writer_lengths_told (SpelchWriter *writer, const char *member, const SpelchLength *lengths,
                                 guint n);
void spelch_writer_numbers_told (SpelchWriter *writer, const char *member, const double *values, guint n);
void spelch_writer_codes (SpelchWriter *writer, const char *member, const SpelchCodes *table, guint set);

/* An object of any content as JSON text on one line. Free with g_free(). */
char *spelch_writer_object_text (JsonObject *object);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * JSON text: the gate every file passes before anything is made of it. Stricter than json-glib, which takes
 * numbers in hexadecimal, comments, repeated members, numbers too large to hold and any depth of nesting.
 */
#pragma once

#include <json-glib/json-glib.h>
#include <stdbool.h>

/* Reads @text as one JSON object and nothing after it. @name stands for the file in error sentences, which
 * name line, member and value. Refused besides what isn't JSON: over SPELCH_FILE_MOST bytes, nested deeper
 * than SPELCH_NESTING_MOST, an empty text, a member told twice, a number that isn't finite or is a whole
 * number of more than 18 digits, a NUL inside a string. NULL and SPELCH_FILE_ERROR on failure; free with
 * json_node_unref(). */
JsonNode *spelch_json_parse (const char *text, gsize length, const char *name, GError **error);

/* @value as JSON writes it: the shortest decimal that reads back as the same number. @value must be finite.
 */
void spelch_json_number (double value, char buffer[static G_ASCII_DTOSTR_BUF_SIZE]);

/* A value as an error sentence shows it: `"9 mmm"`, `12`, `a list`, `null`. Free with g_free(). */
char *spelch_json_show (JsonNode *node);

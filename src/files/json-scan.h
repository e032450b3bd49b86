/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * JSON scan: one pass over the marks of a JSON text, before anything is made of it, so that a person who
 * edits a file by hand is told line, member and value of what is wrong.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>

/* Whether @text, which must be valid UTF-8, is one JSON object (RFC 8259) with nothing after it, not nested
 * deeper than SPELCH_NESTING_MOST, with numbers that can be held: finite, whole ones of at most 18 digits.
 * NUL and lone surrogates are refused. *@members gets how many members are told in all; *@once whether it is
 * certain that none is told twice in its object: where it isn't, somebody must look. @name stands for the
 * file in sentences. */
bool spelch_json_scan (const char *text, gsize length, const char *name, guint *members, bool *once,
                       GError **error);

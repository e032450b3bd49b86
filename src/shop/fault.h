/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fault: the checks that the shop's values share, each giving a sentence that names the member and its value,
 * or NULL when nothing is wrong. Sentences write numbers with a point and millimetres, as files do, because
 * they name members of files. All sentences are newly allocated; free with g_free().
 */
#pragma once

#include "shop/codes.h"

/* A number that must lie between two bounds, both allowed. */
typedef struct
{
  const char *member; /* as in files */
  const char *unit;   /* "mm", "rpm"; "" for a bare number */
  double value;
  double least, most;
  bool may_be_none; /* 0 is allowed too: it stands for "not told" or "none" */
} SpelchBounds;

/* The first number of @bounds that isn't finite or lies outside: "diameter (0.5 mm) must be 1 mm to 60 mm."
 */
char *spelch_fault_bounds (const SpelchBounds *bounds, guint n);

/* An id: lower-case letters a to z, digits, points and hyphens, beginning with a letter or digit, ended
 * within SPELCH_ID_SIZE bytes. Empty only when @may_be_empty. */
char *spelch_fault_id (const char *member, const char *id, bool may_be_empty);

/* A day: "2026-05-31", of the years 1900 to 2999. Empty only when @may_be_empty. @date has SPELCH_DATE_SIZE
 * bytes. */
char *spelch_fault_date (const char *member, const char *date, bool may_be_empty);

/* Free text of at most @size - 1 bytes of UTF-8. */
char *spelch_fault_text (const char *member, const char *text, gsize size);

/* A value that isn't in its table of codes. */
char *spelch_fault_code (const char *member, const SpelchCodes *table, int value);

/* A number for a sentence: "15.9 mm", "18000 rpm", "not a number". */
char *spelch_fault_number (double value, const char *unit);

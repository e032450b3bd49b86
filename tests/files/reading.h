/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Reading: what several tests of the part file begin with.
 */
#pragma once

#include "files/part-file.h"

/* The part in @text, which must be readable. A new reference. */
SpelchPart *reading_part (const char *text);

/* The text of a file in tests/files. Free with g_free(). */
char *reading_file (const char *name);

/* @length is @mm and was typed as @typed. */
void reading_same_length (SpelchLength length, double mm, const char *typed);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Corpus: folders of good and bad files, one test for each of them. bad.ini beside them has a group for each
 * bad file by its name without ending, with what the sentence about it must name: `member` and `value`.
 */
#pragma once

#include <glib.h>

/* The path of a file, or for NULL of the folder, in "good" or "bad" of tests/files/@corpus. Free with
 * g_free(). */
char *corpus_path (const char *corpus, const char *folder, const char *name);

/* Adds "/@tests/good/NAME" for each good file, where @good gets its name, and "/@tests/bad/NAME" for each
 * group of bad.ini, where @bad gets name, member and value, ended by NULL. Every bad file must have its
 * group. */
void corpus_add (const char *corpus, const char *tests, GTestDataFunc good, GTestDataFunc bad);

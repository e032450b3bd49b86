/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Running: the command line, run as a person or a program runs it, without a display.
 */
#pragma once

#include <json-glib/json-glib.h>

typedef struct
{
  char *out, *err;
  int status;
} Running;

/* Runs the program with the words given, which NULL ends, or with those of @words. */
Running running (const char *first, ...) G_GNUC_NULL_TERMINATED;
Running running_words (const char *const *words);

void running_clear (Running *running);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Running, running_clear)

/* The processor time of all that was run so far, s. */
double running_took_s (void);

/* The demo part's file. Free with g_free(). */
char *running_demo (void);

/* The outermost object of @text, and the first of its cuts; both belong to @parser. */
JsonObject *running_object (JsonParser *parser, const char *text);
JsonObject *running_cut (JsonParser *parser, const char *text);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exercise file: a question for learners as JSON text, as a teacher writes it (docs/exercises.md). It never
 * holds an answer.
 */
#pragma once

#include "shop/exercise.h"

#include <gio/gio.h>
#include <json-glib/json-glib.h>

/* Reads an exercise. Its board, machine and bits are told in full as in a part file, or by the id of one of
 * the starter sets. @name stands for the file in error sentences. NULL and SPELCH_FILE_ERROR on failure. */
SpelchExercise *spelch_exercise_from_json (const char *text, gsize length, const char *name, GError **error);

/* Whether a file with that outermost object is an exercise: it says what it asks. */
gboolean spelch_exercise_is (JsonObject *root);

/* The members of an exercise's text that aren't read; a list of SpelchUnread, to be freed with
 * g_ptr_array_unref(). */
GPtrArray *spelch_exercise_unread (const char *text, gsize length, const char *name);

/* The same from a file, which stands for itself in error sentences. */
SpelchExercise *spelch_exercise_load (GFile *file, GError **error);

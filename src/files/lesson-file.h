/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lesson file: exercises in order, with words of telling between them, as JSON text.
 */
#pragma once

#include "shop/lesson.h"

#include <gio/gio.h>
#include <json-glib/json-glib.h>

/* Reads a lesson. @name stands for the file in error sentences. NULL and SPELCH_FILE_ERROR on failure. */
SpelchLesson *spelch_lesson_from_json (const char *text, gsize length, const char *name, GError **error);

/* Whether a file with that outermost object is a lesson: it has steps and no board. */
gboolean spelch_lesson_is (JsonObject *root);

/* The members of a lesson's text that aren't read; a list of SpelchUnread, to be freed with
 * g_ptr_array_unref(). */
GPtrArray *spelch_lesson_unread (const char *text, gsize length, const char *name);

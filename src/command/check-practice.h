/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Check of practice files: whether an exercise can be read and has just one clear answer whatever is drawn,
 * whether a lesson names exercises that are there, and whether the answers that were kept can be read.
 */
#pragma once

#include <gio/gio.h>

/* Each says what it finds about the file's text and gives the exit status. @name stands for the file. */
int spelch_check_exercise (const char *text, gsize length, const char *name, gboolean json);
int spelch_check_lesson (const char *text, gsize length, const char *name, gboolean json);
int spelch_check_practice_log (GFile *file, const char *name, gboolean json);

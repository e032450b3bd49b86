/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * File input and output: whole text files, read with a bound and saved so that the old file is whole until
 * the new one is. Errors are SPELCH_FILE_ERROR with a sentence naming the file.
 */
#pragma once

#include <gio/gio.h>
#include <stdbool.h>

/* What a file is called in sentences: its last part, "hall.spelch". Free with g_free(). */
char *spelch_file_name (GFile *file);

/* @name as the beginning of a file's name, without what can't stand there; @otherwise where nothing is left
 * of it. Free with g_free(). */
char *spelch_file_stem (const char *name, const char *otherwise);

/* Reads a plain file of at most SPELCH_FILE_MOST bytes; the text ends with a NUL that *length doesn't count.
 * @etag, when not NULL, gets what spelch_file_save() needs. Free with g_free(). */
char *spelch_file_read (GFile *file, gsize *length, char **etag, GError **error);

/* What tells a later state of a file from this one, or NULL when it isn't there. Free with g_free(). */
char *spelch_file_etag (GFile *file);

/* Writes a new file beside the old one and moves it into place. A symbolic link is followed and stays one;
 * the mode stays; another name (hard link) of the file keeps the old text. @etag: as read, or NULL not to
 * look whether the file has changed since; @new_etag, when not NULL, gets the new one. On failure the old
 * file is as it was. */
bool spelch_file_save (GFile *file, const char *text, const char *etag, char **new_etag, GError **error);

/* The same for any bytes, however the file stands. */
bool spelch_file_save_bytes (GFile *file, const void *data, gsize length, GError **error);

/* The same for a file of this computer, with the bare reason of a failure, a G_FILE_ERROR; a new file gets
 * @mode. What is no plain file, such as a device, is left alone. */
bool spelch_file_put (const char *path, const void *data, gsize length, int mode, GError **reason);

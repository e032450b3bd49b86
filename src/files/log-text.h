/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Log text: how the files that only grow, the shop log and the practice log, are read and saved.
 */
#pragma once

#include <gio/gio.h>

/* Members this program doesn't know, none yet: path -> JSON text. */
GHashTable *spelch_log_text_unknown (void);

/* What is made of a text; NULL, with an error that begins with @name, where it can't be read. */
typedef gpointer (*SpelchLogTextRead) (const char *text, gsize length, const char *name, GError **error);

/* Reads @file by @read; @etag gets what saving needs to notice a change on disk (may be NULL). NULL and
 * SPELCH_FILE_ERROR on failure. */
gpointer spelch_log_text_load (GFile *file, SpelchLogTextRead read, char **etag, GError **error);

/* Saves as a part is saved: the old file is whole until the new one is. Refused when there is more than is
 * read again: of text, or of entries where @full. */
gboolean spelch_log_text_save (GFile *file, const char *text, gboolean full, const char *etag,
                               char **new_etag, GError **error);

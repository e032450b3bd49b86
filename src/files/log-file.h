/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Log file: the shop log as a JSON file, {"format_version": 1, "log": [...]}, read and saved so that nothing
 * in it is lost.
 */
#pragma once

#include "shop/log-entry.h"

#include <gio/gio.h>

typedef struct
{
  GArray *entries;     /* of SpelchLogEntry */
  GHashTable *unknown; /* members this program doesn't know: path -> JSON text */
} SpelchLog;

/* One without entries. */
SpelchLog *spelch_log_new (void);
void spelch_log_free (SpelchLog *log);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchLog, spelch_log_free)

/* Reads a log; @etag gets what spelch_log_save() needs to notice a change on disk (may be NULL). NULL and
 * SPELCH_FILE_ERROR on failure, with a sentence naming file, member and value. */
SpelchLog *spelch_log_load (GFile *file, char **etag, GError **error);

/* Saves as a part is saved: the old file is whole until the new one is. Refused when the text would be more
 * than is read again. */
bool spelch_log_save (const SpelchLog *log, GFile *file, const char *etag, char **new_etag, GError **error);

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/log-file.h"

#include "files/file-io.h"
#include "files/list-file.h"
#include "files/part-file.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static SpelchLog *
log_of (GArray *entries, GHashTable *unknown)
{
  SpelchLog *log = g_new (SpelchLog, 1);
  *log = (SpelchLog){ .entries = entries, .unknown = unknown };
  return log;
}

static GHashTable *
nothing_unknown (void)
{
  return g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
}

SpelchLog *
spelch_log_new (void)
{
  return log_of (g_array_new (FALSE, TRUE, sizeof (SpelchLogEntry)), nothing_unknown ());
}

void
spelch_log_free (SpelchLog *log)
{
  g_array_unref (log->entries);
  g_hash_table_unref (log->unknown);
  g_free (log);
}

SpelchLog *
spelch_log_load (GFile *file, char **etag, GError **error)
{
  g_autofree char *name = spelch_file_name (file);
  g_autofree char *tag = NULL;
  gsize length = 0;
  g_autofree char *text = spelch_file_read (file, &length, &tag, error);
  if (text == NULL)
    return NULL;
  g_autoptr (GHashTable) unknown = nothing_unknown ();
  GArray *entries = spelch_list_from_json (SPELCH_LIST_LOG, text, length, name, unknown, error);
  if (entries == NULL)
    return NULL;
  if (etag != NULL)
    *etag = g_steal_pointer (&tag);
  return log_of (entries, g_steal_pointer (&unknown));
}

bool
spelch_log_save (const SpelchLog *log, GFile *file, const char *etag, char **new_etag, GError **error)
{
  g_autofree char *text = spelch_list_to_json (SPELCH_LIST_LOG, log->entries, log->unknown);
  if (strlen (text) <= SPELCH_FILE_MOST)
    return spelch_file_save (file, text, etag, new_etag, error);
  g_autofree char *name = spelch_file_name (file);
  g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_TOO_BIG,
               _ ("%s is full: a log has at most %d bytes. Begin a new one and keep this beside it."), name,
               SPELCH_FILE_MOST);
  return false;
}

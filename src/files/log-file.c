/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/log-file.h"

#include "files/list-file.h"
#include "files/log-text.h"

static SpelchLog *
log_of (GArray *entries, GHashTable *unknown)
{
  SpelchLog *log = g_new (SpelchLog, 1);
  *log = (SpelchLog){ .entries = entries, .unknown = unknown };
  return log;
}

SpelchLog *
spelch_log_new (void)
{
  return log_of (g_array_new (FALSE, TRUE, sizeof (SpelchLogEntry)), spelch_log_text_unknown ());
}

void
spelch_log_free (SpelchLog *log)
{
  g_array_unref (log->entries);
  g_hash_table_unref (log->unknown);
  g_free (log);
}

static gpointer
read_log (const char *text, gsize length, const char *name, GError **error)
{
  g_autoptr (GHashTable) unknown = spelch_log_text_unknown ();
  GArray *entries = spelch_list_from_json (SPELCH_LIST_LOG, text, length, name, unknown, error);
  return entries == NULL ? NULL : log_of (entries, g_steal_pointer (&unknown));
}

SpelchLog *
spelch_log_load (GFile *file, char **etag, GError **error)
{
  return spelch_log_text_load (file, read_log, etag, error);
}

bool
spelch_log_save (const SpelchLog *log, GFile *file, const char *etag, char **new_etag, GError **error)
{
  g_autofree char *text = spelch_list_to_json (SPELCH_LIST_LOG, log->entries, log->unknown);
  return spelch_log_text_save (file, text, FALSE, etag, new_etag, error);
}

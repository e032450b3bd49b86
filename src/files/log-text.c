/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/log-text.h"

#include "files/file-io.h"
#include "files/part-file.h"

#include <glib/gi18n-lib.h>
#include <string.h>

GHashTable *
spelch_log_text_unknown (void)
{
  return g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
}

gpointer
spelch_log_text_load (GFile *file, SpelchLogTextRead read, char **etag, GError **error)
{
  g_autofree char *name = spelch_file_name (file);
  g_autofree char *tag = NULL;
  gsize length = 0;
  g_autofree char *text = spelch_file_read (file, &length, &tag, error);
  gpointer log = text == NULL ? NULL : read (text, length, name, error);
  if (log != NULL && etag != NULL)
    *etag = g_steal_pointer (&tag);
  return log;
}

gboolean
spelch_log_text_save (GFile *file, const char *text, gboolean full, const char *etag, char **new_etag,
                      GError **error)
{
  if (strlen (text) <= SPELCH_FILE_MOST && !full)
    return spelch_file_save (file, text, etag, new_etag, error);
  g_autofree char *name = spelch_file_name (file);
  g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_TOO_BIG,
               _ ("%s is full: a log has at most %d bytes. Begin a new one and keep this beside it."), name,
               SPELCH_FILE_MOST);
  return FALSE;
}

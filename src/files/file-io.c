/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/file-io.h"

#include "files/part-file.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

char *
spelch_file_name (GFile *file)
{
  g_autofree char *base = g_file_get_basename (file);
  return base == NULL ? g_file_get_parse_name (file) : g_filename_display_name (base);
}

/* ---- Reading ---- */

static char *
too_big (const char *name, goffset size, GError **error)
{
  g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_TOO_BIG,
               _ ("%s: the file has %" G_GOFFSET_FORMAT " bytes; no more than %d are read."), name, size,
               SPELCH_FILE_MOST);
  return NULL;
}

static char *
cannot_read (const char *name, const char *reason, GError **error)
{
  g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_READ, _ ("%s can't be read: %s"), name, reason);
  return NULL;
}

static char *
read_stream (GFileInputStream *stream, const char *name, gsize *length, GError **error)
{
  g_autoptr (GError) reason = NULL;
  g_autofree char *text = g_malloc (SPELCH_FILE_MOST + 2);
  if (!g_input_stream_read_all (G_INPUT_STREAM (stream), text, SPELCH_FILE_MOST + 1, length, NULL, &reason))
    return cannot_read (name, reason->message, error);
  if (*length > SPELCH_FILE_MOST)
    return too_big (name, (goffset)*length, error);
  text[*length] = '\0';
  return g_realloc (g_steal_pointer (&text), *length + 1);
}

char *
spelch_file_read (GFile *file, gsize *length, char **etag, GError **error)
{
  g_autofree char *name = spelch_file_name (file);
  g_autoptr (GError) reason = NULL;
  g_autoptr (GFileInfo) info
      = g_file_query_info (file, G_FILE_ATTRIBUTE_STANDARD_TYPE "," G_FILE_ATTRIBUTE_STANDARD_SIZE,
                           G_FILE_QUERY_INFO_NONE, NULL, &reason);
  if (info == NULL)
    return cannot_read (name, reason->message, error);
  if (g_file_info_get_file_type (info) != G_FILE_TYPE_REGULAR)
    return cannot_read (name, _ ("it isn't a plain file."), error);
  if (g_file_info_get_size (info) > SPELCH_FILE_MOST)
    return too_big (name, g_file_info_get_size (info), error);

  g_autoptr (GFileInputStream) stream = g_file_read (file, NULL, &reason);
  if (stream == NULL)
    return cannot_read (name, reason->message, error);
  g_autoptr (GFileInfo) open_info
      = g_file_input_stream_query_info (stream, G_FILE_ATTRIBUTE_ETAG_VALUE, NULL, NULL);
  char *text = read_stream (stream, name, length, error);
  if (text != NULL && etag != NULL)
    *etag = open_info == NULL ? NULL : g_strdup (g_file_info_get_etag (open_info));
  return text;
}

/* ---- Saving ---- */

/* GIO would write through a link in place, and what is half written then is lost; so the link is followed
 * first. */
static GFile *
follow_links (GFile *file)
{
  const char *path = g_file_peek_path (file);
  char *real = path == NULL ? NULL : realpath (path, NULL);
  if (real == NULL)
    return g_object_ref (file);
  GFile *target = g_file_new_for_path (real);
  free (real);
  return target;
}

static bool
parent_is_writable (GFile *file)
{
  g_autoptr (GFile) parent = g_file_get_parent (file);
  g_autoptr (GFileInfo) info = parent == NULL ? NULL
                                              : g_file_query_info (parent, G_FILE_ATTRIBUTE_ACCESS_CAN_WRITE,
                                                                   G_FILE_QUERY_INFO_NONE, NULL, NULL);
  return info == NULL || g_file_info_get_attribute_boolean (info, G_FILE_ATTRIBUTE_ACCESS_CAN_WRITE);
}

/* GIO also writes in place when a file has several names or another owner. Then it must keep a copy until
 * that is done. */
static bool
needs_copy (GFile *file)
{
  g_autoptr (GFileInfo) info
      = g_file_query_info (file, "unix::nlink,unix::uid,unix::gid", G_FILE_QUERY_INFO_NONE, NULL, NULL);
  if (info == NULL || !g_file_info_has_attribute (info, "unix::nlink"))
    return false;
  return g_file_info_get_attribute_uint32 (info, "unix::nlink") > 1
         || g_file_info_get_attribute_uint32 (info, "unix::uid") != geteuid ()
         || g_file_info_get_attribute_uint32 (info, "unix::gid") != getegid ();
}

static void
remove_copy (GFile *file)
{
  g_autofree char *path = g_file_get_path (file);
  g_autofree char *copy = path == NULL ? NULL : g_strconcat (path, "~", NULL);
  if (copy != NULL)
    unlink (copy);
}

static bool
cannot_write (const char *name, const GError *reason, GError **error)
{
  if (g_error_matches (reason, G_IO_ERROR, G_IO_ERROR_WRONG_ETAG))
    g_set_error (
        error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_CHANGED,
        _ ("%s has been changed by another program since it was read; save under another name, or open it "
           "again."),
        name);
  else
    g_set_error (
        error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_WRITE,
        _ ("%s can't be saved: %s. The file on disk is as it was; save under another name or elsewhere."),
        name, reason->message);
  return false;
}

bool
spelch_file_save (GFile *file, const char *text, const char *etag, char **new_etag, GError **error)
{
  g_autofree char *name = spelch_file_name (file);
  g_autoptr (GFile) target = follow_links (file);
  g_autoptr (GError) reason = NULL;
  if (!parent_is_writable (target))
    {
      g_set_error (&reason, G_IO_ERROR, G_IO_ERROR_PERMISSION_DENIED, "%s",
                   _ ("nothing can be written in its folder"));
      return cannot_write (name, reason, error);
    }
  bool copy = needs_copy (target);
  if (!g_file_replace_contents (target, text, strlen (text), etag, copy, G_FILE_CREATE_NONE, new_etag, NULL,
                                &reason))
    return cannot_write (name, reason, error);
  if (copy)
    remove_copy (target);
  return true;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/file-io.h"

#include "files/part-file.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

char *
spelch_file_name (GFile *file)
{
  g_autofree char *base = g_file_get_basename (file);
  return base == NULL ? g_file_get_parse_name (file) : g_filename_display_name (base);
}

char *
spelch_file_stem (const char *name, const char *otherwise)
{
  g_autofree char *stem = g_strdup (name);
  g_strdelimit (stem, "/\\:*?\"<>|", '-');
  g_strstrip (stem);
  return g_strdup (stem[0] != '\0' && stem[0] != '.' ? stem : otherwise);
}

/* ---- Reading ---- */

static char *
too_big (const char *name, goffset size, GError **error)
{
  g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_TOO_BIG,
               _ ("%s: the file has %lld bytes; no more than %d are read."), name, (long long)size,
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

static bool
changed (const char *name, GError **error)
{
  g_set_error (
      error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_CHANGED,
      _ ("%s has been changed by another program since it was read; save under another name, or open it "
         "again."),
      name);
  return false;
}

static bool
cannot_write (const char *name, const char *reason, GError **error)
{
  g_set_error (
      error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_WRITE,
      _ ("%s can't be saved: %s. The file on disk is as it was; save under another name or elsewhere."), name,
      reason);
  return false;
}

/* The usual reasons in words; the system's own name the file beside the old one, which nobody has asked for.
 */
static const char *
why_not (const GError *reason)
{
  if (reason->domain != G_FILE_ERROR)
    return reason->message;
  switch (reason->code)
    {
    case G_FILE_ERROR_NOENT:
    case G_FILE_ERROR_NOTDIR:
      return _ ("there is no such folder");
    case G_FILE_ERROR_ACCES:
    case G_FILE_ERROR_PERM:
    case G_FILE_ERROR_ROFS:
      return _ ("nothing may be written there");
    case G_FILE_ERROR_NOSPC:
      return _ ("there is no room left");
    default:
      return reason->message;
    }
}

char *
spelch_file_etag (GFile *file)
{
  g_autoptr (GFileInfo) info
      = g_file_query_info (file, G_FILE_ATTRIBUTE_ETAG_VALUE, G_FILE_QUERY_INFO_NONE, NULL, NULL);
  return info == NULL ? NULL : g_strdup (g_file_info_get_etag (info));
}

/* The new file takes over whose the old one was, as far as we may give files away, and who may read and write
 * it. */
static void
take_over (const char *path, const struct stat *old)
{
  if (chown (path, old->st_uid, old->st_gid) != 0)
    g_debug ("%s stays ours", path);
  if (g_chmod (path, (int)(old->st_mode & 07777)) != 0)
    g_debug ("%s keeps the mode of a new file", path);
}

static bool
refuse (GError **reason, const char *why)
{
  g_set_error_literal (reason, G_FILE_ERROR, G_FILE_ERROR_FAILED, why);
  return false;
}

/* GIO's own replacing writes over the old file in place where it can't make a new one beside it, and on a
 * full disk both are lost then; it writes through links in place too. So local files are done by hand. */
bool
spelch_file_put (const char *path, const void *data, gsize length, int mode, GError **reason)
{
  struct stat old;
  if (g_file_test (path, G_FILE_TEST_IS_SYMLINK) && !g_file_test (path, G_FILE_TEST_EXISTS))
    return refuse (reason, _ ("it is a link to a file that isn't there"));
  char *real = realpath (path, NULL); /* NULL for a new file */
  const char *target = real != NULL ? real : path;
  bool is_new = stat (target, &old) != 0;
  /* A device or a pipe would be moved away and a file put in its place. */
  bool may = is_new || S_ISREG (old.st_mode);
  bool saved = may
               && g_file_set_contents_full (target, data, (gssize)length,
                                            G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                            is_new ? mode : (int)(old.st_mode & 0777), reason);
  if (saved && !is_new)
    take_over (target, &old);
  free (real);
  return saved || (!may && refuse (reason, _ ("it isn't a plain file")));
}

static bool
save_local (const char *path, const char *data, gsize length, const char *name, GError **error)
{
  g_autoptr (GError) reason = NULL;
  return spelch_file_put (path, data, length, 0666, &reason) || cannot_write (name, why_not (reason), error);
}

static bool
save_remote (GFile *file, const char *data, gsize length, const char *name, GError **error)
{
  g_autoptr (GError) reason = NULL;
  return g_file_replace_contents (file, data, length, NULL, TRUE, G_FILE_CREATE_NONE, NULL, NULL, &reason)
         || cannot_write (name, reason->message, error);
}

bool
spelch_file_save_bytes (GFile *file, const void *data, gsize length, GError **error)
{
  g_autofree char *name = spelch_file_name (file);
  const char *path = g_file_peek_path (file);
  return path != NULL ? save_local (path, data, length, name, error)
                      : save_remote (file, data, length, name, error);
}

bool
spelch_file_save (GFile *file, const char *text, const char *etag, char **new_etag, GError **error)
{
  g_autofree char *name = spelch_file_name (file);
  g_autofree char *on_disk = spelch_file_etag (file);
  if (etag != NULL && on_disk != NULL && !g_str_equal (etag, on_disk))
    return changed (name, error);
  if (!spelch_file_save_bytes (file, text, strlen (text), error))
    return false;
  if (new_etag != NULL)
    *new_etag = spelch_file_etag (file);
  return true;
}

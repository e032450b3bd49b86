/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Part file: a part as JSON text (`.spelch`), read, written and saved so that nothing is lost.
 */
#pragma once

#include "shop/part.h"

#include <gio/gio.h>

#define SPELCH_FORMAT_VERSION 1
#define SPELCH_FILE_MOST      (1 << 23) /* bytes */
#define SPELCH_NESTING_MOST   32

#define SPELCH_FILE_ERROR (spelch_file_error_quark ())
GQuark spelch_file_error_quark (void);

typedef enum
{
  SPELCH_FILE_ERROR_READ,      /* can't be opened or read */
  SPELCH_FILE_ERROR_TOO_BIG,   /* over SPELCH_FILE_MOST */
  SPELCH_FILE_ERROR_NESTED,    /* over SPELCH_NESTING_MOST */
  SPELCH_FILE_ERROR_SYNTAX,    /* not JSON; empty */
  SPELCH_FILE_ERROR_MEMBER,    /* a member is missing, of the wrong type or out of range */
  SPELCH_FILE_ERROR_CHANGED,   /* changed on disk since it was read */
  SPELCH_FILE_ERROR_WRITE,     /* can't be written */
  SPELCH_FILE_ERROR_READ_ONLY, /* from a newer major format */
} SpelchFileError;

/* Reads a part from JSON text. @name stands for the file in error sentences, each of which names file, member
 * and value. A newer format_version is read as far as it can be and marked read_only. NULL and
 * SPELCH_FILE_ERROR on failure. */
SpelchPart *spelch_part_from_json (const char *text, gsize length, const char *name, GError **error);

/* The members of a part's text that are kept but not read, in the order they are met; as far as the text can
 * be read. A list of SpelchUnread; free with g_ptr_array_unref(). */
GPtrArray *spelch_part_unread (const char *text, gsize length, const char *name);

/* The part as readable JSON text, members it didn't know included. Free with g_free(). */
char *spelch_part_to_json (const SpelchPart *part);

/* Reads a file; @etag gets what spelch_part_save() needs to notice a change on disk (may be NULL). */
SpelchPart *spelch_part_load (GFile *file, char **etag, GError **error);

/* Saves: follows links, keeps the mode, writes a new file and moves it into place, so that the old one is
 * whole until the new one is. @etag: as loaded, or NULL not to check; gets the new one when @new_etag isn't
 * NULL. */
bool spelch_part_save (const SpelchPart *part, GFile *file, const char *etag, char **new_etag,
                       GError **error);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Recovery: unsaved work kept aside while it is worked on, so that a crash or a power cut loses at most a
 * second of it. Each window keeps a copy of its own, in one file that is whole at every moment: the URI of
 * the file the work belongs to, that file's etag when it was read, then the part. A lock beside it tells a
 * copy that is being kept from one left behind. The copy is removed when the work is saved, or thrown away
 * by its owner.
 */
#pragma once

#include "bench/bench-session.h"

G_BEGIN_DECLS

/* A change is kept within this time. */
#define SPELCH_RECOVERY_WAIT_MS 500

/* ---- Keeping ---- */

#define SPELCH_TYPE_RECOVERY (spelch_recovery_get_type ())
G_DECLARE_FINAL_TYPE (SpelchRecovery, spelch_recovery, SPELCH, RECOVERY, GObject)

/* Keeps the unsaved work of @session in @folder (the program's state folder). Signal: "troubled" (const char
 * *): a sentence, once, when the work can't be kept aside; it is tried again. */
SpelchRecovery *spelch_recovery_new (SpelchSession *session, const char *folder);

/* Where the copy is, while there is one. Free with g_free(). */
char *spelch_recovery_get_path (SpelchRecovery *self);

/* Removes what is kept. */
void spelch_recovery_forget (SpelchRecovery *self);

/* ---- What was left behind ---- */

typedef struct
{
  SpelchPart *part;
  GFile *file; /* it belongs to; NULL: none yet */
  char *etag;  /* of that file when it was read; NULL: none */
  char *path;  /* of the copy */
  int lock;
} SpelchLeftBehind;

/* What earlier runs left in @folder, the oldest first: SpelchLeftBehind, which are no other window's while
 * they are held here. Copies that say what stands in their file anyway are removed. One that can't be
 * read is put aside under another name, and *@trouble gets a sentence about it, or NULL; free it with
 * g_free(). */
GPtrArray *spelch_recovery_find (const char *folder, char **trouble);

/* The copy stays for another time. */
void spelch_left_behind_free (SpelchLeftBehind *left);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchLeftBehind, spelch_left_behind_free)

/* Removes the copy. */
void spelch_left_behind_throw_away (SpelchLeftBehind *left);

/* Makes the copy this recovery's own, as the session is about to open its part: at no moment is there none.
 * @left is freed, its part and file are to be referenced before. */
void spelch_recovery_take_over (SpelchRecovery *self, SpelchLeftBehind *left);

G_END_DECLS

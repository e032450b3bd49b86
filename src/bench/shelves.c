/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/shelves.h"
#include "files/log-file.h"

#include <glib/gi18n-lib.h>

#define KINDS (SPELCH_LIST_MACHINES + 1)

struct _SpelchShelves
{
  GObject parent_instance;
  char *folder;
  SpelchShelf *shelves[KINDS];
  GPtrArray *sessions; /* weak */
};

G_DEFINE_FINAL_TYPE (SpelchShelves, spelch_shelves, G_TYPE_OBJECT)

SpelchShelf *
spelch_shelves_get (SpelchShelves *self, SpelchListKind kind)
{
  g_return_val_if_fail (kind < KINDS, NULL);
  return self->shelves[kind];
}

static void
session_ended (gpointer data, GObject *session)
{
  SpelchShelves *self = data;
  g_ptr_array_remove (self->sessions, session);
}

void
spelch_shelves_add_session (SpelchShelves *self, SpelchSession *session)
{
  g_ptr_array_add (self->sessions, session);
  g_object_weak_ref (G_OBJECT (session), session_ended, self);
}

static bool
part_uses (const SpelchPart *part, SpelchListKind kind, const char *id)
{
  if (kind == SPELCH_LIST_BITS)
    return spelch_part_find_bit (part, id) >= 0;
  return g_str_equal (kind == SPELCH_LIST_BOARDS ? part->board.id : part->machine.id, id);
}

static bool
log_uses (SpelchShelves *self, SpelchListKind kind, const char *id)
{
  if (self->folder == NULL)
    return false;
  g_autoptr (GFile) file = g_file_new_build_filename (self->folder, "log.json", NULL);
  g_autoptr (SpelchLog) log = g_file_query_exists (file, NULL) ? spelch_log_load (file, NULL, NULL) : NULL;
  for (guint i = 0; log != NULL && i < log->entries->len; i++)
    {
      const SpelchLogEntry *entry = &g_array_index (log->entries, SpelchLogEntry, i);
      const char *used = kind == SPELCH_LIST_BITS     ? entry->bit
                         : kind == SPELCH_LIST_BOARDS ? entry->board
                                                      : entry->machine;
      if (g_str_equal (used, id))
        return true;
    }
  return false;
}

char *
spelch_shelves_use (SpelchShelves *self, SpelchListKind kind, const char *id)
{
  for (guint i = 0; i < self->sessions->len; i++)
    {
      const SpelchPart *part = spelch_session_get_part (g_ptr_array_index (self->sessions, i));
      if (part != NULL && part_uses (part, kind, id))
        return g_strdup_printf (_ ("The part “%s” uses it, so it can be retired but not deleted."),
                                part->name);
    }
  if (log_uses (self, kind, id))
    return g_strdup (_ ("The shop log tells of it, so it can be retired but not deleted."));
  return NULL;
}

/* ---- Object ---- */

static void
spelch_shelves_finalize (GObject *object)
{
  SpelchShelves *self = SPELCH_SHELVES (object);
  for (guint i = 0; i < KINDS; i++)
    g_clear_object (&self->shelves[i]);
  for (guint i = 0; i < self->sessions->len; i++)
    g_object_weak_unref (g_ptr_array_index (self->sessions, i), session_ended, self);
  g_ptr_array_unref (self->sessions);
  g_free (self->folder);
  G_OBJECT_CLASS (spelch_shelves_parent_class)->finalize (object);
}

static void
spelch_shelves_class_init (SpelchShelvesClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = spelch_shelves_finalize;
}

static void
spelch_shelves_init (SpelchShelves *self)
{
  self->sessions = g_ptr_array_new ();
}

SpelchShelves *
spelch_shelves_new (const char *folder)
{
  SpelchShelves *self = g_object_new (SPELCH_TYPE_SHELVES, NULL);
  self->folder = g_strdup (folder);
  for (guint i = 0; i < KINDS; i++)
    self->shelves[i] = spelch_shelf_new ((SpelchListKind)i, folder);
  return self;
}

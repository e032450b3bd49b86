/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/shelves.h"
#include "shop/log-entry.h"

#include <glib/gi18n-lib.h>

#define KINDS (SPELCH_LIST_LOG + 1)

struct _SpelchShelves
{
  GObject parent_instance;
  SpelchShelf *shelves[KINDS];
  GPtrArray *sessions; /* weak; the one looked at is the last */
};

G_DEFINE_FINAL_TYPE (SpelchShelves, spelch_shelves, G_TYPE_OBJECT)

enum
{
  SIGNAL_LOOKED_AT,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

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
  g_signal_emit (self, signals[SIGNAL_LOOKED_AT], 0);
}

void
spelch_shelves_add_session (SpelchShelves *self, SpelchSession *session)
{
  g_ptr_array_add (self->sessions, session);
  g_object_weak_ref (G_OBJECT (session), session_ended, self);
  g_signal_emit (self, signals[SIGNAL_LOOKED_AT], 0);
}

void
spelch_shelves_look_at (SpelchShelves *self, SpelchSession *session)
{
  if (session == spelch_shelves_get_session (self) || !g_ptr_array_remove (self->sessions, session))
    return;
  g_ptr_array_add (self->sessions, session);
  g_signal_emit (self, signals[SIGNAL_LOOKED_AT], 0);
}

SpelchSession *
spelch_shelves_get_session (SpelchShelves *self)
{
  return self->sessions->len == 0 ? NULL : g_ptr_array_index (self->sessions, self->sessions->len - 1);
}

/* What a part calls its own thing of that id, or NULL. */
static const char *
name_in_part (const SpelchPart *part, SpelchListKind kind, const char *id)
{
  int bit = kind == SPELCH_LIST_BITS ? spelch_part_find_bit (part, id) : -1;
  if (kind == SPELCH_LIST_BITS)
    return bit < 0 ? NULL : part->bits[bit].name;
  if (kind == SPELCH_LIST_BOARDS)
    return g_str_equal (part->board.id, id) ? part->board.name : NULL;
  return g_str_equal (part->machine.id, id) ? part->machine.name : NULL;
}

const char *
spelch_shelves_name (SpelchShelves *self, SpelchListKind kind, const char *id)
{
  const char *item = spelch_shelf_find (self->shelves[kind], id);
  const char *name = item == NULL ? NULL : item + SPELCH_ID_SIZE;
  for (guint i = 0; name == NULL && i < self->sessions->len; i++)
    {
      const SpelchPart *part = spelch_session_get_part (g_ptr_array_index (self->sessions, i));
      name = part == NULL ? NULL : name_in_part (part, kind, id);
    }
  return name != NULL && name[0] != '\0' ? name : id;
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
  SpelchShelf *log = self->shelves[SPELCH_LIST_LOG];
  for (guint i = 0; i < spelch_shelf_count (log); i++)
    {
      const SpelchLogEntry *entry = spelch_shelf_get_nth (log, i);
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
  if (kind == SPELCH_LIST_LOG)
    return NULL;
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
  G_OBJECT_CLASS (spelch_shelves_parent_class)->finalize (object);
}

static void
spelch_shelves_class_init (SpelchShelvesClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = spelch_shelves_finalize;
  signals[SIGNAL_LOOKED_AT] = g_signal_new ("looked-at", SPELCH_TYPE_SHELVES, G_SIGNAL_RUN_LAST, 0, NULL,
                                            NULL, NULL, G_TYPE_NONE, 0);
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
  for (guint i = 0; i < KINDS; i++)
    self->shelves[i] = spelch_shelf_new ((SpelchListKind)i, folder);
  return self;
}

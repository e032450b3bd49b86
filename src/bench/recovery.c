/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/recovery.h"
#include "files/part-file.h"

#include <glib/gstdio.h>

struct _SpelchRecovery
{
  GObject parent_instance;
  SpelchSession *session; /* not owned; outlives this */
  char *folder;
  char *part_path;
  char *origin_path; /* a text file with the URI of the file the part belongs to */
  char *left_path;   /* the same two of an earlier run */
  char *left_origin_path;
  guint waiting;    /* source that will keep the work */
  SpelchPart *kept; /* as it stands in the folder */
};

G_DEFINE_FINAL_TYPE (SpelchRecovery, spelch_recovery, G_TYPE_OBJECT)

/* ---- Keeping, off the main thread: the part never changes ---- */

typedef struct
{
  SpelchPart *part;
  char *origin;
  char *folder, *part_path, *origin_path;
} SpelchKeeping;

static void
keeping_free (gpointer data)
{
  SpelchKeeping *keeping = data;
  spelch_part_unref (keeping->part);
  g_free (keeping->origin);
  g_free (keeping->folder);
  g_free (keeping->part_path);
  g_free (keeping->origin_path);
  g_free (keeping);
}

static void
keep (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const SpelchKeeping *keeping = data;
  const GFileSetContentsFlags flags = G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE;
  g_autoptr (GError) error = NULL;
  g_autofree char *text = spelch_part_to_json (keeping->part);
  g_mkdir_with_parents (keeping->folder, 0700);
  bool kept = g_file_set_contents_full (keeping->origin_path, keeping->origin, -1, flags, 0600, &error)
              && g_file_set_contents_full (keeping->part_path, text, -1, flags, 0600, &error);
  if (!kept)
    g_warning ("Unsaved work isn't being kept: %s", error->message);
  g_task_return_boolean (task, kept);
}

static void
kept_once (GObject *source, GAsyncResult *result, gpointer data)
{
  SpelchRecovery *self = SPELCH_RECOVERY (source);
  /* Saved meanwhile: what was written is not wanted any more. */
  if (self->session != NULL && !spelch_session_is_unsaved (self->session))
    spelch_recovery_forget (self);
}

static gboolean
keep_now (gpointer data)
{
  SpelchRecovery *self = data;
  self->waiting = 0;
  SpelchPart *part = spelch_session_get_part (self->session);
  if (part == NULL || part == self->kept || !spelch_session_is_unsaved (self->session))
    return G_SOURCE_REMOVE;
  g_clear_pointer (&self->kept, spelch_part_unref);
  self->kept = spelch_part_ref (part);
  GFile *file = spelch_session_get_file (self->session);
  SpelchKeeping *keeping = g_new0 (SpelchKeeping, 1);
  keeping->part = spelch_part_ref (part);
  keeping->origin = file == NULL ? g_strdup ("") : g_file_get_uri (file);
  keeping->folder = g_strdup (self->folder);
  keeping->part_path = g_strdup (self->part_path);
  keeping->origin_path = g_strdup (self->origin_path);
  g_autoptr (GTask) task = g_task_new (self, NULL, kept_once, NULL);
  g_task_set_task_data (task, keeping, keeping_free);
  g_task_run_in_thread (task, keep);
  return G_SOURCE_REMOVE;
}

static void
session_changed (SpelchSession *session, guint change, SpelchRecovery *self)
{
  if (!(change & (SPELCH_CHANGE_PART | SPELCH_CHANGE_HISTORY)))
    return;
  if (!spelch_session_is_unsaved (session))
    {
      g_clear_handle_id (&self->waiting, g_source_remove);
      if (self->kept != NULL)
        spelch_recovery_forget (self);
    }
  else if (self->waiting == 0) /* from the first change on, not the last: a long drag is kept too */
    self->waiting = g_timeout_add (SPELCH_RECOVERY_WAIT_MS, keep_now, self);
}

/* ---- What was left behind ---- */

SpelchPart *
spelch_recovery_find (SpelchRecovery *self, GFile **file)
{
  g_autofree char *text = NULL, *origin = NULL;
  gsize length = 0;
  *file = NULL;
  if (g_file_test (self->part_path, G_FILE_TEST_EXISTS))
    {
      g_rename (self->origin_path, self->left_origin_path);
      g_rename (self->part_path, self->left_path);
    }
  if (!g_file_get_contents (self->left_path, &text, &length, NULL))
    return NULL;
  SpelchPart *part = spelch_part_from_json (text, length, self->left_path, NULL);
  if (part != NULL && g_file_get_contents (self->left_origin_path, &origin, NULL, NULL) && origin[0] != '\0')
    *file = g_file_new_for_uri (origin);
  return part;
}

void
spelch_recovery_answered (SpelchRecovery *self)
{
  g_unlink (self->left_path);
  g_unlink (self->left_origin_path);
}

void
spelch_recovery_forget (SpelchRecovery *self)
{
  g_clear_pointer (&self->kept, spelch_part_unref);
  g_unlink (self->part_path);
  g_unlink (self->origin_path);
}

/* ---- Object ---- */

static void
spelch_recovery_dispose (GObject *object)
{
  SpelchRecovery *self = SPELCH_RECOVERY (object);
  g_clear_handle_id (&self->waiting, g_source_remove);
  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (self->session, self);
  self->session = NULL;
  g_clear_pointer (&self->kept, spelch_part_unref);
  G_OBJECT_CLASS (spelch_recovery_parent_class)->dispose (object);
}

static void
spelch_recovery_finalize (GObject *object)
{
  SpelchRecovery *self = SPELCH_RECOVERY (object);
  g_free (self->folder);
  g_free (self->part_path);
  g_free (self->origin_path);
  g_free (self->left_path);
  g_free (self->left_origin_path);
  G_OBJECT_CLASS (spelch_recovery_parent_class)->finalize (object);
}

static void
spelch_recovery_class_init (SpelchRecoveryClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = spelch_recovery_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_recovery_finalize;
}

static void
spelch_recovery_init (SpelchRecovery *self)
{
}

SpelchRecovery *
spelch_recovery_new (SpelchSession *session, const char *folder)
{
  SpelchRecovery *self = g_object_new (SPELCH_TYPE_RECOVERY, NULL);
  self->session = session;
  self->folder = g_strdup (folder);
  self->part_path = g_build_filename (folder, "recovery.spelch", NULL);
  self->origin_path = g_build_filename (folder, "recovery-origin.txt", NULL);
  self->left_path = g_build_filename (folder, "left-behind.spelch", NULL);
  self->left_origin_path = g_build_filename (folder, "left-behind-origin.txt", NULL);
  g_signal_connect (session, "changed", G_CALLBACK (session_changed), self);
  return self;
}

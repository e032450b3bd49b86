/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/recovery.h"
#include "files/part-file.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#define PREFIX       "unsaved-"
#define SUFFIX       ".kept"
#define LOCK_SUFFIX  ".lock"
#define NO_LOCK      -1
#define LOCK_TRIES   8
#define TRY_AGAIN_MS 3000
#define ORIGIN_LINES 2

struct _SpelchRecovery
{
  GObject parent_instance;
  SpelchSession *session; /* not owned; a copy being written may outlive it */
  char *folder;
  guint waiting;    /* source that will keep the work */
  SpelchPart *kept; /* as it stands in the folder, or will when @busy is over */
  bool busy;        /* being written */
  bool troubled;    /* it was said that nothing can be kept */

  GMutex writing; /* guards what follows and the file */
  char *path;
  int lock;
  guint generation; /* what was asked for before isn't written any more */
};

G_DEFINE_FINAL_TYPE (SpelchRecovery, spelch_recovery, G_TYPE_OBJECT)

enum
{
  SIGNAL_TROUBLED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- Locks ---- */

static char *
lock_path (const char *path)
{
  return g_strconcat (path, LOCK_SUFFIX, NULL);
}

/* Whether the file opened as @fd still is the one called @name: its last holder removes it. */
static bool
is_called (int fd, const char *name)
{
  struct stat opened, named;
  return fstat (fd, &opened) == 0 && stat (name, &named) == 0 && opened.st_dev == named.st_dev
         && opened.st_ino == named.st_ino;
}

/* NO_LOCK when another holds it. */
static int
lock (const char *path)
{
  g_autofree char *name = lock_path (path);
  for (int tries = 0; tries < LOCK_TRIES; tries++)
    {
      int fd = g_open (name, O_RDWR | O_CREAT | O_CLOEXEC, 0600);
      if (fd < 0)
        return NO_LOCK;
      bool held_elsewhere = flock (fd, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK;
      if (!held_elsewhere && is_called (fd, name))
        return fd;
      close (fd);
      if (held_elsewhere)
        return NO_LOCK;
    }
  return NO_LOCK;
}

static void
unlock (int *fd)
{
  if (*fd != NO_LOCK)
    close (*fd);
  *fd = NO_LOCK;
}

/* Free with g_free(). */
static char *
new_path (const char *folder)
{
  g_autofree char *id = g_uuid_string_random ();
  g_autofree char *name = g_strconcat (PREFIX, id, SUFFIX, NULL);
  return g_build_filename (folder, name, NULL);
}

static void
remove_copy (const char *path)
{
  g_autofree char *name = lock_path (path);
  g_unlink (path);
  g_unlink (name);
}

/* ---- Keeping, off the main thread: the part never changes ---- */

typedef struct
{
  SpelchPart *part;
  char *origin, *etag;
  guint generation;
} SpelchKeeping;

static void
keeping_free (gpointer data)
{
  SpelchKeeping *keeping = data;
  spelch_part_unref (keeping->part);
  g_free (keeping->origin);
  g_free (keeping->etag);
  g_free (keeping);
}

static void
take_new_name (SpelchRecovery *self)
{
  g_free (self->path);
  self->path = new_path (self->folder);
  self->lock = lock (self->path);
}

static bool
write_copy (SpelchRecovery *self, const SpelchKeeping *keeping, GError **error)
{
  g_autofree char *part = spelch_part_to_json (keeping->part);
  g_autofree char *text = g_strdup_printf ("%s\n%s\n%s", keeping->origin, keeping->etag, part);
  g_mkdir_with_parents (self->folder, 0700);
  if (self->lock == NO_LOCK)
    self->lock = lock (self->path);
  if (self->lock == NO_LOCK) /* another program just looks whether this was left behind */
    take_new_name (self);
  return g_file_set_contents_full (self->path, text, -1,
                                   G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE, 0600, error);
}

static void
keep (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  SpelchRecovery *self = source;
  const SpelchKeeping *keeping = data;
  GError *error = NULL;
  g_mutex_lock (&self->writing);
  bool kept = keeping->generation != self->generation || write_copy (self, keeping, &error);
  g_mutex_unlock (&self->writing);
  if (kept)
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

static void wait_to_keep (SpelchRecovery *self, guint ms);

static void
trouble (SpelchRecovery *self, const GError *reason)
{
  g_clear_pointer (&self->kept, spelch_part_unref);
  wait_to_keep (self, TRY_AGAIN_MS);
  if (self->troubled)
    return;
  self->troubled = true;
  g_autofree char *words = g_strdup_printf (
      _ ("Unsaved work can't be kept aside in %s: %s. Save it now, or it is lost if the program ends."),
      self->folder, reason->message);
  g_signal_emit (self, signals[SIGNAL_TROUBLED], 0, words);
}

static void
kept_once (GObject *source, GAsyncResult *result, gpointer data)
{
  SpelchRecovery *self = SPELCH_RECOVERY (source);
  g_autoptr (GError) error = NULL;
  bool kept = g_task_propagate_boolean (G_TASK (result), &error);
  self->busy = false;
  if (self->session == NULL || !spelch_session_is_unsaved (self->session))
    return;
  if (!kept)
    {
      trouble (self, error);
      return;
    }
  self->troubled = false;
  if (spelch_session_get_part (self->session) != self->kept)
    wait_to_keep (self, 0);
}

static gboolean
keep_now (gpointer data)
{
  SpelchRecovery *self = data;
  self->waiting = 0;
  SpelchPart *part = self->session == NULL ? NULL : spelch_session_get_part (self->session);
  if (self->busy || part == NULL || part == self->kept || !spelch_session_is_unsaved (self->session))
    return G_SOURCE_REMOVE;
  g_clear_pointer (&self->kept, spelch_part_unref);
  self->kept = spelch_part_ref (part);
  self->busy = true;
  GFile *file = spelch_session_get_file (self->session);
  const char *etag = spelch_session_get_etag (self->session);
  SpelchKeeping *keeping = g_new0 (SpelchKeeping, 1);
  keeping->part = spelch_part_ref (part);
  keeping->origin = file == NULL ? g_strdup ("") : g_file_get_uri (file);
  keeping->etag = g_strdup (etag == NULL ? "" : etag);
  keeping->generation = self->generation;
  g_autoptr (GTask) task = g_task_new (self, NULL, kept_once, NULL);
  g_task_set_task_data (task, keeping, keeping_free);
  g_task_run_in_thread (task, keep);
  return G_SOURCE_REMOVE;
}

static void
wait_to_keep (SpelchRecovery *self, guint ms)
{
  if (self->waiting == 0)
    self->waiting = g_timeout_add (ms, keep_now, self);
}

static void
session_changed (SpelchSession *session, guint change, SpelchRecovery *self)
{
  if (!(change & (SPELCH_CHANGE_PART | SPELCH_CHANGE_HISTORY)))
    return;
  if (spelch_session_is_unsaved (session))
    wait_to_keep (self, SPELCH_RECOVERY_WAIT_MS); /* from the first change on: a long drag is kept too */
  else if (self->kept != NULL || self->waiting != 0)
    spelch_recovery_forget (self);
}

char *
spelch_recovery_get_path (SpelchRecovery *self)
{
  g_mutex_lock (&self->writing);
  char *path = g_strdup (self->path);
  g_mutex_unlock (&self->writing);
  return path;
}

void
spelch_recovery_forget (SpelchRecovery *self)
{
  g_clear_handle_id (&self->waiting, g_source_remove);
  g_clear_pointer (&self->kept, spelch_part_unref);
  g_mutex_lock (&self->writing);
  self->generation++;
  remove_copy (self->path);
  unlock (&self->lock);
  g_mutex_unlock (&self->writing);
}

/* ---- What was left behind ---- */

void
spelch_left_behind_free (SpelchLeftBehind *left)
{
  g_clear_pointer (&left->part, spelch_part_unref);
  g_clear_object (&left->file);
  unlock (&left->lock);
  g_free (left->etag);
  g_free (left->path);
  g_free (left);
}

void
spelch_left_behind_throw_away (SpelchLeftBehind *left)
{
  remove_copy (left->path);
}

void
spelch_recovery_take_over (SpelchRecovery *self, SpelchLeftBehind *left)
{
  spelch_recovery_forget (self);
  g_mutex_lock (&self->writing);
  g_free (self->path);
  self->path = g_steal_pointer (&left->path);
  self->lock = left->lock;
  left->lock = NO_LOCK;
  g_mutex_unlock (&self->writing);
  self->kept = spelch_part_ref (left->part);
  spelch_left_behind_free (left);
}

static bool
read_copy (SpelchLeftBehind *left, GError **error)
{
  g_autofree char *text = NULL;
  if (!g_file_get_contents (left->path, &text, NULL, error))
    return false;
  g_auto (GStrv) pieces = g_strsplit (text, "\n", ORIGIN_LINES + 1);
  const char *part = g_strv_length (pieces) > ORIGIN_LINES ? pieces[ORIGIN_LINES] : "";
  g_autofree char *name = g_path_get_basename (left->path);
  left->part = spelch_part_from_json (part, strlen (part), name, error);
  if (left->part == NULL)
    return false;
  left->file = pieces[0][0] == '\0' ? NULL : g_file_new_for_uri (pieces[0]);
  left->etag = pieces[1][0] == '\0' ? NULL : g_strdup (pieces[1]);
  return true;
}

/* It was saved, and the program ended just before the copy was removed. */
static bool
was_saved (const SpelchLeftBehind *left)
{
  if (left->file == NULL)
    return false;
  g_autoptr (SpelchPart) saved = spelch_part_load (left->file, NULL, NULL);
  if (saved == NULL)
    return false;
  g_autofree char *there = spelch_part_to_json (saved);
  g_autofree char *here = spelch_part_to_json (left->part);
  return g_str_equal (there, here);
}

/* Puts a copy that can't be read out of the way, so that it is told of once, and says where it is. */
static char *
put_aside (const char *path, const GError *error)
{
  g_autofree char *aside = g_strconcat (path, ".unreadable", NULL);
  const char *now = g_rename (path, aside) == 0 ? aside : path;
  return g_strdup_printf (_ ("Unsaved work of an earlier time can't be taken up: %s The copy is kept as %s."),
                          error->message, now);
}

/* NULL when it is another window's, can't be read, or isn't needed. */
static SpelchLeftBehind *
find_one (const char *folder, const char *name, char **trouble)
{
  g_autoptr (SpelchLeftBehind) left = g_new0 (SpelchLeftBehind, 1);
  g_autoptr (GError) error = NULL;
  left->path = g_build_filename (folder, name, NULL);
  left->lock = lock (left->path);
  if (left->lock == NO_LOCK)
    return NULL;
  if (!read_copy (left, &error) && g_error_matches (error, G_FILE_ERROR, G_FILE_ERROR_NOENT))
    {
      spelch_left_behind_throw_away (left); /* its owner has just removed it: here is only a lock */
      return NULL;
    }
  if (error != NULL)
    {
      g_free (*trouble);
      *trouble = put_aside (left->path, error);
      return NULL;
    }
  if (!was_saved (left))
    return g_steal_pointer (&left);
  spelch_left_behind_throw_away (left);
  return NULL;
}

static gint64
time_of (const SpelchLeftBehind *left)
{
  GStatBuf status;
  return g_stat (left->path, &status) == 0 ? (gint64)status.st_mtime : 0;
}

static int
by_time (gconstpointer a, gconstpointer b)
{
  gint64 first = time_of (*(SpelchLeftBehind *const *)a), second = time_of (*(SpelchLeftBehind *const *)b);
  return (first > second) - (first < second);
}

GPtrArray *
spelch_recovery_find (const char *folder, char **trouble)
{
  *trouble = NULL;
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify)spelch_left_behind_free);
  g_autoptr (GDir) entries = g_dir_open (folder, 0, NULL);
  const char *name;
  while (entries != NULL && (name = g_dir_read_name (entries)) != NULL)
    if (g_str_has_prefix (name, PREFIX) && g_str_has_suffix (name, SUFFIX))
      {
        SpelchLeftBehind *left = find_one (folder, name, trouble);
        if (left != NULL)
          g_ptr_array_add (found, left);
      }
  g_ptr_array_sort (found, by_time);
  return found;
}

/* ---- Object ---- */

static void
spelch_recovery_dispose (GObject *object)
{
  SpelchRecovery *self = SPELCH_RECOVERY (object);
  g_clear_handle_id (&self->waiting, g_source_remove);
  g_clear_weak_pointer (&self->session);
  g_clear_pointer (&self->kept, spelch_part_unref);
  G_OBJECT_CLASS (spelch_recovery_parent_class)->dispose (object);
}

static void
spelch_recovery_finalize (GObject *object)
{
  SpelchRecovery *self = SPELCH_RECOVERY (object);
  unlock (&self->lock);
  g_mutex_clear (&self->writing);
  g_free (self->folder);
  g_free (self->path);
  G_OBJECT_CLASS (spelch_recovery_parent_class)->finalize (object);
}

static void
spelch_recovery_class_init (SpelchRecoveryClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = spelch_recovery_dispose;
  G_OBJECT_CLASS (klass)->finalize = spelch_recovery_finalize;
  signals[SIGNAL_TROUBLED] = g_signal_new ("troubled", SPELCH_TYPE_RECOVERY, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                           NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
spelch_recovery_init (SpelchRecovery *self)
{
  self->lock = NO_LOCK;
  g_mutex_init (&self->writing);
}

SpelchRecovery *
spelch_recovery_new (SpelchSession *session, const char *folder)
{
  SpelchRecovery *self = g_object_new (SPELCH_TYPE_RECOVERY, NULL);
  g_set_weak_pointer (&self->session, session);
  self->folder = g_strdup (folder);
  self->path = new_path (folder);
  g_signal_connect_object (session, "changed", G_CALLBACK (session_changed), self, 0);
  return self;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/file-watch.h"

/* Programs write in several steps; this long after the last one they are done. */
#define CALM_MS 300

struct _SpelchFileWatch
{
  GObject parent_instance;
  SpelchSession *session; /* not owned */
  GFile *file;            /* watched */
  GFileMonitor *monitor;
  guint calming;
  bool told;
};

G_DEFINE_FINAL_TYPE (SpelchFileWatch, spelch_file_watch, G_TYPE_OBJECT)

enum
{
  SIGNAL_OVERTAKEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

void
spelch_file_watch_look (SpelchFileWatch *self)
{
  bool overtaken = spelch_session_is_overtaken (self->session);
  if (overtaken && !self->told)
    {
      self->told = true;
      g_signal_emit (self, signals[SIGNAL_OVERTAKEN], 0);
    }
  else if (!overtaken)
    self->told = false;
}

static gboolean
calm_now (gpointer data)
{
  SpelchFileWatch *self = data;
  self->calming = 0;
  self->told = false;
  spelch_file_watch_look (self);
  return G_SOURCE_REMOVE;
}

static void
file_changed (SpelchFileWatch *self)
{
  g_clear_handle_id (&self->calming, g_source_remove);
  self->calming = g_timeout_add (CALM_MS, calm_now, self);
}

static void
let_go (SpelchFileWatch *self)
{
  if (self->monitor != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->monitor, self);
      g_file_monitor_cancel (self->monitor);
    }
  g_clear_object (&self->monitor);
  g_clear_object (&self->file);
  g_clear_handle_id (&self->calming, g_source_remove);
}

static void
session_changed (SpelchSession *session, guint change, SpelchFileWatch *self)
{
  GFile *file = spelch_session_get_file (session);
  bool same = file == self->file || (file != NULL && self->file != NULL && g_file_equal (file, self->file));
  if (!(change & (SPELCH_CHANGE_HISTORY | SPELCH_CHANGE_OPENED)) || same)
    return;
  let_go (self);
  self->told = false;
  if (file == NULL)
    return;
  self->file = g_object_ref (file);
  self->monitor = g_file_monitor_file (file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  if (self->monitor != NULL)
    g_signal_connect_swapped (self->monitor, "changed", G_CALLBACK (file_changed), self);
}

static void
spelch_file_watch_dispose (GObject *object)
{
  SpelchFileWatch *self = SPELCH_FILE_WATCH (object);
  let_go (self);
  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (self->session, self);
  self->session = NULL;
  G_OBJECT_CLASS (spelch_file_watch_parent_class)->dispose (object);
}

static void
spelch_file_watch_class_init (SpelchFileWatchClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = spelch_file_watch_dispose;
  signals[SIGNAL_OVERTAKEN] = g_signal_new ("overtaken", SPELCH_TYPE_FILE_WATCH, G_SIGNAL_RUN_LAST, 0, NULL,
                                            NULL, NULL, G_TYPE_NONE, 0);
}

static void
spelch_file_watch_init (SpelchFileWatch *self)
{
}

SpelchFileWatch *
spelch_file_watch_new (SpelchSession *session)
{
  SpelchFileWatch *self = g_object_new (SPELCH_TYPE_FILE_WATCH, NULL);
  self->session = session;
  g_signal_connect (session, "changed", G_CALLBACK (session_changed), self);
  return self;
}

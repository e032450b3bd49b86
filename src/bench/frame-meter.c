/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/frame-meter.h"

#include <stdbool.h>
#include <stdio.h>
#include <time.h>

typedef struct
{
  FILE *file;
  GdkDisplay *display;
  gint64 begun_us;
  gint64 handled_us; /* work done when the first motion came */
  gint64 before_us;  /* work on it before the frame */
  guint32 motion_ms; /* server time of the first motion not painted yet */
  bool motion;
  bool began; /* a frame was painted */
} SpelchFrameMeter;

/* Time the thread, or the whole program, has worked, not waited. */
static gint64
worked_us (clockid_t whose)
{
  struct timespec time;
  clock_gettime (whose, &time);
  return (gint64)time.tv_sec * G_USEC_PER_SEC + time.tv_nsec / 1000;
}

/* Before the first frame's own line: how much work it was to get there. */
static void
tell_start (SpelchFrameMeter *meter)
{
  char worked[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (worked, sizeof worked, "%.3f", (double)worked_us (CLOCK_PROCESS_CPUTIME_ID) / 1000);
  fprintf (meter->file, "started %s\n", worked);
  meter->began = true;
}

static void
frame_begins (GdkFrameClock *clock, SpelchFrameMeter *meter)
{
  meter->begun_us = g_get_monotonic_time ();
  meter->before_us = meter->motion ? worked_us (CLOCK_THREAD_CPUTIME_ID) - meter->handled_us : 0;
}

static void
frame_ends (GdkFrameClock *clock, SpelchFrameMeter *meter)
{
  gdk_display_sync (meter->display);
  gint64 now_us = g_get_monotonic_time ();
  if (!meter->began)
    tell_start (meter);
  /* The X server on the same machine counts milliseconds of the same clock; 32 bits of them. */
  guint32 waited = (guint32)(now_us / 1000) - meter->motion_ms;
  char took[G_ASCII_DTOSTR_BUF_SIZE], before[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (took, sizeof took, "%.3f", (double)(now_us - meter->begun_us) / 1000);
  g_ascii_formatd (before, sizeof before, "%.3f", (double)meter->before_us / 1000);
  fprintf (meter->file, "frame %s %s %d\n", took, before, meter->motion ? (int)waited : -1);
  fflush (meter->file);
  meter->motion = false;
}

static void
pointer_moved (GtkEventController *controller, double x, double y, SpelchFrameMeter *meter)
{
  if (meter->motion)
    return;
  meter->motion = true;
  meter->handled_us = worked_us (CLOCK_THREAD_CPUTIME_ID);
  meter->motion_ms = gtk_event_controller_get_current_event_time (controller);
}

static void
meter_free (gpointer data)
{
  SpelchFrameMeter *meter = data;
  fclose (meter->file);
  g_free (meter);
}

void
spelch_frame_meter_attach (GtkWidget *window, const char *window_name)
{
  const char *named = g_getenv (SPELCH_FRAME_METER_VARIABLE);
  g_autofree char *path = named == NULL ? NULL : g_strconcat (named, window_name, NULL);
  FILE *file = path == NULL ? NULL : fopen (path, "w");
  if (file == NULL)
    return;
  SpelchFrameMeter *meter = g_new0 (SpelchFrameMeter, 1);
  meter->file = file;
  meter->display = gtk_widget_get_display (window);
  GdkFrameClock *clock = gtk_widget_get_frame_clock (window);
  g_object_set_data_full (G_OBJECT (clock), "spelch-frame-meter", meter, meter_free);
  g_signal_connect (clock, "before-paint", G_CALLBACK (frame_begins), meter);
  g_signal_connect_after (clock, "after-paint", G_CALLBACK (frame_ends), meter);
  GtkEventController *motion = gtk_event_controller_motion_new ();
  gtk_event_controller_set_propagation_phase (motion, GTK_PHASE_CAPTURE);
  g_signal_connect (motion, "motion", G_CALLBACK (pointer_moved), meter);
  gtk_widget_add_controller (window, motion);
}

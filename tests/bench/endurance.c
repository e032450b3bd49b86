/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * endurance STEPS [--leaks] [--only KIND] [--season STEPS]: a long day at the bench in one process. The real
 * window, with a display, is moved by the functions its pointer handlers call: depths and the board are
 * dragged, bits swapped, steps undone and done again, slow motion played, other windows opened and closed,
 * while frames are painted. Prints TAP: that memory doesn't grow and that frames take as long in the end as
 * in the beginning; in the end that a setting of the system reaches what is there and nothing that is gone.
 * --leaks leaves memory and time out, for runs under a program that looks for leaks and needs memory itself;
 * --only leaves all other kinds of steps out, to find what grows.
 */
#include "bench/bench-application.h"
#include "bench/bench-history.h"
#include "bench/bit-drawer.h"
#include "bench/depth-mark.h"
#include "bench/motion-view.h"

#include <glib/gstdio.h>
#include <malloc.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>
#include <unistd.h>

#define WARM_UP       10        /* of all steps, the first in so many are to become warm by */
#define LEAST_WARM_UP 1000      /* steps */
#define SEASON        500       /* steps between two windows */
#define STEPS_A_FRAME 20        /* after it all that may follow later follows */
#define DRAGS_A_FRAME 10        /* in the middle of it */
#define STILL         2         /* seconds, within which a frame has to come */
#define MOST_GROWTH   (2 << 20) /* bytes */
#define SLOWER        1.5       /* times, that frames may take in the end what they took at first */
#define SLOWER_BY     1.0       /* ms more, that are the machine's own */
#define AMONG         4         /* of which the least reading counts */
#define SHORT         10000     /* steps */
#define SHORT_NOISE   (6 << 20) /* bytes resident that come and go with windows */
#define FIGURES       10        /* lines of figures in between */

typedef struct
{
  SpelchApplication *application;
  SpelchBenchWindow *window;
  SpelchSession *session;
  SpelchBitDrawer *drawer;
  GPtrArray *marks; /* SpelchDepthMark, found anew for each use */
  GRand *chance;
  const char *only; /* NULL: all kinds */
  guint season;     /* steps between two windows */
  bool leaks_only;  /* under a program that looks for leaks and needs memory itself */
  guint steps;      /* to do */
  guint done;
  guint frames, motion_frames, windows;
  gint64 frame_begun_us;
  GArray *frame_us; /* guint64: work in each frame of a drag since warm-up */
} Day;

typedef struct
{
  gsize resident, in_use; /* bytes */
} Figures;

/* ---- What is measured ---- */

static gsize
resident (void)
{
  g_autofree char *text = NULL;
  if (!g_file_get_contents ("/proc/self/statm", &text, NULL, NULL))
    return 0;
  g_auto (GStrv) pages = g_strsplit (text, " ", 3);
  return (gsize)g_ascii_strtoull (pages[1], NULL, 10) * (gsize)sysconf (_SC_PAGESIZE);
}

static int
by_size (gconstpointer a, gconstpointer b)
{
  guint64 first = *(const guint64 *)a, second = *(const guint64 *)b;
  return (first > second) - (first < second);
}

/* The middle one of the frames from share @from to share @to of them, ms. */
static double
frame_ms (const GArray *frame_us, double from, double to)
{
  guint begin = (guint)(frame_us->len * from), n = (guint)(frame_us->len * to) - begin;
  if (n == 0)
    return (double)NAN;
  g_autoptr (GArray) part = g_array_new (FALSE, FALSE, sizeof (guint64));
  g_array_append_vals (part, &g_array_index (frame_us, guint64, begin), n);
  g_array_sort (part, by_size);
  return (double)g_array_index (part, guint64, n / 2) / 1000;
}

static Figures
take_figures (void)
{
  malloc_trim (0); /* what was given back by chance, or not, would be more than what is looked for */
  return (Figures){ .resident = resident (), .in_use = mallinfo2 ().uordblks };
}

static void
tell (const Day *day, const Figures *figures)
{
  g_print ("# %7u steps, %6u frames, %6u of slow motion, %4u windows: resident %.2f MB, on the heap "
           "%.2f MB\n",
           day->done, day->frames, day->motion_frames, day->windows, (double)figures->resident / (1 << 20),
           (double)figures->in_use / (1 << 20));
}

/* ---- Frames ---- */

/* Time the thread has worked, not waited: other programs run as well. */
static gint64
worked_us (void)
{
  struct timespec time;
  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &time);
  return (gint64)time.tv_sec * G_USEC_PER_SEC + time.tv_nsec / 1000;
}

static void
frame_begins (GdkFrameClock *clock, Day *day)
{
  day->frame_begun_us = worked_us ();
}

static void
frame_ends (GdkFrameClock *clock, Day *day)
{
  guint64 took = (guint64)(worked_us () - day->frame_begun_us);
  if (spelch_session_in_gesture (day->session))
    g_array_append_val (day->frame_us, took);
  day->frames++;
}

static void
motion_frame_ends (GdkFrameClock *clock, Day *day)
{
  day->motion_frames++;
}

/* Lets the next frame come, and then what waits for a quiet moment. */
static void
paint (Day *day)
{
  guint before = day->frames;
  gint64 end = g_get_monotonic_time () + STILL * G_USEC_PER_SEC;
  gdk_frame_clock_request_phase (gtk_widget_get_frame_clock (GTK_WIDGET (day->window)),
                                 GDK_FRAME_CLOCK_PHASE_PAINT);
  while (day->frames == before && g_get_monotonic_time () < end)
    g_main_context_iteration (NULL, TRUE);
  for (int i = 0; i < 100 && g_main_context_pending (NULL); i++)
    g_main_context_iteration (NULL, FALSE);
}

/* ---- Finding ---- */

static void
find_all (GtkWidget *widget, GType type, GPtrArray *found)
{
  if (G_TYPE_CHECK_INSTANCE_TYPE (widget, type))
    g_ptr_array_add (found, widget);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    find_all (child, type, found);
}

static gpointer
find (GtkWidget *widget, GType type)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new ();
  find_all (widget, type, found);
  return found->len == 0 ? NULL : found->pdata[0];
}

static SpelchDepthMark *
find_mark (Day *day, bool board)
{
  g_ptr_array_set_size (day->marks, 0);
  find_all (GTK_WIDGET (day->window), SPELCH_TYPE_DEPTH_MARK, day->marks);
  for (guint i = day->marks->len; i-- > 0;)
    {
      SpelchMarkKind kind
          = spelch_quantity_get_id (spelch_depth_mark_get_quantity (day->marks->pdata[i])).kind;
      if ((kind == SPELCH_MARK_THICKNESS) != board || !gtk_widget_get_visible (day->marks->pdata[i]))
        g_ptr_array_remove_index (day->marks, i);
    }
  return day->marks->len == 0 ? NULL
                              : day->marks->pdata[g_rand_int_range (day->chance, 0, (int)day->marks->len)];
}

/* ---- Steps ---- */

/* Whether a frame is painted in the middle of a step: in a long day not in each, or it would take hours. */
static bool
shows_step (const Day *day)
{
  return day->steps < SHORT || day->done % DRAGS_A_FRAME == 0;
}

/* There, on, and partly back, or given up with Escape, as the pointer would. */
static void
drag (Day *day, bool board)
{
  SpelchDepthMark *mark = find_mark (day, board);
  if (mark == NULL)
    return;
  g_object_ref (mark);
  double way = g_rand_double_range (day->chance, -60, 60);
  spelch_depth_mark_drag_begin (mark);
  for (int i = 1; i <= 4; i++)
    spelch_depth_mark_drag_to (mark, way * i / 5, way * i / 4);
  if (shows_step (day))
    paint (day);
  spelch_depth_mark_drag_to (mark, way / 2, way / 2);
  spelch_depth_mark_drag_end (mark, g_rand_int_range (day->chance, 0, 10) > 0);
  g_object_unref (mark);
}

static void
drag_depth (Day *day)
{
  drag (day, false);
}

static void
drag_board (Day *day)
{
  drag (day, true);
}

static void
swap_bit (Day *day)
{
  guint n = spelch_session_count_bits (day->session);
  g_autofree char *id = g_strdup (
      spelch_session_get_nth_bit (day->session, (guint)g_rand_int_range (day->chance, 0, (int)n))->id);
  spelch_bit_drawer_accept (day->drawer, id);
}

/* Looked at without being taken. */
static void
try_bit (Day *day)
{
  guint n = spelch_session_count_bits (day->session);
  const SpelchBit bit
      = *spelch_session_get_nth_bit (day->session, (guint)g_rand_int_range (day->chance, 0, (int)n));
  spelch_session_try_bit (day->session, &bit);
  if (shows_step (day))
    paint (day);
  spelch_session_try_bit (day->session, NULL);
}

static void
show_cut (Day *day)
{
  int n = (int)spelch_session_get_part (day->session)->n_cuts;
  gtk_widget_activate_action (GTK_WIDGET (day->window), "win.cut", "i", g_rand_int_range (day->chance, 0, n));
}

static void
undo (Day *day)
{
  gtk_widget_activate_action (GTK_WIDGET (day->window), "win.undo", NULL);
}

static void
redo (Day *day)
{
  gtk_widget_activate_action (GTK_WIDGET (day->window), "win.redo", NULL);
}

static void
let_go (Day *day)
{
  SpelchDepthMark *mark = find_mark (day, false);
  if (mark != NULL)
    spelch_quantity_let_go (spelch_depth_mark_get_quantity (mark));
}

static const struct
{
  const char *name;
  guint often; /* in a hundred steps */
  void (*step) (Day *day);
} KINDS[] = {
  { "depth", 30, drag_depth }, { "board", 8, drag_board }, { "swap", 15, swap_bit }, { "try", 5, try_bit },
  { "cut", 2, show_cut },      { "undo", 24, undo },       { "redo", 12, redo },     { "let-go", 4, let_go },
};

static void
take_step (Day *day)
{
  int drawn = g_rand_int_range (day->chance, 0, 100);
  for (guint i = 0; i < G_N_ELEMENTS (KINDS); i++)
    {
      drawn -= (int)KINDS[i].often;
      if (drawn >= 0 && (day->only == NULL || i + 1 < G_N_ELEMENTS (KINDS)))
        continue;
      if (day->only == NULL || g_str_equal (day->only, KINDS[i].name))
        KINDS[i].step (day);
      break;
    }
  if (day->done % STEPS_A_FRAME == 0)
    paint (day);
  day->done++;
}

/* ---- Other windows ---- */

static const struct
{
  const char *action, *about;
} WINDOWS[] = {
  { "win.slow-motion", NULL }, { "win.side-by-side", NULL }, { "app.shelf", "bits" },
  { "win.slow-motion", NULL }, { "app.shelf", "boards" },    { "app.shelf", "machines" },
  { "app.shelf", "log" },      { "app.preferences", NULL },  { "win.slow-motion", NULL },
  { "app.practice", NULL },    { "app.keys", NULL },         { "app.reading", NULL },
  { "win.print", NULL },       { "win.record", NULL },       { "win.new-window", NULL },
  { "win.slow-motion", NULL }, { "win.cut-done", NULL },
};

/* All but the bench: a new reference to each. */
static GPtrArray *
other_windows (Day *day)
{
  GPtrArray *others = g_ptr_array_new_with_free_func (g_object_unref);
  GListModel *all = gtk_window_get_toplevels ();
  for (guint i = 0; i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkWindow) window = g_list_model_get_item (all, i);
      if (window != GTK_WINDOW (day->window))
        g_ptr_array_add (others, g_object_ref (window));
    }
  return others;
}

/* Only those asked for, when it was only one kind. */
static bool
is_wanted (const Day *day, guint n)
{
  const char *only = day->only;
  return only == NULL || g_str_equal (only, "windows") || g_str_equal (only, WINDOWS[n].action)
         || g_strcmp0 (only, WINDOWS[n].about) == 0;
}

static void
begin_season (Day *day, guint n)
{
  if (!is_wanted (day, n))
    return;
  const char *about = WINDOWS[n].about;
  if (about == NULL)
    gtk_widget_activate_action (GTK_WIDGET (day->window), WINDOWS[n].action, NULL);
  else
    gtk_widget_activate_action (GTK_WIDGET (day->window), WINDOWS[n].action, "s", about);
  g_autoptr (GPtrArray) others = other_windows (day);
  for (guint i = 0; i < others->len; i++)
    {
      SpelchMotionView *view = find (others->pdata[i], SPELCH_TYPE_MOTION_VIEW);
      if (view == NULL)
        continue;
      g_signal_connect (gtk_widget_get_frame_clock (GTK_WIDGET (view)), "after-paint",
                        G_CALLBACK (motion_frame_ends), day);
      spelch_motion_view_play (view, true);
    }
  day->windows += others->len;
}

static void
end_season (Day *day)
{
  g_autoptr (GPtrArray) others = other_windows (day);
  for (guint i = 0; i < others->len; i++)
    {
      GtkWidget *view = find (others->pdata[i], SPELCH_TYPE_MOTION_VIEW);
      if (view != NULL)
        g_signal_handlers_disconnect_by_data (gtk_widget_get_frame_clock (view), day);
      gtk_window_close (others->pdata[i]);
    }
  paint (day);
}

/* Without an answer to what a window may ask before it closes. */
static void
destroy_others (Day *day)
{
  g_autoptr (GPtrArray) others = other_windows (day);
  for (guint i = 0; i < others->len; i++)
    gtk_window_destroy (others->pdata[i]);
  paint (day);
}

/* ---- A setting of the system ---- */

static bool
scroll_bars_lie_over (Day *day, bool over)
{
  bool all = true;
  g_autoptr (GPtrArray) found = g_ptr_array_new ();
  g_object_set (gtk_settings_get_default (), "gtk-overlay-scrolling", over, NULL);
  find_all (GTK_WIDGET (day->window), GTK_TYPE_SCROLLED_WINDOW, found);
  for (guint i = 0; i < found->len; i++)
    if (gtk_widget_get_mapped (found->pdata[i]))
      all = all
            && over
                   == gtk_widget_has_css_class (gtk_scrolled_window_get_vscrollbar (found->pdata[i]),
                                                "overlay-indicator");
  return all && found->len > 0;
}

/* Windows that were closed must not be told: what GTK says to memory that is no widget any more ends here. */
static bool
scroll_bars_follow (Day *day)
{
  g_log_set_always_fatal (G_LOG_FATAL_MASK | G_LOG_LEVEL_CRITICAL);
  return scroll_bars_lie_over (day, false) && scroll_bars_lie_over (day, true);
}

/* ---- The day ---- */

/* Of a few readings: which window was open before, and what it left between other things, differs. */
static double
least_resident (const Figures *figures)
{
  double least = (double)figures[0].resident;
  for (int i = 1; i < AMONG; i++)
    least = fmin (least, (double)figures[i].resident);
  return least;
}

/* More steps than undo remembers: from then on one goes for each that comes. */
static void
fill_history (Day *day)
{
  for (guint i = 0; i < SPELCH_HISTORY_MOST_BYTES / sizeof (SpelchPart) / 3; i++)
    {
      g_autoptr (SpelchPart) part = spelch_part_copy (spelch_session_get_part (day->session));
      part->tolerances.depth_mm = i % 2 == 0 ? 0.2 : 0.1;
      spelch_session_edit (day->session, g_steal_pointer (&part), "fill", NULL);
    }
}

static void
work (Day *day, guint steps)
{
  for (guint i = 0; i < steps; i++)
    {
      if (day->done % day->season == 0)
        {
          end_season (day);
          destroy_others (day);
          begin_season (day, (day->done / day->season) % G_N_ELEMENTS (WINDOWS));
        }
      take_step (day);
    }
  destroy_others (day);
}

static void
check (int number, bool passed, bool counts, const char *what)
{
  g_print ("%s %d - %s%s\n", passed || !counts ? "ok" : "not ok", number, what,
           counts ? "" : " # SKIP only leaks are looked for");
}

static void
live_through (Day *day)
{
  guint warm_up = MIN (MAX (day->steps / WARM_UP, LEAST_WARM_UP), day->steps / 2);
  guint part = (day->steps - warm_up) / FIGURES;
  if (!day->leaks_only)
    fill_history (day);
  work (day, warm_up);
  g_array_set_size (day->frame_us, 0);
  Figures warm = take_figures (), at[FIGURES];
  tell (day, &warm);
  for (int i = 0; i < FIGURES; i++)
    {
      work (day, part);
      at[i] = take_figures ();
      tell (day, &at[i]);
    }
  const Figures *first = &at[0], *last = &at[FIGURES - 1];
  double grown = least_resident (last - AMONG + 1) - fmin (least_resident (first), (double)warm.resident);
  double heap = (double)last->in_use - (double)warm.in_use;
  double most = day->steps < SHORT ? MOST_GROWTH + SHORT_NOISE : MOST_GROWTH;
  check (1, grown < most && heap < MOST_GROWTH, !day->leaks_only,
         "after warm-up the program grows by less than 2 MB");
  g_print ("# grown by %.2f MB resident, %.2f MB on the heap\n", grown / (1 << 20), heap / (1 << 20));
  double begun = frame_ms (day->frame_us, 0, 1.0 / 3), ended = frame_ms (day->frame_us, 2.0 / 3, 1);
  check (2, !(ended > begun * SLOWER + SLOWER_BY), !day->leaks_only,
         "frames take as long in the end as in the beginning");
  g_print ("# work in %u frames of drags: %.2f ms in the first third, %.2f ms in the last\n",
           day->frame_us->len, begun, ended);
  check (3, day->frames > day->steps / STEPS_A_FRAME && day->motion_frames > 0 && day->windows > 0,
         day->only == NULL, "frames were painted, of slow motion too, and windows opened");
  check (4, scroll_bars_follow (day), true, "scroll bars follow the system's setting");
  g_print ("1..4\n");
}

static gboolean
begin_day (gpointer data)
{
  Day *day = data;
  g_autoptr (GPtrArray) marks = day->marks = g_ptr_array_new ();
  g_autoptr (GArray) frames = day->frame_us = g_array_new (FALSE, FALSE, sizeof (guint64));
  g_autoptr (GRand) chance = day->chance = g_rand_new_with_seed (20);
  GdkFrameClock *clock = gtk_widget_get_frame_clock (GTK_WIDGET (day->window));
  gulong begins = g_signal_connect (clock, "before-paint", G_CALLBACK (frame_begins), day);
  gulong ends = g_signal_connect_after (clock, "after-paint", G_CALLBACK (frame_ends), day);
  live_through (day);
  g_signal_handler_disconnect (clock, begins);
  g_signal_handler_disconnect (clock, ends);
  gtk_window_destroy (GTK_WINDOW (day->window));
  return G_SOURCE_REMOVE;
}

static void
activate (GtkApplication *application, Day *day)
{
  day->window = SPELCH_BENCH_WINDOW (gtk_application_get_active_window (application));
  day->session = spelch_bench_window_get_session (day->window);
  day->drawer = find (GTK_WIDGET (day->window), SPELCH_TYPE_BIT_DRAWER);
  g_idle_add (begin_day, day);
}

/* ---- Folders of its own ---- */

static void
remove_folder (const char *path)
{
  g_autoptr (GDir) folder = g_dir_open (path, 0, NULL);
  const char *name;
  while (folder != NULL && (name = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *inside = g_build_filename (path, name, NULL);
      remove_folder (inside);
    }
  g_remove (path);
}

static void
use_folder (const char *folder)
{
  const char *const variables[] = { "XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME" };
  for (guint i = 0; i < G_N_ELEMENTS (variables); i++)
    {
      g_autofree char *inside = g_build_filename (folder, variables[i], NULL);
      g_setenv (variables[i], inside, TRUE);
    }
}

int
main (int argc, char **argv)
{
  Day day = { .steps = argc > 1 ? (guint)atoi (argv[1]) : 0 };
  /* Every window twice, however short the day is. */
  day.season = MIN (SEASON, MAX (day.steps / (2 * G_N_ELEMENTS (WINDOWS)), 1));
  for (int i = 2; i < argc; i++)
    if (g_str_equal (argv[i], "--leaks"))
      day.leaks_only = true;
    else if (g_str_equal (argv[i], "--only") && i + 1 < argc)
      day.only = argv[++i];
    else if (g_str_equal (argv[i], "--season") && i + 1 < argc)
      {
        int season = atoi (argv[++i]); /* MAX() reads what it is given twice */
        day.season = (guint)MAX (season, 1);
      }
  if (day.steps < 2)
    {
      g_printerr ("endurance STEPS [--leaks] [--only KIND] [--season STEPS]\n");
      return 2;
    }
  g_autofree char *folder = g_dir_make_tmp ("spelch-endurance-XXXXXX", NULL);
  use_folder (folder);
  g_setenv ("GSK_RENDERER", "cairo", FALSE);
  g_setenv ("GDK_DEBUG", "gl-disable,default-settings", FALSE);
  SpelchApplication *application = spelch_application_new ();
  g_application_set_flags (G_APPLICATION (application), G_APPLICATION_NON_UNIQUE);
  g_signal_connect_after (application, "activate", G_CALLBACK (activate), &day);
  int status = g_application_run (G_APPLICATION (application), 1, argv);
  g_object_unref (application);
  remove_folder (folder);
  return status;
}

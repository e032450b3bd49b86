/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bench-application.h"
#include "bench/appearance.h"
#include "bench/bench-files.h"
#include "bench/help-windows.h"
#include "bench/practice-window.h"
#include "bench/preferences-window.h"
#include "bench/quitting.h"
#include "bench/recent.h"
#include "bench/shelf-window.h"
#include "plan/constants.h"

#include <glib/gi18n-lib.h>

struct _SpelchApplication
{
  GtkApplication parent_instance;
  SpelchAppearance *appearance;
  SpelchShelves *shelves;
  SpelchPreferred *preferred;
  char *state_folder;
};

G_DEFINE_FINAL_TYPE (SpelchApplication, spelch_application, GTK_TYPE_APPLICATION)

static void
do_about (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GtkWindow *window = gtk_application_get_active_window (data);
  gtk_show_about_dialog (window, "program-name", "Spelch", "version", SPELCH_VERSION, "comments",
                         _ ("Shows which edge of a board will spelch, and what to set so that it doesn't."),
                         "system-information", _ ("Model " SPELCH_MODEL_VERSION), "license-type",
                         GTK_LICENSE_GPL_3_0, NULL);
}

/* The bench used last; other windows of the program belong to one. */
static SpelchBenchWindow *
active_bench (gpointer application)
{
  for (GList *item = gtk_application_get_windows (application); item != NULL; item = item->next)
    if (SPELCH_IS_BENCH_WINDOW (item->data))
      return item->data;
  return NULL;
}

static void
do_quit (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_quit_all (data);
}

static void
do_preferences (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_preferences_window_show (gtk_application_get_active_window (data),
                                  SPELCH_APPLICATION (data)->preferred);
}

static void
do_practice (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchApplication *self = data;
  spelch_practice_window_present (data, self->appearance, self->preferred);
}

static void
do_keys (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_help_show_keys (gtk_application_get_active_window (data));
}

static void
do_reading (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_help_show_reading (gtk_application_get_active_window (data));
}

/* From the first one on, about the demo part in a window where nothing is lost for it. */
static void
do_first_hints (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchApplication *self = data;
  SpelchBenchWindow *window = active_bench (data);
  SpelchPreferences next = *spelch_preferred_get (self->preferred);
  next.hints_done = 0;
  spelch_preferred_set (self->preferred, &next);
  if (window == NULL || !spelch_bench_window_is_untouched (window))
    window = spelch_application_add_window (self, NULL);
  else
    spelch_bench_window_open_demo (window);
  gtk_window_present (GTK_WINDOW (window));
}

static void
do_open_recent (GSimpleAction *action, GVariant *uri, gpointer data)
{
  SpelchBenchWindow *window = active_bench (data);
  g_autoptr (GFile) file = g_file_new_for_uri (g_variant_get_string (uri, NULL));
  if (window != NULL)
    spelch_files_open (window, file);
}

static void
do_clear_recent (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  spelch_recent_clear ();
}

/* ---- Windows ---- */

static GtkWindow *
shelf_window_of (GtkApplication *application, SpelchListKind kind)
{
  for (GList *l = gtk_application_get_windows (application); l != NULL; l = l->next)
    if (SPELCH_IS_SHELF_WINDOW (l->data) && spelch_shelf_window_get_kind (l->data) == kind)
      return l->data;
  return NULL;
}

static void
show_numbers (SpelchPreferred *preferred, SpelchShelfWindow *window)
{
  SpelchNumbers numbers = spelch_preferences_numbers (spelch_preferred_get (preferred));
  spelch_shelf_window_set_numbers (window, &numbers);
}

static GtkWindow *
add_shelf_window (SpelchApplication *self, SpelchListKind kind)
{
  SpelchShelfWindow *window
      = spelch_shelf_window_new (GTK_APPLICATION (self), self->shelves, kind, self->appearance);
  show_numbers (self->preferred, window);
  g_signal_connect_object (self->preferred, "changed", G_CALLBACK (show_numbers), window, 0);
  return GTK_WINDOW (window);
}

static GtkWindow *
present_shelf (SpelchApplication *self, const char *member)
{
  for (int kind = SPELCH_LIST_BITS; kind <= SPELCH_LIST_LOG; kind++)
    if (g_str_equal (member, spelch_list_member ((SpelchListKind)kind)))
      {
        GtkWindow *window = shelf_window_of (GTK_APPLICATION (self), (SpelchListKind)kind);
        if (window != NULL)
          gtk_window_present (window);
        else
          {
            window = add_shelf_window (self, (SpelchListKind)kind);
            spelch_shelf_window_open (SPELCH_SHELF_WINDOW (window));
          }
        return window;
      }
  return NULL;
}

static void
do_shelf (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  present_shelf (data, g_variant_get_string (parameter, NULL));
}

static void
do_own (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GtkWindow *window = present_shelf (data, g_variant_get_string (parameter, NULL));
  if (window != NULL)
    spelch_shelf_window_begin_own (SPELCH_SHELF_WINDOW (window));
}

/* The bit or the machine that is looked at, to have one of its members told. */
static void
do_tell (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  SpelchApplication *self = data;
  SpelchSession *session = spelch_shelves_get_session (self->shelves);
  const SpelchBit *bit = session == NULL ? NULL : spelch_session_get_bit (session);
  const char *list = NULL, *member = NULL;
  g_variant_get (parameter, "(&s&s)", &list, &member);
  if (bit == NULL)
    return;
  bool of_bit = g_str_equal (list, spelch_list_member (SPELCH_LIST_BITS));
  gsize size = spelch_list_item_size (of_bit ? SPELCH_LIST_BITS : SPELCH_LIST_MACHINES);
  /* Of its own: the window may lead to another plan. */
  g_autofree gpointer item
      = g_memdup2 (of_bit ? (gconstpointer)bit : &spelch_session_get_part (session)->machine, size);
  GtkWindow *window = present_shelf (self, list);
  spelch_shelf_window_show_item (SPELCH_SHELF_WINDOW (window), item, member);
}

static void
bind_keys (GtkApplication *application)
{
  const struct
  {
    const char *action;
    const char *keys[3];
  } bindings[] = {
    { "win.undo", { "<Control>z", NULL } },
    { "win.redo", { "<Control><Shift>z", "<Control>y", NULL } },
    { "win.new-part", { "<Control><Shift>n", NULL } },
    { "win.change-cut", { "F2", NULL } },
    { "win.duplicate-cut", { "<Control>d", NULL } },
    { "win.side-by-side", { "<Control><Shift>c", NULL } },
    { "win.print", { "<Control>p", NULL } },
    { "win.export-picture", { "<Control>e", NULL } },
    { "win.open", { "<Control>o", NULL } },
    { "win.save", { "<Control>s", NULL } },
    { "win.save-as", { "<Control><Shift>s", NULL } },
    { "win.close", { "<Control>w", NULL } },
    { "win.slow-motion", { "<Control>m", NULL } },
    { "win.new-window", { "<Control>n", NULL } },
    { "app.preferences", { "<Control>comma", NULL } },
    { "app.practice", { "<Control><Shift>p", NULL } },
    { "app.keys", { "<Control>question", NULL } },
    { "app.reading", { "F1", NULL } },
    { "win.words", { "<Shift>F1", NULL } },
    { "app.quit", { "<Control>q", NULL } },
    { "app.shelf::bits", { "<Control><Shift>b", NULL } },
    { "app.shelf::boards", { "<Control><Shift>d", NULL } },
    { "app.shelf::machines", { "<Control><Shift>m", NULL } },
    { "app.shelf::log", { "<Control><Shift>l", NULL } },
    { "win.shelf-add", { "<Control>n", NULL } },
    { "win.shelf-duplicate", { "<Control>d", NULL } },
    { "win.shelf-take", { "<Control>Return", NULL } },
    { "win.shelf-find", { "<Control>f", NULL } },
  };
  for (guint i = 0; i < G_N_ELEMENTS (bindings); i++)
    gtk_application_set_accels_for_action (application, bindings[i].action, bindings[i].keys);
}

static void
follow_preferences (SpelchApplication *self)
{
  const SpelchPreferences *preferences = spelch_preferred_get (self->preferred);
  GtkSettings *settings = gtk_settings_get_default ();
  spelch_appearance_choose (self->appearance, preferences->appearance);
  if (preferences->reduced_motion)
    g_object_set (settings, "gtk-enable-animations", FALSE, NULL);
  else
    gtk_settings_reset_property (settings, "gtk-enable-animations");
}

static void
spelch_application_startup (GApplication *application)
{
  SpelchApplication *self = SPELCH_APPLICATION (application);
  const GActionEntry actions[] = {
    { .name = "about", .activate = do_about },
    { .name = "quit", .activate = do_quit },
    { .name = "preferences", .activate = do_preferences },
    { .name = "practice", .activate = do_practice },
    { .name = "keys", .activate = do_keys },
    { .name = "reading", .activate = do_reading },
    { .name = "first-hints", .activate = do_first_hints },
    { .name = "open-recent", .parameter_type = "s", .activate = do_open_recent },
    { .name = "clear-recent", .activate = do_clear_recent },
    { .name = "shelf", .parameter_type = "s", .activate = do_shelf },
    { .name = "own", .parameter_type = "s", .activate = do_own },
    { .name = "tell", .parameter_type = "(ss)", .activate = do_tell },
  };
  G_APPLICATION_CLASS (spelch_application_parent_class)->startup (application);
  g_action_map_add_action_entries (G_ACTION_MAP (self), actions, G_N_ELEMENTS (actions), self);
  bind_keys (GTK_APPLICATION (self));
  g_autofree char *data = g_build_filename (g_get_user_data_dir (), "spelch", NULL);
  self->shelves = spelch_shelves_new (data);
  g_autofree char *folder = g_build_filename (g_get_user_config_dir (), "spelch", NULL);
  self->state_folder = g_build_filename (g_get_user_state_dir (), "spelch", NULL);
  self->appearance = spelch_appearance_new (gdk_display_get_default ());
  self->preferred = spelch_preferred_new (folder);
  spelch_preferred_add_actions (self->preferred, G_ACTION_MAP (self));
  g_signal_connect_object (self->preferred, "changed", G_CALLBACK (follow_preferences), self,
                           G_CONNECT_SWAPPED);
  follow_preferences (self);
}

static SpelchBenchWindow *
add_empty_window (SpelchApplication *self)
{
  return spelch_bench_window_new (GTK_APPLICATION (self), self->appearance, self->shelves, self->preferred,
                                  self->state_folder);
}

SpelchBenchWindow *
spelch_application_add_window (SpelchApplication *self, SpelchPart *part)
{
  SpelchBenchWindow *window = add_empty_window (self);
  if (part == NULL)
    spelch_bench_window_open_demo (window);
  else
    spelch_session_open (spelch_bench_window_get_session (window), part, NULL, NULL, false);
  return window;
}

/* It may have no part yet. */
static SpelchBenchWindow *
ensure_window (SpelchApplication *self)
{
  SpelchBenchWindow *window = active_bench (self);
  if (window != NULL)
    return window;
  window = add_empty_window (self);
  g_autofree char *lost = NULL;
  g_autoptr (GPtrArray) left_behind = spelch_recovery_find (self->state_folder, &lost);
  g_autofree char *trouble = spelch_preferred_take_trouble (self->preferred);
  spelch_bench_window_offer_recovery (window, left_behind);
  g_autofree char *both = lost != NULL && trouble != NULL ? g_strjoin ("\n", lost, trouble, NULL) : NULL;
  const char *said = both != NULL ? both : lost != NULL ? lost : trouble;
  if (said != NULL)
    spelch_bench_window_complain (window, said);
  return window;
}

static bool
has_part (SpelchBenchWindow *window)
{
  return spelch_session_get_part (spelch_bench_window_get_session (window)) != NULL;
}

static void
show_window (SpelchBenchWindow *window)
{
  if (!has_part (window))
    spelch_bench_window_open_demo (window);
  gtk_window_present (GTK_WINDOW (window));
}

/* 0: the program ends, having said it; -1: it goes on. */
static int
spelch_application_handle_local_options (GApplication *application, GVariantDict *options)
{
  if (!g_variant_dict_contains (options, "version"))
    return -1;
  g_print (_ ("Spelch %s, model %s"), SPELCH_VERSION, SPELCH_MODEL_VERSION);
  g_print ("\n");
  return 0;
}

static void
spelch_application_activate (GApplication *application)
{
  show_window (ensure_window (SPELCH_APPLICATION (application)));
}

static void
spelch_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  SpelchBenchWindow *window = ensure_window (SPELCH_APPLICATION (application));
  if (has_part (window))
    {
      if (spelch_bench_window_is_untouched (window)) /* the first of them comes in here */
        spelch_bench_window_complain (window, NULL);
      show_window (window);
    }
  for (int i = 0; i < n_files; i++)
    spelch_files_open_apart (window, files[i]);
  if (!has_part (window)) /* none of them could be read */
    show_window (window);
}

static void
spelch_application_finalize (GObject *object)
{
  SpelchApplication *self = SPELCH_APPLICATION (object);
  g_clear_object (&self->appearance);
  g_clear_object (&self->shelves);
  g_clear_object (&self->preferred);
  g_free (self->state_folder);
  G_OBJECT_CLASS (spelch_application_parent_class)->finalize (object);
}

static void
spelch_application_class_init (SpelchApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);
  G_OBJECT_CLASS (klass)->finalize = spelch_application_finalize;
  application_class->startup = spelch_application_startup;
  application_class->activate = spelch_application_activate;
  application_class->open = spelch_application_open;
  application_class->handle_local_options = spelch_application_handle_local_options;
}

static void
spelch_application_init (SpelchApplication *self)
{
  g_application_add_main_option (G_APPLICATION (self), "version", 0, G_OPTION_FLAG_NONE, G_OPTION_ARG_NONE,
                                 _ ("Say which version this is, and of the model"), NULL);
}

SpelchApplication *
spelch_application_new (void)
{
  return g_object_new (SPELCH_TYPE_APPLICATION, "application-id", "org.spelch.Spelch", "flags",
                       G_APPLICATION_HANDLES_OPEN, "resource-base-path", "/org/spelch/Spelch", NULL);
}

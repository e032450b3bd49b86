/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bench-application.h"
#include "bench/appearance.h"
#include "bench/bench-window.h"
#include "plan/constants.h"

#include <glib/gi18n-lib.h>

struct _SpelchApplication
{
  GtkApplication parent_instance;
  SpelchAppearance *appearance;
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

static void
do_quit (GSimpleAction *action, GVariant *parameter, gpointer data)
{
  GtkWindow *window = gtk_application_get_active_window (data);
  if (window != NULL)
    gtk_window_close (window);
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
    { "win.open", { "<Control>o", NULL } },
    { "win.save", { "<Control>s", NULL } },
    { "win.save-as", { "<Control><Shift>s", NULL } },
    { "app.quit", { "<Control>q", NULL } },
  };
  for (guint i = 0; i < G_N_ELEMENTS (bindings); i++)
    gtk_application_set_accels_for_action (application, bindings[i].action, bindings[i].keys);
}

static void
spelch_application_startup (GApplication *application)
{
  SpelchApplication *self = SPELCH_APPLICATION (application);
  const GActionEntry actions[]
      = { { .name = "about", .activate = do_about }, { .name = "quit", .activate = do_quit } };
  G_APPLICATION_CLASS (spelch_application_parent_class)->startup (application);
  g_action_map_add_action_entries (G_ACTION_MAP (self), actions, G_N_ELEMENTS (actions), self);
  bind_keys (GTK_APPLICATION (self));
  self->appearance = spelch_appearance_new (gdk_display_get_default ());
  g_autofree char *folder = g_build_filename (g_get_user_config_dir (), "spelch", NULL);
  spelch_appearance_choose (self->appearance, spelch_preferences_load (folder).appearance);
}

static SpelchBenchWindow *
ensure_window (SpelchApplication *self)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (self));
  if (window != NULL)
    return SPELCH_BENCH_WINDOW (window);
  SpelchBenchWindow *fresh = spelch_bench_window_new (GTK_APPLICATION (self), self->appearance);
  spelch_bench_window_open_demo (fresh);
  spelch_bench_window_offer_recovery (fresh);
  return fresh;
}

static void
spelch_application_activate (GApplication *application)
{
  gtk_window_present (GTK_WINDOW (ensure_window (SPELCH_APPLICATION (application))));
}

static void
spelch_application_open (GApplication *application, GFile **files, int n_files, const char *hint)
{
  SpelchBenchWindow *window = ensure_window (SPELCH_APPLICATION (application));
  spelch_bench_window_open (window, files[0]);
  gtk_window_present (GTK_WINDOW (window));
}

static void
spelch_application_finalize (GObject *object)
{
  SpelchApplication *self = SPELCH_APPLICATION (object);
  g_clear_object (&self->appearance);
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
}

static void
spelch_application_init (SpelchApplication *self)
{
}

SpelchApplication *
spelch_application_new (void)
{
  return g_object_new (SPELCH_TYPE_APPLICATION, "application-id", "org.spelch.Spelch", "flags",
                       G_APPLICATION_HANDLES_OPEN, "resource-base-path", "/org/spelch/Spelch", NULL);
}

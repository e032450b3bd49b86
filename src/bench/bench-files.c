/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bench-files.h"
#include "bench/bench-application.h"
#include "bench/dialogue.h"
#include "bench/recent.h"
#include "files/file-io.h"
#include "files/part-file.h"

#include <glib/gi18n-lib.h>

#define SUFFIX ".spelch"

typedef struct
{
  SpelchBenchWindow *window;
  SpelchGoAhead go_ahead;
  gpointer data;
  GDestroyNotify free_data;
  bool first; /* others may still be asked, so that what isn't to be saved stays kept aside */
} SpelchQuestion;

static void
question_free (SpelchQuestion *question)
{
  if (question->free_data != NULL)
    question->free_data (question->data);
  g_object_unref (question->window);
  g_free (question);
}

static void
go_ahead (SpelchQuestion *question)
{
  if (question != NULL && question->go_ahead != NULL)
    question->go_ahead (question->window, question->data);
}

/* ---- Loading ---- */

static SpelchPart *
read_part (SpelchBenchWindow *window, GFile *file, char **etag)
{
  g_autoptr (GError) error = NULL;
  SpelchPart *part = spelch_part_load (file, etag, &error);
  if (part == NULL)
    spelch_bench_window_complain (window, error->message);
  return part;
}

/* The window in which @file is open, or NULL. */
static SpelchBenchWindow *
find_window (SpelchBenchWindow *any, GFile *file)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (any));
  for (GList *item = gtk_application_get_windows (application); item != NULL; item = item->next)
    if (SPELCH_IS_BENCH_WINDOW (item->data))
      {
        GFile *open = spelch_session_get_file (spelch_bench_window_get_session (item->data));
        if (open != NULL && g_file_equal (open, file))
          return item->data;
      }
  return NULL;
}

static bool
show_if_open (SpelchBenchWindow *any, GFile *file)
{
  SpelchBenchWindow *window = find_window (any, file);
  if (window != NULL)
    gtk_window_present (GTK_WINDOW (window));
  return window != NULL;
}

static SpelchBenchWindow *
window_apart (SpelchBenchWindow *window)
{
  GtkApplication *application = gtk_window_get_application (GTK_WINDOW (window));
  return spelch_bench_window_is_untouched (window)
             ? window
             : spelch_application_add_window (SPELCH_APPLICATION (application), NULL);
}

static void
open_part (SpelchBenchWindow *window, SpelchPart *part, GFile *file, const char *etag)
{
  SpelchSession *session = spelch_bench_window_get_session (window);
  spelch_session_open (session, part, file, etag, false);
  spelch_session_settle (session); /* so that the first frame shows everything in its place */
  spelch_recent_add (file, part->name);
  const char *locked = spelch_session_why_locked (session);
  if (locked != NULL)
    spelch_bench_window_complain (window, locked);
  gtk_window_present (GTK_WINDOW (window));
}

static void
open_here (SpelchBenchWindow *window, gpointer file)
{
  g_autofree char *etag = NULL;
  g_autoptr (SpelchPart) part = read_part (window, file, &etag);
  if (part == NULL)
    return;
  spelch_bench_window_complain (window, NULL); /* what was about the part before */
  open_part (window, part, file, etag);
}

void
spelch_files_open (SpelchBenchWindow *window, GFile *file)
{
  if (!show_if_open (window, file))
    spelch_files_ask (window, open_here, g_object_ref (file), g_object_unref);
}

void
spelch_files_open_apart (SpelchBenchWindow *window, GFile *file)
{
  if (show_if_open (window, file))
    return;
  g_autofree char *etag = NULL;
  g_autoptr (SpelchPart) part = read_part (window, file, &etag);
  if (part != NULL)
    open_part (window_apart (window), part, file, etag);
}

static gboolean
files_dropped (SpelchBenchWindow *window, const GValue *value, double x, double y, GtkDropTarget *target)
{
  GSList *files = g_value_get_boxed (value);
  if (files == NULL)
    return FALSE;
  spelch_files_open (window, files->data);
  for (GSList *more = files->next; more != NULL; more = more->next)
    spelch_files_open_apart (window, more->data);
  return TRUE;
}

void
spelch_files_take_drops (SpelchBenchWindow *window)
{
  GtkDropTarget *target = gtk_drop_target_new (GDK_TYPE_FILE_LIST, GDK_ACTION_COPY);
  g_signal_connect_swapped (target, "drop", G_CALLBACK (files_dropped), window);
  gtk_widget_add_controller (GTK_WIDGET (window), GTK_EVENT_CONTROLLER (target));
}

void
spelch_files_take_up (SpelchBenchWindow *window, SpelchLeftBehind *left)
{
  SpelchBenchWindow *holder = left->file == NULL ? NULL : find_window (window, left->file);
  bool free_to_take = holder != NULL && !spelch_session_is_unsaved (spelch_bench_window_get_session (holder));
  SpelchBenchWindow *target = free_to_take ? holder : window_apart (window);
  g_autoptr (SpelchPart) part = spelch_part_ref (left->part);
  g_autoptr (GFile) file = left->file == NULL ? NULL : g_object_ref (left->file);
  g_autofree char *etag = g_strdup (left->etag);
  spelch_recovery_take_over (spelch_bench_window_get_recovery (target), left);
  spelch_session_open (spelch_bench_window_get_session (target), part, file, etag, true);
  gtk_window_present (GTK_WINDOW (target));
}

bool
spelch_files_reload (SpelchBenchWindow *window)
{
  SpelchSession *session = spelch_bench_window_get_session (window);
  g_autofree char *etag = NULL;
  g_autoptr (SpelchPart) part = read_part (window, spelch_session_get_file (session), &etag);
  if (part != NULL)
    spelch_session_reload (session, part, etag);
  return part != NULL;
}

static GtkFileChooserNative *
chooser_new (SpelchBenchWindow *window, GtkFileChooserAction action, const char *title, const char *accept)
{
  GtkFileChooserNative *chooser
      = gtk_file_chooser_native_new (title, GTK_WINDOW (window), action, accept, _ ("_Cancel"));
  g_autoptr (GtkFileFilter) parts = gtk_file_filter_new ();
  gtk_file_filter_set_name (parts, _ ("Spelch parts"));
  gtk_file_filter_add_pattern (parts, "*" SUFFIX);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), parts);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  return chooser;
}

static void
file_chosen (GtkNativeDialog *dialog, int response, SpelchBenchWindow *window)
{
  if (response == GTK_RESPONSE_ACCEPT)
    {
      g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      spelch_files_open (window, file);
    }
  spelch_dialogue_end_native (dialog);
}

void
spelch_files_choose_and_open (SpelchBenchWindow *window)
{
  GtkFileChooserNative *chooser
      = chooser_new (window, GTK_FILE_CHOOSER_ACTION_OPEN, _ ("Open a part"), _ ("_Open"));
  g_signal_connect (chooser, "response", G_CALLBACK (file_chosen), window);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

/* ---- Saving ---- */

static void choose_and_save (SpelchQuestion *question);

/* What to do about a file that another program has changed. */
enum
{
  CONFLICT_SAVE_OVER = 1,
  CONFLICT_SAVE_AS,
  CONFLICT_READ_AGAIN,
};

static bool
save_to (SpelchBenchWindow *window, GFile *file, GError **error)
{
  SpelchSession *session = spelch_bench_window_get_session (window);
  if (!spelch_session_save (session, file, error))
    return false;
  spelch_recent_add (spelch_session_get_file (session), spelch_session_get_part (session)->name);
  return true;
}

/* Saves and goes on, or complains. Owns @question. */
static void
save_and_go (SpelchQuestion *question, GFile *file)
{
  g_autoptr (GError) error = NULL;
  if (save_to (question->window, file, &error))
    go_ahead (question);
  else
    spelch_bench_window_complain (question->window, error->message);
  question_free (question);
}

static void
conflict_answered (GtkDialog *dialog, int response, SpelchQuestion *question)
{
  spelch_dialogue_end (GTK_WINDOW (dialog));
  if (response == CONFLICT_SAVE_AS)
    {
      choose_and_save (question);
      return;
    }
  if (response == CONFLICT_SAVE_OVER)
    {
      spelch_session_overrule (spelch_bench_window_get_session (question->window));
      save_and_go (question, NULL);
      return;
    }
  if (response == CONFLICT_READ_AGAIN)
    spelch_files_reload (question->window);
  question_free (question);
}

/* Owns @question. */
static void
ask_about_conflict (SpelchQuestion *question)
{
  SpelchSession *session = spelch_bench_window_get_session (question->window);
  g_autofree char *name = spelch_file_name (spelch_session_get_file (session));
  GtkWidget *dialog
      = gtk_message_dialog_new (GTK_WINDOW (question->window), GTK_DIALOG_MODAL, GTK_MESSAGE_WARNING,
                                GTK_BUTTONS_NONE, _ ("%s was changed by another program."), name);
  gtk_message_dialog_format_secondary_text (
      GTK_MESSAGE_DIALOG (dialog), "%s",
      _ ("Saving over it loses what the other program wrote. Reading it again can be undone here."));
  gtk_dialog_add_button (GTK_DIALOG (dialog), _ ("_Cancel"), GTK_RESPONSE_CANCEL);
  gtk_dialog_add_button (GTK_DIALOG (dialog), _ ("_Read it again"), CONFLICT_READ_AGAIN);
  gtk_dialog_add_button (GTK_DIALOG (dialog), _ ("Save _over it"), CONFLICT_SAVE_OVER);
  gtk_dialog_add_button (GTK_DIALOG (dialog), _ ("Save _as…"), CONFLICT_SAVE_AS);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), CONFLICT_SAVE_AS);
  g_signal_connect (dialog, "response", G_CALLBACK (conflict_answered), question);
  gtk_window_present (GTK_WINDOW (dialog));
}

/* Saves to where the part came from, or asks where to. Owns @question. */
static void
save_here (SpelchQuestion *question)
{
  SpelchSession *session = spelch_bench_window_get_session (question->window);
  if (spelch_session_get_file (session) == NULL)
    choose_and_save (question);
  else if (spelch_session_is_overtaken (session))
    ask_about_conflict (question);
  else
    save_and_go (question, NULL);
}

static void
place_chosen (GtkNativeDialog *dialog, int response, SpelchQuestion *question)
{
  g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  spelch_dialogue_end_native (dialog);
  if (response == GTK_RESPONSE_ACCEPT && file != NULL)
    save_and_go (question, file);
  else
    question_free (question);
}

/* The part's name where it has one, without what can't stand in a file's. */
static char *
file_name_of (const SpelchPart *part)
{
  g_autofree char *stem = spelch_file_stem (part->name[0] != '\0' ? part->name : part->id, _ ("part"));
  return g_strconcat (stem, SUFFIX, NULL);
}

/* Owns @question. */
static void
choose_and_save (SpelchQuestion *question)
{
  SpelchBenchWindow *window = question->window;
  const SpelchPart *part = spelch_session_get_part (spelch_bench_window_get_session (window));
  g_autofree char *name = file_name_of (part);
  GtkFileChooserNative *chooser
      = chooser_new (window, GTK_FILE_CHOOSER_ACTION_SAVE, _ ("Save the part"), _ ("_Save"));
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  g_signal_connect (chooser, "response", G_CALLBACK (place_chosen), question);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static SpelchQuestion *
question_new (SpelchBenchWindow *window, SpelchGoAhead then, gpointer data, GDestroyNotify free_data)
{
  SpelchQuestion *question = g_new0 (SpelchQuestion, 1);
  *question = (SpelchQuestion){ g_object_ref (window), then, data, free_data };
  return question;
}

void
spelch_files_save_as (SpelchBenchWindow *window)
{
  choose_and_save (question_new (window, NULL, NULL, NULL));
}

void
spelch_files_save (SpelchBenchWindow *window)
{
  if (spelch_session_get_part (spelch_bench_window_get_session (window)) != NULL)
    save_here (question_new (window, NULL, NULL, NULL));
}

/* ---- Asking ---- */

static void
answered (GtkDialog *dialog, int response, SpelchQuestion *question)
{
  spelch_dialogue_end (GTK_WINDOW (dialog));
  if (response == GTK_RESPONSE_ACCEPT)
    {
      save_here (question);
      return;
    }
  if (response == GTK_RESPONSE_REJECT)
    {
      if (!question->first)
        spelch_recovery_forget (spelch_bench_window_get_recovery (question->window));
      go_ahead (question);
    }
  question_free (question);
}

/* Owns @question. */
static void
ask (SpelchQuestion *question)
{
  SpelchBenchWindow *window = question->window;
  SpelchSession *session = spelch_bench_window_get_session (window);
  const SpelchPart *part = spelch_session_get_part (session);
  if (part == NULL || !spelch_session_is_unsaved (session))
    {
      go_ahead (question);
      question_free (question);
      return;
    }
  GtkWidget *dialog = gtk_message_dialog_new (GTK_WINDOW (window), GTK_DIALOG_MODAL, GTK_MESSAGE_QUESTION,
                                              GTK_BUTTONS_NONE, _ ("Save the changes to “%s”?"), part->name);
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s",
                                            _ ("Changes that aren't saved are lost."));
  gtk_dialog_add_button (GTK_DIALOG (dialog), _ ("_Don't save"), GTK_RESPONSE_REJECT);
  gtk_dialog_add_button (GTK_DIALOG (dialog), _ ("_Cancel"), GTK_RESPONSE_CANCEL);
  gtk_dialog_add_button (GTK_DIALOG (dialog), _ ("_Save"), GTK_RESPONSE_ACCEPT);
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), GTK_RESPONSE_ACCEPT);
  g_signal_connect (dialog, "response", G_CALLBACK (answered), question);
  gtk_window_present (GTK_WINDOW (dialog));
}

void
spelch_files_ask (SpelchBenchWindow *window, SpelchGoAhead then, gpointer data, GDestroyNotify free_data)
{
  ask (question_new (window, then, data, free_data));
}

void
spelch_files_ask_first (SpelchBenchWindow *window, SpelchGoAhead then, gpointer data,
                        GDestroyNotify free_data)
{
  SpelchQuestion *question = question_new (window, then, data, free_data);
  question->first = true;
  ask (question);
}

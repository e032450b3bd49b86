/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bench-files.h"
#include "files/part-file.h"

#include <glib/gi18n-lib.h>

#define SUFFIX ".spelch"

typedef struct
{
  SpelchBenchWindow *window;
  SpelchGoAhead go_ahead;
  gpointer data;
  GDestroyNotify free_data;
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

void
spelch_files_load (SpelchBenchWindow *window, GFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *etag = NULL;
  g_autoptr (SpelchPart) part = spelch_part_load (file, &etag, &error);
  if (part == NULL)
    {
      spelch_bench_window_complain (window, error->message);
      return;
    }
  spelch_session_open (spelch_bench_window_get_session (window), part, file, etag, false);
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
      spelch_bench_window_open (window, file);
    }
  gtk_native_dialog_destroy (dialog);
  g_object_unref (dialog);
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

static bool
save_to (SpelchBenchWindow *window, GFile *file)
{
  g_autoptr (GError) error = NULL;
  if (spelch_session_save (spelch_bench_window_get_session (window), file, &error))
    return true;
  spelch_bench_window_complain (window, error->message);
  return false;
}

static void
place_chosen (GtkNativeDialog *dialog, int response, SpelchQuestion *question)
{
  bool saved = false;
  if (response == GTK_RESPONSE_ACCEPT)
    {
      g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      saved = save_to (question->window, file);
    }
  gtk_native_dialog_destroy (dialog);
  g_object_unref (dialog);
  if (saved)
    go_ahead (question);
  question_free (question);
}

/* Owns @question. */
static void
choose_and_save (SpelchQuestion *question)
{
  SpelchBenchWindow *window = question->window;
  const SpelchPart *part = spelch_session_get_part (spelch_bench_window_get_session (window));
  g_autofree char *name = g_strconcat (part->id[0] != '\0' ? part->id : "part", SUFFIX, NULL);
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
  if (spelch_session_get_file (spelch_bench_window_get_session (window)) == NULL)
    spelch_files_save_as (window);
  else
    save_to (window, NULL);
}

/* ---- Asking ---- */

static void
answered (GtkDialog *dialog, int response, SpelchQuestion *question)
{
  SpelchBenchWindow *window = question->window;
  bool has_file = spelch_session_get_file (spelch_bench_window_get_session (window)) != NULL;
  gtk_window_destroy (GTK_WINDOW (dialog));
  if (response == GTK_RESPONSE_ACCEPT && !has_file)
    {
      choose_and_save (question);
      return;
    }
  bool saved = response == GTK_RESPONSE_ACCEPT && save_to (window, NULL);
  if (response == GTK_RESPONSE_REJECT)
    spelch_recovery_forget (spelch_bench_window_get_recovery (window));
  if (saved || response == GTK_RESPONSE_REJECT)
    go_ahead (question);
  question_free (question);
}

void
spelch_files_ask (SpelchBenchWindow *window, SpelchGoAhead then, gpointer data, GDestroyNotify free_data)
{
  SpelchSession *session = spelch_bench_window_get_session (window);
  SpelchQuestion *question = question_new (window, then, data, free_data);
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

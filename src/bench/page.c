/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/page.h"
#include "bench/dialogue.h"
#include "files/file-io.h"

#include <glib/gi18n-lib.h>

/* A page on its way out of a window. */
typedef struct
{
  SpelchPage page;
  GtkWindow *window;
  SpelchPageSay say;
} Leaving;

static Leaving *
leaving_new (const SpelchPage *page, GtkWindow *window, SpelchPageSay say)
{
  Leaving *leaving = g_new0 (Leaving, 1);
  leaving->page = *page;
  leaving->page.title = g_strdup (page->title);
  leaving->page.name = g_strdup (page->name);
  leaving->window = window == NULL ? NULL : g_object_ref (window);
  leaving->say = say;
  return leaving;
}

static void
leaving_free (gpointer data)
{
  Leaving *leaving = data;
  if (leaving->page.free_data != NULL)
    leaving->page.free_data (leaving->page.data);
  g_free ((char *)leaving->page.title);
  g_free ((char *)leaving->page.name);
  g_clear_object (&leaving->window);
  g_free (leaving);
}

static void
leaving_closed (gpointer data, GClosure *closure)
{
  leaving_free (data);
}

/* ---- Paper ---- */

static void
draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int number, Leaving *leaving)
{
  const SpelchPage *page = &leaving->page;
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  double width = gtk_print_context_get_width (context), height = gtk_print_context_get_height (context);
  double scale = MIN (width / page->width, height / page->height);
  cairo_translate (cr, (width - scale * page->width) / 2, 0);
  cairo_scale (cr, scale, scale);
  cairo_rectangle (cr, 0, 0, page->width, page->height);
  cairo_clip (cr); /* a drawing paints its ground */
  page->draw (cr, page->data);
}

GtkPrintOperation *
spelch_page_operation (const SpelchPage *page)
{
  GtkPrintOperation *operation = gtk_print_operation_new ();
  g_autoptr (GtkPageSetup) setup = gtk_page_setup_new ();
  gtk_page_setup_set_orientation (setup, page->width > page->height ? GTK_PAGE_ORIENTATION_LANDSCAPE
                                                                    : GTK_PAGE_ORIENTATION_PORTRAIT);
  gtk_print_operation_set_default_page_setup (operation, setup);
  gtk_print_operation_set_embed_page_setup (operation, TRUE);
  gtk_print_operation_set_n_pages (operation, 1);
  gtk_print_operation_set_job_name (operation, page->title);
  g_signal_connect_data (operation, "draw-page", G_CALLBACK (draw_page), leaving_new (page, NULL, NULL),
                         leaving_closed, 0);
  return operation;
}

void
spelch_page_print (const SpelchPage *page, GtkWindow *window, SpelchPageSay say)
{
  g_autoptr (GtkPrintOperation) operation = spelch_page_operation (page);
  g_autoptr (GError) error = NULL;
  GtkPrintOperationResult result
      = gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_PRINT_DIALOG, window, &error);
  if (result != GTK_PRINT_OPERATION_RESULT_ERROR)
    return;
  g_autofree char *words
      = g_strdup_printf (_ ("It can't be printed: %s. Export it as a PDF and print that, or try another "
                            "printer."),
                         error->message);
  say (window, words);
}

/* ---- Files ---- */

/* The sentence that says how it went. */
static char *
write_to (const SpelchPage *page, GFile *file)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *name = spelch_file_name (file);
  if (!spelch_picture_file_knows (name))
    return g_strdup_printf (_ ("%s: nothing was written. End the name in .pdf, .svg or .png; that says how "
                               "to write it."),
                            name);
  if (page->save != NULL
          ? !page->save (file, page->data, &error)
          : !spelch_picture_file_save (file, page->width, page->height, page->draw, page->data, &error))
    return g_strdup (error->message);
  return g_strdup_printf (_ ("%s is written."), name);
}

static void
answered (GtkNativeDialog *dialog, int response, Leaving *leaving)
{
  if (response == GTK_RESPONSE_ACCEPT)
    {
      g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
      g_autofree char *said = write_to (&leaving->page, file);
      leaving->say (leaving->window, said);
    }
  spelch_dialogue_end_native (dialog);
}

void
spelch_page_export (const SpelchPage *page, GtkWindow *window, SpelchPageSay say)
{
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (
      page->title, window, GTK_FILE_CHOOSER_ACTION_SAVE, _ ("_Export"), _ ("_Cancel"));
  g_autoptr (GtkFileFilter) pictures = gtk_file_filter_new ();
  g_autofree char *name = g_strconcat (page->name, ".pdf", NULL);
  gtk_file_filter_set_name (pictures, _ ("Pictures (.pdf, .svg, .png)"));
  gtk_file_filter_add_suffix (pictures, "pdf");
  gtk_file_filter_add_suffix (pictures, "svg");
  gtk_file_filter_add_suffix (pictures, "png");
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), pictures);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  g_signal_connect_data (chooser, "response", G_CALLBACK (answered), leaving_new (page, window, say),
                         leaving_closed, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Page: a drawing that a window shows, printed on a sheet of paper or exported to a picture file. What goes
 * wrong, or where it went, is said in a sentence.
 */
#pragma once

#include "drawing/picture-file.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Says a sentence in @window. */
typedef void (*SpelchPageSay) (GtkWindow *window, const char *sentence);

typedef struct
{
  const char *title; /* of the print job and the file chooser; copied */
  const char *name;  /* of the file to begin with, without an ending; copied */
  double width, height;
  SpelchPictureFileDraw draw;
  bool (*save) (GFile *file, gconstpointer data,
                GError **error); /* in place of @draw, of several pages; or NULL
                                  */
  gpointer data;                 /* for @draw; freed with @free_data when it isn't needed any more */
  GDestroyNotify free_data;
} SpelchPage;

/* Prints @page as large as it fits on one sheet. */
GtkPrintOperation *spelch_page_operation (const SpelchPage *page);

/* Asks how to print, and prints. */
void spelch_page_print (const SpelchPage *page, GtkWindow *window, SpelchPageSay say);

/* Asks for a file, and writes it by the ending of its name. */
void spelch_page_export (const SpelchPage *page, GtkWindow *window, SpelchPageSay say);

G_END_DECLS

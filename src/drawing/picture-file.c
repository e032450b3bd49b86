/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/picture-file.h"

#include "files/file-io.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>

typedef enum
{
  ENDING_NONE,
  ENDING_SVG,
  ENDING_PNG,
  ENDING_PDF,
} Ending;

static Ending
ending_of (const char *name)
{
  g_autofree char *lower = g_ascii_strdown (name, -1);
  return g_str_has_suffix (lower, ".svg")   ? ENDING_SVG
         : g_str_has_suffix (lower, ".png") ? ENDING_PNG
         : g_str_has_suffix (lower, ".pdf") ? ENDING_PDF
                                            : ENDING_NONE;
}

bool
spelch_picture_file_knows (const char *name)
{
  return ending_of (name) != ENDING_NONE;
}

static cairo_status_t
collect (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static cairo_surface_t *
surface_for (Ending ending, double width, double height, GByteArray *into)
{
  if (ending == ENDING_SVG)
    return cairo_svg_surface_create_for_stream (collect, into, width, height);
  if (ending == ENDING_PNG)
    return cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)width, (int)height);
  cairo_surface_t *pdf = cairo_pdf_surface_create_for_stream (collect, into, width, height);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_TITLE, "Spelch");
  return pdf;
}

/* The whole picture in memory first, so that a failed save leaves an old picture alone. */
bool
spelch_picture_file_save (GFile *file, double width, double height, SpelchPictureFileDraw draw,
                          gconstpointer data, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autofree char *name = g_file_get_basename (file);
  Ending ending = ending_of (name != NULL ? name : "");
  g_return_val_if_fail (ending != ENDING_NONE, false);
  cairo_surface_t *surface = surface_for (ending, width, height, bytes);
  cairo_t *cr = cairo_create (surface);
  draw (cr, data);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  if (ending == ENDING_PNG)
    cairo_surface_write_to_png_stream (surface, collect, bytes);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
  return spelch_file_save_bytes (file, bytes->data, bytes->len, error);
}

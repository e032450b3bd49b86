/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "command/picture-file.h"

#include "command/commands.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n.h>

#define LEAST 200
#define MOST  10000

static cairo_status_t
collect (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static cairo_surface_t *
surface_for (const char *output, int width, int height, GByteArray *into)
{
  g_autofree char *name = g_ascii_strdown (output, -1);
  if (g_str_has_suffix (name, ".svg"))
    return cairo_svg_surface_create_for_stream (collect, into, width, height);
  if (g_str_has_suffix (name, ".png"))
    return cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  if (!g_str_has_suffix (name, ".pdf"))
    return NULL;
  cairo_surface_t *pdf = cairo_pdf_surface_create_for_stream (collect, into, width, height);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_TITLE, "Spelch");
  return pdf;
}

static bool
has_known_ending (const char *output)
{
  g_autofree char *lower = g_ascii_strdown (output, -1);
  return g_str_has_suffix (lower, ".svg") || g_str_has_suffix (lower, ".png")
         || g_str_has_suffix (lower, ".pdf");
}

/* The whole picture in memory first, so that a failed save leaves an old picture alone. */
int
spelch_picture_file_write (const char *output, const SpelchView *view, SpelchPictureFileDraw draw,
                           gconstpointer data)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  g_autoptr (GError) error = NULL;
  if (!has_known_ending (output))
    return spelch_command_fail (_ ("The file to write must end in .svg, .png or .pdf."),
                                SPELCH_EXIT_BAD_INPUT);
  cairo_surface_t *surface = surface_for (output, (int)view->width, (int)view->height, bytes);
  cairo_t *cr = cairo_create (surface);
  draw (cr, data);
  cairo_destroy (cr);
  cairo_surface_flush (surface);
  if (cairo_surface_get_type (surface) == CAIRO_SURFACE_TYPE_IMAGE)
    cairo_surface_write_to_png_stream (surface, collect, bytes);
  cairo_surface_finish (surface);
  cairo_surface_destroy (surface);
  if (!g_file_set_contents (output, (const char *)bytes->data, (gssize)bytes->len, &error))
    return spelch_command_fail (error->message, SPELCH_EXIT_NOT_WRITTEN);
  return SPELCH_EXIT_DONE;
}

bool
spelch_picture_file_view (const SpelchAsked *asked, int width, int height, SpelchView *view, GError **error)
{
  static const char *const looks[] = { "light", "dark", "high-contrast", "paper" };
  static const SpelchCodes table = { "look", looks, G_N_ELEMENTS (looks) };
  int look = SPELCH_LOOK_LIGHT;
  width = asked->width > 0 ? asked->width : width;
  height = asked->height > 0 ? asked->height : height;
  if (asked->look != NULL && !spelch_code_read (&table, asked->look, &look))
    {
      g_set_error (error, SPELCH_COMMAND_ERROR, SPELCH_COMMAND_ERROR_VALUE,
                   _ ("--look “%s”: write light, dark, high-contrast or paper."), asked->look);
      return false;
    }
  if (asked->width < 0 || asked->height < 0 || width < LEAST || width > MOST || height < LEAST
      || height > MOST)
    {
      g_set_error (error, SPELCH_COMMAND_ERROR, SPELCH_COMMAND_ERROR_VALUE,
                   _ ("--size and --height are from %d to %d."), LEAST, MOST);
      return false;
    }
  *view = (SpelchView){ .width = width,
                        .height = height,
                        .text = 1,
                        .look = (SpelchLook)look,
                        .family = "Inter, Cantarell, sans-serif",
                        .shown_pass = (guint)MAX (asked->pass, 1),
                        .with_marks = true };
  return spelch_asked_numbers (asked, &view->numbers, error);
}

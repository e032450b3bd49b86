/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet-file.h"

#include "drawing/picture-file.h"
#include "files/file-io.h"
#include "files/part-file.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define REVISION_SIZE 8
#define ENDING        4 /* letters of ".pdf" */

GDateTime *
spelch_sheet_moment (void)
{
  const char *epoch = g_getenv ("SOURCE_DATE_EPOCH");
  guint64 seconds;
  if (epoch != NULL && g_ascii_string_to_unsigned (epoch, 10, 0, G_MAXUINT32, &seconds, NULL))
    return g_date_time_new_from_unix_utc ((gint64)seconds);
  return g_date_time_new_now_local ();
}

char *
spelch_sheet_revision (const SpelchPart *part)
{
  g_autofree char *text = spelch_part_to_json (part);
  g_autofree char *sum = g_compute_checksum_for_string (G_CHECKSUM_SHA256, text, -1);
  return g_strndup (sum, REVISION_SIZE);
}

static bool
ends_in (const char *name, const char *ending)
{
  g_autofree char *lower = g_ascii_strdown (name, -1);
  return g_str_has_suffix (lower, ending);
}

/* The names of the files that a sheet of @pages pages becomes beside one another when it is to be called
 * @name, which spelch_picture_file_knows(). NULL-terminated; g_strfreev() it. */
static char **
file_names (const char *name, guint pages)
{
  g_autoptr (GStrvBuilder) names = g_strv_builder_new ();
  g_return_val_if_fail (spelch_picture_file_knows (name), NULL);
  int stem = (int)strlen (name) - ENDING;
  if (ends_in (name, ".pdf") || pages == 1)
    g_strv_builder_add (names, name);
  else
    for (guint i = 0; i < pages; i++)
      {
        g_autofree char *numbered = g_strdup_printf ("%.*s-%u%s", stem, name, i + 1, name + stem);
        g_strv_builder_add (names, numbered);
      }
  return g_strv_builder_end (names);
}

static cairo_status_t
collect (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* ---- Pages ---- */

static void
draw_page (const SpelchSheet *sheet, guint page, cairo_surface_t *surface, double scale)
{
  cairo_t *cr = cairo_create (surface);
  cairo_scale (cr, scale, scale);
  spelch_sheet_draw (sheet, page, cr);
  cairo_show_page (cr);
  cairo_destroy (cr);
}

static GBytes *
finish (cairo_surface_t *surface, GByteArray *bytes, GError **error)
{
  cairo_surface_finish (surface);
  cairo_status_t status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    return g_byte_array_free_to_bytes (bytes);
  g_set_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_WRITE, _ ("The page couldn't be drawn: %s."),
               cairo_status_to_string (status));
  g_byte_array_unref (bytes);
  return NULL;
}

static void
describe (const SpelchSheet *sheet, cairo_surface_t *pdf, GDateTime *when)
{
  g_autofree char *subject = spelch_sheet_subject (sheet);
  g_autofree char *moment = g_date_time_format (when, "%Y-%m-%dT%H:%M:%S%:z");
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_TITLE, spelch_sheet_title (sheet, 0));
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_SUBJECT, subject);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_CREATOR, "Spelch");
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_CREATE_DATE, moment);
}

static GBytes *
make_pdf (const SpelchSheet *sheet, double width, double height, GDateTime *when, GError **error)
{
  GByteArray *bytes = g_byte_array_new ();
  cairo_surface_t *pdf = cairo_pdf_surface_create_for_stream (collect, bytes, width * SPELCH_POINTS_PER_MM,
                                                              height * SPELCH_POINTS_PER_MM);
  describe (sheet, pdf, when);
  for (guint i = 0; i < spelch_sheet_pages (sheet); i++)
    {
      g_autofree char *place = g_strdup_printf ("page=%u", i + 1);
      draw_page (sheet, i, pdf, SPELCH_POINTS_PER_MM);
      cairo_pdf_surface_add_outline (pdf, CAIRO_PDF_OUTLINE_ROOT, spelch_sheet_title (sheet, i), place,
                                     CAIRO_PDF_OUTLINE_FLAG_OPEN);
    }
  return finish (pdf, bytes, error);
}

static GBytes *
make_picture (const SpelchSheet *sheet, guint page, bool as_svg, double width, double height, GError **error)
{
  GByteArray *bytes = g_byte_array_new ();
  double dots = SPELCH_SHEET_DPI / 25.4;
  if (as_svg)
    {
      cairo_surface_t *svg = cairo_svg_surface_create_for_stream (
          collect, bytes, width * SPELCH_POINTS_PER_MM, height * SPELCH_POINTS_PER_MM);
      cairo_svg_surface_set_document_unit (svg, CAIRO_SVG_UNIT_PT);
      draw_page (sheet, page, svg, SPELCH_POINTS_PER_MM);
      return finish (svg, bytes, error);
    }
  cairo_surface_t *png = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)round (width * dots),
                                                     (int)round (height * dots));
  draw_page (sheet, page, png, dots);
  cairo_surface_write_to_png_stream (png, collect, bytes);
  return finish (png, bytes, error);
}

/* ---- Files ---- */

static GPtrArray *
make_all (const SpelchSheet *sheet, const char *name, guint n, GDateTime *when, GError **error)
{
  SpelchPaper paper = spelch_sheet_paper (sheet);
  double width = spelch_paper_width (paper), height = spelch_paper_height (paper);
  g_autoptr (GPtrArray) made = g_ptr_array_new_with_free_func ((GDestroyNotify)g_bytes_unref);
  for (guint i = 0; i < n; i++)
    {
      GBytes *bytes = ends_in (name, ".pdf")
                          ? make_pdf (sheet, width, height, when, error)
                          : make_picture (sheet, i, ends_in (name, ".svg"), width, height, error);
      if (bytes == NULL)
        return NULL;
      g_ptr_array_add (made, bytes);
    }
  return g_steal_pointer (&made);
}

bool
spelch_sheet_save (const SpelchSheet *sheet, GFile *file, GDateTime *when, GError **error)
{
  g_autofree char *name = g_file_get_basename (file);
  g_autoptr (GFile) folder = g_file_get_parent (file);
  g_return_val_if_fail (folder != NULL && spelch_picture_file_knows (name), false);
  g_auto (GStrv) names = file_names (name, spelch_sheet_pages (sheet));
  g_autoptr (GPtrArray) made = make_all (sheet, name, g_strv_length (names), when, error);
  for (guint i = 0; made != NULL && i < made->len; i++)
    {
      gsize length;
      g_autoptr (GFile) one = g_file_get_child (folder, names[i]);
      const void *data = g_bytes_get_data (made->pdata[i], &length);
      if (!spelch_file_save_bytes (one, data, length, error))
        return false;
    }
  return made != NULL;
}

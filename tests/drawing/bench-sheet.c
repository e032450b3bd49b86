/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Benchmark: the bench sheet of a part with twelve cuts as a PDF, planning and bits to choose included,
 * beside a PDF by Cairo alone with as many pages of plain text, in the same run.
 */
#include "../processor-time.h"
#include "drawing/sheet-file.h"
#include "files/shop-data.h"

#include <cairo-pdf.h>
#include <glib/gstdio.h>

#define CUTS   12
#define ROUNDS 5
#define LINES  60 /* of plain text on a page: about as many words as a sheet's */

static void
fail (const GError *error)
{
  if (error != NULL)
    g_error ("%s", error->message);
}

/* The demo's cuts, again and again. */
static SpelchPart *
part_of_twelve (void)
{
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  SpelchPart *part = spelch_part_copy (demo);
  for (guint i = demo->n_cuts; i < CUTS; i++)
    {
      SpelchCut cut = demo->cuts[i % demo->n_cuts];
      g_snprintf (cut.id, sizeof cut.id, "cut-%u", i + 1);
      spelch_part_add_cut (part, &cut);
    }
  return part;
}

typedef struct
{
  double work, layout, writing; /* ms */
  guint pages;
} Times;

static Times
make_sheet (const SpelchPart *part, GFile *file)
{
  guint n;
  Times times;
  g_autoptr (GError) error = NULL;
  const SpelchBit *bits = spelch_shop_bits (&n);
  double start = processor_ms (), then;
  g_autoptr (SpelchWork) work = spelch_work_find (spelch_shop_constants (), part, NULL, bits, n);
  times.work = (then = processor_ms ()) - start;
  const SpelchSheetOf of = { .work = work,
                             .constants = spelch_shop_constants (),
                             .numbers = { .unit = SPELCH_UNIT_MM, .decimal_sign = '.' },
                             .paper = SPELCH_PAPER_A4,
                             .file = "bench.spelch",
                             .revision = "0123abcd",
                             .date = "2026-05-31" };
  g_autoptr (SpelchSheet) sheet = spelch_sheet_new (&of);
  g_autoptr (GDateTime) when = g_date_time_new_now_utc ();
  times.layout = (start = processor_ms ()) - then;
  spelch_sheet_save (sheet, file, when, &error);
  fail (error);
  times.writing = processor_ms () - start;
  times.pages = spelch_sheet_pages (sheet);
  return times;
}

/* As many pages of plain lines with Cairo's own text, in the same letters. */
static double
make_bare (const char *path, guint pages)
{
  double start = processor_ms ();
  cairo_surface_t *pdf = cairo_pdf_surface_create (path, 595.276, 841.89);
  cairo_t *cr = cairo_create (pdf);
  cairo_select_font_face (cr, "Inter", CAIRO_FONT_SLANT_NORMAL, CAIRO_FONT_WEIGHT_NORMAL);
  cairo_set_font_size (cr, 8.5);
  for (guint page = 0; page < pages; page++)
    {
      for (int line = 0; line < LINES; line++)
        {
          g_autofree char *text = g_strdup_printf (
              "Page %u, line %d: down-shear presses the face ply in, and this line is plain.", page, line);
          cairo_move_to (cr, 50, 60 + 12 * line);
          cairo_show_text (cr, text);
        }
      cairo_show_page (cr);
    }
  cairo_destroy (cr);
  cairo_surface_finish (pdf);
  cairo_surface_destroy (pdf);
  return processor_ms () - start;
}

static long
size_of (const char *path)
{
  GStatBuf buffer;
  return g_stat (path, &buffer) == 0 ? (long)buffer.st_size : 0;
}

int
main (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("spelch-bench-sheet-XXXXXX", &error);
  fail (error);
  g_autofree char *path = g_build_filename (folder, "sheet.pdf", NULL);
  g_autofree char *plain = g_build_filename (folder, "plain.pdf", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (SpelchPart) part = part_of_twelve ();
  for (int i = 0; i < ROUNDS; i++)
    {
      /* The first round looks fonts up. */
      Times times = make_sheet (part, file);
      double whole = times.work + times.layout + times.writing, bare = make_bare (plain, times.pages);
      g_print ("round %d: %u pages in %.0f ms (bits and plans %.0f, laying out %.0f, writing %.0f), %ld kB; "
               "plain text "
               "%.0f ms, %ld kB; %.1f times as long, %.1f times as large\n",
               i + 1, times.pages, whole, times.work, times.layout, times.writing, size_of (path) / 1000,
               bare, size_of (plain) / 1000, whole / bare, (double)size_of (path) / (double)size_of (plain));
    }
  g_unlink (path);
  g_unlink (plain);
  g_rmdir (folder);
  return 0;
}

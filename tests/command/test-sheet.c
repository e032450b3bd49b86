/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch sheet as a shop gets it: the pages measured as they are printed, their words beside what spelch plan
 * says, fonts, outline, size and time; and what is written where nothing may be cut. poppler-utils reads the
 * PDF.
 */
#include "running.h"

#include <cairo.h>
#include <glib/gstdio.h>
#include <math.h>
#include <stdbool.h>
#include <string.h>

#define DPI    300.0
#define WITHIN 0.2 /* mm */

typedef struct
{
  char *folder, *demo;
} Place;

static void
set_up (Place *place, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;
  place->folder = g_dir_make_tmp ("spelch-sheet-XXXXXX", &error);
  g_assert_no_error (error);
  place->demo = running_demo ();
}

static void
tear_down (Place *place, gconstpointer unused)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  const char *name;
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (place->folder, name, NULL);
      g_unlink (path);
    }
  g_rmdir (place->folder);
  g_free (place->folder);
  g_free (place->demo);
}

static char *
in_folder (const Place *place, const char *name)
{
  return g_build_filename (place->folder, name, NULL);
}

/* What another program prints; NULL ends its words. */
static char *
said_by (const char *first, ...)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  g_autoptr (GError) error = NULL;
  char *out = NULL;
  int status;
  va_list more;
  va_start (more, first);
  for (const char *word = first; word != NULL; word = va_arg (more, const char *))
    g_ptr_array_add (words, (char *)word);
  va_end (more);
  g_ptr_array_add (words, NULL);
  g_spawn_sync (NULL, (char **)words->pdata, NULL, G_SPAWN_SEARCH_PATH | G_SPAWN_STDERR_TO_DEV_NULL, NULL,
                NULL, &out, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_true (g_spawn_check_wait_status (status, NULL));
  return out;
}

static bool
has_poppler (void)
{
  g_autofree char *found = g_find_program_in_path ("pdftotext");
  if (found == NULL)
    g_test_skip ("poppler-utils isn't installed");
  return found != NULL;
}

/* A font may have one space for the other kinds. */
static char *
with_plain_spaces (const char *text)
{
  g_autoptr (GString) plain = g_string_new (text);
  static const char *const kinds[] = { "\u202f", "\u00a0", "\u2009" };
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    g_string_replace (plain, kinds[i], " ", 0);
  return g_strdup (plain->str);
}

static void
assert_in (const char *text, const char *word)
{
  g_autofree char *plain = with_plain_spaces (text), *wanted = with_plain_spaces (word);
  if (strstr (plain, wanted) == NULL)
    g_error ("“%s” isn't in:\n%s", wanted, plain);
}

/* The demo's outline on paper; the exit status must be @status. */
static char *
sheet_of (const Place *place, const char *bit, const char *paper, const char *units, int status)
{
  char *pdf = in_folder (place, "sheet.pdf");
  g_auto (Running) ran = running ("sheet", place->demo, "--cut", "outline", "--bit", bit, "--paper", paper,
                                  "--units", units, "-o", pdf, NULL);
  g_assert_cmpstr (ran.err, ==, "");
  g_assert_cmpint (ran.status, ==, status);
  return pdf;
}

/* ---- Measured ---- */

static cairo_surface_t *
page_image (const Place *place, const char *pdf, const char *page)
{
  g_autofree char *stem = in_folder (place, "page"), *png = in_folder (place, "page.png");
  g_autofree char *unused = said_by ("pdftoppm", "-r", "300", "-gray", "-png", "-singlefile", "-f", page,
                                     "-l", page, pdf, stem, NULL);
  cairo_surface_t *image = cairo_image_surface_create_from_png (png);
  g_assert_cmpint (cairo_surface_status (image), ==, CAIRO_STATUS_SUCCESS);
  return image;
}

/* How dark a dot is, 0 to 255. */
static int
dark (cairo_surface_t *image, int x, int y)
{
  const guint8 *row = cairo_image_surface_get_data (image) + y * cairo_image_surface_get_stride (image);
  if (cairo_image_surface_get_format (image) == CAIRO_FORMAT_A8)
    return 255 - row[x];
  return 255 - (int)(((const guint32 *)(const void *)row)[x] >> 8 & 0xff);
}

/* Where pdftotext has a word: mm from the page's upper left corner. */
static bool
find_word (const char *boxes, const char *word, double *x0, double *y0, double *x1, double *y1)
{
  g_autofree char *end = g_strdup_printf (">%s</word>", word);
  const char *found = strstr (boxes, end);
  if (found == NULL)
    return false;
  const char *begin = g_strrstr_len (boxes, found - boxes, "<word");
  double *const values[] = { x0, y0, x1, y1 };
  static const char *const names[] = { "xMin=\"", "yMin=\"", "xMax=\"", "yMax=\"" };
  for (int i = 0; i < 4; i++)
    *values[i] = g_ascii_strtod (strstr (begin, names[i]) + strlen (names[i]), NULL) * 25.4 / 72;
  return true;
}

/* The longest dark run in a row or column of dots, in mm, and where it begins. */
static double
longest_run (cairo_surface_t *image, bool across, int line, int from, int to, int *begins)
{
  int run = 0, most = 0;
  for (int i = from; i < to; i++)
    {
      run = (across ? dark (image, i, line) : dark (image, line, i)) > 70 ? run + 1 : 0;
      if (run > most)
        {
          most = run;
          *begins = i + 1 - run;
        }
    }
  return most / DPI * 25.4;
}

/* The bar stands over its words; its end strokes add a hair. */
static double
bar_length (cairo_surface_t *image, const char *boxes)
{
  double x0, y0, x1, y1, longest = 0;
  int begins;
  g_assert_true (find_word (boxes, "check", &x0, &y0, &x1, &y1));
  for (int y = (int)((y0 - 3.4) * DPI / 25.4); y < (int)((y0 - 1) * DPI / 25.4); y++)
    longest = fmax (longest, longest_run (image, true, y, (int)((x0 - 40) * DPI / 25.4),
                                          cairo_image_surface_get_width (image), &begins));
  return longest;
}

/* The thickness' dimension line is the rightmost long upright line of the drawing: from face to face. */
static double
dimension_length (cairo_surface_t *image, double left, double right, double bottom)
{
  double longest = 0;
  int begins;
  for (int x = (int)(left * DPI / 25.4); x < (int)(right * DPI / 25.4); x++)
    longest = fmax (
        longest, longest_run (image, false, x, (int)(30 * DPI / 25.4), (int)(bottom * DPI / 25.4), &begins));
  return longest;
}

static void
test_measured (Place *place, gconstpointer paper)
{
  if (!has_poppler ())
    return;
  g_autofree char *pdf = sheet_of (place, "compression-6.35x22", paper, "mm", 0);
  g_autofree char *boxes = said_by ("pdftotext", "-bbox", "-f", "2", "-l", "2", pdf, "-", NULL);
  cairo_surface_t *image = page_image (place, pdf, "2");
  double x0, y0, x1, y1, stroke = 0.18;
  g_assert_cmpfloat_with_epsilon (bar_length (image, boxes), 50 + stroke, WITHIN);
  /* 18 mm at 2 : 1; its words are read from the right and stand against their line. */
  g_autofree char *text = said_by ("pdftotext", "-f", "2", "-l", "2", pdf, "-", NULL);
  assert_in (text, "Scale 2 : 1");
  g_assert_true (find_word (boxes, "18", &x0, &y0, &x1, &y1));
  g_assert_cmpfloat_with_epsilon (dimension_length (image, x1 - 1, x1 + 1.5, y1 + 40), 36 + stroke, WITHIN);
  cairo_surface_destroy (image);
}

static void
test_size (Place *place, gconstpointer unused)
{
  static const struct
  {
    const char *paper, *size;
  } SIZES[] = { { "a4", "595.276 x 841.89 pts (A4)" }, { "letter", "612 x 792 pts (letter)" } };
  if (!has_poppler ())
    return;
  for (guint i = 0; i < G_N_ELEMENTS (SIZES); i++)
    {
      g_autofree char *pdf = sheet_of (place, "compression-6.35x22", SIZES[i].paper, "in", 0);
      g_autofree char *info = said_by ("pdfinfo", pdf, NULL);
      assert_in (info, SIZES[i].size);
      assert_in (info, "Title:           Hall cabinet, left side");
    }
}

/* ---- Words ---- */

/* 23000 as the sheet writes it. */
static char *
grouped (double value)
{
  int whole = (int)round (value);
  return whole >= 1000 ? g_strdup_printf ("%d\u202f%03d", whole / 1000, whole % 1000)
                       : g_strdup_printf ("%d", whole);
}

static char *
millimetres (double value)
{
  g_autofree char *digits = g_strdup_printf ("%.2f", value);
  while (g_str_has_suffix (digits, "0"))
    digits[strlen (digits) - 1] = '\0';
  if (g_str_has_suffix (digits, "."))
    digits[strlen (digits) - 1] = '\0';
  return g_strdup_printf ("%s mm", digits);
}

static void
test_as_planned (Place *place, gconstpointer unused)
{
  if (!has_poppler ())
    return;
  g_autofree char *pdf = sheet_of (place, "compression-6.35x22", "a4", "mm", 0);
  g_autofree char *text = said_by ("pdftotext", "-layout", "-f", "2", "-l", "2", pdf, "-", NULL);
  g_auto (Running) ran
      = running ("plan", place->demo, "--cut", "outline", "--bit", "compression-6.35x22", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *cut = running_cut (parser, ran.out);
  JsonArray *passes = json_object_get_array_member (cut, "passes");
  g_assert_cmpuint (json_array_get_length (passes), ==, 2);
  for (guint i = 0; i < json_array_get_length (passes); i++)
    {
      JsonObject *pass = json_array_get_object_element (passes, i);
      g_autofree char *tip = millimetres (json_object_get_double_member (pass, "tip_mm"));
      g_autofree char *speed = grouped (json_object_get_double_member (pass, "speed_rpm"));
      g_autofree char *feed = grouped (json_object_get_double_member (pass, "feed_mm_min"));
      g_autofree char *plunge = grouped (json_object_get_double_member (pass, "plunge_feed_mm_min"));
      char *lines[] = { g_strdup_printf ("%s rpm", speed), g_strdup_printf ("%s mm/min", feed),
                        g_strdup_printf ("%s mm/min", plunge) };
      assert_in (text, tip);
      for (guint j = 0; j < G_N_ELEMENTS (lines); j++)
        {
          g_autofree char *line = lines[j];
          assert_in (text, line);
        }
    }
}

/* ---- The file ---- */

/* The demo with @n cuts, copies of its own, each with a bit. */
static char *
part_of (const Place *place, guint n)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;
  static const char *const bits[] = { "compression-6.35x22", "down-cut-6.35x25" };
  g_assert_true (g_file_get_contents (place->demo, &text, NULL, &error));
  JsonArray *cuts = json_object_get_array_member (running_object (parser, text), "cuts");
  guint own = json_array_get_length (cuts);
  for (guint i = own; i < n; i++)
    {
      JsonNode *copy = json_node_copy (json_array_get_element (cuts, i % own));
      g_autofree char *written = json_to_string (copy, FALSE);
      json_node_unref (copy);
      json_array_add_element (cuts, json_from_string (written, NULL));
    }
  for (guint i = 0; i < n; i++)
    {
      JsonObject *cut = json_array_get_object_element (cuts, i);
      g_autofree char *id = g_strdup_printf ("cut-%u", i + 1);
      json_object_set_string_member (cut, "id", id);
      if (!g_str_equal (json_object_get_string_member (cut, "kind"), "hole"))
        json_object_set_string_member (cut, "bit", bits[i % 2]);
    }
  g_autofree char *whole = json_to_string (json_parser_get_root (parser), TRUE);
  char *path = in_folder (place, "many.spelch");
  g_assert_true (g_file_set_contents (path, whole, -1, &error));
  return path;
}

static void
test_twelve_cuts (Place *place, gconstpointer unused)
{
  GStatBuf file;
  g_autofree char *part = part_of (place, 12), *pdf = in_folder (place, "many.pdf");
  double before = running_took_s ();
  g_auto (Running) ran = running ("sheet", part, "-o", pdf, NULL);
  double took = running_took_s () - before;
  g_assert_cmpstr (ran.err, ==, "");
  g_assert_cmpint (ran.status, <=, 1);
  g_assert_cmpint (g_stat (pdf, &file), ==, 0);
  g_test_message ("12 cuts: %.2f s, %ld bytes", took, (long)file.st_size);
  g_assert_cmpint (file.st_size, <, 1000000);
#ifndef __SANITIZE_ADDRESS__
  g_assert_cmpfloat (took, <, 1);
#endif
  if (!has_poppler ())
    return;
  g_autofree char *info = said_by ("pdfinfo", pdf, NULL);
  g_autofree char *fonts = said_by ("pdffonts", pdf, NULL);
  g_auto (GStrv) lines = g_strsplit (g_strstrip (fonts), "\n", -1);
  assert_in (info, "Pages:           13");
  g_assert_cmpuint (g_strv_length (lines), >, 2);
  for (guint i = 2; lines[i] != NULL; i++)
    {
      /* name, type, encoding, embedded, subset, unicode, object */
      g_autoptr (GRegex) embedded = g_regex_new (" yes +yes +yes +[0-9]+ +0$", 0, 0, NULL);
      if (!g_regex_match (embedded, lines[i], 0, NULL))
        g_error ("not embedded, or its text can't be selected: %s", lines[i]);
    }
}

/* An order that fills more than a page goes on over another. */
static void
test_many_cuts (Place *place, gconstpointer unused)
{
  g_autofree char *part = part_of (place, 60), *pdf = in_folder (place, "many.pdf");
  g_auto (Running) ran = running ("sheet", part, "-o", pdf, NULL);
  g_assert_cmpint (ran.status, <=, 1);
  if (!has_poppler ())
    return;
  g_autofree char *info = said_by ("pdfinfo", pdf, NULL);
  g_autofree char *second = said_by ("pdftotext", "-layout", "-f", "2", "-l", "2", pdf, "-", NULL);
  g_autofree char *third = said_by ("pdftotext", "-layout", "-f", "3", "-l", "3", pdf, "-", NULL);
  assert_in (info, "Pages:           62");
  assert_in (second, "page 62");
  assert_in (third, "Cut 1 of 60");
}

/* An outline names each page. */
static void
test_outline (Place *place, gconstpointer unused)
{
  gsize length;
  g_autofree char *data = NULL, *pdf = sheet_of (place, "compression-6.35x22", "a4", "mm", 0);
  g_assert_true (g_file_get_contents (pdf, &data, &length, NULL));
  g_autoptr (GString) readable = g_string_new_len (data, (gssize)length);
  for (gsize i = 0; i < readable->len; i++)
    if (readable->str[i] == '\0')
      readable->str[i] = ' ';
  assert_in (readable->str, "/Type /Outlines");
  assert_in (readable->str, "/Title (Hall cabinet, left side)");
  assert_in (readable->str, "/Title (Outline)");
}

static void
test_pictures (Place *place, gconstpointer unused)
{
  static const char *const KINDS[] = { "svg", "png" };
  for (guint i = 0; i < G_N_ELEMENTS (KINDS); i++)
    {
      g_autofree char *name = g_strdup_printf ("p.%s", KINDS[i]), *path = in_folder (place, name);
      g_auto (Running) ran = running ("sheet", place->demo, "--cut", "outline", "-o", path, NULL);
      g_assert_cmpint (ran.status, ==, 0);
      g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
      for (int page = 1; page <= 3; page++)
        {
          g_autofree char *one = g_strdup_printf ("p-%d.%s", page, KINDS[i]), *at = in_folder (place, one);
          g_assert_true (g_file_test (at, G_FILE_TEST_EXISTS) == (page <= 2));
        }
    }
  g_autofree char *png = in_folder (place, "p-2.png");
  cairo_surface_t *image = cairo_image_surface_create_from_png (png);
  g_assert_cmpint (cairo_image_surface_get_width (image), ==, 1240); /* 210 mm at 150 dots to the inch */
  cairo_surface_destroy (image);
}

/* Twice the same bytes when the date is told. */
static void
test_same_again (Place *place, gconstpointer unused)
{
  g_autofree char *first = NULL, *second = NULL;
  gsize lengths[2];
  g_setenv ("SOURCE_DATE_EPOCH", "1780185600", TRUE);
  for (int i = 0; i < 2; i++)
    {
      g_autofree char *pdf = sheet_of (place, "compression-6.35x22", "a4", "mm", 0);
      g_assert_true (g_file_get_contents (pdf, i == 0 ? &first : &second, &lengths[i], NULL));
    }
  g_unsetenv ("SOURCE_DATE_EPOCH");
  g_assert_cmpuint (lengths[0], ==, lengths[1]);
  g_assert_true (memcmp (first, second, lengths[0]) == 0);
}

/* ---- Without ---- */

/* No display, no message bus, no home: nothing is in the environment but what a sanitizer is told. */
static void
test_bare (Place *place, gconstpointer unused)
{
  static const char *const TOLD[] = { "ASAN_OPTIONS", "LSAN_OPTIONS", "UBSAN_OPTIONS" };
  g_autofree char *pdf = in_folder (place, "bare.pdf");
  const char *words[] = { g_getenv ("SPELCH_PROGRAM"), "sheet", place->demo, "-o", pdf, NULL };
  g_auto (GStrv) nothing = g_new0 (char *, 1);
  for (guint i = 0; i < G_N_ELEMENTS (TOLD); i++)
    if (g_getenv (TOLD[i]) != NULL)
      nothing = g_environ_setenv (nothing, TOLD[i], g_getenv (TOLD[i]), TRUE);
  g_autofree char *err = NULL;
  int status;
  g_assert_true (
      g_spawn_sync (NULL, (char **)words, nothing, G_SPAWN_DEFAULT, NULL, NULL, NULL, &err, &status, NULL));
  g_assert_cmpstr (err, ==, "");
  g_assert_true (g_spawn_check_wait_status (status, NULL));
  g_assert_true (g_file_test (pdf, G_FILE_TEST_EXISTS));
}

static void
test_do_not_cut (Place *place, gconstpointer unused)
{
  if (!has_poppler ())
    return;
  /* The bit is 17 mm long and the board 18 mm thick. */
  g_autofree char *pdf = sheet_of (place, "up-cut-5x17", "a4", "mm", 1);
  g_autofree char *text = said_by ("pdftotext", "-f", "2", "-l", "2", pdf, "-", NULL);
  g_autofree char *cover = said_by ("pdftotext", "-f", "1", "-l", "1", pdf, "-", NULL);
  /* What stands across the page isn't in line with the rest, so it is read in pieces. */
  assert_in (text, "Do not cut");
  assert_in (text, "Take a longer bit");
  assert_in (cover, "DO NOT CUT");
  g_assert_null (strstr (text, "mm/min"));
  g_assert_null (strstr (text, "rpm"));
  g_assert_null (strstr (text, "Feed"));
}

static void
test_refused (Place *place, gconstpointer unused)
{
  g_autofree char *pdf = in_folder (place, "no-such-folder/x.pdf"), *odd = in_folder (place, "x.odt");
  g_auto (Running) nowhere = running ("sheet", place->demo, "-o", pdf, NULL);
  g_auto (Running) unknown = running ("sheet", place->demo, "-o", odd, NULL);
  g_auto (Running) paper = running ("sheet", place->demo, "--paper", "a3", NULL);
  g_auto (Running) cut = running ("sheet", place->demo, "--cut", "no-such-cut", NULL);
  g_assert_cmpint (nowhere.status, ==, 3);
  g_assert_cmpint (unknown.status, ==, 2);
  g_assert_cmpint (paper.status, ==, 2);
  g_assert_cmpint (cut.status, ==, 2);
  assert_in (paper.err, "a4 or letter");
  assert_in (unknown.err, ".pdf");
}

/* A bit that wasn't accepted comes from the drawer that was told, and is asked about. */
static void
test_recommended (Place *place, gconstpointer unused)
{
  if (!has_poppler ())
    return;
  g_autofree char *pdf = in_folder (place, "dado.pdf");
  g_auto (Running) ran = running ("sheet", place->demo, "--cut", "shelf-dado", "-o", pdf, NULL);
  g_auto (Running) ranked = running ("rank", place->demo, "--cut", "shelf-dado", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *choices = json_object_get_array_member (running_cut (parser, ranked.out), "choices");
  const char *best = json_object_get_string_member (json_array_get_object_element (choices, 0), "bit");
  g_auto (Running) planned = running ("plan", place->demo, "--cut", "shelf-dado", "--bit", best, NULL);
  g_auto (GStrv) lines = g_strsplit (planned.out, "\n", 6);
  g_autofree char *text = said_by ("pdftotext", "-layout", "-f", "2", "-l", "2", pdf, "-", NULL);
  g_assert_cmpint (ran.status, ==, 0);
  assert_in (text, "recommended, not yet");
  assert_in (text, g_strstrip (lines[4])); /* its name */
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, data, test) g_test_add ("/sheet-command/" name, Place, data, set_up, test, tear_down)
  ADD ("measured-a4", "a4", test_measured);
  ADD ("measured-letter", "letter", test_measured);
  ADD ("size", NULL, test_size);
  ADD ("as-planned", NULL, test_as_planned);
  ADD ("twelve-cuts", NULL, test_twelve_cuts);
  ADD ("many-cuts", NULL, test_many_cuts);
  ADD ("outline", NULL, test_outline);
  ADD ("pictures", NULL, test_pictures);
  ADD ("same-again", NULL, test_same_again);
  ADD ("bare", NULL, test_bare);
  ADD ("do-not-cut", NULL, test_do_not_cut);
  ADD ("refused", NULL, test_refused);
  ADD ("recommended", NULL, test_recommended);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pictures written by the ending of the file's name, and a failed one that leaves the old one alone.
 */
#include "drawing/picture-file.h"
#include "files/part-file.h"

#include <glib/gstdio.h>
#include <string.h>

#define WIDTH  120
#define HEIGHT 80

static void
draw (cairo_t *cr, gconstpointer data)
{
  const double *grey = data;
  cairo_set_source_rgb (cr, *grey, *grey, *grey);
  cairo_paint (cr);
  cairo_set_source_rgb (cr, 1, 0, 0);
  cairo_rectangle (cr, 10, 20, 30, 40);
  cairo_fill (cr);
}

static char *
folder_new (void)
{
  return g_dir_make_tmp ("spelch-picture-XXXXXX", NULL);
}

static GFile *
save (const char *folder, const char *name, double grey, GError **error)
{
  GFile *file = g_file_new_build_filename (folder, name, NULL);
  bool saved = spelch_picture_file_save (file, WIDTH, HEIGHT, draw, &grey, error);
  g_assert_cmpint (saved, ==, error == NULL || *error == NULL);
  return file;
}

static void
remove_folder (const char *folder, const char *const *names)
{
  for (guint i = 0; names[i] != NULL; i++)
    {
      g_autofree char *path = g_build_filename (folder, names[i], NULL);
      g_unlink (path);
    }
  g_assert_cmpint (g_rmdir (folder), ==, 0); /* nothing else was left in it */
}

static void
test_kinds (void)
{
  static const struct
  {
    const char *name, *start;
  } KINDS[] = { { "a.pdf", "%PDF" }, { "a.SVG", "<?xml" }, { "a.b.png", "\x89PNG" } };
  g_autofree char *folder = folder_new ();
  for (guint i = 0; i < G_N_ELEMENTS (KINDS); i++)
    {
      g_autofree char *content = NULL;
      gsize length = 0;
      g_assert_true (spelch_picture_file_knows (KINDS[i].name));
      g_autoptr (GFile) file = save (folder, KINDS[i].name, 1, NULL);
      g_assert_true (g_file_load_contents (file, NULL, &content, &length, NULL, NULL));
      g_assert_cmpuint (length, >, strlen (KINDS[i].start));
      g_assert_true (g_str_has_prefix (content, KINDS[i].start));
    }
  g_assert_false (spelch_picture_file_knows ("a.jpg"));
  g_assert_false (spelch_picture_file_knows ("pdf"));
  g_assert_false (spelch_picture_file_knows (""));
  remove_folder (folder, (const char *const[]){ "a.pdf", "a.SVG", "a.b.png", NULL });
}

/* What was drawn, at the size asked for. */
static void
test_pixels (void)
{
  g_autofree char *folder = folder_new ();
  g_autoptr (GFile) file = save (folder, "a.png", 0.5, NULL);
  cairo_surface_t *image = cairo_image_surface_create_from_png (g_file_peek_path (file));
  g_assert_cmpint (cairo_image_surface_get_width (image), ==, WIDTH);
  g_assert_cmpint (cairo_image_surface_get_height (image), ==, HEIGHT);
  const guint32 *row = (const guint32 *)(const void *)(cairo_image_surface_get_data (image)
                                                       + 30 * cairo_image_surface_get_stride (image));
  g_assert_cmphex (row[20] & 0xffffff, ==, 0xff0000);
  g_assert_cmphex (row[5] & 0xff, >=, 0x7f);
  g_assert_cmphex (row[5] & 0xff, <=, 0x80);
  cairo_surface_destroy (image);
  remove_folder (folder, (const char *const[]){ "a.png", NULL });
}

static void
test_failing (void)
{
  g_autofree char *folder = folder_new ();
  g_autofree char *gone = g_build_filename (folder, "gone", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GFile) nowhere = save (gone, "a.pdf", 1, &error);
  g_assert_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_WRITE);
  g_assert_cmpstr (error->message, ==,
                   "a.pdf can't be saved: there is no such folder. The file on disk is as it was; save under "
                   "another name or elsewhere.");
  g_assert_false (g_file_query_exists (nowhere, NULL));
  g_clear_error (&error);
  g_autofree char *taken = g_build_filename (folder, "folder.pdf", NULL);
  g_assert_cmpint (g_mkdir (taken, 0700), ==, 0);
  g_autoptr (GFile) over = save (folder, "folder.pdf", 1, &error);
  g_assert_error (error, SPELCH_FILE_ERROR, SPELCH_FILE_ERROR_WRITE);
  g_assert_true (g_file_test (taken, G_FILE_TEST_IS_DIR));
  g_assert_cmpint (g_rmdir (taken), ==, 0);
  remove_folder (folder, (const char *const[]){ NULL });
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/picture-file/kinds", test_kinds);
  g_test_add_func ("/picture-file/pixels", test_pixels);
  g_test_add_func ("/picture-file/failing", test_failing);
  return g_test_run ();
}

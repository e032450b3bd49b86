/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Saving: nothing is ever lost by it. Links are followed, modes kept, changes by others noticed, and when the
 * disk is full or closed to us the old file is as it was.
 */
#include "files/file-io.h"
#include "files/part-file.h"
#include "files/shop-data.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/mount.h>
#include <sys/stat.h>
#include <unistd.h>

#define OLD "{\"old\": true}\n"

typedef struct
{
  char *folder;
  char *path;
  GFile *file;
  SpelchPart *part;
} Desk;

static void
desk_set_up (Desk *desk, gconstpointer data)
{
  desk->folder = g_dir_make_tmp ("spelch-saving-XXXXXX", NULL);
  desk->path = g_build_filename (desk->folder, "hall.spelch", NULL);
  desk->file = g_file_new_for_path (desk->path);
  desk->part = spelch_shop_demo ();
}

static void
empty_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  for (const char *name = dir == NULL ? NULL : g_dir_read_name (dir); name != NULL;
       name = g_dir_read_name (dir))
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      if (g_remove (path) != 0)
        g_test_message ("%s stays", path);
    }
}

static void
desk_tear_down (Desk *desk, gconstpointer data)
{
  empty_folder (desk->folder);
  g_rmdir (desk->folder);
  g_free (desk->folder);
  g_free (desk->path);
  g_object_unref (desk->file);
  spelch_part_unref (desk->part);
}

static void
put (const char *path, const char *text)
{
  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

static void
holds (const char *path, const char *text)
{
  g_autofree char *contents = NULL;
  g_assert_true (g_file_get_contents (path, &contents, NULL, NULL));
  g_assert_cmpstr (contents, ==, text);
}

static void
holds_part (const char *path, const SpelchPart *part)
{
  g_autofree char *text = spelch_part_to_json (part);
  holds (path, text);
}

static guint
files_in (const char *folder)
{
  guint n = 0;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
save (Desk *desk)
{
  g_autoptr (GError) error = NULL;
  bool saved = spelch_part_save (desk->part, desk->file, NULL, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (saved);
}

static void
cannot_save (Desk *desk, const char *etag, int code)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *new_etag = NULL;
  g_assert_false (spelch_part_save (desk->part, desk->file, etag, &new_etag, &error));
  g_assert_error (error, SPELCH_FILE_ERROR, code);
  g_assert_nonnull (strstr (error->message, "hall.spelch"));
  g_assert_null (new_etag);
  g_test_message ("%s", error->message);
}

/* ---- What always works ---- */

static void
test_new (Desk *desk, gconstpointer data)
{
  save (desk);
  holds_part (desk->path, desk->part);
  g_assert_cmpuint (files_in (desk->folder), ==, 1);
}

static void
test_over_old (Desk *desk, gconstpointer data)
{
  put (desk->path, OLD);
  save (desk);
  holds_part (desk->path, desk->part);
  g_assert_cmpuint (files_in (desk->folder), ==, 1);
}

/* A reader that opened the old file still has it whole: the new one is another file, moved into place. */
static void
test_moved_into_place (Desk *desk, gconstpointer data)
{
  struct stat before, after;
  put (desk->path, OLD);
  g_assert_cmpint (stat (desk->path, &before), ==, 0);
  g_autoptr (GError) error = NULL;
  g_autoptr (GFileInputStream) reader = g_file_read (desk->file, NULL, &error);
  g_assert_no_error (error);
  save (desk);
  g_assert_cmpint (stat (desk->path, &after), ==, 0);
  g_assert_true (before.st_ino != after.st_ino);
  char text[64] = "";
  g_assert_cmpint (g_input_stream_read (G_INPUT_STREAM (reader), text, sizeof text - 1, NULL, NULL), ==,
                   strlen (OLD));
  g_assert_cmpstr (text, ==, OLD);
}

static void
test_mode (Desk *desk, gconstpointer data)
{
  static const mode_t modes[] = { 0600, 0640, 0664 };
  for (guint i = 0; i < G_N_ELEMENTS (modes); i++)
    {
      struct stat is;
      put (desk->path, OLD);
      g_assert_cmpint (g_chmod (desk->path, (int)modes[i]), ==, 0);
      save (desk);
      g_assert_cmpint (stat (desk->path, &is), ==, 0);
      g_assert_cmpuint (is.st_mode & 07777, ==, modes[i]);
    }
}

static void
test_link (Desk *desk, gconstpointer data)
{
  g_autofree char *target = g_build_filename (desk->folder, "real.spelch", NULL);
  struct stat before, after;
  put (target, OLD);
  g_assert_cmpint (g_chmod (target, 0600), ==, 0);
  g_assert_cmpint (symlink ("real.spelch", desk->path), ==, 0);
  g_assert_cmpint (stat (target, &before), ==, 0);
  save (desk);
  g_assert_true (g_file_test (desk->path, G_FILE_TEST_IS_SYMLINK));
  holds_part (target, desk->part);
  g_assert_cmpint (stat (target, &after), ==, 0);
  g_assert_cmpuint (after.st_mode & 07777, ==, 0600);
  g_assert_true (before.st_ino != after.st_ino); /* moved into place here too */
  g_assert_cmpuint (files_in (desk->folder), ==, 2);
}

static void
test_link_to_nothing (Desk *desk, gconstpointer data)
{
  g_assert_cmpint (symlink ("gone.spelch", desk->path), ==, 0);
  cannot_save (desk, NULL, SPELCH_FILE_ERROR_WRITE);
  g_assert_true (g_file_test (desk->path, G_FILE_TEST_IS_SYMLINK));
}

/* Its other name keeps the old text: nothing is lost. */
static void
test_two_names (Desk *desk, gconstpointer data)
{
  g_autofree char *other = g_build_filename (desk->folder, "other.spelch", NULL);
  put (desk->path, OLD);
  g_assert_cmpint (link (desk->path, other), ==, 0);
  save (desk);
  holds_part (desk->path, desk->part);
  holds (other, OLD);
  g_assert_cmpuint (files_in (desk->folder), ==, 2);
}

/* ---- Changes by others ---- */

static void
test_changed (Desk *desk, gconstpointer data)
{
  g_autofree char *etag = NULL, *second = NULL;
  g_autoptr (GError) error = NULL;
  save (desk);
  g_autoptr (SpelchPart) part = spelch_part_load (desk->file, &etag, &error);
  g_assert_no_error (error);
  g_assert_nonnull (etag);

  /* Saved with the tag it was read with, it gets a new one, which serves for the next time. */
  g_assert_true (spelch_part_save (part, desk->file, etag, &second, &error));
  g_assert_nonnull (second);
  g_free (etag);
  etag = NULL;
  g_assert_true (spelch_part_save (part, desk->file, second, &etag, &error));

  g_usleep (20000);
  put (desk->path, OLD);
  cannot_save (desk, etag, SPELCH_FILE_ERROR_CHANGED);
  holds (desk->path, OLD);
}

/* ---- Closed folders and full disks ---- */

static void
test_read_only_folder (Desk *desk, gconstpointer data)
{
  if (geteuid () == 0)
    {
      g_test_skip ("root may write everywhere; see /saving/read-only-mount");
      return;
    }
  put (desk->path, OLD);
  g_assert_cmpint (g_chmod (desk->folder, 0500), ==, 0);
  cannot_save (desk, NULL, SPELCH_FILE_ERROR_WRITE);
  holds (desk->path, OLD);
  g_assert_cmpint (g_chmod (desk->folder, 0700), ==, 0);
}

static bool
mount_small (const char *folder, const char *options)
{
  if (mount ("tmpfs", folder, "tmpfs", 0, options) == 0)
    return true;
  g_autofree char *reason = g_strdup_printf ("nothing can be mounted here: %s", g_strerror (errno));
  g_test_skip (reason);
  return false;
}

static void
test_read_only_mount (Desk *desk, gconstpointer data)
{
  if (!mount_small (desk->folder, "size=256k"))
    return;
  put (desk->path, OLD);
  g_assert_cmpint (mount (NULL, desk->folder, NULL, MS_REMOUNT | MS_RDONLY, NULL), ==, 0);
  cannot_save (desk, NULL, SPELCH_FILE_ERROR_WRITE);
  holds (desk->path, OLD);
  g_assert_cmpint (umount (desk->folder), ==, 0);
}

/* Fills what is left of the disk. */
static void
fill_disk (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "filling", NULL);
  FILE *filling = g_fopen (path, "w");
  setvbuf (filling, NULL, _IONBF, 0);
  while (fputc ('x', filling) != EOF)
    ;
  fclose (filling);
}

/* @room: bytes left. With none, no new file can be begun; with one page, it can be begun and not ended. */
static void
full_disk (Desk *desk, gsize room)
{
  if (!mount_small (desk->folder, "size=16k"))
    return;
  g_autofree char *spare = g_build_filename (desk->folder, "spare", NULL);
  g_autofree char *page = g_strnfill (room, ' ');
  put (desk->path, OLD);
  put (spare, page);
  fill_disk (desk->folder);
  g_remove (spare);
  cannot_save (desk, NULL, SPELCH_FILE_ERROR_WRITE);
  holds (desk->path, OLD);
  g_assert_cmpuint (files_in (desk->folder), ==, 2);
  g_assert_cmpint (umount (desk->folder), ==, 0);
}

static void
test_full_disk (Desk *desk, gconstpointer data)
{
  full_disk (desk, 0);
}

static void
test_full_disk_begun (Desk *desk, gconstpointer data)
{
  g_autofree char *text = spelch_part_to_json (desk->part);
  g_assert_cmpuint (strlen (text), >, 4096);
  full_disk (desk, 4096);
}

static void
test_no_folder (Desk *desk, gconstpointer data)
{
  g_object_unref (desk->file);
  g_autofree char *path = g_build_filename (desk->folder, "gone", "hall.spelch", NULL);
  desk->file = g_file_new_for_path (path);
  cannot_save (desk, NULL, SPELCH_FILE_ERROR_WRITE);
}

static void
add (const char *name, void (*test) (Desk *desk, gconstpointer data))
{
  g_autofree char *path = g_strconcat ("/saving/", name, NULL);
  g_test_add (path, Desk, NULL, desk_set_up, test, desk_tear_down);
}

/* A name that was given to a thing, as the name of a file. */
static void
test_stem (void)
{
  static const struct
  {
    const char *name, *stem;
  } cases[] = { { "Flurschrank, linke Seite", "Flurschrank, linke Seite" },
                { " Door 3/4: left? ", "Door 3-4- left-" },
                { "", "part" },
                { "  ", "part" },
                { ".hidden", "part" } };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *stem = spelch_file_stem (cases[i].name, "part");
      g_assert_cmpstr (stem, ==, cases[i].stem);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/saving/stem", test_stem);
  add ("new", test_new);
  add ("over-old", test_over_old);
  add ("moved-into-place", test_moved_into_place);
  add ("mode", test_mode);
  add ("link", test_link);
  add ("link-to-nothing", test_link_to_nothing);
  add ("two-names", test_two_names);
  add ("changed", test_changed);
  add ("read-only-folder", test_read_only_folder);
  add ("read-only-mount", test_read_only_mount);
  add ("full-disk", test_full_disk);
  add ("full-disk-begun", test_full_disk_begun);
  add ("no-folder", test_no_folder);
  return g_test_run ();
}

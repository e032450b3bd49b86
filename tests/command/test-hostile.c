/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Files that mean harm, or are no files of ours: too big or nested too deep they are refused at once; links,
 * devices, pipes and loops are followed or left alone as a person expects; and nothing is ever written but
 * the file that was named.
 */
#include "files/part-file.h"
#include "running.h"

#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/sysmacros.h>
#include <unistd.h>

#define HUGE_BYTES (200 << 20)
#ifdef __SANITIZE_ADDRESS__
#define AT_ONCE 3.0 /* s, of which the sanitizer's own start is much */
#else
#define AT_ONCE 1.0
#endif

typedef struct
{
  char *folder; /* all there is to write in */
  char *home;   /* the person's own folders in it */
} Desk;

static char *
in (const Desk *desk, const char *name)
{
  return g_build_filename (desk->folder, name, NULL);
}

static void
remove_folder (const char *path)
{
  bool is_folder = g_file_test (path, G_FILE_TEST_IS_DIR) && !g_file_test (path, G_FILE_TEST_IS_SYMLINK);
  g_autoptr (GDir) folder = is_folder ? g_dir_open (path, 0, NULL) : NULL;
  const char *name;
  while (folder != NULL && (name = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *inside = g_build_filename (path, name, NULL);
      remove_folder (inside);
    }
  g_remove (path);
}

static void
desk_set_up (Desk *desk, gconstpointer data)
{
  desk->folder = g_dir_make_tmp ("spelch-hostile-XXXXXX", NULL);
  desk->home = in (desk, "home");
  g_assert_cmpint (g_mkdir (desk->home, 0700), ==, 0);
  const char *const own[]
      = { "HOME", "XDG_CONFIG_HOME", "XDG_DATA_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME", "TMPDIR" };
  for (guint i = 0; i < G_N_ELEMENTS (own); i++)
    g_setenv (own[i], desk->home, TRUE);
  g_autofree char *demo = running_demo ();
  g_autofree char *part = in (desk, "part.spelch");
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (demo, &text, NULL, NULL));
  g_assert_true (g_file_set_contents (part, text, -1, NULL));
}

static void
desk_tear_down (Desk *desk, gconstpointer data)
{
  remove_folder (desk->folder);
  g_free (desk->folder);
  g_free (desk->home);
}

/* ---- What is read ---- */

/* Every way of naming @path for reading ends at once, in a sentence that names it. */
static void
refused_everywhere (const Desk *desk, const char *path)
{
  g_autofree char *part = in (desk, "part.spelch"), *name = g_path_get_basename (path);
  const char *const ways[][8] = {
    { "plan", path },
    { "rank", path },
    { "draw", path, "--cut", "outline", "-o", "side.svg" },
    { "sheet", path, "-o", "sheet.pdf" },
    { "check", path },
    { "rank", part, "--drawer", path },
    { "plan", part, "--log", path },
    { "practice", "--list", path },
    { "practice", "--regrade", path },
    { "practice", "--progress", "--log", path },
  };
  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      double before = running_took_s ();
      g_auto (Running) ran = running_words (ways[i]);
      double took = running_took_s () - before;
      g_test_message ("%s: %.3f s: %s", ways[i][0], took, ran.err);
      g_assert_cmpint (ran.status, ==, 2);
      /* A text with other words than a table's is told of as that, by its lines. */
      g_assert_nonnull (strstr (ran.err, g_str_equal (ways[i][1], "--regrade") ? "spelch: " : name));
      g_assert_cmpfloat (took, <, AT_ONCE);
    }
}

static void
test_huge (Desk *desk, gconstpointer data)
{
  g_autofree char *path = in (desk, "huge.spelch");
  g_assert_true (g_file_set_contents (path, "{", 1, NULL));
  g_assert_cmpint (truncate (path, HUGE_BYTES), ==, 0);
  refused_everywhere (desk, path);
}

static void
test_deep (Desk *desk, gconstpointer data)
{
  const char *const opened[] = { "[", "{\"a\":" };
  for (guint i = 0; i < G_N_ELEMENTS (opened); i++)
    {
      g_autofree char *path = in (desk, "deep.spelch");
      g_autoptr (GString) text = g_string_new ("{\"id\":");
      while (text->len + 8 < SPELCH_FILE_MOST)
        g_string_append (text, opened[i]);
      g_assert_true (g_file_set_contents (path, text->str, (gssize)text->len, NULL));
      refused_everywhere (desk, path);
    }
}

static void
test_no_plain_file (Desk *desk, gconstpointer data)
{
  g_autofree char *pipe = in (desk, "pipe.spelch"), *loop = in (desk, "loop.spelch"),
                  *gone = in (desk, "gone.spelch"), *zero = in (desk, "zero.spelch");
  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  g_assert_cmpint (symlink ("loop.spelch", loop), ==, 0);
  g_assert_cmpint (symlink ("not-there", gone), ==, 0);
  g_assert_cmpint (symlink ("/dev/zero", zero), ==, 0);
  refused_everywhere (desk, pipe);
  refused_everywhere (desk, loop);
  refused_everywhere (desk, zero);
  g_auto (Running) ran = running ("plan", gone, NULL);
  g_assert_cmpint (ran.status, ==, 2);
  g_assert_nonnull (strstr (ran.err, "gone.spelch"));
}

/* ---- What is written ---- */

typedef struct
{
  const char *name; /* of the file to write */
  const char *words[10];
} Writing;

/* Every command that writes, up to the file's name. */
static const Writing WRITINGS[] = {
  { "side.svg", { "draw", "part.spelch", "--cut", "outline", "-o" } },
  { "side.png", { "draw", "part.spelch", "--cut", "outline", "-o" } },
  { "side.pdf", { "draw", "part.spelch", "--cut", "outline", "-o" } },
  { "poster.svg", { "draw", "part.spelch", "--cut", "outline", "--poster", "-o" } },
  { "both.svg",
    { "compare", "part.spelch", "--cut", "outline", "--bits", "up-cut-6.35x25,down-cut-6.35x25", "-o" } },
  { "sheet.pdf", { "sheet", "part.spelch", "-o" } },
  { "questions.pdf", { "practice", "--seed", "3", "--only", "first-pass-plywood", "--sheet" } },
  { "answers.csv", { "practice", "--progress", "-o" } },
};

static Running
write_to (const Desk *desk, const Writing *writing, const char *path)
{
  const char *words[G_N_ELEMENTS (writing->words) + 2] = { NULL };
  g_autofree char *part = in (desk, "part.spelch");
  guint n = 0;
  for (; writing->words[n] != NULL; n++)
    words[n] = g_str_equal (writing->words[n], "part.spelch") ? part : writing->words[n];
  words[n] = path;
  return running_words (words);
}

static void
list_into (GString *list, const char *path)
{
  struct stat is;
  g_assert_cmpint (lstat (path, &is), ==, 0);
  g_string_append_printf (list, "%s %o %lld %lld.%09ld\n", path, is.st_mode, (long long)is.st_size,
                          (long long)is.st_mtim.tv_sec, is.st_mtim.tv_nsec);
  g_autoptr (GDir) folder = S_ISDIR (is.st_mode) ? g_dir_open (path, 0, NULL) : NULL;
  const char *name;
  while (folder != NULL && (name = g_dir_read_name (folder)) != NULL)
    {
      g_autofree char *inside = g_build_filename (path, name, NULL);
      list_into (list, inside);
    }
}

/* All files there are but @left_out and the folder it lies in, with their times. */
static char *
list_without (const Desk *desk, const char *left_out)
{
  g_autoptr (GString) list = g_string_new (NULL);
  list_into (list, desk->folder);
  g_auto (GStrv) lines = g_strsplit (list->str, "\n", -1);
  g_autoptr (GString) kept = g_string_new (NULL);
  g_autofree char *folder = g_path_get_dirname (left_out);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_autofree char *path = g_strndup (lines[i], strcspn (lines[i], " "));
      if (!g_str_equal (path, left_out) && !g_str_equal (path, folder))
        g_string_append_printf (kept, "%s\n", lines[i]);
    }
  return g_strdup (kept->str);
}

/* Only the file that was named; the part, the folder beside and the person's own folders stay. */
static void
test_only_the_named (Desk *desk, gconstpointer data)
{
  g_autofree char *out = in (desk, "out");
  g_assert_cmpint (g_mkdir (out, 0700), ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (WRITINGS); i++)
    {
      g_autofree char *path = g_build_filename (out, WRITINGS[i].name, NULL);
      g_autofree char *before = list_without (desk, path);
      g_auto (Running) ran = write_to (desk, &WRITINGS[i], path);
      g_test_message ("%s: %s", WRITINGS[i].name, ran.err);
      g_assert_cmpint (ran.status, <=, 1);
      g_autofree char *after = list_without (desk, path);
      g_assert_cmpstr (before, ==, after);
      g_assert_true (g_file_test (path, G_FILE_TEST_IS_REGULAR));
    }
}

/* Without a file to write, none at all. */
static void
test_nothing (Desk *desk, gconstpointer data)
{
  g_autofree char *part = in (desk, "part.spelch");
  const char *const ways[][8] = {
    { "plan", part },         { "plan", part, "--json" },
    { "rank", part },         { "check", part },
    { "practice", "--list" }, { "practice", "--show", "first-pass-plywood", "--seed", "3" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (ways); i++)
    {
      g_autofree char *before = list_without (desk, "/");
      g_auto (Running) ran = running_words (ways[i]);
      g_assert_cmpint (ran.status, <=, 1);
      g_autofree char *after = list_without (desk, "/");
      g_assert_cmpstr (before, ==, after);
    }
}

static void
test_links (Desk *desk, gconstpointer data)
{
  for (guint i = 0; i < G_N_ELEMENTS (WRITINGS); i++)
    {
      const Writing *writing = &WRITINGS[i];
      g_autofree char *target = g_strconcat (desk->home, "/real-", writing->name, NULL),
                      *path = in (desk, writing->name);
      g_assert_true (g_file_set_contents (target, "old", -1, NULL));
      g_assert_cmpint (symlink (target, path), ==, 0);
      g_auto (Running) ran = write_to (desk, writing, path);
      g_test_message ("%s: %s", writing->name, ran.err);
      g_assert_cmpint (ran.status, <=, 1);
      g_assert_true (g_file_test (path, G_FILE_TEST_IS_SYMLINK));
      g_autofree char *text = NULL;
      g_assert_true (g_file_get_contents (target, &text, NULL, NULL));
      g_assert_cmpstr (text, !=, "old");
    }
}

/* A link to nothing or to itself, a pipe, a link to a device: refused in a sentence, and as they were. */
static void
test_no_file_to_write (Desk *desk, gconstpointer data)
{
  struct stat before, after, device;
  g_assert_cmpint (stat ("/dev/null", &device), ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (WRITINGS); i++)
    for (int kind = 0; kind < 5; kind++)
      {
        const Writing *writing = &WRITINGS[i];
        const char *const links[] = { "not-there", writing->name, "/dev/null" };
        g_autofree char *path = in (desk, writing->name);
        g_assert_cmpint (kind < 3    ? symlink (links[kind], path)
                         : kind == 3 ? mkfifo (path, 0600)
                                     : g_mkdir (path, 0700),
                         ==, 0);
        g_assert_cmpint (lstat (path, &before), ==, 0);
        g_auto (Running) ran = write_to (desk, writing, path);
        g_test_message ("%s, %d: %s", writing->name, kind, ran.err);
        g_assert_cmpint (ran.status, ==, 3);
        g_assert_nonnull (strstr (ran.err, writing->name));
        g_assert_cmpint (lstat (path, &after), ==, 0);
        g_assert_true (before.st_ino == after.st_ino && before.st_mode == after.st_mode);
        g_remove (path);
      }
  g_assert_cmpint (stat ("/dev/null", &after), ==, 0);
  g_assert_true (S_ISCHR (after.st_mode) && after.st_rdev == device.st_rdev);
}

static void
add (const char *name, void (*test) (Desk *desk, gconstpointer data))
{
  g_autofree char *path = g_strconcat ("/hostile/", name, NULL);
  g_test_add (path, Desk, NULL, desk_set_up, test, desk_tear_down);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add ("huge", test_huge);
  add ("deep", test_deep);
  add ("no-plain-file", test_no_plain_file);
  add ("only-the-named", test_only_the_named);
  add ("nothing", test_nothing);
  add ("links", test_links);
  add ("no-file-to-write", test_no_file_to_write);
  return g_test_run ();
}

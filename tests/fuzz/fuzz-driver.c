/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * fuzz-TARGET SECONDS SEED [--dict FILE] [--from N] [--keep FILE] SEED-FILE|FOLDER...: tries a fuzzer's
 * target without clang. Every seed file as it is, then changed ones for so long: try N of a SEED is always
 * the same, so what fails once is tried again by --from N. What was tried when the program ended by a signal
 * is written to the file --keep names, fuzz-failed when left out. Prints TAP.
 */
#include <glib.h>
#include <glib/gstdio.h>
#include <signal.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#define MOST_BYTES  65536 /* of what is tried */
#define MOST_SEED   16384 /* of a file that is changed: a larger one would be read too seldom */
#define MOST_CHANGE 8     /* changes made at once */

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

/* What is being tried: a signal's handler is given nothing else to find it by. */
static struct
{
  const char *keep;
  const guint8 *data;
  gsize size;
  guint64 number;
} trying;

static void
fail (int number)
{
  FILE *file = fopen (trying.keep, "wb");
  if (file != NULL)
    {
      fwrite (trying.data, 1, trying.size, file);
      fclose (file);
    }
  fprintf (stderr, "signal %d at try %" G_GUINT64_FORMAT ", kept as %s\n", number, trying.number,
           trying.keep);
  signal (number, SIG_DFL);
  raise (number);
}

typedef struct
{
  GPtrArray *seeds; /* GBytes */
  GPtrArray *words; /* of the dictionary: GBytes */
} Corpus;

/* ---- Seeds ---- */

static int
by_name (gconstpointer a, gconstpointer b)
{
  return strcmp (*(char *const *)a, *(char *const *)b);
}

static void
add_seeds (GPtrArray *seeds, const char *path)
{
  if (!g_file_test (path, G_FILE_TEST_IS_DIR))
    {
      char *text = NULL;
      gsize length = 0;
      if (g_file_get_contents (path, &text, &length, NULL) && length <= MOST_BYTES)
        g_ptr_array_add (seeds, g_bytes_new (text, length));
      g_free (text);
      return;
    }
  g_autoptr (GDir) folder = g_dir_open (path, 0, NULL);
  g_autoptr (GPtrArray) inside = g_ptr_array_new_with_free_func (g_free);
  const char *name;
  while (folder != NULL && (name = g_dir_read_name (folder)) != NULL)
    g_ptr_array_add (inside, g_build_filename (path, name, NULL));
  g_ptr_array_sort (inside, by_name); /* or tries would not be the same on another disk */
  for (guint i = 0; i < inside->len; i++)
    add_seeds (seeds, inside->pdata[i]);
}

/* Takes the escapes of a dictionary's word away, which are \\, \" and \x with two digits. The length left. */
static gsize
unescape (char *word)
{
  char *to = word;
  for (const char *c = word; *c != '\0'; c++)
    if (c[0] == '\\' && c[1] == 'x' && g_ascii_isxdigit (c[2]) && g_ascii_isxdigit (c[3]))
      {
        *to++ = (char)(g_ascii_xdigit_value (c[2]) * 16 + g_ascii_xdigit_value (c[3]));
        c += 3;
      }
    else
      *to++ = c[0] == '\\' && c[1] != '\0' ? *++c : *c;
  return (gsize)(to - word);
}

/* Of the lines of a dictionary: "word" or name="word". */
static void
add_words (GPtrArray *words, const char *path)
{
  g_autofree char *text = NULL;
  if (!g_file_get_contents (path, &text, NULL, NULL))
    return;
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      char *first = strchr (lines[i], '"'), *last = strrchr (lines[i], '"');
      if (lines[i][0] == '#' || first == NULL || last == first)
        continue;
      *last = '\0';
      g_ptr_array_add (words, g_bytes_new (first + 1, unescape (first + 1)));
    }
}

/* ---- Changes ---- */

static guint
below (GRand *chance, gsize most)
{
  return most <= 1 ? 0 : (guint)g_rand_int_range (chance, 0, (int)most);
}

static void
insert (GByteArray *bytes, guint at, const void *data, gsize size)
{
  gsize room = MOST_BYTES - MIN (MOST_BYTES, bytes->len);
  guint more = (guint)MIN (size, room), before = bytes->len;
  if (more == 0)
    return;
  g_byte_array_set_size (bytes, before + more);
  memmove (bytes->data + at + more, bytes->data + at, before - at);
  memcpy (bytes->data + at, data, more);
}

static void
insert_piece (GByteArray *bytes, const GPtrArray *from, GRand *chance)
{
  if (from->len == 0)
    return;
  gsize size = 0;
  const guint8 *data = g_bytes_get_data (from->pdata[below (chance, from->len)], &size);
  if (size == 0)
    return;
  guint begin = size > 64 ? below (chance, size) : 0;
  gsize most = 1 + below (chance, 400), length = size > 64 ? MIN (size - begin, most) : size;
  insert (bytes, below (chance, bytes->len + 1), data + begin, length);
}

static void
insert_number (GByteArray *bytes, GRand *chance)
{
  const char *const numbers[]
      = { "0",          "-0",     "-1",  "1e308", "1e-320", "NaN",  "-inf",   "99999999999999999999",
          "2147483648", "0.0001", "1/0", "7/8",   "00",     "1e5",  "100001", "4294967296",
          "\"12 mm\"",  "[",      "{",   "]",     "}",      "null", "true",   "\"\"" };
  const char *number = numbers[below (chance, G_N_ELEMENTS (numbers))];
  insert (bytes, below (chance, bytes->len + 1), number, strlen (number));
}

static void
copy_within (GByteArray *bytes, GRand *chance)
{
  if (bytes->len == 0)
    return;
  guint from = below (chance, bytes->len);
  gsize most = 1 + below (chance, 300), length = MIN (bytes->len - from, most);
  g_autofree guint8 *piece = g_memdup2 (bytes->data + from, length);
  insert (bytes, below (chance, bytes->len + 1), piece, length);
}

static void
change_once (GByteArray *bytes, const Corpus *corpus, GRand *chance)
{
  guint at = below (chance, bytes->len), most = 1 + below (chance, 40);
  switch (below (chance, 8))
    {
    case 0:
      insert_piece (bytes, corpus->words, chance);
      return;
    case 1:
      insert_piece (bytes, corpus->seeds, chance);
      return;
    case 2:
      insert_number (bytes, chance);
      return;
    case 3:
      copy_within (bytes, chance);
      return;
    case 4:
      if (bytes->len > 0)
        bytes->data[at] ^= (guint8)(1 << below (chance, 8));
      return;
    case 5:
      if (bytes->len > 0)
        bytes->data[at] = (guint8)below (chance, 256);
      return;
    case 6:
      if (bytes->len > 0)
        g_byte_array_remove_range (bytes, at, (guint)MIN (bytes->len - at, most));
      return;
    default:
      if (below (chance, 10) == 0)
        g_byte_array_set_size (bytes, at); /* cut off */
      else if (bytes->len > 0 && g_ascii_isdigit (bytes->data[at]))
        bytes->data[at] = (guint8)('0' + below (chance, 10));
    }
}

static void
test_input (const void *data, gsize size, guint64 number)
{
  /* Of its own, so that reading beyond its end is noticed. */
  g_autofree guint8 *own = size > 0 ? g_memdup2 (data, size) : g_malloc (1);
  trying.data = own;
  trying.size = size;
  trying.number = number;
  LLVMFuzzerTestOneInput (own, size);
}

static void
try_changed (const Corpus *corpus, guint32 seed, guint64 number)
{
  g_autoptr (GRand) chance
      = g_rand_new_with_seed_array ((const guint32[]){ seed, (guint32)number, (guint32)(number >> 32) }, 3);
  GBytes *begun = corpus->seeds->pdata[below (chance, corpus->seeds->len)];
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  gsize size = 0;
  const guint8 *data = g_bytes_get_data (begun, &size);
  if (size > 0 && size <= MOST_SEED)
    g_byte_array_append (bytes, data, (guint)size);
  guint changes = 1 + below (chance, MOST_CHANGE);
  for (guint i = 0; i < changes; i++)
    change_once (bytes, corpus, chance);
  test_input (bytes->data != NULL ? bytes->data : (const guint8 *)"", bytes->len, number);
}

int
main (int argc, char **argv)
{
  g_autoptr (GPtrArray) seeds = g_ptr_array_new_with_free_func ((GDestroyNotify)g_bytes_unref);
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func ((GDestroyNotify)g_bytes_unref);
  const Corpus corpus = { seeds, words };
  guint64 number = 0;
  trying.keep = "fuzz-failed";
  for (int i = 3; i < argc; i++)
    if (g_str_equal (argv[i], "--dict") && i + 1 < argc)
      add_words (words, argv[++i]);
    else if (g_str_equal (argv[i], "--from") && i + 1 < argc)
      number = g_ascii_strtoull (argv[++i], NULL, 10);
    else if (g_str_equal (argv[i], "--keep") && i + 1 < argc)
      trying.keep = argv[++i];
    else
      add_seeds (seeds, argv[i]);
  if (argc < 4 || seeds->len == 0)
    {
      fprintf (stderr,
               "fuzz-TARGET SECONDS SEED [--dict FILE] [--from N] [--keep FILE] SEED-FILE|FOLDER...\n");
      return 2;
    }
  for (guint i = 0; i < 5; i++)
    signal (((const int[]){ SIGABRT, SIGSEGV, SIGFPE, SIGBUS, SIGTRAP })[i], fail);
  gint64 end = g_get_monotonic_time () + (gint64)(g_ascii_strtod (argv[1], NULL) * G_USEC_PER_SEC);
  guint32 seed = (guint32)g_ascii_strtoull (argv[2], NULL, 10);
  for (guint i = 0; i < seeds->len; i++)
    {
      gsize size = 0;
      const void *data = g_bytes_get_data (seeds->pdata[i], &size);
      test_input (data != NULL ? data : "", size, 0);
    }
  guint64 first = number;
  do
    try_changed (&corpus, seed, number++);
  while (g_get_monotonic_time () < end);
  printf ("ok 1 - %u seeds and %" G_GUINT64_FORMAT " changes of them\n1..1\n", seeds->len, number - first);
  return 0;
}

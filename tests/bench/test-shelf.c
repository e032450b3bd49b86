/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The shelf: the starter set until something changes, kept at once, undone, and never written over what it
 * can't read or what somebody else wrote.
 */
#include "bench/shelf.h"
#include "files/shop-data.h"
#include "shop/bit.h"

#include <glib/gstdio.h>
#include <string.h>

typedef struct
{
  char *folder;
  char *path;
  SpelchShelf *shelf;
  guint changes;
  char *said;
} Fixture;

static void
on_changed (SpelchShelf *shelf, Fixture *f)
{
  f->changes++;
}

static void
on_said (SpelchShelf *shelf, const char *words, Fixture *f)
{
  g_free (f->said);
  f->said = g_strdup (words);
}

static SpelchShelf *
open_shelf (Fixture *f)
{
  SpelchShelf *shelf = spelch_shelf_new (SPELCH_LIST_BITS, f->folder);
  g_signal_connect (shelf, "changed", G_CALLBACK (on_changed), f);
  g_signal_connect (shelf, "said", G_CALLBACK (on_said), f);
  return shelf;
}

static void
set_up (Fixture *f, gconstpointer data)
{
  f->folder = g_dir_make_tmp ("spelch-shelf-XXXXXX", NULL);
  f->path = g_build_filename (f->folder, "bits.json", NULL);
  f->shelf = open_shelf (f);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  g_object_unref (f->shelf);
  g_unlink (f->path);
  g_rmdir (f->folder);
  g_free (f->path);
  g_free (f->folder);
  g_free (f->said);
}

static SpelchBit
renamed (SpelchShelf *shelf, const char *id, const char *name)
{
  SpelchBit bit = *(const SpelchBit *)spelch_shelf_find (shelf, id);
  g_strlcpy (bit.name, name, sizeof bit.name);
  return bit;
}

static const char *
first_id (void)
{
  guint n = 0;
  return spelch_shop_bits (&n)[0].id;
}

static const char *
name_of (SpelchShelf *shelf, const char *id)
{
  const SpelchBit *bit = spelch_shelf_find (shelf, id);
  return bit == NULL ? NULL : bit->name;
}

static void
assert_same (const GArray *list, const GArray *expected)
{
  g_assert_cmpuint (list->len, ==, expected->len);
  g_assert_true (list->len == 0 || memcmp (list->data, expected->data, list->len * sizeof (SpelchBit)) == 0);
}

static void
test_starter_set (Fixture *f, gconstpointer data)
{
  guint n = 0;
  spelch_shop_bits (&n);
  g_assert_cmpuint (spelch_shelf_count (f->shelf), ==, n);
  g_assert_null (spelch_shelf_get_trouble (f->shelf));
  g_assert_false (g_file_test (f->path, G_FILE_TEST_EXISTS));
  g_assert_null (spelch_shelf_find (f->shelf, "no-such-bit"));
}

static void
test_kept (Fixture *f, gconstpointer data)
{
  SpelchBit bit = renamed (f->shelf, first_id (), "Ours");
  g_assert_true (spelch_shelf_put (f->shelf, &bit, "rename"));
  g_assert_cmpuint (f->changes, ==, 1);
  g_autoptr (SpelchShelf) again = spelch_shelf_new (SPELCH_LIST_BITS, f->folder);
  g_assert_cmpstr (name_of (again, first_id ()), ==, "Ours");
  g_assert_cmpuint (spelch_shelf_count (again), ==, spelch_shelf_count (f->shelf));
}

static void
test_undo (Fixture *f, gconstpointer data)
{
  g_autofree char *before = g_strdup (name_of (f->shelf, first_id ()));
  SpelchBit bit = renamed (f->shelf, first_id (), "One");
  g_autoptr (GArray) original = g_array_ref (spelch_shelf_get_items (f->shelf));
  g_assert_true (spelch_shelf_put (f->shelf, &bit, "rename"));
  g_assert_true (spelch_shelf_remove (f->shelf, first_id (), "remove"));
  g_assert_null (name_of (f->shelf, first_id ()));
  g_assert_cmpstr (spelch_shelf_get_undo_name (f->shelf), ==, "remove");
  spelch_shelf_undo (f->shelf);
  g_assert_cmpstr (name_of (f->shelf, first_id ()), ==, "One");
  spelch_shelf_undo (f->shelf);
  g_assert_cmpstr (name_of (f->shelf, first_id ()), ==, before);
  assert_same (spelch_shelf_get_items (f->shelf), original);
  g_assert_null (spelch_shelf_get_undo_name (f->shelf));
  spelch_shelf_redo (f->shelf);
  spelch_shelf_redo (f->shelf);
  spelch_shelf_redo (f->shelf);
  g_assert_null (name_of (f->shelf, first_id ()));
  spelch_shelf_undo (f->shelf);
  g_assert_true (spelch_shelf_put (f->shelf, &bit, "rename"));
  g_assert_null (spelch_shelf_get_redo_name (f->shelf));
}

/* Changes without end don't fill the memory: the oldest are forgotten, the newest can be undone. */
static void
test_many_steps (Fixture *f, gconstpointer data)
{
  g_autoptr (SpelchShelf) shelf = spelch_shelf_new (SPELCH_LIST_BITS, NULL);
  g_autoptr (GArray) all = g_array_copy (spelch_shelf_get_items (shelf));
  gsize bytes = all->len * sizeof (SpelchBit), words = 100;
  guint most = (guint)(SPELCH_SHELF_MOST_BYTES / bytes) + 1, n = most + 5, first = 0;
  for (guint i = 0; i < n; i++)
    {
      for (guint j = 0; j < all->len; j++)
        g_snprintf (g_array_index (all, SpelchBit, j).name, SPELCH_NAME_SIZE, "Name %u", i);
      g_assert_true (spelch_shelf_put_all (shelf, all, "rename"));
      first = i == 0 ? spelch_shelf_get_step (shelf) : first;
    }
  g_assert_cmpint (spelch_shelf_step_state (shelf, first), ==, SPELCH_STEP_FORGOTTEN);
  g_assert_cmpint (spelch_shelf_step_state (shelf, spelch_shelf_get_step (shelf)), ==, SPELCH_STEP_DONE_LAST);
  guint kept = 0;
  while (spelch_shelf_step_state (shelf, spelch_shelf_get_step (shelf) - kept) != SPELCH_STEP_FORGOTTEN)
    kept++;
  g_assert_cmpuint (kept, <=, most);
  g_assert_cmpuint (kept, >=, SPELCH_SHELF_MOST_BYTES / (bytes + words));
  g_autofree char *before = g_strdup_printf ("Name %u", n - 2);
  spelch_shelf_undo (shelf);
  g_assert_cmpstr (name_of (shelf, first_id ()), ==, before);
}

/* One bit changed keeps one bit, not the list: after as many changes as lists would fit the first is known.
 */
static void
test_small_steps (Fixture *f, gconstpointer data)
{
  g_autoptr (SpelchShelf) shelf = spelch_shelf_new (SPELCH_LIST_BITS, NULL);
  gsize bytes = spelch_shelf_count (shelf) * sizeof (SpelchBit);
  g_autofree char *original = g_strdup (name_of (shelf, first_id ()));
  guint n = (guint)(SPELCH_SHELF_MOST_BYTES / bytes) * 3;
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = g_strdup_printf ("Name %u", i);
      SpelchBit bit = renamed (shelf, first_id (), name);
      g_assert_true (spelch_shelf_put (shelf, &bit, "rename"));
    }
  for (guint i = 0; i < n; i++)
    spelch_shelf_undo (shelf);
  g_assert_cmpstr (name_of (shelf, first_id ()), ==, original);
  g_assert_null (spelch_shelf_get_undo_name (shelf));
}

/* A bit goes, or up to three are put in at once, some of them new. */
static void
change_by_chance (SpelchShelf *shelf, GRand *chance, guint i)
{
  guint n = spelch_shelf_count (shelf), starters = 0;
  int puts = g_rand_int_range (chance, n == 0 ? 1 : 0, 4);
  g_autoptr (GArray) put = g_array_new (FALSE, FALSE, sizeof (SpelchBit));
  for (int j = 0; j < MAX (puts, 1); j++)
    {
      const SpelchBit *at
          = spelch_shelf_get_nth (shelf, n == 0 ? 0 : (guint)g_rand_int_range (chance, 0, (int)n));
      SpelchBit bit = at != NULL ? *at : *spelch_shop_bits (&starters);
      if (j == 2 || at == NULL)
        g_snprintf (bit.id, sizeof bit.id, "bit-%u-%d", i, j);
      bit.metres_cut = i + 1;
      g_array_append_val (put, bit);
    }
  if (puts > 0)
    g_assert_true (spelch_shelf_put_all (shelf, put, "put"));
  else
    g_assert_true (spelch_shelf_remove (shelf, g_array_index (put, SpelchBit, 0).id, "remove"));
}

/* Back through all lists as they were, down to an empty one between, and on again. */
static void
test_every_list_again (Fixture *f, gconstpointer data)
{
  g_autoptr (SpelchShelf) shelf = spelch_shelf_new (SPELCH_LIST_BITS, NULL);
  g_autoptr (GPtrArray) lists = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  g_autoptr (GRand) chance = g_rand_new_with_seed (7);
  for (guint i = 0; i < 300; i++)
    {
      g_ptr_array_add (lists, g_array_ref (spelch_shelf_get_items (shelf)));
      const SpelchBit *last = spelch_shelf_get_nth (shelf, spelch_shelf_count (shelf) - 1);
      g_autofree char *id = last == NULL ? NULL : g_strdup (last->id);
      if (i >= 100 && i < 200 && id != NULL)
        g_assert_true (spelch_shelf_remove (shelf, id, "remove"));
      else
        change_by_chance (shelf, chance, i);
    }
  g_ptr_array_add (lists, g_array_ref (spelch_shelf_get_items (shelf)));
  for (guint i = lists->len - 1; i-- > 0;)
    {
      spelch_shelf_undo (shelf);
      assert_same (spelch_shelf_get_items (shelf), lists->pdata[i]);
    }
  g_assert_null (spelch_shelf_get_undo_name (shelf));
  for (guint i = 1; i < lists->len; i++)
    {
      spelch_shelf_redo (shelf);
      assert_same (spelch_shelf_get_items (shelf), lists->pdata[i]);
    }
}

/* A change is known by its number as long as it can be undone or done again. */
static void
test_steps (Fixture *f, gconstpointer data)
{
  SpelchBit bit = renamed (f->shelf, first_id (), "One");
  g_assert_cmpuint (spelch_shelf_get_step (f->shelf), ==, 0);
  g_assert_true (spelch_shelf_put (f->shelf, &bit, "rename"));
  guint one = spelch_shelf_get_step (f->shelf);
  g_assert_cmpint (spelch_shelf_step_state (f->shelf, one), ==, SPELCH_STEP_DONE_LAST);
  g_assert_true (spelch_shelf_remove (f->shelf, first_id (), "remove"));
  guint two = spelch_shelf_get_step (f->shelf);
  g_assert_cmpuint (one, !=, two);
  g_assert_cmpint (spelch_shelf_step_state (f->shelf, one), ==, SPELCH_STEP_DONE);
  spelch_shelf_undo (f->shelf);
  g_assert_cmpint (spelch_shelf_step_state (f->shelf, two), ==, SPELCH_STEP_UNDONE_LAST);
  spelch_shelf_undo (f->shelf);
  g_assert_cmpint (spelch_shelf_step_state (f->shelf, one), ==, SPELCH_STEP_UNDONE_LAST);
  g_assert_cmpint (spelch_shelf_step_state (f->shelf, two), ==, SPELCH_STEP_UNDONE);
  spelch_shelf_redo (f->shelf);
  g_assert_cmpuint (spelch_shelf_get_step (f->shelf), ==, one);
  g_assert_true (spelch_shelf_put (f->shelf, &bit, "rename"));
  g_assert_cmpint (spelch_shelf_step_state (f->shelf, two), ==, SPELCH_STEP_FORGOTTEN);
}

static void
test_spoilt_file (Fixture *f, gconstpointer data)
{
  g_autofree char *text = NULL;
  g_assert_true (g_file_set_contents (f->path, "{\"format_version\": 1, \"bits\": [{}]}", -1, NULL));
  g_autoptr (SpelchShelf) shelf = open_shelf (f);
  SpelchBit bit = renamed (shelf, first_id (), "Ours");
  g_assert_nonnull (strstr (spelch_shelf_get_trouble (shelf), "bits.json"));
  g_assert_false (spelch_shelf_put (shelf, &bit, "rename"));
  g_assert_nonnull (f->said);
  g_assert_true (g_file_get_contents (f->path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "{\"format_version\": 1, \"bits\": [{}]}");
  g_unlink (f->path);
  g_assert_true (spelch_shelf_put (shelf, &bit, "rename"));
  g_assert_null (spelch_shelf_get_trouble (shelf));
}

static void
test_changed_elsewhere (Fixture *f, gconstpointer data)
{
  g_autoptr (SpelchShelf) other = open_shelf (f);
  SpelchBit theirs = renamed (other, first_id (), "Theirs");
  g_autofree char *id = spelch_shelf_make_id (f->shelf, "Brand new");
  SpelchBit ours = theirs;
  g_strlcpy (ours.id, id, sizeof ours.id);
  g_assert_true (spelch_shelf_put (other, &theirs, "rename"));
  g_assert_true (spelch_shelf_put (f->shelf, &ours, "add"));
  g_assert_cmpstr (name_of (f->shelf, first_id ()), ==, "Theirs");
  g_assert_nonnull (spelch_shelf_find (f->shelf, id));
  g_assert_nonnull (f->said);
}

static void
test_ids (Fixture *f, gconstpointer data)
{
  g_autofree char *plain = spelch_shelf_make_id (f->shelf, "  Für Eiche, 12.7 mm! ");
  g_autofree char *taken = spelch_shelf_make_id (f->shelf, first_id ());
  g_autofree char *second = g_strconcat (first_id (), "-2", NULL);
  g_autofree char *empty = spelch_shelf_make_id (f->shelf, "\xe6\x9c\xa8");
  g_assert_cmpstr (plain, ==, "fur-eiche-12.7-mm");
  g_assert_cmpstr (taken, ==, second);
  g_assert_true (g_ascii_isalnum (empty[0]));
}

/* Nothing can be written into a folder that can't be made. */
static void
test_cannot_keep (Fixture *f, gconstpointer data)
{
  g_autofree char *folder = g_build_filename (f->path, "below-a-file", NULL);
  g_assert_true (g_file_set_contents (f->path, "x", -1, NULL));
  g_autoptr (SpelchShelf) shelf = spelch_shelf_new (SPELCH_LIST_BITS, folder);
  SpelchBit bit = renamed (shelf, first_id (), "Ours");
  g_autoptr (GArray) before = g_array_ref (spelch_shelf_get_items (shelf));
  g_assert_false (spelch_shelf_put (shelf, &bit, "rename"));
  g_assert_nonnull (spelch_shelf_get_trouble (shelf));
  g_assert_true (spelch_shelf_get_items (shelf) == before);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/shelf/starter-set", Fixture, NULL, set_up, test_starter_set, tear_down);
  g_test_add ("/shelf/kept", Fixture, NULL, set_up, test_kept, tear_down);
  g_test_add ("/shelf/every-list-again", Fixture, NULL, set_up, test_every_list_again, tear_down);
  g_test_add ("/shelf/undo", Fixture, NULL, set_up, test_undo, tear_down);
  g_test_add ("/shelf/many-steps", Fixture, NULL, set_up, test_many_steps, tear_down);
  g_test_add ("/shelf/small-steps", Fixture, NULL, set_up, test_small_steps, tear_down);
  g_test_add ("/shelf/steps", Fixture, NULL, set_up, test_steps, tear_down);
  g_test_add ("/shelf/spoilt-file", Fixture, NULL, set_up, test_spoilt_file, tear_down);
  g_test_add ("/shelf/changed-elsewhere", Fixture, NULL, set_up, test_changed_elsewhere, tear_down);
  g_test_add ("/shelf/ids", Fixture, NULL, set_up, test_ids, tear_down);
  g_test_add ("/shelf/cannot-keep", Fixture, NULL, set_up, test_cannot_keep, tear_down);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Unread members: each is told where it stands, and the member it was probably meant for.
 */
#include "reading.h"

#include "files/list-file.h"
#include "files/part-file.h"
#include "files/unread.h"

#include <string.h>

static const char *
nearest (const char *member, const char *const *known)
{
  g_autoptr (GPtrArray) list = g_ptr_array_new ();
  for (guint i = 0; known[i] != NULL; i++)
    g_ptr_array_add (list, (gpointer)known[i]);
  return spelch_unread_nearest (member, list);
}

/* Letters left out, put in, changed, swapped; another way of writing; a unit left off or put on. */
static void
test_nearest (void)
{
  const char *const known[] = { "depth", "width", "helix_deg", "max_rpm", "seen", "start", "end", NULL };
  const struct
  {
    const char *member, *meant;
  } cases[] = {
    { "depht", "depth" },
    { "dept", "depth" },
    { "deepth", "depth" },
    { "widht", "width" },
    { "Depth", "depth" },
    { "max-rpm", "max_rpm" },
    { "maxRpm", "max_rpm" },
    { "helix", "helix_deg" },
    { "sen", "seen" },
    { "depth_mm", "depth" },
    { "helix_dge", "helix_deg" },
    { "shelf", NULL },
    { "colour", NULL },
    { "sent", NULL /* two of four */ },
    { "", NULL },
    { "x", NULL },
    { "worth", NULL /* two of five */ },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_test_message ("%s", cases[i].member);
      g_assert_cmpstr (nearest (cases[i].member, known), ==, cases[i].meant);
    }
}

/* Of two as close, the first by letters, whatever their order. */
static void
test_equally_close (void)
{
  const char *const one[] = { "edges", "edged", NULL }, *const other[] = { "edged", "edges", NULL };
  g_assert_cmpstr (nearest ("edgex", one), ==, "edged");
  g_assert_cmpstr (nearest ("edgex", other), ==, "edged");
}

static void
test_long (void)
{
  g_autofree char *lengthy = g_strnfill (5000, 'd');
  const char *const known[] = { "depth", NULL };
  g_assert_null (nearest (lengthy, known));
}

static const SpelchUnread *
find (const GPtrArray *list, const char *at, const char *member)
{
  for (guint i = 0; i < list->len; i++)
    {
      const SpelchUnread *one = list->pdata[i];
      if (g_str_equal (one->at, at) && g_str_equal (one->member, member))
        return one;
    }
  return NULL;
}

/* Every stranger of the file is told of, and nothing else: those that the program writes back, in the
 * part's own table, are counted; "source" and "note" are for people. */
static void
test_part (void)
{
  g_autofree char *text = reading_file ("corpus/good/unknown-members.spelch");
  g_autoptr (SpelchPart) part = spelch_part_from_json (text, strlen (text), "a", NULL);
  g_autoptr (GPtrArray) unread = spelch_part_unread (text, strlen (text), "a");
  g_assert_nonnull (part);
  guint kept = 0;
  GHashTableIter iter;
  gpointer at, value;
  g_hash_table_iter_init (&iter, part->unknown);
  while (g_hash_table_iter_next (&iter, &at, &value))
    {
      g_autoptr (JsonNode) node = json_from_string (value, NULL);
      g_autoptr (GList) members = json_object_get_members (json_node_get_object (node));
      for (GList *m = members; m != NULL; m = m->next)
        {
          bool for_people = g_str_equal (m->data, "source") || g_str_equal (m->data, "note");
          g_assert_true ((find (unread, at, m->data) == NULL) == for_people);
          kept += for_people ? 0 : 1;
        }
    }
  g_assert_cmpuint (unread->len, ==, kept);
  g_assert_cmpuint (kept, >, 10);
  g_assert_cmpstr (find (unread, "cuts/outline", "layer")->sentence, ==,
                   "cuts[0] 'outline': layer is kept, not read.");
  g_assert_null (find (unread, "cuts/outline", "layer")->nearest);
}

/* A member is only meant for one that isn't told itself. */
static void
test_told (void)
{
  const char *const bare = "{\"format_version\": 1, \"bits\": [{\"id\": \"a\", \"kind\": \"straight\", "
                           "\"diameter\": 6, \"shank\": 6, "
                           "\"cutting_length\": 20, \"edges\": 2, \"max_rmp\": 24000}]}";
  g_autofree char *told = g_strdup_printf ("%.*s, \"max_rpm\": 24000}]}", (int)strlen (bare) - 3, bare);
  g_autoptr (GPtrArray) meant = spelch_list_unread (SPELCH_LIST_BITS, bare, strlen (bare), "a");
  g_autoptr (GPtrArray) own = spelch_list_unread (SPELCH_LIST_BITS, told, strlen (told), "a");
  g_assert_cmpuint (meant->len, ==, 1);
  g_assert_cmpstr (find (meant, "bits/a", "max_rmp")->sentence, ==,
                   "bits[0] 'a': max_rmp is kept, not read; did you mean max_rpm?");
  g_assert_cmpstr (find (meant, "bits/a", "max_rmp")->nearest, ==, "max_rpm");
  g_assert_cmpuint (own->len, ==, 1);
  g_assert_null (find (own, "bits/a", "max_rmp")->nearest);
}

/* What can't be read has nothing to tell of beyond where it breaks off. */
static void
test_unreadable (void)
{
  g_autoptr (GPtrArray) none = spelch_part_unread ("{", 1, "a");
  g_autoptr (GPtrArray) list = spelch_list_unread (SPELCH_LIST_LOG, "[]", 2, "a");
  const char *const misspelt = "{\"format_version\": 1, \"id\": \"a\", \"bord\": 3}";
  g_autoptr (GPtrArray) part = spelch_part_unread (misspelt, strlen (misspelt), "a");
  g_assert_cmpuint (none->len, ==, 0);
  g_assert_cmpuint (list->len, ==, 0);
  g_assert_cmpuint (part->len, ==, 1);
  g_assert_cmpstr (find (part, "", "bord")->nearest, ==, "board");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/unread/nearest", test_nearest);
  g_test_add_func ("/unread/equally-close", test_equally_close);
  g_test_add_func ("/unread/long", test_long);
  g_test_add_func ("/unread/part", test_part);
  g_test_add_func ("/unread/told", test_told);
  g_test_add_func ("/unread/unreadable", test_unreadable);
  return g_test_run ();
}

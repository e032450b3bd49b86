/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every source in the model's file is either no more than the name of a work, or what it says beside that is
 * among the words that are translated: a new one has to be put in one of the two lists.
 */
#include "plan/words-source.h"

#include <json-glib/json-glib.h>

/* Names of works alone. */
static const char *const WORKS[] = {
  "Dobie and Wright 1972, in Briggs 1994, Forest Products Measurements and Conversion Factors, Table 7-1",
  "Gurău, Coșereanu, Timar, Lungu and Condoroțeanu 2022, Coatings 12:1982",
  "J. Wood Sci. 2018, doi:10.1007/s10086-018-1724-x",
  "Kops and Vo 1990, CIRP Annals 39(1):93-96",
  "McKenzie and Karpovich 1968, Wood Sci. Technol. 2:139-152, doi:10.1007/BF00394962",
  "Pałubicki 2021, Materials 14:2208, doi:10.3390/ma14092208",
  "Sedlecký and Gašparík 2017, BioResources 12(4):7413-7426",
};

static bool
is_work (const char *source)
{
  for (guint i = 0; i < G_N_ELEMENTS (WORKS); i++)
    if (g_str_equal (WORKS[i], source))
      return true;
  return false;
}

static void collect (JsonNode *node, GHashTable *sources);

static void
collect_member (JsonObject *object, const char *member, JsonNode *node, gpointer sources)
{
  if (g_str_equal (member, "source") && JSON_NODE_HOLDS_VALUE (node))
    g_hash_table_add (sources, json_node_dup_string (node));
  else
    collect (node, sources);
}

static void
collect_element (JsonArray *array, guint i, JsonNode *node, gpointer sources)
{
  collect (node, sources);
}

static void
collect (JsonNode *node, GHashTable *sources)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    json_object_foreach_member (json_node_get_object (node), collect_member, sources);
  else if (JSON_NODE_HOLDS_ARRAY (node))
    json_array_foreach_element (json_node_get_array (node), collect_element, sources);
}

static void
test_sources (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("SPELCH_DATA"), "model.json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GHashTable) sources = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GError) error = NULL;
  GHashTableIter iter;
  gpointer source;
  json_parser_load_from_file (parser, path, &error);
  g_assert_no_error (error);
  collect (json_parser_get_root (parser), sources);
  g_assert_cmpuint (g_hash_table_size (sources), >, G_N_ELEMENTS (WORKS));
  g_hash_table_iter_init (&iter, sources);
  while (g_hash_table_iter_next (&iter, &source, NULL))
    {
      int lists
          = is_work (source) + spelch_words_source_is_told (source) + spelch_words_source_is_nobodys (source);
      if (lists != 1)
        g_error ("“%s” is in %d of the lists of works, of words told and of nobody's", (char *)source, lists);
    }
  for (guint i = 0; i < G_N_ELEMENTS (WORKS); i++)
    g_assert_true (g_hash_table_contains (sources, WORKS[i]));
}

/* What says no more than the class of evidence isn't repeated after it; names stay as they are. */
static void
test_words (void)
{
  g_assert_true (spelch_words_source_is_nobodys ("common practice, no source"));
  g_assert_cmpstr (spelch_words_source (WORKS[0]), ==, WORKS[0]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sources/every-one", test_sources);
  g_test_add_func ("/sources/words", test_words);
  return g_test_run ();
}

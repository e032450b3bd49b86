/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The plan as a table to read: of each cut nothing is told twice, but the reasons of each face, which may be
 * the same.
 */
#include "running.h"

#include <glib/gstdio.h>
#include <string.h>

#define SENTENCE_LEAST 20 /* letters; shorter ones are words such as "Speed held by hand." */

/* The line's sentences; of those that are told already, an error. */
static void
take_line (GHashTable *told, const char *line)
{
  g_auto (GStrv) sentences = g_strsplit (line, ". ", -1);
  for (guint i = 0; sentences[i] != NULL; i++)
    {
      char *sentence = g_strstrip (sentences[i]);
      gsize length = strlen (sentence);
      if (length > 0 && sentence[length - 1] == '.')
        sentence[length - 1] = '\0';
      if (length >= SENTENCE_LEAST && !g_hash_table_add (told, g_strdup (sentence)))
        g_error ("told twice: %s", sentence);
    }
}

static void
assert_told_once (const char *text)
{
  g_auto (GStrv) cuts = g_strsplit (text, "\n\n", -1);
  for (guint i = 0; cuts[i] != NULL; i++)
    {
      g_autoptr (GHashTable) told = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
      g_auto (GStrv) lines = g_strsplit (cuts[i], "\n", -1);
      for (guint j = 0; lines[j] != NULL; j++)
        if (!g_str_has_prefix (lines[j], "    - "))
          take_line (told, lines[j]);
    }
}

static void
test_told_once (void)
{
  const char *const parts[]
      = { "birch-12-thin",       "birch-12-trim",         "birch-18-outline",  "birch-18-short-bit",
          "birch-18-unmeasured", "birch-18-zero-on-face", "figured-20-trim",   "maple-20-mortise",
          "mdf-18-rabbet",       "melamine-16-outline",   "veneered-19-rabbet" };
  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    {
      g_autofree char *name = g_strdup_printf ("%s.spelch", parts[i]);
      g_autofree char *file = g_test_build_filename (G_TEST_DIST, "acceptance", name, NULL);
      g_auto (Running) ran = running ("plan", file, NULL);
      g_test_message ("%s", parts[i]);
      g_assert_cmpint (ran.status, <=, 1);
      assert_told_once (ran.out);
    }
}

static guint
count_of (const char *text, const char *words)
{
  guint n = 0;
  for (const char *at = strstr (text, words); at != NULL; at = strstr (at + 1, words))
    n++;
  return n;
}

/* Tabs that hold alone and are too weak are a stop, which tells all there is to tell of them. */
static void
test_weak_tabs (void)
{
  g_autofree char *demo = running_demo (), *text = NULL;
  g_assert_true (g_file_get_contents (demo, &text, NULL, NULL));
  g_auto (GStrv) halves = g_strsplit (text, "\"method\": \"vacuum\"", 2);
  g_assert_nonnull (halves[1]);
  g_autofree char *clamped = g_strconcat (halves[0], "\"method\": \"clamps\"", halves[1], NULL);
  g_autofree char *file = g_build_filename (g_get_tmp_dir (), "spelch-test-weak-tabs.spelch", NULL);
  g_assert_true (g_file_set_contents (file, clamped, -1, NULL));
  g_auto (Running) weak = running ("plan", file, "--cut", "outline", NULL);
  g_auto (Running) held = running ("plan", demo, "--cut", "outline", NULL);
  g_remove (file);
  g_assert_cmpint (weak.status, ==, 1);
  g_assert_cmpuint (count_of (weak.out, "times the force against them"), ==, 1);
  g_assert_nonnull (strstr (weak.out, "! Leave "));
  assert_told_once (weak.out);
  g_assert_cmpint (held.status, ==, 0);
  g_assert_cmpuint (count_of (held.out, "times the force against them"), ==, 1);
}

/* In a trim router no bit of the starter set cuts the demo's outline cleanly by itself: the order names the
 * one that scores as well, as the ranking does. */
static void
test_order_scores (void)
{
  g_autofree char *demo = running_demo ();
  g_auto (Running) hand = running ("rank", demo, "--machine", "trim-router", NULL);
  g_auto (Running) gantry = running ("rank", demo, NULL);
  const char *order = strstr (hand.out, "Fewest changes"), *other = strstr (gantry.out, "Fewest changes");
  g_assert_nonnull (order);
  g_assert_nonnull (
      strstr (order, "Outline: Up-cut 6.35 mm (1/4 in), scored first with Down-cut 6.35 mm (1/4 in)"));
  g_assert_nonnull (other);
  g_assert_null (strstr (other, "scored first"));
  g_auto (Running) json = running ("rank", demo, "--machine", "trim-router", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *steps = json_object_get_array_member (
      json_object_get_object_member (running_object (parser, json.out), "order"), "steps");
  JsonObject *first = json_array_get_object_element (steps, 0);
  JsonObject *last = json_array_get_object_element (steps, json_array_get_length (steps) - 1);
  g_assert_true (json_object_get_null_member (first, "score_bit"));
  g_assert_cmpstr (json_object_get_string_member (last, "score_bit"), ==, "down-cut-6.35x25");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/table/told-once", test_told_once);
  g_test_add_func ("/table/weak-tabs", test_weak_tabs);
  g_test_add_func ("/table/order-scores", test_order_scores);
  return g_test_run ();
}

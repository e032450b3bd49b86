/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch check on members that aren't read: a remark beside the answer, never a reason to refuse.
 */
#include "running.h"

#include <glib/gstdio.h>

/* The file @name of the starter sets with @from turned into @to, under a name of its own. */
static char *
misspelt (const char *name, const char *from, const char *to)
{
  g_autofree char *path = g_build_filename (g_getenv ("SPELCH_DATA"), name, NULL), *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_auto (GStrv) halves = g_strsplit (text, from, 2);
  g_assert_nonnull (halves[1]);
  g_autofree char *changed = g_strconcat (halves[0], to, halves[1], NULL);
  g_autofree char *other = g_strdup_printf ("spelch-test-check-%s", name);
  char *file = g_build_filename (g_get_tmp_dir (), other, NULL);
  g_assert_true (g_file_set_contents (file, changed, -1, NULL));
  return file;
}

static void
test_remarks (void)
{
  const struct
  {
    const char *name, *from, *to, *remark;
  } cases[] = {
    { "demo.spelch", "\"seen\": [", "\"sene\": [",
      "cuts[0] 'outline': sene is kept, not read; did you mean seen?\n" },
    { "bits.json", "\"max_rpm\"", "\"maxrpm\"",
      "bits[0] 'compression-6.35x22': maxrpm is kept, not read; did you mean max_rpm?\n" },
    { "boards.json", "\"density_kg_m3\"", "\"density\"",
      "boards[0] 'birch-ply-6.5': density is kept, not read; did you mean density_kg_m3?\n" },
    { "machines.json", "\"steps_rpm\"", "\"shelf\"",
      "machines[0] 'light-gantry': shelf is kept, not read.\n" },
    { "demo-log.json", "\"speed_rpm\"", "\"sped_rpm\"",
      "sped_rpm is kept, not read; did you mean speed_rpm?\n" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *file = misspelt (cases[i].name, cases[i].from, cases[i].to);
      g_auto (Running) ran = running ("check", file, NULL);
      g_test_message ("%s%s", ran.out, ran.err);
      g_remove (file);
      g_assert_cmpint (ran.status, ==, 0);
      g_assert_nonnull (strstr (ran.out, "in order"));
      g_assert_nonnull (strstr (ran.out, cases[i].remark));
    }
}

static void
test_json (void)
{
  g_autofree char *file = misspelt ("machines.json", "\"datum\"", "\"datm\"");
  g_auto (Running) ran = running ("check", file, "--json", NULL);
  g_remove (file);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *unread = json_object_get_array_member (running_object (parser, ran.out), "unread");
  g_assert_cmpint (ran.status, ==, 0);
  g_assert_cmpuint (json_array_get_length (unread), ==, 1);
  JsonObject *one = json_array_get_object_element (unread, 0);
  g_assert_cmpstr (json_object_get_string_member (one, "at"), ==, "machines/light-gantry");
  g_assert_cmpstr (json_object_get_string_member (one, "member"), ==, "datm");
  g_assert_cmpstr (json_object_get_string_member (one, "nearest"), ==, "datum");
}

/* The starter sets say where their figures come from; that is no slip. */
static void
test_starter_sets (void)
{
  const char *const names[] = { "demo.spelch", "bits.json", "boards.json", "machines.json", "demo-log.json" };
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autofree char *file = g_build_filename (g_getenv ("SPELCH_DATA"), names[i], NULL);
      g_auto (Running) ran = running ("check", file, NULL);
      g_assert_cmpint (ran.status, ==, 0);
      g_assert_null (strstr (ran.out, "not read"));
    }
}

/* What is misspelt is often what is missed. */
static void
test_refused (void)
{
  g_autofree char *file = misspelt ("bits.json", "\"diameter\"", "\"diametre\"");
  g_auto (Running) ran = running ("check", file, NULL);
  g_remove (file);
  g_assert_cmpint (ran.status, ==, 2);
  g_assert_nonnull (strstr (ran.err, "diameter is missing"));
  g_assert_nonnull (strstr (ran.out, "did you mean diameter?"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/check/remarks", test_remarks);
  g_test_add_func ("/check/json", test_json);
  g_test_add_func ("/check/starter-sets", test_starter_sets);
  g_test_add_func ("/check/refused", test_refused);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * spelch compare says of each bit what spelch plan says of it alone.
 */
#include "running.h"

#include <stdbool.h>

#include <glib/gstdio.h>
#include <string.h>

#define BITS "compression-6.35x22,down-cut-6.35x25,up-cut-6.35x25,straight-6.35x25"

static JsonObject *
item (JsonObject *object, const char *list, guint i)
{
  return json_array_get_object_element (json_object_get_array_member (object, list), i);
}

static double
row (JsonObject *column, const char *name)
{
  JsonArray *rows = json_object_get_array_member (column, "rows");
  for (guint i = 0; i < json_array_get_length (rows); i++)
    {
      JsonObject *one = json_array_get_object_element (rows, i);
      if (g_str_equal (json_object_get_string_member (one, "row"), name))
        return json_object_get_double_member (one, "value");
    }
  g_error ("no row %s", name);
}

static double
worst_grade (JsonObject *cut, const char *side)
{
  JsonArray *edges = json_object_get_array_member (cut, "edges");
  double worst = 0;
  for (guint i = 0; i < json_array_get_length (edges); i++)
    {
      JsonObject *edge = json_array_get_object_element (edges, i);
      if (g_str_equal (json_object_get_string_member (edge, "side"), side)
          && !json_object_get_null_member (edge, "grade"))
        worst = MAX (worst, json_object_get_double_member (edge, "grade"));
    }
  return worst;
}

static void
same (double value, JsonObject *object, const char *member)
{
  g_assert_cmpfloat_with_epsilon (value, json_object_get_double_member (object, member),
                                  1e-6 * MAX (value, 1));
}

static void
test_agrees (void)
{
  g_autofree char *demo = running_demo ();
  g_auto (Running) ran = running ("compare", demo, "--cut", "outline", "--bits", BITS, "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_auto (GStrv) bits = g_strsplit (BITS, ",", -1);
  g_assert_cmpint (ran.status, ==, 0);
  JsonObject *whole = running_object (parser, ran.out);
  for (guint i = 0; bits[i] != NULL; i++)
    {
      g_auto (Running) alone = running ("plan", demo, "--cut", "outline", "--bit", bits[i], "--json", NULL);
      g_autoptr (JsonParser) other = json_parser_new ();
      JsonObject *cut = running_cut (other, alone.out), *column = item (whole, "columns", i);
      g_assert_cmpstr (json_object_get_string_member (column, "bit"), ==, bits[i]);
      g_assert_cmpfloat (row (column, "motor-edge"), ==, worst_grade (cut, "motor"));
      g_assert_cmpfloat (row (column, "far-edge"), ==, worst_grade (cut, "far"));
      g_assert_cmpfloat (row (column, "passes"), ==,
                         json_array_get_length (json_object_get_array_member (cut, "passes")));
      same (row (column, "speed"), cut, "speed_rpm");
      same (row (column, "feed"), cut, "feed_mm_min");
      same (row (column, "time"), cut, "time_s");
      same (row (column, "rubbing"), cut, "rubbing_share");
      same (row (column, "room"), cut, "chip_room");
      same (row (column, "hold"), json_object_get_object_member (cut, "hold"), "factor");
      same (row (column, "power"), json_object_get_object_member (cut, "power_w"), "mid");
      JsonObject *seat = item (cut, "seat", 0);
      bool apart = g_str_equal (json_object_get_string_member (seat, "direction"), "apart");
      same (apart ? row (column, "seat") : -row (column, "seat"), seat, "mean_n");
    }
}

static void
test_table (void)
{
  g_autofree char *demo = running_demo ();
  g_auto (Running) ran = running ("compare", demo, "--cut", "outline", "--bits", BITS, NULL);
  g_assert_cmpint (ran.status, ==, 0);
  g_assert_nonnull (strstr (ran.out, "\nMotor side "));
  g_assert_nonnull (strstr (ran.out, "+ clean"));
  g_assert_nonnull (strstr (ran.out, "- torn grain"));
}

static void
test_refusals (void)
{
  g_autofree char *demo = running_demo ();
  g_auto (Running) one = running ("compare", demo, "--cut", "outline", "--bits", "up-cut-6.35x25", NULL);
  g_auto (Running) no_cut = running ("compare", demo, "--bits", BITS, NULL);
  g_auto (Running) unknown
      = running ("compare", demo, "--cut", "outline", "--bits", "up-cut-6.35x25,none", NULL);
  g_auto (Running) short_ones
      = running ("compare", demo, "--cut", "outline", "--bits", "down-cut-3.2x12,up-cut-3.2x12", NULL);
  g_assert_cmpint (one.status, ==, 2);
  g_assert_nonnull (strstr (one.err, "two to four --bits"));
  g_assert_cmpint (no_cut.status, ==, 2);
  g_assert_cmpint (unknown.status, ==, 2);
  g_assert_nonnull (strstr (unknown.err, "“none”: there is no such bit"));
  g_assert_cmpint (short_ones.status, ==, 1);
  g_assert_nonnull (strstr (short_ones.out, "None of these may be used for this cut."));
}

static void
test_picture (void)
{
  g_autofree char *demo = running_demo (), *folder = g_dir_make_tmp ("spelch-XXXXXX", NULL);
  g_autofree char *svg = g_build_filename (folder, "side.svg", NULL), *text = NULL;
  g_auto (Running) ran = running ("compare", demo, "--cut", "outline", "--bits", BITS, "-o", svg, NULL);
  g_auto (Running) wrong
      = running ("compare", demo, "--cut", "outline", "--bits", BITS, "-o", "side.txt", NULL);
  g_assert_cmpint (ran.status, ==, 0);
  g_assert_true (g_file_get_contents (svg, &text, NULL, NULL));
  g_assert_nonnull (strstr (text, "<svg"));
  g_assert_nonnull (strstr (text, "1360"));
  g_assert_cmpint (wrong.status, ==, 2);
  g_assert_nonnull (strstr (wrong.err, ".svg, .png or .pdf"));
  g_unlink (svg);
  g_rmdir (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/command/compare/agrees", test_agrees);
  g_test_add_func ("/command/compare/table", test_table);
  g_test_add_func ("/command/compare/refusals", test_refusals);
  g_test_add_func ("/command/compare/picture", test_picture);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Asking "what if": each question changes the answer of plan, rank and draw as asked, and a shop log's
 * corrections come in with --log. Figures are worked by hand.
 */
#include "running.h"

#include "files/list-file.h"
#include "files/part-file.h"
#include "shop/log-entry.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

static Running
ask (const char *command, const char *cut, const char *option, const char *value)
{
  g_autofree char *file = running_demo ();
  return running (command, file, "--cut", cut, "--json", option, value, NULL);
}

static double
first_tip (JsonObject *cut)
{
  return json_object_get_double_member (
      json_array_get_object_element (json_object_get_array_member (cut, "passes"), 0), "tip_mm");
}

/* What a plan says about itself when it was asked so. */
static void
test_plan (void)
{
  const struct
  {
    const char *option, *value, *member; /* of the cut, or of the outermost object */
    bool of_cut;
    const char *text;
    double number;
  } rows[] = {
    { "--bit", "down-cut-6.35x25", "bit", true, "down-cut-6.35x25", 0 },
    { "--speed", "12000", "speed_rpm", true, NULL, 12000 },
    { "--feed", "2345", "feed_mm_min", true, NULL, 2345 },
    { "--way-up", "b", "way_up", true, "b", 0 },
    { "--machine", "light-gantry", "machine", false, "light-gantry", 0 },
    { "--board", "mdf-18", "board", false, "mdf-18", 0 },
    { "--datum", "face", "datum", false, "face", 0 },
    /* 17/24 in is no 64th, 0.73 in is 18.542 mm */
    { "--thickness", "0.73 in", "thickness_mm", false, NULL, 18.542 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (Running) ran = ask ("plan", "outline", rows[i].option, rows[i].value);
      g_autoptr (JsonParser) parser = json_parser_new ();
      g_test_message ("%s %s: %s", rows[i].option, rows[i].value, ran.err);
      g_assert_cmpint (ran.status, <=, 1);
      JsonObject *object = rows[i].of_cut ? running_cut (parser, ran.out) : running_object (parser, ran.out);
      if (rows[i].text != NULL)
        g_assert_cmpstr (json_object_get_string_member (object, rows[i].member), ==, rows[i].text);
      else
        g_assert_cmpfloat_with_epsilon (json_object_get_double_member (object, rows[i].member),
                                        rows[i].number, 1e-6);
    }
  g_auto (Running) pass = ask ("plan", "outline", "--pass", "7.5");
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_assert_cmpfloat_with_epsilon (first_tip (running_cut (parser, pass.out)), 7.5, 1e-9);
}

/* A ranking tells of the board, machine, thickness and datum that were asked about. Speed, feed and passes
 * are held only for the bit that was asked for or accepted. */
static void
test_rank (void)
{
  const struct
  {
    const char *option, *value, *member, *text;
    double number;
  } rows[] = { { "--machine", "light-gantry", "machine", "light-gantry", 0 },
               { "--board", "mdf-18", "board", "mdf-18", 0 },
               { "--datum", "face", "datum", "face", 0 },
               { "--thickness", "18.6", "thickness_mm", NULL, 18.6 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (Running) ran = ask ("rank", "outline", rows[i].option, rows[i].value);
      g_autoptr (JsonParser) parser = json_parser_new ();
      JsonObject *object = running_object (parser, ran.out);
      if (rows[i].text != NULL)
        g_assert_cmpstr (json_object_get_string_member (object, rows[i].member), ==, rows[i].text);
      else
        g_assert_cmpfloat_with_epsilon (json_object_get_double_member (object, rows[i].member),
                                        rows[i].number, 1e-9);
    }
  g_autofree char *file = running_demo ();
  g_auto (Running) held = running ("rank", file, "--cut", "outline", "--bit", "down-cut-6.35x25", "--speed",
                                   "12000", "--feed", "2345", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *choices = json_object_get_array_member (running_cut (parser, held.out), "choices");
  guint as_asked = 0, others = 0;
  for (guint i = 0; i < json_array_get_length (choices); i++)
    {
      JsonObject *choice = json_array_get_object_element (choices, i);
      bool asked = g_str_equal (json_object_get_string_member (choice, "bit"), "down-cut-6.35x25");
      if (json_object_get_null_member (choice, "feed_mm_min"))
        continue;
      bool is = json_object_get_double_member (choice, "feed_mm_min") == 2345
                && json_object_get_double_member (choice, "speed_rpm") == 12000;
      as_asked += asked && is;
      others += !asked && is;
    }
  g_assert_cmpuint (as_asked, >, 0);
  g_assert_cmpuint (others, ==, 0);
}

static char *
drawn (const char *option, const char *value)
{
  g_autofree char *file = running_demo ();
  g_autofree char *path = NULL;
  int made = g_file_open_tmp ("drawn-XXXXXX.svg", &path, NULL);
  char *text = NULL;
  g_close (made, NULL);
  g_auto (Running) ran = running ("draw", file, "--cut", "outline", "-o", path, option, value, NULL);
  g_test_message ("%s %s: %s", option, value, ran.err);
  g_assert_cmpint (ran.status, <=, 1);
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_remove (path);
  return text;
}

/* Every question but the feed, which no line of the side view shows, changes the picture. */
static void
test_draw (void)
{
  const struct
  {
    const char *option, *value;
  } rows[] = { { "--bit", "down-cut-6.35x25" },
               { "--pass", "7.5" },
               { "--machine", "router-table" },
               { "--board", "mdf-18" },
               { "--way-up", "b" },
               { "--thickness", "19.3" },
               { "--datum", "face" } };
  g_autofree char *plain = drawn ("--look", "light");
  g_autofree char *again = drawn ("--look", "light");
  g_assert_true (g_str_equal (plain, again));
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *changed = drawn (rows[i].option, rows[i].value);
      g_test_message ("%s %s", rows[i].option, rows[i].value);
      g_assert_false (g_str_equal (plain, changed));
    }
  g_autofree char *fed = drawn ("--feed", "2345");
  g_assert_cmpuint (strlen (fed), >, 5000);
}

/* A wrong value of each is refused in a sentence with the option and the value. */
static void
test_refused (void)
{
  const char *const rows[][2]
      = { { "--bit", "no-such-bit" }, { "--pass", "9 ells" },   { "--speed", "quick" },
          { "--feed", "-3" },         { "--machine", "lathe" }, { "--board", "brick" },
          { "--way-up", "up" },       { "--thickness", "0" },   { "--datum", "middle" },
          { "--units", "ells" },      { "--feed", "5,000" },    { "--feed", "5.000" },
          { "--speed", "18,000" },    { "--speed", "18.000" },  { "--thickness", "1,234" } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    for (guint command = 0; command < 2; command++)
      {
        g_auto (Running) ran = ask (command == 0 ? "plan" : "rank", "outline", rows[i][0], rows[i][1]);
        g_assert_cmpint (ran.status, ==, 2);
        g_assert_cmpstr (ran.out, ==, "");
        g_assert_nonnull (strstr (ran.err, rows[i][0]));
        g_assert_nonnull (strstr (ran.err, rows[i][1]));
      }
}

/* ---- A shop log ---- */

/* Two cuts with an up-cut whose motor-side edge came out a grade better than foretold, at a quarter more
 * power. */
static char *
write_log (void)
{
  g_autoptr (GArray) entries = g_array_new (FALSE, TRUE, sizeof (SpelchLogEntry));
  for (int i = 0; i < 2; i++)
    {
      SpelchLogEntry one = { .date = "2026-05-31",
                             .board = "birch-ply-18",
                             .bit = "up-cut-6.35x25",
                             .predicted = 4,
                             .grade = 3,
                             .power_w = 400,
                             .load_w = 500 };
      g_snprintf (one.id, sizeof one.id, "cut-%d", i);
      g_array_append_val (entries, one);
    }
  g_autofree char *text = spelch_list_to_json (SPELCH_LIST_LOG, entries, NULL);
  char *path = NULL;
  int file = g_file_open_tmp ("log-XXXXXX.json", &path, NULL);
  g_close (file, NULL);
  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  return path;
}

/* 2880 / (2 x 18000) = 0.08 mm a tooth: 1 + shear 2 + grain 1 = 4 at the motor side; by the log one
 * point less. */
static void
test_log (void)
{
  g_autofree char *file = running_demo ();
  g_autofree char *log = write_log ();
  g_auto (Running) bare
      = running ("plan", file, "--cut", "outline", "--bit", "up-cut-6.35x25", "--speed", "18000", "--feed",
                 "2880", "--pass", "9.2", "--pass", "18.3", "--json", NULL);
  g_auto (Running) told
      = running ("plan", file, "--cut", "outline", "--bit", "up-cut-6.35x25", "--speed", "18000", "--feed",
                 "2880", "--pass", "9.2", "--pass", "18.3", "--json", "--log", log, NULL);
  g_auto (Running) table
      = running ("plan", file, "--cut", "outline", "--bit", "up-cut-6.35x25", "--log", log, NULL);
  g_autoptr (JsonParser) one = json_parser_new ();
  g_autoptr (JsonParser) other = json_parser_new ();
  JsonObject *was = running_cut (one, bare.out), *is = running_cut (other, told.out);
  JsonObject *edge = json_array_get_object_element (json_object_get_array_member (is, "edges"), 0);
  JsonObject *motor = json_object_get_object_member (json_object_get_object_member (is, "log"), "motor");
  JsonObject *factor = json_object_get_object_member (is, "calibration");
  g_assert_true (json_object_get_null_member (was, "log")
                 && json_object_get_null_member (was, "calibration"));
  g_assert_cmpint (json_object_get_int_member (edge, "grade"), ==, 3);
  g_assert_cmpint (json_object_get_int_member (edge, "model_grade"), ==, 4);
  g_assert_cmpint (json_object_get_int_member (motor, "points"), ==, -1);
  g_assert_cmpint (json_object_get_int_member (motor, "points_cuts"), ==, 2);
  g_assert_cmpfloat (json_object_get_double_member (factor, "factor"), ==, 1.25);
  g_assert_cmpint (json_object_get_int_member (factor, "readings"), ==, 2);
  double before = json_object_get_double_member (json_object_get_object_member (was, "power_w"), "mid");
  double after = json_object_get_double_member (json_object_get_object_member (is, "power_w"), "mid");
  g_assert_cmpfloat_with_epsilon (after / before, 1.25, 1e-6);
  g_assert_nonnull (strstr (told.out, "Your log: 2 cuts came out cleaner than expected, 1 point less"));
  g_assert_nonnull (strstr (table.out, "at 1.25 times the tables'"));
  g_remove (log);
}

/* Of a bit alone, without another one that scores first. */
static int
seen_grade_of (const char *out, const char *bit, const char *way_up)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *choices = json_object_get_array_member (running_cut (parser, out), "choices");
  for (guint i = 0; i < json_array_get_length (choices); i++)
    {
      JsonObject *choice = json_array_get_object_element (choices, i);
      if (g_str_equal (json_object_get_string_member (choice, "bit"), bit)
          && g_str_equal (json_object_get_string_member (choice, "way_up"), way_up)
          && json_object_get_null_member (choice, "score_bit"))
        return (int)json_object_get_int_member (choice, "worst_seen_grade");
    }
  g_assert_not_reached ();
}

/* A ranking counts the log too, for bits of the starter set as well; other bits keep their grades. */
static void
test_rank_log (void)
{
  g_autofree char *file = running_demo ();
  g_autofree char *log = write_log ();
  g_auto (Running) bare = running ("rank", file, "--cut", "outline", "--json", NULL);
  g_auto (Running) told = running ("rank", file, "--cut", "outline", "--json", "--log", log, NULL);
  g_auto (Running) none = running ("rank", file, "--log", "/nowhere/log.json", NULL);
  g_auto (Running) part = running ("rank", file, "--log", file, NULL);
  g_remove (log);
  g_assert_cmpint (seen_grade_of (told.out, "up-cut-6.35x25", "a"), ==,
                   seen_grade_of (bare.out, "up-cut-6.35x25", "a") - 1);
  g_assert_cmpint (seen_grade_of (told.out, "straight-12.7x32", "a"), ==,
                   seen_grade_of (bare.out, "straight-12.7x32", "a"));
  g_assert_cmpint (none.status, ==, 2);
  g_assert_nonnull (strstr (none.err, "log.json"));
  g_assert_cmpint (part.status, ==, 2);
  g_assert_nonnull (strstr (part.err, "log is missing"));
}

/* By hand with an up-cut and nothing else, the line is to be knifed; under a gantry it isn't. */
static void
test_knife (void)
{
  g_autofree char *demo = running_demo (), *text = NULL;
  g_autofree char *starter = g_build_filename (g_getenv ("SPELCH_DATA"), "bits.json", NULL);
  g_autofree char *drawer = g_build_filename (g_get_tmp_dir (), "spelch-test-knife.json", NULL);
  g_autoptr (GArray) bits = NULL;
  g_assert_true (g_file_get_contents (starter, &text, NULL, NULL));
  bits = spelch_list_from_json (SPELCH_LIST_BITS, text, strlen (text), "bits", NULL, NULL);
  while (!g_str_equal (((const SpelchBit *)(const void *)bits->data)->id, "up-cut-6.35x25"))
    g_array_remove_index (bits, 0);
  g_array_set_size (bits, 1);
  g_autofree char *one = spelch_list_to_json (SPELCH_LIST_BITS, bits, NULL);
  g_assert_true (g_file_set_contents (drawer, one, -1, NULL));
  const char *const machines[] = { "plunge-router", "medium-gantry" };
  for (guint i = 0; i < G_N_ELEMENTS (machines); i++)
    {
      g_auto (Running) json = running ("rank", demo, "--cut", "shelf-dado", "--drawer", drawer, "--machine",
                                       machines[i], "--json", NULL);
      g_auto (Running) table
          = running ("rank", demo, "--cut", "shelf-dado", "--drawer", drawer, "--machine", machines[i], NULL);
      g_autoptr (JsonParser) parser = json_parser_new ();
      JsonObject *cut = running_cut (parser, json.out);
      g_assert_true (json_object_get_null_member (cut, "knife") == (i == 1));
      g_assert_true ((strstr (table.out, "Or knife the line") == NULL) == (i == 1));
      if (i == 0)
        g_assert_cmpfloat_with_epsilon (
            json_object_get_double_member (json_object_get_object_member (cut, "knife"), "deep_mm"), 1.3,
            1e-9);
    }
  g_remove (drawer);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/what-if/plan", test_plan);
  g_test_add_func ("/what-if/rank", test_rank);
  g_test_add_func ("/what-if/draw", test_draw);
  g_test_add_func ("/what-if/refused", test_refused);
  g_test_add_func ("/what-if/log", test_log);
  g_test_add_func ("/what-if/rank-log", test_rank_log);
  g_test_add_func ("/what-if/knife", test_knife);
  return g_test_run ();
}

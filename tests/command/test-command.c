/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The command line, run as a person or a program runs it: same numbers as the plan, sentences for bad input,
 * exit statuses.
 */
#include "running.h"

#include "files/list-file.h"
#include "files/part-file.h"
#include "files/shop-data.h"
#include "plan/constants.h"
#include "plan/plan.h"

#include <glib/gstdio.h>
#include <string.h>

static double
ratio (JsonObject *object, const char *member, double ours)
{
  double value = json_object_get_double_member (object, member);
  return ours != 0 ? value / ours : 1 + value;
}

/* The JSON holds the plan's numbers, to nine figures. */
static void
test_json_is_the_plan (void)
{
  g_autofree char *file = running_demo ();
  g_auto (Running) ran = running ("plan", file, "--cut", "outline", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *cut = running_cut (parser, ran.out);
  g_autoptr (SpelchPart) part = spelch_shop_demo ();
  SpelchPlan plan;
  spelch_plan_make (spelch_shop_constants (), part, &part->cuts[0],
                    &part->bits[spelch_part_find_bit (part, part->cuts[0].bit)], &plan);

  g_assert_cmpint (ran.status, ==, 0);
  g_assert_cmpfloat_with_epsilon (ratio (cut, "feed_mm_min", plan.feed_mm_min), 1, 1e-8);
  g_assert_cmpfloat_with_epsilon (ratio (cut, "chip_max_mm", plan.chip_max), 1, 1e-8);
  g_assert_cmpfloat_with_epsilon (ratio (cut, "time_s", plan.time_s), 1, 1e-8);
  g_assert_cmpfloat_with_epsilon (ratio (cut, "wall_heat_mj_mm2", plan.wall_heat), 1, 1e-8);
  JsonArray *passes = json_object_get_array_member (cut, "passes");
  g_assert_cmpuint (json_array_get_length (passes), ==, plan.n_passes);
  for (guint i = 0; i < plan.n_passes; i++)
    g_assert_cmpfloat_with_epsilon (
        ratio (json_array_get_object_element (passes, i), "tip_mm", plan.passes[i].tip_mm), 1, 1e-8);
  JsonObject *robust
      = json_object_get_object_member (json_object_get_object_member (cut, "windows"), "robust");
  g_assert_cmpfloat_with_epsilon (
      json_array_get_double_element (json_object_get_array_member (robust, "first_pass_mm"), 0),
      plan.windows.robust.first_pass.from, 1e-7);
}

/* Every member another program may rely on is there, null where nothing is computed yet. */
static void
test_json_members (void)
{
  const char *const members[] = { "cut",
                                  "bit",
                                  "way_up",
                                  "verdict",
                                  "stops",
                                  "passes",
                                  "edges",
                                  "windows",
                                  "entry",
                                  "speed_rpm",
                                  "feed_mm_min",
                                  "feed_per_tooth_mm",
                                  "chip_max_mm",
                                  "chip_mean_mm",
                                  "cutting_speed_m_s",
                                  "power_w",
                                  "force_n",
                                  "seat",
                                  "hold",
                                  "bending",
                                  "rubbing_share",
                                  "wall_heat_mj_mm2",
                                  "chip_room",
                                  "limits",
                                  "tabs",
                                  "setting_out",
                                  "bit_height_mm",
                                  "scoring",
                                  "time_s",
                                  "path_m",
                                  "edge_path_m",
                                  "life_m_left",
                                  "cost" };
  g_autofree char *file = running_demo ();
  g_auto (Running) ran = running ("plan", file, "--cut", "outline", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *cut = running_cut (parser, ran.out);
  for (guint i = 0; i < G_N_ELEMENTS (members); i++)
    g_assert_true (json_object_has_member (cut, members[i]));
  g_assert_true (json_object_get_null_member (cut, "cost"));

  /* a cut that has no bit yet, and one whose last pass would stop above the face */
  g_auto (Running) bare = running ("plan", file, "--cut", "shelf-dado", "--json", NULL);
  g_autoptr (JsonParser) other = json_parser_new ();
  JsonObject *empty = running_cut (other, bare.out);
  for (guint i = 0; i < G_N_ELEMENTS (members); i++)
    g_assert_true (json_object_has_member (empty, members[i]));
  g_assert_true (json_object_get_null_member (empty, "bit"));
  g_assert_true (json_object_get_null_member (empty, "speed_rpm"));
}

/* By hand, base of 80 mm and a 12.7 mm bit: the straightedge at 73.65; 18 mm of width in two tracks, 5.3
 * apart. */
static void
test_json_setting_out (void)
{
  g_autofree char *file = running_demo ();
  g_auto (Running) ran = running ("plan", file, "--cut", "shelf-dado", "--bit", "straight-12.7x32",
                                  "--machine", "plunge-router", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *out = json_object_get_object_member (running_cut (parser, ran.out), "setting_out");
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (out, "fence_offset_mm"), 73.65, 1e-9);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (out, "step_over_mm"), 5.3, 1e-9);
  g_assert_cmpint (json_object_get_int_member (out, "tracks"), ==, 2);
  g_assert_cmpstr (json_object_get_string_member (out, "round"), ==, "with-clock");
  g_assert_true (json_object_get_null_member (out, "fit"));
  g_assert_true (json_object_get_null_member (out, "bit_heights_mm"));
  g_autofree char *docs = NULL,
                  *guide = g_test_build_filename (G_TEST_DIST, "..", "docs", "command-line.md", NULL);
  g_assert_true (g_file_get_contents (guide, &docs, NULL, NULL));
  g_autoptr (GList) members = json_object_get_members (out);
  for (GList *m = members; m != NULL; m = m->next)
    {
      g_autofree char *row = g_strdup_printf ("`%s`", (const char *)m->data);
      g_test_message ("%s", row);
      g_assert_nonnull (strstr (docs, row));
    }
}

/* Each arris gives its own reasons: the right wall of a slot is a climb cut and pays nothing for chips. */
static void
test_json_why (void)
{
  g_autofree char *file = running_demo ();
  g_auto (Running) ran = running ("plan", file, "--cut", "outline", "--bit", "up-cut-6.35x25", "--feed",
                                  "9000", "--speed", "18000", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *edges = json_object_get_array_member (running_cut (parser, ran.out), "edges");
  for (guint i = 0; i < 2; i++)
    {
      JsonObject *edge = json_array_get_object_element (edges, i);
      JsonArray *why = json_object_get_array_member (edge, "why");
      g_autofree char *grade
          = g_strdup_printf ("Grade %d of 5", (int)json_object_get_int_member (edge, "grade"));
      bool said = false;
      for (guint j = 0; j < json_array_get_length (why); j++)
        said |= g_str_has_prefix (json_array_get_string_element (why, j), grade);
      g_assert_true (said);
    }
  g_assert_cmpint (json_object_get_int_member (json_array_get_object_element (edges, 0), "grade"), >,
                   json_object_get_int_member (json_array_get_object_element (edges, 1), "grade"));
}

/* A held scoring pass: each pass names the bit, entry, speed and feed that it is made with. */
static void
test_json_scored (void)
{
  g_autofree char *demo = running_demo (), *text = NULL;
  g_assert_true (g_file_get_contents (demo, &text, NULL, NULL));
  g_auto (GStrv) halves = g_strsplit (text, "\"bit\": \"compression-6.35x22\"", 2);
  g_autofree char *held
      = g_strdup_printf ("%s\"bit\": \"up-cut-6.35x25\", \"held\": { \"pass_plan\": \"scored\", "
                         "\"score_bit\": \"down-cut-6.35x25\" }%s",
                         halves[0], halves[1]);
  g_autofree char *file = g_build_filename (g_get_tmp_dir (), "spelch-test-scored.spelch", NULL);
  g_assert_true (g_file_set_contents (file, held, -1, NULL));
  g_auto (Running) ran = running ("plan", file, "--cut", "outline", "--json", NULL);
  g_remove (file);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *cut = running_cut (parser, ran.out);
  JsonArray *passes = json_object_get_array_member (cut, "passes");
  const char *const bits[] = { "down-cut-6.35x25", "up-cut-6.35x25" }, *const entries[]
                                                                       = { "ramp", "plunge" };
  double feeds[2];
  for (guint i = 0; i < 2; i++)
    {
      JsonObject *pass = json_array_get_object_element (passes, i);
      g_assert_cmpstr (json_object_get_string_member (pass, "bit"), ==, bits[i]);
      g_assert_cmpstr (json_object_get_string_member (pass, "entry"), ==, entries[i]);
      feeds[i] = json_object_get_double_member (pass, "feed_mm_min");
    }
  g_assert_cmpfloat (feeds[0], !=, feeds[1]);
  g_assert_cmpfloat (feeds[1], ==, json_object_get_double_member (cut, "feed_mm_min"));
  g_assert_cmpstr (json_object_get_string_member (cut, "pass_plan"), ==, "scored");
}

/* Every term that costs or spares points says where its rule comes from. */
static void
test_json_sources (void)
{
  const char *const terms[] = { "shear", "backing" };
  g_autofree char *file = running_demo ();
  g_auto (Running) ran
      = running ("plan", file, "--cut", "outline", "--bit", "down-cut-6.35x25", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonArray *edges = json_object_get_array_member (running_cut (parser, ran.out), "edges");
  JsonArray *found = json_object_get_array_member (json_array_get_object_element (edges, 2), "terms");
  for (guint i = 0; i < G_N_ELEMENTS (terms); i++)
    {
      JsonObject *term = json_array_get_object_element (found, i);
      g_assert_cmpstr (json_object_get_string_member (term, "term"), ==, terms[i]);
      g_assert_false (json_object_get_null_member (term, "source"));
    }
}

static int
motor_grade (JsonObject *cut)
{
  return (int)json_object_get_int_member (
      json_array_get_object_element (json_object_get_array_member (cut, "edges"), 0), "grade");
}

/* Asking "what if" changes the answer and not the file. */
static void
test_what_if (void)
{
  g_autofree char *file = running_demo ();
  g_autofree char *before = NULL, *after = NULL;
  g_assert_true (g_file_get_contents (file, &before, NULL, NULL));
  g_auto (Running) shallow
      = running ("plan", file, "--cut", "outline", "--pass", "6", "--pass", "18.3mm", "--json", NULL);
  g_auto (Running) deep
      = running ("plan", file, "--cut", "outline", "--pass", "3/8", "--pass", "18,3 mm", "--json", NULL);
  g_autoptr (JsonParser) one = json_parser_new ();
  g_autoptr (JsonParser) other = json_parser_new ();
  g_assert_cmpint (motor_grade (running_cut (one, shallow.out)), >, 3);
  g_assert_cmpint (motor_grade (running_cut (other, deep.out)), ==, 1);
  g_assert_true (g_file_get_contents (file, &after, NULL, NULL));
  g_assert_cmpstr (before, ==, after);
}

/* The depths asked for are all the passes: one that goes through stands alone. */
static void
test_passes_asked (void)
{
  g_autofree char *file = running_demo ();
  g_auto (Running) single = running ("plan", file, "--cut", "outline", "--pass", "18.3mm", "--json", NULL);
  g_auto (Running) dado = running ("plan", file, "--cut", "shelf-dado", "--bit", "up-cut-6.35x25", "--pass",
                                   "9", "--json", NULL);
  g_auto (Running) past = running ("plan", file, "--cut", "shelf-dado", "--pass", "30", NULL);
  g_auto (Running) twice
      = running ("plan", file, "--cut", "outline", "--pass", "18.1", "--pass", "18.4", NULL);
  g_autoptr (JsonParser) one = json_parser_new ();
  g_autoptr (JsonParser) other = json_parser_new ();
  JsonArray *passes = json_object_get_array_member (running_cut (one, single.out), "passes");
  g_assert_cmpuint (json_array_get_length (passes), ==, 1);
  g_assert_cmpfloat_with_epsilon (
      json_object_get_double_member (json_array_get_object_element (passes, 0), "tip_mm"), 18.3, 1e-6);
  g_assert_cmpuint (
      json_array_get_length (json_object_get_array_member (running_cut (other, dado.out), "passes")), ==, 1);
  g_assert_cmpint (past.status, ==, 2);
  g_assert_nonnull (strstr (past.err, "shelf-dado"));
  g_assert_nonnull (strstr (past.err, "9 mm"));
  g_assert_cmpint (twice.status, ==, 2);
  g_assert_nonnull (strstr (twice.err, "18.4"));
}

/* Another board need only suit the cut that was asked about. */
static void
test_one_cut_asked (void)
{
  g_autofree char *file = running_demo ();
  g_auto (Running) thin = running ("plan", file, "--cut", "outline", "--board", "birch-ply-12", "--bit",
                                   "compression-12.7x35", NULL);
  g_auto (Running) all = running ("plan", file, "--board", "birch-ply-12", NULL);
  g_assert_cmpint (thin.status, !=, 2);
  g_assert_nonnull (strstr (thin.out, "below the board"));
  g_assert_cmpint (all.status, ==, 2);
  g_assert_nonnull (strstr (all.err, "rail-mortise"));
}

/* A plan without a feed tells no time, chip or feed. */
static void
test_no_feed (void)
{
  const char *const nothing[]
      = { "feed_mm_min", "feed_per_tooth_mm", "chip_max_mm", "chip_mean_mm", "time_s" };
  g_autofree char *file = running_demo ();
  g_auto (Running) text = running ("plan", file, "--cut", "outline", "--machine", "trim-router", NULL);
  g_auto (Running) json
      = running ("plan", file, "--cut", "outline", "--machine", "trim-router", "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *cut = running_cut (parser, json.out);
  g_assert_cmpint (text.status, ==, 1);
  g_assert_null (strstr (text.out, " 0 mm/min"));
  g_assert_nonnull (strstr (text.out, "none fits"));
  for (guint i = 0; i < G_N_ELEMENTS (nothing); i++)
    g_assert_true (json_object_get_null_member (cut, nothing[i]));
}

static void
test_statuses (void)
{
  g_autofree char *file = running_demo ();
  g_auto (Running) fine = running ("check", file, NULL);
  g_auto (Running) stop
      = running ("plan", file, "--cut", "outline", "--bit", "up-cut-6.35x25", "--speed", "40000", NULL);
  g_auto (Running) none = running ("plan", "/nowhere/at-all.spelch", NULL);
  g_auto (Running) word = running ("plane", file, NULL);
  g_auto (Running) cut = running ("plan", file, "--cut", "no-such-cut", NULL);
  g_auto (Running) pass = running ("plan", file, "--pass", "9 ells", NULL);
  g_auto (Running) help = running ("plan", "--help", NULL);
  g_auto (Running) window = running (file, NULL);
  g_auto (Running) version = running ("--version", NULL);
  g_assert_cmpint (fine.status, ==, 0);
  g_assert_cmpint (stop.status, ==, 1);
  g_assert_nonnull (strstr (stop.out, "DO NOT CUT"));
  g_assert_cmpint (none.status, ==, 2);
  g_assert_nonnull (strstr (none.err, "at-all.spelch"));
  g_assert_cmpint (word.status, ==, 2);
  g_assert_cmpint (cut.status, ==, 2);
  g_assert_nonnull (strstr (cut.err, "no-such-cut"));
  g_assert_cmpint (pass.status, ==, 2);
  g_assert_nonnull (strstr (pass.err, "9 ells"));
  g_assert_cmpint (help.status, ==, 0);
  g_assert_nonnull (strstr (help.out, "--json"));
  g_assert_cmpint (window.status, ==, 2);
  g_assert_nonnull (strstr (window.err, "display"));
  g_assert_cmpint (version.status, ==, 0);
  g_assert_cmpstr (version.out, ==, "Spelch " SPELCH_VERSION ", model " SPELCH_MODEL_VERSION "\n");
}

/* Lists are told from a part by what they hold. */
static void
test_check (void)
{
  g_autofree char *file = running_demo ();
  g_autofree char *good
      = g_test_build_filename (G_TEST_DIST, "files", "log-corpus", "good", "small.json", NULL);
  g_autofree char *bad
      = g_test_build_filename (G_TEST_DIST, "files", "log-corpus", "bad", "grade-both.json", NULL);
  g_auto (Running) part = running ("check", file, "--json", NULL);
  g_auto (Running) log = running ("check", good, "--json", NULL);
  g_auto (Running) words = running ("check", good, NULL);
  g_autofree char *drawer = g_build_filename (g_getenv ("SPELCH_DATA"), "bits.json", NULL);
  g_auto (Running) bits = running ("check", drawer, "--json", NULL);
  g_assert_nonnull (strstr (bits.out, "\"kind\": \"bits\""));
  g_auto (Running) wrong = running ("check", bad, NULL);
  g_assert_nonnull (strstr (part.out, "\"kind\": \"part\""));
  g_assert_nonnull (strstr (log.out, "\"kind\": \"log\""));
  g_assert_nonnull (strstr (log.out, "\"entries\": 2"));
  g_assert_nonnull (strstr (words.out, "2 entries"));
  g_assert_cmpint (wrong.status, ==, 2);
  g_assert_nonnull (strstr (wrong.err, "grade-both.json: log[1] '2026-06-02-outline'"));
}

/* Pictures in all three kinds, and a clear refusal to write where nothing can be written. */
static void
test_draw (void)
{
  const struct
  {
    const char *name, *begins;
  } kinds[] = { { "side.svg", "<?xml" }, { "side.png", "\x89PNG" }, { "side.pdf", "%PDF" } };
  g_autofree char *file = running_demo ();
  g_autofree char *folder = g_dir_make_tmp ("spelch-XXXXXX", NULL);
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autofree char *path = g_build_filename (folder, kinds[i].name, NULL);
      g_autofree char *bytes = NULL;
      gsize length = 0;
      g_auto (Running) ran = running ("draw", file, "--cut", "outline", "-o", path, NULL);
      g_assert_cmpint (ran.status, ==, 0);
      g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
      g_assert_cmpuint (length, >, 5000);
      g_assert_true (memcmp (bytes, kinds[i].begins, strlen (kinds[i].begins)) == 0);
      g_remove (path);
    }
  g_rmdir (folder);
  g_auto (Running) nowhere = running ("draw", file, "--cut", "outline", "-o", "/nowhere/side.svg", NULL);
  g_assert_cmpint (nowhere.status, ==, 3);
  g_auto (Running) kind = running ("draw", file, "--cut", "outline", "-o", "side.bmp", NULL);
  g_assert_cmpint (kind.status, ==, 2);
}

/* A pass in slow motion: the whole of it in one file, or a series of pictures. */
static void
test_draw_motion (void)
{
  g_autofree char *file = running_demo (), *folder = g_dir_make_tmp ("motion-XXXXXX", NULL);
  g_autofree char *gif = g_build_filename (folder, "pass.gif", NULL), *text = NULL;
  g_autofree char *png = g_build_filename (folder, "pass.png", NULL);
  g_autofree char *last = g_build_filename (folder, "pass-032.png", NULL), *beyond = NULL;
  gsize length;
  g_auto (Running) film
      = running ("draw", file, "--cut", "outline", "--motion", gif, "--size", "400", "--height", "360", NULL);
  g_assert_cmpint (film.status, ==, 0);
  g_assert_true (g_file_get_contents (gif, &text, &length, NULL));
  g_assert_true (length > 10000 && memcmp (text, "GIF89a", 6) == 0);
  g_auto (Running) series = running ("draw", file, "--cut", "outline", "--motion", png, "--show-pass", "2",
                                     "--size", "300", "--height", "300", NULL);
  g_assert_cmpint (series.status, ==, 0);
  /* Two edges, four turns, four pictures for each tooth. */
  beyond = g_build_filename (folder, "pass-033.png", NULL);
  g_assert_true (g_file_test (last, G_FILE_TEST_EXISTS));
  g_assert_false (g_file_test (beyond, G_FILE_TEST_EXISTS));
  g_auto (Running) nowhere = running ("draw", file, "--cut", "outline", "--motion", "/nowhere/p.gif", NULL);
  g_assert_cmpint (nowhere.status, ==, 3);
  g_auto (Running) kind = running ("draw", file, "--cut", "outline", "--motion", "p.webp", NULL);
  g_assert_cmpint (kind.status, ==, 2);
  g_auto (Running) both = running ("draw", file, "--cut", "outline", "--motion", gif, "-o", "p.svg", NULL);
  g_assert_cmpint (both.status, ==, 2);
  g_assert_nonnull (strstr (both.err, "either -o FILE or --motion FILE"));
  for (guint i = 1; i <= 32; i++)
    {
      g_autofree char *name = g_strdup_printf ("%s/pass-%03u.png", folder, i);
      g_remove (name);
    }
  g_remove (gif);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
}

/* A drawer of two bits of the starter set, in a file of its own. */
static char *
write_drawer (const char *const ids[2])
{
  guint n;
  const SpelchBit *bits = spelch_shop_bits (&n);
  g_autoptr (GArray) drawer = g_array_new (FALSE, FALSE, sizeof (SpelchBit));
  for (guint i = 0; i < n; i++)
    if (g_str_equal (bits[i].id, ids[0]) || g_str_equal (bits[i].id, ids[1]))
      g_array_append_val (drawer, bits[i]);
  g_autofree char *text = spelch_list_to_json (SPELCH_LIST_BITS, drawer, NULL);
  char *path = NULL;
  int file = g_file_open_tmp ("drawer-XXXXXX.json", &path, NULL);
  g_close (file, NULL);
  g_assert_true (g_file_set_contents (path, text, -1, NULL));
  return path;
}

/* A dado with the show face up: the down-cut before the up-cut (common practice, no source), with only what
 * the drawer holds, a blind cut one way up. In between, the up-cut after the down-cut has scored. */
static void
test_rank_drawer (void)
{
  const char *const ids[2] = { "up-cut-8x32", "down-cut-9.5x25" };
  g_autofree char *file = running_demo ();
  g_autofree char *drawer = write_drawer (ids);
  g_auto (Running) ran = running ("rank", file, "--cut", "shelf-dado", "--drawer", drawer, "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *cut = running_cut (parser, ran.out);
  JsonArray *choices = json_object_get_array_member (cut, "choices");
  JsonObject *scored = json_array_get_object_element (choices, 1);
  JsonObject *last = json_array_get_object_element (choices, 2);
  g_remove (drawer);
  g_assert_cmpint (ran.status, ==, 0);
  g_assert_cmpstr (json_object_get_string_member (cut, "best"), ==, "down-cut-9.5x25");
  g_assert_cmpuint (json_array_get_length (choices), ==, 3);
  g_assert_cmpstr (json_object_get_string_member (scored, "bit"), ==, "up-cut-8x32");
  g_assert_cmpstr (json_object_get_string_member (scored, "score_bit"), ==, "down-cut-9.5x25");
  g_assert_true (json_object_get_null_member (last, "score_bit"));
  g_assert_cmpstr (json_object_get_string_member (last, "bit"), ==, "up-cut-8x32");
  g_assert_false (json_object_get_boolean_member (last, "meets_accepted"));
  JsonArray *reasons = json_object_get_array_member (last, "reasons");
  bool tears = false;
  for (guint i = 0; i < json_array_get_length (reasons); i++)
    {
      JsonObject *reason = json_array_get_object_element (reasons, i);
      const char *const members[]
          = { "reason", "for", "stop", "face", "side", "term", "value", "limit", "sentence" };
      for (guint m = 0; m < G_N_ELEMENTS (members); m++)
        g_assert_true (json_object_has_member (reason, members[m]));
      tears |= g_str_equal (json_object_get_string_member (reason, "reason"), "tears");
    }
  g_assert_true (tears);
  JsonObject *root = json_node_get_object (json_parser_get_root (parser));
  g_assert_true (json_object_get_null_member (root, "order"));
}

/* Without a cut named, every cut is ranked and put in an order; outlines come last. */
static void
test_rank_order (void)
{
  g_autofree char *file = running_demo ();
  g_auto (Running) ran = running ("rank", file, "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  running_cut (parser, ran.out);
  JsonObject *root = json_node_get_object (json_parser_get_root (parser));
  JsonArray *steps = json_object_get_array_member (json_object_get_object_member (root, "order"), "steps");
  guint cuts = json_array_get_length (json_object_get_array_member (root, "cuts"));
  g_assert_cmpint (ran.status, ==, 0);
  g_assert_cmpuint (json_array_get_length (steps), ==, cuts);
  g_assert_cmpstr (json_object_get_string_member (json_array_get_object_element (steps, cuts - 1), "cut"), ==,
                   "outline");
}

/* Nothing that may cut: status 1, and what to look for; bad drawers: status 2 and a sentence naming the file.
 */
static void
test_rank_nothing (void)
{
  const char *const ids[2] = { "straight-19x32", "straight-12.7x32" };
  g_autofree char *file = running_demo ();
  g_autofree char *boards = g_build_filename (g_getenv ("SPELCH_DATA"), "boards.json", NULL);
  g_autofree char *drawer = write_drawer (ids);
  g_auto (Running) ran = running ("rank", file, "--cut", "rail-mortise", "--drawer", drawer, NULL);
  g_auto (Running) none = running ("rank", file, "--cut", "peg-holes", "--drawer", drawer, NULL);
  g_auto (Running) missing = running ("rank", file, "--drawer", "/nowhere/bits.json", NULL);
  g_auto (Running) wrong = running ("rank", file, "--drawer", boards, NULL);
  g_auto (Running) elsewhere = running ("plan", file, "--drawer", drawer, NULL);
  g_remove (drawer);
  g_assert_nonnull (strstr (ran.out, "What to look for:"));
  g_assert_nonnull (strstr (ran.out, "A down-cut would do: "));
  g_assert_cmpint (none.status, ==, 1);
  g_assert_nonnull (strstr (none.out, "Not to be cut with:"));
  g_assert_cmpint (missing.status, ==, 2);
  g_assert_nonnull (strstr (missing.err, "bits.json"));
  g_assert_cmpint (wrong.status, ==, 2);
  g_assert_cmpint (elsewhere.status, ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/command/json-is-the-plan", test_json_is_the_plan);
  g_test_add_func ("/command/json-members", test_json_members);
  g_test_add_func ("/command/json-setting-out", test_json_setting_out);
  g_test_add_func ("/command/json-why", test_json_why);
  g_test_add_func ("/command/json-sources", test_json_sources);
  g_test_add_func ("/command/what-if", test_what_if);
  g_test_add_func ("/command/passes-asked", test_passes_asked);
  g_test_add_func ("/command/one-cut-asked", test_one_cut_asked);
  g_test_add_func ("/command/no-feed", test_no_feed);
  g_test_add_func ("/command/statuses", test_statuses);
  g_test_add_func ("/command/check", test_check);
  g_test_add_func ("/command/draw", test_draw);
  g_test_add_func ("/command/draw-motion", test_draw_motion);
  g_test_add_func ("/command/json-scored", test_json_scored);
  g_test_add_func ("/command/rank-drawer", test_rank_drawer);
  g_test_add_func ("/command/rank-order", test_rank_order);
  g_test_add_func ("/command/rank-nothing", test_rank_nothing);
  return g_test_run ();
}

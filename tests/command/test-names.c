/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The members of the JSON output that other programs can rely on, name by name and kind by kind, on the demo
 * and on every acceptance part. The names are typed here as they were promised, not taken from the program.
 */
#include "running.h"

#include "plan/choose.h"
#include "plan/conflict.h"

#include <stdbool.h>
#include <string.h>

/* A member by its path, "[]" for every entry of a list, and what it holds: t text, n number, b true or false,
 * l list, o object; - after it: null where nothing is computed. A list of codes: one of them. */
typedef struct
{
  const char *path, *kinds, *codes;
} Name;

static const Name PLAN_NAMES[] = {
  { "cut", "t" },
  { "bit", "t-" },
  { "way_up", "t", "a b" },
  { "verdict", "t-", "do_not_cut not_checked no_objection" },
  { "stops", "l" },
  { "stops[].stop", "t" },
  { "stops[].sentence", "t" },
  { "passes", "l" },
  { "passes[].n", "n" },
  { "passes[].bit", "t" },
  { "passes[].tip_mm", "n" },
  { "passes[].from", "t", "near bed" },
  { "passes[].side_allowance_mm", "n" },
  { "passes[].tracks", "n" },
  { "passes[].sense", "t", "conventional climb slot" },
  { "passes[].entry", "t", "plunge ramp helix edge drilled staged lowered" },
  { "passes[].speed_rpm", "n" },
  { "passes[].feed_mm_min", "n-" },
  { "passes[].plunge_feed_mm_min", "n-" },
  { "edges", "l" },
  { "edges[].face", "t", "a b" },
  { "edges[].side", "t", "motor far" },
  { "edges[].wall", "t", "left right" },
  { "edges[].seen", "b" },
  { "edges[].grade", "n" },
  { "edges[].word", "t" },
  { "edges[].shear", "t", "not-cut press-in neutral pull-out" },
  { "edges[].terms", "l" },
  { "edges[].terms[].term", "t", "shear backing scored grain exit-corner chip wear log" },
  { "edges[].terms[].points", "n" },
  { "edges[].terms[].evidence", "t", "measured memory analogy geometry practice" },
  { "edges[].terms[].source", "t" },
  { "edges[].why", "l" },
  { "edges[].why[]", "t" },
  { "windows", "o-" },
  { "windows.nominal", "o" },
  { "windows.nominal.first_pass_mm", "l-" },
  { "windows.nominal.last_tip_mm", "l-" },
  { "windows.robust", "o" },
  { "windows.robust.first_pass_mm", "l-" },
  { "windows.robust.last_tip_mm", "l-" },
  { "windows.opened_by", "t",
    "nothing-needed measure bed measure-and-bed backer measure-and-backer longer-bit other-bit" },
  { "entry", "o-" },
  { "entry.kind", "t", "plunge ramp helix edge drilled staged lowered" },
  { "entry.angle_deg", "n-" },
  { "entry.length_mm", "n-" },
  { "entry.legs", "n-" },
  { "entry.circle_mm", "n-" },
  { "speed_rpm", "n-" },
  { "feed_mm_min", "n-" },
  { "feed_per_tooth_mm", "n-" },
  { "chip_max_mm", "n-" },
  { "chip_mean_mm", "n-" },
  { "cutting_speed_m_s", "n-" },
  { "power_w", "o-" },
  { "power_w.low", "n" },
  { "power_w.mid", "n" },
  { "power_w.high", "n" },
  { "force_n", "o-" },
  { "force_n.tangential_mean", "n" },
  { "force_n.sideways_peak", "n" },
  { "force_n.ripple", "n" },
  { "force_n.axial_mean", "n" },
  { "force_n.lift_bound", "n" },
  { "seat", "l-" },
  { "seat[].pair", "t", "board-bed board-table base-board board-bench" },
  { "seat[].direction", "t", "together apart" },
  { "seat[].mean_n", "n" },
  { "seat[].low_n", "n" },
  { "seat[].high_n", "n" },
  { "seat[].bound_n", "n" },
  { "hold", "o-" },
  { "hold.needed_n", "n-" },
  { "hold.available_n", "n-" },
  { "hold.factor", "n-" },
  { "bending", "o-" },
  { "bending.deflection_mm", "n" },
  { "bending.machine_mm", "n" },
  { "bending.stress_mpa", "n" },
  { "bending.stress_share", "n" },
  { "rubbing_share", "n-" },
  { "wall_heat_mj_mm2", "n-" },
  { "chip_room", "n-" },
  { "limits", "l-" },
  { "limits[].name", "t" },
  { "limits[].share", "n" },
  { "limits[].binding", "b" },
  { "tabs", "o-" },
  { "setting_out", "o-" },
  { "setting_out.width_mm", "n" },
  { "setting_out.tracks", "n" },
  { "setting_out.step_over_mm", "n-" },
  { "setting_out.overlap_mm", "n-" },
  { "setting_out.drops_out", "b" },
  { "setting_out.corner_radius_mm", "n-" },
  { "setting_out.fit", "o-" },
  { "setting_out.round", "t", "along with-clock against-clock" },
  { "setting_out.inside", "b" },
  { "setting_out.fence_offset_mm", "n-" },
  { "setting_out.guide_bush_mm", "n-" },
  { "setting_out.guide_bush_offset_mm", "n-" },
  { "setting_out.fence_to_bit_mm", "n-" },
  { "setting_out.bit_stands_out_mm", "n-" },
  { "setting_out.bit_stands_out_by_track_mm", "l-" },
  { "setting_out.bit_heights_mm", "l-" },
  { "setting_out.pecks", "n-" },
  { "setting_out.peck_mm", "n-" },
  { "setting_out.tabs_at_mm", "l-" },
  { "setting_out.sentences", "l" },
  { "bit_height_mm", "n-" },
  { "scoring", "o-" },
  { "time_s", "n-" },
  { "path_m", "n-" },
  { "edge_path_m", "n-" },
  { "life_m_left", "n-" },
  { "cost", "n-" },
  { "log", "o-" },
  { "calibration", "o-" },
};

static const Name RANK_NAMES[] = {
  { "cut", "t" },
  { "best", "t-" },
  { "best_way_up", "t-", "a b" },
  { "choices", "l" },
  { "choices[].bit", "t" },
  { "choices[].way_up", "t", "a b" },
  { "choices[].verdict", "t", "do_not_cut not_checked no_objection" },
  { "choices[].meets_accepted", "b" },
  { "choices[].worst_seen_grade", "n-" },
  { "choices[].worst_hidden_grade", "n-" },
  { "choices[].passes", "n-" },
  { "choices[].speed_rpm", "n-" },
  { "choices[].feed_mm_min", "n-" },
  { "choices[].time_s", "n-" },
  { "choices[].reasons", "l" },
  { "choices[].reasons[].reason", "t" },
  { "choices[].reasons[].for", "b" },
  { "choices[].reasons[].value", "n" },
  { "choices[].reasons[].limit", "n" },
  { "choices[].reasons[].sentence", "t" },
  { "look_for", "l" },
  { "look_after_changing", "t" },
  { "look_at_hand", "t-" },
  { "knife", "o-" },
};

static bool
is_kind (JsonNode *node, char kind)
{
  if (kind == 'l' || kind == 'o')
    return kind == 'l' ? JSON_NODE_HOLDS_ARRAY (node) : JSON_NODE_HOLDS_OBJECT (node);
  GType type = JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_INVALID;
  return kind == 't'   ? type == G_TYPE_STRING
         : kind == 'b' ? type == G_TYPE_BOOLEAN
                       : type == G_TYPE_DOUBLE || type == G_TYPE_INT64;
}

static void
check_value (JsonNode *node, const Name *name)
{
  g_test_message ("%s", name->path);
  if (JSON_NODE_HOLDS_NULL (node))
    {
      g_assert_true (name->kinds[1] == '-');
      return;
    }
  g_assert_true (is_kind (node, name->kinds[0]));
  if (name->codes == NULL)
    return;
  g_auto (GStrv) codes = g_strsplit (name->codes, " ", -1);
  g_assert_true (g_strv_contains ((const char *const *)codes, json_node_get_string (node)));
}

/* How often the rest of a path was found under @node; what stands in the way may be null. */
static guint
check_path (JsonNode *node, const char *path, const Name *name)
{
  guint found = 0;
  if (*path == '\0')
    {
      check_value (node, name);
      return JSON_NODE_HOLDS_NULL (node) ? 0 : 1;
    }
  if (JSON_NODE_HOLDS_NULL (node))
    return 0;
  if (g_str_has_prefix (path, "[]"))
    {
      JsonArray *list = json_node_get_array (node);
      for (guint i = 0; i < json_array_get_length (list); i++)
        found += check_path (json_array_get_element (list, i), path + 2, name);
      return found;
    }
  path += *path == '.';
  gsize length = strcspn (path, ".[");
  g_autofree char *member = g_strndup (path, length);
  g_test_message ("%s of %s", member, name->path);
  g_assert_true (json_object_has_member (json_node_get_object (node), member));
  return check_path (json_object_get_member (json_node_get_object (node), member), path + length, name);
}

/* Adds to @found how often each name was told, not null. */
static void
check_names (const char *command, const char *file, const Name *names, guint n, guint *found)
{
  g_auto (Running) ran = running (command, file, "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_test_message ("%s %s", command, file);
  g_assert_cmpint (ran.status, <=, 1);
  g_assert_false (g_regex_match_simple (": *-?(nan|inf)", ran.out, G_REGEX_CASELESS, 0));
  JsonObject *object = running_object (parser, ran.out);
  g_assert_cmpint (json_object_get_int_member (object, "format_version"), ==, 1);
  g_assert_true (json_object_has_member (object, "model_version"));
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *path = g_strconcat ("[].", names[i].path, NULL);
      found[i] += check_path (json_object_get_member (object, "cuts"), path, &names[i]);
    }
}

/* Every name stands in every cut of every part and, but for @never, is told somewhere. */
static void
check_all (const char *command, const Name *names, guint n, const char *never)
{
  g_autofree guint *found = g_new0 (guint, n);
  g_autofree char *demo = running_demo ();
  g_autofree char *folder = g_test_build_filename (G_TEST_DIST, "acceptance", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  g_auto (GStrv) silent = g_strsplit (never, " ", -1);
  guint parts = 0;
  check_names (command, demo, names, n, found);
  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir))
    {
      g_autofree char *file = g_build_filename (folder, name, NULL);
      check_names (command, file, names, n, found);
      parts++;
    }
  g_assert_cmpuint (parts, >=, 12);
  for (guint i = 0; i < n; i++)
    {
      g_test_message ("%s told %u times", names[i].path, found[i]);
      g_assert_true (found[i] > 0 || g_strv_contains ((const char *const *)silent, names[i].path));
    }
}

static void
test_plan (void)
{
  check_all (
      "plan", PLAN_NAMES, G_N_ELEMENTS (PLAN_NAMES),
      "cost log calibration scoring entry.circle_mm setting_out.fit setting_out.guide_bush_mm "
      "setting_out.guide_bush_offset_mm setting_out.fence_to_bit_mm setting_out.pecks setting_out.peck_mm");
}

static void
test_rank (void)
{
  check_all ("rank", RANK_NAMES, G_N_ELEMENTS (RANK_NAMES), "knife look_at_hand");
}

static void
test_check (void)
{
  g_autofree char *file = running_demo ();
  g_auto (Running) ran = running ("check", file, "--json", NULL);
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *object = running_object (parser, ran.out);
  g_assert_cmpstr (json_object_get_string_member (object, "kind"), ==, "part");
  g_assert_cmpint (json_object_get_int_member (object, "format_version"), ==, 1);
  g_assert_cmpint (json_object_get_int_member (object, "cuts"), >, 0);
  g_assert_cmpint (json_object_get_int_member (object, "bits"), >, 0);
  g_assert_false (json_object_get_boolean_member (object, "read_only"));
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (object, "unread")), ==, 0);
}

/* Every code that a program may meet stands in the guide. */
static void
test_codes (void)
{
  const SpelchCodes *const tables[]
      = { &SPELCH_LOAD_CODES,  &SPELCH_TERM_CODES,      &SPELCH_LIMIT_CODES,    &SPELCH_ENTRY_KIND_CODES,
          &SPELCH_SENSE_CODES, &SPELCH_PAIR_CODES,      &SPELCH_STOP_CODES,     &SPELCH_VERDICT_CODES,
          &SPELCH_GIVES_CODES, &SPELCH_OPENED_BY_CODES, &SPELCH_EVIDENCE_CODES, &SPELCH_SPEED_BY_CODES,
          &SPELCH_FREE_CODES,  &SPELCH_PASS_PLAN_CODES, &SPELCH_ROUND_CODES,    &SPELCH_REASON_CODES };
  g_autofree char *docs = NULL,
                  *guide = g_test_build_filename (G_TEST_DIST, "..", "docs", "command-line.md", NULL);
  g_assert_true (g_file_get_contents (guide, &docs, NULL, NULL));
  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    for (guint j = 0; j < tables[i]->n; j++)
      {
        g_autofree char *code = g_strdup_printf ("`%s`", tables[i]->codes[j]);
        g_test_message ("%s: %s", tables[i]->what, code);
        g_assert_nonnull (strstr (docs, code));
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/names/plan", test_plan);
  g_test_add_func ("/names/rank", test_rank);
  g_test_add_func ("/names/check", test_check);
  g_test_add_func ("/names/codes", test_codes);
  return g_test_run ();
}

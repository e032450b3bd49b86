/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every member of a part file: read into its place, written back, and described in the guide to the format.
 */
#include "files/json-text.h"
#include "files/part-file.h"
#include "reading.h"

#include <string.h>

/* ---- Every member: the values in full.spelch are all different, and typed again here ---- */

static void
check_full_part (const SpelchPart *part)
{
  g_assert_cmpstr (part->id, ==, "full");
  g_assert_cmpstr (part->name, ==, "Every member");
  g_assert_cmpstr (part->note, ==, "Invented: two lines,\nand \"quotes\".");
  reading_same_length (part->length, 419.1, "16 1/2 in");
  reading_same_length (part->width, 300.25, "");
  g_assert_cmpint (part->accepted_seen, ==, 2);
  g_assert_cmpint (part->accepted_hidden, ==, 4);
  g_assert_cmpfloat (part->tolerances.depth_mm, ==, 0.15);
  g_assert_cmpfloat (part->tolerances.up_shear_mm, ==, 0.35);
  g_assert_cmpint (part->holding.method, ==, SPELCH_HOLD_CLAMPS);
  g_assert_cmpfloat (part->holding.area_mm2, ==, 123456.5);
  g_assert_cmpfloat (part->holding.vacuum_kpa, ==, 61);
  g_assert_cmpfloat (part->holding.clamp_force_n, ==, 800);
  g_assert_true (part->holding.on_rubber);
  g_assert_cmpint (part->file_version, ==, 1);
  g_assert_false (part->read_only);
}

static void
check_full_corrections (const SpelchPart *part)
{
  g_assert_cmpuint (part->n_corrections, ==, 1);
  const SpelchCorrection *correction = &part->corrections[0];
  g_assert_cmpstr (correction->board, ==, "sandwich");
  g_assert_cmpstr (correction->bit, ==, "every-one");
  g_assert_cmpstr (correction->last, ==, "2024-03-31");
  g_assert_true (correction->off);
  g_assert_cmpint (correction->motor.points, ==, -1);
  g_assert_cmpuint (correction->motor.points_cuts, ==, 2);
  g_assert_cmpfloat (correction->motor.window_mm, ==, 0);
  g_assert_cmpint (correction->far.points, ==, 0);
  g_assert_cmpfloat (correction->far.window_mm, ==, 0.45);
  g_assert_cmpuint (correction->far.window_cuts, ==, 3);
  g_assert_cmpstr (part->calibration.board, ==, "sandwich");
  g_assert_true (part->calibration.off);
  g_assert_cmpfloat (part->calibration.factor, ==, 1.125);
  g_assert_cmpuint (part->calibration.readings, ==, 4);
}

static void
check_full_board (const SpelchBoard *board)
{
  g_assert_cmpstr (board->id, ==, "sandwich");
  g_assert_cmpstr (board->name, ==, "Sandwich");
  g_assert_cmpuint (board->n_layers, ==, 3);
  reading_same_length (board->layers[0].thickness, 0.6, "0,6");
  g_assert_cmpint (board->layers[0].material, ==, SPELCH_MATERIAL_HARDWOOD);
  g_assert_cmpint (board->layers[0].grain, ==, SPELCH_GRAIN_FIGURED);
  g_assert_cmpfloat (board->layers[0].grain_deg, ==, 12.5);
  g_assert_true (board->layers[0].veneer);
  reading_same_length (board->layers[1].thickness, 15.9, "");
  g_assert_cmpint (board->layers[1].material, ==, SPELCH_MATERIAL_PARTICLEBOARD);
  g_assert_cmpint (board->layers[1].grain, ==, SPELCH_GRAIN_NONE);
  g_assert_false (board->layers[1].veneer);
  g_assert_cmpint (board->layers[2].material, ==, SPELCH_MATERIAL_LAMINATE);
  reading_same_length (board->nominal, 17, "");
  g_assert_cmpfloat (board->tolerance_plus_mm, ==, 0.3);
  g_assert_cmpfloat (board->tolerance_minus_mm, ==, 0.4);
  reading_same_length (board->measured, 17.05, "");
  g_assert_cmpfloat (board->measured_within_mm, ==, 0.02);
  g_assert_cmpstr (board->species, ==, "black-walnut");
  g_assert_cmpfloat (board->density_kg_m3, ==, 655);
  g_assert_true (board->retired);
}

static void
check_full_machine (const SpelchMachine *machine)
{
  g_assert_cmpstr (machine->id, ==, "big");
  g_assert_cmpstr (machine->name, ==, "Big one");
  g_assert_cmpint (machine->kind, ==, SPELCH_MACHINE_GANTRY);
  g_assert_cmpfloat (machine->rpm_min, ==, 6000);
  g_assert_cmpfloat (machine->rpm_max, ==, 18000);
  g_assert_cmpuint (machine->n_steps, ==, 3);
  g_assert_cmpfloat (machine->steps_rpm[1], ==, 12000);
  g_assert_cmpfloat (machine->power_w, ==, 2200);
  g_assert_true (machine->power_is_input);
  g_assert_cmpfloat (machine->rated_rpm, ==, 12000);
  g_assert_cmpfloat (machine->max_feed_mm_min, ==, 9000);
  g_assert_cmpuint (machine->n_collets, ==, 2);
  reading_same_length (machine->collets[0], 12.7, "1/2 in");
  reading_same_length (machine->collets[1], 8, "");
  g_assert_cmpint (machine->datum, ==, SPELCH_DATUM_BED);
  g_assert_cmpfloat (machine->overcut_allowed_mm, ==, 0.7);
  g_assert_cmpint (machine->spoilboard, ==, SPELCH_SPOILBOARD_FRESH);
  g_assert_cmpfloat (machine->flatness_mm, ==, 0.08);
  g_assert_cmpfloat (machine->stiffness_n_mm, ==, 1234);
  reading_same_length (machine->base_radius, 77, "");
  g_assert_cmpuint (machine->n_bushes, ==, 2);
  reading_same_length (machine->bushes[0], 17, "");
  reading_same_length (machine->bushes[1], 30, "30 mm");
  g_assert_cmpfloat (machine->mass_kg, ==, 3.25);
  g_assert_true (machine->retired);
}

static void
check_full_bit (const SpelchBit *bit)
{
  g_assert_cmpstr (bit->id, ==, "every-one");
  g_assert_cmpstr (bit->name, ==, "Every member");
  g_assert_cmpint (bit->kind, ==, SPELCH_BIT_COMPRESSION);
  reading_same_length (bit->diameter, 12, "");
  reading_same_length (bit->shank, 12.7, "1/2 in");
  reading_same_length (bit->cutting_length, 35, "");
  reading_same_length (bit->overall_length, 90, "");
  reading_same_length (bit->up_shear, 16, "");
  reading_same_length (bit->overlap, 0.5, "");
  reading_same_length (bit->neck, 11.5, "");
  g_assert_cmpint (bit->edges, ==, 3);
  g_assert_cmpint (bit->edges_up, ==, 2);
  g_assert_cmpfloat (bit->helix_deg, ==, 29.5);
  g_assert_cmpfloat (bit->rake_deg, ==, 18);
  g_assert_cmpint (bit->hand, ==, SPELCH_HAND_LEFT);
  g_assert_cmpint (bit->edge_material, ==, SPELCH_TOOL_HSS);
  g_assert_cmpint (bit->body_material, ==, SPELCH_TOOL_STEEL);
  g_assert_true (bit->coated);
  g_assert_false (bit->end_cutting);
  reading_same_length (bit->uncut_centre, 2.25, "");
  reading_same_length (bit->end_hollow, 0.75, "");
  g_assert_cmpint (bit->bearing, ==, SPELCH_BEARING_SHANK);
  g_assert_cmpfloat (bit->max_rpm, ==, 21000);
  g_assert_true (bit->hand_feed);
  g_assert_cmpfloat (bit->price, ==, 39.5);
  g_assert_cmpfloat (bit->metres_cut, ==, 412.75);
  g_assert_cmpint (bit->wear, ==, SPELCH_WEAR_WORN);
  g_assert_cmpstr (bit->sharpened, ==, "2024-02-29");
  reading_same_length (bit->sharpened_diameter, 11.8, "");
  reading_same_length (bit->sharpened_up_shear, 15.5, "");
  g_assert_cmpuint (bit->n_renewals, ==, 2);
  g_assert_cmpstr (bit->renewals[0].date, ==, "2023-11-30");
  g_assert_cmpint (bit->renewals[0].kind, ==, SPELCH_RENEWAL_REPLACED);
  g_assert_cmpfloat (bit->renewals[0].metres_cut, ==, 321.5);
  g_assert_cmpstr (bit->renewals[1].date, ==, "2024-02-29");
  g_assert_cmpint (bit->renewals[1].kind, ==, SPELCH_RENEWAL_SHARPENED);
  g_assert_cmpfloat (bit->renewals[1].metres_cut, ==, 0);
  g_assert_true (bit->retired);
}

static void
check_full_cut (const SpelchCut *cut)
{
  g_assert_cmpstr (cut->id, ==, "slot");
  g_assert_cmpstr (cut->name, ==, "Slot");
  g_assert_cmpint (cut->kind, ==, SPELCH_CUT_SLOT);
  g_assert_true (cut->through);
  g_assert_cmpint (cut->way_up, ==, SPELCH_FACE_B);
  reading_same_length (cut->depth, 4, "");
  reading_same_length (cut->width, 13, "");
  reading_same_length (cut->length, 200, "");
  reading_same_length (cut->corner_radius, 6.5, "");
  g_assert_true (cut->seen_a && cut->seen_b);
  g_assert_cmpint (cut->kept, ==, SPELCH_WALL_RIGHT);
  g_assert_true (cut->every_direction);
  g_assert_cmpfloat (cut->path_deg, ==, -45);
  g_assert_cmpint (cut->start, ==, SPELCH_END_BACKED);
  g_assert_cmpint (cut->end, ==, SPELCH_END_INSIDE);
  g_assert_cmpuint (cut->quantity, ==, 7);
  g_assert_cmpuint (cut->tabs.count, ==, 2);
  reading_same_length (cut->tabs.width, 9, "");
  reading_same_length (cut->tabs.thickness, 2.5, "");
  reading_same_length (cut->backer, 12, "");
  reading_same_length (cut->stick_out, 41, "");
  g_assert_cmpstr (cut->bit, ==, "every-one");
}

static void
check_full_held (const SpelchHeld *held)
{
  g_assert_cmpuint (held->n_passes, ==, 3);
  reading_same_length (held->passes[0], 5, "");
  reading_same_length (held->passes[1], 9.525, "3/8");
  reading_same_length (held->passes[2], 17, "");
  g_assert_true (held->overcut_held);
  reading_same_length (held->overcut, -0.2, "");
  g_assert_true (held->allowance_held);
  reading_same_length (held->allowance, 0, "");
  g_assert_true (held->plan_held);
  g_assert_cmpint (held->plan, ==, SPELCH_PASS_PLAN_SCORED);
  reading_same_length (held->score, 1.75, "");
  g_assert_cmpstr (held->score_bit, ==, "plain");
  reading_same_length (held->skin, 0.6, "0,6");
  g_assert_cmpfloat (held->speed_rpm, ==, 17500);
  g_assert_cmpfloat (held->feed_mm_min, ==, 4321);
  g_assert_true (held->entry_held);
  g_assert_cmpint (held->entry, ==, SPELCH_ENTRY_HELIX);
  g_assert_true (held->entry_on_line);
  g_assert_cmpfloat (held->entry_deg, ==, 2.5);
  g_assert_true (held->entry_stops);
}

static void
check_fitted_cut (const SpelchCut *cut)
{
  g_assert_true (cut->mating.told);
  reading_same_length (cut->mating.thickness, 17.8, "17.8");
  reading_same_length (cut->mating.clearance, 0.15, "");
  g_assert_cmpfloat (cut->width.mm, ==, 0);
  g_assert_cmpfloat_with_epsilon (spelch_cut_width (cut), 17.95, 1e-9);
  reading_same_length (cut->from_edge, 250, "");
}

static void
test_every_member (void)
{
  g_autofree char *text = reading_file ("full.spelch");
  g_autoptr (SpelchPart) part = reading_part (text);
  check_full_part (part);
  check_full_board (&part->board);
  check_full_machine (&part->machine);
  check_full_bit (&part->bits[0]);
  check_full_cut (&part->cuts[0]);
  check_full_held (&part->cuts[0].held);
  check_fitted_cut (&part->cuts[1]);
  check_full_corrections (part);
  g_autofree char *written = spelch_part_to_json (part);
  g_assert_cmpstr (written, ==, text);
}

/* What docs/file-format.md says a member left out stands for. */
static void
test_left_out (void)
{
  g_autofree char *text = reading_file ("full.spelch");
  g_autoptr (SpelchPart) part = reading_part (text);
  const SpelchBit *bit = &part->bits[1];
  const SpelchCut *cut = &part->cuts[1];
  g_assert_cmpstr (bit->name, ==, "plain");
  g_assert_cmpint (bit->hand, ==, SPELCH_HAND_RIGHT);
  g_assert_cmpint (bit->edge_material, ==, SPELCH_TOOL_CARBIDE);
  g_assert_cmpint (bit->body_material, ==, SPELCH_TOOL_CARBIDE);
  g_assert_cmpint (bit->bearing, ==, SPELCH_BEARING_NONE);
  g_assert_cmpint (bit->wear, ==, SPELCH_WEAR_SHARP);
  g_assert_cmpfloat (bit->max_rpm, ==, 0);
  g_assert_false (bit->coated || bit->hand_feed);
  g_assert_cmpstr (cut->name, ==, "dado");
  g_assert_false (cut->through || cut->seen_a || cut->seen_b || cut->every_direction);
  g_assert_cmpint (cut->kept, ==, SPELCH_WALL_BOTH);
  g_assert_cmpint (cut->start, ==, SPELCH_END_EDGE);
  g_assert_cmpint (cut->end, ==, SPELCH_END_EDGE);
  g_assert_cmpuint (cut->quantity, ==, 1);
  g_assert_cmpstr (cut->bit, ==, "");
  g_assert_cmpuint (cut->held.n_passes, ==, 0);
  g_assert_false (part->cuts[0].mating.told || cut->held.entry_stops);
  g_assert_false (cut->held.overcut_held || cut->held.allowance_held || cut->held.entry_held
                  || cut->held.plan_held);
  g_assert_cmpstr (cut->held.score_bit, ==, "");
}

/* The example in the guide to the format is the file the corpus holds, so that it can't grow old. */
static void
test_documented (void)
{
  g_autofree char *guide = reading_file ("../../docs/file-format.md");
  g_autofree char *example = reading_file ("corpus/good/small.spelch");
  g_assert_nonnull (strstr (guide, example));
  g_auto (GStrv) lines = g_strsplit (example, "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, 40 + 1);
}

/* Every member and every code the reader knows is in the guide: full.spelch has all members, the tables all
 * codes. */
static void
assert_in_guide (const char *guide, const char *word)
{
  g_autofree char *plain = g_strdup_printf ("\\b%s\\b", word);
  g_test_message ("%s", word);
  g_assert_true (g_regex_match_simple (plain, guide, 0, 0));
}

static void
members_in_guide (JsonNode *node, const char *guide)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    {
      g_autoptr (GList) members = json_object_get_members (json_node_get_object (node));
      for (GList *m = members; m != NULL; m = m->next)
        {
          assert_in_guide (guide, m->data);
          members_in_guide (json_object_get_member (json_node_get_object (node), m->data), guide);
        }
    }
  else if (JSON_NODE_HOLDS_ARRAY (node))
    for (guint i = 0; i < json_array_get_length (json_node_get_array (node)); i++)
      members_in_guide (json_array_get_element (json_node_get_array (node), i), guide);
}

static void
test_documented_members (void)
{
  const SpelchCodes *const tables[] = {
    &SPELCH_BIT_KIND_CODES,     &SPELCH_HAND_CODES,  &SPELCH_TOOL_MATERIAL_CODES, &SPELCH_BEARING_CODES,
    &SPELCH_RENEWAL_CODES,      &SPELCH_WEAR_CODES,  &SPELCH_MATERIAL_CODES,      &SPELCH_GRAIN_CODES,
    &SPELCH_CUT_KIND_CODES,     &SPELCH_WALL_CODES,  &SPELCH_END_CODES,           &SPELCH_ENTRY_KIND_CODES,
    &SPELCH_MACHINE_KIND_CODES, &SPELCH_DATUM_CODES, &SPELCH_SPOILBOARD_CODES,    &SPELCH_HOLD_CODES,
    &SPELCH_PASS_PLAN_CODES,
  };
  g_autofree char *guide = reading_file ("../../docs/file-format.md");
  g_autofree char *full = reading_file ("full.spelch");
  g_autoptr (JsonNode) root = spelch_json_parse (full, strlen (full), "full.spelch", NULL);
  members_in_guide (root, guide);
  for (guint t = 0; t < G_N_ELEMENTS (tables); t++)
    for (guint i = 0; i < tables[t]->n; i++)
      assert_in_guide (guide, tables[t]->codes[i]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/every-member/places", test_every_member);
  g_test_add_func ("/every-member/left-out", test_left_out);
  g_test_add_func ("/every-member/guide/example", test_documented);
  g_test_add_func ("/every-member/guide/members", test_documented_members);
  return g_test_run ();
}

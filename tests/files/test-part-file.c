/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Part files and lists: nothing unknown is lost, and what is written reads the same again.
 */
#include "files/json-text.h"
#include "files/list-file.h"
#include "files/part-file.h"
#include "reading.h"
#include "files/shop-data.h"

#include <math.h>
#include <string.h>

/* A closed path neither comes in nor runs out over an edge; an outline is always through. */
static void
test_left_out_by_kind (void)
{
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  for (guint i = 0; i < demo->n_cuts; i++)
    {
      const SpelchCut *cut = &demo->cuts[i];
      if (cut->kind == SPELCH_CUT_OUTLINE || cut->kind == SPELCH_CUT_MORTISE || cut->kind == SPELCH_CUT_HOLE)
        g_assert_cmpint (cut->start, ==, SPELCH_END_INSIDE);
      if (cut->kind == SPELCH_CUT_OUTLINE)
        g_assert_true (cut->through);
    }
}

/* A spoilboard that nobody called fresh doesn't count as backing. */
static void
test_spoilboard_untold (void)
{
  static const char text[]
      = "{\"format_version\":1,\"id\":\"a\",\"board\":{\"id\":\"b\",\"layers\":[{\"thickness\":6,"
        "\"material\":\"mdf\","
        "\"grain\":\"none\"}],\"nominal\":6},\"machine\":{\"id\":\"c\",\"kind\":\"gantry\",\"rpm_min\":8000,"
        "\"rpm_max\":9000,\"power_w\":1000,\"max_feed_mm_min\":5000,\"stiffness_n_mm\":500}}";
  g_autoptr (SpelchPart) part = reading_part (text);
  g_assert_cmpint (part->machine.spoilboard, ==, SPELCH_SPOILBOARD_UNTOLD);
  g_assert_cmpint (part->machine.datum, ==, SPELCH_DATUM_FACE);
  g_assert_cmpint (part->accepted_seen, ==, 1);
  g_assert_cmpint (part->accepted_hidden, ==, 3);
  g_assert_cmpint (part->holding.method, ==, SPELCH_HOLD_UNTOLD);
  g_assert_cmpfloat (part->tolerances.depth_mm, ==, 0.1);
  g_assert_cmpfloat (part->tolerances.up_shear_mm, ==, 0.4);
}

/* An empty list of passes says "in one go", which is not the same as saying nothing. */
static void
test_single_pass_held (void)
{
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  g_autoptr (SpelchPart) part = spelch_part_copy (demo);
  part->cuts[0].held.passes_held = true;
  g_autofree char *text = spelch_part_to_json (part);
  g_autoptr (SpelchPart) read = reading_part (text);
  g_assert_true (read->cuts[0].held.passes_held);
  g_assert_cmpuint (read->cuts[0].held.n_passes, ==, 0);
  g_assert_false (read->cuts[1].held.passes_held);
}

/* ---- Unknown members ---- */

/* unknown.spelch is as the program writes corpus/good/unknown-members.spelch, checked by eye: each stranger
 * stands at the end of the object it came in. */
static void
test_unknown_kept (void)
{
  g_autofree char *text = reading_file ("unknown.spelch");
  g_autofree char *given = reading_file ("corpus/good/unknown-members.spelch");
  g_autoptr (SpelchPart) first = reading_part (given);
  g_autofree char *once = spelch_part_to_json (first);
  g_assert_cmpstr (once, ==, text);
  g_autoptr (SpelchPart) second = reading_part (once);
  g_autofree char *twice = spelch_part_to_json (second);
  g_assert_cmpstr (twice, ==, text);
}

static guint
count_in (const char *text, const char *word)
{
  guint n = 0;
  for (const char *p = strstr (text, word); p != NULL; p = strstr (p + 1, word))
    n++;
  return n;
}

/* An edited copy keeps them, and a cut that has moved in the list takes its own along. */
static void
test_unknown_follow (void)
{
  g_autofree char *given = reading_file ("corpus/good/unknown-members.spelch");
  g_autoptr (SpelchPart) part = reading_part (given);
  g_autoptr (SpelchPart) copy = spelch_part_copy (part);
  SpelchCut moved = copy->cuts[0];
  copy->cuts[0] = copy->cuts[1];
  copy->cuts[1] = moved;
  g_autofree char *text = spelch_part_to_json (copy);
  const char *outline = strstr (text, "\"id\": \"outline\"");
  const char *layer = strstr (text, "\"layer\": -0.001");
  g_assert_nonnull (outline);
  g_assert_true (layer > outline);
  g_assert_cmpuint (count_in (text, "\"shape\": \"round\""), ==, 1);
  g_assert_cmpuint (count_in (text, "\"later\""), ==, 1);
  g_assert_true (strstr (text, "\"later\"") < outline);
}

static void
test_unknown_numbers (void)
{
  static const char *const numbers[]
      = { "0.1", "-0.001", "123456789012345678", "1e+22", "2.5e-09", "0.30000000000000004" };
  g_autofree char *given = reading_file ("corpus/good/small.spelch");
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      g_autofree char *member = g_strdup_printf ("{\n  \"x\": %s,", numbers[i]);
      g_autofree char *kept = g_strdup_printf ("  \"x\": %s\n}\n", numbers[i]);
      g_autoptr (GString) text = g_string_new (given);
      g_string_replace (text, "{", member, 1);
      g_autoptr (SpelchPart) part = reading_part (text->str);
      g_autofree char *written = spelch_part_to_json (part);
      g_assert_true (g_str_has_suffix (written, kept));
    }
}

/* ---- The starter sets ---- */

static void
test_demo (void)
{
  g_autofree char *text = reading_file ("../../data/demo.spelch");
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  g_autofree char *written = spelch_part_to_json (demo);
  g_assert_cmpstr (written, ==, text);
}

static void
list_again (SpelchListKind kind, const GArray *items)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *first = spelch_list_to_json (kind, items, NULL);
  g_autoptr (GArray) read = spelch_list_from_json (kind, first, strlen (first), "list", NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (read->len, ==, items->len);
  g_autofree char *second = spelch_list_to_json (kind, read, NULL);
  g_assert_cmpstr (first, ==, second);
}

static void
test_starter_lists (void)
{
  guint n_bits, n_boards, n_machines;
  const SpelchBit *bits = spelch_shop_bits (&n_bits);
  const SpelchBoard *boards = spelch_shop_boards (&n_boards);
  const SpelchMachine *machines = spelch_shop_machines (&n_machines);
  g_autoptr (GArray) bit_list = g_array_append_vals (g_array_new (FALSE, FALSE, sizeof *bits), bits, n_bits);
  g_autoptr (GArray) board_list
      = g_array_append_vals (g_array_new (FALSE, FALSE, sizeof *boards), boards, n_boards);
  g_autoptr (GArray) machine_list
      = g_array_append_vals (g_array_new (FALSE, FALSE, sizeof *machines), machines, n_machines);
  list_again (SPELCH_LIST_BITS, bit_list);
  list_again (SPELCH_LIST_BOARDS, board_list);
  list_again (SPELCH_LIST_MACHINES, machine_list);
}

/* Every item of the starter sets in a part of its own. */
static void
test_starter_items (void)
{
  guint n_bits, n_boards, n_machines;
  const SpelchBit *bits = spelch_shop_bits (&n_bits);
  const SpelchBoard *boards = spelch_shop_boards (&n_boards);
  const SpelchMachine *machines = spelch_shop_machines (&n_machines);
  for (guint i = 0; i < MAX (n_bits, MAX (n_boards, n_machines)); i++)
    {
      g_autoptr (SpelchPart) part = spelch_part_new ();
      part->board = boards[i % n_boards];
      part->machine = machines[i % n_machines];
      spelch_part_put_bit (part, &bits[i % n_bits]);
      g_autofree char *first = spelch_part_to_json (part);
      g_autoptr (SpelchPart) read = reading_part (first);
      g_autofree char *second = spelch_part_to_json (read);
      g_assert_cmpstr (first, ==, second);
      g_assert_cmpfloat (read->bits[0].diameter.mm, ==, bits[i % n_bits].diameter.mm);
      g_assert_cmpuint (read->board.n_layers, ==, boards[i % n_boards].n_layers);
      g_assert_cmpfloat (read->machine.power_w, ==, machines[i % n_machines].power_w);
    }
}

/* The unknown members of the person's own lists are kept too: "source" in the starter set is one. */
static void
test_list_unknown (void)
{
  static const char text[]
      = "{\"format_version\":1,\"shop\":\"ours\",\"bits\":[{\"id\":\"a\",\"kind\":\"straight\","
        "\"diameter\":6,\"shank\":6,\"cutting_length\":20,\"edges\":2,\"shelf\":3}]}";
  g_autoptr (GHashTable) unknown = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) bits
      = spelch_list_from_json (SPELCH_LIST_BITS, text, strlen (text), "drawer", unknown, &error);
  g_assert_no_error (error);
  g_autofree char *written = spelch_list_to_json (SPELCH_LIST_BITS, bits, unknown);
  g_assert_cmpuint (count_in (written, "\"shelf\": 3"), ==, 1);
  g_assert_cmpuint (count_in (written, "\"shop\": \"ours\""), ==, 1);
}

static void
refuse_list (const char *text, const char *expected)
{
  g_autoptr (GError) error = NULL;
  g_assert_null (spelch_list_from_json (SPELCH_LIST_BITS, text, strlen (text), "drawer.json", NULL, &error));
  g_assert_cmpint (error->domain, ==, SPELCH_FILE_ERROR);
  g_assert_true (g_str_has_prefix (error->message, "drawer.json: "));
  g_assert_nonnull (strstr (error->message, expected));
}

#define A_BIT                                                                                                \
  "{\"id\":\"a\",\"kind\":\"straight\",\"diameter\":6,\"shank\":6,\"cutting_length\":20,\"edges\":2}"

static void
test_list_refused (void)
{
  refuse_list ("{\"format_version\":1}", "bits is missing");
  refuse_list ("{\"bits\":[]}", "format_version is missing");
  refuse_list ("{\"format_version\":2,\"bits\":[]}", "format_version is 2");
  refuse_list ("{\"format_version\":1,\"bits\":[" A_BIT "," A_BIT "]}", "bits[1] 'a': id stands twice");
  refuse_list ("{\"format_version\":1,\"bits\":[{\"id\":\"b\",\"kind\":\"dovetail\",\"diameter\":6,\"shank\":"
               "6,\"cutting_length\":20,\"edges\":2}]}",
               "dovetail");
  refuse_list ("{\"format_version\":1,\"bits\":[7]}", "bits[0] is 7");
}

/* ---- Numbers ---- */

/* The shortest decimal that reads back as the same number; any double survives. */
static void
test_numbers (void)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  static const struct
  {
    double value;
    const char *text;
  } rows[] = { { 0.1, "0.1" },   { 18, "18" },       { -0.0, "0" },     { 1.0 / 3, "0.33333333333333331" },
               { 6.35, "6.35" }, { 24000, "24000" }, { 1e21, "1e+21" }, { 9.525, "9.525" },
               { -0.2, "-0.2" } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      spelch_json_number (rows[i].value, text);
      g_assert_cmpstr (text, ==, rows[i].text);
    }
  for (guint i = 0; i < 20000; i++)
    {
      double value = g_test_rand_double_range (-1, 1) * pow (10, g_test_rand_int_range (-12, 12));
      spelch_json_number (value, text);
      g_assert_cmpfloat (g_ascii_strtod (text, NULL), ==, value);
    }
}

/* ---- Chance ---- */

static SpelchLength
chance_length (double least, double most)
{
  double mm = g_test_rand_double_range (least, most);
  SpelchLength length = spelch_length_mm (mm);
  if (g_test_rand_bit ())
    {
      g_autofree char *typed = spelch_length_format (mm, SPELCH_UNIT_MM, SPELCH_INCH_DECIMAL, 2, ',');
      g_assert_true (spelch_length_parse (typed, SPELCH_UNIT_MM, &length, NULL));
    }
  return length;
}

static SpelchBit
chance_bit (void)
{
  SpelchBit bit = { .kind = SPELCH_BIT_COMPRESSION };
  g_strlcpy (bit.id, "chance", sizeof bit.id);
  g_strlcpy (bit.name, "Zufall „ü“ \\ \"\t\x01", sizeof bit.name);
  bit.diameter = chance_length (3, 20);
  bit.shank = chance_length (3, 20);
  bit.cutting_length = chance_length (20, 40);
  bit.overall_length = chance_length (60, 90);
  bit.up_shear = chance_length (3, 15);
  bit.edges = g_test_rand_int_range (1, 7);
  bit.edges_up = g_test_rand_int_range (0, 7);
  bit.helix_deg = g_test_rand_double_range (10, 45);
  bit.hand = (SpelchHand)g_test_rand_int_range (0, 2);
  bit.bearing = (SpelchBearing)g_test_rand_int_range (0, 3);
  bit.wear = (SpelchWear)g_test_rand_int_range (0, 4);
  bit.coated = g_test_rand_bit ();
  bit.end_cutting = g_test_rand_bit ();
  bit.price = g_test_rand_double_range (0, 100);
  return bit;
}

static void
test_chance (void)
{
  for (guint i = 0; i < 100; i++)
    {
      g_autoptr (SpelchPart) demo = spelch_shop_demo ();
      g_autoptr (SpelchPart) part = spelch_part_copy (demo);
      SpelchBit bit = chance_bit ();
      spelch_part_put_bit (part, &bit);
      g_autofree char *first = spelch_part_to_json (part);
      g_autoptr (SpelchPart) read = reading_part (first);
      g_autofree char *second = spelch_part_to_json (read);
      const SpelchBit *back = &read->bits[read->n_bits - 1];
      g_assert_cmpstr (first, ==, second);
      g_assert_cmpstr (back->name, ==, bit.name);
      reading_same_length (back->diameter, bit.diameter.mm, bit.diameter.typed);
      reading_same_length (back->up_shear, bit.up_shear.mm, bit.up_shear.typed);
      g_assert_cmpfloat (back->helix_deg, ==, bit.helix_deg);
      g_assert_cmpfloat (back->price, ==, bit.price);
      g_assert_cmpint (back->wear, ==, bit.wear);
      g_assert_cmpint (back->edges_up, ==, bit.edges_up);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/part-file/left-out-by-kind", test_left_out_by_kind);
  g_test_add_func ("/part-file/spoilboard-untold", test_spoilboard_untold);
  g_test_add_func ("/part-file/single-pass-held", test_single_pass_held);
  g_test_add_func ("/part-file/unknown/kept", test_unknown_kept);
  g_test_add_func ("/part-file/unknown/follow", test_unknown_follow);
  g_test_add_func ("/part-file/unknown/numbers", test_unknown_numbers);
  g_test_add_func ("/part-file/starter/demo", test_demo);
  g_test_add_func ("/part-file/starter/lists", test_starter_lists);
  g_test_add_func ("/part-file/starter/items", test_starter_items);
  g_test_add_func ("/list-file/unknown", test_list_unknown);
  g_test_add_func ("/list-file/refused", test_list_refused);
  g_test_add_func ("/json/numbers", test_numbers);
  g_test_add_func ("/part-file/chance", test_chance);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Sentences: they say what this case's numbers are, ask for what would help, and read as sentences.
 */
#include "on-demo.h"

#include "plan/case.h"
#include "plan/words.h"

#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };
static const SpelchNumbers INCH = { SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, '.' };

static void
says (char *sentence, const char *words)
{
  if (strstr (sentence, words) == NULL)
    g_error ("“%s” doesn't say “%s”", sentence, words);
  g_free (sentence);
}

/* A router table and an 18 mm board: a down-cut would do; a compression bit's up-shear of no more than 16.5
 * mm lets one pass that just cuts through keep both faces, when it is set so; where passes are planned no
 * deeper than the bit is thick, 4.5 mm (worked out in test-windows.c). */
static void
test_other_bit (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "router-table");
  demo_plan_with (demo, "up-cut-6.35x25");
  says (spelch_words_window (&demo->plan, SPELCH_SIDE_MOTOR, &MM),
        "With featherboards a down-cut bit would keep it");
  says (spelch_words_window (&demo->plan, SPELCH_SIDE_MOTOR, &MM), "of 2.2 mm to 4.5 mm");
  demo->cut->held.passes_held = true;
  demo_plan_with (demo, "up-cut-6.35x25");
  says (spelch_words_window (&demo->plan, SPELCH_SIDE_MOTOR, &MM), "of 2.2 mm to 16.5 mm");
  says (spelch_words_edge_reason (&demo->plan, SPELCH_SIDE_MOTOR, &MM),
        "With featherboards a down-cut bit would keep it");
  demo_plan_with (demo, "down-cut-6.35x25");
  says (spelch_words_window (&demo->plan, SPELCH_SIDE_FAR, &MM), "An up-cut bit would keep it");
  demo_take_cut (demo, "shelf-dado");
  demo->cut->held.passes_held = true;
  demo_plan_with (demo, "up-cut-6.35x25");
  says (spelch_words_window (&demo->plan, SPELCH_SIDE_MOTOR, &MM), "of 7.2 mm or less");
}

/* For the far face of an up-cut measuring is what helps, not another bit. */
static void
test_each_face (Demo *demo, gconstpointer unused)
{
  demo->part->board.measured = spelch_length_mm (0);
  demo->part->machine.datum = SPELCH_DATUM_FACE;
  demo_plan_with (demo, "up-cut-6.35x25");
  says (spelch_words_window (&demo->plan, SPELCH_SIDE_FAR, &MM), "Measure it");
  says (spelch_words_edge_reason (&demo->plan, SPELCH_SIDE_FAR, &MM), "only with everything exact");
  says (spelch_words_edge_reason (&demo->plan, SPELCH_SIDE_FAR, &MM), "Measure it");
}

/* A longer bit is asked for only where length is what is missing. */
static void
test_longer_bit (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  bit.cutting_length = spelch_length_mm (16);
  demo_plan_bit (demo, &bit);
  says (spelch_words_window (&demo->plan, SPELCH_SIDE_FAR, &MM), "take a longer one");
  bit = *demo_bit ("up-cut-6.35x25");
  bit.cutting_length = spelch_length_mm (16);
  demo_plan_bit (demo, &bit);
  says (spelch_words_window (&demo->plan, SPELCH_SIDE_FAR, &MM), "take a longer one");
  says (spelch_words_window (&demo->plan, SPELCH_SIDE_MOTOR, &MM), "A down-cut bit would keep it");
}

/* The last tip may stand from 18.25 to 18.35 mm: one tenth lies between, and 18.256 mm is 23/32 in.
 * Within 18.27 to 18.28 no tenth does. */
static void
test_narrow_window (Demo *demo, gconstpointer unused)
{
  demo_plan_with (demo, "compression-6.35x22");
  says (spelch_words_window (&demo->plan, SPELCH_SIDE_FAR, &MM),
        "by a last pass 18.3 mm deep, tolerances included");
  says (spelch_words_window (&demo->plan, SPELCH_SIDE_FAR, &INCH), "by a last pass 23/32 in deep");
  demo->plan.windows.robust.last_tip = (SpelchRange){ 18.27, 18.28, false };
  says (spelch_words_window (&demo->plan, SPELCH_SIDE_FAR, &MM), "by a last pass 18.2");
}

/* 9.2 - 1.3 - 6.35 = 1.55 mm of down-shear to spare; with an overlap of 0.6 about the turn-over 0.3 less. */
static void
test_to_spare (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  demo_hold_first_pass (demo, 9.25);
  demo_plan_bit (demo, &bit);
  says (spelch_words_edge_reason (&demo->plan, SPELCH_SIDE_MOTOR, &MM), "1.6 mm to spare");
  bit.overlap = spelch_length_mm (0.6);
  demo_plan_bit (demo, &bit);
  says (spelch_words_edge_reason (&demo->plan, SPELCH_SIDE_MOTOR, &MM), "1.3 mm to spare");
}

static void
test_only_just (Demo *demo, gconstpointer unused)
{
  demo_hold_first_pass (demo, 7.9);
  demo_plan_with (demo, "compression-6.35x22");
  says (spelch_words_edge_reason (&demo->plan, SPELCH_SIDE_MOTOR, &MM),
        "but only just. Set the first pass to 8.3 mm or deeper.");
  demo->cut->held.overcut_held = true;
  demo->cut->held.overcut = spelch_length_mm (0.1);
  demo_plan_with (demo, "compression-6.35x22");
  says (spelch_words_edge_reason (&demo->plan, SPELCH_SIDE_FAR, &MM), "but only just: 0.3 mm is surer.");
}

static void
test_entry (Demo *demo, gconstpointer unused)
{
  demo->cut->held.entry_held = demo->cut->held.entry_on_line = true;
  demo->cut->held.entry = SPELCH_ENTRY_RAMP;
  demo_plan_with (demo, "compression-6.35x22");
  says (spelch_words_edge_reason (&demo->plan, SPELCH_SIDE_MOTOR, &MM),
        "over its first 146 mm. Plunge or ramp in the waste.");
  demo_take_cut (demo, "cable-slot");
  demo->cut->width = spelch_length_mm (6.35);
  demo_plan_with (demo, "compression-6.35x22");
  says (spelch_words_edge_reason (&demo->plan, SPELCH_SIDE_MOTOR, &MM),
        "A drilled hole, or a start from an edge");
}

/* "1 point", "2 points". */
static void
test_plurals (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("up-cut-6.35x25");
  guint one = 0, two = 0;
  for (int wear = SPELCH_WEAR_WORN; wear <= SPELCH_WEAR_DULL; wear++)
    {
      bit.wear = (SpelchWear)wear;
      demo_plan_bit (demo, &bit);
      g_auto (GStrv) why = spelch_words_edge_why (&demo->plan, SPELCH_SIDE_MOTOR, &MM);
      for (guint i = 0; why[i] != NULL; i++)
        {
          g_assert_null (strstr (why[i], "1 points"));
          one += strstr (why[i], "rubbing: 1 point (") != NULL;
          two += strstr (why[i], "rubbing: 2 points (") != NULL;
        }
    }
  g_assert_cmpuint (one, ==, 1);
  g_assert_cmpuint (two, ==, 1);
}

/* A short tip goes by its own caption only while its up-shear is what spoils the face. */
static void
test_caption (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  demo_take_cut (demo, "back-rabbet");
  demo_plan_bit (demo, &bit);
  g_assert_cmpstr (spelch_words_bit_caption (demo->part, demo->cut, &bit, &demo->plan), ==, "tip too long");
  demo_take_cut (demo, "outline");
  bit.wear = SPELCH_WEAR_DULL;
  demo_plan_bit (demo, &bit);
  g_assert_cmpstr (spelch_words_bit_caption (demo->part, demo->cut, &bit, &demo->plan), ==,
                   "fuzzy show face");
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpstr (spelch_words_bit_caption (demo->part, demo->cut, demo_bit ("up-cut-6.35x25"), &demo->plan),
                   ==, "tears show face");
  /* A first pass that is held where the up-shear still reaches the face, though a deeper one would keep it.
   */
  demo->cut->held.n_passes = 1;
  demo->cut->held.passes[0] = spelch_length_mm (6);
  bit.wear = SPELCH_WEAR_SHARP;
  demo_plan_bit (demo, &bit);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), >, 2);
  g_assert_cmpstr (spelch_words_bit_caption (demo->part, demo->cut, &bit, &demo->plan), ==,
                   "pass too shallow");
}

/* What a tile says of a grade that isn't accepted is what the verdict beside the drawing calls it. S 1 for
 * the pull of a sharp up-cut bit in MDF: grade 2. */
static void
test_nearly_clean (Demo *demo, gconstpointer unused)
{
  const SpelchBit *bit = demo_bit ("up-cut-6.35x25");
  demo_take_board (demo, "mdf-18");
  demo->part->accepted_seen = 1;
  demo_plan_bit (demo, bit);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 2);
  g_assert_cmpstr (spelch_words_bit_caption (demo->part, demo->cut, bit, &demo->plan), ==,
                   spelch_words_grade (2, SPELCH_FACING_BOARD));
}

#define ADD(name, function) g_test_add ("/words/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

/* A quarter of an inch isn't 6.3 mm, nor 6.4. */
static void
test_lengths (Demo *demo, gconstpointer unused)
{
  says (spelch_words_length (&MM, 6.35), "6.35 mm");
  says (spelch_words_length (&MM, 18.3), "18.3 mm");
  says (spelch_words_length (&MM, 9.525), "9.5 mm");
  says (spelch_words_length (&MM, 18.0), "18.0 mm");
  says (spelch_words_length (&INCH, 6.35), "1/4 in");
  says (spelch_words_at_least (&MM, 6.35), "6.4 mm");
  says (spelch_words_at_most (&MM, 6.35), "6.3 mm");
}

/* MDF has no grain that could tear or stand up: what a dull edge does to it is fuzzy. Plywood and melamine
 * have words of their own. */
static void
test_grades (Demo *demo, gconstpointer unused)
{
  static const struct
  {
    const char *board;
    SpelchFacing facing;
    const char *three, *four, *five;
  } ROWS[] = {
    { "mdf-18", SPELCH_FACING_BOARD, "fuzzy", "very fuzzy", "badly fuzzy" },
    { "birch-ply-18", SPELCH_FACING_PLY, "fuzzy grain", "torn grain", "badly torn" },
    { "melamine-mdf-18", SPELCH_FACING_LAMINATE, "nicked", "chipped", "badly chipped" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (ROWS); i++)
    {
      demo_take_board (demo, ROWS[i].board);
      demo_plan_with (demo, "up-cut-6.35x25");
      SpelchFacing facing = spelch_plan_facing (&demo->plan, SPELCH_SIDE_MOTOR);
      g_assert_cmpint ((int)facing, ==, (int)ROWS[i].facing);
      g_assert_cmpint ((int)spelch_facing_of_layer (&demo->part->board.layers[0]), ==, (int)facing);
      g_assert_cmpstr (spelch_words_grade (1, facing), ==, "clean");
      g_assert_cmpstr (spelch_words_grade (3, facing), ==, ROWS[i].three);
      g_assert_cmpstr (spelch_words_grade (4, facing), ==, ROWS[i].four);
      g_assert_cmpstr (spelch_words_grade (5, facing), ==, ROWS[i].five);
    }
}

/* S 1 for the pull of an up-cut bit, K 2 for its dull edge: grade 4. */
static void
test_fuzzy_board (Demo *demo, gconstpointer unused)
{
  SpelchBit dull = *demo_bit ("up-cut-6.35x25");
  dull.wear = SPELCH_WEAR_DULL;
  demo_take_board (demo, "mdf-18");
  demo_plan_bit (demo, &dull);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 4);
  g_assert_cmpstr (spelch_words_bit_caption (demo->part, demo->cut, &dull, &demo->plan), ==,
                   "fuzzy show face");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("other-bit", test_other_bit);
  ADD ("each-face", test_each_face);
  ADD ("longer-bit", test_longer_bit);
  ADD ("narrow-window", test_narrow_window);
  ADD ("to-spare", test_to_spare);
  ADD ("only-just", test_only_just);
  ADD ("lengths", test_lengths);
  ADD ("grades", test_grades);
  ADD ("fuzzy-board", test_fuzzy_board);
  ADD ("entry", test_entry);
  ADD ("plurals", test_plurals);
  ADD ("caption", test_caption);
  ADD ("nearly-clean", test_nearly_clean);
  return g_test_run ();
}

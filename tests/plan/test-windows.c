/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Clean windows, and what opens an empty one. All figures are worked by hand from the geometry beside them.
 */
#include "on-demo.h"

#include "plan/words.h"

#include <string.h>

/* The back ply, 1.3 mm, is taken by two passes: the one held at 14.5 of 15 mm leaves 0.5 of it, so the tip
 * may run 6.35 - 0.5 below the board, and surely 5.95 - (0.5 + 0.15) - 0.15 with 0.15 for setting and bed. */
static void
test_breaking_pass (Demo *demo, gconstpointer unused)
{
  demo->cut->backer = spelch_length_mm (12);
  demo->part->board.measured = spelch_length_mm (15);
  demo_hold_first_pass (demo, 14.5);
  demo->cut->held.overcut_held = true;
  demo->cut->held.overcut = spelch_length_mm (5.5);
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.nominal.last_tip.to, 20.85, 1e-9);
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.robust.last_tip.to, 20.15, 1e-9);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_FAR), ==, 1);
}

/* A slender bit's step of two diameters, 6.35 mm, doesn't bring its down-shear to the face: 6 + 1.3 = 7.3. */
static void
test_slender (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6x22");
  bit.diameter = bit.shank = spelch_length_mm (3.175);
  demo_plan_bit (demo, &bit);
  g_assert_true (demo->plan.windows.nominal.first_pass.empty);
  g_assert_cmpint (demo->plan.windows.near.by, ==, SPELCH_OPENED_BY_OTHER_BIT);
  bit.up_shear = spelch_length_mm (4);
  demo_plan_bit (demo, &bit);
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.nominal.first_pass.from, 5.3, 1e-9);
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.nominal.first_pass.to, 6.35, 1e-9);
  g_assert_cmpfloat (demo->plan.passes[0].tip_mm, >=, 5.3 + 0.4 + 0.25 - 1e-9);
}

/* An up-cut through a board as sold, zero on the face: no depth helps the near face, measuring the far one.
 */
static void
test_each_face (Demo *demo, gconstpointer unused)
{
  demo->part->board.measured = spelch_length_mm (0);
  demo->part->machine.datum = SPELCH_DATUM_FACE;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpint (demo->plan.windows.near.by, ==, SPELCH_OPENED_BY_OTHER_BIT);
  g_assert_cmpint (demo->plan.windows.far.by, ==, SPELCH_OPENED_BY_MEASURE);
  g_assert_cmpint (demo->plan.windows.opened_by, ==, SPELCH_OPENED_BY_OTHER_BIT);
}

/* Up-shear 15.9 in 18 mm as sold (+0.74/-0.94), 0.35 of overcut allowed, bed flat within 0.02.
 * Measured, zero on the face: o from 0.1 + 0.1 + 0.1 to 0.35 - 0.2, none.
 * Zero on the bed, not measured: d from 15.9 + 0.4 + 1.3 + 0.12 + 0.94 = 18.66 to 18.35 - 0.12, none.
 * Both: d from 17.82 to 18.23, o from 0.22 to 0.23. */
static void
test_measure_and_bed (Demo *demo, gconstpointer unused)
{
  demo->part->board.measured = spelch_length_mm (0);
  demo->part->machine.datum = SPELCH_DATUM_FACE;
  demo->part->machine.overcut_allowed_mm = 0.35;
  demo->part->machine.flatness_mm = 0.02;
  demo_plan_with (demo, "compression-12.7x35");
  g_assert_cmpint (demo->plan.windows.opened_by, ==, SPELCH_OPENED_BY_MEASURE_AND_BED);
  g_assert_cmpint (demo->plan.windows.far.by, ==, SPELCH_OPENED_BY_BED);
}

/* On a router table only air is below the board, but nobody needs the tip further out than it takes to cut
 * through: 18 + 0.1 + 0.2 deep, less 1.3 of face, 0.1 of setting and 0.4 of marking. At the other end 0.3 +
 * 0.2 below the board, 1.3 of back ply and the same 0.4. A blind cut has no other end: 9 - 1.3 - 0.1 - 0.4.
 * That is for whoever sets a single pass; none is planned deeper by hand than the bit is thick, so that 6.3
 * stand in place of 18.3 and 9. */
static void
test_up_shear_asked_for (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "router-table");
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.needs_up_shear_to, 6.3 - 1.8, 1e-9);
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.needs_up_shear_from, 2.2, 1e-9);
  demo->cut->held.passes_held = true;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.needs_up_shear_to, 16.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.needs_up_shear_from, 2.2, 1e-9);
  demo_take_cut (demo, "shelf-dado");
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.needs_up_shear_to, 6.3 - 1.8, 1e-9);
  demo->cut->held.passes_held = true;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.needs_up_shear_to, 7.2, 1e-9);
  g_assert_cmpfloat (demo->plan.windows.needs_up_shear_from, ==, 0);
}

/* Three plies of 1 mm, measured within 0.1, zero on the face, settings within 0.1, an up-shear of 6 mm marked
 * within 0.4, on a thick backer. Exactly, the near face asks for 6 + 1 = 7 mm, 4 below the board, and the far
 * one for 6 - 1 = 5 below it or less: 4.5 stands half way. With tolerances 4.5 below or more, and 5 - 0.4 -
 * 0.2 = 4.4 or less: at odds by 0.1. Whatever the up-shear, the plies take 1 + 0.4 + 0.1 and 1 + 0.4 + 0.2 of
 * the 3 mm, 0.1 too much. Marked within 0.3, they meet: 4.4, and 4.5 or less. */
static void
put_thin_board (Demo *demo)
{
  SpelchBoard *board = &demo->part->board;
  demo_take_board (demo, "birch-ply-12");
  board->n_layers = 3;
  for (guint i = 0; i < 3; i++)
    board->layers[i].thickness = spelch_length_mm (1);
  board->nominal = board->measured = spelch_length_mm (3);
  demo->part->machine.datum = SPELCH_DATUM_FACE;
  demo->cut->tabs.count = 0;
  demo->cut->backer = spelch_length_mm (12);
}

static void
test_at_odds (Demo *demo, gconstpointer unused)
{
  const SpelchWindows *w = &demo->plan.windows;
  SpelchNumbers numbers = { .unit = SPELCH_UNIT_MM, .decimal_sign = '.' };
  put_thin_board (demo);
  demo_plan_with (demo, "compression-6x22");
  g_assert_cmpfloat_with_epsilon (w->robust.first_pass.from, 7.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (w->robust.last_tip.to, 7.4, 1e-9);
  g_assert_true (w->at_odds);
  g_assert_cmpint (w->near.by, ==, SPELCH_OPENED_BY_NOTHING_NEEDED);
  g_assert_cmpint (w->far.by, ==, SPELCH_OPENED_BY_NOTHING_NEEDED);
  g_assert_cmpint (w->opened_by, ==, SPELCH_OPENED_BY_OTHER_BIT);
  g_assert_cmpfloat (w->needs_up_shear_to, ==, 0);
  g_assert_cmpfloat_with_epsilon (demo->plan.overcut, 4.5, 1e-9);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 1);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_FAR), ==, 1);
  g_autofree char *words = spelch_words_window (&demo->plan, SPELCH_SIDE_FAR, &numbers);
  g_assert_nonnull (strstr (words, "asks for 7.5 mm or deeper, the far one for 7.4 mm or less"));

  demo->part->tolerances.up_shear_mm = 0.3;
  demo_plan_with (demo, "compression-6x22");
  g_assert_false (w->at_odds);
  g_assert_cmpint (w->opened_by, ==, SPELCH_OPENED_BY_NOTHING_NEEDED);
  g_assert_cmpfloat_with_epsilon (demo->plan.overcut, 4.4, 1e-9);
}

/* The same as sold, 0.49 thinner or 0.29 thicker, with 0.3 for the mark: 7.4 or deeper, 3 + 5 - 0.3 - 0.59 =
 * 7.11 or less. Measured they meet; on the bare bed only with a backer too, as thick as the tip may come
 * below the board, 4.4 + 0.2, and 1 mm. */
static void
test_measure_thin_board (Demo *demo, gconstpointer unused)
{
  const SpelchWindows *w = &demo->plan.windows;
  put_thin_board (demo);
  demo->part->board.measured = spelch_length_mm (0);
  demo->part->board.tolerance_plus_mm = 0.29;
  demo->part->board.tolerance_minus_mm = 0.49;
  demo->part->tolerances.up_shear_mm = 0.3;
  demo_plan_with (demo, "compression-6x22");
  g_assert_true (w->at_odds);
  g_assert_cmpint (w->opened_by, ==, SPELCH_OPENED_BY_MEASURE);
  demo->cut->backer = spelch_length_mm (0);
  demo_plan_with (demo, "compression-6x22");
  g_assert_false (w->at_odds);
  g_assert_cmpint (w->near.by, ==, SPELCH_OPENED_BY_BACKER);
  g_assert_cmpint (w->opened_by, ==, SPELCH_OPENED_BY_MEASURE_AND_BACKER);
  g_assert_cmpfloat_with_epsilon (w->opened_mm, 5.6, 1e-9);
}

/* Where the hands overlap by 2 mm both ask for 1 mm more: 8 mm, and 3 + 6 - 1 - 1 = 7. Nothing keeps both
 * even exactly. The far face is kept by a tip that just cuts through, 0.1 + 0.2 below the board; the near
 * one, where it alone is seen, by one 8 + 0.4 + 0.1 deep. */
static void
test_odds_exactly (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6x22");
  bit.overlap = spelch_length_mm (2);
  put_thin_board (demo);
  demo->cut->seen_a = demo->cut->seen_b = true;
  demo_plan_bit (demo, &bit);
  g_assert_true (demo->plan.windows.at_odds);
  g_assert_cmpfloat_with_epsilon (demo->plan.overcut, 0.3, 1e-9);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_FAR), ==, 1);
  demo->cut->seen_b = false;
  demo_plan_bit (demo, &bit);
  g_assert_cmpfloat_with_epsilon (demo->plan.overcut, 5.5, 1e-9);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 1);
}

/* With air below, a bit too short is too short; nothing is said of an overcut. */
static void
test_short_over_air (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "router-table");
  demo_plan_with (demo, "up-cut-5x17");
  g_assert_true (demo_has_stop (demo, SPELCH_STOP_TOO_SHORT));
  g_assert_false (demo_has_stop (demo, SPELCH_STOP_OVERCUT));
}

#define ADD(name, function) g_test_add ("/windows/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("breaking-pass", test_breaking_pass);
  ADD ("slender", test_slender);
  ADD ("each-face", test_each_face);
  ADD ("measure-and-bed", test_measure_and_bed);
  ADD ("up-shear-asked-for", test_up_shear_asked_for);
  ADD ("at-odds", test_at_odds);
  ADD ("measure-thin-board", test_measure_thin_board);
  ADD ("odds-exactly", test_odds_exactly);
  ADD ("short-over-air", test_short_over_air);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the shop log teaches, and what that changes: worked by hand from the rules in plan/corrections.h and
 * the model's table of points.
 */
#include "files/shop-data.h"
#include "on-demo.h"
#include "plan/corrections.h"
#include "plan/words-log.h"

#include <math.h>
#include <string.h>

static const SpelchNumbers PLAIN = { SPELCH_UNIT_MM, SPELCH_INCH_DECIMAL, '.' };

/* A face that a compression bit should have pressed in, clear of the turn-over by @clear. */
static SpelchLogEntry
clear_entry (double clear, int grade)
{
  SpelchLogEntry one = demo_entry ("2026-05-01", SPELCH_FACE_A, 1, grade);
  one.clear_known = true;
  one.clear_mm = clear;
  return one;
}

static SpelchCorrection
learn (const SpelchBit *bit, const SpelchLogEntry *entries, guint n)
{
  SpelchCorrection learnt;
  bool any = spelch_corrections_learn (spelch_shop_constants (), "birch-ply-18", bit, entries, n, &learnt);
  g_assert_cmpint (any, ==,
                   learnt.motor.points_cuts + learnt.motor.window_cuts + learnt.far.points_cuts
                           + learnt.far.window_cuts
                       > 0);
  return learnt;
}

/* What is counted, and why the rest isn't. */
static void
test_tally (void)
{
  SpelchBit bit = *demo_bit ("down-cut-6.35x25");
  SpelchLogEntry entries[] = {
    demo_entry ("2026-05-01", SPELCH_FACE_B, 4, 3), demo_entry ("2026-05-02", SPELCH_FACE_B, 3, 4),
    demo_entry ("2026-05-03", SPELCH_FACE_B, 3, 5), demo_entry ("2026-05-04", SPELCH_FACE_B, 2, 2),
    demo_entry ("2026-05-05", SPELCH_FACE_B, 2, 3), demo_entry ("2026-05-06", SPELCH_FACE_A, 1, 2),
    demo_entry ("2026-05-07", SPELCH_FACE_B, 1, 2),
  };
  const guint n = G_N_ELEMENTS (entries);
  entries[4].chattered = true;
  g_strlcpy (entries[6].board, "mdf-18", sizeof entries[6].board);
  SpelchTally far = spelch_corrections_tally ("birch-ply-18", &bit, false, entries, n);
  g_assert_cmpuint (far.counted, ==, 4);
  g_assert_cmpuint (far.better, ==, 1);
  g_assert_cmpuint (far.worse, ==, 2);
  g_assert_cmpuint (far.as_foretold, ==, 1);
  g_assert_cmpuint (far.passed, ==, 1);
  g_assert_cmpuint (far.before, ==, 0);
  g_assert_cmpuint (spelch_corrections_tally ("birch-ply-18", &bit, true, entries, n).worse, ==, 1);
  bit = spelch_bit_renew (&bit, SPELCH_RENEWAL_REPLACED, "2026-05-02");
  far = spelch_corrections_tally ("birch-ply-18", &bit, false, entries, n);
  g_assert_cmpuint (far.before, ==, 2);
  g_assert_cmpuint (far.counted, ==, 2);
}

static void
assert_side (const SpelchLogEntry *entries, guint n, bool motor, const char *said)
{
  const SpelchBit *bit = demo_bit ("down-cut-6.35x25");
  SpelchTally tally = spelch_corrections_tally ("birch-ply-18", bit, motor, entries, n);
  SpelchCorrection learnt = learn (bit, entries, n);
  g_autofree char *words = spelch_words_log_side (&tally, motor ? &learnt.motor : &learnt.far, motor, &PLAIN);
  g_assert_cmpstr (words, ==, said);
}

static void
test_words_of_sides (void)
{
  const SpelchLogEntry worse[] = {
    demo_entry ("2026-05-01", SPELCH_FACE_B, 3, 4),
    demo_entry ("2026-05-02", SPELCH_FACE_B, 2, 4),
    demo_entry ("2026-05-03", SPELCH_FACE_B, 3, 3),
  };
  const SpelchLogEntry torn[] = { clear_entry (0.3, 2), clear_entry (0.55, 3) };
  SpelchLogEntry moved = worse[0];
  moved.moved = true;
  assert_side (worse, 3, false,
               "The far side came out worse than reckoned in 2 of 3 cuts, so it is graded a point worse.");
  assert_side (worse, 3, true, "");
  assert_side (worse, 1, false,
               "The far side so far: 1 worse than reckoned. Two that agree, and outnumber those against, "
               "correct the grade.");
  assert_side (worse + 2, 1, false, "The far side came out as reckoned in 1 cut, so nothing is corrected.");
  assert_side (&moved, 1, false,
               "The far side: the work moved or the cut chattered, which says nothing about the shear.");
  assert_side (torn, 2, true,
               "The motor side was torn in 2 cuts though it lay clear of where the shear turns over, so that "
               "counts as 0.65 mm nearer to the face.");
}

static void
test_words_of_entries (void)
{
  SpelchLogEntry one = demo_entry ("2026-05-01", SPELCH_FACE_B, 1, 4);
  g_autofree char *torn = spelch_words_log_entry (&one, SPELCH_FACING_PLY);
  g_autofree char *chipped = spelch_words_log_entry (&one, SPELCH_FACING_LAMINATE);
  g_autofree char *nothing = spelch_words_log_remarks (&one);
  g_assert_cmpstr (torn, ==, "Far side: torn grain, clean reckoned");
  g_autofree char *fuzzy = spelch_words_log_entry (&one, SPELCH_FACING_BOARD);
  g_assert_cmpstr (fuzzy, ==, "Far side: very fuzzy, clean reckoned");
  g_assert_cmpstr (chipped, ==, "Far side: chipped, clean reckoned");
  g_assert_cmpstr (nothing, ==, "");
  one.as_predicted = one.burnt = one.moved = true;
  one.way_up = SPELCH_FACE_B;
  one.piece = SPELCH_PIECE_TEST_STRIP;
  g_autofree char *clean = spelch_words_log_entry (&one, SPELCH_FACING_PLY);
  g_autofree char *remarks = spelch_words_log_remarks (&one);
  g_assert_cmpstr (clean, ==, "Motor side: clean, as reckoned");
  g_assert_cmpstr (remarks, ==, "test strip, burnt, the work moved");
}

/* Two that agree shift the points of their side, one doesn't; they must outnumber those against, among which
 * a cut foretold clean that came out clean isn't. */
static void
test_two_agree (void)
{
  const SpelchBit *bit = demo_bit ("down-cut-6.35x25");
  const SpelchLogEntry cleaner = demo_entry ("2026-05-01", SPELCH_FACE_B, 4, 3);
  const SpelchLogEntry later = demo_entry ("2026-05-09", SPELCH_FACE_B, 4, 2);
  const SpelchLogEntry same = demo_entry ("2026-05-02", SPELCH_FACE_B, 4, 4);
  const SpelchLogEntry clean = demo_entry ("2026-05-02", SPELCH_FACE_B, 1, 1);
  const SpelchLogEntry worse = demo_entry ("2026-05-03", SPELCH_FACE_B, 3, 4);
  const SpelchLogEntry near = demo_entry ("2026-05-04", SPELCH_FACE_A, 1, 2);

  g_assert_cmpint (learn (bit, (SpelchLogEntry[]){ cleaner }, 1).far.points, ==, 0);
  SpelchCorrection two = learn (bit, (SpelchLogEntry[]){ later, cleaner }, 2);
  g_assert_cmpint (two.far.points, ==, -1);
  g_assert_cmpuint (two.far.points_cuts, ==, 2);
  g_assert_cmpint (two.motor.points, ==, 0);
  g_assert_cmpstr (two.last, ==, "2026-05-09");
  g_assert_cmpstr (two.board, ==, "birch-ply-18");
  g_assert_cmpstr (two.bit, ==, "down-cut-6.35x25");
  g_assert_cmpint (learn (bit, (SpelchLogEntry[]){ cleaner, later, same }, 3).far.points, ==, -1);
  g_assert_cmpint (learn (bit, (SpelchLogEntry[]){ cleaner, later, same, same }, 4).far.points, ==, 0);
  g_assert_cmpint (learn (bit, (SpelchLogEntry[]){ cleaner, later, clean, clean }, 4).far.points, ==, -1);
  g_assert_cmpint (learn (bit, (SpelchLogEntry[]){ worse, worse }, 2).far.points, ==, 1);
  g_assert_cmpint (learn (bit, (SpelchLogEntry[]){ worse, cleaner }, 2).far.points, ==, 0);
  g_assert_cmpint (learn (bit, (SpelchLogEntry[]){ worse, near }, 2).far.points, ==, 0);
  g_assert_cmpint (learn (bit, (SpelchLogEntry[]){ near, near }, 2).motor.points, ==, 1);
}

/* What doesn't count: another board or bit, a cut that moved or chattered, and what came before sharpening
 * or on its day. */
static void
test_not_counted (void)
{
  SpelchBit bit = *demo_bit ("down-cut-6.35x25");
  SpelchLogEntry entries[2];
  for (int change = 0; change < 5; change++)
    {
      entries[0] = demo_entry ("2026-05-01", SPELCH_FACE_B, 4, 3);
      entries[1] = demo_entry ("2026-05-09", SPELCH_FACE_B, 4, 3);
      g_assert_cmpint (learn (&bit, entries, 2).far.points, ==, -1);
      if (change == 0)
        g_strlcpy (entries[1].board, "mdf-18", sizeof entries[1].board);
      if (change == 1)
        g_strlcpy (entries[1].bit, "down-cut-9.5x25", sizeof entries[1].bit);
      entries[1].moved = change == 2;
      entries[1].chattered = change == 3;
      if (change == 4)
        g_strlcpy (bit.sharpened, "2026-05-01", sizeof bit.sharpened);
      g_assert_cmpint (learn (&bit, entries, 2).far.points, ==, 0);
    }
}

/* 0.55 and 0.3 mm clear, yet torn: the turn-over is 0.55 + 0.1 (the tolerance of setting a depth) nearer. At
 * 0.95 mm it would be 1.05, but 1 is the most. 2 mm clear and torn isn't the turn-over's doing. */
static void
test_window (void)
{
  const SpelchBit *bit = demo_bit ("down-cut-6.35x25");
  const SpelchLogEntry torn = clear_entry (0.3, 4), further = clear_entry (0.55, 3);
  const SpelchLogEntry far_off = clear_entry (2, 2), edge = clear_entry (0.95, 4);
  const SpelchLogEntry clean = clear_entry (0.4, 1), well_in = clear_entry (0.9, 1);

  SpelchLearnt both = learn (bit, (SpelchLogEntry[]){ torn, further }, 2).motor;
  g_assert_cmpfloat_with_epsilon (both.window_mm, 0.65, 1e-12);
  g_assert_cmpuint (both.window_cuts, ==, 2);
  g_assert_cmpint (both.points, ==, 0);
  g_assert_cmpfloat (learn (bit, (SpelchLogEntry[]){ torn }, 1).motor.window_mm, ==, 0);
  g_assert_cmpfloat_with_epsilon (learn (bit, (SpelchLogEntry[]){ torn, edge }, 2).motor.window_mm, 1, 1e-12);
  g_assert_cmpfloat (learn (bit, (SpelchLogEntry[]){ torn, further, clean, clean }, 4).motor.window_mm, ==,
                     0);
  g_assert_cmpfloat_with_epsilon (
      learn (bit, (SpelchLogEntry[]){ torn, further, well_in, well_in }, 4).motor.window_mm, 0.65, 1e-12);
  SpelchLearnt off = learn (bit, (SpelchLogEntry[]){ far_off, far_off }, 2).motor;
  g_assert_cmpfloat (off.window_mm, ==, 0);
  g_assert_cmpint (off.points, ==, 1);
}

static SpelchLogEntry
reading (double watts, double foretold)
{
  SpelchLogEntry one = demo_entry ("2026-05-01", SPELCH_FACE_A, 1, 1);
  one.load_w = watts;
  one.power_w = foretold;
  return one;
}

/* 400/400, 480/400, 1200/400: the middle one is 1.2; of the first two the mean of both, 1.1. A fifth of
 * 2200 W is 440. */
static void
test_calibrate (void)
{
  SpelchLogEntry all[] = { reading (480, 400), reading (1200, 400), reading (400, 400) };
  SpelchCalibration found;
  g_assert_true (spelch_corrections_calibrate ("birch-ply-18", all, 3, &found));
  g_assert_cmpfloat_with_epsilon (found.factor, 1.2, 1e-12);
  g_assert_cmpuint (found.readings, ==, 3);
  all[1].clogged = true;
  g_assert_true (spelch_corrections_calibrate ("birch-ply-18", all, 3, &found));
  g_assert_cmpfloat_with_epsilon (found.factor, 1.1, 1e-12);
  g_assert_false (spelch_corrections_calibrate ("mdf-18", all, 3, &found));

  SpelchLogEntry share = reading (0, 400);
  share.load_percent = 20;
  share.rated_w = 2200;
  g_assert_true (spelch_corrections_calibrate ("birch-ply-18", &share, 1, &found));
  g_assert_cmpfloat_with_epsilon (found.factor, 1.1, 1e-12);
  SpelchLogEntry beyond[] = { reading (4000, 400), reading (40, 400), reading (400, 0), reading (0, 400) };
  g_assert_false (spelch_corrections_calibrate ("birch-ply-18", beyond, 4, &found));
}

/* ---- What it changes ---- */

/* 2880 / (2 x 18000) = 0.08 mm a tooth: chips cost nothing. */
static void
hold_small_chip (Demo *demo)
{
  demo->cut->held.speed_rpm = 18000;
  demo->cut->held.feed_mm_min = 2880;
}

static void
put (Demo *demo, const char *bit, SpelchLearnt motor, SpelchLearnt far)
{
  SpelchCorrection correction = { .last = "2026-05-09", .motor = motor, .far = far };
  g_strlcpy (correction.board, demo->part->board.id, sizeof correction.board);
  g_strlcpy (correction.bit, bit, sizeof correction.bit);
  spelch_part_put_correction (demo->part, &correction);
}

static bool
why_says (const Demo *demo, SpelchSide side, const char *words)
{
  g_auto (GStrv) why = spelch_words_edge_why (&demo->plan, side, &PLAIN);
  for (guint i = 0; why[i] != NULL; i++)
    if (strstr (why[i], words) != NULL)
      return true;
  return false;
}

/* An up-cut at the motor side of birch plywood, all round: 1 + shear 2 + grain 1, which counts no more than
 * the shear: 4. One point less: 1 + 2 - 1 + 1 = 3; one more: 1 + 2 + 1 + 1 = 5. At the far side, pressed in:
 * 1; one point less changes nothing, one more gives 1 + 0 + 1 = 2. A down-cut at the far side, backed: 1 + 2
 * - 1 + 1 = 3, and 2 or 4 by the log. */
static void
test_points_shift (Demo *demo, gconstpointer unused)
{
  const struct
  {
    int points, motor, far, backed;
  } rows[] = { { 0, 4, 1, 3 }, { -1, 3, 1, 2 }, { 1, 5, 2, 4 } };
  hold_small_chip (demo);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      SpelchLearnt learnt = { .points = rows[i].points, .points_cuts = 2 };
      put (demo, "up-cut-6.35x25", learnt, learnt);
      demo_plan_with (demo, "up-cut-6.35x25");
      g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, rows[i].motor);
      g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_FAR), ==, rows[i].far);
      g_assert_cmpint (spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR)->model_grade, ==, 4);
      g_assert_cmpint (spelch_plan_worst (&demo->plan, SPELCH_SIDE_FAR)->model_grade, ==, 1);
      const SpelchEdge *edge = spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR);
      g_assert_cmpint (spelch_edge_points (edge, SPELCH_TERM_LOG), ==, rows[i].points);
      put (demo, "down-cut-6.35x25", learnt, learnt);
      demo_plan_with (demo, "down-cut-6.35x25");
      g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_FAR), ==, rows[i].backed);
      g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, MAX (1 + rows[i].points, 1));
    }
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_true (why_says (demo, SPELCH_SIDE_MOTOR,
                           "Your log: 2 cuts came out worse than expected, 1 point more (shop practice)."));
  put (demo, "up-cut-6.35x25", (SpelchLearnt){ .points = -1, .points_cuts = 3 }, (SpelchLearnt){ 0 });
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_true (why_says (demo, SPELCH_SIDE_MOTOR,
                           "Your log: 3 cuts came out cleaner than expected, 1 point less (shop practice)."));
  g_assert_false (why_says (demo, SPELCH_SIDE_FAR, "Your log"));
}

/* Switched off, sharpened since, for another board, for another bit: as without. */
static void
test_ended (Demo *demo, gconstpointer unused)
{
  const SpelchLearnt less = { .points = -1, .points_cuts = 2 };
  SpelchBit bit = *demo_bit ("up-cut-6.35x25");
  hold_small_chip (demo);
  put (demo, bit.id, less, less);
  demo_plan_bit (demo, &bit);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 3);
  demo_plan_with (demo, "up-cut-12.7x38");
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 4);

  g_strlcpy (bit.sharpened, "2026-05-08", sizeof bit.sharpened);
  demo_plan_bit (demo, &bit);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 3);
  g_strlcpy (bit.sharpened, "2026-05-09", sizeof bit.sharpened);
  demo_plan_bit (demo, &bit);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 4);
  *bit.sharpened = '\0';

  demo->part->corrections[0].off = true;
  demo_plan_bit (demo, &bit);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 4);
  demo->part->corrections[0].off = false;
  g_strlcpy (demo->part->board.id, "birch-ply-other", sizeof demo->part->board.id);
  demo_plan_bit (demo, &bit);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 4);
}

/* A turn-over that counts as 0.4 mm nearer asks for a first pass 0.4 mm deeper; the cut that stood 0.2 mm
 * inside the window is now torn. */
static void
test_window_shift (Demo *demo, gconstpointer unused)
{
  const char *const bit = "compression-6.35x22";
  const SpelchLearnt nearer = { .window_mm = 0.4, .window_cuts = 2 };
  demo_plan_with (demo, bit);
  double from = demo->plan.windows.nominal.first_pass.from, sure = demo->plan.windows.robust.first_pass.from;
  demo_hold_first_pass (demo, from + 0.2);
  demo_plan_with (demo, bit);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 1);
  put (demo, bit, nearer, (SpelchLearnt){ 0 });
  demo_plan_with (demo, bit);
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.nominal.first_pass.from, from + 0.4, 1e-9);
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.robust.first_pass.from, sure + 0.4, 1e-9);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), >=, 3);
  g_assert_cmpint (spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR)->model_grade, ==, 1);
  g_assert_true (why_says (demo, SPELCH_SIDE_MOTOR, "Your log: 2 cuts tore"));
  g_assert_true (why_says (demo, SPELCH_SIDE_MOTOR, "0.4 mm nearer (shop practice)"));
  demo_hold_first_pass (demo, from + 0.5);
  demo_plan_with (demo, bit);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 1);
}

/* The far side's window ends sooner. 6.35 mm of up-shear less the back ply is more than the bed allows, so a
 * short tip on a thick backer shows it. */
static void
test_far_window_shift (Demo *demo, gconstpointer unused)
{
  const char *const bit = "short-tip-9.5x25";
  demo->cut->backer = spelch_length_mm (30);
  demo_plan_with (demo, bit);
  double to = demo->plan.windows.nominal.last_tip.to, sure = demo->plan.windows.robust.last_tip.to;
  put (demo, bit, (SpelchLearnt){ 0 }, (SpelchLearnt){ .window_mm = 0.3, .window_cuts = 2 });
  demo_plan_with (demo, bit);
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.nominal.last_tip.to, to - 0.3, 1e-9);
  g_assert_cmpfloat_with_epsilon (demo->plan.windows.robust.last_tip.to, sure - 0.3, 1e-9);
}

static void
assert_times (double is, double was, double factor)
{
  g_assert_cmpfloat (fabs (was), >, 0);
  g_assert_cmpfloat_with_epsilon (is / was, factor, 1e-9);
}

/* At the same speed, feed and passes every force, the power and the heat go by the factor, and their bands
 * with them; what isn't a force stays. */
static void
test_factor (Demo *demo, gconstpointer unused)
{
  hold_small_chip (demo);
  demo_hold_first_pass (demo, 9.2);
  demo_plan_with (demo, "compression-6.35x22");
  SpelchPlan was = demo->plan;
  demo->part->calibration = (SpelchCalibration){ .board = "birch-ply-18", .factor = 1.25, .readings = 3 };
  demo_plan_with (demo, "compression-6.35x22");
  const SpelchPlan *is = &demo->plan;
  assert_times (is->power_w.low, was.power_w.low, 1.25);
  assert_times (is->power_w.mid, was.power_w.mid, 1.25);
  assert_times (is->power_w.high, was.power_w.high, 1.25);
  assert_times (is->tangential_mean_n, was.tangential_mean_n, 1.25);
  assert_times (is->axial_mean_n, was.axial_mean_n, 1.25);
  assert_times (is->sideways_peak_n, was.sideways_peak_n, 1.25);
  assert_times (is->hold_needed_n, was.hold_needed_n, 1.25);
  assert_times (is->stress_mpa, was.stress_mpa, 1.25);
  assert_times (is->deflection_mm, was.deflection_mm, 1.25);
  assert_times (is->wall_heat, was.wall_heat, 1.25);
  assert_times (is->rubbing_share, was.rubbing_share, 1);
  assert_times (is->ripple, was.ripple, 1);
  assert_times (is->chip_room, was.chip_room, 1);
  g_autofree char *words = spelch_words_calibration (is, &PLAIN);
  g_assert_nonnull (strstr (words, "3 readings"));
  g_assert_nonnull (strstr (words, "1.25 times"));
  g_assert_nonnull (strstr (words, "band stays as wide"));

  demo->part->calibration.off = true;
  demo_plan_with (demo, "compression-6.35x22");
  assert_times (demo->plan.power_w.mid, was.power_w.mid, 1);
  demo->part->calibration.off = false;
  g_strlcpy (demo->part->calibration.board, "mdf-18", sizeof demo->part->calibration.board);
  demo_plan_with (demo, "compression-6.35x22");
  assert_times (demo->plan.power_w.mid, was.power_w.mid, 1);
  g_autofree char *none = spelch_words_calibration (&demo->plan, &PLAIN);
  g_assert_cmpstr (none, ==, "");
}

/* An entry keeps what the model foretells without the log, so that what was learnt doesn't undo itself: two
 * torn cuts in the log teach the same whether or not they were already counted. */
static void
test_entry (Demo *demo, gconstpointer unused)
{
  const SpelchBit *bit = demo_bit ("up-cut-6.35x25");
  SpelchLogEntry entries[2];
  hold_small_chip (demo);
  demo_hold_first_pass (demo, 9.2);
  demo_plan_bit (demo, bit);
  double watts = demo->plan.power_w.mid;
  for (int round = 0; round < 3; round++)
    {
      const SpelchEdge *edge = spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR);
      entries[0] = spelch_corrections_entry (demo->part, demo->cut, bit, &demo->plan, edge);
      g_strlcpy (entries[0].date, "2026-05-01", sizeof entries[0].date);
      g_assert_cmpint (entries[0].predicted, ==, 4);
      g_assert_cmpfloat_with_epsilon (entries[0].power_w / watts, 1, 1e-9);
      g_assert_cmpuint (entries[0].n_passes, ==, demo->plan.n_passes);
      g_assert_cmpfloat (entries[0].feed_mm_min, ==, 2880);
      g_assert_false (entries[0].clear_known);
      entries[0].as_predicted = false;
      entries[0].grade = 3;
      entries[0].load_w = watts * 1.5;
      entries[1] = entries[0];
      g_strlcpy (entries[0].id, "one", sizeof entries[0].id);
      g_strlcpy (entries[1].id, "two", sizeof entries[1].id);
      g_autofree char *fault = spelch_log_entry_fault (&entries[0]);
      g_assert_null (fault);
      spelch_corrections_take (spelch_shop_constants (), demo->part, bit, 1, entries, 2);
      g_assert_cmpuint (demo->part->n_corrections, ==, 1);
      g_assert_cmpint (demo->part->corrections[0].motor.points, ==, -1);
      g_assert_cmpfloat_with_epsilon (demo->part->calibration.factor, 1.5, 1e-9);
      demo_plan_bit (demo, bit);
      g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 3);
      assert_times (demo->plan.power_w.mid, watts, 1.5);
    }
  g_autofree char *fault = spelch_part_fault (demo->part);
  g_assert_null (fault);
  demo->part->corrections[0].off = demo->part->calibration.off = true;
  spelch_corrections_take (spelch_shop_constants (), demo->part, bit, 1, entries, 2);
  g_assert_true (demo->part->corrections[0].off && demo->part->calibration.off);
  spelch_corrections_take (spelch_shop_constants (), demo->part, bit, 1, entries, 0);
  g_assert_cmpuint (demo->part->n_corrections, ==, 0);
  g_assert_cmpstr (demo->part->calibration.board, ==, "");
}

/* A compression bit's entry says how far the face was clear of the turn-over: the first pass stands 0.2 mm
 * deeper than the window begins, so 0.2 mm. */
static void
test_entry_clear (Demo *demo, gconstpointer unused)
{
  const SpelchBit *bit = demo_bit ("compression-6.35x22");
  demo_plan_bit (demo, bit);
  demo_hold_first_pass (demo, demo->plan.windows.nominal.first_pass.from + 0.2);
  demo_plan_bit (demo, bit);
  const SpelchEdge *edge = spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR);
  SpelchLogEntry made = spelch_corrections_entry (demo->part, demo->cut, bit, &demo->plan, edge);
  g_assert_true (made.clear_known && spelch_log_entry_at_motor (&made));
  g_assert_cmpfloat_with_epsilon (made.clear_mm, 0.2, 1e-9);
}

#define ADD(path, test) g_test_add (path, Demo, NULL, demo_set_up, test, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/corrections/tally", test_tally);
  g_test_add_func ("/corrections/words/sides", test_words_of_sides);
  g_test_add_func ("/corrections/words/entries", test_words_of_entries);
  g_test_add_func ("/corrections/two-agree", test_two_agree);
  g_test_add_func ("/corrections/not-counted", test_not_counted);
  g_test_add_func ("/corrections/window", test_window);
  g_test_add_func ("/corrections/calibrate", test_calibrate);
  ADD ("/corrections/points-shift", test_points_shift);
  ADD ("/corrections/ended", test_ended);
  ADD ("/corrections/window-shift", test_window_shift);
  ADD ("/corrections/far-window-shift", test_far_window_shift);
  ADD ("/corrections/factor", test_factor);
  ADD ("/corrections/entry", test_entry);
  ADD ("/corrections/entry-clear", test_entry_clear);
  return g_test_run ();
}

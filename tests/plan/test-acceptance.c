/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Acceptance: whole parts, read from files, against figures worked by hand from the model's page. No figure
 * here was ever printed by the program; the arithmetic stands beside each.
 *
 * Grade 1 + S + G + H + K (clamped to 5):
 *   S  pressed in / neutral / pulled out: plywood, veneer, figured 0/1/2; straight-grained 0/1/1; laminate
 * 0/2/3; MDF 0/0/1; one less for a pulled or neutral far face on a backer or a fresh spoilboard G  1 against
 * the grain between 7.5 and 67.5 degrees or in every direction (solid wood; veneer while S > 0), and 1 for an
 *      unsupported exit corner across the grain
 *   H  largest chip under 0.1 mm 0, to 0.3 mm 1, above 2 (plywood, veneer, figured while S > 0;
 * straight-grained against the grain; none on a climb wall); veneer and plywood: G + H at most S K  new and
 * sharp 0, worn 1, dull 2 A slot's largest chip is f_z = feed / (edges x speed).
 *
 * Windows, with the up-shear length L, near and far layers n and f, board T, overcut o, reach = stick-out -
 * base - 2: first pass: L + n <= d <= least of cutting length, reach, T + o_max (blind: the depth) last tip,
 * T + o: o >= 0.1; o <= o_max; L - f (compression); cutting length and reach robust: L +- 0.4, depth setting
 * +- 0.1, thickness + p / - m (measured: 0.1 each way), bed flatness e. zero on the face: d +- 0.1; o + 0.1 +
 * m / - 0.1 - p zero on the bed:  d + 0.1 + e + p / - 0.1 - e - m;  o +- (0.1 + e)
 */
#include "files/part-file.h"
#include "files/shop-data.h"
#include "plan/plan.h"

#include <math.h>
#include <string.h>

typedef struct
{
  SpelchLoad load;
  int grade;
} Face;

/* clang-format off */
#define EMPTY     { .empty = true }
#define NOT_CUT   { SPELCH_LOAD_NOT_CUT, 0 }
#define UNREACHED { SPELCH_LOAD_NOT_CUT, 0 } /* the bit doesn't get there, so nothing comes out of it */
#define IN(grade)      { SPELCH_LOAD_PRESS_IN, grade }
#define NEUTRAL(grade) { SPELCH_LOAD_NEUTRAL, grade }
#define OUT(grade)     { SPELCH_LOAD_PULL_OUT, grade }
/* clang-format on */

#define OPEN        SPELCH_OPENED_BY_NOTHING_NEEDED
#define MEASURE     SPELCH_OPENED_BY_MEASURE
#define ZERO_ON_BED SPELCH_OPENED_BY_BED
#define BACKER      SPELCH_OPENED_BY_BACKER
#define OTHER_BIT   SPELCH_OPENED_BY_OTHER_BIT
#define LONGER_BIT  SPELCH_OPENED_BY_LONGER_BIT

typedef struct
{
  const char *part, *cut;
  Face near, far;
  SpelchWindow nominal, robust;
  SpelchOpenedBy opened_by;
} Expected;

/* clang-format off */
static const Expected expected[] = {
  /* ---- 18 mm birch plywood measured, gantry, zero on the bed, o_max 0.5, e 0.05; compression L 6.35, cutting 22,
   * n = f = 1.3; 5400 / (2 x 18000) = 0.15 mm a tooth.
   * nominal first 6.35 + 1.3 = 7.65 to 18 + 0.5 (22; 40 - 0 - 2 = 38); last 18.1 to 18.5 (o <= 6.35 - 1.3 = 5.05)
   * robust first 6.75 + 1.3 + 0.1 + 0.05 + 0.1 = 8.30 to 18.5 - 0.15; last 18.1 + 0.15 to 18.5 - 0.15 ---- */
  /* near loaded at 9.2 - 1.3 = 7.9 to 9.2, over L; far at 0.3 to 18.3 - 16.7 = 1.6, under L */
  { "birch-18-outline", "deep", IN (1), IN (1),
    { { 7.65, 18.50 }, { 18.10, 18.50 } }, { { 8.30, 18.35 }, { 18.25, 18.35 } }, OPEN },
  /* near at 6 - 1.3 = 4.7 to 6, under L: S 2, every direction G 1, chip 0.15 H 1: 1 + 2 + 1 + 1 */
  { "birch-18-outline", "shallow", OUT (5), IN (1),
    { { 7.65, 18.50 }, { 18.10, 18.50 } }, { { 8.30, 18.35 }, { 18.25, 18.35 } }, OPEN },
  /* the passes press it in, but the ramp cuts the near face at every depth from 0, some of it as the shallow pass does */
  { "birch-18-outline", "ramped", IN (5), IN (1),
    { { 7.65, 18.50 }, { 18.10, 18.50 } }, { { 8.30, 18.35 }, { 18.25, 18.35 } }, OPEN },
  /* the finishing pass cuts both arrises again: near at 18.3 - 1.3 = 17.0 to 18.3, far at 0.3 to 1.6 */
  { "birch-18-outline", "finished", IN (1), IN (1),
    { { 7.65, 18.50 }, { 18.10, 18.50 } }, { { 8.30, 18.35 }, { 18.25, 18.35 } }, OPEN },

  /* one pass, held: near at 17.0 to 18.3, far at 0.3 to 1.6 */
  { "birch-18-outline", "single", IN (1), IN (1),
    { { 7.65, 18.50 }, { 18.10, 18.50 } }, { { 8.30, 18.35 }, { 18.25, 18.35 } }, OPEN },

  /* ---- the same board and bit, zero on the face, o_max 0.35, e 0.02, face b up; both faces as in "deep" with o 0.2
   * nominal first 7.65 to 18.35; last 18.1 to 18.35
   * robust first 6.75 + 1.3 + 0.1 = 8.15 to 18.35 - 0.1 - 0.1 = 18.15; last o >= 0.1 + 0.1 + 0.1 = 0.3, o <= 0.35 - 0.2
   * = 0.15: none; measured already; zero on the bed: 0.1 + 0.12 = 0.22 to 0.35 - 0.12 = 0.23 ---- */
  { "birch-18-zero-on-face", "outline", IN (1), IN (1),
    { { 7.65, 18.35 }, { 18.10, 18.35 } }, { { 8.15, 18.15 }, EMPTY }, ZERO_ON_BED },

  /* ---- the same board as sold, + 0.74 - 0.94, hand-held on a 2 mm backer: o_max = 2 - 1; cutting 22, reach 35 - 8 - 2 = 25
   * nominal first 7.65 to 19; last 18.1 to 19
   * robust first 6.75 + 1.3 + 0.1 = 8.15 to 19 - 0.1 - 0.94 = 17.96; last o >= 0.1 + 0.1 + 0.74 = 0.94, o <= 1 - 0.1 -
   * 0.94 = -0.04: none; measured: 0.3 to 0.8 ---- */
  { "birch-18-unmeasured", "outline", IN (1), IN (1),
    { { 7.65, 19.00 }, { 18.10, 19.00 } }, { { 8.15, 17.96 }, EMPTY }, MEASURE },

  /* ---- the measured board on the gantry, cutting length only 17: nominal first to 17, robust 8.30 to 17 - 0.1 - 0.05 -
   * 0.1 = 16.75; the far face at 18 is out of reach ---- */
  { "birch-18-short-bit", "outline", IN (1), UNREACHED,
    { { 7.65, 17.00 }, EMPTY }, { { 8.30, 16.75 }, EMPTY }, LONGER_BIT },

  /* ---- cutting length 28, on an 8 mm backer: o_max = 8 - 1 = 7; the tip 6 below the board.
   * far at 6.0 to 24 - 16.7 = 7.3, across the turn-over at 6.35: S 2 - 1 (backed), G 1, H 1, but G + H at most S = 1: 1 + 1 + 1
   * nominal first 7.65 to 25; last 18.1 to 18 + 6.35 - 1.3 = 23.05
   * robust first 8.30 to 25 - 0.15 (28 - 0.25 is more); last 18.25 to 18 + 5.95 - 1.3 - 0.15 = 22.50 ---- */
  { "birch-18-backer", "outline", IN (1), OUT (3),
    { { 7.65, 25.00 }, { 18.10, 23.05 } }, { { 8.30, 24.85 }, { 18.25, 22.50 } }, OPEN },

  /* ---- the measured board, within 0.05, on the gantry, zero on the bed; depth setting 0.05, up-shear 0.2. The bit has been
   * sharpened from L 6.35 to 6.1 and cuts both ways within 0.4 of the turn-over: 5.7 to 6.5
   * nominal first 6.5 + 1.3 = 7.8 to 18.5; last 18.1 to 18.5 (o <= 5.7 - 1.3)
   * robust first 6.7 + 1.3 + 0.05 + 0.05 + 0.05 = 8.15 to 18.5 - 0.1; last 18.1 + 0.1 to 18.5 - 0.1 ---- */
  /* near at 6.5 to 7.8 meets the overlap in a point only; far at 0.3 to 1.6 */
  { "birch-18-turn-over", "reached", IN (1), IN (1),
    { { 7.80, 18.50 }, { 18.10, 18.50 } }, { { 8.15, 18.40 }, { 18.20, 18.40 } }, OPEN },
  /* near at 6.4 to 7.7, a tenth of it in the overlap: as "shallow" */
  { "birch-18-turn-over", "missed", OUT (5), IN (1),
    { { 7.80, 18.50 }, { 18.10, 18.50 } }, { { 8.15, 18.40 }, { 18.20, 18.40 } }, OPEN },

  /* ---- dados 9 deep, face grain along the path, 0.15 mm a tooth, 12.7 mm bits as wide as the dado ---- */
  /* S 2, along the grain G 0, H 1 on the conventional wall */
  { "birch-18-dado", "up", OUT (4), NOT_CUT, { EMPTY, EMPTY }, { EMPTY, EMPTY }, OTHER_BIT },
  /* pressed in at any depth */
  { "birch-18-dado", "down", IN (1), NOT_CUT,
    { { 0, 9 }, EMPTY }, { { 0, 9 }, EMPTY }, OPEN },
  /* S 1, H 1 */
  { "birch-18-dado", "plain", NEUTRAL (3), NOT_CUT, { EMPTY, EMPTY }, { EMPTY, EMPTY }, OTHER_BIT },
  /* face a up: fibres 0 from the path at 30 are at -30, with the grain: as along it */
  { "birch-18-dado", "up-with", OUT (4), NOT_CUT, { EMPTY, EMPTY }, { EMPTY, EMPTY }, OTHER_BIT },
  /* face b up mirrors both: +30, against the grain: G 1 more, G + H = S = 2 */
  { "birch-18-dado", "up-against", OUT (5), NOT_CUT, { EMPTY, EMPTY }, { EMPTY, EMPTY }, OTHER_BIT },

  /* ---- 12 mm birch plywood, n = f = 1.1, under L 15.9 on the gantry: near at 5 - 1.1 = 3.9 to 5: as "shallow"; far 0.3 to 1.4
   * first 15.9 + 1.1 = 17.0, but at most 12.5; last 12.1 to 12.5; robust 12.25 to 12.35. The tip would stand 5.0 below
   * the board: a backer ---- */
  { "birch-12-thin", "outline", OUT (5), IN (1),
    { EMPTY, { 12.10, 12.50 } }, { EMPTY, { 12.25, 12.35 } }, BACKER },

  /* ---- the 12 mm board on the router table (base 9.5, no backer), face b down on it, short tip L 4; reach 36 - 9.5 - 2 =
   * 24.5 under cutting 25. near at 7 - 1.1 = 5.9 to 7, far at 0.5 to 12.5 - 10.9 = 1.6
   * nominal first 4 + 1.1 = 5.1 to 24.5; last 12.1 to 12 + 4 - 1.1 = 14.9
   * robust, zero on the face, measured: first 4.4 + 1.1 + 0.1 = 5.6 to 24.4; last 12.1 + 0.1 + 0.1 to 12 + 3.6 - 1.1 - 0.2 ---- */
  { "birch-12-trim", "edge", IN (1), IN (1),
    { { 5.10, 24.50 }, { 12.10, 14.90 } }, { { 5.60, 24.40 }, { 12.30, 14.30 } }, OPEN },

  /* ---- 19 mm MDF with 0.6 mm of veneer on face a and 1.0 on face b, measured; gantry, bed; short tip L 4 ---- */
  /* near at 8 - 0.6 = 7.4 to 8; far at 0.3 to 19.3 - 18 = 1.3
   * first 4.6 to 19.5; robust 4.4 + 0.6 + 0.25 = 5.25 to 19.35; last 19.1 to 19.5 (o <= 4 - 1); robust 19.25 to 19.35 */
  { "veneered-19-outline", "thin-up", IN (1), IN (1),
    { { 4.60, 19.50 }, { 19.10, 19.50 } }, { { 5.25, 19.35 }, { 19.25, 19.35 } }, OPEN },
  /* near at 7 to 8, far at 0.3 to 19.3 - 18.4 = 0.9; a worn edge: K 1 on both; first 4 + 1.0, robust 4.4 + 1.0 + 0.25 */
  { "veneered-19-outline", "thick-up", IN (2), IN (2),
    { { 5.00, 19.50 }, { 19.10, 19.50 } }, { { 5.65, 19.35 }, { 19.25, 19.35 } }, OPEN },

  /* ---- veneered MDF by hand with a straight bit, rabbet 6 wide of 12.7: x = 6 / 12.7, chip 2 f_z sqrt (x - x^2) = 0.9985
   * f_z; along the grain G 0 ---- */
  /* 3000 / (2 x 10000) = 0.15, chip 0.1498: S 1, H 1 */
  { "veneered-19-rabbet", "thick-chips", NEUTRAL (3), NOT_CUT, { EMPTY, EMPTY }, { EMPTY, EMPTY }, OTHER_BIT },
  /* 1600 / 20000 = 0.08, chip 0.0799: S 1, H 0 */
  { "veneered-19-rabbet", "thin-chips", NEUTRAL (2), NOT_CUT, { EMPTY, EMPTY }, { EMPTY, EMPTY }, OTHER_BIT },

  /* ---- 16 mm melamine-faced board as sold, + 0.5 - 0.3, zero on the face, fresh spoilboard, o_max 0.5; no G, no H ---- */
  /* far: S 3 - 1 (backed); first 0 to 16.5, robust to 16.5 - 0.1 - 0.3 */
  { "melamine-16-outline", "down", IN (1), OUT (3),
    { { 0, 16.50 }, EMPTY }, { { 0, 16.10 }, EMPTY }, OTHER_BIT },
  /* near: S 3; last 16.1 to 16.5; robust o >= 0.1 + 0.1 + 0.5 = 0.7, o <= 0.5 - 0.1 - 0.3: none */
  { "melamine-16-outline", "up", OUT (4), IN (1),
    { EMPTY, { 16.10, 16.50 } }, { EMPTY, EMPTY }, OTHER_BIT },
  /* near S 2, far S 2 - 1 (backed) */
  { "melamine-16-outline", "plain", NEUTRAL (3), NEUTRAL (2), { EMPTY, EMPTY }, { EMPTY, EMPTY }, OTHER_BIT },

  /* ---- rabbets 9 deep in 18 mm MDF on the router table; no G, no H ---- */
  /* S 0, worn K 1; nothing is pulled at any depth */
  { "mdf-18-rabbet", "plain", NEUTRAL (2), NOT_CUT, { { 0, 9 }, EMPTY }, { { 0, 9 }, EMPTY }, OPEN },
  /* S 1, dull K 2 */
  { "mdf-18-rabbet", "up", OUT (4), NOT_CUT, { EMPTY, EMPTY }, { EMPTY, EMPTY }, OTHER_BIT },

  /* ---- maple, straight grain ---- */
  /* by hand at 90 degrees to the grain: S 1, G 0 for the angle, 1 for the bare exit corner, H 0 (not against) */
  { "maple-20-dado", "bare", OUT (3), NOT_CUT, { EMPTY, EMPTY }, { EMPTY, EMPTY }, OTHER_BIT },
  { "maple-20-dado", "backed", OUT (2), NOT_CUT, { EMPTY, EMPTY }, { EMPTY, EMPTY }, OTHER_BIT },
  /* fibres 0 from the path at -30: +30, against: S 0, G 1, 7200 / 36000 = 0.2: H 1 on the conventional wall */
  { "maple-20-grain", "against", IN (3), NOT_CUT, { { 0, 6 }, EMPTY }, { { 0, 6 }, EMPTY }, OPEN },
  /* face b up: -30, with the grain */
  { "maple-20-grain", "turned-over", IN (1), NOT_CUT, { { 0, 6 }, EMPTY }, { { 0, 6 }, EMPTY }, OPEN },
  /* 11520 / 36000 = 0.32: H 2 */
  { "maple-20-grain", "thick-chips", IN (4), NOT_CUT, { { 0, 6 }, EMPTY }, { { 0, 6 }, EMPTY }, OPEN },
  /* 80 degrees is beyond 67.5 */
  { "maple-20-grain", "steep", IN (1), NOT_CUT, { { 0, 6 }, EMPTY }, { { 0, 6 }, EMPTY }, OPEN },
  /* along the grain: S 1 */
  { "maple-20-mortise", "blind", OUT (2), NOT_CUT, { EMPTY, EMPTY }, { EMPTY, EMPTY }, OTHER_BIT },
  /* measured, zero on the bed: last 20.1 to 20.5, robust 20.25 to 20.35 */
  { "maple-20-mortise", "through", OUT (2), IN (1),
    { EMPTY, { 20.10, 20.50 } }, { EMPTY, { 20.25, 20.35 } }, OTHER_BIT },

  /* ---- figured maple as sold, + 0.3 - 0.3, 2 mm off its edge on the router table with a 12.7 mm up-cut bit, no backer: the
   * cutting length 32 ends it (reach 50 - 9.5 - 2 = 38.5). x = 2 / 12.7: chip 2 f_z sqrt (x - x^2) = 0.7285 x 4000 / 24000 = 0.121
   * last 20.1 to 32; robust 20.1 + 0.1 + 0.3 to 32 - 0.1 ---- */
  /* near S 2, G 1, H 1; far S 0, G 1 (solid wood), H 0 */
  { "figured-20-trim", "conventional", OUT (5), IN (2),
    { EMPTY, { 20.10, 32.00 } }, { EMPTY, { 20.50, 31.90 } }, OTHER_BIT },
  /* H 0 on the climb wall */
  { "figured-20-trim", "climb", OUT (4), IN (2),
    { EMPTY, { 20.10, 32.00 } }, { EMPTY, { 20.50, 31.90 } }, OTHER_BIT },
};
/* clang-format on */

/* ---- Reading the parts ---- */

static SpelchPart *
load (const char *name)
{
  g_autofree char *file_name = g_strconcat (name, ".spelch", NULL);
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "acceptance", file_name, NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  SpelchPart *part = spelch_part_load (file, NULL, &error);
  g_assert_no_error (error);
  return part;
}

static void
make (const SpelchPart *part, const char *cut_id, SpelchPlan *plan)
{
  int place = spelch_part_find_cut (part, cut_id);
  g_assert_cmpint (place, >=, 0);
  const SpelchCut *cut = &part->cuts[place];
  const SpelchBit *bit = &part->bits[spelch_part_find_bit (part, cut->bit)];
  spelch_plan_make (spelch_shop_constants (), part, cut, bit, plan);
}

/* ---- Comparing: every difference is told before the test fails, so that one run shows them all ---- */

static guint
differs (const Expected *row, const char *what, double hand, double program, double within)
{
  if (fabs (hand - program) <= within)
    return 0;
  g_test_message ("%s, %s, %s: by hand %.2f, by the program %.3f", row->part, row->cut, what, hand, program);
  return 1;
}

static guint
range_differs (const Expected *row, const char *what, SpelchRange hand, SpelchRange program)
{
  if (hand.empty || program.empty)
    return differs (row, what, hand.empty, program.empty, 0);
  /* two decimals by hand */
  return differs (row, what, hand.from, program.from, 0.005)
         + differs (row, what, hand.to, program.to, 0.005);
}

static guint
face_differs (const Expected *row, const char *what, Face hand, const SpelchEdge *edge)
{
  SpelchLoad load_found = edge != NULL ? edge->load : SPELCH_LOAD_NOT_CUT;
  g_autofree char *load_of = g_strconcat (what, " load", NULL);
  return differs (row, what, hand.grade, edge != NULL ? edge->grade : 0, 0)
         + differs (row, load_of, (int)hand.load, (int)load_found, 0);
}

static void
test_by_hand (void)
{
  guint wrong = 0;
  for (guint i = 0; i < G_N_ELEMENTS (expected); i++)
    {
      const Expected *row = &expected[i];
      g_autoptr (SpelchPart) part = load (row->part);
      SpelchPlan plan;
      make (part, row->cut, &plan);
      wrong += face_differs (row, "near", row->near, spelch_plan_worst (&plan, SPELCH_SIDE_MOTOR));
      wrong += face_differs (row, "far", row->far, spelch_plan_worst (&plan, SPELCH_SIDE_FAR));
      const SpelchWindows *windows = &plan.windows;
      wrong += range_differs (row, "first pass", row->nominal.first_pass, windows->nominal.first_pass);
      wrong += range_differs (row, "last tip", row->nominal.last_tip, windows->nominal.last_tip);
      wrong += range_differs (row, "first pass, sure", row->robust.first_pass, windows->robust.first_pass);
      wrong += range_differs (row, "last tip, sure", row->robust.last_tip, windows->robust.last_tip);
      wrong += differs (row, "opened by", (int)row->opened_by, (int)windows->opened_by, 0);
    }
  g_assert_cmpuint (wrong, ==, 0);
}

/* A ramp at 3 degrees along the line is torn until the near layer is above the turn-over: (6.35 + 1.3) / tan
 * 3 = 7.65 / 0.05241 = 145.97 mm; the rest of the edge is as clean as without it. */
static void
test_ramp_along_the_line (void)
{
  g_autoptr (SpelchPart) part = load ("birch-18-outline");
  SpelchPlan plan;
  make (part, "ramped", &plan);
  const SpelchEdge *edge = spelch_plan_worst (&plan, SPELCH_SIDE_MOTOR);
  g_assert_nonnull (edge);
  g_assert_cmpfloat_with_epsilon (edge->by_entry_mm, 145.97, 0.01);
  g_assert_cmpint (edge->line_grade, ==, 1);
}

/* The finishing pass speaks for the edge only if the tear before it is less than the allowance, and that is
 * said. */
static void
test_finishing_pass (void)
{
  g_autoptr (SpelchPart) part = load ("birch-18-outline");
  SpelchPlan plan;
  make (part, "finished", &plan);
  const SpelchEdge *edge = spelch_plan_worst (&plan, SPELCH_SIDE_MOTOR);
  g_assert_nonnull (edge);
  g_assert_true (edge->on_finishing);
  g_assert_true (plan.passes[plan.n_passes - 1].finishing);
}

/* Passes that are held are all there are: one for an empty list, one more than the depths listed. */
static void
test_held_passes (void)
{
  g_autoptr (SpelchPart) part = load ("birch-18-outline");
  SpelchPlan plan;
  make (part, "single", &plan);
  g_assert_cmpuint (plan.n_passes, ==, 1);
  g_assert_cmpfloat_with_epsilon (plan.passes[0].tip_mm, 18.3, 1e-9);
  make (part, "deep", &plan);
  g_assert_cmpuint (plan.n_passes, ==, 2);
}

/* What tolerances add up to on the measured boards, plus or minus: zero on the bed 0.1 + 0.05 for the
 * overcut, and the board's 0.1 more for a depth from the near face; zero on the face 0.1 for a depth, and 0.1
 * more for the overcut. */
static void
test_uncertainty (void)
{
  SpelchPlan plan;
  g_autoptr (SpelchPart) bed = load ("birch-18-outline");
  make (bed, "deep", &plan);
  g_assert_cmpfloat_with_epsilon (plan.windows.over_uncertain_mm, 0.15, 1e-9);
  g_assert_cmpfloat_with_epsilon (plan.windows.depth_uncertain_mm, 0.25, 1e-9);
  g_autoptr (SpelchPart) face = load ("birch-18-zero-on-face");
  make (face, "outline", &plan);
  g_assert_cmpfloat_with_epsilon (plan.windows.depth_uncertain_mm, 0.10, 1e-9);
  g_assert_cmpfloat_with_epsilon (plan.windows.over_uncertain_mm, 0.20, 1e-9);
}

/* A compression bit in the thin board: the tip 15.9 + 1.1 - 12 = 5.0 below it. */
static void
test_thin_board (void)
{
  g_autoptr (SpelchPart) part = load ("birch-12-thin");
  SpelchPlan plan;
  make (part, "outline", &plan);
  g_assert_cmpfloat_with_epsilon (plan.windows.needs_overcut_mm, 5.0, 0.005);
}

/* ---- The parts themselves ---- */

static bool
is_listed (const char *part, const char *cut)
{
  for (guint i = 0; i < G_N_ELEMENTS (expected); i++)
    if (g_str_equal (expected[i].part, part) && g_str_equal (expected[i].cut, cut))
      return true;
  return false;
}

typedef struct
{
  guint machines, bits, short_tips, ways_up, materials, cuts, parts;
} Seen;

static void
look_at (const SpelchPart *part, Seen *seen)
{
  g_autofree char *fault = spelch_part_fault (part);
  g_assert_cmpstr (fault, ==, NULL);
  seen->parts++;
  seen->machines |= 1u << part->machine.kind;
  seen->materials |= 1u << part->board.layers[0].material;
  for (guint i = 0; i < part->n_cuts; i++)
    {
      const SpelchCut *cut = &part->cuts[i];
      const SpelchBit *bit = &part->bits[spelch_part_find_bit (part, cut->bit)];
      if (!is_listed (part->id, cut->id))
        g_error ("%s, %s has no figures worked by hand", part->id, cut->id);
      seen->ways_up |= 1u << cut->way_up;
      seen->cuts |= 1u << cut->kind;
      seen->bits |= 1u << bit->kind;
      seen->short_tips += bit->kind == SPELCH_BIT_COMPRESSION && bit->up_shear.mm <= 6;
    }
}

/* The parts have between them every kind of machine and bit, both ways up, and the stock and cuts that
 * matter. */
static void
test_parts (void)
{
  g_autofree char *folder = g_test_build_filename (G_TEST_DIST, "acceptance", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, &error);
  g_assert_no_error (error);
  Seen seen = { 0 };
  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir))
    if (g_str_has_suffix (name, ".spelch"))
      {
        g_autofree char *stem = g_strndup (name, strlen (name) - strlen (".spelch"));
        g_autoptr (SpelchPart) part = load (stem);
        look_at (part, &seen);
      }
  g_assert_cmpuint (seen.parts, >=, 12);
  g_assert_cmpuint (seen.machines, ==, (1u << 3) - 1);
  g_assert_cmpuint (seen.bits, ==, (1u << 4) - 1);
  g_assert_cmpuint (seen.short_tips, >, 0);
  g_assert_cmpuint (seen.ways_up, ==, (1u << 2) - 1);
  const guint stock = 1u << SPELCH_MATERIAL_BIRCH_PLY | 1u << SPELCH_MATERIAL_LAMINATE
                      | 1u << SPELCH_MATERIAL_MDF | 1u << SPELCH_MATERIAL_HARDWOOD;
  g_assert_cmpuint (seen.materials & stock, ==, stock);
  const guint kinds = 1u << SPELCH_CUT_OUTLINE | 1u << SPELCH_CUT_DADO | 1u << SPELCH_CUT_RABBET
                      | 1u << SPELCH_CUT_MORTISE | 1u << SPELCH_CUT_TRIM;
  g_assert_cmpuint (seen.cuts & kinds, ==, kinds);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/acceptance/by-hand", test_by_hand);
  g_test_add_func ("/acceptance/ramp-along-the-line", test_ramp_along_the_line);
  g_test_add_func ("/acceptance/finishing-pass", test_finishing_pass);
  g_test_add_func ("/acceptance/held-passes", test_held_passes);
  g_test_add_func ("/acceptance/uncertainty", test_uncertainty);
  g_test_add_func ("/acceptance/thin-board", test_thin_board);
  g_test_add_func ("/acceptance/parts", test_parts);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks of whole plans, and of the constants they rest on.
 */
#include "published.h"

#include "files/shop-data.h"
#include "mechanics/force.h"
#include "plan/plan.h"

#include <math.h>
#include <string.h>

#define PALUBICKI "Pałubicki 2021, Materials 14:2208 (abstract; the chip of 0.2 mm is our assumption)"
#define SEDLECKY  "Sedlecký and Gašparík 2017, BioResources 12(4):7413 (abstract)"
#define FILSON    "Filson, Rohrbacher and Kaziunas France 2017, Design for CNC, ch. 6"
#define GURAU     "Gurău and others 2022, Coatings 12:1982 (abstract)"
#define COLLETS   "common practice, no source: a collet grips its own size"
#define POWER_SUM "worked by hand: 6 x 2 x 300 (2.2 x 9.4248 + 24 x 0.1 x 6) / 1000 W"

/* ---- Cutting force ---- */

static double
specific_force (double material, double chip)
{
  const SpelchForcePair *pair = &spelch_shop_constants ()->force[(SpelchMaterial)material].slot;
  return pair->a / chip + pair->b;
}

/* 1 when MDF takes more power than particleboard and softwood along the grain at the same cut. */
static double
mdf_needs_more (double chip, double unused)
{
  const SpelchForcePair *spruce = &spelch_shop_constants ()->force[SPELCH_MATERIAL_SOFTWOOD].along;
  double mdf = specific_force (SPELCH_MATERIAL_MDF, chip);
  return mdf > spruce->a / chip + spruce->b;
}

/* ---- Parts to plan ---- */

static SpelchBoard
board_of (SpelchMaterial material, SpelchGrain grain, double thickness, double grain_deg)
{
  SpelchBoard board = { .id = "trial", .name = "trial", .n_layers = 1 };
  board.layers[0] = (SpelchLayer){ spelch_length_mm (thickness), material, grain, grain_deg, false };
  board.nominal = board.measured = spelch_length_mm (thickness);
  return board;
}

static SpelchMachine
gantry (void)
{
  SpelchMachine machine = { .id = "trial", .name = "trial", .kind = SPELCH_MACHINE_GANTRY };
  machine.rpm_min = 6000;
  machine.rpm_max = 24000;
  machine.power_w = 2200;
  machine.max_feed_mm_min = 20000;
  machine.datum = SPELCH_DATUM_FACE;
  machine.overcut_allowed_mm = 0.5;
  machine.stiffness_n_mm = 5000;
  return machine;
}

static SpelchBit
bit_of (SpelchBitKind kind, double diameter, double cutting_length)
{
  SpelchBit bit = { .id = "trial", .name = "trial", .kind = kind, .edges = 2, .end_cutting = true };
  bit.diameter = bit.shank = spelch_length_mm (diameter);
  bit.cutting_length = spelch_length_mm (cutting_length);
  bit.overall_length = spelch_length_mm (cutting_length + 40);
  bit.helix_deg = kind == SPELCH_BIT_STRAIGHT ? 0 : 30;
  bit.max_rpm = 24000;
  bit.wear = SPELCH_WEAR_NEW;
  return bit;
}

static SpelchCut
slot (bool through, double depth, double path_deg)
{
  SpelchCut cut = { .id = "trial", .name = "trial", .kind = SPELCH_CUT_SLOT, .through = through };
  cut.depth = spelch_length_mm (depth);
  cut.length = spelch_length_mm (300);
  cut.kept = SPELCH_WALL_BOTH;
  cut.path_deg = path_deg;
  cut.start = cut.end = SPELCH_END_INSIDE;
  cut.seen_a = cut.seen_b = true;
  cut.quantity = 1;
  return cut;
}

static SpelchPlan
plan_of (const SpelchBoard *board, const SpelchCut *cut, const SpelchBit *bit)
{
  g_autoptr (SpelchPart) part = spelch_part_new ();
  SpelchPlan plan;
  part->board = *board;
  part->machine = gantry ();
  spelch_plan_make (spelch_shop_constants (), part, cut, bit, &plan);
  return plan;
}

/* ---- The worked slot in MDF: D 6, two new edges, 18 000 rpm, 3600 mm/min, 6 mm deep ---- */

static SpelchPlan
mdf_slot (void)
{
  SpelchBoard board = board_of (SPELCH_MATERIAL_MDF, SPELCH_GRAIN_NONE, 18, 0);
  SpelchBit bit = bit_of (SPELCH_BIT_STRAIGHT, 6, 20);
  SpelchCut cut = slot (false, 6, 0);
  cut.held.speed_rpm = 18000;
  cut.held.feed_mm_min = 3600;
  return plan_of (&board, &cut, &bit);
}

static double
mdf_power (double x, double y)
{
  SpelchPlan plan = mdf_slot ();
  return plan.n_passes == 1 ? plan.power_w.mid : 0;
}

static double
mdf_force (double x, double y)
{
  return mdf_slot ().tangential_mean_n;
}

static double
mdf_feed_per_tooth (double x, double y)
{
  return mdf_slot ().feed_per_tooth;
}

/* ---- Collets ---- */

/* 1 when a shank is refused by a machine that has only that collet. */
static double
refused_by_collet (double shank, double collet)
{
  g_autoptr (SpelchPart) part = spelch_part_new ();
  SpelchBit bit = bit_of (SPELCH_BIT_STRAIGHT, 6, 20);
  SpelchCut cut = slot (false, 6, 0);
  SpelchPlan plan;
  bit.shank = spelch_length_mm (shank);
  part->board = board_of (SPELCH_MATERIAL_MDF, SPELCH_GRAIN_NONE, 18, 0);
  part->machine = gantry ();
  part->machine.n_collets = 1;
  part->machine.collets[0] = spelch_length_mm (collet);
  spelch_plan_make (spelch_shop_constants (), part, &cut, &bit, &plan);
  for (guint i = 0; i < plan.n_stops; i++)
    if (plan.stops[i].kind == SPELCH_STOP_COLLET_SIZE)
      return 1;
  return 0;
}

/* ---- Windows ---- */

/* Starter bits that have a robust far-face window through 18 mm plywood on the gantry, zero on the face. */
static double
robust_through_plywood (double measured, double unused)
{
  guint n_boards = 0, n_bits = 0, open = 0;
  const SpelchBoard *boards = spelch_shop_boards (&n_boards);
  const SpelchBit *bits = spelch_shop_bits (&n_bits);
  SpelchCut cut = slot (true, 0, 0);
  for (guint i = 0; i < n_boards; i++)
    for (guint j = 0; j < n_bits && g_str_equal (boards[i].id, "birch-ply-18"); j++)
      {
        SpelchBoard board = boards[i];
        board.measured = spelch_length_mm (measured);
        SpelchPlan plan = plan_of (&board, &cut, &bits[j]);
        open += plan.windows.robust.last_tip.empty ? 0 : 1;
      }
  return open;
}

static double
measuring_opens (double measured, double unused)
{
  return robust_through_plywood (measured, 0) > 0;
}

/* ---- Orders of edges ---- */

static int
worst_grade (const SpelchPlan *plan, SpelchSide side)
{
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  return edge != NULL ? edge->grade : 0;
}

static double
plywood_grade (double kind, double side)
{
  guint n = 0;
  const SpelchBoard *all = spelch_shop_boards (&n);
  SpelchBit bit = bit_of ((SpelchBitKind)kind, 6, 25);
  SpelchCut cut = slot (true, 0, 0);
  for (guint i = 0; i < n; i++)
    if (g_str_equal (all[i].id, "birch-ply-18"))
      {
        SpelchPlan plan = plan_of (&all[i], &cut, &bit);
        return worst_grade (&plan, (SpelchSide)side);
      }
  return 0;
}

/* 1 when the bit leaves the near face worse than the far one, -1 when better, 0 when alike. */
static double
near_against_far (double kind, double unused)
{
  double near = plywood_grade (kind, SPELCH_SIDE_MOTOR), far = plywood_grade (kind, SPELCH_SIDE_FAR);
  return near > far ? 1 : near < far ? -1 : 0;
}

/* Worse of leaning to either side, since nobody said which way the fibres lean. */
static int
maple_grade (double degrees)
{
  int worst = 0;
  for (int sign = -1; sign <= 1; sign += 2)
    {
      SpelchBoard board = board_of (SPELCH_MATERIAL_HARDWOOD, SPELCH_GRAIN_STRAIGHT, 18, sign * degrees);
      SpelchBit bit = bit_of (SPELCH_BIT_UP_CUT, 6, 25);
      SpelchCut cut = slot (true, 0, 0);
      SpelchPlan plan = plan_of (&board, &cut, &bit);
      worst = MAX (worst, worst_grade (&plan, SPELCH_SIDE_MOTOR));
    }
  return worst;
}

/* How much better the better angle comes out: more than 0. */
static double
maple_better (double good, double bad)
{
  return maple_grade (bad) > maple_grade (good);
}

#define MAPLE_ROW(good, bad)                                                                                 \
  {                                                                                                          \
    "maple cut through at " #good " degrees to the grain better than at " #bad " (1: yes)", GURAU,           \
        PUBLISHED_MEASURED, 1, 0, maple_better, good, bad                                                    \
  }

static const PublishedCheck CHECKS[] = {
  { "particleboard, tangential force over chip section at 0.2 mm, to which the constant was set, MPa",
    PALUBICKI, PUBLISHED_MEASURED, 32.0, 1e-9, specific_force, SPELCH_MATERIAL_PARTICLEBOARD, 0.2 },
  { "MDF takes more than spruce along the grain: an order, no level (1: yes)", SEDLECKY, PUBLISHED_MEASURED,
    1, 0, mdf_needs_more, 0.2, 0 },
  { "MDF slot, D 6, 18 000 rpm, 3600 mm/min, 6 deep: feed per tooth, mm", POWER_SUM, PUBLISHED_IDENTITY, 0.1,
    1e-9, mdf_feed_per_tooth, 0, 0 },
  { "the same: power, W", POWER_SUM, PUBLISHED_IDENTITY, 126.5, 0.05, mdf_power, 0, 0 },
  { "the same: mean tangential force, P / v, N", POWER_SUM, PUBLISHED_IDENTITY, 22.4, 0.05, mdf_force, 0, 0 },
  { "6 mm shank in a 1/4 in collet is refused (1: yes)", COLLETS, PUBLISHED_PRACTICE, 1, 0, refused_by_collet,
    6, 6.35 },
  { "8 mm shank in a 5/16 in collet is refused (1: yes)", COLLETS, PUBLISHED_PRACTICE, 1, 0,
    refused_by_collet, 8, 7.9375 },
  { "12 mm shank in a 1/2 in collet is refused (1: yes)", COLLETS, PUBLISHED_PRACTICE, 1, 0,
    refused_by_collet, 12, 12.7 },
  { "1/4 in shank in a 1/4 in collet is taken (0: yes)", COLLETS, PUBLISHED_PRACTICE, 0, 0, refused_by_collet,
    6.35, 6.35 },
  { "18 mm plywood as sold, zero on the face, 0.5 mm of overcut: bits with a robust far window",
    "thickness +0.74 / -0.94 by EN 315 (formula from memory), interval arithmetic", PUBLISHED_IDENTITY, 0, 0,
    robust_through_plywood, 0, 0 },
  { "the same board measured at 17.9 mm: some have one (1: yes)", "interval arithmetic", PUBLISHED_IDENTITY,
    1, 0, measuring_opens, 17.9, 0 },
  { "up-cut through plywood: near face worse than far (1: yes)", FILSON, PUBLISHED_MEASURED, 1, 0,
    near_against_far, SPELCH_BIT_UP_CUT, 0 },
  { "up-cut through plywood: far face's grade", FILSON " says clean", PUBLISHED_MEASURED, 1, 0, plywood_grade,
    SPELCH_BIT_UP_CUT, SPELCH_SIDE_FAR },
  { "down-cut through plywood: near face's grade", "common practice, no source", PUBLISHED_PRACTICE, 1, 0,
    plywood_grade, SPELCH_BIT_DOWN_CUT, SPELCH_SIDE_MOTOR },
  { "down-cut through plywood: near face better than far (-1: yes)", "common practice, no source",
    PUBLISHED_PRACTICE, -1, 0, near_against_far, SPELCH_BIT_DOWN_CUT, 0 },
  MAPLE_ROW (0, 15),
  MAPLE_ROW (0, 30),
  MAPLE_ROW (0, 45),
  MAPLE_ROW (0, 60),
  MAPLE_ROW (75, 15),
  MAPLE_ROW (75, 30),
  MAPLE_ROW (75, 45),
  MAPLE_ROW (75, 60),
  MAPLE_ROW (90, 15),
  MAPLE_ROW (90, 30),
  MAPLE_ROW (90, 45),
  MAPLE_ROW (90, 60),
};

const PublishedGroup PUBLISHED_CUTS = { "cuts", CHECKS, G_N_ELEMENTS (CHECKS) };

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Grades of edges, term by term. Grades are worked by hand from the model's table:
 * 1 + shear + backing + grain and exit corner + chip + wear.
 */
#include "on-demo.h"

/* 5400 / (2 x 18000) = 0.15 mm a tooth: one point wherever a chip counts. */
static void
hold_chip (Demo *demo)
{
  demo->cut->held.speed_rpm = 18000;
  demo->cut->held.feed_mm_min = 5400;
}

static int
points (const Demo *demo, SpelchSide side, SpelchTermKind kind)
{
  return spelch_edge_points (spelch_plan_worst (&demo->plan, side), kind);
}

/* Across the face grain and out over a bare edge: shear 2, exit corner 1, chip 1, the last two at most 2
 * together. Backed, the corner is spared; pressed in, a ply has nowhere to lift to. */
static void
test_exit_corner (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  demo_cut_out (demo);
  hold_chip (demo);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpint (points (demo, SPELCH_SIDE_MOTOR, SPELCH_TERM_EXIT_CORNER), ==, 1);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 5);
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 1);
  demo->cut->end = SPELCH_END_BACKED;
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 4);
}

/* Common practice, no source: a dado that is cut before the outline runs out into the waste, which backs the
 * edge as a scrap would. */
static void
test_waste_backs_corner (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  hold_chip (demo);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpint (points (demo, SPELCH_SIDE_MOTOR, SPELCH_TERM_EXIT_CORNER), ==, 0);
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 4);
  demo_cut_out (demo);
  demo_plan_with (demo, "up-cut-6.35x25");
  g_assert_cmpint (points (demo, SPELCH_SIDE_MOTOR, SPELCH_TERM_EXIT_CORNER), ==, 1);
}

/* Fibres 30 degrees to one side are against the grain, to the other with it; figured grain has no side. */
static void
test_figured (Demo *demo, gconstpointer unused)
{
  const struct
  {
    const char *board;
    double path;
    int grain;
  } rows[] = { { "oak-20", -30, 1 },
               { "oak-20", 30, 0 },
               { "figured-maple-20", -30, 1 },
               { "figured-maple-20", 30, 1 },
               { "figured-maple-20", 80, 0 } };
  demo_take_cut (demo, "shelf-dado");
  demo->cut->end = SPELCH_END_BACKED;
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo_take_board (demo, rows[i].board);
      demo->cut->path_deg = rows[i].path;
      demo_plan_with (demo, "down-cut-6.35x25");
      g_assert_cmpint (points (demo, SPELCH_SIDE_MOTOR, SPELCH_TERM_GRAIN), ==, rows[i].grain);
    }
}

/* Oak all round: grain 1, chip 1. A finishing pass of 0.3 mm takes chips of 2 x 0.15 x sqrt (x - x^2), x =
 * 0.3 / 6.35: 0.064 mm, and it cuts the edge anew. */
static void
test_finishing_chip (Demo *demo, gconstpointer unused)
{
  demo_take_board (demo, "oak-20");
  hold_chip (demo);
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 3);
  demo->cut->held.allowance_held = true;
  demo->cut->held.allowance = spelch_length_mm (0.3);
  demo_plan_with (demo, "down-cut-6.35x25");
  g_assert_cmpint (demo_grade (demo, SPELCH_SIDE_MOTOR), ==, 2);
  g_assert_cmpfloat_with_epsilon (spelch_plan_worst (&demo->plan, SPELCH_SIDE_MOTOR)->chip_mm, 0.0637,
                                  0.0001);
}

/* The last pass takes a millimetre of the back ply with heights 5.5 to 6.5 above the tip, across the
 * turn-over at 6.35: mostly up-shear, which lifts the board off its backer unless something holds it down. */
static void
test_backing (Demo *demo, gconstpointer unused)
{
  demo->cut->backer = spelch_length_mm (12);
  demo->part->board.measured = spelch_length_mm (15);
  demo->part->board.density_kg_m3 = 0; /* its weight isn't known */
  demo_hold_first_pass (demo, 14);
  demo->cut->held.overcut_held = true;
  demo->cut->held.overcut = spelch_length_mm (5.5);
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpint (points (demo, SPELCH_SIDE_FAR, SPELCH_TERM_SHEAR), ==, 2);
  g_assert_cmpint (points (demo, SPELCH_SIDE_FAR, SPELCH_TERM_BACKING), ==, -1);
  demo->part->holding.area_mm2 = 1; /* 0.03 N */
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpint (points (demo, SPELCH_SIDE_FAR, SPELCH_TERM_BACKING), ==, 0);
  demo->part->holding.method = SPELCH_HOLD_SCREWS;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpint (points (demo, SPELCH_SIDE_FAR, SPELCH_TERM_BACKING), ==, -1);
  demo->part->holding.method = SPELCH_HOLD_UNTOLD;
  demo_plan_with (demo, "compression-6.35x22");
  g_assert_cmpint (points (demo, SPELCH_SIDE_FAR, SPELCH_TERM_BACKING), ==, 0);
}

/* A rabbet has one wall, whatever is said to be kept. */
static void
test_one_wall (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "back-rabbet");
  for (SpelchWall kept = SPELCH_WALL_LEFT; kept <= SPELCH_WALL_BOTH; kept++)
    {
      demo->cut->kept = kept;
      demo_plan_with (demo, "up-cut-6.35x25");
      bool right = kept == SPELCH_WALL_RIGHT;
      for (int i = 0; i < 2; i++)
        {
          const SpelchEdge *edge = &demo->plan.edges[i];
          bool there = right == (edge->wall == SPELCH_WALL_RIGHT);
          g_assert_true (edge->stays == there);
          g_assert_true ((edge->grade > 0) == there);
        }
    }
}

#define ADD(name, function) g_test_add ("/edges/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("exit-corner", test_exit_corner);
  ADD ("waste-backs-corner", test_waste_backs_corner);
  ADD ("figured", test_figured);
  ADD ("finishing-chip", test_finishing_chip);
  ADD ("backing", test_backing);
  ADD ("one-wall", test_one_wall);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cuts: faces, directions, and what is a fault.
 */
#include "samples.h"

#include <math.h>

static SpelchCut
dado (void)
{
  SpelchCut cut = sample_cut ();
  cut.kind = SPELCH_CUT_DADO;
  cut.through = false;
  cut.depth = spelch_length_mm (3);
  cut.width = spelch_length_mm (18);
  cut.kept = SPELCH_WALL_BOTH;
  return cut;
}

static void
test_faces (void)
{
  SpelchCut cut = sample_cut ();
  g_assert_cmpint (spelch_face_other (SPELCH_FACE_A), ==, SPELCH_FACE_B);
  g_assert_cmpint (spelch_face_other (SPELCH_FACE_B), ==, SPELCH_FACE_A);
  g_assert_true (spelch_cut_sees (&cut, SPELCH_FACE_A));
  g_assert_false (spelch_cut_sees (&cut, SPELCH_FACE_B));
}

/* What turns all round meets the grain at every angle. */
static void
test_every_direction (void)
{
  SpelchCut cut = dado ();
  g_assert_false (spelch_cut_every_direction (&cut));
  cut.every_direction = true;
  g_assert_true (spelch_cut_every_direction (&cut));
  cut.every_direction = false;
  static const SpelchCutKind round[] = { SPELCH_CUT_OUTLINE, SPELCH_CUT_POCKET, SPELCH_CUT_HOLE };
  for (guint i = 0; i < G_N_ELEMENTS (round); i++)
    {
      cut.kind = round[i];
      g_assert_true (spelch_cut_every_direction (&cut));
    }
  cut.kind = SPELCH_CUT_RABBET;
  g_assert_false (spelch_cut_every_direction (&cut));
}

/* A wall on one side or on both, never one and two; what closes in all round starts and ends inside. */
static void
test_shapes (void)
{
  guint n_one = 0, n_two = 0;
  for (int kind = 0; kind < SPELCH_N_CUT_KINDS; kind++)
    {
      SpelchCutShape shape = spelch_cut_shape ((SpelchCutKind)kind);
      g_assert_false (shape.one_wall && (shape.two_walls || shape.pit));
      g_assert_true (shape.closed || !shape.pit);
      n_one += shape.one_wall;
      n_two += shape.two_walls;
    }
  g_assert_cmpuint (n_one, ==, 2); /* rabbet and trim */
  g_assert_cmpuint (n_two, ==, 3); /* dado, slot and mortise */
  SpelchCutShape none = spelch_cut_shape ((SpelchCutKind)SPELCH_N_CUT_KINDS);
  g_assert_false (none.through || none.one_wall || none.two_walls || none.pit || none.closed
                  || none.every_direction);
}

static void
test_sound (void)
{
  SpelchBoard board = sample_board ();
  SpelchCut cut = sample_cut ();
  assert_sound (spelch_cut_fault (&cut, &board));
  cut = dado ();
  assert_sound (spelch_cut_fault (&cut, &board));
  cut.kind = SPELCH_CUT_HOLE;
  cut.length.mm = 0;
  assert_sound (spelch_cut_fault (&cut, &board));
}

#define SPOIL(base_, member_, value_)                                                                        \
  cut = base_ ();                                                                                            \
  cut.member_ = value_

static void
test_faults (void)
{
  SpelchBoard board = sample_board ();
  SpelchCut cut;
  SPOIL (sample_cut, through, false);
  assert_fault (spelch_cut_fault (&cut, &board), "through", "outline");
  SPOIL (sample_cut, length.mm, 0);
  assert_fault (spelch_cut_fault (&cut, &board), "length", "0 mm");
  SPOIL (sample_cut, quantity, 0);
  assert_fault (spelch_cut_fault (&cut, &board), "quantity", "0");
  SPOIL (dado, mating.told, true);
  assert_fault (spelch_cut_fault (&cut, &board), "mating.thickness", "0 mm");
  cut.mating.thickness.mm = 17.8;
  assert_fault (spelch_cut_fault (&cut, &board), "width (18 mm)", "mating");
  SPOIL (sample_cut, mating.told, true);
  assert_fault (spelch_cut_fault (&cut, &board), "mating", "outline");
  SPOIL (sample_cut, from_edge.mm, 30);
  assert_fault (spelch_cut_fault (&cut, &board), "from_edge", "outline");
  SPOIL (dado, depth.mm, 6);
  assert_fault (spelch_cut_fault (&cut, &board), "depth (6 mm)", "thickness (6 mm)");
  SPOIL (dado, depth.mm, -3);
  assert_fault (spelch_cut_fault (&cut, &board), "depth", "-3 mm");
  SPOIL (dado, width.mm, 0);
  assert_fault (spelch_cut_fault (&cut, &board), "width", "0 mm");
  SPOIL (dado, path_deg, NAN);
  assert_fault (spelch_cut_fault (&cut, &board), "path_deg", "not a number");
  SPOIL (sample_cut, tabs.count, (guint)-3);
  assert_fault (spelch_cut_fault (&cut, &board), "tabs.count (-3)", "1000");
  SPOIL (dado, quantity, (guint)-2);
  assert_fault (spelch_cut_fault (&cut, &board), "quantity (-2)", "100000");
  SPOIL (dado, tabs.count, 2);
  assert_fault (spelch_cut_fault (&cut, &board), "tabs.count", "2");
  SPOIL (sample_cut, tabs.count, 2);
  assert_fault (spelch_cut_fault (&cut, &board), "tabs.width", "0 mm");
  SPOIL (sample_cut, backer.mm, -1);
  assert_fault (spelch_cut_fault (&cut, &board), "backer", "-1 mm");
  SPOIL (sample_cut, stick_out.mm, INFINITY);
  assert_fault (spelch_cut_fault (&cut, &board), "stick_out", "not a number");
  SPOIL (sample_cut, held.feed_mm_min, -5);
  assert_fault (spelch_cut_fault (&cut, &board), "held.feed_mm_min", "-5 mm/min");
  SPOIL (sample_cut, held.n_passes, 25);
  assert_fault (spelch_cut_fault (&cut, &board), "held.passes", "25");
  SPOIL (sample_cut, kept, (SpelchWall)3);
  assert_fault (spelch_cut_fault (&cut, &board), "kept", "left, right, both");
}

static void
test_tabs_in_board (void)
{
  SpelchBoard board = sample_board ();
  SpelchCut cut = sample_cut ();
  cut.tabs = (SpelchTabs){ 4, { .mm = 8 }, { .mm = 2 } };
  assert_sound (spelch_cut_fault (&cut, &board));
  cut.tabs.thickness.mm = 6.5;
  assert_fault (spelch_cut_fault (&cut, &board), "tabs.thickness", "6.5 mm");
}

static void
test_held_passes (void)
{
  SpelchBoard board = sample_board ();
  SpelchCut cut = dado ();
  cut.held.n_passes = 2;
  cut.held.passes[0] = spelch_length_mm (1);
  cut.held.passes[1] = spelch_length_mm (2);
  assert_sound (spelch_cut_fault (&cut, &board));
  cut.held.passes[1] = spelch_length_mm (1);
  assert_fault (spelch_cut_fault (&cut, &board), "held.passes[1]", "1 mm");
  cut.held.passes[1] = spelch_length_mm (3);
  assert_fault (spelch_cut_fault (&cut, &board), "held.passes[1] (3 mm)", "depth (3 mm)");
  cut.held.passes[0].mm = NAN;
  assert_fault (spelch_cut_fault (&cut, &board), "held.passes[0]", "not a number");
}

/* What isn't held isn't checked: it follows the recommendation. */
static void
test_not_held (void)
{
  SpelchBoard board = sample_board ();
  SpelchCut cut = sample_cut ();
  cut.held.overcut = spelch_length_mm (500);
  assert_sound (spelch_cut_fault (&cut, &board));
  cut.held.overcut_held = true;
  assert_fault (spelch_cut_fault (&cut, &board), "held.overcut", "500 mm");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/cut/faces", test_faces);
  g_test_add_func ("/cut/every-direction", test_every_direction);
  g_test_add_func ("/cut/shapes", test_shapes);
  g_test_add_func ("/cut/sound", test_sound);
  g_test_add_func ("/cut/faults", test_faults);
  g_test_add_func ("/cut/tabs-in-board", test_tabs_in_board);
  g_test_add_func ("/cut/held-passes", test_held_passes);
  g_test_add_func ("/cut/not-held", test_not_held);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Boards: how measured thickness stretches the layers, what turning over does to them, and what is a fault.
 */
#include "samples.h"

#include <math.h>

#define NEAR_ENOUGH 1e-12

static double
sum (const SpelchBoard *board)
{
  double total = 0;
  for (guint i = 0; i < board->n_layers; i++)
    total += board->layers[i].thickness.mm;
  return total;
}

static void
test_thickness (void)
{
  SpelchBoard board = sample_board ();
  g_assert_cmpfloat (spelch_board_thickness (&board), ==, 6);
  board.measured = spelch_length_mm (5.8);
  g_assert_cmpfloat (spelch_board_thickness (&board), ==, 5.8);
}

/* 1.0 + 1.4 + 1.2 + 1.4 + 1.0 measured at 6.4: the core's 4.0 becomes 4.4, so its plies grow by a tenth. */
static void
test_core_stretches (void)
{
  SpelchBoard board = sample_board ();
  board.measured = spelch_length_mm (6.4);
  SpelchBoard near = spelch_board_toward_motor (&board, SPELCH_FACE_A);
  static const double expected[] = { 1.0, 1.54, 1.32, 1.54, 1.0 };
  g_assert_cmpuint (near.n_layers, ==, 5);
  for (guint i = 0; i < 5; i++)
    g_assert_cmpfloat_with_epsilon (near.layers[i].thickness.mm, expected[i], NEAR_ENOUGH);
  g_assert_cmpfloat (near.measured.mm, ==, 6.4);
  g_assert_cmpstr (near.id, ==, "birch-6");
}

static void
test_few_layers_stretch_whole (void)
{
  SpelchBoard one = sample_board ();
  one.n_layers = 1;
  one.layers[0].thickness = spelch_length_mm (6);
  one.measured = spelch_length_mm (5.7);
  SpelchBoard near = spelch_board_toward_motor (&one, SPELCH_FACE_A);
  g_assert_cmpfloat_with_epsilon (near.layers[0].thickness.mm, 5.7, NEAR_ENOUGH);

  SpelchBoard two = one;
  two.n_layers = 2;
  two.layers[0].thickness = spelch_length_mm (2);
  two.layers[1].thickness = spelch_length_mm (4);
  near = spelch_board_toward_motor (&two, SPELCH_FACE_A);
  g_assert_cmpfloat_with_epsilon (near.layers[0].thickness.mm, 1.9, NEAR_ENOUGH);
  g_assert_cmpfloat_with_epsilon (near.layers[1].thickness.mm, 3.8, NEAR_ENOUGH);
}

/* Grain that runs 30 degrees counter-clockwise seen from face a runs 30 degrees clockwise seen from face b.
 */
static void
test_turned_over (void)
{
  SpelchBoard board = sample_board ();
  board.layers[0].thickness = spelch_length_mm (0.8);
  board.layers[1].thickness = spelch_length_mm (1.6);
  board.layers[0].grain_deg = 30;
  board.layers[4].grain_deg = -10;
  SpelchBoard near = spelch_board_toward_motor (&board, SPELCH_FACE_B);
  g_assert_cmpfloat (near.layers[0].thickness.mm, ==, 1.0);
  g_assert_cmpfloat (near.layers[4].thickness.mm, ==, 0.8);
  g_assert_cmpfloat (near.layers[0].grain_deg, ==, 10);
  g_assert_cmpfloat (near.layers[4].grain_deg, ==, -30);
  g_assert_cmpfloat (near.layers[1].grain_deg, ==, -90);
  g_assert_false (signbit (near.layers[2].grain_deg));
  g_assert_cmpstr (near.layers[0].thickness.typed, ==, "");
}

static SpelchBoard
random_board (GRand *rand)
{
  SpelchBoard board = sample_board ();
  board.n_layers = (guint)g_rand_int_range (rand, 1, SPELCH_MAX_LAYERS + 1);
  for (guint i = 0; i < board.n_layers; i++)
    {
      board.layers[i] = board.layers[0];
      board.layers[i].thickness = spelch_length_mm (g_rand_double_range (rand, 0.1, 3));
      board.layers[i].grain_deg = g_rand_double_range (rand, -180, 180);
    }
  board.nominal = spelch_length_mm (sum (&board));
  if (g_rand_boolean (rand))
    board.measured = spelch_length_mm (board.nominal.mm * g_rand_double_range (rand, 0.95, 1.05));
  return board;
}

/* Whatever the board: the layers sum to its thickness, both ways up show the same layers in opposite order,
 * and where there is a core the faces keep their thickness. */
static void
test_any_board (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (315);
  for (guint round = 0; round < 2000; round++)
    {
      SpelchBoard board = random_board (rand);
      g_autofree char *fault = spelch_board_fault (&board);
      SpelchBoard a = spelch_board_toward_motor (&board, SPELCH_FACE_A);
      SpelchBoard b = spelch_board_toward_motor (&board, SPELCH_FACE_B);
      g_assert_cmpfloat_with_epsilon (sum (&a), spelch_board_thickness (&board), 1e-9);
      for (guint i = 0; i < board.n_layers; i++)
        {
          g_assert_cmpfloat (a.layers[i].thickness.mm, ==, b.layers[board.n_layers - 1 - i].thickness.mm);
          g_assert_cmpfloat (a.layers[i].grain_deg, ==, -b.layers[board.n_layers - 1 - i].grain_deg);
          g_assert_cmpfloat (a.layers[i].thickness.mm, >, 0);
        }
      if (board.n_layers > 2 && fault == NULL)
        g_assert_cmpfloat (a.layers[0].thickness.mm, ==, board.layers[0].thickness.mm);
    }
}

#define SPOIL(member_, value_)                                                                               \
  board = sample_board ();                                                                                   \
  board.member_ = value_

static void
test_faults (void)
{
  SpelchBoard board = sample_board ();
  assert_sound (spelch_board_fault (&board));
  SPOIL (n_layers, 0);
  assert_fault (spelch_board_fault (&board), "layers", "0");
  SPOIL (n_layers, SPELCH_MAX_LAYERS + 1);
  assert_fault (spelch_board_fault (&board), "layers", "49");
  SPOIL (layers[2].thickness.mm, 0);
  assert_fault (spelch_board_fault (&board), "layers[2]: thickness", "0 mm");
  SPOIL (layers[2].thickness.mm, -1.2);
  assert_fault (spelch_board_fault (&board), "layers[2]: thickness", "-1.2 mm");
  SPOIL (layers[2].thickness.mm, 1.3);
  assert_fault (spelch_board_fault (&board), "6.1 mm", "nominal is 6 mm");
  SPOIL (layers[1].grain_deg, NAN);
  assert_fault (spelch_board_fault (&board), "layers[1]: grain_deg", "not a number");
  SPOIL (layers[3].material, (SpelchMaterial)77);
  assert_fault (spelch_board_fault (&board), "layers[3]: material", "birch-ply");
  SPOIL (layers[3].material, SPELCH_MATERIAL_MDF);
  assert_fault (spelch_board_fault (&board), "grain is straight", "mdf");
  SPOIL (layers[3].grain, SPELCH_GRAIN_NONE);
  assert_fault (spelch_board_fault (&board), "grain is none", "birch-ply");
  SPOIL (nominal.mm, 0);
  assert_fault (spelch_board_fault (&board), "nominal", "0 mm");
  SPOIL (measured.mm, 2.0);
  assert_fault (spelch_board_fault (&board), "measured", "2 mm");
  SPOIL (measured.mm, -1);
  assert_fault (spelch_board_fault (&board), "measured", "-1 mm");
  SPOIL (tolerance_minus_mm, 6);
  assert_fault (spelch_board_fault (&board), "tolerance_minus_mm", "6 mm");
  SPOIL (tolerance_plus_mm, -0.1);
  assert_fault (spelch_board_fault (&board), "tolerance_plus_mm", "-0.1 mm");
  SPOIL (density_kg_m3, 5);
  assert_fault (spelch_board_fault (&board), "density_kg_m3", "5 kg/m³");
}

/* The layers may miss the nominal thickness by a hundredth, no more. */
static void
test_sum_within (void)
{
  SpelchBoard board = sample_board ();
  board.layers[2].thickness = spelch_length_mm (1.21);
  assert_sound (spelch_board_fault (&board));
  board.layers[2].thickness = spelch_length_mm (1.211);
  assert_fault (spelch_board_fault (&board), "6.011 mm", "6 mm");
}

/* A line points both ways, so half a turn changes nothing; straight across is 90 degrees, never -90. */
static void
test_angles (void)
{
  const struct
  {
    double told, line;
  } angles[] = { { 0, 0 },   { 90, 90 },  { -90, 90 },  { 91, -89 },
                 { 180, 0 }, { 270, 90 }, { -135, 45 }, { 405, 45 } };
  for (guint i = 0; i < G_N_ELEMENTS (angles); i++)
    g_assert_cmpfloat (spelch_angle_of_line (angles[i].told), ==, angles[i].line);
  g_assert_cmpfloat (spelch_angle_seen_from (SPELCH_FACE_A, 30), ==, 30);
  g_assert_cmpfloat (spelch_angle_seen_from (SPELCH_FACE_B, 30), ==, -30);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/board/thickness", test_thickness);
  g_test_add_func ("/board/core-stretches", test_core_stretches);
  g_test_add_func ("/board/few-layers-stretch-whole", test_few_layers_stretch_whole);
  g_test_add_func ("/board/turned-over", test_turned_over);
  g_test_add_func ("/board/any-board", test_any_board);
  g_test_add_func ("/board/faults", test_faults);
  g_test_add_func ("/board/sum-within", test_sum_within);
  g_test_add_func ("/board/angles", test_angles);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Make-ups against the dimension sheets of two mills that agree (plies of birch plywood by thickness), EN 315
 * (tolerance of sanded plywood; formula from memory) and EN 14322 (melamine-faced boards); and what every
 * make-up of every thickness must be: a board without fault.
 */
#include "shop/make-up.h"

#include <glib.h>
#include <math.h>

static void
test_plies (void)
{
  const struct
  {
    double mm;
    guint plies;
  } sheet[] = { { 6.5, 5 }, { 9, 7 }, { 12, 9 }, { 15, 11 }, { 18, 13 }, { 21, 15 }, { 24, 17 } };
  for (guint i = 0; i < G_N_ELEMENTS (sheet); i++)
    g_assert_cmpuint (spelch_make_up_birch_plies (sheet[i].mm), ==, sheet[i].plies);
}

static double
sum_of (const SpelchBoard *board)
{
  double sum = 0;
  for (guint i = 0; i < board->n_layers; i++)
    sum += board->layers[i].thickness.mm;
  return sum;
}

static void
test_without_fault (void)
{
  for (double mm = 3; mm <= 60; mm += 0.5)
    for (int make_up = 0; make_up < SPELCH_MAKE_UPS; make_up++)
      {
        SpelchBoard board = { .id = "b", .name = "b", .nominal = spelch_length_mm (mm) };
        spelch_make_up_apply ((SpelchMakeUp)make_up, &board);
        g_autofree char *fault = spelch_board_fault (&board);
        g_assert_cmpstr (fault, ==, NULL);
        g_assert_cmpfloat_with_epsilon (sum_of (&board), mm, 1e-9);
        /* Balanced: alike from both faces, so that it stays flat; common practice, no source. */
        for (guint i = 0; i < board.n_layers; i++)
          g_assert_cmpint (board.layers[i].material, ==, board.layers[board.n_layers - 1 - i].material);
      }
}

static void
test_tolerances (void)
{
  SpelchBoard board = { .id = "b", .name = "b", .nominal = spelch_length_mm (18) };
  spelch_make_up_apply (SPELCH_MAKE_UP_BIRCH_PLY, &board);
  g_assert_cmpfloat_with_epsilon (board.tolerance_plus_mm, 0.74, 1e-9);
  g_assert_cmpfloat_with_epsilon (board.tolerance_minus_mm, 0.94, 1e-9);
  spelch_make_up_apply (SPELCH_MAKE_UP_MELAMINE_MDF, &board);
  g_assert_cmpfloat (board.tolerance_plus_mm, ==, 0.5);
  g_assert_cmpfloat (board.tolerance_minus_mm, ==, 0.3);
  /* So have MDF (ANSI A208.2) and particleboard (EN 312, memory), in the place of any of these. */
  spelch_make_up_apply (SPELCH_MAKE_UP_MDF, &board);
  g_assert_cmpfloat (board.tolerance_plus_mm, ==, 0.125);
  g_assert_cmpfloat (board.tolerance_minus_mm, ==, 0.125);
  spelch_make_up_apply (SPELCH_MAKE_UP_BIRCH_PLY, &board);
  spelch_make_up_apply (SPELCH_MAKE_UP_PARTICLEBOARD, &board);
  g_assert_cmpfloat (board.tolerance_plus_mm, ==, 0.3);
  g_assert_cmpfloat (board.tolerance_minus_mm, ==, 0.3);
  board.tolerance_plus_mm = 0.4;
  spelch_make_up_apply (SPELCH_MAKE_UP_MDF, &board);
  g_assert_cmpfloat (board.tolerance_plus_mm, ==, 0.4);
  g_assert_cmpfloat (board.tolerance_minus_mm, ==, 0.3);
  /* Another thickness has another tolerance, unless it was told by hand. */
  spelch_make_up_apply (SPELCH_MAKE_UP_BIRCH_PLY, &board);
  board.nominal = spelch_length_mm (15);
  spelch_make_up_follow (&board, 18);
  g_assert_cmpfloat_with_epsilon (board.tolerance_plus_mm, 0.65, 1e-9);
  g_assert_cmpfloat_with_epsilon (board.tolerance_minus_mm, 0.85, 1e-9);
  g_assert_cmpfloat_with_epsilon (sum_of (&board), 15, 1e-9);
  board.tolerance_plus_mm = 0.2;
  board.nominal = spelch_length_mm (18);
  spelch_make_up_follow (&board, 15);
  g_assert_cmpfloat (board.tolerance_plus_mm, ==, 0.2);
}

static void
test_fitting (void)
{
  SpelchBoard board = { .id = "b", .name = "b", .nominal = spelch_length_mm (18) };
  spelch_make_up_apply (SPELCH_MAKE_UP_BIRCH_PLY, &board);
  board.nominal = spelch_length_mm (19);
  spelch_make_up_fit (&board);
  g_assert_cmpfloat (board.layers[0].thickness.mm, ==, 1.3);
  g_assert_cmpfloat_with_epsilon (sum_of (&board), 19, 1e-9);
  board.layers[3].thickness = spelch_length_mm (2);
  double sum = sum_of (&board);
  spelch_make_up_sum (&board);
  g_assert_cmpfloat_with_epsilon (board.nominal.mm, sum, 1e-4);
  spelch_make_up_alike (&board);
  g_assert_cmpfloat (board.layers[0].thickness.mm, ==, board.layers[5].thickness.mm);
  const SpelchLayer film = { spelch_length_mm (0.15), SPELCH_MATERIAL_LAMINATE, SPELCH_GRAIN_NONE, 0, false };
  guint n = board.n_layers;
  g_assert_true (spelch_make_up_face (&board, &film));
  g_assert_cmpuint (board.n_layers, ==, n + 2);
  g_assert_cmpfloat (board.layers[n + 1].thickness.mm, ==, 0.15);
  SpelchBoard thin = { .nominal = spelch_length_mm (0.2), .n_layers = 1 };
  g_assert_false (spelch_make_up_face (&thin, &film));
}

/* A board is bought by its plies: the number can be told, its thickness stays, and its faces where they are
 * thinner or thicker than the rest. Plies cross each other; common practice, no source. */
static void
test_number_of_plies (void)
{
  const SpelchMakeUp of_plies[] = { SPELCH_MAKE_UP_BIRCH_PLY, SPELCH_MAKE_UP_SOFTWOOD_PLY,
                                    SPELCH_MAKE_UP_OKOUME_PLY, SPELCH_MAKE_UP_VENEERED_PLY };
  for (guint m = 0; m < G_N_ELEMENTS (of_plies); m++)
    for (guint plies = 3; plies <= SPELCH_MAKE_UP_PLIES_MOST; plies += 2)
      {
        SpelchBoard board = { .id = "b", .name = "b", .nominal = spelch_length_mm (18) };
        spelch_make_up_apply (of_plies[m], &board);
        SpelchLayer face = board.layers[0];
        bool alike = face.thickness.mm == board.layers[1].thickness.mm;
        g_assert_true (spelch_make_up_set_plies (&board, plies));
        g_assert_cmpuint (spelch_make_up_plies (&board), ==, plies);
        g_assert_cmpuint (board.n_layers, ==, plies);
        g_assert_cmpfloat_with_epsilon (sum_of (&board), 18, 1e-9);
        g_assert_cmpfloat_with_epsilon (board.layers[0].thickness.mm,
                                        alike ? 18.0 / plies : face.thickness.mm, 1e-9);
        g_assert_cmpint (board.layers[0].material, ==, face.material);
        for (guint i = 1; i < plies; i++)
          g_assert_cmpfloat (fabs (board.layers[i].grain_deg - board.layers[i - 1].grain_deg), ==, 90);
        g_autofree char *fault = spelch_board_fault (&board);
        g_assert_cmpstr (fault, ==, NULL);
      }
  SpelchBoard board = { .id = "b", .name = "b", .nominal = spelch_length_mm (18) };
  spelch_make_up_apply (SPELCH_MAKE_UP_OKOUME_PLY, &board);
  g_assert_cmpstr (board.species, ==, "okoume");
  SpelchBoard before = board;
  g_assert_false (spelch_make_up_set_plies (&board, 8));
  g_assert_false (spelch_make_up_set_plies (&board, 23));
  g_assert_cmpmem (&board, sizeof board, &before, sizeof before);
  spelch_make_up_apply (SPELCH_MAKE_UP_MDF, &board);
  g_assert_cmpuint (spelch_make_up_plies (&board), ==, 0);
  g_assert_false (spelch_make_up_set_plies (&board, 7));
  /* A film on plywood isn't a ply. */
  const SpelchLayer film = { spelch_length_mm (0.15), SPELCH_MATERIAL_LAMINATE, SPELCH_GRAIN_NONE, 0, false };
  spelch_make_up_apply (SPELCH_MAKE_UP_BIRCH_PLY, &board);
  g_assert_true (spelch_make_up_face (&board, &film));
  g_assert_cmpuint (spelch_make_up_plies (&board), ==, 13);
  g_assert_true (spelch_make_up_set_plies (&board, 9));
  g_assert_cmpuint (board.n_layers, ==, 11);
  g_assert_cmpint (board.layers[10].material, ==, SPELCH_MATERIAL_LAMINATE);
  g_assert_cmpfloat_with_epsilon (sum_of (&board), 18, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/make-up/plies", test_plies);
  g_test_add_func ("/make-up/number-of-plies", test_number_of_plies);
  g_test_add_func ("/make-up/without-fault", test_without_fault);
  g_test_add_func ("/make-up/tolerances", test_tolerances);
  g_test_add_func ("/make-up/fitting", test_fitting);
  return g_test_run ();
}

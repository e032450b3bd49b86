/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * When a part's copy counts as another than what lies on the shelf: not for the metres a bit has cut, nor for
 * the thickness that a board was measured at, which is the part's own.
 */
#include "bench/copy-offer.h"
#include "bench/taking.h"
#include "files/shop-data.h"

static SpelchSession *
session_with_demo (void)
{
  SpelchSession *session = spelch_session_new (spelch_shop_constants ());
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  spelch_session_open (session, demo, NULL, NULL, false);
  return session;
}

static void
test_board (void)
{
  g_autoptr (SpelchSession) session = session_with_demo ();
  SpelchBoard board = spelch_session_get_part (session)->board;
  g_assert_false (spelch_copy_differs (session, SPELCH_LIST_BOARDS, &board));
  board.measured = spelch_length_mm (board.nominal.mm - 0.3);
  board.measured_within_mm = 0.02;
  g_assert_false (spelch_copy_differs (session, SPELCH_LIST_BOARDS, &board));
  board.density_kg_m3 += 20;
  g_assert_true (spelch_copy_differs (session, SPELCH_LIST_BOARDS, &board));
  board.density_kg_m3 -= 20;
  board.tolerance_minus_mm += 0.1;
  g_assert_true (spelch_copy_differs (session, SPELCH_LIST_BOARDS, &board));
  g_strlcpy (board.id, "another-board", sizeof board.id);
  g_assert_false (spelch_copy_differs (session, SPELCH_LIST_BOARDS, &board));
}

/* The board measured for the part, and taken as the shelf has it now. */
static void
test_board_taken (void)
{
  g_autoptr (SpelchSession) session = session_with_demo ();
  SpelchBoard board = spelch_session_get_part (session)->board;
  board.measured = (SpelchLength){ 0 };
  board.measured_within_mm = 0;
  g_assert_false (spelch_copy_differs (session, SPELCH_LIST_BOARDS, &board));
  board.density_kg_m3 += 20;
  g_assert_true (spelch_copy_differs (session, SPELCH_LIST_BOARDS, &board));
  spelch_take (session, SPELCH_LIST_BOARDS, &board);
  g_assert_false (spelch_copy_differs (session, SPELCH_LIST_BOARDS, &board));
  g_assert_cmpfloat (spelch_session_get_part (session)->board.density_kg_m3, ==, board.density_kg_m3);
}

static void
test_bit (void)
{
  g_autoptr (SpelchSession) session = session_with_demo ();
  SpelchBit bit = *spelch_session_get_accepted (session);
  bit.metres_cut += 40;
  g_assert_false (spelch_copy_differs (session, SPELCH_LIST_BITS, &bit));
  bit.wear = bit.wear == SPELCH_WEAR_DULL ? SPELCH_WEAR_NEW : SPELCH_WEAR_DULL;
  g_assert_true (spelch_copy_differs (session, SPELCH_LIST_BITS, &bit));
}

static void
test_machine (void)
{
  g_autoptr (SpelchSession) session = session_with_demo ();
  SpelchMachine machine = spelch_session_get_part (session)->machine;
  g_assert_false (spelch_copy_differs (session, SPELCH_LIST_MACHINES, &machine));
  machine.power_w += 100;
  g_assert_true (spelch_copy_differs (session, SPELCH_LIST_MACHINES, &machine));
}

/* Nothing opened, nothing on the shelf, and what a part has no copy of. */
static void
test_nothing (void)
{
  g_autoptr (SpelchSession) none = spelch_session_new (spelch_shop_constants ());
  g_autoptr (SpelchSession) session = session_with_demo ();
  SpelchBoard board = spelch_session_get_part (session)->board;
  board.density_kg_m3 += 20;
  g_assert_false (spelch_copy_differs (none, SPELCH_LIST_BOARDS, &board));
  g_assert_false (spelch_copy_differs (session, SPELCH_LIST_BOARDS, NULL));
  g_assert_false (spelch_copy_differs (session, SPELCH_LIST_LOG, &board));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/copy-offer/board", test_board);
  g_test_add_func ("/copy-offer/board-taken", test_board_taken);
  g_test_add_func ("/copy-offer/bit", test_bit);
  g_test_add_func ("/copy-offer/machine", test_machine);
  g_test_add_func ("/copy-offer/nothing", test_nothing);
  return g_test_run ();
}

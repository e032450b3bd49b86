/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A knifed line is advised where a seen face of veneer tears by its fibres and no bit at hand saves it, and
 * only there: each thing that decides is taken away in turn. That a severed face doesn't tear past the line
 * is common practice, no source.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "plan/knife.h"
#include "plan/words-choose.h"

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

static SpelchKnife
knife_with (const Demo *demo, const SpelchConstants *constants, const SpelchBit *bits, guint n)
{
  g_autoptr (GPtrArray) ranking = spelch_choose_rank (constants, demo->part, demo->cut, bits, n);
  return spelch_knife_find (demo->part, ranking);
}

static SpelchKnife
knife (const Demo *demo, const SpelchBit *bit)
{
  return knife_with (demo, spelch_shop_constants (), bit, 1);
}

/* A dado by hand in birch plywood with nothing but an up-cut: the face ply, 1.3 mm, is lifted out. */
static void
by_hand (Demo *demo)
{
  demo_take_machine (demo, "plunge-router");
  demo_take_cut (demo, "shelf-dado");
}

static void
test_advised (Demo *demo, gconstpointer unused)
{
  by_hand (demo);
  SpelchKnife found = knife (demo, demo_bit ("up-cut-6.35x25"));
  g_assert_true (found.helps);
  g_assert_cmpint (found.side, ==, SPELCH_SIDE_MOTOR);
  g_assert_cmpint (found.face, ==, demo->cut->way_up);
  g_assert_cmpfloat_with_epsilon (found.deep_mm, 1.3, 1e-9);
  g_autofree char *said = spelch_words_knife (&found, &MM);
  g_assert_cmpstr (
      said, ==,
      "Or knife the line on the show face on the motor side before routing, 1.3 mm deep, through "
      "its whole ply, in light strokes along a straightedge: fibres that are severed don't tear "
      "past the line (shop practice).");
  demo_take_machine (demo, "router-table");
  g_assert_true (knife (demo, demo_bit ("up-cut-6.35x25")).helps);
}

/* What decides is the shear: where pulling out costs nothing, nor do chips or grain, the knife isn't asked
 * for. */
static void
test_term (Demo *demo, gconstpointer unused)
{
  SpelchConstants k = *spelch_shop_constants ();
  by_hand (demo);
  g_assert_true (knife_with (demo, &k, demo_bit ("up-cut-6.35x25"), 1).helps);
  k.shear[SPELCH_FACING_PLY].pull_out = 0;
  k.chip_points_one = k.chip_points_two = 1000;
  g_assert_false (knife_with (demo, &k, demo_bit ("up-cut-6.35x25"), 1).helps);
}

/* A blunt down-cut spoils the face as well, but by its edge. */
static void
test_blunt (Demo *demo, gconstpointer unused)
{
  SpelchBit dull = *demo_bit ("down-cut-6.35x25");
  dull.wear = SPELCH_WEAR_DULL;
  by_hand (demo);
  g_assert_false (knife (demo, &dull).helps);
}

static void
test_saved_otherwise (Demo *demo, gconstpointer unused)
{
  const SpelchBit bits[] = { *demo_bit ("up-cut-6.35x25"), *demo_bit ("down-cut-6.35x25") };
  by_hand (demo);
  g_assert_false (knife_with (demo, spelch_shop_constants (), bits, 2).helps);
  demo->part->accepted_seen = 5;
  g_assert_false (knife (demo, &bits[0]).helps);
}

static void
test_not_asked_for (Demo *demo, gconstpointer unused)
{
  const char *const boards[] = { "mdf-18", "melamine-mdf-18", "oak-20" };
  by_hand (demo);
  demo->cut->seen_a = demo->cut->seen_b = false;
  g_assert_false (knife (demo, demo_bit ("up-cut-6.35x25")).helps);
  demo->cut->seen_a = demo->cut->seen_b = true;
  g_assert_true (knife (demo, demo_bit ("up-cut-6.35x25")).helps);
  demo_take_machine (demo, "medium-gantry");
  g_assert_false (knife (demo, demo_bit ("up-cut-6.35x25")).helps);
  demo_take_machine (demo, "plunge-router");
  for (guint i = 0; i < G_N_ELEMENTS (boards); i++)
    {
      demo_take_board (demo, boards[i]);
      g_assert_false (knife (demo, demo_bit ("up-cut-6.35x25")).helps);
    }
}

/* Through the board by hand with a down-cut: the seen far face is pushed out, and its ply is what is knifed.
 */
static void
test_far_face (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "plunge-router");
  demo_take_board (demo, "oak-veneered-ply-18");
  demo->cut->tabs.count = 0;
  demo->cut->seen_a = demo->cut->seen_b = true;
  SpelchKnife found = knife (demo, demo_bit ("down-cut-6.35x25"));
  g_assert_true (found.helps);
  g_assert_cmpint (found.side, ==, SPELCH_SIDE_FAR);
  g_assert_cmpfloat_with_epsilon (found.deep_mm, 0.6, 1e-9);
}

#define ADD(name, function) g_test_add ("/knife/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("advised", test_advised);
  ADD ("term", test_term);
  ADD ("blunt", test_blunt);
  ADD ("saved-otherwise", test_saved_otherwise);
  ADD ("not-asked-for", test_not_asked_for);
  ADD ("far-face", test_far_face);
  return g_test_run ();
}

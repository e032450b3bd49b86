/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What to look for when no bit at hand will do: the ranges against hand arithmetic, and bits just inside and
 * just outside them against their plans.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "plan/words-choose.h"

#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

static SpelchWanted
find (const Demo *demo)
{
  return spelch_wanted_find (spelch_shop_constants (), demo->part, demo->cut);
}

/* A bit as the wanted one is described, in a shank that a collet of the machine takes. */
static SpelchBit
bit_as (const SpelchWantedKind *wanted, SpelchBitKind kind, double diameter, double up_shear)
{
  SpelchBit bit = *demo_bit ("down-cut-6.35x25");
  bit.kind = kind;
  bit.helix_deg = kind == SPELCH_BIT_STRAIGHT ? 0 : 30;
  bit.diameter = spelch_length_mm (diameter);
  bit.shank = spelch_length_mm (diameter <= 6.35 ? 6.35 : 12.7);
  bit.cutting_length = spelch_length_mm (wanted->cutting_length_least);
  bit.overall_length = spelch_length_mm (wanted->cutting_length_least + 60);
  bit.up_shear = spelch_length_mm (kind == SPELCH_BIT_COMPRESSION ? up_shear : 0);
  return bit;
}

static bool
meets (Demo *demo, const SpelchBit *bit)
{
  g_autoptr (GPtrArray) ranking
      = spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, bit, 1);
  const SpelchChoice *best = spelch_choose_best (ranking);
  return best != NULL && best->meets;
}

/* A dado 9 mm deep and 18 mm wide, show face up. Its near arris must be pressed in: a down-cut does it, an
 * up-cut and a straight bit don't (common practice, no source). Deepest: 9 mm set, off by 0.1 (setting) +
 * 0.05 (bed) + the board's + tolerance, since zero is on the bed; no bit wider than the dado. */
static void
test_dado (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  demo->part->board.measured = spelch_length_mm (18);
  demo->part->board.measured_within_mm = 0.1;
  SpelchWanted wanted = find (demo);
  const SpelchWantedKind *down = &wanted.kinds[SPELCH_BIT_DOWN_CUT];
  g_assert_true (down->serves);
  g_assert_false (wanted.kinds[SPELCH_BIT_UP_CUT].serves);
  g_assert_false (wanted.kinds[SPELCH_BIT_STRAIGHT].serves);
  g_assert_cmpfloat (down->diameter_most, ==, 18);
  g_assert_cmpfloat_with_epsilon (down->cutting_length_least, 9.3, 1e-9);
  g_assert_cmpfloat (down->up_shear_most, ==, 0);
}

/* Up-shear from the first pass: at most 9 - arris layer - what setting, bed, board and bit may be off. Both
 * ends of what is asked for serve; one past the long end doesn't with its window for sure. */
static void
test_up_shear (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  demo->part->board.measured = spelch_length_mm (18);
  demo->part->board.measured_within_mm = 0.1;
  SpelchWanted wanted = find (demo);
  const SpelchWantedKind *one = &wanted.kinds[SPELCH_BIT_COMPRESSION];
  demo_plan_with (demo, "compression-6.35x22");
  double layer = demo->plan.near_layer, off = 0.1 + 0.05 + 0.1, shear = 0.4;
  g_assert_true (one->serves);
  g_assert_cmpfloat (one->up_shear_most, <=, 9 - layer - off - shear);
  g_assert_cmpfloat (one->up_shear_most, >, 9 - layer - off - shear - 0.11);
  for (int end = 0; end < 2; end++)
    {
      SpelchBit thin
          = bit_as (one, SPELCH_BIT_COMPRESSION, 12.7, end == 0 ? one->up_shear_least : one->up_shear_most);
      g_assert_true (meets (demo, &thin));
    }
  SpelchBit longer = bit_as (one, SPELCH_BIT_COMPRESSION, 12.7, 9 - layer + 0.1);
  g_assert_false (meets (demo, &longer));
}

/* Width and inside corner: D at most the width, and at most twice the radius. */
static void
test_diameter (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "rail-mortise");
  demo->cut->corner_radius = spelch_length_mm (4);
  SpelchWanted wanted = find (demo);
  const SpelchWantedKind *down = &wanted.kinds[SPELCH_BIT_DOWN_CUT];
  g_assert_true (down->serves);
  g_assert_cmpfloat (down->diameter_most, ==, 8);
  g_assert_cmpfloat (down->diameter_least, <, 8);
  SpelchBit widest = bit_as (down, SPELCH_BIT_DOWN_CUT, 8, 0);
  g_assert_true (meets (demo, &widest));
  widest.diameter = spelch_length_mm (8.5);
  g_assert_false (meets (demo, &widest));
}

static bool
any_serves (Demo *demo, SpelchWantedChange change)
{
  SpelchWanted wanted = find (demo);
  g_assert_cmpint (wanted.change, ==, change);
  return spelch_wanted_serves (&wanted);
}

/* Nothing does for a hole of no bit's size, and the sentence says so. */
static void
test_nothing (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  demo->cut->width = spelch_length_mm (1); /* thinner than any bit */
  SpelchWanted wanted = find (demo);
  g_assert_false (spelch_wanted_serves (&wanted));
  g_auto (GStrv) said = spelch_words_wanted (&wanted, demo->cut, &MM);
  g_assert_cmpuint (g_strv_length (said), ==, 1);
  g_assert_true (g_str_has_prefix (said[0], "Nor would any other straight"));
}

/* Nothing does for a cut fed by hand along its climb wall until it is fed the other way: then the same bits
 * do as for that cut. */
static void
test_other_way (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "plunge-router");
  demo_take_cut (demo, "back-rabbet");
  demo->cut->end = demo->cut->start = SPELCH_END_BACKED;
  demo->cut->kept = SPELCH_WALL_LEFT;
  SpelchWanted conventional = find (demo);
  g_assert_true (any_serves (demo, SPELCH_WANTED_AS_IT_IS));
  demo->cut->kept = SPELCH_WALL_RIGHT;
  demo->cut->path_deg += 180;
  SpelchWanted climb = find (demo);
  g_assert_cmpint (climb.change, ==, SPELCH_WANTED_OTHER_WAY);
  g_auto (GStrv) said = spelch_words_wanted (&climb, demo->cut, &MM);
  g_assert_nonnull (strstr (said[0], "Feed it the other way"));
  for (int kind = 0; kind < SPELCH_N_BIT_KINDS; kind++)
    {
      g_assert_cmpint (climb.kinds[kind].serves, ==, conventional.kinds[kind].serves);
      g_assert_cmpfloat (climb.kinds[kind].diameter_most, ==, conventional.kinds[kind].diameter_most);
    }
}

/* Across the grain of solid wood an unbacked edge breaks out whatever the bit; a scrap behind it mends that
 * (common practice). */
static void
test_backed (Demo *demo, gconstpointer unused)
{
  demo_take_board (demo, "oak-20");
  demo_take_cut (demo, "back-rabbet");
  demo_cut_out (demo); /* no waste of a later outline backs it */
  demo->cut->path_deg = 90;
  demo->cut->end = SPELCH_END_EDGE;
  SpelchWanted open = find (demo);
  g_assert_cmpint (open.change, ==, SPELCH_WANTED_BACKED);
  g_auto (GStrv) said = spelch_words_wanted (&open, demo->cut, &MM);
  g_assert_nonnull (strstr (said[0], "Clamp a scrap behind that edge"));
  demo->cut->end = SPELCH_END_BACKED;
  g_assert_true (any_serves (demo, SPELCH_WANTED_AS_IT_IS));
}

/* A bit at hand is named where no ordinary one would do but it does once the edge is backed; it is as good
 * then as its plan says. */
static void
test_at_hand (Demo *demo, gconstpointer unused)
{
  demo_take_board (demo, "oak-20");
  demo_take_cut (demo, "back-rabbet");
  demo_cut_out (demo);
  demo->cut->path_deg = 90;
  demo->cut->end = SPELCH_END_EDGE;
  const SpelchBit *bit = demo_bit ("down-cut-6.35x25");
  SpelchWanted wanted = { 0 };
  spelch_wanted_try (spelch_shop_constants (), demo->part, demo->cut, bit, 1, &wanted);
  g_assert_cmpint (wanted.change, ==, SPELCH_WANTED_BACKED);
  g_assert_cmpstr (wanted.at_hand, ==, bit->name);
  g_assert_false (meets (demo, bit));
  g_auto (GStrv) said = spelch_words_wanted (&wanted, demo->cut, &MM);
  g_assert_cmpuint (g_strv_length (said), ==, 2);
  g_assert_nonnull (strstr (said[1], bit->name));
  demo->cut->end = SPELCH_END_BACKED;
  g_assert_true (meets (demo, bit));
}

/* A stick-out set too short says nothing about which bit would do. */
static void
test_stick_out (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  SpelchWanted freely = find (demo);
  demo->cut->stick_out = spelch_length_mm (3);
  SpelchWanted set = find (demo);
  g_assert_true (freely.kinds[SPELCH_BIT_DOWN_CUT].serves);
  g_assert_true (set.kinds[SPELCH_BIT_DOWN_CUT].serves);
}

static void
test_words (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  SpelchWanted wanted = { 0 };
  wanted.kinds[SPELCH_BIT_COMPRESSION] = (SpelchWantedKind){ true, demo->cut->way_up, 6, 13, 9.31, 2, 5.97 };
  g_auto (GStrv) said = spelch_words_wanted (&wanted, demo->cut, &MM);
  g_assert_cmpuint (g_strv_length (said), ==, 1);
  g_assert_cmpstr (
      said[0], ==,
      "A compression bit would do: 6.0 mm to 13.0 mm across, cutting 9.4 mm deep or more, with 2.0 mm to "
      "5.9 mm of up-shear.");
  wanted.kinds[SPELCH_BIT_COMPRESSION].way_up = spelch_face_other (demo->cut->way_up);
  g_auto (GStrv) turned = spelch_words_wanted (&wanted, demo->cut, &MM);
  g_assert_cmpuint (g_strv_length (turned), ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/wanted/dado", Demo, NULL, demo_set_up, test_dado, demo_tear_down);
  g_test_add ("/wanted/up-shear", Demo, NULL, demo_set_up, test_up_shear, demo_tear_down);
  g_test_add ("/wanted/diameter", Demo, NULL, demo_set_up, test_diameter, demo_tear_down);
  g_test_add ("/wanted/nothing", Demo, NULL, demo_set_up, test_nothing, demo_tear_down);
  g_test_add ("/wanted/other-way", Demo, NULL, demo_set_up, test_other_way, demo_tear_down);
  g_test_add ("/wanted/backed", Demo, NULL, demo_set_up, test_backed, demo_tear_down);
  g_test_add ("/wanted/at-hand", Demo, NULL, demo_set_up, test_at_hand, demo_tear_down);
  g_test_add ("/wanted/stick-out", Demo, NULL, demo_set_up, test_stick_out, demo_tear_down);
  g_test_add ("/wanted/words", Demo, NULL, demo_set_up, test_words, demo_tear_down);
  return g_test_run ();
}

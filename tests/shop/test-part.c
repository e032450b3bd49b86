/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Parts: copies that don't share what may be changed, lists that find by id, and what is a fault.
 */
#include "samples.h"

static void
test_new (void)
{
  g_autoptr (SpelchPart) part = spelch_part_new ();
  g_assert_cmpuint (part->n_bits, ==, 0);
  g_assert_cmpuint (part->n_cuts, ==, 0);
  g_assert_cmpint (part->accepted_seen, ==, 1);
  g_assert_cmpint (part->accepted_hidden, ==, 3);
  g_assert_cmpint (part->holding.method, ==, SPELCH_HOLD_UNTOLD);
  /* it has no board yet */
  assert_fault (spelch_part_fault (part), "board", "empty");
}

static void
test_copy_is_deep (void)
{
  g_autoptr (SpelchPart) part = sample_part ();
  part->unknown = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (SpelchPart) copy = spelch_part_copy (part);
  copy->bits[0].diameter.mm = 6;
  copy->cuts[0].length.mm = 1;
  copy->board.nominal.mm = 18;
  g_assert_cmpfloat (part->bits[0].diameter.mm, ==, 12.7);
  g_assert_cmpfloat (part->cuts[0].length.mm, ==, 2400);
  g_assert_cmpfloat (part->board.nominal.mm, ==, 6);
  g_assert_true (copy->unknown == part->unknown);
}

/* The copy lives on, with what it shares, when the first part goes; and the other way about. */
static void
test_references (void)
{
  SpelchPart *part = sample_part ();
  part->unknown = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_hash_table_insert (part->unknown, g_strdup ("colour"), g_strdup ("\"red\""));
  SpelchPart *same = spelch_part_ref (part);
  g_assert_true (same == part);
  g_autoptr (SpelchPart) copy = spelch_part_copy (part);
  spelch_part_unref (part);
  g_assert_cmpstr (same->bits[0].id, ==, "compression-12.7x35");
  spelch_part_unref (same);
  g_assert_cmpstr (g_hash_table_lookup (copy->unknown, "colour"), ==, "\"red\"");
  g_assert_cmpstr (copy->cuts[0].id, ==, "outline");
}

static void
test_copy_of_nothing (void)
{
  g_autoptr (SpelchPart) part = spelch_part_new ();
  g_autoptr (SpelchPart) copy = spelch_part_copy (part);
  SpelchBit bit = sample_bit ();
  spelch_part_put_bit (copy, &bit);
  g_assert_cmpuint (copy->n_bits, ==, 1);
  g_assert_cmpuint (part->n_bits, ==, 0);
}

static void
test_put_bit (void)
{
  g_autoptr (SpelchPart) part = sample_part ();
  SpelchBit bit = sample_bit ();
  bit.metres_cut = 40;
  spelch_part_put_bit (part, &bit);
  g_assert_cmpuint (part->n_bits, ==, 1);
  g_assert_cmpfloat (part->bits[0].metres_cut, ==, 40);
  for (guint i = 0; i < 20; i++)
    {
      g_snprintf (bit.id, sizeof bit.id, "bit-%u", i);
      spelch_part_put_bit (part, &bit);
    }
  g_assert_cmpuint (part->n_bits, ==, 21);
  g_assert_cmpint (spelch_part_find_bit (part, "bit-7"), ==, 8);
  g_assert_cmpint (spelch_part_find_bit (part, "bit-77"), ==, -1);
  /* one of its own */
  spelch_part_put_bit (part, &part->bits[20]);
  g_assert_cmpuint (part->n_bits, ==, 21);
}

static void
test_add_cut (void)
{
  g_autoptr (SpelchPart) part = sample_part ();
  SpelchCut cut = sample_cut ();
  g_strlcpy (cut.id, "second", sizeof cut.id);
  spelch_part_add_cut (part, &cut);
  spelch_part_add_cut (part, &part->cuts[0]); /* one of its own, while the list moves */
  g_assert_cmpuint (part->n_cuts, ==, 3);
  g_assert_cmpint (spelch_part_find_cut (part, "second"), ==, 1);
  g_assert_cmpint (spelch_part_find_cut (part, "outline"), ==, 0);
  g_assert_cmpint (spelch_part_find_cut (part, ""), ==, -1);
  assert_fault (spelch_part_fault (part), "cuts[2] 'outline'", "twice");
}

static void
test_faults_say_where (void)
{
  g_autoptr (SpelchPart) part = sample_part ();
  assert_sound (spelch_part_fault (part));

  part->cuts[0].length.mm = 0;
  assert_fault (spelch_part_fault (part), "cuts[0] 'outline': length", "0 mm");
  part->cuts[0].length.mm = 2400;

  g_strlcpy (part->cuts[0].bit, "gone", sizeof part->cuts[0].bit);
  assert_fault (spelch_part_fault (part), "cuts[0] 'outline': bit", "gone");
  part->cuts[0].bit[0] = '\0'; /* none accepted yet */
  assert_sound (spelch_part_fault (part));

  part->bits[0].edges = 9;
  assert_fault (spelch_part_fault (part), "bits[0] 'compression-12.7x35': edges", "9");
  part->bits[0].edges = 2;

  part->board.measured.mm = 900;
  assert_fault (spelch_part_fault (part), "board: measured", "900 mm");
  part->board.measured.mm = 0;

  part->machine.power_w = -1;
  assert_fault (spelch_part_fault (part), "machine: power_w", "-1 W");
  part->machine.power_w = 2200;

  part->accepted_seen = 0;
  assert_fault (spelch_part_fault (part), "accepted_seen", "0");
  part->accepted_seen = 1;

  part->holding.vacuum_kpa = 120; /* more than the air's own pressure */
  assert_fault (spelch_part_fault (part), "holding.vacuum_kpa", "120 kPa");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/part/new", test_new);
  g_test_add_func ("/part/copy-is-deep", test_copy_is_deep);
  g_test_add_func ("/part/references", test_references);
  g_test_add_func ("/part/copy-of-nothing", test_copy_of_nothing);
  g_test_add_func ("/part/put-bit", test_put_bit);
  g_test_add_func ("/part/add-cut", test_add_cut);
  g_test_add_func ("/part/faults-say-where", test_faults_say_where);
  return g_test_run ();
}

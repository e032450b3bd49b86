/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "samples.h"

#include <string.h>

SpelchBit
sample_bit (void)
{
  return (SpelchBit){
    .id = "compression-12.7x35",
    .name = "Compression 12.7 mm",
    .kind = SPELCH_BIT_COMPRESSION,
    .diameter = spelch_length_mm (12.7),
    .shank = spelch_length_mm (12.7),
    .cutting_length = spelch_length_mm (35),
    .overall_length = spelch_length_mm (89),
    .up_shear = spelch_length_mm (15.9),
    .edges = 2,
    .helix_deg = 30,
    .end_cutting = true,
    .wear = SPELCH_WEAR_SHARP,
  };
}

SpelchBoard
sample_board (void)
{
  static const double plies[] = { 1.0, 1.4, 1.2, 1.4, 1.0 };
  SpelchBoard board = {
    .id = "birch-6",
    .name = "Birch plywood 6 mm",
    .n_layers = G_N_ELEMENTS (plies),
    .nominal = spelch_length_mm (6),
    .tolerance_plus_mm = 0.4,
    .tolerance_minus_mm = 0.6,
  };
  for (guint i = 0; i < G_N_ELEMENTS (plies); i++)
    board.layers[i] = (SpelchLayer){
      .thickness = spelch_length_mm (plies[i]),
      .material = SPELCH_MATERIAL_BIRCH_PLY,
      .grain = SPELCH_GRAIN_STRAIGHT,
      .grain_deg = i % 2 == 0 ? 0 : 90,
      .veneer = true,
    };
  return board;
}

SpelchMachine
sample_machine (void)
{
  return (SpelchMachine){
    .id = "gantry",
    .name = "Gantry router",
    .kind = SPELCH_MACHINE_GANTRY,
    .rpm_min = 8000,
    .rpm_max = 24000,
    .power_w = 2200,
    .max_feed_mm_min = 10000,
    .n_collets = 2,
    .collets = { { .mm = 6.35 }, { .mm = 12.7 } },
    .datum = SPELCH_DATUM_BED,
    .overcut_allowed_mm = 0.5,
    .flatness_mm = 0.1,
    .stiffness_n_mm = 1500,
  };
}

SpelchCut
sample_cut (void)
{
  return (SpelchCut){
    .id = "outline",
    .name = "Outline",
    .kind = SPELCH_CUT_OUTLINE,
    .through = true,
    .length = spelch_length_mm (2400),
    .seen_a = true,
    .kept = SPELCH_WALL_LEFT,
    .quantity = 1,
  };
}

SpelchPart *
sample_part (void)
{
  SpelchPart *part = spelch_part_new ();
  SpelchBit bit = sample_bit ();
  SpelchCut cut = sample_cut ();
  g_strlcpy (cut.bit, bit.id, sizeof cut.bit);
  part->board = sample_board ();
  part->machine = sample_machine ();
  spelch_part_put_bit (part, &bit);
  spelch_part_add_cut (part, &cut);
  return part;
}

void
assert_fault (char *fault, const char *member, const char *value)
{
  g_autofree char *sentence = fault;
  g_assert_nonnull (sentence);
  if (strstr (sentence, member) == NULL || strstr (sentence, value) == NULL)
    g_error ("[%s] doesn't name %s and %s", sentence, member, value);
  g_assert_true (g_str_has_suffix (sentence, ".") || g_str_has_suffix (sentence, "?"));
}

void
assert_sound (char *fault)
{
  g_autofree char *sentence = fault;
  g_assert_cmpstr (sentence, ==, NULL);
}

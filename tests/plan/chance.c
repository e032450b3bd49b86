/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "chance.h"

#include "files/shop-data.h"

#include <string.h>

double
chance_between (GRand *random, double from, double to)
{
  return g_rand_double_range (random, from, to);
}

SpelchPart *
chance_part (GRand *random)
{
  guint boards, machines;
  const SpelchBoard *board = spelch_shop_boards (&boards);
  const SpelchMachine *machine = spelch_shop_machines (&machines);
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  SpelchPart *part = spelch_part_copy (demo);
  part->board = board[g_rand_int_range (random, 0, (int)boards)];
  part->machine = machine[g_rand_int_range (random, 0, (int)machines)];
  part->accepted_seen = g_rand_int_range (random, 1, 4);
  if (g_rand_boolean (random))
    part->board.measured = spelch_length_mm (part->board.nominal.mm * chance_between (random, 0.97, 1.02));
  return part;
}

SpelchCut
chance_cut (GRand *random, const SpelchPart *part)
{
  SpelchCut cut = part->cuts[g_rand_int_range (random, 0, (int)part->n_cuts)];
  memset (&cut.held, 0, sizeof cut.held);
  cut.way_up = g_rand_boolean (random) ? SPELCH_FACE_A : SPELCH_FACE_B;
  cut.path_deg = chance_between (random, -180, 180);
  if (!cut.through)
    cut.depth = spelch_length_mm (part->board.nominal.mm * chance_between (random, 0.1, 0.9));
  return cut;
}

SpelchBit
chance_bit (GRand *random)
{
  guint n;
  const SpelchBit *bits = spelch_shop_bits (&n);
  SpelchBit bit = bits[g_rand_int_range (random, 0, (int)n)];
  bit.wear = (SpelchWear)g_rand_int_range (random, 0, 4);
  if (bit.kind == SPELCH_BIT_COMPRESSION)
    bit.overlap = spelch_length_mm (chance_between (random, 0, 1));
  return bit;
}

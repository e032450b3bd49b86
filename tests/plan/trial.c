/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trial.h"

#include "chance.h"

#include "files/part-file.h"
#include "files/shop-data.h"

#include <math.h>
#include <string.h>

#ifdef __SANITIZE_ADDRESS__
#define USUAL 2000
#else
#define USUAL 100000
#endif

static bool
one_in (GRand *random, int n)
{
  return g_rand_int_range (random, 0, n) == 0;
}

/* To a hundredth, as one would tell it. */
static SpelchLength
length_between (GRand *random, double from, double to)
{
  return spelch_length_mm (round (chance_between (random, from, to) * 100) / 100);
}

/* ---- Made up ---- */

SpelchBit
trial_bit (GRand *random)
{
  static const double shanks[] = { 6, 6.35, 8, 12, 12.7 };
  SpelchBit bit = { .id = "trial",
                    .name = "trial",
                    .kind = (SpelchBitKind)g_rand_int_range (random, 0, SPELCH_N_BIT_KINDS) };
  bit.diameter = length_between (random, 2, 20);
  bit.shank = spelch_length_mm (shanks[g_rand_int_range (random, 0, (int)G_N_ELEMENTS (shanks))]);
  bit.cutting_length = length_between (random, 6, 45);
  bit.overall_length = length_between (random, bit.cutting_length.mm + 25, bit.cutting_length.mm + 60);
  bit.edges = g_rand_int_range (random, 1, 5);
  bit.helix_deg = bit.kind == SPELCH_BIT_STRAIGHT ? 0 : chance_between (random, 9, 45);
  bit.rake_deg = one_in (random, 2) ? 0 : chance_between (random, 5, 30);
  bit.edge_material = one_in (random, 5) ? SPELCH_TOOL_HSS : SPELCH_TOOL_CARBIDE;
  bit.body_material = one_in (random, 3) ? SPELCH_TOOL_STEEL : bit.edge_material;
  bit.coated = one_in (random, 4);
  bit.end_cutting = !one_in (random, 4);
  if (!bit.end_cutting)
    {
      bit.uncut_centre = length_between (random, 0.2, bit.diameter.mm * 0.6);
      bit.end_hollow = length_between (random, 0.1, 1);
    }
  bit.max_rpm = one_in (random, 8) ? 0 : 1000 * g_rand_int_range (random, 10, 31);
  bit.hand_feed = !one_in (random, 3);
  bit.price = one_in (random, 2) ? 0 : chance_between (random, 5, 80);
  bit.metres_cut = one_in (random, 2) ? 0 : chance_between (random, 0, 500);
  bit.wear = (SpelchWear)g_rand_int_range (random, 0, 4);
  if (bit.kind == SPELCH_BIT_COMPRESSION)
    {
      bit.up_shear = length_between (random, 2, bit.cutting_length.mm * 0.7);
      bit.overlap = length_between (random, 0, 1);
      bit.edges_up = one_in (random, 3) ? g_rand_int_range (random, 1, 4) : 0;
    }
  return bit;
}

static SpelchBoard
made_board (GRand *random)
{
  SpelchBoard board = { .id = "trial", .name = "trial", .n_layers = (guint)g_rand_int_range (random, 1, 8) };
  double sum = 0;
  for (guint i = 0; i < board.n_layers; i++)
    {
      SpelchLayer *layer = &board.layers[i];
      layer->material = (SpelchMaterial)g_rand_int_range (random, 0, SPELCH_MATERIAL_LAMINATE + 1);
      layer->veneer
          = layer->material == SPELCH_MATERIAL_BIRCH_PLY || layer->material == SPELCH_MATERIAL_SOFTWOOD_PLY;
      layer->grain
          = layer->material >= SPELCH_MATERIAL_PARTICLEBOARD
                ? SPELCH_GRAIN_NONE
                : (SpelchGrain)g_rand_int_range (random, SPELCH_GRAIN_STRAIGHT, SPELCH_GRAIN_END + 1);
      layer->grain_deg = g_rand_int_range (random, -90, 91);
      layer->thickness = length_between (random, board.n_layers == 1 ? 4 : 0.3, board.n_layers == 1 ? 40 : 6);
      sum += layer->thickness.mm;
    }
  board.nominal = spelch_length_mm (sum);
  board.tolerance_plus_mm = chance_between (random, 0, 0.6);
  board.tolerance_minus_mm = chance_between (random, 0, 0.8);
  return board;
}

static void
alter_cut (GRand *random, const SpelchBoard *board, SpelchCut *cut)
{
  double thickness = spelch_board_thickness (board);
  cut->start = (SpelchEnd)g_rand_int_range (random, SPELCH_END_EDGE, SPELCH_END_BACKED + 1);
  cut->end = (SpelchEnd)g_rand_int_range (random, SPELCH_END_EDGE, SPELCH_END_BACKED + 1);
  cut->seen_a = one_in (random, 2);
  cut->seen_b = one_in (random, 2);
  if (cut->width.mm > 0 && one_in (random, 2))
    cut->width = length_between (random, 3, 40);
  if (!cut->through)
    cut->depth = length_between (random, thickness * 0.1, thickness * 0.9);
  if (cut->through && one_in (random, 3))
    cut->backer = length_between (random, 3, 19);
}

static bool
is_valid (const Trial *trial)
{
  g_autofree char *fault = spelch_bit_fault (&trial->bit) ?: spelch_board_fault (&trial->part->board)
                                                                 ?: spelch_cut_fault (&trial->cut, &trial->part->board);
  return fault == NULL;
}

/* ---- Cases ---- */

/* Half of them from the starter sets, half made up; held down, marked for speed and hand feed, and fitting
 * the collet more often than not, so that many have nothing against them. */
static void
draw_once (Trial *trial)
{
  GRand *random = trial->random;
  g_clear_pointer (&trial->part, spelch_part_unref);
  trial->part = chance_part (random);
  if (one_in (random, 2))
    trial->part->board = made_board (random);
  trial->cut = chance_cut (random, trial->part);
  if (one_in (random, 2))
    alter_cut (random, &trial->part->board, &trial->cut);
  trial->bit = one_in (random, 2) ? trial_bit (random) : chance_bit (random);
  SpelchHolding *holding = &trial->part->holding;
  holding->area_mm2 = chance_between (random, 1e4, 4e5);
  if (trial->part->machine.kind != SPELCH_MACHINE_GANTRY)
    holding->method = SPELCH_HOLD_HANDS;
  if (!one_in (random, 4))
    trial->bit.hand_feed = true;
  if (trial->bit.max_rpm == 0 && !one_in (random, 4))
    trial->bit.max_rpm = 24000;
  if (trial->part->machine.n_collets > 0 && !one_in (random, 4))
    trial->part->machine.collets[0] = trial->bit.shank;
}

static void
draw (Trial *trial, guint32 seed, guint number)
{
  const guint32 key[] = { seed, number };
  *trial = (Trial){ .random = g_rand_new_with_seed_array (key, G_N_ELEMENTS (key)) };
  do
    draw_once (trial);
  while (!is_valid (trial));
}

static void
clear (Trial *trial)
{
  g_rand_free (trial->random);
  spelch_part_unref (trial->part);
}

/* As a part with this cut and bit alone. */
static void
describe (guint32 seed, guint number)
{
  Trial trial;
  draw (&trial, seed, number);
  trial.part->n_cuts = trial.part->n_bits = 0;
  g_strlcpy (trial.cut.bit, trial.bit.id, sizeof trial.cut.bit);
  spelch_part_add_cut (trial.part, &trial.cut);
  spelch_part_put_bit (trial.part, &trial.bit);
  g_autofree char *text = spelch_part_to_json (trial.part);
  g_test_message ("seed %u, case %u doesn't hold (SPELCH_CASE=%u tries it alone):\n%s", seed, number, number,
                  text);
  clear (&trial);
}

static guint
told (const char *name, guint otherwise)
{
  const char *value = g_getenv (name);
  return value != NULL ? (guint)g_ascii_strtoull (value, NULL, 10) : otherwise;
}

guint
trial_cases (void)
{
  return told ("SPELCH_CASES", USUAL);
}

void
trial_run (guint32 seed, double share, guint rare, TrialCheck check)
{
  guint n = (guint)(trial_cases () * share), only = told ("SPELCH_CASE", G_MAXUINT), spoke = 0;
  for (guint number = only < n ? only : 0; number < n && (only == G_MAXUINT || number == only); number++)
    {
      Trial trial;
      draw (&trial, seed, number);
      check (&trial);
      spoke += trial.counts;
      clear (&trial);
      if (!g_test_failed ())
        continue;
      describe (seed, number);
      return;
    }
  g_test_message ("seed %u, %u cases, %u of them spoken about", seed, n, spoke);
  if (only == G_MAXUINT)
    g_assert_cmpuint (spoke, >=, n / rare);
}

void
trial_plan (const Trial *trial, SpelchPlan *plan)
{
  spelch_plan_make (spelch_shop_constants (), trial->part, &trial->cut, &trial->bit, plan);
}

/* Looks at every eight bytes, whatever stands there, so that no member is forgotten. Infinities and what
 * arithmetic gives for no number have these upper bits; small negative whole numbers, further up, haven't. */
void
trial_finite (const SpelchPlan *plan)
{
  const char *bytes = (const char *)plan;
  for (gsize i = 0; i + sizeof (guint64) <= sizeof *plan; i += sizeof (guint64))
    {
      guint64 word;
      memcpy (&word, bytes + i, sizeof word);
      guint32 upper = (guint32)(word >> 32);
      bool number = (upper & 0x7ff00000) != 0x7ff00000 || upper >= 0xffff0000;
      if (!number)
        g_test_message ("no number at byte %" G_GSIZE_FORMAT " of the plan", i);
      g_assert_true (number);
    }
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What woodworkers tell each other about choosing a bit, each on a part file of its own in tests/advice,
 * whose bits are alike in everything but their edges. All of it is common practice, no source. Nothing in the
 * program says any of it: each test also changes the one number that decides, and the advice turns over.
 */
#include "on-demo.h"

#include "files/part-file.h"
#include "files/shop-data.h"
#include "plan/choose.h"
#include "plan/words.h"

#include <math.h>
#include <string.h>

/* A part, the model's constants to be changed, and the bits of the part. */
typedef struct
{
  Demo demo;
  SpelchConstants k;
  SpelchBit bits[4]; /* by SpelchBitKind */
  GPtrArray *ranking;
} Advice;

/* Reads the part file of that name, with the constants as they are. */
static void
take (Advice *a, const char *name)
{
  g_autofree char *file = g_strconcat (name, ".spelch", NULL);
  g_autofree char *path = g_test_build_filename (G_TEST_DIST, "advice", file, NULL);
  g_autoptr (GFile) stored = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchPart) part = spelch_part_load (stored, NULL, &error);
  g_assert_no_error (error);
  g_clear_pointer (&a->demo.part, spelch_part_unref);
  a->demo.part = spelch_part_copy (part);
  a->demo.cut = &a->demo.part->cuts[0];
  g_assert_cmpuint (part->n_bits, ==, G_N_ELEMENTS (a->bits));
  for (guint i = 0; i < part->n_bits; i++)
    a->bits[part->bits[i].kind] = part->bits[i];
  a->k = *spelch_shop_constants ();
}

static void
set_up (Advice *a, gconstpointer name)
{
  take (a, name);
}

static void
tear_down (Advice *a, gconstpointer unused)
{
  g_clear_pointer (&a->ranking, g_ptr_array_unref);
  demo_tear_down (&a->demo, NULL);
}

static void
rank (Advice *a)
{
  g_clear_pointer (&a->ranking, g_ptr_array_unref);
  a->ranking = spelch_choose_rank (&a->k, a->demo.part, a->demo.cut, a->bits, G_N_ELEMENTS (a->bits));
}

/* The better way up of a kind, after rank(). */
static const SpelchChoice *
of_kind (const Advice *a, SpelchBitKind kind)
{
  for (guint i = 0; i < a->ranking->len; i++)
    {
      const SpelchChoice *choice = a->ranking->pdata[i];
      if (choice->bit == (guint)kind && !choice->pinned)
        return choice;
    }
  g_assert_not_reached ();
}

/* Which of two kinds stands first. */
static SpelchBitKind
better_of (const Advice *a, SpelchBitKind one, SpelchBitKind other)
{
  for (guint i = 0; i < a->ranking->len; i++)
    {
      const SpelchChoice *choice = a->ranking->pdata[i];
      if (!choice->pinned && (choice->bit == (guint)one || choice->bit == (guint)other))
        return (SpelchBitKind)choice->bit;
    }
  g_assert_not_reached ();
}

static bool
has_reason (const SpelchChoice *choice, SpelchReasonKind kind)
{
  for (guint i = 0; i < choice->n_reasons; i++)
    if (choice->reasons[i].kind == kind)
      return true;
  return false;
}

static bool
has_stop (const SpelchChoice *choice, SpelchStopKind kind)
{
  for (guint i = 0; i < choice->plan.n_stops; i++)
    if (choice->plan.stops[i].kind == kind)
      return true;
  return false;
}

/* ---- Near face seen: down-cut or compression, not up-cut ---- */

static void
test_near_face_seen (Advice *a, gconstpointer unused)
{
  const struct
  {
    const char *part;
    SpelchFacing facing;
  } stock[] = { { "near-face-plywood", SPELCH_FACING_PLY },
                { "near-face-veneer", SPELCH_FACING_PLY },
                { "near-face-figured", SPELCH_FACING_PLY },
                { "near-face-melamine", SPELCH_FACING_LAMINATE } };
  for (guint i = 0; i < G_N_ELEMENTS (stock); i++)
    {
      take (a, stock[i].part);
      rank (a);
      g_assert_true (of_kind (a, SPELCH_BIT_DOWN_CUT)->meets);
      g_assert_true (of_kind (a, SPELCH_BIT_COMPRESSION)->meets);
      g_assert_true (has_reason (of_kind (a, SPELCH_BIT_DOWN_CUT), SPELCH_REASON_PRESSES_IN));
      g_assert_false (of_kind (a, SPELCH_BIT_UP_CUT)->meets);
      g_assert_true (has_reason (of_kind (a, SPELCH_BIT_UP_CUT), SPELCH_REASON_TEARS));
      a->k.shear[stock[i].facing].pull_out = 0;
      rank (a);
      g_assert_true (of_kind (a, SPELCH_BIT_UP_CUT)->meets);
      g_assert_false (has_reason (of_kind (a, SPELCH_BIT_DOWN_CUT), SPELCH_REASON_PRESSES_IN));
      /* Melamine's chips leave an up-cut best, and now nothing speaks against it. */
      if (stock[i].facing == SPELCH_FACING_LAMINATE)
        g_assert_cmpint (better_of (a, SPELCH_BIT_UP_CUT, SPELCH_BIT_DOWN_CUT), ==, SPELCH_BIT_UP_CUT);
    }
}

/* ---- Compression: shallower than its up-shear it is an up-cut; deep and few passes are what it is for ----
 */

static void
test_compression_shallow (Advice *a, gconstpointer unused)
{
  SpelchBit *bit = &a->bits[SPELCH_BIT_COMPRESSION];
  rank (a);
  g_assert_cmpint (of_kind (a, SPELCH_BIT_COMPRESSION)->seen, ==, of_kind (a, SPELCH_BIT_UP_CUT)->seen);
  g_assert_true (has_reason (of_kind (a, SPELCH_BIT_COMPRESSION), SPELCH_REASON_TIP_TOO_LONG));
  g_assert_cmpint (better_of (a, SPELCH_BIT_COMPRESSION, SPELCH_BIT_DOWN_CUT), ==, SPELCH_BIT_DOWN_CUT);
  bit->up_shear = spelch_length_mm (2);
  rank (a);
  g_assert_true (of_kind (a, SPELCH_BIT_COMPRESSION)->meets);
  bit->up_shear = spelch_length_mm (6);
  a->demo.cut->depth = spelch_length_mm (12);
  rank (a);
  g_assert_true (of_kind (a, SPELCH_BIT_COMPRESSION)->meets);
}

static void
test_compression_deep (Advice *a, gconstpointer unused)
{
  SpelchCut *cut = a->demo.cut;
  rank (a);
  const SpelchChoice *deep = of_kind (a, SPELCH_BIT_COMPRESSION);
  g_assert_true (deep->meets);
  g_assert_cmpfloat (deep->plan.passes[0].tip_mm, >, 6);
  /* Many shallow passes, as one would take with an up-cut. */
  cut->held.n_passes = 4;
  for (guint i = 0; i < 4; i++)
    cut->held.passes[i] = spelch_length_mm (4 * (i + 1));
  g_strlcpy (cut->bit, "compression", sizeof cut->bit);
  rank (a);
  g_assert_false (of_kind (a, SPELCH_BIT_COMPRESSION)->meets);
  cut->held.n_passes = 1;
  cut->held.passes[0] = spelch_length_mm (9);
  rank (a);
  g_assert_true (of_kind (a, SPELCH_BIT_COMPRESSION)->meets);
}

/* ---- Deep slot or blind mortise in straight-grained hardwood: up-cut ---- */

static void
test_mortise (Advice *a, gconstpointer unused)
{
  rank (a);
  const SpelchChoice *up = of_kind (a, SPELCH_BIT_UP_CUT), *down = of_kind (a, SPELCH_BIT_DOWN_CUT);
  g_assert_true (spelch_choose_best (a->ranking) == up);
  g_assert_true (has_reason (up, SPELCH_REASON_CARRIES_UP));
  g_assert_true (has_reason (down, SPELCH_REASON_PACKS_CHIPS));
  g_assert_cmpfloat (up->plan.time_s, <, down->plan.time_s);
  g_assert_cmpfloat (up->plan.wall_heat, <, down->plan.wall_heat);
  a->k.clearing_down = a->k.clearing_straight = 1;
  a->k.clearing_up = 0.5;
  rank (a);
  g_assert_false (spelch_choose_best (a->ranking) == of_kind (a, SPELCH_BIT_UP_CUT));
}

/* Clearing decides: with chips leaving every bit alike, the up-cut is neither quicker nor cooler. */
static void
test_deep_slot (Advice *a, gconstpointer unused)
{
  rank (a);
  g_assert_cmpint (better_of (a, SPELCH_BIT_UP_CUT, SPELCH_BIT_DOWN_CUT), ==, SPELCH_BIT_UP_CUT);
  g_assert_cmpfloat (of_kind (a, SPELCH_BIT_UP_CUT)->plan.wall_heat, <,
                     of_kind (a, SPELCH_BIT_DOWN_CUT)->plan.wall_heat);
  a->k.clearing_down = a->k.clearing_straight = 1;
  a->k.clearing_up = 0.5;
  rank (a);
  g_assert_cmpint (better_of (a, SPELCH_BIT_UP_CUT, SPELCH_BIT_DOWN_CUT), ==, SPELCH_BIT_DOWN_CUT);
}

/* ---- Through mortise: cut from the face the joint covers ---- */

static void
test_through_mortise (Advice *a, gconstpointer unused)
{
  SpelchCut *cut = a->demo.cut;
  rank (a);
  g_assert_cmpint (of_kind (a, SPELCH_BIT_UP_CUT)->way_up, ==, SPELCH_FACE_B);
  cut->seen_a = false;
  cut->seen_b = true;
  rank (a);
  g_assert_cmpint (of_kind (a, SPELCH_BIT_UP_CUT)->way_up, ==, SPELCH_FACE_A);
}

/* ---- Dado: down-cut, ramped and slower in tear-prone stock; up-cut while sharp in straight-grained ---- */

static void
test_dado_figured (Advice *a, gconstpointer unused)
{
  rank (a);
  g_assert_cmpint (better_of (a, SPELCH_BIT_UP_CUT, SPELCH_BIT_DOWN_CUT), ==, SPELCH_BIT_DOWN_CUT);
  g_assert_cmpint (of_kind (a, SPELCH_BIT_DOWN_CUT)->plan.entry.kind, ==, SPELCH_ENTRY_RAMP);
  g_assert_false (of_kind (a, SPELCH_BIT_UP_CUT)->meets);
  for (guint i = 0; i < a->demo.part->board.n_layers; i++)
    a->demo.part->board.layers[i].grain = SPELCH_GRAIN_STRAIGHT;
  rank (a);
  g_assert_true (of_kind (a, SPELCH_BIT_UP_CUT)->meets);
  g_assert_cmpint (better_of (a, SPELCH_BIT_UP_CUT, SPELCH_BIT_DOWN_CUT), ==, SPELCH_BIT_UP_CUT);
  g_assert_cmpfloat (of_kind (a, SPELCH_BIT_DOWN_CUT)->plan.feed_mm_min, <,
                     of_kind (a, SPELCH_BIT_UP_CUT)->plan.feed_mm_min);
}

static void
test_dado_while_sharp (Advice *a, gconstpointer unused)
{
  rank (a);
  g_assert_cmpint (better_of (a, SPELCH_BIT_UP_CUT, SPELCH_BIT_DOWN_CUT), ==, SPELCH_BIT_UP_CUT);
  for (int kind = 0; kind < 4; kind++)
    a->bits[kind].wear = SPELCH_WEAR_WORN;
  rank (a);
  g_assert_cmpint (better_of (a, SPELCH_BIT_UP_CUT, SPELCH_BIT_DOWN_CUT), ==, SPELCH_BIT_DOWN_CUT);
  g_assert_true (has_reason (of_kind (a, SPELCH_BIT_UP_CUT), SPELCH_REASON_WORN));
}

/* ---- Small pieces on tabs under a gantry: down-cut rather than a bit that nets upward ---- */

/* Quarter-inch bits, a piece of 138 mm square that hangs on four tabs of 8 by 3 mm: what nets upward rolls
 * the plies of the tabs off one another. */
static void
test_small_piece (Advice *a, gconstpointer unused)
{
  rank (a);
  const SpelchChoice *both = of_kind (a, SPELCH_BIT_COMPRESSION), *down = of_kind (a, SPELCH_BIT_DOWN_CUT);
  g_assert_true (has_reason (both, SPELCH_REASON_LIFTS));
  g_assert_true (has_stop (both, SPELCH_STOP_TABS));
  g_assert_true (has_reason (down, SPELCH_REASON_PRESSES_DOWN));
  g_assert_false (has_stop (down, SPELCH_STOP_TABS));
  g_assert_cmpint (better_of (a, SPELCH_BIT_COMPRESSION, SPELCH_BIT_DOWN_CUT), ==, SPELCH_BIT_DOWN_CUT);
  g_assert_cmpint (better_of (a, SPELCH_BIT_UP_CUT, SPELCH_BIT_DOWN_CUT), ==, SPELCH_BIT_DOWN_CUT);
  /* Were plies as strong against rolling as sideways, the deep pass of the compression bit would be the
   * better one. */
  a->k.tab_lift_wood = 20 * a->k.tab_shear_plywood;
  rank (a);
  g_assert_false (has_stop (of_kind (a, SPELCH_BIT_COMPRESSION), SPELCH_STOP_TABS));
  g_assert_cmpint (better_of (a, SPELCH_BIT_COMPRESSION, SPELCH_BIT_DOWN_CUT), ==, SPELCH_BIT_COMPRESSION);
}

/* ---- Table and hand-held: an up-cut draws board and base together, a down-cut parts them ---- */

static void
test_table (Advice *a, gconstpointer unused)
{
  rank (a);
  g_assert_true (has_reason (of_kind (a, SPELCH_BIT_UP_CUT), SPELCH_REASON_PRESSES_DOWN));
  g_assert_true (has_reason (of_kind (a, SPELCH_BIT_DOWN_CUT), SPELCH_REASON_LIFTS));
  g_assert_true (has_stop (of_kind (a, SPELCH_BIT_DOWN_CUT), SPELCH_STOP_PUSHED_OFF));
  g_assert_cmpint (better_of (a, SPELCH_BIT_UP_CUT, SPELCH_BIT_DOWN_CUT), ==, SPELCH_BIT_UP_CUT);
  /* Featherboards. */
  a->demo.part->holding.method = SPELCH_HOLD_CLAMPS;
  a->demo.part->accepted_seen = 1;
  rank (a);
  g_assert_false (has_stop (of_kind (a, SPELCH_BIT_DOWN_CUT), SPELCH_STOP_PUSHED_OFF));
  g_assert_cmpint (better_of (a, SPELCH_BIT_UP_CUT, SPELCH_BIT_DOWN_CUT), ==, SPELCH_BIT_DOWN_CUT);
}

static void
test_hand_held (Advice *a, gconstpointer unused)
{
  rank (a);
  g_assert_cmpint (of_kind (a, SPELCH_BIT_UP_CUT)->plan.seats[0].pair, ==, SPELCH_PAIR_BASE_BOARD);
  g_assert_true (has_reason (of_kind (a, SPELCH_BIT_UP_CUT), SPELCH_REASON_PRESSES_DOWN));
  g_assert_true (has_reason (of_kind (a, SPELCH_BIT_DOWN_CUT), SPELCH_REASON_LIFTS));
  for (int kind = 0; kind < 4; kind++) /* under 8 degrees there is neither up nor down */
    a->bits[kind].helix_deg = 0;
  rank (a);
  g_assert_false (has_reason (of_kind (a, SPELCH_BIT_UP_CUT), SPELCH_REASON_PRESSES_DOWN));
  g_assert_false (has_reason (of_kind (a, SPELCH_BIT_DOWN_CUT), SPELCH_REASON_LIFTS));
}

/* ---- Far face with a down-cut: only on a spoilboard or backer ---- */

static void
test_far_face (Advice *a, gconstpointer unused)
{
  SpelchMachine *machine = &a->demo.part->machine;
  rank (a);
  g_assert_true (of_kind (a, SPELCH_BIT_DOWN_CUT)->meets);
  machine->spoilboard = SPELCH_SPOILBOARD_CUT_HERE_BEFORE;
  rank (a);
  g_assert_false (of_kind (a, SPELCH_BIT_DOWN_CUT)->meets);
  g_assert_true (has_reason (of_kind (a, SPELCH_BIT_DOWN_CUT), SPELCH_REASON_TEARS));
  a->demo.cut->backer = spelch_length_mm (6);
  rank (a);
  g_assert_true (of_kind (a, SPELCH_BIT_DOWN_CUT)->meets);
  a->k.backing_points = 0;
  rank (a);
  g_assert_false (of_kind (a, SPELCH_BIT_DOWN_CUT)->meets);
}

/* ---- Straight bit: where looks don't matter; fine in MDF ---- */

static void
test_straight (Advice *a, gconstpointer unused)
{
  rank (a);
  g_assert_false (of_kind (a, SPELCH_BIT_STRAIGHT)->meets);
  a->demo.cut->seen_a = a->demo.cut->seen_b = false;
  rank (a);
  g_assert_true (of_kind (a, SPELCH_BIT_STRAIGHT)->meets);

  take (a, "straight-mdf");
  rank (a);
  g_assert_true (of_kind (a, SPELCH_BIT_STRAIGHT)->meets);
  a->k.shear[SPELCH_FACING_BOARD].neutral = 1;
  rank (a);
  g_assert_false (of_kind (a, SPELCH_BIT_STRAIGHT)->meets);
}

/* ---- When in doubt: a test strip ---- */

/* A finishing pass hides tears only as deep as it cuts, and how deep they are isn't known. */
static void
test_strip (Advice *a, gconstpointer unused)
{
  const SpelchNumbers mm = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };
  for (int finishing = 0; finishing < 2; finishing++)
    {
      a->demo.cut->held.allowance_held = finishing;
      a->demo.cut->held.allowance = spelch_length_mm (finishing ? 0.5 : 0);
      demo_plan_bit (&a->demo, &a->bits[SPELCH_BIT_COMPRESSION]);
      g_auto (GStrv) why = spelch_words_edge_why (&a->demo.plan, SPELCH_SIDE_MOTOR, &mm);
      g_autofree char *all = g_strjoinv (" ", why);
      g_assert_true ((strstr (all, "test strip") != NULL) == finishing);
    }
}

#define ADVICE(name, cut, test) g_test_add ("/advice/" name, Advice, cut, set_up, test, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADVICE ("near-face-seen", "near-face-plywood", test_near_face_seen);
  ADVICE ("compression-shallow", "compression-shallow", test_compression_shallow);
  ADVICE ("compression-deep", "compression-deep", test_compression_deep);
  ADVICE ("mortise", "blind-mortise", test_mortise);
  ADVICE ("deep-slot", "deep-slot", test_deep_slot);
  ADVICE ("through-mortise", "through-mortise", test_through_mortise);
  ADVICE ("dado-figured", "dado-figured", test_dado_figured);
  ADVICE ("dado-while-sharp", "dado-straight-grained", test_dado_while_sharp);
  ADVICE ("small-piece", "small-piece", test_small_piece);
  ADVICE ("table", "router-table", test_table);
  ADVICE ("hand-held", "hand-held", test_hand_held);
  ADVICE ("far-face", "far-face", test_far_face);
  ADVICE ("straight", "straight-hidden", test_straight);
  ADVICE ("test-strip", "test-strip", test_strip);
  return g_test_run ();
}

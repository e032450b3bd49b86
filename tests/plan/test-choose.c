/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Choosing a bit: the order, what stays held, and the reasons with their sentences.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "plan/words-choose.h"

#include <math.h>
#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

static GPtrArray *
rank_starter_set (const Demo *demo)
{
  guint n;
  const SpelchBit *bits = spelch_shop_bits (&n);
  return spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, bits, n);
}

static const SpelchChoice *
choice_of (const GPtrArray *ranking, const char *id, SpelchFace way_up)
{
  guint n;
  const SpelchBit *bits = spelch_shop_bits (&n);
  for (guint i = 0; i < ranking->len; i++)
    {
      const SpelchChoice *choice = ranking->pdata[i];
      if (g_str_equal (bits[choice->bit].id, id) && choice->way_up == way_up && !choice->pinned)
        return choice;
    }
  g_error ("%s isn't ranked", id);
}

static const SpelchReason *
reason_of (const SpelchChoice *choice, SpelchReasonKind kind)
{
  for (guint i = 0; i < choice->n_reasons; i++)
    if (choice->reasons[i].kind == kind)
      return &choice->reasons[i];
  return NULL;
}

/* How good a choice is as decided: 0 may be cut and meets, 1 may be cut, 2 may not. */
static int
class_of (const SpelchChoice *choice)
{
  return choice->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT ? 2 : choice->meets ? 0 : 1;
}

/* Two minutes for a change of the bit within the cut. */
static double
whole_time (const SpelchChoice *choice)
{
  return choice->plan.time_s + (choice->scorer >= 0 ? 120 : 0);
}

static void
test_order (Demo *demo, gconstpointer unused)
{
  guint n;
  spelch_shop_bits (&n);
  for (guint cut = 0; cut < demo->part->n_cuts; cut++)
    {
      demo_take_cut (demo, demo->part->cuts[cut].id);
      g_autoptr (GPtrArray) ranking = rank_starter_set (demo);
      guint plain = 0;
      for (guint i = 0; i < ranking->len; i++)
        plain += !((const SpelchChoice *)ranking->pdata[i])->pinned;
      g_assert_cmpuint (plain, ==, demo->cut->through ? 2 * n : n);
      for (guint i = 1; i < ranking->len; i++)
        {
          const SpelchChoice *a = ranking->pdata[i - 1], *b = ranking->pdata[i];
          g_assert_cmpint (class_of (a), <=, class_of (b));
          if (class_of (a) == 1 && class_of (b) == 1)
            g_assert_cmpint (a->seen * 10 + a->hidden, <=, b->seen * 10 + b->hidden);
          bool bend = a->plan.deflection_mm > a->plan.deflection_limit_mm
                      || b->plan.deflection_mm > b->plan.deflection_limit_mm;
          if (class_of (a) == 0 && class_of (b) == 0 && !bend)
            g_assert_cmpfloat (whole_time (a), <=, whole_time (b) + 0.1);
        }
    }
}

/* What may be cut is recommended; what may not never is, though it is all there is. */
static void
test_best (Demo *demo, gconstpointer unused)
{
  g_autoptr (GPtrArray) ranking = rank_starter_set (demo);
  const SpelchChoice *best = spelch_choose_best (ranking);
  g_assert_nonnull (best);
  g_assert_true (best == ranking->pdata[0]);
  g_assert_true (best->meets);

  SpelchBit left = *demo_bit ("compression-6.35x22");
  left.hand = SPELCH_HAND_LEFT;
  g_autoptr (GPtrArray) none = spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, &left, 1);
  g_assert_cmpuint (none->len, ==, 2);
  g_assert_null (spelch_choose_best (none));
  const SpelchReason *reason = reason_of (none->pdata[0], SPELCH_REASON_STOP);
  g_assert_nonnull (reason);
  g_assert_cmpint (reason->stop.kind, ==, SPELCH_STOP_HAND);
  g_autoptr (GPtrArray) empty = spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, NULL, 0);
  g_assert_null (spelch_choose_best (empty));
}

/* Depths, speed and feed were held for the accepted bit; how to enter was decided for the cut. */
static void
test_what_stays_held (Demo *demo, gconstpointer unused)
{
  demo_hold_first_pass (demo, 9.2);
  demo->cut->held.speed_rpm = 16000;
  demo->cut->held.feed_mm_min = 2000;
  demo->cut->held.overcut_held = demo->cut->held.allowance_held = true;
  demo->cut->held.entry_held = true;
  demo->cut->held.entry = SPELCH_ENTRY_RAMP;
  demo->cut->held.entry_deg = 2;
  g_strlcpy (demo->cut->bit, "compression-6.35x22", sizeof demo->cut->bit);

  SpelchCut own = spelch_choose_cut (demo->cut, demo_bit ("compression-6.35x22"), SPELCH_FACE_B);
  g_assert_cmpint (own.way_up, ==, SPELCH_FACE_B);
  g_assert_cmpmem (&own.held, sizeof own.held, &demo->cut->held, sizeof own.held);
  SpelchCut other = spelch_choose_cut (demo->cut, demo_bit ("compression-8x28"), SPELCH_FACE_A);
  g_assert_cmpuint (other.held.n_passes, ==, 0);
  g_assert_false (other.held.overcut_held || other.held.allowance_held);
  g_assert_cmpfloat (other.held.speed_rpm + other.held.feed_mm_min, ==, 0);
  g_assert_true (other.held.entry_held);
  g_assert_cmpint (other.held.entry, ==, SPELCH_ENTRY_RAMP);
  g_assert_cmpfloat (other.held.entry_deg, ==, 2);
}

/* The demo's board is 18 mm, an arris layer 1.3 mm; a compression bit with 15.9 mm of up-shear can't be deep
 * enough in a dado of 9 mm. Its sentence names both lengths. */
static void
test_tip_too_long (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  g_autoptr (GPtrArray) ranking = rank_starter_set (demo);
  const SpelchChoice *choice = choice_of (ranking, "compression-12.7x35", SPELCH_FACE_A);
  const SpelchReason *reason = reason_of (choice, SPELCH_REASON_TIP_TOO_LONG);
  g_assert_nonnull (reason);
  g_assert_cmpfloat (reason->value, ==, 15.9);
  g_assert_cmpfloat (reason->limit, >, 5);
  g_assert_cmpfloat (reason->limit, <, 9 - demo->plan.near_layer);
  g_assert_nonnull (reason_of (choice, SPELCH_REASON_TEARS));
  g_autofree char *said = spelch_words_reason (choice, reason, &MM);
  g_assert_nonnull (strstr (said, "15.9 mm of up-shear"));
  g_assert_nonnull (strstr (said, "or less"));
  g_assert_null (
      reason_of (choice_of (ranking, "short-tip-9.5x25", SPELCH_FACE_A), SPELCH_REASON_TIP_TOO_LONG));
}

static void
test_reasons (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  g_autoptr (GPtrArray) ranking = rank_starter_set (demo);
  const SpelchChoice *down = choice_of (ranking, "down-cut-9.5x25", SPELCH_FACE_A);
  const SpelchChoice *up = choice_of (ranking, "up-cut-8x32", SPELCH_FACE_A);
  const SpelchChoice *plain = choice_of (ranking, "straight-8x25", SPELCH_FACE_A);
  const SpelchChoice *wide = choice_of (ranking, "straight-19x32", SPELCH_FACE_A);
  g_assert_nonnull (reason_of (down, SPELCH_REASON_PRESSES_IN));
  g_assert_nonnull (reason_of (down, SPELCH_REASON_PRESSES_DOWN));
  g_assert_nonnull (reason_of (down, SPELCH_REASON_PACKS_CHIPS));
  g_assert_nonnull (reason_of (up, SPELCH_REASON_CARRIES_UP));
  g_assert_nonnull (reason_of (up, SPELCH_REASON_LIFTS));
  g_assert_nonnull (reason_of (up, SPELCH_REASON_TEARS));
  g_assert_null (reason_of (plain, SPELCH_REASON_CARRIES_UP));
  g_assert_null (reason_of (plain, SPELCH_REASON_PRESSES_IN));
  g_assert_cmpint (reason_of (wide, SPELCH_REASON_STOP)->stop.kind, ==, SPELCH_STOP_TOO_WIDE);
}

/* Reasons are read off the plan: with edges as good as straight, a bit that is still called an up-cut neither
 * carries chips up nor lifts. */
static void
test_kind_decides_nothing (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  SpelchBit bit = *demo_bit ("up-cut-8x32");
  bit.helix_deg = 4;
  g_autoptr (GPtrArray) ranking
      = spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, &bit, 1);
  g_assert_null (reason_of (ranking->pdata[0], SPELCH_REASON_CARRIES_UP));
  g_assert_cmpint (((SpelchChoice *)ranking->pdata[0])->plan.edges[0].load, ==, SPELCH_LOAD_NEUTRAL);
}

/* What costs most is named: the pull of an up-cut, a straight bit's not pressing, a blunt edge. */
static void
test_why_it_tears (Demo *demo, gconstpointer unused)
{
  demo_take_cut (demo, "shelf-dado");
  g_autoptr (GPtrArray) ranking = rank_starter_set (demo);
  const SpelchChoice *up = choice_of (ranking, "up-cut-8x32", SPELCH_FACE_A);
  const SpelchChoice *plain = choice_of (ranking, "straight-8x25", SPELCH_FACE_A);
  g_autofree char *pulls = spelch_words_reason (up, reason_of (up, SPELCH_REASON_TEARS), &MM);
  g_autofree char *spares = spelch_words_reason (plain, reason_of (plain, SPELCH_REASON_TEARS), &MM);
  g_assert_true (g_str_has_prefix (pulls, "Pulls the show face on the motor side out: "));
  g_assert_true (g_str_has_prefix (spares, "Doesn't press the show face on the motor side in: "));

  SpelchBit dull = *demo_bit ("down-cut-9.5x25");
  dull.wear = SPELCH_WEAR_DULL;
  g_autoptr (GPtrArray) one = spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, &dull, 1);
  const SpelchChoice *blunt = one->pdata[0];
  g_autofree char *wears = spelch_words_reason (blunt, reason_of (blunt, SPELCH_REASON_TEARS), &MM);
  g_assert_cmpstr (wears, ==,
                   "Its blunt edge spoils the show face on the motor side: fuzzy grain; clean is accepted.");
}

/* Every reason of every choice for every cut says something, with no format left over. */
static void
test_words (Demo *demo, gconstpointer unused)
{
  for (guint cut = 0; cut < demo->part->n_cuts; cut++)
    {
      demo_take_cut (demo, demo->part->cuts[cut].id);
      g_autoptr (GPtrArray) ranking = rank_starter_set (demo);
      for (guint i = 0; i < ranking->len; i++)
        {
          const SpelchChoice *choice = ranking->pdata[i];
          bool against = false;
          for (guint r = 0; r < choice->n_reasons; r++)
            {
              g_autofree char *said = spelch_words_reason (choice, &choice->reasons[r], &MM);
              g_assert_true (g_str_has_suffix (said, "."));
              g_assert_true (isfinite (choice->reasons[r].value) && isfinite (choice->reasons[r].limit));
              against |= !spelch_reason_is_for (choice->reasons[r].kind);
              g_assert_false (against && spelch_reason_is_for (choice->reasons[r].kind));
            }
          g_assert_true (against || class_of (choice) == 0);
        }
    }
}

/* Better, as decided, of two choices of different lists; ties in time count as equal. */
static bool
is_better (const SpelchChoice *a, const SpelchChoice *b)
{
  if (class_of (a) != class_of (b))
    return class_of (a) < class_of (b);
  if (class_of (a) == 1 && a->seen * 10 + a->hidden != b->seen * 10 + b->hidden)
    return a->seen * 10 + a->hidden < b->seen * 10 + b->hidden;
  return class_of (a) == 0 && a->plan.deflection_mm <= a->plan.deflection_limit_mm
         && b->plan.deflection_mm <= b->plan.deflection_limit_mm && whole_time (a) < whole_time (b) - 0.1;
}

/* Taking a bit out of the drawer never improves the best, and what is recommended may be cut. */
static void
test_fewer_bits (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20260601);
  guint n, boards, machines;
  const SpelchBit *bits = spelch_shop_bits (&n);
  const SpelchBoard *board = spelch_shop_boards (&boards);
  const SpelchMachine *machine = spelch_shop_machines (&machines);
  guint fewer = 0;
  for (int i = 0; i < 60; i++)
    {
      g_autoptr (SpelchPart) demo = spelch_shop_demo ();
      g_autoptr (SpelchPart) part = spelch_part_copy (demo);
      part->board = board[g_rand_int_range (random, 0, (int)boards)];
      part->machine = machine[g_rand_int_range (random, 0, (int)machines)];
      part->accepted_seen = g_rand_int_range (random, 1, 4);
      const SpelchCut *cut = &part->cuts[g_rand_int_range (random, 0, (int)part->n_cuts)];
      g_autoptr (GPtrArray) all = spelch_choose_rank (spelch_shop_constants (), part, cut, bits, n);
      const SpelchChoice *best = spelch_choose_best (all);
      if (best == NULL)
        continue;
      g_assert_cmpint (best->plan.verdict, !=, SPELCH_VERDICT_DO_NOT_CUT);
      g_assert_null (reason_of (best, SPELCH_REASON_STOP));
      g_autoptr (GArray) others = g_array_new (FALSE, FALSE, sizeof (SpelchBit));
      for (guint b = 0; b < n; b++)
        if (b != best->bit)
          g_array_append_val (others, bits[b]);
      g_autoptr (GPtrArray) left = spelch_choose_rank (spelch_shop_constants (), part, cut,
                                                       (const SpelchBit *)(void *)others->data, others->len);
      const SpelchChoice *next = spelch_choose_best (left);
      g_assert_false (next != NULL && is_better (next, best));
      fewer++;
    }
  g_assert_cmpuint (fewer, >, 20);
}

/* Both faces seen: an up-cut tears the near one, a down-cut the far one. Scored with the down-cut first, the
 * up-cut leaves both clean (common practice, no source). A compression bit does that alone, and no bit has to
 * be changed. */
static void
test_two_bits (Demo *demo, gconstpointer unused)
{
  SpelchBit bits[]
      = { *demo_bit ("up-cut-6.35x25"), *demo_bit ("down-cut-6.35x25"), *demo_bit ("compression-6.35x22") };
  demo->cut->seen_b = true;
  g_autoptr (GPtrArray) ranking
      = spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, bits, 2);
  const SpelchChoice *best = spelch_choose_best (ranking);
  g_assert_cmpuint (best->bit, ==, 0);
  g_assert_cmpint (best->scorer, ==, 1);
  g_assert_true (best->pinned && best->meets);
  g_assert_cmpint (best->seen, ==, 1);

  /* What is chosen can be held: then the plan is the same. */
  *demo->cut = spelch_choose_chosen (demo->cut, bits, best);
  spelch_part_put_bit (demo->part, &bits[1]);
  demo_plan_bit (demo, &bits[0]);
  g_assert_cmpint (demo->plan.pass_plan, ==, SPELCH_PASS_PLAN_SCORED);
  g_assert_cmpfloat (demo->plan.time_s, ==, best->plan.time_s);

  g_autoptr (GPtrArray) alone = spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, bits, 1);
  g_assert_false (spelch_choose_best (alone)->meets);
  g_autoptr (GPtrArray) all = spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, bits, 3);
  g_assert_cmpuint (spelch_choose_best (all)->bit, ==, 2);
  g_assert_cmpint (spelch_choose_best (all)->scorer, ==, -1);
}

/* With the board turned over the show face lies on the spoilboard. A straight bit neither presses nor pulls
 * it: 1 point, which a fresh spoilboard takes away, and so it comes out clean, by analogy with drilling over
 * a backing. Where the spoilboard was cut before it doesn't, and the bit is no longer among those that do. */
static void
test_backing_decides (Demo *demo, gconstpointer unused)
{
  g_assert_cmpint (demo->part->machine.spoilboard, ==, SPELCH_SPOILBOARD_FRESH);
  g_autoptr (GPtrArray) fresh = rank_starter_set (demo);
  const SpelchChoice *straight = choice_of (fresh, "straight-12.7x32", SPELCH_FACE_B);
  const SpelchReason *backed = reason_of (straight, SPELCH_REASON_BACKED);
  g_assert_true (straight->meets);
  g_assert_nonnull (backed);
  g_autofree char *sentence = spelch_words_reason (straight, backed, &MM);
  g_assert_nonnull (strstr (sentence, "show face on the far side"));
  demo->part->machine.spoilboard = SPELCH_SPOILBOARD_CUT_HERE_BEFORE;
  g_autoptr (GPtrArray) old = rank_starter_set (demo);
  straight = choice_of (old, "straight-12.7x32", SPELCH_FACE_B);
  g_assert_false (straight->meets);
  g_assert_null (reason_of (straight, SPELCH_REASON_BACKED));
  g_assert_cmpint (choice_of (old, "short-tip-9.5x25", SPELCH_FACE_B)->seen, ==, 1);
}

/* A 4 mm bit steps 8 mm and has 8 mm of up-shear: only a last pass of full depth lifts that past the face. */
static void
test_finishing_is_chosen (Demo *demo, gconstpointer unused)
{
  SpelchBit bit = *demo_bit ("compression-6.35x22");
  bit.diameter = spelch_length_mm (4);
  bit.up_shear = spelch_length_mm (8);
  g_autoptr (GPtrArray) ranking
      = spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, &bit, 1);
  const SpelchChoice *best = spelch_choose_best (ranking);
  g_assert_nonnull (best);
  g_assert_true (best->pinned);
  g_assert_cmpint (best->pass_plan, ==, SPELCH_PASS_PLAN_FINISHED);
  g_assert_cmpint (best->seen, ==, 1);
  /* With little enough up-shear the plain passes do. */
  bit.up_shear = spelch_length_mm (4);
  g_autoptr (GPtrArray) shorter
      = spelch_choose_rank (spelch_shop_constants (), demo->part, demo->cut, &bit, 1);
  g_assert_false (spelch_choose_best (shorter)->pinned);
}

/* Where no bit may be used, those that the machine can't take come last: changing the cut may mend the
 * others.
 */
static void
test_clamped_first (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "trim-router");
  demo_take_cut (demo, "back-rabbet");
  demo->cut->kept = SPELCH_WALL_RIGHT; /* a climb cut fed by hand */
  g_autoptr (GPtrArray) ranking = rank_starter_set (demo);
  guint unfit = 0;
  g_assert_null (spelch_choose_best (ranking));
  for (guint i = 0; i < ranking->len; i++)
    {
      const SpelchChoice *choice = ranking->pdata[i];
      bool fits = !spelch_plan_has_stop (&choice->plan, SPELCH_STOP_COLLET_SIZE);
      g_assert_false (fits && unfit > 0);
      unfit += !fits;
    }
  g_assert_cmpuint (unfit, >, 0);
  g_assert_cmpuint (unfit, <, ranking->len);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add ("/choose/order", Demo, NULL, demo_set_up, test_order, demo_tear_down);
  g_test_add ("/choose/best", Demo, NULL, demo_set_up, test_best, demo_tear_down);
  g_test_add ("/choose/what-stays-held", Demo, NULL, demo_set_up, test_what_stays_held, demo_tear_down);
  g_test_add ("/choose/tip-too-long", Demo, NULL, demo_set_up, test_tip_too_long, demo_tear_down);
  g_test_add ("/choose/reasons", Demo, NULL, demo_set_up, test_reasons, demo_tear_down);
  g_test_add ("/choose/kind-decides-nothing", Demo, NULL, demo_set_up, test_kind_decides_nothing,
              demo_tear_down);
  g_test_add ("/choose/why-it-tears", Demo, NULL, demo_set_up, test_why_it_tears, demo_tear_down);
  g_test_add ("/choose/words", Demo, NULL, demo_set_up, test_words, demo_tear_down);
  g_test_add ("/choose/backing", Demo, NULL, demo_set_up, test_backing_decides, demo_tear_down);
  g_test_add ("/choose/two-bits", Demo, NULL, demo_set_up, test_two_bits, demo_tear_down);
  g_test_add ("/choose/finishing", Demo, NULL, demo_set_up, test_finishing_is_chosen, demo_tear_down);
  g_test_add ("/choose/clamped-first", Demo, NULL, demo_set_up, test_clamped_first, demo_tear_down);
  g_test_add_func ("/choose/fewer-bits", test_fewer_bits);
  return g_test_run ();
}

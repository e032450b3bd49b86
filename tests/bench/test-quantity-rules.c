/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Quantities as values: what the marks of the demo's cuts stand for, how far they go, and that setting one
 * leaves the others where they are.
 */
#include "bench/edits.h"
#include "bench/mark-words.h"
#include "bench/quantity-rules.h"
#include "files/shop-data.h"

#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };
static const SpelchQuantityId PASS_1 = { SPELCH_MARK_PASS, 1 };
static const SpelchQuantityId FLOOR = { SPELCH_MARK_PASS, 0 };
static const SpelchQuantityId OVERCUT = { SPELCH_MARK_OVERCUT, 0 };
static const SpelchQuantityId THICKNESS = { SPELCH_MARK_THICKNESS, 0 };
static const SpelchQuantityId ALLOWANCE = { SPELCH_MARK_ALLOWANCE, 0 };

/* A part's cut, planned. Takes the part. */
typedef struct
{
  SpelchPart *part;
  SpelchBit bit;
  SpelchCut made;
  SpelchPlan plan;
  SpelchPlanned planned;
} Fixture;

static void
plan (Fixture *f, SpelchPart *part, guint cut)
{
  int bit = spelch_part_find_bit (part, part->cuts[cut].bit);
  SpelchPart *before = f->part;
  f->part = part;
  /* A cut that has accepted none is tried with the part's first. */
  f->bit = part->bits[MAX (bit, 0)];
  f->made = part->cuts[cut];
  spelch_plan_make (spelch_shop_constants (), part, &f->made, &f->bit, &f->plan);
  f->planned = (SpelchPlanned){ part, cut, &f->made, &f->bit, &f->plan };
  g_clear_pointer (&before, spelch_part_unref);
}

static void
start (Fixture *f, const char *cut)
{
  SpelchPart *demo = spelch_shop_demo ();
  *f = (Fixture){ 0 };
  plan (f, demo, (guint)spelch_part_find_cut (demo, cut));
}

static void
end (Fixture *f)
{
  g_clear_pointer (&f->part, spelch_part_unref);
}

static void
set (Fixture *f, SpelchQuantityId id, double mm)
{
  SpelchLength length = spelch_length_mm (mm);
  plan (f, spelch_quantity_set (&f->planned, id, &length), f->planned.cut);
}

static void
test_lists (void)
{
  Fixture f;
  SpelchQuantityId ids[SPELCH_MAX_QUANTITIES];
  start (&f, "outline");
  guint n = spelch_quantity_list (&f.planned, ids, SPELCH_MAX_QUANTITIES);
  g_assert_cmpuint (n, ==, f.plan.n_passes - 1 + 3);
  g_assert_true (spelch_quantity_same (ids[0], PASS_1));
  g_assert_true (spelch_quantity_same (ids[n - 3], OVERCUT));
  g_assert_true (spelch_quantity_same (ids[n - 2], THICKNESS));
  g_assert_true (spelch_quantity_same (ids[n - 1], ALLOWANCE));
  g_assert_cmpuint (spelch_quantity_pass (&f.planned, OVERCUT), ==, f.plan.n_passes);
  g_assert_cmpuint (spelch_quantity_list (&f.planned, ids, 2), ==, 2);
  end (&f);

  start (&f, "shelf-dado");
  n = spelch_quantity_list (&f.planned, ids, SPELCH_MAX_QUANTITIES);
  g_assert_true (spelch_quantity_same (ids[n - 3], FLOOR));
  g_assert_cmpuint (spelch_quantity_pass (&f.planned, FLOOR), ==, f.plan.n_passes);
  g_assert_cmpfloat (spelch_quantity_read (&f.planned, FLOOR).value, ==, f.plan.through_depth);
  end (&f);
}

static void
test_setting_a_pass (void)
{
  Fixture f;
  start (&f, "outline");
  guint n = f.plan.n_passes;
  double last = f.plan.passes[n - 1].tip_mm;
  g_assert_false (spelch_quantity_read (&f.planned, PASS_1).held);
  set (&f, PASS_1, 6.0);
  SpelchReading reading = spelch_quantity_read (&f.planned, PASS_1);
  g_assert_cmpfloat (reading.value, ==, 6.0);
  g_assert_true (reading.held);
  g_assert_cmpuint (f.plan.n_passes, ==, n);
  g_assert_cmpfloat_with_epsilon (f.plan.passes[n - 1].tip_mm, last, 1e-9);
  /* Up-shear 6.35 mm and a face ply of 1.3 mm: 6 mm leaves the ply in the up-shear (geometry). */
  g_assert_cmpint (spelch_plan_worst (&f.plan, SPELCH_SIDE_MOTOR)->grade, >, 3);
  plan (&f, spelch_quantity_release (&f.planned, PASS_1), f.planned.cut);
  g_assert_false (spelch_quantity_read (&f.planned, PASS_1).held);
  g_assert_cmpint (spelch_plan_worst (&f.plan, SPELCH_SIDE_MOTOR)->grade, ==, 1);
  end (&f);
}

/* Moving one quantity leaves the others where they are. */
static void
test_others_stay (void)
{
  const SpelchQuantityId ids[] = { PASS_1, OVERCUT, ALLOWANCE };
  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      Fixture f;
      double before[G_N_ELEMENTS (ids)];
      start (&f, "outline");
      set (&f, PASS_1, 9.0);
      for (guint k = 0; k < G_N_ELEMENTS (ids); k++)
        before[k] = spelch_quantity_read (&f.planned, ids[k]).value;
      set (&f, ids[i], before[i] + 0.3);
      for (guint k = 0; k < G_N_ELEMENTS (ids); k++)
        g_assert_cmpfloat_with_epsilon (spelch_quantity_read (&f.planned, ids[k]).value,
                                        before[k] + (k == i ? 0.3 : 0), 1e-9);
      end (&f);
    }
}

static void
test_typed_words_stay (void)
{
  Fixture f;
  SpelchLength typed;
  start (&f, "outline");
  g_assert_true (spelch_length_parse ("3/8 in", SPELCH_UNIT_MM, &typed, NULL));
  plan (&f, spelch_quantity_set (&f.planned, PASS_1, &typed), f.planned.cut);
  g_assert_cmpstr (spelch_quantity_read (&f.planned, PASS_1).typed.typed, ==, "3/8 in");
  /* Also when another quantity moves. */
  set (&f, OVERCUT, 0.4);
  g_assert_cmpstr (spelch_quantity_read (&f.planned, PASS_1).typed.typed, ==, "3/8 in");
  end (&f);
}

/* Values anywhere between the limits give a part without fault, in which the value stands. */
static void
test_between_limits (void)
{
  const SpelchQuantityId ids[] = { PASS_1, OVERCUT, THICKNESS, ALLOWANCE };
  for (guint i = 0; i < 400; i++)
    {
      Fixture f;
      start (&f, "outline");
      SpelchQuantityId id = ids[i % G_N_ELEMENTS (ids)];
      SpelchReading reading = spelch_quantity_read (&f.planned, id);
      g_assert_cmpfloat (reading.lower, <=, reading.value);
      g_assert_cmpfloat (reading.value, <=, reading.upper);
      double mm = i < 8 ? (i < 4 ? reading.lower : reading.upper)
                        : g_test_rand_double_range (reading.lower, reading.upper);
      set (&f, id, mm);
      g_autofree char *fault = spelch_part_fault (f.part);
      g_assert_null (fault);
      g_assert_cmpfloat_with_epsilon (spelch_quantity_read (&f.planned, id).value, mm, 1e-9);
      end (&f);
    }
}

static void
assert_stop (const Fixture *f, SpelchQuantityId id, bool upper, const char *word)
{
  g_autofree char *stop = spelch_quantity_stop (&f->planned, id, upper, &MM);
  g_assert_true (g_str_has_prefix (stop, "Stops here: "));
  g_assert_true (g_str_has_suffix (stop, "."));
  if (strstr (stop, word) == NULL)
    g_error ("“%s” doesn't say “%s”", stop, word);
}

static void
test_limits_are_named (void)
{
  Fixture f;
  start (&f, "outline");
  double last = f.plan.passes[f.plan.n_passes - 1].tip_mm;
  SpelchReading pass = spelch_quantity_read (&f.planned, PASS_1);
  g_assert_cmpfloat (pass.upper, <, last);
  assert_stop (&f, PASS_1, true, "pass 2 is just below");
  assert_stop (&f, PASS_1, false, "the board's face");
  assert_stop (&f, OVERCUT, false, "pass 1 is just above");
  g_autofree char *reach = spelch_words_length (&MM, f.plan.depth_most);
  assert_stop (&f, OVERCUT, true, reach);
  SpelchReading overcut = spelch_quantity_read (&f.planned, OVERCUT);
  g_assert_cmpfloat_with_epsilon (overcut.upper, f.plan.depth_most - f.plan.thickness, 1e-9);
  assert_stop (&f, THICKNESS, true, "another board");
  assert_stop (&f, ALLOWANCE, true, "half the bit's width");
  end (&f);
}

static void
test_words (void)
{
  Fixture f;
  start (&f, "outline");
  set (&f, PASS_1, 6.0);
  g_autofree char *label = spelch_mark_label (&f.planned, PASS_1, &MM);
  const char *grade = spelch_mark_grade (f.part, &f.plan, SPELCH_SIDE_MOTOR);
  g_autofree char *wanted = g_strdup_printf ("Pass 1, 6.0 mm, show face %s", grade);
  g_assert_cmpstr (label, ==, wanted);
  g_autofree char *pill = spelch_mark_pill (&f.planned, PASS_1, &MM);
  g_assert_cmpstr (pill, ==, "1 · 6.0 mm");
  g_autofree char *thickness = spelch_mark_label (&f.planned, THICKNESS, &MM);
  g_assert_cmpstr (thickness, ==, "Thickness, 18.0 mm");
  end (&f);
}

static void
test_edits (void)
{
  g_autoptr (SpelchPart) demo = spelch_shop_demo ();
  guint n = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  const SpelchBit *other = NULL;
  for (guint i = 0; i < n && other == NULL; i++)
    if (spelch_part_find_bit (demo, bits[i].id) < 0)
      other = &bits[i];
  g_autoptr (SpelchPart) chosen = spelch_edit_bit (demo, 0, other);
  g_assert_cmpstr (chosen->cuts[0].bit, ==, other->id);
  g_assert_cmpint (spelch_part_find_bit (chosen, other->id), >=, 0);
  g_assert_cmpuint (chosen->n_bits, ==, demo->n_bits + 1);
  g_assert_cmpstr (demo->cuts[0].bit, !=, other->id); /* the earlier part is as it was */
  g_autoptr (SpelchPart) turned = spelch_edit_turn_over (demo, 0);
  g_assert_cmpint ((int)turned->cuts[0].way_up, !=, (int)demo->cuts[0].way_up);
}

/* A scoring pass has a mark of its own: moving it changes the held depth of scoring and no other pass. */
static void
test_scoring (void)
{
  Fixture f;
  start (&f, "outline");
  guint n_bits = 0, cut = f.planned.cut;
  const SpelchBit *bits = spelch_shop_bits (&n_bits);
  guint down = 0;
  while (down < n_bits && bits[down].kind != SPELCH_BIT_DOWN_CUT)
    down++;
  g_assert_cmpuint (down, <, n_bits);
  SpelchPart *part = spelch_part_copy (f.part);
  spelch_part_put_bit (part, &bits[down]);
  part->cuts[cut].held = (SpelchHeld){ .plan_held = true, .plan = SPELCH_PASS_PLAN_SCORED };
  g_strlcpy (part->cuts[cut].held.score_bit, bits[down].id, SPELCH_ID_SIZE);
  plan (&f, part, cut);
  g_assert_true (spelch_quantity_scores (&f.planned, PASS_1));
  g_assert_false (spelch_quantity_scores (&f.planned, OVERCUT));
  g_assert_false (spelch_quantity_read (&f.planned, PASS_1).held);
  g_autofree char *label = spelch_mark_label (&f.planned, PASS_1, &MM);
  g_assert_true (g_str_has_prefix (label, "Scoring pass 1, "));

  set (&f, PASS_1, 1.6);
  g_assert_cmpfloat (f.part->cuts[cut].held.score.mm, ==, 1.6);
  g_assert_cmpuint (f.part->cuts[cut].held.n_passes, ==, 0);
  g_assert_cmpfloat_with_epsilon (f.plan.passes[0].tip_mm, 1.6, 1e-9);
  g_assert_cmpuint (f.plan.passes[0].bit, ==, 1);
  g_assert_true (spelch_quantity_read (&f.planned, PASS_1).held);

  plan (&f, spelch_quantity_release (&f.planned, PASS_1), cut);
  g_assert_cmpfloat (f.part->cuts[cut].held.score.mm, ==, 0);
  g_assert_true (f.part->cuts[cut].held.plan_held);
  end (&f);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quantity-rules/lists", test_lists);
  g_test_add_func ("/quantity-rules/setting-a-pass", test_setting_a_pass);
  g_test_add_func ("/quantity-rules/others-stay", test_others_stay);
  g_test_add_func ("/quantity-rules/typed-words-stay", test_typed_words_stay);
  g_test_add_func ("/quantity-rules/between-limits", test_between_limits);
  g_test_add_func ("/quantity-rules/limits-are-named", test_limits_are_named);
  g_test_add_func ("/quantity-rules/words", test_words);
  g_test_add_func ("/quantity-rules/edits", test_edits);
  g_test_add_func ("/quantity-rules/scoring", test_scoring);
  return g_test_run ();
}

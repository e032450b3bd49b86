/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What makes a bit give way less: whether bit or machine has the greater part is told by the shares, and only
 * what helps is named.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "plan/relief.h"
#include "plan/words-why.h"
#include "plan/words.h"

#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

static const char *
no_source (const char *id)
{
  return NULL;
}

static char *
chain_of_feed (Demo *demo, const SpelchBit *bit)
{
  SpelchWhyCase of = { spelch_shop_constants (), no_source, demo->part, demo->cut, bit, &demo->plan, NULL };
  g_auto (GStrv) chain = spelch_words_why (SPELCH_WHY_FEED, &of, &MM);
  return g_strjoinv ("\n", chain);
}

static const SpelchLimit *
binding_of (const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_limits; i++)
    if (plan->limits[i].binding)
      return &plan->limits[i];
  return NULL;
}

/* F/k: 1 mm for each 1500 N, whatever the bit. */
static void
test_shares (Demo *demo, gconstpointer unused)
{
  const struct
  {
    const char *machine, *bit;
    double stiffness;
    bool machine_gives;
  } rows[] = { { "medium-gantry", "up-cut-12.7x38", 1500, true },
               { "light-gantry", "up-cut-6.35x25", 250, true },
               { "heavy-gantry", "up-cut-3.2x12", 5000, false } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      demo_take_machine (demo, rows[i].machine);
      demo_take_cut (demo, "shelf-dado");
      demo->cut->width = spelch_length_mm (18);
      demo_plan_with (demo, rows[i].bit);
      const SpelchPlan *plan = &demo->plan;
      double rigid = plan->deflection_mm - plan->deflection_machine_mm;
      g_assert_cmpint (plan->n_passes, >=, 1);
      g_assert_cmpfloat (plan->deflection_machine_mm, <=, plan->sideways_peak_n / rows[i].stiffness + 1e-9);
      g_assert_cmpfloat (plan->deflection_machine_mm, >, 0);
      g_assert_true (spelch_plan_machine_gives (plan) == rows[i].machine_gives);
      /* the rest is the bit's: as much on a machine that doesn't give */
      demo->cut->held.speed_rpm = plan->speed_rpm;
      demo->cut->held.feed_mm_min = plan->feed_mm_min;
      demo->cut->held.passes_held = true;
      demo->cut->held.n_passes = plan->n_passes - 1;
      for (guint pass = 0; pass + 1 < plan->n_passes; pass++)
        demo->cut->held.passes[pass] = spelch_length_mm (plan->passes[pass].tip_mm);
      demo->part->machine.stiffness_n_mm = 1e9;
      demo_plan_with (demo, rows[i].bit);
      g_assert_cmpfloat_with_epsilon (demo->plan.deflection_mm, rigid, 1e-6);
      g_assert_false (spelch_plan_machine_gives (&demo->plan));
    }
}

/* A thick bit in oak bends next to nothing: no thicker one, nor less of it, would help, while a stiffer
 * machine and shallower passes do. */
static void
test_machine (Demo *demo, gconstpointer unused)
{
  bool helps[SPELCH_N_RELIEFS];
  const SpelchBit *bit = demo_bit ("up-cut-12.7x38");
  demo_take_board (demo, "oak-20");
  demo_take_cut (demo, "shelf-dado");
  demo->cut->depth = spelch_length_mm (12);
  demo->cut->held.passes_held = true;
  demo_plan_bit (demo, bit);
  spelch_relief_find (spelch_shop_constants (), demo->part, demo->cut, bit, &demo->plan, SPELCH_LIMIT_BENDING,
                      helps);
  g_assert_true (helps[SPELCH_RELIEF_PASSES]);
  g_assert_true (helps[SPELCH_RELIEF_MACHINE]);
  g_assert_false (helps[SPELCH_RELIEF_STICK_OUT]);
  g_assert_false (helps[SPELCH_RELIEF_SHORTER]);
  g_assert_false (helps[SPELCH_RELIEF_THICKER]);

  const SpelchLimit *binding = binding_of (&demo->plan);
  g_assert_nonnull (binding);
  g_assert_cmpint (binding->kind, ==, SPELCH_LIMIT_BENDING);
  g_autofree char *headline = spelch_words_limit (&demo->plan);
  g_assert_true (g_str_has_prefix (headline, "The machine's flex "));
  g_autofree char *chain = chain_of_feed (demo, bit);
  g_assert_nonnull (strstr (chain, "The machine has the greater part of that, "));
  g_assert_nonnull (strstr (chain, "It would be freed by shallower passes"));
  g_assert_nonnull (strstr (chain, "a stiffer machine."));
  g_assert_null (strstr (chain, "a thicker bit"));
  g_assert_null (strstr (chain, "stick-out, "));
}

/* A slender bit with much of it sticking out, on a machine that hardly gives. */
static void
test_bit (Demo *demo, gconstpointer unused)
{
  bool helps[SPELCH_N_RELIEFS];
  const SpelchBit *bit = demo_bit ("up-cut-6.35x25");
  demo_take_machine (demo, "heavy-gantry");
  demo->part->machine.stiffness_n_mm *= 10;
  demo_take_board (demo, "oak-20");
  demo_take_cut (demo, "shelf-dado");
  demo->cut->depth = spelch_length_mm (8);
  demo->cut->stick_out = spelch_length_mm (46);
  demo_plan_bit (demo, bit);
  g_assert_false (spelch_plan_machine_gives (&demo->plan));
  spelch_relief_find (spelch_shop_constants (), demo->part, demo->cut, bit, &demo->plan, SPELCH_LIMIT_BENDING,
                      helps);
  g_assert_true (helps[SPELCH_RELIEF_STICK_OUT]);
  g_assert_true (helps[SPELCH_RELIEF_THICKER]);
  g_assert_false (helps[SPELCH_RELIEF_MACHINE]);
  g_assert_false (helps[SPELCH_RELIEF_SHARP]); /* it is sharp */
  /* with no more stick-out than it needs it bends less indeed, at the same speed, feed and passes */
  double before = demo->plan.deflection_mm;
  demo->cut->held.speed_rpm = demo->plan.speed_rpm;
  demo->cut->held.feed_mm_min = demo->plan.feed_mm_min;
  demo->cut->held.passes_held = true;
  demo->cut->held.n_passes = demo->plan.n_passes - 1;
  for (guint i = 0; i + 1 < demo->plan.n_passes; i++)
    demo->cut->held.passes[i] = spelch_length_mm (demo->plan.passes[i].tip_mm);
  demo->cut->stick_out = spelch_length_mm (0);
  demo_plan_bit (demo, bit);
  g_assert_cmpfloat (demo->plan.deflection_mm, <=, before * (1 - SPELCH_RELIEF_LEAST));
}

/* Other limits aren't this one's business. */
static void
test_others (Demo *demo, gconstpointer unused)
{
  bool helps[SPELCH_N_RELIEFS];
  demo_plan_with (demo, demo->cut->bit);
  for (int limit = 0; limit < SPELCH_N_LIMITS; limit++)
    {
      spelch_relief_find (spelch_shop_constants (), demo->part, demo->cut, demo_bit (demo->cut->bit),
                          &demo->plan, (SpelchLimitKind)limit, helps);
      bool any = false;
      for (int i = 0; i < SPELCH_N_RELIEFS; i++)
        any |= helps[i];
      g_assert_true (!any || limit == SPELCH_LIMIT_BENDING || limit == SPELCH_LIMIT_STRESS);
    }
}

/* A first pass set so shallow that the rest is too much at once: one more mends it, and then nothing is said.
 */
static void
test_further_pass (Demo *demo, gconstpointer unused)
{
  demo_hold_first_pass (demo, 5.2);
  demo_plan_with (demo, "up-cut-12.7x38");
  double further = demo->plan.further_pass_mm;
  g_assert_cmpfloat (further, >, 5.2);
  g_assert_cmpfloat (further, <, demo->plan.passes[demo->plan.n_passes - 1].tip_mm);
  g_autofree char *before = spelch_words_limit (&demo->plan);
  g_assert_nonnull (strstr (before, " over its limit, "));
  g_assert_true (g_str_has_suffix (before, ": add a further pass;"));

  demo->cut->held.passes[demo->cut->held.n_passes++] = spelch_length_mm (further);
  demo_plan_with (demo, "up-cut-12.7x38");
  g_assert_cmpfloat (demo->plan.limits[0].share, <=, 1 + 1e-6); /* most used first */
  g_assert_cmpfloat (demo->plan.further_pass_mm, ==, 0);
  g_autofree char *after = spelch_words_limit (&demo->plan);
  g_assert_null (strstr (after, "over its limit"));
}

/* Where one more isn't enough, none is promised. */
static void
test_not_enough (Demo *demo, gconstpointer unused)
{
  demo_take_machine (demo, "light-gantry");
  demo->cut->held.passes_held = true;
  demo_plan_with (demo, "up-cut-12.7x38");
  g_assert_cmpfloat (demo->plan.limits[0].share, >, 1.1);
  g_assert_cmpfloat (demo->plan.further_pass_mm, ==, 0);
  g_autofree char *words = spelch_words_limit (&demo->plan);
  g_assert_null (strstr (words, "further pass"));
}

#define ADD(name, function) g_test_add ("/relief/" name, Demo, NULL, demo_set_up, function, demo_tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("shares", test_shares);
  ADD ("machine", test_machine);
  ADD ("bit", test_bit);
  ADD ("others", test_others);
  ADD ("further-pass", test_further_pass);
  ADD ("further-pass-not-enough", test_not_enough);
  return g_test_run ();
}

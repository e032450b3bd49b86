/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The chains behind the numbers carry their own case's numbers: over random cases one input after the other
 * is changed, and what a chain says changes exactly when a number or a choice in it does. On the demo part
 * each chain names the constants that decided, with value, class and source as data/model.json has them.
 */
#include "on-demo.h"
#include "trial.h"

#include "chance.h"

#include "files/shop-data.h"
#include "plan/words-why.h"

#include <math.h>
#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

static char *
chain_of (const SpelchPart *part, const SpelchCut *cut, const SpelchBit *bit, const SpelchPlan *plan,
          SpelchWhyKind kind)
{
  const SpelchWhyCase of
      = { spelch_shop_constants (), spelch_shop_constant_source, part, cut, bit, plan, NULL };
  g_auto (GStrv) why = spelch_words_why (kind, &of, &MM);
  return g_strjoinv ("\n", why);
}

/* ---- Exactly when a number does ---- */

typedef void (*Change) (Trial *t);

#define CHANGED(name, what)                                                                                  \
  static void name (Trial *t)                                                                                \
  {                                                                                                          \
    what;                                                                                                    \
  }

CHANGED (speed, t->cut.held.speed_rpm *= 0.8)
CHANGED (feed, t->cut.held.feed_mm_min *= 1.3)
CHANGED (wear, t->bit.wear = (SpelchWear)((t->bit.wear + 1) % 4))
CHANGED (edges, t->bit.edges = t->bit.edges % 4 + 1)
CHANGED (diameter, t->bit.diameter = spelch_length_mm (t->bit.diameter.mm * 0.9))
CHANGED (price, t->bit.price += 10)
CHANGED (name, g_strlcpy (t->cut.name, "another name", sizeof t->cut.name))
CHANGED (note, g_strlcpy (t->part->note, "a note", sizeof t->part->note))
CHANGED (quantity, t->cut.quantity += 1)
CHANGED (power, t->part->machine.power_w *= 1.5)
CHANGED (stiff, t->part->machine.stiffness_n_mm *= 2)
CHANGED (accepted, t->part->accepted_seen = t->part->accepted_seen % 5 + 1)
CHANGED (way_up, t->cut.way_up = spelch_face_other (t->cut.way_up))
CHANGED (length, t->cut.length = spelch_length_mm (t->cut.length.mm * 1.5))

static const Change changes[] = { speed, feed,     wear,  edges, diameter, price,  name,
                                  note,  quantity, power, stiff, accepted, way_up, length };

static void
chip_numbers (GString *text, const Trial *t)
{
  const SpelchPlan *p = &t->plan;
  g_string_append_printf (text, "%.0f %.0f %d %.3f %.2f %.2f %.3f %.3f %.0f", p->feed_mm_min, p->speed_rpm,
                          spelch_flute_fewest_edges (&p->flutes), p->feed_per_tooth,
                          p->flutes.diameter + 1e-9, p->engaged_mm + 1e-9, p->chip_max, p->chip_mean,
                          round (p->rubbing_share * 100));
  for (guint i = 0; i < p->n_limits; i++)
    if (p->limits[i].kind == SPELCH_LIMIT_EDGE)
      g_string_append (text, p->chip_max / p->limits[i].share < 0.2 ? " split 1" : " split 2");
}

static void
time_numbers (GString *text, const Trial *t)
{
  const SpelchPlan *p = &t->plan;
  double seconds = p->path_mm / p->feed_mm_min * 60;
  g_autofree char *cutting = spelch_words_time (seconds), *all = spelch_words_time (p->time_s);
  g_autofree char *path = spelch_words_length (&MM, p->path_mm);
  g_autofree char *rest = spelch_words_time (fmax (p->time_s - seconds, 0));
  g_string_append_printf (text, "%u %s %.0f %s", p->n_passes, path, p->feed_mm_min, cutting);
  if (p->time_s - seconds >= 0.5)
    g_string_append_printf (text, " %s %s", rest, all);
  if (*p->scoring.bit != '\0')
    g_string_append_printf (text, " %.0f", p->scoring.time_s);
}

static void
heat_numbers (GString *text, const Trial *t)
{
  const SpelchPlan *p = &t->plan;
  bool straight = p->flutes.helix < SPELCH_NEUTRAL_HELIX_RAD;
  g_string_append_printf (text, "%.0f %.1f %d", p->wall_heat, p->blunting,
                          straight                   ? 0
                          : p->flutes.turn_over <= 0 ? 1
                                                     : 2);
  if (p->cool_feed_mm_min >= 1)
    g_string_append_printf (text, " %.0f %.0f", p->cool_feed_mm_min, p->speed_rpm);
}

static void
bending_numbers (GString *text, const Trial *t)
{
  const SpelchPlan *p = &t->plan;
  g_autofree char *out = spelch_words_length (&MM, p->stick_out_mm);
  g_string_append_printf (text, "%.3f %.2f %d %.0f %s %.0f", p->deflection_mm, p->deflection_limit_mm,
                          MIN (t->part->accepted_seen, 3), p->sideways_peak_n, out,
                          t->part->machine.stiffness_n_mm);
  if (p->deflection_mm > 0)
    g_string_append_printf (text, " %.3f %.3f %d", p->deflection_machine_mm,
                            p->deflection_mm - p->deflection_machine_mm, spelch_plan_machine_gives (p));
  if (p->stress_share > 0)
    g_string_append_printf (text, " %.0f %d", p->stress_mpa, (int)t->bit.body_material);
}

static const struct
{
  SpelchWhyKind kind;
  void (*numbers) (GString *text, const Trial *t);
} told[] = { { SPELCH_WHY_CHIP, chip_numbers },
             { SPELCH_WHY_TIME, time_numbers },
             { SPELCH_WHY_HEAT, heat_numbers },
             { SPELCH_WHY_BENDING, bending_numbers } };

static void
compare (const Trial *before, const Trial *after, guint i)
{
  g_autofree char *old_words
      = chain_of (before->part, &before->cut, &before->bit, &before->plan, told[i].kind);
  g_autofree char *new_words = chain_of (after->part, &after->cut, &after->bit, &after->plan, told[i].kind);
  g_autoptr (GString) old_numbers = g_string_new (NULL);
  g_autoptr (GString) new_numbers = g_string_new (NULL);
  told[i].numbers (old_numbers, before);
  told[i].numbers (new_numbers, after);
  bool alike = g_str_equal (old_words, new_words);
  if (alike != g_str_equal (old_numbers->str, new_numbers->str))
    g_test_message ("%s\n%s\nnow\n%s\n%s", old_numbers->str, old_words, new_numbers->str, new_words);
  g_assert_true (alike == g_str_equal (old_numbers->str, new_numbers->str));
}

static void
check_numbers (Trial *t)
{
  t->cut.held.speed_rpm = 1000 * g_rand_int_range (t->random, 8, 25);
  t->cut.held.feed_mm_min = round (chance_between (t->random, 300, 9000));
  trial_plan (t, &t->plan);
  t->counts = t->plan.n_passes > 0;
  for (gsize i = 0; t->counts && i < G_N_ELEMENTS (changes) && !g_test_failed (); i++)
    {
      Trial other = *t;
      other.part = spelch_part_copy (t->part);
      changes[i](&other);
      trial_plan (&other, &other.plan);
      for (guint k = 0; other.plan.n_passes > 0 && k < G_N_ELEMENTS (told); k++)
        compare (t, &other, k);
      spelch_part_unref (other.part);
    }
}

static void
test_numbers (void)
{
  trial_run (20260915, 0.01, 2, check_numbers);
}

/* ---- Every chain, whatever the case ---- */

static void
check_all (Trial *t)
{
  trial_plan (t, &t->plan);
  t->counts = t->plan.n_passes > 0;
  for (int kind = 0; kind < SPELCH_N_WHYS; kind++)
    {
      g_autofree char *words = chain_of (t->part, &t->cut, &t->bit, &t->plan, (SpelchWhyKind)kind);
      g_assert_cmpuint (strlen (words), >, 0);
      g_assert_null (strstr (words, "nan"));
      g_assert_null (strstr (words, "inf "));
      g_assert_null (strstr (words, "(null)"));
      g_assert_null (strstr (words, ".."));
      g_assert_true (g_str_has_suffix (words, "."));
    }
}

static void
test_all (void)
{
  trial_run (20260916, 0.02, 2, check_all);
}

/* ---- The demo part ---- */

static char *
demo_chain (Demo *demo, SpelchWhyKind kind)
{
  return chain_of (demo->part, demo->cut, demo_bit (demo->cut->bit), &demo->plan, kind);
}

static void
assert_says (Demo *demo, SpelchWhyKind kind, const char *what)
{
  g_autofree char *words = demo_chain (demo, kind);
  if (strstr (words, what) == NULL)
    g_test_message ("no “%s” in\n%s", what, words);
  g_assert_nonnull (strstr (words, what));
}

/* The constants named are those of data/model.json, and their classes; the fluted part's rod is published:
 * Kops and Vo 1990, CIRP Annals 39(1):93-96. */
static void
test_constants (Demo *demo, gconstpointer unused)
{
  demo_plan_with (demo, demo->cut->bit);
  assert_says (demo, SPELCH_WHY_BENDING,
               "80 % of its diameter (by analogy: Kops and Vo 1990, CIRP Annals 39(1):93-96).");
  assert_says (demo, SPELCH_WHY_BENDING, "grade 1 are accepted it may give way by 0.05 mm (shop practice).");
  assert_says (demo, SPELCH_WHY_HEAT,
               "From 1\xe2\x80\xaf"
               "500 mJ/mm² on");
  assert_says (demo, SPELCH_WHY_CHIP, "4.5 % of the bit's diameter");
  assert_says (demo, SPELCH_WHY_ROOM,
               "4.0 times the room they had as wood (by analogy: Dobie and Wright 1972");
  assert_says (demo, SPELCH_WHY_WEAR,
               "after about 30\xe2\x80\xaf"
               "000 m");
  assert_says (demo, SPELCH_WHY_POWER, "80 % is counted on (shop practice)");
}

/* Every limit of the plan is in the chain of the feed, the one that sets it first. */
static void
test_feed (Demo *demo, gconstpointer unused)
{
  demo_plan_with (demo, demo->cut->bit);
  for (guint i = 0; i < demo->plan.n_limits; i++)
    {
      const SpelchLimit *limit = &demo->plan.limits[i];
      const char *name = spelch_words_limit_subject (limit->kind, &demo->plan);
      g_autofree char *share = g_strdup_printf ("%s: %.0f %% used", name, round (limit->share * 100));
      g_autofree char *first = g_strdup_printf ("%s sets the feed", name);
      assert_says (demo, SPELCH_WHY_FEED, limit->binding ? first : share);
    }
  demo->cut->held.feed_mm_min = 2345;
  demo_plan_with (demo, demo->cut->bit);
  assert_says (demo, SPELCH_WHY_FEED,
               "held by hand at 2\xe2\x80\xaf"
               "345 mm/min");
}

/* A limit that no feed reaches before the chip is too thick is said to be so, and no feed with it. */
static void
test_not_reached (Demo *demo, gconstpointer unused)
{
  bool found = false;
  demo->part->holding = (SpelchHolding){ .method = SPELCH_HOLD_CLAMPS, .clamp_force_n = 20000 };
  demo_plan_with (demo, demo->cut->bit);
  for (guint i = 0; i < demo->plan.n_limits; i++)
    if (demo->plan.limits[i].kind == SPELCH_LIMIT_HOLDING)
      {
        found = true;
        g_assert_cmpfloat (demo->plan.limits[i].feed_mm_min, ==, 0);
      }
  g_assert_true (found);
  assert_says (demo, SPELCH_WHY_FEED, "% used; the chip would be too thick before it is reached.");
}

/* Where two passes are recommended, the whole depth at once is what one would cost. */
static void
test_a_pass_less (Demo *demo, gconstpointer unused)
{
  guint n, seen = 0;
  const SpelchBit *bits = spelch_shop_bits (&n);
  for (guint i = 0; i < n; i++)
    {
      demo_plan_bit (demo, &bits[i]);
      SpelchPlan plan = demo->plan;
      if (plan.n_passes != 2 || demo_has_stop (demo, SPELCH_STOP_TOO_SHORT))
        continue;
      demo->cut->held.passes_held = true;
      demo->cut->held.n_passes = 0;
      demo_plan_bit (demo, &bits[i]);
      SpelchPlan once = demo->plan;
      demo->cut->held.passes_held = false;
      if (once.n_passes != 1)
        continue;
      SpelchWhyCase of = { spelch_shop_constants (),
                           spelch_shop_constant_source,
                           demo->part,
                           demo->cut,
                           &bits[i],
                           &plan,
                           NULL,
                           NULL,
                           0 };
      g_auto (GStrv) chain = spelch_words_why (SPELCH_WHY_PASSES, &of, &MM);
      g_autofree char *words = g_strjoinv ("\n", chain);
      g_autofree char *feed = spelch_words_feed (&MM, once.feed_mm_min);
      g_autofree char *holds = g_strdup_printf ("would hold the feed at %s", feed);
      bool bends = once.deflection_mm > once.deflection_limit_mm * (1 + 1e-6);
      bool worse = once.edges[0].grade > plan.edges[0].grade;
      const char *wanted = once.feed_mm_min <= 0 ? "In 1 pass "
                           : worse               ? "face would come out worse"
                           : bends               ? "would be exceeded"
                                                 : holds;
      if (strstr (words, wanted) == NULL)
        g_test_message ("%s: no “%s” in\n%s", bits[i].id, wanted, words);
      g_assert_nonnull (strstr (words, wanted));
      seen++;
    }
  g_assert_cmpuint (seen, >, 5);
}

/* Twice the feed per tooth is twice the chip, and both are said: the kinematics of milling. */
static void
test_chip (Demo *demo, gconstpointer unused)
{
  demo->cut->held.speed_rpm = 18000;
  demo->cut->held.feed_mm_min = 3600;
  demo_plan_with (demo, demo->cut->bit);
  double tooth = 3600.0 / 18000 / spelch_flute_fewest_edges (&demo->plan.flutes);
  g_autofree char *said = g_strdup_printf ("moves on %.3f mm for each tooth (geometry).", tooth);
  assert_says (demo, SPELCH_WHY_CHIP, said);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_set_nonfatal_assertions ();
  g_test_add_func ("/why/numbers-change-together", test_numbers);
  g_test_add_func ("/why/every-chain", test_all);
  g_test_add ("/why/constants", Demo, NULL, demo_set_up, test_constants, demo_tear_down);
  g_test_add ("/why/feed", Demo, NULL, demo_set_up, test_feed, demo_tear_down);
  g_test_add ("/why/not-reached", Demo, NULL, demo_set_up, test_not_reached, demo_tear_down);
  g_test_add ("/why/a-pass-less", Demo, NULL, demo_set_up, test_a_pass_less, demo_tear_down);
  g_test_add ("/why/chip", Demo, NULL, demo_set_up, test_chip, demo_tear_down);
  return g_test_run ();
}

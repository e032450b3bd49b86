/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What may be relied on in a plan nobody held anything of, over seeded random parts: it lies in its windows,
 * keeps within every limit, and passes checks that are worked out here anew from the bit, the machine and the
 * cut.
 */
#include "trial.h"

#include "chance.h"

#include "files/shop-data.h"
#include "plan/entry.h"
#include "plan/words.h"

#include <math.h>
#include <string.h>

static const SpelchNumbers MM = { SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, '.' };

static bool
lies_in (const SpelchRange *range, double depth)
{
  return depth >= range->from - 1e-6 && depth <= range->to + 1e-6;
}

static double
last_tip (const SpelchPlan *plan)
{
  return plan->passes[plan->n_passes - 1].tip_mm;
}

/* Passes go down to the floor, in steps the bit takes, grades are grades, and nothing but numbers is in it.
 */
static void
assert_whole (const SpelchPlan *plan)
{
  trial_finite (plan);
  for (guint p = 0; p < plan->n_passes; p++)
    {
      double above = p == 0 ? 0 : plan->passes[p - 1].tip_mm;
      g_assert_cmpfloat (plan->passes[p].tip_mm, >=, above);
      g_assert_cmpfloat (plan->passes[p].tip_mm - above, <=, plan->step_most + 0.051);
    }
  if (plan->n_passes > 0)
    g_assert_cmpfloat_with_epsilon (last_tip (plan), plan->through_depth + plan->overcut, 1e-6);
  for (guint e = 0; e < plan->n_edges; e++)
    g_assert_cmpint (plan->edges[e].grade, <=, 5);
  for (guint l = 0; l < plan->n_limits; l++)
    g_assert_cmpfloat (plan->limits[l].share, >=, 0);
}

/* The sure windows where there are any; one that is nowhere sure may cost the other its sureness. */
static void
assert_in_windows (const SpelchPlan *plan)
{
  const SpelchWindows *w = &plan->windows;
  bool first_is_sure = !w->robust.first_pass.empty || w->nominal.first_pass.empty;
  bool last_is_sure = !w->robust.last_tip.empty && first_is_sure;
  const SpelchRange *first = !w->robust.first_pass.empty ? &w->robust.first_pass : &w->nominal.first_pass;
  const SpelchRange *last = last_is_sure ? &w->robust.last_tip : &w->nominal.last_tip;
  /* In a board so thin that the first pass would have to run deeper than the last may, one face is kept. */
  if (plan->through && !first->empty && !last->empty && first->from > last->to)
    {
      g_assert_true (lies_in (&w->nominal.first_pass, plan->passes[0].tip_mm)
                     || lies_in (&w->nominal.last_tip, last_tip (plan)));
      return;
    }
  /* Where hands feed, no face is worth a deeper pass than they can follow. */
  if (!first->empty && plan->step_by_hand > 0 && first->from > plan->step_by_hand - 0.1)
    g_assert_true (lies_in (first, plan->passes[0].tip_mm)
                   || plan->passes[0].tip_mm >= fmin (plan->step_by_hand - 0.1, last_tip (plan)) - 1e-6);
  else if (!first->empty)
    g_assert_true (lies_in (first, plan->passes[0].tip_mm));
  if (plan->through && !last->empty)
    g_assert_true (lies_in (last, last_tip (plan)));
}

/* Hands hold against 30 N with a trim router of up to 2.5 kg, else 60 N; fed by hand at 3 or 4 m/min at most.
 */
static void
assert_fed_by_hand (const Trial *c)
{
  const SpelchMachine *machine = &c->part->machine;
  bool trim = machine->kind == SPELCH_MACHINE_HAND && machine->mass_kg <= 2.5;
  g_assert_cmpfloat (c->plan.sideways_peak_n, <=, (trim ? 30 : 60) + 1e-6);
  g_assert_cmpfloat (c->plan.feed_mm_min, <=, machine->kind == SPELCH_MACHINE_HAND ? 3000 : 4000);
  g_assert_false (machine->kind == SPELCH_MACHINE_TABLE && c->plan.seats[0].apart);
}

static void
assert_held_down (const Trial *c)
{
  double area = c->part->holding.area_mm2, kpa = c->part->holding.vacuum_kpa;
  g_assert_cmpfloat_with_epsilon (c->plan.hold_available_n - c->plan.weight_n, area * kpa / 1000 / 2, 1e-6);
  g_assert_cmpfloat (c->plan.hold_factor, >=, 2);
  g_assert_cmpfloat (c->plan.hold_factor_worst, >=, 1);
  g_assert_cmpfloat (c->plan.hold_available_n, >=, 2 * c->plan.lift_bound_n);
  g_assert_cmpfloat (c->plan.hold_available_n, >=, c->plan.hold_needed_n - 1e-6);
}

static void
assert_fits (const Trial *c)
{
  const SpelchPlan *plan = &c->plan;
  const SpelchMachine *machine = &c->part->machine;
  double diameter = c->bit.diameter.mm, above = 0;
  g_assert_cmpfloat (c->bit.overall_length.mm - plan->stick_out_mm, >=,
                     fmax (20, 2 * c->bit.shank.mm) - 1e-6);
  g_assert_cmpfloat (last_tip (plan), <=, plan->stick_out_mm - machine->base_thickness.mm - 2 + 1e-6);
  for (guint i = 0; i < plan->n_passes; i++)
    {
      double step = plan->passes[i].tip_mm - above;
      g_assert_cmpfloat (step, >, 0);
      g_assert_cmpfloat (step, <=, c->bit.cutting_length.mm + 1e-6);
      g_assert_true (machine->kind == SPELCH_MACHINE_GANTRY || step <= diameter + 1e-6);
      g_assert_cmpfloat (step, <=, (diameter < 6 ? 2 * diameter : HUGE_VAL) + 1e-6);
      above = plan->passes[i].tip_mm;
    }
  /* a backer keeps a millimetre uncut */
  double allowed = c->cut.backer.mm > 0 ? c->cut.backer.mm - 1 : machine->overcut_allowed_mm;
  if (plan->through && machine->kind == SPELCH_MACHINE_GANTRY)
    g_assert_cmpfloat (plan->overcut, <=, allowed + 1e-6);
  if (plan->through)
    g_assert_cmpfloat (plan->overcut, >=, 0.1 - 1e-6);
  if (c->cut.width.mm > 0 && c->cut.kind != SPELCH_CUT_RABBET && c->cut.kind != SPELCH_CUT_TRIM)
    g_assert_cmpfloat (diameter, <=, c->cut.width.mm + 0.01);
  g_assert_true (spelch_entry_suits (plan->entry.kind, plan->machine));
  if (spelch_entry_is_plunge (plan->entry.kind))
    g_assert_true (c->bit.end_cutting && c->bit.kind != SPELCH_BIT_DOWN_CUT);
}

static void
assert_checks (const Trial *c)
{
  g_assert_cmpfloat (c->plan.feed_mm_min, >, 0);
  g_assert_cmpfloat (c->plan.speed_rpm, <=, c->bit.max_rpm);
  g_assert_cmpfloat (c->plan.stress_share, <=, 1 + 1e-6);
  assert_fits (c);
  if (c->part->machine.kind == SPELCH_MACHINE_GANTRY)
    assert_held_down (c);
  else
    assert_fed_by_hand (c);
}

/* Whether some other speed would have kept the wall from burning at a feed above nothing. */
static bool
could_stay_cool (const Trial *hot)
{
  Trial c = *hot;
  double caution = spelch_shop_constants ()->heat_burns;
  for (guint i = 0; spelch_machine_speed (&c.part->machine, i) > 0; i++)
    {
      c.cut.held.speed_rpm = spelch_machine_speed (&c.part->machine, i);
      if (c.bit.max_rpm > 0 && c.cut.held.speed_rpm > c.bit.max_rpm)
        continue;
      c.cut.held.passes_held = true;
      c.cut.held.n_passes = hot->plan.n_passes - 1;
      for (guint p = 0; p + 1 < hot->plan.n_passes; p++)
        c.cut.held.passes[p] = spelch_length_mm (hot->plan.passes[p].tip_mm);
      trial_plan (&c, &c.plan);
      /* 3 % for the feed's rounding down */
      if (c.plan.feed_mm_min > 0 && c.plan.wall_heat < caution * 0.97)
        return true;
    }
  return false;
}

/* Held too weakly, but not so that a feed that leaves the wall cool would do: the plan must not be cut. */
static void
assert_wants_holding (const Trial *c, const SpelchLimit *holding)
{
  g_assert_true (c->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT);
  if (holding->feed_mm_min > 0)
    g_assert_cmpfloat (c->plan.wall_heat * c->plan.feed_mm_min / holding->feed_mm_min, >=, 1500 * (1 - 1e-6));
}

/* No limit is exceeded, but three: the work isn't held; the wall burns only where no speed keeps it cool, and
 * a bit bends more than asked only where less feed would bring the wall to its caution, 1500 mJ/mm2. */
static void
assert_within_limits (const Trial *c)
{
  for (guint l = 0; c->plan.feed_mm_min > 0 && l < c->plan.n_limits; l++)
    {
      const SpelchLimit *limit = &c->plan.limits[l];
      if (limit->share <= 1 + 1e-6)
        continue;
      g_assert_true (limit->kind == SPELCH_LIMIT_HEAT || limit->kind == SPELCH_LIMIT_BENDING
                     || limit->kind == SPELCH_LIMIT_HOLDING);
      if (limit->kind == SPELCH_LIMIT_HOLDING)
        assert_wants_holding (c, limit);
      else if (limit->kind == SPELCH_LIMIT_BENDING)
        g_assert_cmpfloat (c->plan.wall_heat, >=, 1500 * (1 - 1e-6));
      else
        g_assert_false (could_stay_cool (c));
    }
}

/* A plan that must not be cut may lie anywhere; one that may lies in its windows, the sure ones if there are
 * any; one without objection passes every check. */
static void
check_plan (Trial *c)
{
  memset (&c->plan, 0xff, sizeof c->plan); /* what isn't filled in shows */
  trial_plan (c, &c->plan);
  assert_whole (&c->plan);
  assert_within_limits (c);
  if (c->plan.verdict != SPELCH_VERDICT_DO_NOT_CUT)
    assert_in_windows (&c->plan);
  c->counts = c->plan.verdict == SPELCH_VERDICT_NO_OBJECTION;
  if (c->counts)
    assert_checks (c);
}

static void
test_plan (void)
{
  trial_run (20260601, 1, 40, check_plan);
}

/* A first pass or an overcut inside the exact window loads its face in a way that costs nothing; a first pass
 * short of it pulls the face out. */
static void
check_windows_agree_with_edges (Trial *c)
{
  trial_plan (c, &c->plan);
  SpelchRange near = c->plan.windows.nominal.first_pass, far = c->plan.windows.nominal.last_tip;
  bool inside = g_rand_boolean (c->random);
  if (near.empty || (c->plan.through && far.empty) || (!inside && near.from <= 0.5))
    return;
  double depth = inside ? chance_between (c->random, near.from, near.to + 1e-9) : near.from * 0.9;
  c->cut.held.n_passes = 1;
  c->cut.held.passes[0] = spelch_length_mm (fmax (depth, 0.05));
  c->cut.held.overcut_held = true;
  c->cut.held.overcut
      = spelch_length_mm (chance_between (c->random, far.from, far.to + 1e-9) - c->plan.thickness);
  trial_plan (c, &c->plan);
  /* a last pass that stops above the depth held is the first one too */
  if (c->plan.n_passes == 0 || (inside && c->plan.passes[0].tip_mm < near.from))
    return;
  const SpelchEdge *edge = spelch_plan_worst (&c->plan, SPELCH_SIDE_MOTOR);
  const SpelchEdge *back = spelch_plan_worst (&c->plan, SPELCH_SIDE_FAR);
  int lost = edge->by_entry_mm > 0 ? 0 : spelch_edge_points (edge, SPELCH_TERM_SHEAR);
  g_assert_true (inside ? lost == 0 : edge->load == SPELCH_LOAD_PULL_OUT);
  if (back != NULL && spelch_edge_points (back, SPELCH_TERM_BACKING) == 0
      && c->plan.far_facing != SPELCH_FACING_BOARD)
    g_assert_cmpint (spelch_edge_points (back, SPELCH_TERM_SHEAR), ==, 0);
  c->counts = true;
}

static void
test_windows_agree_with_edges (void)
{
  trial_run (20260605, 0.2, 20, check_windows_agree_with_edges);
}

static void
assert_sentence (char *sentence, const char *ends)
{
  gsize length = strlen (sentence);
  gunichar first = g_utf8_get_char (sentence);
  bool well = length > 0 && g_utf8_validate (sentence, -1, NULL) && strstr (sentence, "  ") == NULL
              && strstr (sentence, "..") == NULL && strstr (sentence, "nan") == NULL
              && strstr (sentence, "inf") == NULL && strchr (ends, sentence[length - 1]) != NULL
              && (g_unichar_isupper (first) || g_unichar_isdigit (first));
  if (!well)
    g_error ("not a sentence: “%s”", sentence);
  g_free (sentence);
}

static void
check_sentences (Trial *c)
{
  trial_plan (c, &c->plan);
  c->counts = true;
  for (SpelchSide side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    {
      g_auto (GStrv) why = spelch_words_edge_why (&c->plan, side, &MM);
      assert_sentence (spelch_words_edge_reason (&c->plan, side, &MM), ".");
      assert_sentence (spelch_words_window (&c->plan, side, &MM), ".");
      for (guint j = 0; why[j] != NULL; j++)
        assert_sentence (g_strdup (why[j]), ".");
    }
  for (guint j = 0; j < c->plan.n_stops; j++)
    assert_sentence (spelch_words_stop (&c->plan.stops[j], &MM), ".");
  assert_sentence (spelch_words_limit (&c->plan), ";.");
  if (c->plan.n_seats > 0)
    assert_sentence (spelch_words_seat (&c->plan), ".");
  assert_sentence (spelch_words_seat_advice (&c->plan, c->part, &MM), ".");
}

static void
test_sentences (void)
{
  trial_run (20260606, 0.05, 1, check_sentences);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_set_nonfatal_assertions ();
  g_test_add_func ("/recommended/plan", test_plan);
  g_test_add_func ("/recommended/windows-agree-with-edges", test_windows_agree_with_edges);
  g_test_add_func ("/recommended/sentences", test_sentences);
  return g_test_run ();
}

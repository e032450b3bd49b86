/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A bit drawer is never the better for losing a bit: over 100 000 random cuts and drawers.
 */
#include "trial.h"

#include "chance.h"

#include "files/shop-data.h"
#include "plan/choose.h"

#include <math.h>

static GPtrArray *
rank (const Trial *c, const SpelchBit *bits, guint n)
{
  return spelch_choose_rank (spelch_shop_constants (), c->part, &c->cut, bits, n);
}

/* With the two minutes that changing to a second bit counts for. */
static double
whole_time (const SpelchChoice *choice)
{
  return choice->plan.time_s + (choice->scorer >= 0 ? 120 : 0);
}

static bool
cannot_be_clamped (const SpelchPlan *plan)
{
  return spelch_plan_has_stop (plan, SPELCH_STOP_COLLET_SIZE)
         || spelch_plan_has_stop (plan, SPELCH_STOP_HAND);
}

/* 1 when @a is the better plan by the order told in docs/model.md, -1 when @b is, 0 when neither: what may be
 * cut; what the machine can take; what comes out as accepted, else the best seen, then the best hidden edge;
 * what doesn't bend too much; time, to the second. */
static int
compare (const SpelchChoice *a, const SpelchChoice *b)
{
  bool bends_a = a->plan.deflection_mm > a->plan.deflection_limit_mm * (1 + 1e-6);
  bool bends_b = b->plan.deflection_mm > b->plan.deflection_limit_mm * (1 + 1e-6);
  const double as[] = { cannot_be_clamped (&a->plan), !a->meets, a->meets ? 0 : a->seen,
                        a->meets ? 0 : a->hidden, bends_a };
  const double bs[] = { cannot_be_clamped (&b->plan), !b->meets, b->meets ? 0 : b->seen,
                        b->meets ? 0 : b->hidden, bends_b };
  if ((a->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT) != (b->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT))
    return b->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT ? 1 : -1;
  for (gsize i = 0; i < G_N_ELEMENTS (as); i++)
    if (as[i] < bs[i] - 1e-9 || as[i] > bs[i] + 1e-9)
      return as[i] < bs[i] ? 1 : -1;
  if (fabs (whole_time (a) - whole_time (b)) < 1)
    return 0;
  return whole_time (a) < whole_time (b) ? 1 : -1;
}

/* Two bits, and each taken out in turn. The spindle has one speed here, for quickness: which bit is best is
 * asked, not which speed. */
static void
check_drawer (Trial *c)
{
  SpelchBit bits[] = { c->bit, g_rand_boolean (c->random) ? trial_bit (c->random) : chance_bit (c->random) };
  SpelchMachine *machine = &c->part->machine;
  machine->rpm_min = machine->rpm_max
      = spelch_machine_speed (machine, (guint)g_rand_int_range (c->random, 0, 3));
  machine->n_steps = 0;
  g_strlcpy (bits[1].id, "other", sizeof bits[1].id);
  bits[0].max_rpm = bits[1].max_rpm = 30000;
  g_autoptr (GPtrArray) both = rank (c, bits, 2);
  const SpelchChoice *before = both->pdata[0];
  c->counts = before->plan.verdict != SPELCH_VERDICT_DO_NOT_CUT;
  for (guint left = 0; left < 2; left++)
    {
      g_autoptr (GPtrArray) one = rank (c, &bits[left], 1);
      const SpelchChoice *after = one->pdata[0];
      if (compare (after, before) > 0)
        g_test_message (
            "alone: grades %d and %d, %.3f s, bends %.4f mm; in the drawer: %d and %d, %.3f s, %.4f mm",
            after->seen, after->hidden, after->plan.time_s, after->plan.deflection_mm, before->seen,
            before->hidden, before->plan.time_s, before->plan.deflection_mm);
      g_assert_cmpint (compare (after, before), <=, 0);
      if (before->bit == left && before->scorer < 0)
        g_assert_cmpint (compare (after, before), ==, 0);
    }
}

/* Two cases in each drawer. */
static void
test_drawer (void)
{
  trial_run (20260701, 0.5, 5, check_drawer);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_set_nonfatal_assertions ();
  g_test_add_func ("/drawer/losing-a-bit", test_drawer);
  return g_test_run ();
}

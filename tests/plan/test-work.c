/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cuts in the order of work: an accepted bit is kept and planned as it is planned alone, the others take
 * what the order recommends, and a part of them can be asked for.
 */
#include "on-demo.h"

#include "files/shop-data.h"
#include "plan/work.h"

#include <string.h>

static SpelchWork *
work_of (const SpelchPart *part, const int *cuts)
{
  return spelch_work_find (spelch_shop_constants (), part, cuts, part->bits, part->n_bits);
}

static void
assert_as_alone (const SpelchWork *work, const SpelchTask *task)
{
  SpelchPlan alone;
  g_assert_true (task->has_bit);
  spelch_plan_make (spelch_shop_constants (), work->part, &task->cut, &task->bit, &alone);
  g_assert_cmpfloat (task->plan.feed_mm_min, ==, alone.feed_mm_min);
  g_assert_cmpfloat (task->plan.speed_rpm, ==, alone.speed_rpm);
  g_assert_cmpuint (task->plan.n_passes, ==, alone.n_passes);
  for (guint i = 0; i < alone.n_passes; i++)
    g_assert_cmpfloat (task->plan.passes[i].tip_mm, ==, alone.passes[i].tip_mm);
  g_assert_cmpint (task->plan.verdict, ==, alone.verdict);
}

/* Every cut once, the outline last, each as it is planned alone; time and changes are those of the tasks. */
static void
test_all (Demo *demo, gconstpointer unused)
{
  g_autoptr (SpelchWork) work = work_of (demo->part, NULL);
  guint64 met = 0;
  guint changes = 0;
  double time = 0;
  g_assert_cmpuint (work->n, ==, demo->part->n_cuts);
  for (guint i = 0; i < work->n; i++)
    {
      const SpelchTask *task = &work->tasks[i];
      bool accepted = demo->part->cuts[task->index].bit[0] != '\0';
      assert_as_alone (work, task);
      g_assert_cmpint (task->recommended, ==, !accepted);
      g_assert_cmpstr (task->cut.id, ==, demo->part->cuts[task->index].id);
      met |= G_GUINT64_CONSTANT (1) << task->index;
      changes += task->changes;
      time += task->plan.time_s;
    }
  g_assert_cmpuint (met, ==, (G_GUINT64_CONSTANT (1) << work->n) - 1);
  g_assert_cmpint (work->tasks[work->n - 1].cut.kind, ==, SPELCH_CUT_OUTLINE);
  g_assert_cmpuint (work->changes, ==, changes);
  g_assert_cmpfloat_with_epsilon (work->time_s, time, 1e-9);
}

/* A bit that must not cut it is kept all the same, and the plan says why. */
static void
test_accepted_stays (Demo *demo, gconstpointer unused)
{
  int cut = spelch_part_find_cut (demo->part, "outline");
  const int only[] = { cut, -1 };
  g_strlcpy (demo->part->cuts[cut].bit, "up-cut-5x17", sizeof demo->part->cuts[cut].bit);
  g_autoptr (SpelchWork) work = work_of (demo->part, only);
  g_assert_cmpuint (work->n, ==, 1);
  g_assert_cmpstr (work->tasks[0].bit.id, ==, "up-cut-5x17");
  g_assert_false (work->tasks[0].recommended);
  g_assert_true (spelch_task_stops (&work->tasks[0]));
  assert_as_alone (work, &work->tasks[0]);
}

static void
test_some (Demo *demo, gconstpointer unused)
{
  const int some[]
      = { spelch_part_find_cut (demo->part, "outline"), spelch_part_find_cut (demo->part, "peg-holes"), -1 };
  g_autoptr (SpelchWork) work = work_of (demo->part, some);
  g_assert_cmpuint (work->n, ==, 2);
  g_assert_cmpstr (work->tasks[0].cut.id, ==, "peg-holes");
  g_assert_cmpint ((int)work->tasks[0].index, ==, some[1]);
  g_assert_cmpstr (work->tasks[1].cut.id, ==, "outline");
  g_assert_cmpint ((int)work->tasks[1].index, ==, some[0]);
}

/* With nothing else to choose from, the bit that another cut has serves where it may; the holes are narrower
 * than it. */
static void
test_no_other_bit (Demo *demo, gconstpointer unused)
{
  g_autoptr (SpelchWork) work = spelch_work_find (spelch_shop_constants (), demo->part, NULL, NULL, 0);
  const SpelchTask *last = &work->tasks[work->n - 1];
  for (guint i = 0; i + 1 < work->n; i++)
    g_assert_cmpstr (work->tasks[i].bit.id, ==, "compression-6.35x22");
  g_assert_cmpstr (last->cut.id, ==, "peg-holes");
  g_assert_false (last->has_bit);
  g_assert_true (spelch_task_stops (last));
  g_assert_cmpuint (work->changes, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, test) g_test_add ("/work/" name, Demo, NULL, demo_set_up, test, demo_tear_down)
  ADD ("all", test_all);
  ADD ("accepted-stays", test_accepted_stays);
  ADD ("some", test_some);
  ADD ("no-other-bit", test_no_other_bit);
  return g_test_run ();
}

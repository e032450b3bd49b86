/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/work.h"

#include "plan/edges.h"

#include <string.h>

static int
find_bit (const GArray *bits, const char *id)
{
  for (guint i = 0; i < bits->len; i++)
    if (strcmp (g_array_index (bits, SpelchBit, i).id, id) == 0)
      return (int)i;
  return -1;
}

/* The part's own copy goes before another bit of that id. */
static void
put_own (GArray *bits, const SpelchPart *part, const char *id)
{
  int own = spelch_part_find_bit (part, id), there = find_bit (bits, id);
  if (own < 0)
    return;
  if (there < 0)
    g_array_append_val (bits, part->bits[own]);
  else
    g_array_index (bits, SpelchBit, there) = part->bits[own];
}

static GArray *
collect_bits (const SpelchPart *part, const SpelchBit *more, guint n_more)
{
  GArray *bits = g_array_new (FALSE, FALSE, sizeof (SpelchBit));
  if (n_more > 0)
    g_array_append_vals (bits, more, n_more);
  for (guint i = 0; i < part->n_cuts; i++)
    {
      put_own (bits, part, part->cuts[i].bit);
      put_own (bits, part, part->cuts[i].held.score_bit);
    }
  return bits;
}

/* The cuts asked for alone, so that they are put in order among themselves. */
static SpelchPart *
part_of (const SpelchPart *part, const int *cuts)
{
  SpelchPart *copy = spelch_part_copy (part);
  guint n = 0;
  if (cuts == NULL)
    return copy;
  for (; n < part->n_cuts && cuts[n] >= 0; n++)
    copy->cuts[n] = part->cuts[cuts[n]];
  copy->n_cuts = n;
  return copy;
}

/* A ranking of the accepted bit alone, as it is held. */
static GPtrArray *
accepted_alone (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                const GArray *bits)
{
  GPtrArray *ranking = g_ptr_array_new_with_free_func (g_free);
  SpelchChoice *choice = g_new0 (SpelchChoice, 1);
  choice->bit = (guint)find_bit (bits, cut->bit);
  choice->way_up = cut->way_up;
  spelch_plan_make (constants, part, cut, &g_array_index (bits, SpelchBit, choice->bit), &choice->plan);
  choice->scorer = choice->plan.scoring.bit[0] != '\0' ? find_bit (bits, choice->plan.scoring.bit) : -1;
  choice->seen = spelch_edges_worst (choice->plan.edges, true);
  choice->hidden = spelch_edges_worst (choice->plan.edges, false);
  choice->meets = choice->seen <= part->accepted_seen && choice->hidden <= part->accepted_hidden;
  g_ptr_array_add (ranking, choice);
  return ranking;
}

static bool
is_accepted (const SpelchPart *part, const SpelchCut *cut)
{
  return spelch_part_find_bit (part, cut->bit) >= 0;
}

/* What is planned here is what spelch_plan_make() gives for the task's cut and bit. */
static void
plan_task (const SpelchConstants *constants, SpelchPart *part, SpelchTask *task)
{
  task->has_bit = true;
  spelch_plan_make (constants, part, &task->cut, &task->bit, &task->plan);
  task->conflict = spelch_conflict_find (constants, part, &task->cut, &task->bit, &task->plan);
}

/* A cut whose accepted bit may not cut it keeps it, and its plan says why. */
static void
take_step (const SpelchConstants *constants, SpelchWork *work, const SpelchStep *step, const GArray *bits)
{
  SpelchTask *task = &work->tasks[work->n++];
  const SpelchCut *cut = &work->part->cuts[step->cut];
  bool accepted = is_accepted (work->part, cut);
  task->index = step->cut;
  task->cut = *cut;
  task->changes = step->changes;
  task->turns = step->turns;
  task->recommended = !accepted && step->choice != NULL;
  if (accepted)
    task->bit = work->part->bits[spelch_part_find_bit (work->part, cut->bit)];
  else if (step->choice != NULL)
    {
      const SpelchBit *all = (const SpelchBit *)(const void *)bits->data;
      task->bit = all[step->choice->bit];
      task->cut = spelch_choose_chosen (cut, all, step->choice);
      spelch_part_put_bit (work->part, &task->bit);
      if (step->choice->scorer >= 0)
        spelch_part_put_bit (work->part, &all[step->choice->scorer]);
      g_strlcpy (task->cut.bit, task->bit.id, sizeof task->cut.bit);
    }
  if (accepted || step->choice != NULL)
    plan_task (constants, work->part, task);
}

static void
name_indices (SpelchWork *work, const int *cuts)
{
  for (guint i = 0; cuts != NULL && i < work->n; i++)
    work->tasks[i].index = (guint)cuts[work->tasks[i].index];
}

SpelchWork *
spelch_work_find (const SpelchConstants *constants, const SpelchPart *part, const int *cuts,
                  const SpelchBit *bits, guint n_bits)
{
  SpelchWork *work = g_new0 (SpelchWork, 1);
  work->part = part_of (part, cuts);
  guint n_cuts = work->part->n_cuts;
  g_autoptr (GArray) all = collect_bits (work->part, bits, n_bits);
  g_autoptr (GPtrArray) owner = g_ptr_array_new_with_free_func ((GDestroyNotify)g_ptr_array_unref);
  for (guint i = 0; i < n_cuts; i++)
    {
      const SpelchCut *cut = &work->part->cuts[i];
      g_ptr_array_add (owner,
                       is_accepted (work->part, cut)
                           ? accepted_alone (constants, work->part, cut, all)
                           : spelch_choose_rank (constants, work->part, cut,
                                                 (const SpelchBit *)(const void *)all->data, all->len));
    }
  g_autoptr (SpelchOrder) order
      = spelch_order_find (work->part, (GPtrArray *const *)(void *)owner->pdata, all->len);
  work->tasks = g_new0 (SpelchTask, MAX (n_cuts, 1));
  for (guint i = 0; i < order->n; i++)
    take_step (constants, work, &order->steps[i], all);
  name_indices (work, cuts);
  work->changes = order->changes;
  work->turns = order->turns;
  work->time_s = order->time_s;
  return work;
}

void
spelch_work_free (SpelchWork *work)
{
  spelch_part_unref (work->part);
  g_free (work->tasks);
  g_free (work);
}

bool
spelch_task_stops (const SpelchTask *task)
{
  return !task->has_bit || task->plan.verdict == SPELCH_VERDICT_DO_NOT_CUT;
}

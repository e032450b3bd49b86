/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bench-history.h"

typedef struct
{
  SpelchPart *part;
  guint cut;
  char *name;
  char *merge;
  gint64 time_us;
  gsize bytes; /* that the part takes */
} SpelchStep;

struct _SpelchHistory
{
  GPtrArray *done;   /* SpelchStep with the part as it was before the step */
  GPtrArray *undone; /* SpelchStep with the part as it was after it */
};

static void
step_free (gpointer data)
{
  SpelchStep *step = data;
  spelch_part_unref (step->part);
  g_free (step->name);
  g_free (step->merge);
  g_free (step);
}

static gsize
size_of (const SpelchPart *part)
{
  return sizeof *part + part->n_bits * sizeof *part->bits + part->n_cuts * sizeof *part->cuts
         + part->n_corrections * sizeof *part->corrections;
}

/* The oldest go, the newest stays however large it is. */
static void
keep_small (GPtrArray *steps)
{
  gsize bytes = 0;
  guint first = steps->len;
  while (first > 0 && (first == steps->len || bytes < SPELCH_HISTORY_MOST_BYTES))
    bytes += ((SpelchStep *)g_ptr_array_index (steps, --first))->bytes;
  if (first > 0)
    g_ptr_array_remove_range (steps, 0, first);
}

static void
push (GPtrArray *steps, SpelchPart *part, guint cut, const char *name, const char *merge, gint64 time_us)
{
  SpelchStep *step = g_new0 (SpelchStep, 1);
  step->part = spelch_part_ref (part);
  step->cut = cut;
  step->name = g_strdup (name);
  step->merge = g_strdup (merge);
  step->time_us = time_us;
  step->bytes = size_of (part);
  g_ptr_array_add (steps, step);
  keep_small (steps);
}

static SpelchStep *
top (GPtrArray *steps)
{
  return steps->len == 0 ? NULL : g_ptr_array_index (steps, steps->len - 1);
}

SpelchHistory *
spelch_history_new (void)
{
  SpelchHistory *history = g_new0 (SpelchHistory, 1);
  history->done = g_ptr_array_new_with_free_func (step_free);
  history->undone = g_ptr_array_new_with_free_func (step_free);
  return history;
}

void
spelch_history_free (SpelchHistory *history)
{
  g_ptr_array_unref (history->done);
  g_ptr_array_unref (history->undone);
  g_free (history);
}

void
spelch_history_clear (SpelchHistory *history)
{
  g_ptr_array_set_size (history->done, 0);
  g_ptr_array_set_size (history->undone, 0);
}

void
spelch_history_step (SpelchHistory *history, SpelchPart *before, guint cut, const char *name,
                     const char *merge, gint64 now_us)
{
  SpelchStep *last = top (history->done);
  bool follows = history->undone->len == 0 && last != NULL && merge != NULL
                 && g_strcmp0 (last->merge, merge) == 0 && last->cut == cut
                 && now_us - last->time_us <= SPELCH_HISTORY_MERGE_US;
  g_ptr_array_set_size (history->undone, 0);
  if (follows)
    last->time_us = now_us;
  else
    push (history->done, before, cut, name, merge, now_us);
}

static SpelchPart *
move_step (GPtrArray *from, GPtrArray *to, SpelchPart *current, guint *cut)
{
  SpelchStep *step = top (from);
  if (step == NULL)
    return NULL;
  SpelchPart *part = spelch_part_ref (step->part);
  *cut = step->cut;
  push (to, current, step->cut, step->name, NULL, 0);
  g_ptr_array_set_size (from, (int)from->len - 1);
  return part;
}

SpelchPart *
spelch_history_undo (SpelchHistory *history, SpelchPart *current, guint *cut)
{
  return move_step (history->done, history->undone, current, cut);
}

SpelchPart *
spelch_history_redo (SpelchHistory *history, SpelchPart *current, guint *cut)
{
  return move_step (history->undone, history->done, current, cut);
}

static bool
has (const GPtrArray *steps, const SpelchPart *part)
{
  for (guint i = steps->len; i-- > 0;)
    if (((const SpelchStep *)g_ptr_array_index (steps, i))->part == part)
      return true;
  return false;
}

bool
spelch_history_has (const SpelchHistory *history, const SpelchPart *part)
{
  return has (history->done, part) || has (history->undone, part);
}

const char *
spelch_history_undo_name (const SpelchHistory *history)
{
  SpelchStep *step = top (history->done);
  return step == NULL ? NULL : step->name;
}

const char *
spelch_history_redo_name (const SpelchHistory *history)
{
  SpelchStep *step = top (history->undone);
  return step == NULL ? NULL : step->name;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/order.h"

#include <math.h>
#include <string.h>

#define MOST_CUTS   64
#define MOST_TRIALS 200000

/* What a bit can do: which cuts, and how. */
typedef struct
{
  guint64 cuts;
  const SpelchChoice *of[MOST_CUTS];
} Able;

/* A search for few bits that together serve the cuts. */
typedef struct
{
  const Able *able;
  guint n_bits, n_cuts;
  guint trials;
  guint chosen[MOST_CUTS], n_chosen;
  guint best[MOST_CUTS], n_best;
  double best_time;
} Search;

static int
no_worse_than (int best, int accepted)
{
  return MAX (best, accepted);
}

static bool
bends_too_much (const SpelchChoice *choice)
{
  return choice->plan.deflection_mm > choice->plan.deflection_limit_mm + 1e-6;
}

/* Whether @choice may stand in for the best of its ranking: it may be cut, its seen edges come out no worse
 * than the best's or than accepted, its hidden ones likewise, and it bends too much only if the best does. */
static bool
may_stand_in (const SpelchPart *part, const SpelchChoice *best, const SpelchChoice *choice)
{
  return choice->plan.verdict != SPELCH_VERDICT_DO_NOT_CUT
         && choice->seen <= no_worse_than (best->seen, part->accepted_seen)
         && choice->hidden <= no_worse_than (best->hidden, part->accepted_hidden)
         && (bends_too_much (best) || !bends_too_much (choice));
}

/* Each bit's first choice of a ranking is its better way up; with a second bit or without one. */
static bool
find_able_for (const SpelchPart *part, const GPtrArray *ranking, guint cut, bool two, Able *able)
{
  const SpelchChoice *best = spelch_choose_best (ranking);
  bool any = false;
  for (guint i = 0; best != NULL && i < ranking->len; i++)
    {
      const SpelchChoice *choice = ranking->pdata[i];
      Able *one = &able[choice->bit];
      if ((choice->scorer >= 0) != two || one->of[cut] != NULL || !may_stand_in (part, best, choice))
        continue;
      one->of[cut] = choice;
      one->cuts |= G_GUINT64_CONSTANT (1) << cut;
      any = true;
    }
  return any;
}

/* Two bits for one cut only where no bit alone may cut it. */
static void
find_able (const SpelchPart *part, GPtrArray *const *rankings, guint n_cuts, Able *able)
{
  for (guint cut = 0; cut < n_cuts; cut++)
    if (!find_able_for (part, rankings[cut], cut, false, able))
      find_able_for (part, rankings[cut], cut, true, able);
}

static double
time_alone (const Able *one, guint n_cuts)
{
  double time = 0;
  for (guint cut = 0; cut < n_cuts; cut++)
    time += one->of[cut] != NULL ? one->of[cut]->plan.time_s : 0;
  return time;
}

/* Of bits that serve the same cuts, the quickest is enough. */
static void
drop_doubles (Able *able, guint n_bits, guint n_cuts)
{
  for (guint i = 0; i < n_bits; i++)
    for (guint j = 0; j < i; j++)
      if (able[i].cuts != 0 && able[i].cuts == able[j].cuts)
        {
          bool later = time_alone (&able[i], n_cuts) < time_alone (&able[j], n_cuts);
          memset (later ? &able[j] : &able[i], 0, sizeof *able);
        }
}

static const SpelchChoice *
quickest (const Search *s, const guint *bits, guint n, guint cut)
{
  const SpelchChoice *best = NULL;
  for (guint i = 0; i < n; i++)
    {
      const SpelchChoice *choice = s->able[bits[i]].of[cut];
      if (choice != NULL && (best == NULL || choice->plan.time_s < best->plan.time_s))
        best = choice;
    }
  return best;
}

static double
time_with (const Search *s, const guint *bits, guint n, guint64 cuts)
{
  double time = 0;
  for (guint cut = 0; cut < s->n_cuts; cut++)
    if (cuts & (G_GUINT64_CONSTANT (1) << cut))
      time += quickest (s, bits, n, cut)->plan.time_s;
  return time;
}

/* Takes bits for the first cut not yet served, one after the other, at most @more of them. */
static void
deepen (Search *s, guint64 all, guint64 left, guint more)
{
  if (left == 0)
    {
      double time = time_with (s, s->chosen, s->n_chosen, all);
      if (time < s->best_time)
        {
          s->best_time = time;
          s->n_best = s->n_chosen;
          memcpy (s->best, s->chosen, sizeof s->best);
        }
      return;
    }
  guint64 first = left & (~left + 1);
  for (guint bit = 0; more > 0 && bit < s->n_bits && s->trials < MOST_TRIALS; bit++)
    if (s->able[bit].cuts & first)
      {
        s->trials++;
        s->chosen[s->n_chosen++] = bit;
        deepen (s, all, left & ~s->able[bit].cuts, more - 1);
        s->n_chosen--;
      }
}

/* Where the search grows too large: the bit that serves most of what is left. */
static void
take_greedily (Search *s, guint64 left)
{
  s->n_best = 0;
  while (left != 0)
    {
      guint most = 0;
      int serves = 0;
      for (guint bit = 0; bit < s->n_bits; bit++)
        {
          int count = __builtin_popcountll (s->able[bit].cuts & left);
          if (count > serves)
            {
              serves = count;
              most = bit;
            }
        }
      s->best[s->n_best++] = most;
      left &= ~s->able[most].cuts;
    }
}

/* The fewest bits that serve @cuts, the quickest of such sets; @given, unless it is -1, is one of them. */
static void
find_fewest (Search *s, guint64 cuts, int given)
{
  guint64 left = given >= 0 ? cuts & ~s->able[given].cuts : cuts;
  guint fixed = given >= 0 ? 1 : 0;
  s->chosen[0] = fixed > 0 ? (guint)given : 0;
  s->trials = 0;
  s->n_best = 0;
  s->best_time = HUGE_VAL;
  for (guint more = 0; s->best_time == HUGE_VAL && more + fixed <= MOST_CUTS && s->trials < MOST_TRIALS;
       more++)
    {
      s->n_chosen = fixed;
      deepen (s, cuts, left, more);
    }
  if (s->best_time < HUGE_VAL)
    return;
  take_greedily (s, left);
  if (fixed > 0)
    s->best[s->n_best++] = (guint)given;
  s->best_time = time_with (s, s->best, s->n_best, cuts);
}

/* Bits for the cuts within the piece and for its outlines, with one that serves both when that costs no
 * change. */
typedef struct
{
  guint64 cuts[2];
  guint bits[2][MOST_CUTS], n[2];
  int shared; /* -1: none */
} Phases;

static void
keep (Phases *phases, int phase, const Search *s)
{
  phases->n[phase] = s->n_best;
  memcpy (phases->bits[phase], s->best, sizeof s->best);
}

static void
find_phases (Search *s, Phases *phases)
{
  double best_time = HUGE_VAL;
  for (int i = 0; i < 2; i++)
    {
      find_fewest (s, phases->cuts[i], -1);
      keep (phases, i, s);
    }
  guint fewest[2] = { phases->n[0], phases->n[1] };
  phases->shared = -1;
  for (guint bit = 0; bit < s->n_bits && fewest[0] > 0 && fewest[1] > 0; bit++)
    {
      if (!(s->able[bit].cuts & phases->cuts[0]) || !(s->able[bit].cuts & phases->cuts[1]))
        continue;
      Search inner = *s, outer = *s;
      find_fewest (&inner, phases->cuts[0], (int)bit);
      find_fewest (&outer, phases->cuts[1], (int)bit);
      double time = inner.best_time + outer.best_time;
      if (inner.n_best > fewest[0] || outer.n_best > fewest[1] || time >= best_time)
        continue;
      best_time = time;
      keep (phases, 0, &inner);
      keep (phases, 1, &outer);
      phases->shared = (int)bit;
    }
}

static void
add_step (SpelchOrder *order, guint cut, const SpelchChoice *choice)
{
  const SpelchChoice *before = order->n > 0 ? order->steps[order->n - 1].choice : NULL;
  SpelchStep *step = &order->steps[order->n++];
  *step = (SpelchStep){ .cut = cut, .choice = choice };
  if (choice == NULL)
    return;
  guint first = choice->scorer >= 0 ? (guint)choice->scorer : choice->bit;
  step->changes = before != NULL && before->bit != first;
  step->turns = before != NULL && before->way_up != choice->way_up;
  order->changes += step->changes + (choice->scorer >= 0 ? 1 : 0);
  order->turns += step->turns;
  order->time_s += choice->plan.time_s;
}

/* The cuts of one phase that @bit is to cut, those with the board as it lies first. */
static void
add_group (const Search *s, const Phases *phases, int phase, guint bit, SpelchOrder *order)
{
  const SpelchChoice *before = order->n > 0 ? order->steps[order->n - 1].choice : NULL;
  SpelchFace lies = before != NULL ? before->way_up : SPELCH_FACE_A;
  for (int turned = 0; turned < 2; turned++)
    for (guint cut = 0; cut < s->n_cuts; cut++)
      {
        if (!(phases->cuts[phase] & (G_GUINT64_CONSTANT (1) << cut)))
          continue;
        const SpelchChoice *choice = quickest (s, phases->bits[phase], phases->n[phase], cut);
        if (choice->bit == bit && (choice->way_up != lies) == turned)
          add_step (order, cut, choice);
      }
}

static void
add_phases (const Search *s, const Phases *phases, SpelchOrder *order)
{
  for (guint i = 0; i < phases->n[0]; i++)
    if ((int)phases->bits[0][i] != phases->shared)
      add_group (s, phases, 0, phases->bits[0][i], order);
  if (phases->shared >= 0)
    for (int phase = 0; phase < 2; phase++)
      add_group (s, phases, phase, (guint)phases->shared, order);
  for (guint i = 0; i < phases->n[1]; i++)
    if ((int)phases->bits[1][i] != phases->shared)
      add_group (s, phases, 1, phases->bits[1][i], order);
}

static void
split_cuts (const SpelchPart *part, GPtrArray *const *rankings, guint n_cuts, Phases *phases)
{
  phases->cuts[0] = phases->cuts[1] = 0;
  for (guint cut = 0; cut < n_cuts; cut++)
    if (spelch_choose_best (rankings[cut]) != NULL)
      phases->cuts[part->cuts[cut].kind == SPELCH_CUT_OUTLINE] |= G_GUINT64_CONSTANT (1) << cut;
}

SpelchOrder *
spelch_order_find (const SpelchPart *part, GPtrArray *const *rankings, guint n_bits)
{
  SpelchOrder *order = g_new0 (SpelchOrder, 1);
  guint n_cuts = MIN (part->n_cuts, MOST_CUTS);
  g_autofree Able *able = g_new0 (Able, MAX (n_bits, 1));
  Search search = { .able = able, .n_bits = n_bits, .n_cuts = n_cuts };
  Phases phases;
  order->steps = g_new0 (SpelchStep, MAX (part->n_cuts, 1));
  find_able (part, rankings, n_cuts, able);
  drop_doubles (able, n_bits, n_cuts);
  split_cuts (part, rankings, n_cuts, &phases);
  find_phases (&search, &phases);
  add_phases (&search, &phases, order);
  /* Past the search's size each cut keeps its best bit. */
  for (guint cut = n_cuts; cut < part->n_cuts; cut++)
    add_step (order, cut, spelch_choose_best (rankings[cut]));
  for (guint cut = 0; cut < n_cuts; cut++)
    if (spelch_choose_best (rankings[cut]) == NULL)
      add_step (order, cut, NULL);
  return order;
}

void
spelch_order_free (SpelchOrder *order)
{
  g_free (order->steps);
  g_free (order);
}

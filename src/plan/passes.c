/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/passes.h"

#include <math.h>

/* Depths are set in tenths; a depth that must be reached is rounded up, if that still fits. */
static double
tenth_up (double value, double most)
{
  double tenth = ceil (value * 10 - 1e-6) / 10;
  return tenth <= most + 1e-9 ? tenth : value;
}

/* Of a board so thin that the depths its faces ask for exclude each other: half way between what they ask for
 * with everything exact; or where even that excludes itself, what the face asks for that is seen, the far one
 * before the other. */
static double
overcut_at_odds (const SpelchCase *c, const SpelchWindows *w, double from, double needed)
{
  double near = w->nominal.first_pass.from - c->thickness, far = w->nominal.last_tip.to - c->thickness;
  bool near_alone = spelch_cut_sees (c->cut, c->cut->way_up)
                    && !spelch_cut_sees (c->cut, spelch_face_other (c->cut->way_up));
  if (near <= far)
    return fmin (needed, fmax (tenth_up ((near + far) / 2, far), from));
  return near_alone ? needed : from;
}

double
spelch_passes_overcut (const SpelchCase *c, const SpelchWindows *windows)
{
  if (!c->through)
    return 0;
  if (c->cut->held.overcut_held)
    return c->cut->held.overcut.mm;
  SpelchRange far = !windows->robust.last_tip.empty ? windows->robust.last_tip : windows->nominal.last_tip;
  double least = c->k->cuts_through + spelch_case_uncertain (c, false).over_minus;
  /* Where only air is below, a bit that is too short is no reason to stop short. */
  double most = c->overcut_free ? least : c->overcut_most;
  double from = far.empty ? fmin (least, most) : far.from - c->thickness;
  double to = far.empty ? fmax (from, c->overcut_most) : far.to - c->thickness;
  SpelchRange near
      = !windows->robust.first_pass.empty ? windows->robust.first_pass : windows->nominal.first_pass;
  /* A thin board: a single pass must run far enough below it to bring the down-shear to the near face. */
  bool asks = !near.empty && near.from <= c->step_planned; /* else it isn't kept anyway */
  double needed = asks ? near.from - c->thickness : from;
  if (needed > to && !far.empty)
    return overcut_at_odds (c, windows, from, needed);
  return tenth_up (fmin (fmax (from, needed), to), to);
}

/* First pass within the clean depths, in tenths where that fits; else an even share. */
static double
first_depth (const SpelchCase *c, const SpelchWindows *windows, double final_depth, guint steps)
{
  SpelchRange near
      = !windows->robust.first_pass.empty ? windows->robust.first_pass : windows->nominal.first_pass;
  double even = tenth_up (c->start + (final_depth - c->start) / steps, final_depth);
  if (near.empty || c->scoring != NULL)
    return even;
  return fmin (fmin (fmax (even, tenth_up (near.from, near.to)), near.to), final_depth);
}

/* Depths in tenths, unless that would make a step deeper than the bit takes, or none of a finer one. */
static guint
add_steps (const SpelchCase *c, SpelchPass *passes, guint n, double from, double to, guint steps, bool held)
{
  for (guint i = 1; i <= steps && n < SPELCH_MAX_PASSES; i++)
    {
      double above = n == 0 ? c->start : passes[n - 1].tip_mm;
      double even = from + (to - from) * i / steps;
      double tenth = (to - from) / steps < 0.1 ? even : round (even * 10) / 10;
      double tip = i == steps
                       ? to
                       : fmin (fmax (tenth, to - (steps - i) * c->step_planned), above + c->step_planned);
      passes[n++]
          = (SpelchPass){ .from_mm = above, .tip_mm = tip, .tracks = c->tracks, .held = held && i == steps };
    }
  return n;
}

static guint
least_steps (const SpelchCase *c, double height)
{
  return (guint)fmax (1, ceil (height / c->step_planned - 1e-9));
}

static guint
divide_free (const SpelchCase *c, const SpelchWindows *windows, double final_depth, guint steps,
             SpelchPass *passes)
{
  double first = first_depth (c, windows, final_depth, steps);
  double slender = fmin (first, c->start + c->step_planned);
  guint n = add_steps (c, passes, 0, c->start, slender, 1, false);
  double left = final_depth - slender;
  if (left <= 1e-6)
    return n;
  guint more = MAX (steps > 1 ? steps - 1 : 1, least_steps (c, left));
  return add_steps (c, passes, n, slender, final_depth, more, false);
}

/* Held depths stay, with none between them but where a gap is too deep for the bit. */
static guint
divide_held (const SpelchCase *c, double final_depth, SpelchPass *passes)
{
  const SpelchHeld *held = &c->cut->held;
  guint n = 0;
  double from = c->start;
  for (guint i = 0; i < held->n_passes && held->passes[i].mm < final_depth - 1e-6; i++)
    {
      if (held->passes[i].mm <= from + 1e-6)
        continue;
      n = add_steps (c, passes, n, from, held->passes[i].mm, least_steps (c, held->passes[i].mm - from),
                     true);
      from = held->passes[i].mm;
    }
  return add_steps (c, passes, n, from, final_depth, least_steps (c, final_depth - from), false);
}

/* A finishing pass runs along each wall that stays; the path of a closed shape is its whole wall. */
static int
finishing_tracks (const SpelchCase *c)
{
  bool two_walls = spelch_cut_has_two_walls (c->cut);
  return two_walls && c->cut->kept == SPELCH_WALL_BOTH ? 2 : 1;
}

guint
spelch_passes_divide (const SpelchCase *c, const SpelchWindows *windows, double final_depth, guint steps,
                      SpelchPass passes[SPELCH_MAX_PASSES])
{
  guint most = SPELCH_MAX_PASSES - (c->scoring != NULL ? c->scoring->n_passes : 0);
  double to = c->skin > 0 ? c->thickness - c->skin : final_depth, height = to - c->start;
  bool more = c->skin > 0 || c->allowance > 0;
  if (height <= 1e-6 || c->step_planned <= 0 || least_steps (c, height) > most - 1)
    return 0;
  guint n
      = spelch_passes_held (c) ? divide_held (c, to, passes) : divide_free (c, windows, to, steps, passes);
  if (n + (more ? 1 : 0) > most)
    return 0;
  for (guint i = 0; i < n; i++)
    passes[i].side_allowance_mm = c->allowance;
  if (c->skin > 0)
    n = add_steps (c, passes, n, to, final_depth, 1, false);
  if (c->allowance <= 0)
    return n;
  passes[n] = (SpelchPass){ .tip_mm = passes[n - 1].tip_mm,
                            .side_allowance_mm = c->allowance,
                            .tracks = finishing_tracks (c),
                            .finishing = true };
  return n + 1;
}

bool
spelch_passes_held (const SpelchCase *c)
{
  return spelch_held_has_passes (&c->cut->held) || c->pass_plan == SPELCH_PASS_PLAN_FULL;
}

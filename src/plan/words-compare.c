/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/words-compare.h"

#include "plan/edges.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NEUTRAL_N 0.5 /* less neither lifts nor presses */

const char *
spelch_words_row (SpelchRow row)
{
  const char *const names[] = {
    [SPELCH_ROW_MOTOR_EDGE] = _ ("Motor side"),
    [SPELCH_ROW_FAR_EDGE] = _ ("Far side"),
    [SPELCH_ROW_PASSES] = _ ("Passes"),
    [SPELCH_ROW_SPEED] = _ ("Spindle"),
    [SPELCH_ROW_FEED] = _ ("Feed"),
    [SPELCH_ROW_TIME] = _ ("Cutting time"),
    [SPELCH_ROW_SEAT] = _ ("On the board"),
    [SPELCH_ROW_HOLD] = _ ("Held"),
    [SPELCH_ROW_POWER] = _ ("Power"),
    [SPELCH_ROW_RUBBING] = _ ("Rubbing"),
    [SPELCH_ROW_ROOM] = _ ("Chip room"),
    [SPELCH_ROW_WEAR] = _ ("Edge wear"),
    [SPELCH_ROW_COST] = _ ("Cost of the wear"),
  };
  return names[row];
}

char *
spelch_words_row_of (const GArray *columns, SpelchRow row)
{
  if (row != SPELCH_ROW_MOTOR_EDGE && row != SPELCH_ROW_FAR_EDGE)
    return g_strdup (spelch_words_row (row));
  const SpelchCompared *first = &g_array_index (columns, SpelchCompared, 0);
  return spelch_words_face (&first->plan, &first->cut,
                            row == SPELCH_ROW_MOTOR_EDGE ? SPELCH_SIDE_MOTOR : SPELCH_SIDE_FAR);
}

static char *
seat (double newtons, const SpelchNumbers *numbers)
{
  g_autofree char *force = spelch_words_decimal (numbers, fabs (newtons), fabs (newtons) < 10 ? 1 : 0);
  if (fabs (newtons) < NEUTRAL_N)
    return g_strdup (_ ("neither lifts nor presses"));
  return g_strdup_printf (newtons > 0 ? _ ("lifts %s N") : _ ("presses %s N"), force);
}

static char *
per_cent (double share, int decimals, const SpelchNumbers *numbers)
{
  g_autofree char *value = spelch_words_decimal (numbers, share * 100, decimals);
  return g_strdup_printf (_ ("%s %%"), value);
}

char *
spelch_words_compared (const SpelchCompared *one, SpelchRow row, const SpelchNumbers *numbers)
{
  double value = one->values[row].value;
  g_autofree char *text = NULL;
  if (!one->values[row].told)
    return g_strdup ("–");
  switch (row)
    {
    case SPELCH_ROW_MOTOR_EDGE:
    case SPELCH_ROW_FAR_EDGE:
      {
        SpelchSide side = row == SPELCH_ROW_MOTOR_EDGE ? SPELCH_SIDE_MOTOR : SPELCH_SIDE_FAR;
        return g_strdup (spelch_words_grade ((int)value, spelch_plan_facing (&one->plan, side)));
      }
    case SPELCH_ROW_PASSES:
      return spelch_words_count (value);
    case SPELCH_ROW_SPEED:
      text = spelch_words_count (value);
      return g_strdup_printf (_ ("%s rpm"), text);
    case SPELCH_ROW_FEED:
      return spelch_words_feed (numbers, value);
    case SPELCH_ROW_TIME:
      return spelch_words_time (value);
    case SPELCH_ROW_SEAT:
      return seat (value, numbers);
    case SPELCH_ROW_HOLD:
      text = spelch_words_times (numbers, value);
      return g_strdup_printf (_ ("%s times the bit's force"), text);
    case SPELCH_ROW_POWER:
      text = spelch_words_rough (value);
      return g_strdup_printf (_ ("about %s W"), text);
    case SPELCH_ROW_RUBBING:
    case SPELCH_ROW_ROOM:
      return per_cent (value, 0, numbers);
    case SPELCH_ROW_WEAR:
      return per_cent (value, 2, numbers);
    case SPELCH_ROW_COST:
    case SPELCH_N_ROWS:
    default:
      return spelch_words_decimal (numbers, value, 2);
    }
}

/* ---- What differs ---- */

static const SpelchCompared *
column (const GArray *columns, guint i)
{
  return &g_array_index (columns, SpelchCompared, i);
}

static bool
keeps_all (const SpelchCompared *one, const SpelchPart *part)
{
  return spelch_compared_keeps (one, part, true) && spelch_compared_keeps (one, part, false);
}

/* What only this one does, by what some other doesn't. */
static const char *
only_format (const GArray *columns, const SpelchPart *part)
{
  bool refused = false, seen = false, hidden = false;
  for (guint i = 0; i < columns->len; i++)
    {
      const SpelchCompared *one = column (columns, i);
      refused |= !spelch_compared_may_be_cut (one);
      seen |= spelch_compared_may_be_cut (one) && !spelch_compared_keeps (one, part, true);
      hidden |= spelch_compared_may_be_cut (one) && !spelch_compared_keeps (one, part, false);
    }
  if (refused)
    return seen || hidden ? _ ("Only “%s” may be used and leaves every edge as accepted.")
                          : _ ("Only “%s” may be used for this cut.");
  if (seen && hidden)
    return _ ("Only “%s” leaves both the seen and the hidden edges as accepted.");
  return seen ? _ ("Only “%s” leaves the seen edges as accepted.")
              : _ ("Only “%s” leaves the hidden edges as accepted.");
}

static int
by_time (gconstpointer a, gconstpointer b)
{
  const SpelchCompared *one = *(const SpelchCompared *const *)a, *other = *(const SpelchCompared *const *)b;
  return (one->plan.time_s > other->plan.time_s) - (one->plan.time_s < other->plan.time_s);
}

/* Of several that serve, the quickest. */
static char *
quickest (const GPtrArray *serve, guint n)
{
  const SpelchCompared *first = serve->pdata[0], *second = serve->pdata[1];
  g_autofree char *time = spelch_words_time (first->plan.time_s);
  g_autofree char *next = spelch_words_time (second->plan.time_s);
  if (n == 2)
    return g_strdup_printf (_ ("Both leave every edge as accepted; “%s” is quicker: %s, “%s”: %s."),
                            first->bit->name, time, second->bit->name, next);
  if (serve->len == n)
    return g_strdup_printf (_ ("All %u leave every edge as accepted; “%s” is quickest: %s, then “%s”: %s."),
                            n, first->bit->name, time, second->bit->name, next);
  return g_strdup_printf (
      _ ("%u of these %u leave every edge as accepted; “%s” is quickest: %s, then “%s”: %s."), serve->len, n,
      first->bit->name, time, second->bit->name, next);
}

static int
worst_of (const SpelchCompared *one)
{
  return 10 * spelch_edges_worst (one->plan.edges, true) + spelch_edges_worst (one->plan.edges, false);
}

static char *
nearest (const GArray *columns)
{
  const SpelchCompared *best = NULL;
  for (guint i = 0; i < columns->len; i++)
    if (spelch_compared_may_be_cut (column (columns, i))
        && (best == NULL || worst_of (column (columns, i)) < worst_of (best)))
      best = column (columns, i);
  if (best == NULL)
    return g_strdup (_ ("None of these may be used for this cut."));
  return g_strdup_printf (_ ("None of these leaves every edge as accepted; “%s” comes nearest."),
                          best->bit->name);
}

/* What the others would save, and cost. */
static char *
quicker_but (const GArray *columns, const SpelchPart *part, const SpelchCompared *best)
{
  const SpelchCompared *quick = NULL;
  for (guint i = 0; i < columns->len; i++)
    {
      const SpelchCompared *one = column (columns, i);
      if (spelch_compared_may_be_cut (one) && !keeps_all (one, part)
          && one->plan.time_s < best->plan.time_s - 1
          && (quick == NULL || one->plan.time_s < quick->plan.time_s))
        quick = one;
    }
  if (quick == NULL)
    return NULL;
  SpelchSide side
      = spelch_plan_worst (&quick->plan, SPELCH_SIDE_FAR) != NULL
                && quick->values[SPELCH_ROW_FAR_EDGE].value > quick->values[SPELCH_ROW_MOTOR_EDGE].value
            ? SPELCH_SIDE_FAR
            : SPELCH_SIDE_MOTOR;
  const SpelchEdge *edge = spelch_plan_worst (&quick->plan, side);
  g_autofree char *face = spelch_words_face (&quick->plan, &quick->cut, side);
  g_autofree char *time = spelch_words_time (quick->plan.time_s),
                  *own = spelch_words_time (best->plan.time_s);
  return g_strdup_printf (
      _ ("“%s” is quicker, %s against %s, but not clean enough. %s: %s."), quick->bit->name, time, own, face,
      spelch_words_grade (edge != NULL ? edge->grade : 1, spelch_plan_facing (&quick->plan, side)));
}

char **
spelch_words_differs (const GArray *columns, const SpelchPart *part)
{
  g_autoptr (GStrvBuilder) sentences = g_strv_builder_new ();
  g_autoptr (GPtrArray) serve = g_ptr_array_new ();
  for (guint i = 0; i < columns->len; i++)
    if (keeps_all (column (columns, i), part))
      g_ptr_array_add (serve, (gpointer)column (columns, i));
  g_ptr_array_sort (serve, by_time);
  const SpelchCompared *first = serve->len > 0 ? serve->pdata[0] : NULL;
  g_autofree char *words = serve->len == 0   ? nearest (columns)
                           : serve->len == 1 ? g_strdup_printf (only_format (columns, part), first->bit->name)
                                             : quickest (serve, columns->len);
  g_autofree char *but = first != NULL ? quicker_but (columns, part, first) : NULL;
  g_strv_builder_add (sentences, words);
  if (but != NULL)
    g_strv_builder_add (sentences, but);
  return g_strv_builder_end (sentences);
}

char *
spelch_words_refusal (const SpelchCompared *one, const SpelchNumbers *numbers)
{
  g_autofree char *stop = spelch_words_stop (&one->plan.stops[0], numbers);
  return g_strdup_printf (_ ("DO NOT CUT with “%s”: %s"), one->bit->name, stop);
}

/* ---- By depth ---- */

char *
spelch_words_stretch (const SpelchScan *scan, guint from, guint to, const SpelchNumbers *numbers)
{
  g_autofree char *first = spelch_words_at_least (numbers, spelch_scan_from (scan, from));
  g_autofree char *last = spelch_words_at_most (numbers, spelch_scan_to (scan, to - 1));
  if (from == 0 && to == scan->n)
    return g_strdup (_ ("at every depth"));
  if (from == 0)
    /* TRANSLATORS: depths at which a face is clean, "up to 6.0 mm" */
    return g_strdup_printf (_ ("up to %s"), last);
  if (to == from + 1 && g_str_equal (first, last))
    /* TRANSLATORS: the one depth at which a face is clean, "at 6.0 mm" */
    return g_strdup_printf (_ ("at %s"), first);
  if (to == scan->n)
    /* TRANSLATORS: depths at which a face is clean, "from 6.0 mm" */
    return g_strdup_printf (_ ("from %s"), first);
  /* TRANSLATORS: depths at which a face is clean, "from 6.0 mm to 9.0 mm" */
  return g_strdup_printf (_ ("from %s to %s"), first, last);
}

/* Every stretch of depths with that grade; "" where there is none. */
static char *
stretches (const SpelchScan *scan, const guint8 *grades, int grade, const SpelchNumbers *numbers)
{
  g_autoptr (GPtrArray) found = g_ptr_array_new_with_free_func (g_free);
  for (guint from = 0, to; from < scan->n; from = to)
    {
      for (to = from; to < scan->n && grades[to] == grade; to++)
        ;
      if (to > from)
        g_ptr_array_add (found, spelch_words_stretch (scan, from, to, numbers));
      else
        to++;
    }
  g_ptr_array_add (found, NULL);
  /* TRANSLATORS: between stretches of depths, "from 2.0 mm to 4.0 mm and from 9.0 mm" */
  return g_strjoinv (_ (" and "), (char **)found->pdata);
}

static char *
scanned_face (const SpelchCompared *one, const SpelchScan *scan, SpelchSide side,
              const SpelchNumbers *numbers)
{
  const guint8 *grades = side == SPELCH_SIDE_MOTOR ? scan->motor : scan->far;
  g_autofree char *face = spelch_words_face_alone (&one->plan, &one->cut, side);
  int best = 5, worst = 1;
  for (guint i = 0; i < scan->n; i++)
    {
      best = MIN (best, grades[i]);
      worst = MAX (worst, grades[i]);
    }
  const char *grade = spelch_words_grade (best, spelch_plan_facing (&one->plan, side));
  g_autofree char *where = stretches (scan, grades, best, numbers);
  /* TRANSLATORS: "Show face: clean from 6.0 mm.", "Show face: at best fuzzy grain, up to 9.0 mm." */
  return g_strdup_printf (best == 1 || best == worst ? _ ("%s: %s %s.") : _ ("%s: at best %s, %s."), face,
                          grade, where);
}

char *
spelch_words_scan (const SpelchCompared *one, const SpelchScan *scan, const SpelchNumbers *numbers)
{
  g_autoptr (GStrvBuilder) sentences = g_strv_builder_new ();
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    {
      const guint8 *grades = side == SPELCH_SIDE_MOTOR ? scan->motor : scan->far;
      if (scan->n == 0 || grades[0] == 0)
        continue;
      g_autofree char *words = scanned_face (one, scan, (SpelchSide)side, numbers);
      g_strv_builder_add (sentences, words);
    }
  g_auto (GStrv) all = g_strv_builder_end (sentences);
  return g_strjoinv (" ", all);
}

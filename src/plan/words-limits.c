/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/words-limits.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* So many remedies are said; more would be a lecture. */
#define SAID 3

char *
spelch_words_pace (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  if (plan->machine == SPELCH_MACHINE_GANTRY || plan->feed_mm_min <= 0)
    return g_strdup ("");
  bool feet = numbers->unit == SPELCH_UNIT_INCH;
  double seconds = (feet ? 12 * SPELCH_MM_PER_INCH : 1000) / plan->feed_mm_min * 60;
  g_autofree char *count = spelch_words_decimal (numbers, seconds, seconds < 9.95 ? 1 : 0);
  return g_strdup_printf (feet ? _ ("a foot in %s s") : _ ("a metre in %s s"), count);
}

char *
spelch_words_speed_held (const SpelchPlan *plan)
{
  const SpelchSpeedHeld *held = &plan->speed_held;
  double mark = held->of_mark > 0 ? plan->speed_rpm / held->of_mark : 0;
  g_autofree char *next = spelch_words_count (held->next_rpm);
  g_autofree char *marked = spelch_words_count (round (mark));
  switch (held->by)
    {
    case SPELCH_SPEED_BY_HAND:
      return g_strdup (_ ("Speed held by hand."));
    case SPELCH_SPEED_BY_MARK:
      if (held->next_rpm <= 0 || held->of_mark > 1)
        return g_strdup_printf (_ ("The bit is marked for no more than %s rpm."), marked);
      return g_strdup_printf (_ ("The next speed, %s rpm, is above the %s rpm marked on the bit."), next,
                              marked);
    case SPELCH_SPEED_BY_MACHINE:
      return g_strdup (_ ("The machine turns no faster."));
    case SPELCH_SPEED_BY_HEAT:
      return g_strdup_printf (_ ("At the next speed, %s rpm, the wall would burn."), next);
    case SPELCH_SPEED_BY_GAIN:
    default:
      return g_strdup (_ ("Turning faster would hardly gain any feed."));
    }
}

char *
spelch_words_slow (const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  g_autofree char *speed = spelch_words_decimal (numbers, plan->cutting_speed, 1);
  if (!plan->slow || plan->feed_mm_min <= 0)
    return g_strdup ("");
  return g_strdup_printf (
      _ ("Slow for this bit: its edges move at only %s m/s, and so slowly forces are less sure."), speed);
}

/* A remedy, to follow "it takes". */
static char *
remedy (const SpelchFree *freed, double speed_rpm, const SpelchNumbers *numbers)
{
  g_autofree char *length = spelch_words_at_most (numbers, freed->value);
  g_autofree char *count = spelch_words_count (freed->value);
  switch (freed->kind)
    {
    case SPELCH_FREE_SPEED:
      return g_strdup_printf (
          freed->value < speed_rpm ? _ ("a slower speed of %s rpm") : _ ("a faster speed of %s rpm"), count);
    case SPELCH_FREE_FEED:
      {
        g_autofree char *feed = spelch_words_feed (numbers, freed->value);
        return g_strdup_printf (_ ("a feed of %s"), feed);
      }
    case SPELCH_FREE_PASS:
      return g_strdup_printf (_ ("passes of no more than %s"), length);
    case SPELCH_FREE_EDGES:
      return g_strdup (_ ("a bit with a single cutting edge"));
    case SPELCH_FREE_STICK_OUT:
      return g_strdup_printf (_ ("no more than %s of stick-out"), length);
    case SPELCH_FREE_SHARP:
      return g_strdup (_ ("a sharp edge"));
    case SPELCH_FREE_ACCEPTED:
      return g_strdup_printf (_ ("accepting seen edges of grade %s"), count);
    case SPELCH_FREE_HOLDING:
      return g_strdup_printf (_ ("clamps that press with %s N"), count);
    case SPELCH_N_FREES:
    default:
      return g_strdup ("");
    }
}

static char *
remedies (const SpelchConflict *conflict, const SpelchNumbers *numbers)
{
  char *all = conflict->n_freed == 0 ? g_strdup (_ ("another bit, or another way to cut it"))
                                     : remedy (&conflict->freed[0], conflict->speed_rpm, numbers);
  for (guint i = 1; i < MIN (conflict->n_freed, SAID); i++)
    {
      g_autofree char *before = all;
      g_autofree char *one = remedy (&conflict->freed[i], conflict->speed_rpm, numbers);
      /* Translators: one thing that would do, or another. */
      all = g_strdup_printf (_ ("%s, or %s"), before, one);
    }
  return all;
}

char *
spelch_words_conflict (const SpelchConflict *conflict, const SpelchPlan *plan, const SpelchNumbers *numbers)
{
  if (!conflict->found)
    return g_strdup ("");
  g_autofree char *speed = spelch_words_count (conflict->speed_rpm);
  g_autofree char *low = spelch_words_feed (numbers, conflict->low.feed_mm_min);
  g_autofree char *high = conflict->high.feed_mm_min >= 1
                              ? spelch_words_feed (numbers, conflict->high.feed_mm_min)
                              : g_strdup (C_ ("feed", "none at all"));
  g_autofree char *takes = remedies (conflict, numbers);
  const char *low_name = spelch_words_limit_in_full (conflict->low.limit, plan);
  const char *high_name = spelch_words_limit_in_full (conflict->high.limit, plan);
  if (conflict->low.held)
    return g_strdup_printf (_ ("At %s rpm a feed of %s is held and %s allows %s: it takes %s."), speed, low,
                            high_name, high, takes);
  if (conflict->high.held)
    return g_strdup_printf (_ ("At %s rpm %s asks for at least %s and a feed of %s is held: it takes %s."),
                            speed, low_name, low, high, takes);
  return g_strdup_printf (_ ("At %s rpm %s asks for at least %s and %s allows %s: it takes %s."), speed,
                          low_name, low, high_name, high, takes);
}

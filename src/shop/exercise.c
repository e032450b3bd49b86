/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/exercise.h"

#include "shop/fault.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const char *const KINDS[] = {
  [SPELCH_ASKS_TEARS] = "tears",   [SPELCH_ASKS_FIRST_PASS] = "first-pass", [SPELCH_ASKS_BIT] = "bit",
  [SPELCH_ASKS_WAY_UP] = "way-up", [SPELCH_ASKS_LIMIT] = "limit",           [SPELCH_ASKS_HOLD] = "hold",
};
SPELCH_TABLE_HAS (KINDS, SPELCH_N_ASKS);
const SpelchCodes SPELCH_ASKS_CODES = { "question", KINDS, G_N_ELEMENTS (KINDS) };

guint
spelch_vary_count (const SpelchVary *vary)
{
  return vary->step > 0 ? (guint)floor ((vary->to - vary->from) / vary->step + 1e-6) + 1 : vary->n;
}

SpelchChange
spelch_vary_nth (const SpelchVary *vary, guint i)
{
  if (vary->step <= 0)
    return vary->one_of[MIN (i, vary->n - 1)];
  return (SpelchChange){ .what = vary->what, .number = vary->from + i * vary->step };
}

SpelchExercise *
spelch_exercise_new (void)
{
  SpelchExercise *exercise = g_new0 (SpelchExercise, 1);
  g_atomic_ref_count_init (&exercise->ref_count);
  exercise->level = 1;
  exercise->part = spelch_part_new ();
  return exercise;
}

SpelchExercise *
spelch_exercise_ref (SpelchExercise *exercise)
{
  g_atomic_ref_count_inc (&exercise->ref_count);
  return exercise;
}

void
spelch_exercise_unref (SpelchExercise *exercise)
{
  if (!g_atomic_ref_count_dec (&exercise->ref_count))
    return;
  spelch_by_language_clear (&exercise->title);
  spelch_by_language_clear (&exercise->lead);
  spelch_by_language_clear (&exercise->hint);
  spelch_by_language_clear (&exercise->follow_up.lead);
  spelch_part_unref (exercise->part);
  g_free (exercise);
}

/* ---- Drawing numbers ---- */

/* SplitMix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014): small,
 * and the same wherever it runs. */
static guint64
next (guint64 *state)
{
  guint64 z = *state += G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);
  z = (z ^ (z >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  z = (z ^ (z >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return z ^ (z >> 31);
}

/* So that exercises drawn by one seed don't all draw the first of their values; FNV-1a, 64 bits. */
static guint64
state_of (const char *id, guint32 seed)
{
  guint64 hash = G_GUINT64_CONSTANT (0xcbf29ce484222325);
  for (const char *c = id; *c != '\0'; c++)
    hash = (hash ^ (guchar)*c) * G_GUINT64_CONSTANT (0x100000001b3);
  return hash ^ seed;
}

SpelchPart *
spelch_exercise_draw (const SpelchExercise *exercise, guint32 seed)
{
  SpelchPart *part = spelch_part_copy (exercise->part);
  guint64 state = state_of (exercise->id, seed);
  for (guint i = 0; i < exercise->n_vary; i++)
    {
      const SpelchVary *vary = &exercise->vary[i];
      SpelchChange drawn = spelch_vary_nth (vary, (guint)(next (&state) % spelch_vary_count (vary)));
      spelch_change_apply (&drawn, part);
    }
  return part;
}

SpelchPart *
spelch_exercise_draw_follow_up (const SpelchExercise *exercise, guint32 seed)
{
  SpelchPart *part = spelch_exercise_draw (exercise, seed);
  if (exercise->follow_up.told)
    spelch_change_apply (&exercise->follow_up.change, part);
  return part;
}

guint
spelch_exercise_draws (const SpelchExercise *exercise)
{
  double draws = 1;
  for (guint i = 0; i < exercise->n_vary; i++)
    draws *= spelch_vary_count (&exercise->vary[i]);
  return (guint)fmin (draws, G_MAXINT);
}

/* ---- Faults ---- */

static bool
is_bit_known (const SpelchExercise *exercise, const char *id)
{
  return spelch_part_find_bit (exercise->part, id) >= 0;
}

static char *
fault_of_code (const SpelchExercise *exercise, const SpelchChange *change)
{
  const SpelchCodes *codes = spelch_change_codes (change->what);
  int value;
  if (change->what == SPELCH_CHANGE_BIT && !is_bit_known (exercise, change->code))
    return g_strdup_printf (_ ("bit '%s' isn't among the bits."), change->code);
  if (codes == NULL || spelch_code_read (codes, change->code, &value))
    return NULL;
  g_autofree char *list = spelch_codes_list (codes);
  return g_strdup_printf (_ ("“%s”: write one of %s."), change->code, list);
}

/* What the question itself is about can't be drawn or changed. */
static bool
is_asked_about (SpelchAsks asks, SpelchChangeKind what)
{
  return (asks == SPELCH_ASKS_FIRST_PASS && what == SPELCH_CHANGE_FIRST_PASS)
         || (asks == SPELCH_ASKS_BIT && (what == SPELCH_CHANGE_BIT || spelch_change_of_bit (what)))
         || (asks == SPELCH_ASKS_WAY_UP && what == SPELCH_CHANGE_WAY_UP)
         || (asks == SPELCH_ASKS_LIMIT && what == SPELCH_CHANGE_FEED);
}

static char *
fault_of_change (const SpelchExercise *exercise, const SpelchChange *change)
{
  if (is_asked_about (exercise->asks, change->what))
    return g_strdup (_ ("that is what is asked about; draw or change something else."));
  if (spelch_change_value (change->what) == SPELCH_CHANGE_IS_CODE)
    return change->by ? g_strdup (_ ("by adds to a number; write is.")) : fault_of_code (exercise, change);
  return isfinite (change->number) ? NULL : g_strdup (_ ("write a number."));
}

static char *
fault_of_range (const SpelchVary *vary)
{
  if (spelch_change_value (vary->what) == SPELCH_CHANGE_IS_CODE)
    return g_strdup (_ ("write one_of and a list: only lengths and numbers have a range."));
  if (!(vary->step > 0) || !(vary->to >= vary->from))
    return g_strdup (_ ("from must not be more than to, and step must be more than 0."));
  if ((vary->to - vary->from) / vary->step > 10000)
    return g_strdup (_ ("step is too small for that range; at most 10 000 values are drawn from."));
  return NULL;
}

static char *
fault_of_vary (const SpelchExercise *exercise, const SpelchVary *vary)
{
  char *fault = vary->n > 0 ? NULL : fault_of_range (vary);
  guint n = fault == NULL ? spelch_vary_count (vary) : 0;
  for (guint i = 0; fault == NULL && i<n; i += vary->step> 0 ? MAX (n - 1, 1) : 1)
    {
      SpelchChange change = spelch_vary_nth (vary, i);
      fault = fault_of_change (exercise, &change);
    }
  return fault;
}

/* The part with every drawn thing at its first, or last, value. */
static char *
fault_at_end (const SpelchExercise *exercise, bool last, bool follow_up)
{
  g_autoptr (SpelchPart) part = spelch_part_copy (exercise->part);
  for (guint i = 0; i < exercise->n_vary; i++)
    {
      const SpelchVary *vary = &exercise->vary[i];
      SpelchChange change = spelch_vary_nth (vary, last ? spelch_vary_count (vary) - 1 : 0);
      spelch_change_apply (&change, part);
    }
  if (follow_up)
    spelch_change_apply (&exercise->follow_up.change, part);
  return spelch_part_fault (part);
}

static char *
fault_of_draws (const SpelchExercise *exercise)
{
  for (guint i = 0; i < exercise->n_vary; i++)
    {
      g_autofree char *fault = fault_of_vary (exercise, &exercise->vary[i]);
      if (fault != NULL)
        return g_strdup_printf ("vary[%u] '%s': %s", i,
                                spelch_code_of (&SPELCH_CHANGE_CODES, (int)exercise->vary[i].what), fault);
      for (guint j = 0; j < i; j++)
        if (exercise->vary[j].what == exercise->vary[i].what)
          return g_strdup_printf (_ ("vary[%u] '%s': it is drawn already."), i,
                                  spelch_code_of (&SPELCH_CHANGE_CODES, (int)exercise->vary[i].what));
    }
  for (int last = 0; last < 2; last++)
    {
      g_autofree char *fault = fault_at_end (exercise, last == 1, false);
      if (fault != NULL)
        return g_strdup_printf (last == 1 ? _ ("with the largest values drawn: %s")
                                          : _ ("with the smallest values drawn: %s"),
                                fault);
    }
  return NULL;
}

static char *
fault_of_follow_up (const SpelchExercise *exercise)
{
  if (!exercise->follow_up.told)
    return NULL;
  char *fault = fault_of_change (exercise, &exercise->follow_up.change);
  for (int last = 0; fault == NULL && last < 2; last++)
    fault = fault_at_end (exercise, last == 1, true);
  g_autofree char *told = fault;
  return told == NULL ? NULL : g_strdup_printf ("follow_up: %s", told);
}

static char *
fault_of_question (const SpelchExercise *exercise)
{
  const SpelchPart *part = exercise->part;
  if (part->n_cuts != 1)
    return g_strdup (_ ("cut must be told: the one that is asked about."));
  const SpelchCut *cut = &part->cuts[0];
  bool needs_bit = exercise->asks != SPELCH_ASKS_BIT;
  if (needs_bit && !is_bit_known (exercise, cut->bit))
    return g_strdup (_ ("cut: bit must be told: the id of the bit it is cut with, one of bits."));
  if (!needs_bit && (part->n_bits < 2 || part->n_bits > SPELCH_BITS_MOST))
    return g_strdup_printf (_ ("bits has %u entries; offer 2 to %d to choose from."), part->n_bits,
                            SPELCH_BITS_MOST);
  if (!needs_bit && *cut->bit != '\0')
    return g_strdup (_ ("cut: bit must be left out: it is what is asked about."));
  if (exercise->asks == SPELCH_ASKS_WAY_UP && !cut->through)
    return g_strdup (_ ("cut: only a cut right through can be made either way up."));
  if (exercise->asks == SPELCH_ASKS_FIRST_PASS && spelch_held_has_passes (&cut->held))
    return g_strdup (_ ("cut: held.passes must be left out: it is what is asked about."));
  if (exercise->asks == SPELCH_ASKS_LIMIT && cut->held.feed_mm_min > 0)
    return g_strdup (_ ("cut: held.feed_mm_min must be left out: it is what is asked about."));
  return NULL;
}

static char *
fault_of_words (const SpelchExercise *exercise)
{
  const SpelchBounds bounds[] = { { "level", "", exercise->level, 1, SPELCH_LEVELS } };
  char *fault = spelch_fault_id ("id", exercise->id, false)
                    ?: spelch_fault_code ("asks", &SPELCH_ASKS_CODES, (int)exercise->asks)
                    ?: spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
  if (fault == NULL && exercise->title.n == 0)
    fault = g_strdup (_ ("title must be told."));
  return fault;
}

char *
spelch_exercise_fault (const SpelchExercise *exercise)
{
  return fault_of_words (exercise)
             ?: fault_of_question (exercise)
             ?: spelch_part_fault (exercise->part)
             ?: fault_of_draws (exercise)
             ?: fault_of_follow_up (exercise);
}

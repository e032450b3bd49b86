/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The question that is posed, and its answers.
 */
#include "plan/words-posed.h"
#include "plan/words-plain.h"

#include <glib/gi18n-lib.h>
#include <string.h>

const char *
spelch_words_asks (SpelchAsks asks)
{
  switch (asks)
    {
    case SPELCH_ASKS_TEARS:
      return _ ("Which face tears?");
    case SPELCH_ASKS_FIRST_PASS:
      return _ ("How deep must the first pass be?");
    case SPELCH_ASKS_BIT:
      return _ ("Which bit?");
    case SPELCH_ASKS_WAY_UP:
      return _ ("Which way up?");
    case SPELCH_ASKS_LIMIT:
      return _ ("What holds the feed back?");
    case SPELCH_ASKS_HOLD:
      return _ ("Will it stay put?");
    case SPELCH_N_ASKS:
    default:
      return "";
    }
}

char *
spelch_words_question (const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  switch (posed->exercise->asks)
    {
    case SPELCH_ASKS_TEARS:
      return g_strdup (
          _ ("Which face tears? Fuzzy, torn and chipped edges count; a nearly clean one doesn't."));
    case SPELCH_ASKS_FIRST_PASS:
      return g_strdup (
          _ ("How deep must the first pass be, so that the face toward the motor isn't pulled out?"));
    case SPELCH_ASKS_BIT:
      return g_strdup (
          _ ("Which bit is best? Edges as accepted come first, and of bits as good the quicker one."));
    case SPELCH_ASKS_WAY_UP:
      return g_strdup (_ ("Which face must lie toward the motor, so that every edge comes out as accepted?"));
    case SPELCH_ASKS_LIMIT:
      return g_strdup (_ ("What holds the feed back: which limit is reached first as it is fed quicker?"));
    case SPELCH_ASKS_HOLD:
      return g_strdup (_ ("Will it stay put? It must be held twice over; if it isn't, what gives first?"));
    case SPELCH_N_ASKS:
    default:
      return g_strdup ("");
    }
}

/* ---- What the teacher says ---- */

/* The value for a name in braces; NULL when there is no such. */
static char *
value_of (const char *name, const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  int what;
  if (!spelch_code_read (&SPELCH_CHANGE_CODES, name, &what))
    return NULL;
  SpelchChange now = spelch_change_now ((SpelchChangeKind)what, posed->part);
  return spelch_words_change_value (&now, posed->part, numbers);
}

char *
spelch_words_lead (const SpelchPosed *posed, const char *const *languages, const SpelchNumbers *numbers)
{
  const SpelchExercise *exercise = posed->exercise;
  const char *said
      = spelch_by_language (posed->follow_up ? &exercise->follow_up.lead : &exercise->lead, languages);
  GString *lead = g_string_new (NULL);
  while (*said != '\0')
    {
      const char *end = *said == '{' ? strchr (said, '}') : NULL;
      g_autofree char *name = end == NULL ? NULL : g_strndup (said + 1, (gsize)(end - said - 1));
      g_autofree char *value = name == NULL ? NULL : value_of (name, posed, numbers);
      if (value != NULL)
        g_string_append (lead, value);
      else
        g_string_append_c (lead, *said);
      said = value != NULL ? end + 1 : said + 1;
    }
  return g_string_free (lead, FALSE);
}

/* ---- Choices ---- */

static char *
tears_choice (const SpelchPosed *posed, const char *code)
{
  bool through = posed->part->cuts[0].through;
  if (g_str_equal (code, SPELCH_ANSWER_MOTOR))
    return g_strdup (through ? _ ("The one toward the motor") : _ ("It tears"));
  if (g_str_equal (code, SPELCH_ANSWER_FAR))
    return g_strdup (_ ("The one on the far side"));
  if (g_str_equal (code, SPELCH_ANSWER_BOTH))
    return g_strdup (_ ("Both"));
  return g_strdup (through ? _ ("Neither") : _ ("It stays clean"));
}

/* "Show face toward the motor"; where both faces are alike, "Face a toward the motor". */
static char *
way_choice (const SpelchPosed *posed, const char *code)
{
  const SpelchCut *cut = &posed->part->cuts[0];
  int face;
  if (g_str_equal (code, SPELCH_ANSWER_EITHER))
    return g_strdup (_ ("Either will do"));
  if (!spelch_code_read (&SPELCH_FACE_CODES, code, &face))
    return g_strdup (_ ("Neither will do"));
  if (cut->seen_a == cut->seen_b)
    return g_strdup_printf (_ ("Face %s toward the motor"), code);
  return g_strdup (spelch_cut_sees (cut, (SpelchFace)face) ? _ ("Show face toward the motor")
                                                           : _ ("Hidden face toward the motor"));
}

static char *
hold_choice (const char *code)
{
  int way;
  if (g_str_equal (code, SPELCH_ANSWER_STAYS))
    return g_strdup (_ ("It stays put"));
  if (g_str_equal (code, SPELCH_ANSWER_TABS) || !spelch_code_read (&SPELCH_GIVES_CODES, code, &way))
    return g_strdup (_ ("The tabs break"));
  return g_strdup (way == SPELCH_GIVES_SLIDING   ? _ ("It slides")
                   : way == SPELCH_GIVES_LIFTING ? _ ("It lifts")
                                                 : _ ("It tilts"));
}

char *
spelch_words_posed_choice (const SpelchPosed *posed, guint i, const SpelchNumbers *numbers)
{
  const char *code = posed->choices[i];
  int value = spelch_part_find_bit (posed->part, code);
  switch (posed->exercise->asks)
    {
    case SPELCH_ASKS_TEARS:
      return tears_choice (posed, code);
    case SPELCH_ASKS_FIRST_PASS:
      return g_strdup (_ ("No depth will do"));
    case SPELCH_ASKS_BIT:
      return value < 0 ? g_strdup (code) : spelch_words_bit (&posed->part->bits[value], numbers);
    case SPELCH_ASKS_WAY_UP:
      return way_choice (posed, code);
    case SPELCH_ASKS_LIMIT:
      if (!spelch_code_read (&SPELCH_LIMIT_CODES, code, &value))
        return g_strdup (code);
      return g_strdup (spelch_words_limit_subject ((SpelchLimitKind)value, &posed->plan));
    case SPELCH_ASKS_HOLD:
    case SPELCH_N_ASKS:
    default:
      return hold_choice (code);
    }
}

const char *
spelch_words_posed_meaning (const SpelchPosed *posed, guint i)
{
  int kind;
  if (posed->exercise->asks != SPELCH_ASKS_LIMIT
      || !spelch_code_read (&SPELCH_LIMIT_CODES, posed->choices[i], &kind))
    return "";
  return spelch_words_plain_limit ((SpelchLimitKind)kind, &posed->plan);
}

char *
spelch_words_given (const SpelchPosed *posed, const SpelchGiven *given, const SpelchNumbers *numbers)
{
  if (given->choice >= 0)
    return spelch_words_posed_choice (posed, (guint)given->choice, numbers);
  g_autofree char *depth = spelch_words_length (numbers, given->depth_mm);
  return g_strdup_printf (_ ("%s deep"), depth);
}

char *
spelch_words_posed_right (const SpelchPosed *posed, const SpelchNumbers *numbers)
{
  if (posed->right >= 0)
    return spelch_words_posed_choice (posed, (guint)posed->right, numbers);
  if (posed->depths.empty)
    return g_strdup (_ ("No one answer is right"));
  g_autofree char *from = spelch_words_at_least (numbers, posed->depths.from);
  g_autofree char *to = spelch_words_at_most (numbers, posed->depths.to);
  return g_strdup_printf (_ ("From %s to %s deep"), from, to);
}

const char *
spelch_words_doubt (const char *doubt)
{
  if (g_str_equal (doubt, "several"))
    return _ ("more than one answer is right");
  if (g_str_equal (doubt, "close"))
    return _ ("the right answer is too close to a wrong one: it would change with something a little off");
  if (g_str_equal (doubt, "narrow"))
    return _ ("the range of right depths is too narrow to hit");
  if (g_str_equal (doubt, "stopped"))
    return _ ("it must not be cut so at all");
  if (g_str_equal (doubt, "shallow"))
    return _ ("any depth is right");
  return _ ("no answer is right");
}

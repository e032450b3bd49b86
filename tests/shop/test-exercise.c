/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exercises: words by language, what can be drawn or changed, numbers drawn from a seed, and what is a fault.
 */
#include "samples.h"
#include "shop/exercise.h"
#include "shop/lesson.h"

/* Asks for the first pass of the sample outline: thickness from 5.5 to 6.5 mm, and a state of the edge. */
static SpelchExercise *
sample_exercise (void)
{
  SpelchExercise *exercise = spelch_exercise_new ();
  g_strlcpy (exercise->id, "sample", sizeof exercise->id);
  spelch_by_language_add (&exercise->title, "en", "A sample");
  exercise->asks = SPELCH_ASKS_FIRST_PASS;
  spelch_part_unref (exercise->part);
  exercise->part = sample_part ();
  exercise->n_vary = 2;
  exercise->vary[0] = (SpelchVary){ .what = SPELCH_CHANGE_THICKNESS, .from = 5.5, .to = 6.5, .step = 0.1 };
  exercise->vary[1] = (SpelchVary){ .what = SPELCH_CHANGE_WEAR, .n = 3 };
  const char *const states[] = { "new", "sharp", "dull" };
  for (guint i = 0; i < 3; i++)
    {
      exercise->vary[1].one_of[i].what = SPELCH_CHANGE_WEAR;
      g_strlcpy (exercise->vary[1].one_of[i].code, states[i], SPELCH_ID_SIZE);
    }
  return exercise;
}

static void
test_by_language (void)
{
  const char *const german[] = { "de_DE.UTF-8", "de_DE", "de", "C", NULL };
  const char *const french[] = { "fr_FR", "fr", "C", NULL };
  g_auto (SpelchByLanguage) words = { 0 };
  g_assert_cmpstr (spelch_by_language (&words, german), ==, "");
  spelch_by_language_add (&words, "nl", "snede");
  g_assert_cmpstr (spelch_by_language (&words, german), ==, "snede");
  spelch_by_language_add (&words, "en", "cut");
  spelch_by_language_add (&words, "de", "Schnitt");
  g_assert_cmpstr (spelch_by_language (&words, german), ==, "Schnitt");
  g_assert_cmpstr (spelch_by_language (&words, french), ==, "cut");
  spelch_by_language_add (&words, "", "anyone's");
  g_assert_cmpstr (spelch_by_language (&words, french), ==, "anyone's");
  g_assert_true (spelch_language_is_code ("de") && spelch_language_is_code ("pt_BR"));
  g_assert_false (spelch_language_is_code ("German") || spelch_language_is_code ("")
                  || spelch_language_is_code ("d"));
}

/* Every change that is made is what is found afterwards. */
static void
test_changes (void)
{
  for (int what = 0; what < SPELCH_N_CHANGES; what++)
    {
      g_autoptr (SpelchPart) part = sample_part ();
      SpelchChange change = { .what = (SpelchChangeKind)what, .number = 4 };
      const SpelchCodes *codes = spelch_change_codes (change.what);
      if (change.what == SPELCH_CHANGE_BIT)
        {
          SpelchBit other = sample_bit ();
          g_strlcpy (other.id, "other", sizeof other.id);
          spelch_part_put_bit (part, &other);
          g_strlcpy (change.code, "other", sizeof change.code);
        }
      else if (codes != NULL)
        g_strlcpy (change.code, codes->codes[1], sizeof change.code);
      spelch_change_apply (&change, part);
      SpelchChange now = spelch_change_now (change.what, part);
      g_test_message ("%s", spelch_code_of (&SPELCH_CHANGE_CODES, what));
      g_assert_cmpstr (now.code, ==, change.code);
      g_assert_cmpfloat (now.number, ==, codes != NULL || change.what == SPELCH_CHANGE_BIT ? 0 : 4);
    }
}

static void
test_change_by (void)
{
  g_autoptr (SpelchPart) part = sample_part ();
  SpelchChange more = { .what = SPELCH_CHANGE_UP_SHEAR, .by = true, .number = 2 };
  SpelchChange fewer = { .what = SPELCH_CHANGE_THICKNESS, .by = true, .number = -0.3 };
  spelch_change_apply (&more, part);
  spelch_change_apply (&fewer, part);
  g_assert_cmpfloat (part->bits[0].up_shear.mm, ==, 17.9);
  g_assert_cmpfloat (part->board.measured.mm, ==, 5.7);
}

/* A first pass that reaches through leaves nothing to a second. */
static void
test_first_pass (void)
{
  g_autoptr (SpelchPart) part = sample_part ();
  SpelchChange first = { .what = SPELCH_CHANGE_FIRST_PASS, .number = 2.5 };
  spelch_change_apply (&first, part);
  g_assert_cmpuint (part->cuts[0].held.n_passes, ==, 1);
  g_assert_cmpfloat (part->cuts[0].held.passes[0].mm, ==, 2.5);
  first.number = 6;
  spelch_change_apply (&first, part);
  g_assert_cmpuint (part->cuts[0].held.n_passes, ==, 0);
  g_assert_true (part->cuts[0].held.passes_held);
}

/* Worked out apart from the program, in another language, from the two papers' recurrences. */
static void
test_draws (void)
{
  static const struct
  {
    guint32 seed;
    double thickness;
    SpelchWear wear;
  } DRAWN[] = { { 0, 5.7, SPELCH_WEAR_SHARP },    { 1, 6.3, SPELCH_WEAR_SHARP },
                { 2, 5.6, SPELCH_WEAR_SHARP },    { 7, 6.4, SPELCH_WEAR_DULL },
                { 4711, 6.2, SPELCH_WEAR_SHARP }, { 999999, 6.3, SPELCH_WEAR_SHARP } };
  g_autoptr (SpelchExercise) exercise = sample_exercise ();
  g_assert_cmpuint (spelch_exercise_draws (exercise), ==, 33);
  for (guint i = 0; i < G_N_ELEMENTS (DRAWN); i++)
    {
      g_autoptr (SpelchPart) part = spelch_exercise_draw (exercise, DRAWN[i].seed);
      g_assert_cmpfloat_with_epsilon (part->board.measured.mm, DRAWN[i].thickness, 1e-9);
      g_assert_cmpint (part->bits[0].wear, ==, DRAWN[i].wear);
    }
  /* The exercise itself stays as it was. */
  g_assert_cmpfloat (exercise->part->board.measured.mm, ==, sample_board ().measured.mm);
}

/* Every value comes up, and none outside the range. */
static void
test_all_come_up (void)
{
  g_autoptr (SpelchExercise) exercise = sample_exercise ();
  guint seen[11] = { 0 };
  for (guint32 seed = 0; seed < 1000; seed++)
    {
      g_autoptr (SpelchPart) part = spelch_exercise_draw (exercise, seed);
      int place = (int)((part->board.measured.mm - 5.5) * 10 + 0.5);
      g_assert_true (place >= 0 && place < 11);
      seen[place]++;
    }
  /* Each a tenth of the time or so: 5 standard deviations of a binomial with 1000 and 1/11 are 45. */
  for (guint i = 0; i < G_N_ELEMENTS (seen); i++)
    g_assert_true (seen[i] > 91 - 46 && seen[i] < 91 + 46);
}

static void
test_follow_up (void)
{
  g_autoptr (SpelchExercise) exercise = sample_exercise ();
  exercise->follow_up.told = true;
  exercise->follow_up.change = (SpelchChange){ .what = SPELCH_CHANGE_UP_SHEAR, .by = true, .number = -1 };
  g_autoptr (SpelchPart) first = spelch_exercise_draw (exercise, 4),
                         next = spelch_exercise_draw_follow_up (exercise, 4);
  g_assert_cmpfloat_with_epsilon (next->bits[0].up_shear.mm, first->bits[0].up_shear.mm - 1, 1e-9);
  g_assert_cmpfloat (next->board.measured.mm, ==, first->board.measured.mm);
}

/* ---- Faults ---- */

static void
test_sound (void)
{
  g_autoptr (SpelchExercise) exercise = sample_exercise ();
  assert_sound (spelch_exercise_fault (exercise));
}

static void
test_fault_of_words (void)
{
  g_autoptr (SpelchExercise) exercise = sample_exercise ();
  exercise->level = 6;
  assert_fault (spelch_exercise_fault (exercise), "level", "6");
  exercise->level = 1;
  spelch_by_language_clear (&exercise->title);
  assert_fault (spelch_exercise_fault (exercise), "title", "told");
}

static void
test_fault_of_draw (void)
{
  g_autoptr (SpelchExercise) exercise = sample_exercise ();
  exercise->vary[0].step = 0;
  assert_fault (spelch_exercise_fault (exercise), "vary[0] 'thickness'", "step");
  exercise->vary[0].step = 0.1;
  exercise->vary[0].to = 500;
  assert_fault (spelch_exercise_fault (exercise), "largest", "500");
  exercise->vary[0].to = 6.5;
  exercise->vary[0].what = SPELCH_CHANGE_FIRST_PASS;
  assert_fault (spelch_exercise_fault (exercise), "vary[0] 'first-pass'", "asked about");
  exercise->vary[0].what = SPELCH_CHANGE_THICKNESS;
  g_strlcpy (exercise->vary[1].one_of[2].code, "rusty", SPELCH_ID_SIZE);
  assert_fault (spelch_exercise_fault (exercise), "vary[1] 'wear'", "rusty");
  exercise->vary[1] = exercise->vary[0];
  assert_fault (spelch_exercise_fault (exercise), "vary[1] 'thickness'", "already");
}

static void
test_fault_of_question (void)
{
  g_autoptr (SpelchExercise) exercise = sample_exercise ();
  exercise->asks = SPELCH_ASKS_BIT;
  assert_fault (spelch_exercise_fault (exercise), "bits", "1");
  exercise->asks = SPELCH_ASKS_WAY_UP;
  exercise->part->cuts[0].kind = SPELCH_CUT_DADO;
  exercise->part->cuts[0].through = false;
  assert_fault (spelch_exercise_fault (exercise), "cut", "through");
  exercise->asks = SPELCH_ASKS_TEARS;
  *exercise->part->cuts[0].bit = '\0';
  assert_fault (spelch_exercise_fault (exercise), "cut", "bit");
}

static void
test_fault_of_follow_up (void)
{
  g_autoptr (SpelchExercise) exercise = sample_exercise ();
  exercise->follow_up.told = true;
  exercise->follow_up.change = (SpelchChange){ .what = SPELCH_CHANGE_BIT, .code = "gone" };
  assert_fault (spelch_exercise_fault (exercise), "follow_up", "gone");
  exercise->follow_up.change = (SpelchChange){ .what = SPELCH_CHANGE_UP_SHEAR, .number = 99 };
  assert_fault (spelch_exercise_fault (exercise), "follow_up", "99");
}

static void
test_lesson (void)
{
  g_autoptr (SpelchLesson) lesson = spelch_lesson_new ();
  g_strlcpy (lesson->id, "first", sizeof lesson->id);
  spelch_by_language_add (&lesson->title, "en", "First");
  assert_fault (spelch_lesson_fault (lesson), "steps", "empty");
  lesson->n_steps = 1;
  g_strlcpy (lesson->steps[0].exercise, "Not an id", sizeof lesson->steps[0].exercise);
  assert_fault (spelch_lesson_fault (lesson), "steps[0]", "Not an id");
  g_strlcpy (lesson->steps[0].exercise, "an-id", sizeof lesson->steps[0].exercise);
  assert_sound (spelch_lesson_fault (lesson));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exercise/by-language", test_by_language);
  g_test_add_func ("/exercise/changes", test_changes);
  g_test_add_func ("/exercise/change-by", test_change_by);
  g_test_add_func ("/exercise/first-pass", test_first_pass);
  g_test_add_func ("/exercise/draws", test_draws);
  g_test_add_func ("/exercise/all-come-up", test_all_come_up);
  g_test_add_func ("/exercise/follow-up", test_follow_up);
  g_test_add_func ("/exercise/sound", test_sound);
  g_test_add_func ("/exercise/fault-of-words", test_fault_of_words);
  g_test_add_func ("/exercise/fault-of-draw", test_fault_of_draw);
  g_test_add_func ("/exercise/fault-of-question", test_fault_of_question);
  g_test_add_func ("/exercise/fault-of-follow-up", test_fault_of_follow_up);
  g_test_add_func ("/exercise/lesson", test_lesson);
  return g_test_run ();
}

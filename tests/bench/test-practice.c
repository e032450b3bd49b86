/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice without its window: what is asked, answered, kept and led through.
 */
#include "bench/practice.h"
#include "files/practice-csv.h"
#include "files/shop-data.h"

#include <glib/gstdio.h>
#include <string.h>

typedef struct
{
  char *folder;
  char *path;
  SpelchPractice *practice;
  guint changed, kept;
  char *said;
} Fixture;

static void
count_changed (Fixture *f)
{
  f->changed++;
}

static void
count_kept (Fixture *f)
{
  f->kept++;
}

static void
hear (Fixture *f, const char *words)
{
  g_free (f->said);
  f->said = g_strdup (words);
}

static SpelchPractice *
practice_at (Fixture *f)
{
  g_autofree char *exercises = g_build_filename (f->folder, "exercises", NULL);
  g_autoptr (GFile) log = g_file_new_for_path (f->path);
  return spelch_practice_new (spelch_shop_constants (), exercises, log);
}

static void
set_up (Fixture *f, gconstpointer data)
{
  g_autofree char *complaint = NULL;
  f->folder = g_dir_make_tmp ("spelch-practice-XXXXXX", NULL);
  f->path = g_build_filename (f->folder, "practice.json", NULL);
  f->practice = practice_at (f);
  g_signal_connect_swapped (f->practice, "changed", G_CALLBACK (count_changed), f);
  g_signal_connect_swapped (f->practice, "kept", G_CALLBACK (count_kept), f);
  g_signal_connect_swapped (f->practice, "said", G_CALLBACK (hear), f);
  g_assert_true (spelch_practice_set_learner (f->practice, " Ada ", &complaint));
  g_assert_cmpstr (spelch_practice_get_learner (f->practice), ==, "Ada");
  spelch_practice_set_seed (f->practice, 7);
  f->changed = f->kept = 0;
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  g_assert_finalize_object (f->practice);
  g_remove (f->path);
  g_rmdir (f->folder);
  g_free (f->folder);
  g_free (f->path);
  g_free (f->said);
}

static SpelchPracticeLog *
read_log (Fixture *f)
{
  g_autoptr (GFile) file = g_file_new_for_path (f->path);
  return spelch_practice_log_load (file, NULL, NULL);
}

/* A choice that isn't the right one. */
static const char *
wrong_choice (const SpelchPosed *posed)
{
  return posed->choices[posed->right == 0 ? 1 : 0];
}

static void
test_kept_at_once (Fixture *f, gconstpointer data)
{
  spelch_practice_ask (f->practice, "tears-up-cut-ply");
  const SpelchPosed *posed = spelch_practice_get_posed (f->practice);
  g_assert_null (spelch_practice_get_given (f->practice));
  g_assert_null (spelch_practice_get_follow_up (f->practice));
  g_assert_false (spelch_practice_answer (f->practice, "sideways", SPELCH_UNIT_MM));
  g_assert_cmpint ((int)spelch_practice_get_stage (f->practice), ==, SPELCH_STAGE_ASKED);
  g_assert_true (spelch_practice_answer (f->practice, wrong_choice (posed), SPELCH_UNIT_MM));
  g_assert_false (spelch_practice_get_given (f->practice)->right);
  g_assert_cmpuint (f->kept, ==, 1);
  g_assert_cmpuint (f->changed, ==, 2); /* asked, answered */
  g_assert_false (spelch_practice_answer (f->practice, wrong_choice (posed), SPELCH_UNIT_MM)); /* once */
  g_autoptr (SpelchPracticeLog) log = read_log (f);
  g_assert_cmpuint (log->attempts->len, ==, 1);
  const SpelchAttempt *attempt = &g_array_index (log->attempts, SpelchAttempt, 0);
  g_assert_cmpstr (attempt->learner, ==, "Ada");
  g_assert_cmpstr (attempt->exercise, ==, "tears-up-cut-ply");
  g_assert_cmpuint (attempt->seed, ==, 7);
  g_assert_cmpstr (attempt->when, !=, "");
  g_autofree char *fault = spelch_attempt_fault (attempt);
  g_assert_null (fault);
}

/* The same draw is shown as it was answered; another learner, or other numbers, are asked. */
static void
test_recalled (Fixture *f, gconstpointer data)
{
  g_autofree char *complaint = NULL;
  spelch_practice_ask (f->practice, "tears-up-cut-ply");
  spelch_practice_answer (f->practice, "far", SPELCH_UNIT_MM);
  spelch_practice_ask (f->practice, "tears-down-cut-ply");
  g_assert_null (spelch_practice_get_given (f->practice));
  spelch_practice_ask (f->practice, "tears-up-cut-ply");
  g_assert_nonnull (spelch_practice_get_given (f->practice));
  spelch_practice_draw_others (f->practice);
  g_assert_cmpuint (spelch_practice_get_seed (f->practice), !=, 7);
  g_assert_null (spelch_practice_get_given (f->practice));
  spelch_practice_set_seed (f->practice, 7);
  g_assert_nonnull (spelch_practice_get_given (f->practice));
  g_assert_true (spelch_practice_set_learner (f->practice, "Grace", &complaint));
  g_assert_null (spelch_practice_get_given (f->practice));
  g_assert_cmpuint (spelch_practice_get_progress (f->practice, "tears-up-cut-ply").tried, ==, 0);
}

/* A learner who comes in the middle of another's lesson begins it, whatever that one is asked just now; the
 * other one finds the place again. */
static void
test_another_in_the_middle (Fixture *f, gconstpointer data)
{
  g_autofree char *complaint = NULL;
  spelch_practice_begin_lesson (f->practice, spelch_practice_get_lessons (f->practice)->pdata[0]);
  spelch_practice_next (f->practice);
  g_assert_true (spelch_practice_answer (f->practice, wrong_choice (spelch_practice_get_posed (f->practice)),
                                         SPELCH_UNIT_MM));
  spelch_practice_next (f->practice);
  g_assert_true (spelch_practice_get_posed (f->practice)->follow_up);
  g_assert_true (spelch_practice_set_learner (f->practice, "Grace", &complaint));
  g_assert_false (spelch_practice_get_posed (f->practice)->follow_up);
  g_assert_cmpuint (spelch_practice_get_step (f->practice), ==, 0);
  g_assert_cmpint ((int)spelch_practice_get_stage (f->practice), ==, SPELCH_STAGE_TELLING);
  g_assert_true (spelch_practice_set_learner (f->practice, "Ada", &complaint));
  g_assert_true (spelch_practice_get_posed (f->practice)->follow_up);
}

static void
test_names (Fixture *f, gconstpointer data)
{
  char *complaint = NULL;
  g_autofree char *endless = g_strnfill (2 * SPELCH_NAME_SIZE, 'a');
  const char *bad[] = { "", "   ", endless };
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_assert_false (spelch_practice_set_learner (f->practice, bad[i], &complaint));
      g_assert_cmpstr (complaint, !=, "");
      g_clear_pointer (&complaint, g_free);
      g_assert_cmpstr (spelch_practice_get_learner (f->practice), ==, "Ada");
    }
}

/* Answers that can't be written wait, are told of, and are written with the next. */
static void
test_not_lost (Fixture *f, gconstpointer data)
{
  g_assert_true (g_file_set_contents (f->path, "{", -1, NULL));
  spelch_practice_ask (f->practice, "tears-up-cut-ply");
  g_assert_true (spelch_practice_answer (f->practice, "far", SPELCH_UNIT_MM));
  g_assert_nonnull (f->said);
  g_assert_nonnull (strstr (f->said, "practice.json"));
  g_assert_cmpint ((int)spelch_practice_get_stage (f->practice), ==, SPELCH_STAGE_ANSWERED);
  g_autoptr (GArray) waiting = spelch_practice_copy_attempts (f->practice);
  g_assert_cmpuint (waiting->len, ==, 1);
  g_assert_cmpuint (spelch_practice_get_progress (f->practice, NULL).tried, ==, 1);
  g_remove (f->path);
  spelch_practice_ask (f->practice, "tears-down-cut-ply");
  g_assert_true (spelch_practice_answer (f->practice, "far", SPELCH_UNIT_MM));
  g_assert_cmpstr (f->said, ==, "");
  g_autoptr (SpelchPracticeLog) log = read_log (f);
  g_assert_cmpuint (log->attempts->len, ==, 2);
  g_assert_cmpstr (g_array_index (log->attempts, SpelchAttempt, 0).exercise, ==, "tears-up-cut-ply");
}

/* Also what another program wrote meanwhile is there. */
static void
test_looks (Fixture *f, gconstpointer data)
{
  SpelchPractice *other = practice_at (f);
  g_autofree char *complaint = NULL;
  spelch_practice_set_learner (other, "Ada", &complaint);
  spelch_practice_ask (other, "tears-up-cut-ply");
  spelch_practice_answer (other, "motor", SPELCH_UNIT_MM);
  g_assert_cmpuint (spelch_practice_count_right (f->practice), ==, 0);
  spelch_practice_look (f->practice);
  g_assert_cmpuint (spelch_practice_count_right (f->practice), ==, 1);
  g_assert_finalize_object (other);
}

/* Every exercise, answered with each of its choices, is graded the same from the table that is exported. */
static void
test_graded_again (Fixture *f, gconstpointer data)
{
  const GPtrArray *exercises = spelch_practice_get_exercises (f->practice);
  g_autoptr (GPtrArray) problems = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < exercises->len; i++)
    {
      const SpelchExercise *exercise = exercises->pdata[i];
      spelch_practice_set_seed (f->practice, 7 + i);
      spelch_practice_ask (f->practice, exercise->id);
      const SpelchPosed *posed = spelch_practice_get_posed (f->practice);
      g_assert_true (spelch_practice_answer (
          f->practice, posed->by_depth ? "9/32 in" : posed->choices[i % posed->n_choices], SPELCH_UNIT_MM));
      spelch_practice_ask_follow_up (f->practice);
      posed = spelch_practice_get_posed (f->practice);
      g_assert_true (posed->follow_up);
      g_assert_true (
          spelch_practice_answer (f->practice, posed->by_depth ? "8,3" : posed->choices[0], SPELCH_UNIT_MM));
    }
  g_autoptr (GArray) all = spelch_practice_copy_attempts (f->practice);
  g_assert_cmpuint (all->len, ==, 2 * exercises->len);
  g_autofree char *table = spelch_attempts_to_csv (all, "Ada", ',');
  g_autoptr (GArray) marked = spelch_attempts_from_csv (table, strlen (table), problems);
  g_assert_cmpuint (problems->len, ==, 0);
  g_assert_cmpuint (marked->len, ==, all->len);
  for (guint i = 0; i < marked->len; i++)
    {
      const SpelchAttempt *attempt = &g_array_index (marked, SpelchMarked, i).attempt;
      g_autoptr (SpelchPosed) posed
          = spelch_posed_new (spelch_shop_constants (), spelch_exercises_find (exercises, attempt->exercise),
                              attempt->seed, attempt->follow_up);
      SpelchGiven given = spelch_posed_grade (posed, attempt->answer, SPELCH_UNIT_INCH);
      g_assert_true (given.understood);
      g_assert_cmpint (given.right, ==, g_array_index (all, SpelchAttempt, i).right);
    }
}

/* ---- Lessons ---- */

static void
answer_anyhow (Fixture *f)
{
  const SpelchPosed *posed = spelch_practice_get_posed (f->practice);
  g_assert_true (
      spelch_practice_answer (f->practice, posed->by_depth ? "10 mm" : posed->choices[0], SPELCH_UNIT_MM));
}

/* Each step tells, asks and, where it says so, asks the follow-up; then come the closing words. */
static void
test_lesson (Fixture *f, gconstpointer data)
{
  const SpelchLesson *lesson = spelch_practice_get_lessons (f->practice)->pdata[0];
  spelch_practice_begin_lesson (f->practice, lesson);
  g_assert_false (spelch_practice_has_back (f->practice));
  for (guint step = 0; step < lesson->n_steps; step++)
    {
      g_assert_cmpuint (spelch_practice_get_step (f->practice), ==, step);
      g_assert_cmpint ((int)spelch_practice_get_stage (f->practice), ==, SPELCH_STAGE_TELLING);
      g_assert_cmpstr (spelch_practice_get_posed (f->practice)->exercise->id, ==,
                       lesson->steps[step].exercise);
      spelch_practice_next (f->practice);
      g_assert_false (spelch_practice_has_finished (f->practice, lesson));
      answer_anyhow (f);
      spelch_practice_next (f->practice);
      if (!lesson->steps[step].follow_up)
        continue;
      g_assert_true (spelch_practice_get_posed (f->practice)->follow_up);
      g_assert_false (spelch_practice_has_finished (f->practice, lesson));
      answer_anyhow (f);
      spelch_practice_next (f->practice);
    }
  g_assert_cmpint ((int)spelch_practice_get_stage (f->practice), ==, SPELCH_STAGE_CLOSING);
  g_assert_nonnull (spelch_practice_get_lesson (f->practice));
  g_assert_true (spelch_practice_has_finished (f->practice, lesson));
  /* Walked through again, it is shown as it was answered, and is as long. */
  guint moves = 0, expected = 2 * lesson->n_steps;
  for (guint step = 0; step < lesson->n_steps; step++)
    expected += lesson->steps[step].follow_up ? 1 : 0;
  spelch_practice_begin_lesson (f->practice, lesson);
  for (; spelch_practice_get_stage (f->practice) != SPELCH_STAGE_CLOSING && moves < 100; moves++)
    spelch_practice_next (f->practice);
  g_assert_cmpuint (moves, ==, expected);
  spelch_practice_next (f->practice);
  g_assert_null (spelch_practice_get_lesson (f->practice));
  g_assert_cmpint ((int)spelch_practice_get_stage (f->practice), ==, SPELCH_STAGE_ASKED);
}

/* Back and forth over everything without answering, and always to an end. */
static void
test_lesson_back (Fixture *f, gconstpointer data)
{
  const SpelchLesson *lesson = spelch_practice_get_lessons (f->practice)->pdata[0];
  spelch_practice_begin_lesson (f->practice, lesson);
  while (spelch_practice_get_stage (f->practice) != SPELCH_STAGE_CLOSING)
    spelch_practice_next (f->practice);
  g_assert_cmpuint (spelch_practice_get_step (f->practice), ==, lesson->n_steps);
  g_assert_false (spelch_practice_has_finished (f->practice, lesson));
  guint moves = 0;
  for (; spelch_practice_has_back (f->practice) && moves < 100; moves++)
    spelch_practice_back (f->practice);
  g_assert_cmpuint (spelch_practice_get_step (f->practice), ==, 0);
  g_assert_cmpint ((int)spelch_practice_get_stage (f->practice), ==, SPELCH_STAGE_TELLING);
  g_assert_cmpuint (moves, <, 100);
  g_autoptr (GArray) all = spelch_practice_copy_attempts (f->practice);
  g_assert_cmpuint (all->len, ==, 0);
}

/* Who comes back goes on with what wasn't tried; a lesson begins by itself once only. */
static void
test_begin (Fixture *f, gconstpointer data)
{
  g_autofree char *complaint = NULL;
  spelch_practice_begin (f->practice);
  g_assert_true (spelch_practice_get_lesson (f->practice)
                 == spelch_practice_get_lessons (f->practice)->pdata[0]);
  spelch_practice_ask (f->practice, "tears-up-cut-ply");
  g_assert_true (spelch_practice_answer (f->practice, "far", SPELCH_UNIT_MM));
  SpelchPractice *again = practice_at (f);
  spelch_practice_set_learner (again, "Ada", &complaint);
  spelch_practice_look (again);
  spelch_practice_begin (again);
  g_assert_null (spelch_practice_get_lesson (again));
  g_assert_cmpint ((int)spelch_practice_get_stage (again), ==, SPELCH_STAGE_ASKED);
  const char *asked = spelch_practice_get_posed (again)->exercise->id;
  g_assert_cmpuint (spelch_practice_get_progress (again, asked).tried, ==, 0);
  g_assert_finalize_object (again);
}

static void
same_place (SpelchPractice *a, SpelchPractice *b)
{
  g_assert_true (spelch_practice_get_lesson (a) == spelch_practice_get_lesson (b));
  g_assert_cmpuint (spelch_practice_get_step (a), ==, spelch_practice_get_step (b));
  g_assert_cmpint ((int)spelch_practice_get_stage (a), ==, (int)spelch_practice_get_stage (b));
  g_assert_cmpuint (spelch_practice_get_seed (a), ==, spelch_practice_get_seed (b));
  g_assert_cmpstr (spelch_practice_get_posed (a)->exercise->id, ==,
                   spelch_practice_get_posed (b)->exercise->id);
  g_assert_true (spelch_practice_get_posed (a)->follow_up == spelch_practice_get_posed (b)->follow_up);
}

/* The same learner another day. */
static SpelchPractice *
another_day (Fixture *f, const char *learner)
{
  char *complaint = NULL;
  SpelchPractice *practice = practice_at (f);
  g_assert_true (spelch_practice_set_learner (practice, learner, &complaint));
  spelch_practice_look (practice);
  spelch_practice_begin (practice);
  return practice;
}

/* At every stage of it a lesson is gone on with where it was left: what was answered stands there, and what
 * comes next is the same. */
static void
test_gone_on_with (Fixture *f, gconstpointer data)
{
  const SpelchLesson *lesson = spelch_practice_get_lessons (f->practice)->pdata[0];
  guint stages = 0;
  spelch_practice_begin_lesson (f->practice, lesson);
  for (; spelch_practice_get_stage (f->practice) != SPELCH_STAGE_CLOSING; stages++)
    {
      SpelchPractice *again = another_day (f, "Ada");
      same_place (again, f->practice);
      g_assert_cmpuint (spelch_practice_get_left_at (again, lesson), ==,
                        stages == 0 ? 0 : spelch_practice_get_step (f->practice) + 1);
      g_assert_finalize_object (again);
      const SpelchPosed *posed = spelch_practice_get_posed (f->practice);
      if (spelch_practice_get_stage (f->practice) == SPELCH_STAGE_ASKED)
        g_assert_true (spelch_practice_answer (f->practice, posed->by_depth ? "9 mm" : wrong_choice (posed),
                                               SPELCH_UNIT_MM));
      else
        spelch_practice_next (f->practice);
    }
  g_assert_cmpuint (stages, >, 3 * lesson->n_steps); /* told, asked, answered, and follow-ups */
  SpelchPractice *after = another_day (f, "Ada");
  g_assert_null (spelch_practice_get_lesson (after)); /* finished */
  g_assert_cmpuint (spelch_practice_get_left_at (after, lesson), ==, 0);
  g_assert_finalize_object (after);
}

/* It is each learner's own; what was done beside it doesn't end it; and it can be begun again, with other
 * numbers. */
static void
test_place_of_ones_own (Fixture *f, gconstpointer data)
{
  const SpelchLesson *lesson = spelch_practice_get_lessons (f->practice)->pdata[0];
  g_autofree char *complaint = NULL;
  spelch_practice_begin_lesson (f->practice, lesson);
  spelch_practice_next (f->practice); /* asked */
  spelch_practice_next (f->practice); /* passed over: told of the second */
  g_assert_cmpuint (spelch_practice_get_step (f->practice), ==, 1);
  spelch_practice_ask (f->practice, "way-up-mdf");
  g_assert_null (spelch_practice_get_lesson (f->practice));
  SpelchPractice *again = another_day (f, "Ada");
  g_assert_true (spelch_practice_get_lesson (again) == lesson);
  g_assert_cmpuint (spelch_practice_get_step (again), ==, 1);
  g_assert_finalize_object (again);
  spelch_practice_take_up_lesson (f->practice, lesson);
  g_assert_cmpuint (spelch_practice_get_step (f->practice), ==, 1);
  g_assert_cmpuint (spelch_practice_get_seed (f->practice), ==, 7);

  SpelchPractice *grace = another_day (f, "Grace");
  g_assert_cmpuint (spelch_practice_get_left_at (grace, lesson), ==, 0);
  g_assert_cmpuint (spelch_practice_get_step (grace), ==, 0);
  g_assert_true (spelch_practice_set_learner (grace, "Ada", &complaint));
  g_assert_cmpuint (spelch_practice_get_step (grace), ==, 1);
  g_assert_finalize_object (grace);

  spelch_practice_begin_again (f->practice);
  g_assert_cmpuint (spelch_practice_get_step (f->practice), ==, 0);
  g_assert_cmpint ((int)spelch_practice_get_stage (f->practice), ==, SPELCH_STAGE_TELLING);
  g_assert_cmpuint (spelch_practice_get_seed (f->practice), !=, 7);
  g_assert_cmpuint (spelch_practice_get_left_at (f->practice, lesson), ==, 0);
}

/* Merely looking in writes nothing; a place that can't be written waits, and is written with the next. */
static void
test_place_waits (Fixture *f, gconstpointer data)
{
  const SpelchLesson *lesson = spelch_practice_get_lessons (f->practice)->pdata[0];
  g_autoptr (GError) error = NULL;
  spelch_practice_begin (f->practice);
  g_assert_false (g_file_test (f->path, G_FILE_TEST_EXISTS));
  g_assert_true (g_file_set_contents (f->path, "{", -1, &error));
  spelch_practice_next (f->practice);
  g_assert_nonnull (strstr (f->said, "practice.json"));
  g_assert_cmpuint (spelch_practice_get_left_at (f->practice, lesson), ==, 1);
  g_assert_cmpint (g_remove (f->path), ==, 0);
  spelch_practice_look (f->practice);
  g_assert_cmpstr (f->said, ==, "");
  SpelchPractice *again = another_day (f, "Ada");
  same_place (again, f->practice);
  g_assert_finalize_object (again);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, test) g_test_add ("/practice/" name, Fixture, NULL, set_up, test, tear_down)
  ADD ("kept at once", test_kept_at_once);
  ADD ("recalled", test_recalled);
  ADD ("names", test_names);
  ADD ("another-in-the-middle", test_another_in_the_middle);
  ADD ("not lost", test_not_lost);
  ADD ("looks", test_looks);
  ADD ("graded again", test_graded_again);
  ADD ("lesson", test_lesson);
  ADD ("lesson back", test_lesson_back);
  ADD ("begin", test_begin);
  ADD ("gone-on-with", test_gone_on_with);
  ADD ("place-of-ones-own", test_place_of_ones_own);
  ADD ("place-waits", test_place_waits);
#undef ADD
  return g_test_run ();
}

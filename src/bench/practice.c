/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/practice.h"
#include "bench/practice-kept.h"
#include "shop/fault.h"

#include <glib/gi18n-lib.h>
#include <string.h>

struct _SpelchPractice
{
  GObject parent_instance;
  const SpelchConstants *constants;
  GPtrArray *exercises;
  GPtrArray *problems;
  SpelchPracticeKept *kept;
  GHashTable *answers; /* what was answered while the window is open: question -> answer */

  char learner[SPELCH_NAME_SIZE];
  guint32 seed;
  SpelchExercise *exercise; /* NULL: there is none at all */
  SpelchPosed *posed;
  SpelchPosed *follow_up; /* made when it is looked at */
  SpelchGiven given;
  SpelchStage stage;
  const SpelchLesson *lesson;
  guint step;
};

G_DEFINE_FINAL_TYPE (SpelchPractice, spelch_practice, G_TYPE_OBJECT)

enum
{
  SIGNAL_CHANGED,
  SIGNAL_KEPT,
  SIGNAL_SAID,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* ---- Answers that are kept ---- */

/* @words: what is to be said of what was done with them, taken; NULL: nothing. */
static void
tell_kept (SpelchPractice *self, char *words)
{
  if (words != NULL)
    g_signal_emit (self, signals[SIGNAL_SAID], 0, words);
  g_signal_emit (self, signals[SIGNAL_KEPT], 0);
  g_free (words);
}

void
spelch_practice_look (SpelchPractice *self)
{
  tell_kept (self, spelch_practice_kept_look (self->kept));
}

guint
spelch_practice_count_waiting (SpelchPractice *self)
{
  return spelch_practice_kept_count_waiting (self->kept);
}

GArray *
spelch_practice_copy_attempts (SpelchPractice *self)
{
  return spelch_practice_kept_copy_attempts (self->kept);
}

SpelchProgress
spelch_practice_get_progress (SpelchPractice *self, const char *exercise)
{
  g_autoptr (GArray) all = spelch_practice_copy_attempts (self);
  return spelch_attempts_progress (all, self->learner, exercise);
}

bool
spelch_practice_has_finished (SpelchPractice *self, const SpelchLesson *lesson)
{
  bool finished = lesson->n_steps > 0;
  for (guint i = 0; i < lesson->n_steps && finished; i++)
    finished = spelch_practice_kept_has_answered (self->kept, self->learner, &lesson->steps[i]);
  return finished;
}

guint
spelch_practice_count_right (SpelchPractice *self)
{
  guint right = 0;
  for (guint i = 0; i < self->exercises->len; i++)
    {
      const SpelchExercise *exercise = self->exercises->pdata[i];
      right += spelch_practice_get_progress (self, exercise->id).last_right ? 1 : 0;
    }
  return right;
}

bool
spelch_practice_has_tried (SpelchPractice *self)
{
  g_autoptr (GArray) all = spelch_practice_copy_attempts (self);
  return spelch_attempts_progress (all, self->learner, NULL).tried > 0;
}

/* ---- The question ---- */

static char *
key_of (const char *exercise, guint32 seed, bool follow_up, const char *learner)
{
  return g_strdup_printf ("%s/%u/%d/%s", exercise, seed, follow_up, learner);
}

static char *
question_key (SpelchPractice *self)
{
  return key_of (self->exercise->id, self->seed, self->posed->follow_up, self->learner);
}

/* One that was answered since the window was opened, or in the lesson that is gone on with, is shown as it
 * was answered. */
static void
recall (SpelchPractice *self)
{
  self->stage = SPELCH_STAGE_ASKED;
  if (self->posed == NULL)
    return;
  g_autofree char *key = question_key (self);
  const char *answer = g_hash_table_lookup (self->answers, key);
  if (answer == NULL)
    return;
  SpelchGiven given = spelch_posed_grade (self->posed, answer, SPELCH_UNIT_MM);
  if (!given.understood)
    return;
  self->given = given;
  self->stage = SPELCH_STAGE_ANSWERED;
}

/* Poses @exercise, or its follow-up, by the seed; the caller tells that something changed. */
static void
pose (SpelchPractice *self, SpelchExercise *exercise, bool follow_up)
{
  SpelchExercise *old = self->exercise;
  g_clear_pointer (&self->posed, spelch_posed_free);
  g_clear_pointer (&self->follow_up, spelch_posed_free);
  self->exercise = exercise == NULL ? NULL : spelch_exercise_ref (exercise);
  if (old != NULL)
    spelch_exercise_unref (old);
  if (exercise != NULL)
    self->posed = spelch_posed_new (self->constants, exercise, self->seed, follow_up);
  recall (self);
}

/* Called wherever another step, stage or draw is shown. */
static void
keep_place (SpelchPractice *self)
{
  SpelchLessonPlace place = { .seed = self->seed, .finished = self->stage == SPELCH_STAGE_CLOSING };
  bool changes = false;
  if (self->lesson == NULL || self->lesson->n_steps == 0)
    return;
  g_strlcpy (place.learner, self->learner, sizeof place.learner);
  g_strlcpy (place.lesson, self->lesson->id, sizeof place.lesson);
  g_strlcpy (place.exercise, self->lesson->steps[MIN (self->step, self->lesson->n_steps - 1)].exercise,
             sizeof place.exercise);
  place.told = self->stage != SPELCH_STAGE_TELLING;
  place.follow_up = place.told && self->posed != NULL && self->posed->follow_up;
  char *words = spelch_practice_kept_put_place (self->kept, &place, &changes);
  if (changes)
    tell_kept (self, words);
}

static void
changed (SpelchPractice *self)
{
  keep_place (self);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

void
spelch_practice_set_seed (SpelchPractice *self, guint32 seed)
{
  SpelchStage before = self->stage;
  self->seed = MIN (seed, SPELCH_SEED_MOST);
  pose (self, self->exercise, self->posed != NULL && self->posed->follow_up);
  if (before == SPELCH_STAGE_TELLING || before == SPELCH_STAGE_CLOSING)
    self->stage = before;
  changed (self);
}

/* A seed by chance, another than now. */
static guint32
other_seed (SpelchPractice *self)
{
  guint32 seed;
  do
    seed = 1 + g_random_int () % SPELCH_SEED_MOST;
  while (seed == self->seed);
  return seed;
}

void
spelch_practice_draw_others (SpelchPractice *self)
{
  spelch_practice_set_seed (self, other_seed (self));
}

void
spelch_practice_ask (SpelchPractice *self, const char *exercise)
{
  SpelchExercise *found = spelch_exercises_find (self->exercises, exercise);
  if (found == NULL)
    return;
  self->lesson = NULL;
  pose (self, found, false);
  changed (self);
}

bool
spelch_practice_answer (SpelchPractice *self, const char *answer, SpelchUnit unit)
{
  if (self->posed == NULL || self->stage != SPELCH_STAGE_ASKED)
    return false;
  SpelchGiven given = spelch_posed_grade (self->posed, answer, unit);
  if (!given.understood)
    return false;
  SpelchAttempt attempt;
  spelch_posed_attempt (self->posed, &given, self->learner, &attempt);
  spelch_attempt_now (attempt.when);
  g_hash_table_insert (self->answers, question_key (self), g_strdup (attempt.answer));
  self->given = given;
  self->stage = SPELCH_STAGE_ANSWERED;
  tell_kept (self, spelch_practice_kept_add (self->kept, &attempt));
  changed (self);
  return true;
}

const SpelchPosed *
spelch_practice_get_follow_up (SpelchPractice *self)
{
  if (self->posed == NULL || self->posed->follow_up || self->stage != SPELCH_STAGE_ANSWERED
      || !self->exercise->follow_up.told)
    return NULL;
  if (self->follow_up == NULL)
    self->follow_up = spelch_posed_new (self->constants, self->exercise, self->seed, true);
  return self->follow_up;
}

void
spelch_practice_ask_follow_up (SpelchPractice *self)
{
  if (spelch_practice_get_follow_up (self) == NULL)
    return;
  pose (self, self->exercise, true);
  changed (self);
}

/* ---- Lessons ---- */

static const SpelchStep *
current_step (SpelchPractice *self)
{
  return self->lesson != NULL && self->step < self->lesson->n_steps ? &self->lesson->steps[self->step] : NULL;
}

static void
enter_step (SpelchPractice *self, guint step)
{
  self->step = step;
  const SpelchStep *now = current_step (self);
  if (now == NULL)
    {
      self->stage = SPELCH_STAGE_CLOSING;
      return;
    }
  SpelchExercise *exercise = spelch_exercises_find (self->exercises, now->exercise);
  if (exercise != NULL)
    pose (self, exercise, false);
  if (now->telling.n > 0 || exercise == NULL)
    self->stage = SPELCH_STAGE_TELLING;
}

/* ---- Where a learner goes on ---- */

/* The place to go on at, and its step; NULL where the lesson is to be begun. */
static const SpelchLessonPlace *
place_in (SpelchPractice *self, const SpelchLesson *lesson, guint *step)
{
  const SpelchLessonPlace *place = spelch_practice_kept_get_place (self->kept, self->learner, lesson->id);
  bool there = place != NULL && spelch_lesson_place_step (place, lesson, step)
               && spelch_exercises_find (self->exercises, place->exercise) != NULL;
  return there ? place : NULL;
}

guint
spelch_practice_get_left_at (SpelchPractice *self, const SpelchLesson *lesson)
{
  guint step = 0;
  const SpelchLessonPlace *place = place_in (self, lesson, &step);
  return place != NULL && (step > 0 || place->told) ? step + 1 : 0;
}

/* What this learner answered to these numbers stands there again. */
static void
remember_answers (SpelchPractice *self, guint32 seed)
{
  g_autoptr (GArray) all = spelch_practice_copy_attempts (self);
  for (guint i = 0; i < all->len; i++)
    {
      const SpelchAttempt *one = &g_array_index (all, SpelchAttempt, i);
      if (one->seed == seed && g_str_equal (one->learner, self->learner))
        g_hash_table_insert (self->answers, key_of (one->exercise, one->seed, one->follow_up, one->learner),
                             g_strdup (one->answer));
    }
}

/* Where the learner left the lesson; false where it is to be begun. The caller tells that something changed.
 */
static bool
take_up (SpelchPractice *self, const SpelchLesson *lesson)
{
  guint step = 0;
  const SpelchLessonPlace *kept = place_in (self, lesson, &step);
  if (kept == NULL)
    return false;
  SpelchLessonPlace place = *kept;
  self->lesson = lesson;
  self->seed = MIN (place.seed, SPELCH_SEED_MOST);
  remember_answers (self, self->seed);
  enter_step (self, step);
  if (place.told)
    recall (self);
  if (place.told && place.follow_up && lesson->steps[step].follow_up && self->exercise->follow_up.told)
    pose (self, self->exercise, true);
  return true;
}

void
spelch_practice_take_up_lesson (SpelchPractice *self, const SpelchLesson *lesson)
{
  if (spelch_practice_get_left_at (self, lesson) > 0 && take_up (self, lesson))
    changed (self);
  else
    spelch_practice_begin_lesson (self, lesson);
}

void
spelch_practice_begin_again (SpelchPractice *self)
{
  if (self->lesson == NULL)
    return;
  self->seed = other_seed (self);
  spelch_practice_begin_lesson (self, self->lesson);
}

void
spelch_practice_begin_lesson (SpelchPractice *self, const SpelchLesson *lesson)
{
  self->lesson = lesson;
  enter_step (self, 0);
  changed (self);
}

/* The next one in the list; NULL at its end. */
static SpelchExercise *
next_exercise (SpelchPractice *self)
{
  guint at = 0;
  bool there = g_ptr_array_find (self->exercises, self->exercise, &at);
  return there && at + 1 < self->exercises->len ? self->exercises->pdata[at + 1] : NULL;
}

/* The easiest that this learner hasn't tried yet; the first where there is none. */
static SpelchExercise *
first_to_do (SpelchPractice *self)
{
  for (guint i = 0; i < self->exercises->len; i++)
    {
      SpelchExercise *exercise = self->exercises->pdata[i];
      if (spelch_practice_get_progress (self, exercise->id).tried == 0)
        return exercise;
    }
  return self->exercises->len > 0 ? self->exercises->pdata[0] : NULL;
}

void
spelch_practice_begin (SpelchPractice *self)
{
  const GPtrArray *lessons = spelch_practice_get_lessons (self);
  bool going_on = false;
  for (guint i = 0; i < lessons->len && !going_on; i++)
    going_on = take_up (self, lessons->pdata[i]);
  if (!going_on)
    {
      self->lesson = lessons->len > 0 && !spelch_practice_has_tried (self) ? lessons->pdata[0] : NULL;
      if (self->lesson != NULL)
        enter_step (self, 0);
      else
        pose (self, first_to_do (self), false);
    }
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0); /* nothing was done yet that is worth keeping */
}

bool
spelch_practice_has_next (SpelchPractice *self)
{
  return self->lesson != NULL || next_exercise (self) != NULL;
}

static void
next_in_lesson (SpelchPractice *self)
{
  const SpelchStep *step = current_step (self);
  if (step == NULL)
    {
      self->lesson = NULL;
      pose (self, first_to_do (self), false);
      return;
    }
  if (self->stage == SPELCH_STAGE_TELLING && spelch_exercises_find (self->exercises, step->exercise) != NULL)
    recall (self);
  else if (step->follow_up && spelch_practice_get_follow_up (self) != NULL)
    pose (self, self->exercise, true);
  else
    enter_step (self, self->step + 1);
}

void
spelch_practice_next (SpelchPractice *self)
{
  if (!spelch_practice_has_next (self))
    return;
  if (self->lesson != NULL)
    next_in_lesson (self);
  else
    pose (self, next_exercise (self), false);
  changed (self);
}

bool
spelch_practice_has_back (SpelchPractice *self)
{
  bool first = self->step == 0 && self->stage == SPELCH_STAGE_TELLING;
  return self->posed != NULL && (self->lesson != NULL ? !first : self->posed->follow_up);
}

void
spelch_practice_back (SpelchPractice *self)
{
  if (!spelch_practice_has_back (self))
    return;
  bool asks = self->stage == SPELCH_STAGE_ASKED || self->stage == SPELCH_STAGE_ANSWERED;
  if (asks && self->posed->follow_up)
    pose (self, self->exercise, false);
  else if (asks && current_step (self) != NULL && current_step (self)->telling.n > 0)
    self->stage = SPELCH_STAGE_TELLING;
  else if (self->step > 0)
    enter_step (self, self->step - 1);
  changed (self);
}

/* ---- What is looked at ---- */

const GPtrArray *
spelch_practice_get_exercises (SpelchPractice *self)
{
  return self->exercises;
}

const GPtrArray *
spelch_practice_get_lessons (SpelchPractice *self)
{
  return spelch_shop_lessons ();
}

const GPtrArray *
spelch_practice_get_problems (SpelchPractice *self)
{
  return self->problems;
}

const char *
spelch_practice_get_learner (SpelchPractice *self)
{
  return self->learner;
}

bool
spelch_practice_set_learner (SpelchPractice *self, const char *name, char **complaint)
{
  g_autofree char *stripped = g_strstrip (g_strdup (name));
  *complaint = *stripped == '\0' ? g_strdup (_ ("Write a name; answers are kept under it."))
                                 : spelch_fault_text (_ ("The name"), stripped, sizeof self->learner);
  if (*complaint != NULL)
    return false;
  if (g_str_equal (self->learner, stripped))
    return true;
  g_strlcpy (self->learner, stripped, sizeof self->learner);
  /* A place of one's own: where this learner left the lesson, or its beginning; never another's follow-up. */
  if (self->lesson == NULL)
    pose (self, self->exercise, false);
  else if (!take_up (self, self->lesson))
    enter_step (self, 0);
  g_signal_emit (self, signals[SIGNAL_KEPT], 0);
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0); /* nothing was done yet that is worth keeping */
  return true;
}

guint32
spelch_practice_get_seed (SpelchPractice *self)
{
  return self->seed;
}

SpelchStage
spelch_practice_get_stage (SpelchPractice *self)
{
  return self->stage;
}

const SpelchPosed *
spelch_practice_get_posed (SpelchPractice *self)
{
  return self->posed;
}

const SpelchLesson *
spelch_practice_get_lesson (SpelchPractice *self)
{
  return self->lesson;
}

guint
spelch_practice_get_step (SpelchPractice *self)
{
  return self->step;
}

const SpelchGiven *
spelch_practice_get_given (SpelchPractice *self)
{
  return self->stage == SPELCH_STAGE_ANSWERED ? &self->given : NULL;
}

/* ---- Object ---- */

static void
spelch_practice_finalize (GObject *object)
{
  SpelchPractice *self = SPELCH_PRACTICE (object);
  g_clear_pointer (&self->posed, spelch_posed_free);
  g_clear_pointer (&self->follow_up, spelch_posed_free);
  g_clear_pointer (&self->exercise, spelch_exercise_unref);
  g_clear_pointer (&self->exercises, g_ptr_array_unref);
  g_clear_pointer (&self->problems, g_ptr_array_unref);
  g_clear_pointer (&self->kept, spelch_practice_kept_free);
  g_clear_pointer (&self->answers, g_hash_table_unref);
  G_OBJECT_CLASS (spelch_practice_parent_class)->finalize (object);
}

static void
spelch_practice_class_init (SpelchPracticeClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = spelch_practice_finalize;
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", SPELCH_TYPE_PRACTICE, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                          NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_KEPT]
      = g_signal_new ("kept", SPELCH_TYPE_PRACTICE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_SAID] = g_signal_new ("said", SPELCH_TYPE_PRACTICE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                       G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
spelch_practice_init (SpelchPractice *self)
{
  self->exercises = spelch_exercises_new ();
  self->problems = g_ptr_array_new_with_free_func (g_free);
  self->answers = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  self->seed = 1 + g_random_int () % SPELCH_SEED_MOST;
}

SpelchPractice *
spelch_practice_new (const SpelchConstants *constants, const char *folder, GFile *log)
{
  SpelchPractice *self = g_object_new (SPELCH_TYPE_PRACTICE, NULL);
  const GPtrArray *shipped = spelch_shop_exercises ();
  self->constants = constants;
  self->kept = spelch_practice_kept_new (log);
  for (guint i = 0; i < shipped->len; i++)
    spelch_exercises_put (self->exercises, shipped->pdata[i]);
  spelch_exercises_read_folder (self->exercises, folder, self->problems);
  if (self->exercises->len > 0)
    pose (self, self->exercises->pdata[0], false);
  return self;
}

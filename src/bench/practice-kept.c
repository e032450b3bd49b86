/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/practice-kept.h"

struct _SpelchPracticeKept
{
  GFile *log;
  GArray *attempts;       /* SpelchAttempt, as they stand in the log */
  GArray *waiting;        /* those that couldn't be written yet */
  GArray *places;         /* SpelchLessonPlace, as they stand in the log */
  GArray *waiting_places; /* those that couldn't be written yet */
};

SpelchPracticeKept *
spelch_practice_kept_new (GFile *log)
{
  SpelchPracticeKept *self = g_new0 (SpelchPracticeKept, 1);
  self->log = g_object_ref (log);
  self->attempts = g_array_new (FALSE, FALSE, sizeof (SpelchAttempt));
  self->waiting = g_array_new (FALSE, FALSE, sizeof (SpelchAttempt));
  self->places = g_array_new (FALSE, FALSE, sizeof (SpelchLessonPlace));
  self->waiting_places = g_array_new (FALSE, FALSE, sizeof (SpelchLessonPlace));
  return self;
}

static bool
waits (SpelchPracticeKept *self)
{
  return self->waiting->len > 0 || self->waiting_places->len > 0;
}

static bool
write_waiting (SpelchPracticeKept *self, GError **error)
{
  while (self->waiting->len > 0)
    {
      if (!spelch_practice_log_add (self->log, &g_array_index (self->waiting, SpelchAttempt, 0), error))
        return false;
      g_array_remove_index (self->waiting, 0);
    }
  while (self->waiting_places->len > 0)
    {
      if (!spelch_practice_log_put_place (self->log,
                                          &g_array_index (self->waiting_places, SpelchLessonPlace, 0), error))
        return false;
      g_array_remove_index (self->waiting_places, 0);
    }
  return true;
}

void
spelch_practice_kept_free (SpelchPracticeKept *self)
{
  write_waiting (self, NULL);
  g_array_unref (self->attempts);
  g_array_unref (self->waiting);
  g_array_unref (self->places);
  g_array_unref (self->waiting_places);
  g_object_unref (self->log);
  g_free (self);
}

/* When the log can't be read, what was read before stays. */
static bool
read_log (SpelchPracticeKept *self, GError **error)
{
  g_autoptr (SpelchPracticeLog) log = spelch_practice_log_load (self->log, NULL, error);
  if (log == NULL)
    return false;
  g_array_unref (self->attempts);
  g_array_unref (self->places);
  self->attempts = g_array_ref (log->attempts);
  self->places = g_array_ref (log->places);
  return true;
}

char *
spelch_practice_kept_look (SpelchPracticeKept *self)
{
  g_autoptr (GError) error = NULL;
  bool waited = waits (self);
  if (!write_waiting (self, &error) || !read_log (self, &error))
    return g_strdup (error->message);
  return waited ? g_strdup ("") : NULL;
}

char *
spelch_practice_kept_add (SpelchPracticeKept *self, const SpelchAttempt *attempt)
{
  g_array_append_vals (self->waiting, attempt, 1);
  return spelch_practice_kept_look (self);
}

char *
spelch_practice_kept_put_place (SpelchPracticeKept *self, const SpelchLessonPlace *place, bool *changed)
{
  const SpelchLessonPlace *before = spelch_practice_kept_get_place (self, place->learner, place->lesson);
  *changed = before == NULL || !spelch_lesson_place_is_same (before, place);
  if (!*changed)
    return NULL;
  spelch_lesson_places_put (self->waiting_places, place);
  return spelch_practice_kept_look (self);
}

const SpelchLessonPlace *
spelch_practice_kept_get_place (SpelchPracticeKept *self, const char *learner, const char *lesson)
{
  const SpelchLessonPlace *place = spelch_lesson_places_find (self->waiting_places, learner, lesson);
  return place != NULL ? place : spelch_lesson_places_find (self->places, learner, lesson);
}

GArray *
spelch_practice_kept_copy_attempts (SpelchPracticeKept *self)
{
  GArray *all = g_array_copy (self->attempts);
  g_array_append_vals (all, self->waiting->data, self->waiting->len);
  return all;
}

guint
spelch_practice_kept_count_waiting (SpelchPracticeKept *self)
{
  return self->waiting->len;
}

static bool
has (const GArray *attempts, const char *learner, const char *exercise, bool follow_up)
{
  for (guint i = 0; i < attempts->len; i++)
    {
      const SpelchAttempt *attempt = &g_array_index (attempts, SpelchAttempt, i);
      if (attempt->follow_up == follow_up && g_str_equal (attempt->learner, learner)
          && g_str_equal (attempt->exercise, exercise))
        return true;
    }
  return false;
}

static bool
was_answered (SpelchPracticeKept *self, const char *learner, const char *exercise, bool follow_up)
{
  return has (self->attempts, learner, exercise, follow_up)
         || has (self->waiting, learner, exercise, follow_up);
}

bool
spelch_practice_kept_has_answered (SpelchPracticeKept *self, const char *learner, const SpelchStep *step)
{
  return was_answered (self, learner, step->exercise, false)
         && (!step->follow_up || was_answered (self, learner, step->exercise, true));
}

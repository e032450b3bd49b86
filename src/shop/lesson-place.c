/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/lesson-place.h"

#include "shop/fault.h"

#include <glib/gi18n-lib.h>

char *
spelch_lesson_place_fault (const SpelchLessonPlace *place)
{
  char *fault = spelch_fault_text ("learner", place->learner, sizeof place->learner)
                    ?: spelch_fault_id ("lesson", place->lesson, false)
                    ?: spelch_fault_id ("exercise", place->exercise, false);
  if (fault == NULL && *place->learner == '\0')
    fault = g_strdup (_ ("learner is empty; write a name."));
  return fault;
}

bool
spelch_lesson_place_step (const SpelchLessonPlace *place, const SpelchLesson *lesson, guint *step)
{
  *step = 0;
  while (*step < lesson->n_steps && !g_str_equal (lesson->steps[*step].exercise, place->exercise))
    ++*step;
  return !place->finished && *step < lesson->n_steps;
}

SpelchLessonPlace *
spelch_lesson_places_find (GArray *places, const char *learner, const char *lesson)
{
  for (guint i = places->len; i > 0; i--)
    {
      SpelchLessonPlace *place = &g_array_index (places, SpelchLessonPlace, i - 1);
      if (g_str_equal (place->learner, learner) && g_str_equal (place->lesson, lesson))
        return place;
    }
  return NULL;
}

bool
spelch_lesson_place_is_same (const SpelchLessonPlace *a, const SpelchLessonPlace *b)
{
  return g_str_equal (a->exercise, b->exercise) && a->seed == b->seed && a->told == b->told
         && a->follow_up == b->follow_up && a->finished == b->finished;
}

bool
spelch_lesson_places_put (GArray *places, const SpelchLessonPlace *place)
{
  SpelchLessonPlace *before = spelch_lesson_places_find (places, place->learner, place->lesson);
  if (before == NULL)
    g_array_append_vals (places, place, 1);
  else if (spelch_lesson_place_is_same (before, place))
    return false;
  else
    *before = *place;
  return true;
}

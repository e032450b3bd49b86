/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/lesson.h"

#include "shop/fault.h"

#include <glib/gi18n-lib.h>

SpelchLesson *
spelch_lesson_new (void)
{
  return g_new0 (SpelchLesson, 1);
}

void
spelch_lesson_free (SpelchLesson *lesson)
{
  spelch_by_language_clear (&lesson->title);
  spelch_by_language_clear (&lesson->closing);
  for (guint i = 0; i < lesson->n_steps; i++)
    spelch_by_language_clear (&lesson->steps[i].telling);
  g_free (lesson);
}

char *
spelch_lesson_fault (const SpelchLesson *lesson)
{
  const SpelchBounds bounds[] = { { "minutes", "", lesson->minutes, 1, 240, true } };
  char *fault
      = spelch_fault_id ("id", lesson->id, false) ?: spelch_fault_bounds (bounds, G_N_ELEMENTS (bounds));
  if (fault == NULL && lesson->title.n == 0)
    fault = g_strdup (_ ("title must be told."));
  if (fault == NULL && lesson->n_steps == 0)
    fault = g_strdup (_ ("steps is empty; name an exercise."));
  for (guint i = 0; fault == NULL && i < lesson->n_steps; i++)
    {
      g_autofree char *wrong = spelch_fault_id ("exercise", lesson->steps[i].exercise, false);
      if (wrong != NULL)
        fault = g_strdup_printf ("steps[%u]: %s", i, wrong);
    }
  return fault;
}

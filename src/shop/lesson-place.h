/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lesson place: how far a learner has come in a lesson, to go on from there another day.
 */
#pragma once

#include "shop/lesson.h"

/* A plain value; copy it with =. The step is named by its exercise, so that a lesson that got another step
 * meanwhile is still gone on with at the right one. */
typedef struct
{
  char learner[SPELCH_NAME_SIZE];
  char lesson[SPELCH_ID_SIZE];   /* its id */
  char exercise[SPELCH_ID_SIZE]; /* of the step */
  guint32 seed;                  /* by which its numbers are drawn */
  bool told;                     /* what is said before the question has been read */
  bool follow_up;                /* the follow-up is asked */
  bool finished;                 /* the lesson's last words were reached: nothing to go on with */
} SpelchLessonPlace;

/* What is wrong with it, as a sentence naming the member, or NULL. Free with g_free(). */
char *spelch_lesson_place_fault (const SpelchLessonPlace *place);

/* Whether two places of one learner in one lesson are the same. */
bool spelch_lesson_place_is_same (const SpelchLessonPlace *a, const SpelchLessonPlace *b);

/* The step, from 0, to go on at; false where there is nothing to go on with, or no such step any more. */
bool spelch_lesson_place_step (const SpelchLessonPlace *place, const SpelchLesson *lesson, guint *step);

/* That of a learner in a lesson, the last of SpelchLessonPlace in @places; NULL where there is none. */
SpelchLessonPlace *spelch_lesson_places_find (GArray *places, const char *learner, const char *lesson);

/* Puts a place instead of the one that the learner had in the lesson; whether that changes anything. */
bool spelch_lesson_places_put (GArray *places, const SpelchLessonPlace *place);

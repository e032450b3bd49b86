/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lesson: exercises one after the other, with a few sentences of telling before each. Never changed once
 * read.
 */
#pragma once

#include "shop/bit.h"
#include "shop/by-language.h"

#define SPELCH_STEPS_MOST 40

typedef struct
{
  char exercise[SPELCH_ID_SIZE]; /* its id */
  bool follow_up;                /* asked too */
  SpelchByLanguage telling;      /* said before it */
} SpelchStep;

typedef struct
{
  char id[SPELCH_ID_SIZE];
  SpelchByLanguage title;
  SpelchByLanguage closing; /* said at the end */
  guint minutes;            /* it takes about so long; 0: not told */
  guint n_steps;
  SpelchStep steps[SPELCH_STEPS_MOST];
} SpelchLesson;

/* An empty one, for a reader to fill. */
SpelchLesson *spelch_lesson_new (void);
void spelch_lesson_free (SpelchLesson *lesson);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchLesson, spelch_lesson_free)

/* What is wrong with the lesson as described, as a sentence naming the member, or NULL. Free with g_free().
 * Whether its exercises are there is for the reader to say. */
char *spelch_lesson_fault (const SpelchLesson *lesson);

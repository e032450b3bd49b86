/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Attempt: one answer that a learner gave to an exercise. Exercise, seed and answer are enough to grade it
 * again at any time; what it was graded then is kept beside.
 */
#pragma once

#include "shop/bit.h"

#define SPELCH_WHEN_SIZE 32

/* A plain value; copy it with =. */
typedef struct
{
  char learner[SPELCH_NAME_SIZE];
  char exercise[SPELCH_ID_SIZE]; /* its id */
  guint32 seed;
  bool follow_up;
  char answer[SPELCH_ID_SIZE]; /* a choice's code, or a depth with its unit */
  bool right;
  char when[SPELCH_WHEN_SIZE];             /* ISO 8601: 2026-05-31T14:05:00; "" when not told */
  char model_version[SPELCH_VERSION_SIZE]; /* that graded it; "" when not told */
} SpelchAttempt;

/* What is wrong with it, as a sentence naming the member, or NULL. Free with g_free(). */
char *spelch_attempt_fault (const SpelchAttempt *attempt);

/* The time now, as local clocks show it. */
void spelch_attempt_now (char when[SPELCH_WHEN_SIZE]);

/* How far a learner is with an exercise. */
typedef struct
{
  guint tried, right; /* follow-ups counted too */
  bool last_right;    /* of the exercise itself, without its follow-up */
} SpelchProgress;

/* Of SpelchAttempt, those of @learner at @exercise; NULL: of all of them. */
SpelchProgress spelch_attempts_progress (const GArray *attempts, const char *learner, const char *exercise);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exercise: a question about one cut of a part, as a teacher writes it: what is asked, what is drawn at
 * random, and the one thing that the follow-up changes. It holds no answer: the model gives it. Counted by
 * reference and never changed once read.
 */
#pragma once

#include "shop/by-language.h"
#include "shop/change.h"

typedef enum
{
  SPELCH_ASKS_TEARS,      /* which face tears? */
  SPELCH_ASKS_FIRST_PASS, /* how deep must the first pass be? */
  SPELCH_ASKS_BIT,        /* which bit? */
  SPELCH_ASKS_WAY_UP,     /* which way up? */
  SPELCH_ASKS_LIMIT,      /* what holds the feed back? */
  SPELCH_ASKS_HOLD,       /* will it stay put? */
  SPELCH_N_ASKS,
} SpelchAsks;
extern const SpelchCodes SPELCH_ASKS_CODES; /* tears, first-pass, bit, way-up, limit, hold */

#define SPELCH_LEVELS    5 /* of difficulty, from 1 */
#define SPELCH_VARY_MOST 6
#define SPELCH_LIST_MOST 12
#define SPELCH_BITS_MOST 6 /* to choose from */

/* One thing that is drawn at random: of a range in steps, so that numbers look like a workshop's, or of a
 * list. */
typedef struct
{
  SpelchChangeKind what;
  double from, to, step; /* step 0: a list */
  guint n;               /* of the list */
  SpelchChange one_of[SPELCH_LIST_MOST];
} SpelchVary;

/* How many values there are, and the @i-th. */
guint spelch_vary_count (const SpelchVary *vary);
SpelchChange spelch_vary_nth (const SpelchVary *vary, guint i);

typedef struct
{
  bool told;
  SpelchChange change;
  bool same; /* the answer is meant to stay as it was; else to change */
  SpelchByLanguage lead;
} SpelchFollowUp;

typedef struct
{
  gatomicrefcount ref_count;
  char id[SPELCH_ID_SIZE];
  SpelchAsks asks;
  guint level;            /* 1 to SPELCH_LEVELS */
  SpelchByLanguage title; /* what it is called in a list */
  SpelchByLanguage lead;  /* read aloud before the question; may name what is drawn: {thickness} */
  SpelchByLanguage hint;
  SpelchPart *part; /* with the one cut that is asked about; of "bit", its bits are what is offered */
  guint n_vary;
  SpelchVary vary[SPELCH_VARY_MOST];
  SpelchFollowUp follow_up;
} SpelchExercise;

/* With a part of its own, without a cut. */
SpelchExercise *spelch_exercise_new (void);
SpelchExercise *spelch_exercise_ref (SpelchExercise *exercise);
void spelch_exercise_unref (SpelchExercise *exercise);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchExercise, spelch_exercise_unref)

/* The part with numbers drawn by @seed: the same on every machine and with every version. Each exercise
 * draws others from the same seed. A new part. */
SpelchPart *spelch_exercise_draw (const SpelchExercise *exercise, guint32 seed);

/* The same with the follow-up's change made. */
SpelchPart *spelch_exercise_draw_follow_up (const SpelchExercise *exercise, guint32 seed);

/* How many different draws there are, the product of what is drawn; at most G_MAXINT. */
guint spelch_exercise_draws (const SpelchExercise *exercise);

/* What is wrong with the exercise as described, as a sentence naming the member, or NULL. Free with g_free().
 * Every value at either end of what is drawn must make a part that is in order, the follow-up's too. Whether
 * there is one right answer is for the model to say. */
char *spelch_exercise_fault (const SpelchExercise *exercise);

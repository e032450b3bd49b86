/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Posed: an exercise with its numbers drawn, or its follow-up, and what the model answers. What is right
 * comes from the same plan as everything else; nothing of it is stored.
 *
 * A face tears where its edge comes out at grade 3 or worse, fuzzy or torn (model, section 3). Work stays put
 * where the plan has nothing against its holding and its tabs.
 */
#pragma once

#include "plan/choose.h"
#include "shop/attempt.h"
#include "shop/exercise.h"

/* The grade from which a face counts as torn. */
#define SPELCH_TORN_FROM 3

#define SPELCH_CHOICES_MOST 12

/* How clear an answer has to be, so that one who reckons well can't be wrong for a hair's breadth. */
#define SPELCH_CLEAR_FEED  0.10 /* the next limit lies so much above the one that holds the feed */
#define SPELCH_CLEAR_TIME  0.10 /* of two bits as good, one is quicker by so much */
#define SPELCH_CLEAR_PRESS 0.10 /* the press on the bed, and the force, may be so much out */
#define SPELCH_CLEAR_SPEED 0.05 /* and the feed, where edges are asked about */
#define SPELCH_CLEAR_DEPTH 0.5  /* mm: a range of depths is at least so wide, and begins so deep */

/* The codes that answers are given with, beside bits' ids, limits' codes and depths. */
#define SPELCH_ANSWER_MOTOR   "motor"
#define SPELCH_ANSWER_FAR     "far"
#define SPELCH_ANSWER_BOTH    "both"
#define SPELCH_ANSWER_NEITHER "neither"
#define SPELCH_ANSWER_EITHER  "either"
#define SPELCH_ANSWER_NONE    "none"
#define SPELCH_ANSWER_STAYS   "stays"
#define SPELCH_ANSWER_TABS    "tabs"

typedef struct
{
  SpelchExercise *exercise;
  guint32 seed;
  bool follow_up;
  const SpelchConstants *constants;
  SpelchPart *part; /* as drawn; its only cut is asked about */

  /* What the model says. */
  SpelchPlan plan;    /* of the cut as drawn; of "bit", with the right one */
  SpelchPlan turned;  /* "way-up": the other way up */
  GPtrArray *ranking; /* "bit": SpelchChoice *, the best first, as the board lies; else NULL */

  guint n_choices; /* in the order they are offered; "first-pass" has none but "none" beside the depths */
  char choices[SPELCH_CHOICES_MOST][SPELCH_ID_SIZE];
  int right;           /* index of the right choice; -1: a depth is right, or nothing is */
  bool by_depth;       /* answered by a depth, or by "none" */
  SpelchRange depths;  /* the right ones, tolerances included; empty unless a depth is right */
  SpelchRange just;    /* those that are right only with everything exact */
  double depth_most;   /* of the cut, as far as one can answer, mm */
  const char *decides; /* a code for what decides the answer: the term, load, limit or way that, taken away,
                          would change it. Never freed */
} SpelchPosed;

/* @constants must outlive what is posed. Takes some milliseconds. */
SpelchPosed *spelch_posed_new (const SpelchConstants *constants, SpelchExercise *exercise, guint32 seed,
                               bool follow_up);
void spelch_posed_free (SpelchPosed *posed);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchPosed, spelch_posed_free)

/* Index of a choice by its code, or -1. */
int spelch_posed_find (const SpelchPosed *posed, const char *code);

/* Whether there is just one right answer, clear of every other by the margins above; else *doubt, when not
 * NULL, gets a code that says what is wrong: none, several, close, narrow, shallow, stopped. Plans some more
 * times. */
bool spelch_posed_is_clear (const SpelchPosed *posed, const char **doubt);

/* Whether the same is right of both: of depths, whether they differ by less than SPELCH_CLEAR_DEPTH. */
bool spelch_posed_agree (const SpelchPosed *a, const SpelchPosed *b);

/* An answer that was given. */
typedef struct
{
  bool understood; /* the rest tells nothing when false */
  bool right;
  int choice;      /* index, or -1: a depth was given */
  double depth_mm; /* the depth */
} SpelchGiven;

/* Reads an answer, a choice's code or a depth ("8.5 mm"; a bare number takes @unit), and grades it. */
SpelchGiven spelch_posed_grade (const SpelchPosed *posed, const char *answer, SpelchUnit unit);

/* An answer of @learner that was understood, as it is kept: when it was given is left to be told. */
void spelch_posed_attempt (const SpelchPosed *posed, const SpelchGiven *given, const char *learner,
                           SpelchAttempt *attempt);

/* Text for the right answer: its code, or the shallowest depth that is right in mm to a tenth, "8.3 mm"; ""
 * when nothing is right. Free with g_free(). */
char *spelch_posed_right_answer (const SpelchPosed *posed);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice asked: what spelch practice was asked for, and the exercises it works on.
 */
#pragma once

#include "plan/words.h"
#include "shop/exercise.h"

#include <glib.h>

typedef struct
{
  gboolean list, follow_up, reckoning, answers, progress, json;
  char *show;    /* an exercise's id */
  char *seed;    /* as typed; NULL: one is drawn */
  char *answer;  /* a code or a depth */
  char *learner; /* who answered; kept in the log */
  char *sheet;   /* a PDF to write */
  char *paper;   /* a4, letter */
  char *only;    /* ids with commas */
  char *asks;    /* a kind of question */
  char *level;   /* of difficulty */
  char *regrade; /* a table of answers */
  char *log;     /* the file answers are kept in; NULL: the person's own */
  char *output;  /* where a table goes; NULL: it is printed */
  char *units;

  guint32 drawn_by;     /* the seed */
  GPtrArray *exercises; /* SpelchExercise *: of the files named, else all there are; those asked for */
  SpelchNumbers numbers;
} SpelchPracticeAsked;

void spelch_practice_asked_clear (SpelchPracticeAsked *asked);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SpelchPracticeAsked, spelch_practice_asked_clear)

/* Reads the words after the command's name and finds the exercises. False when there is nothing left to do:
 * help was shown, or what is wrong was said; then *status is the exit status. */
bool spelch_practice_asked_read (SpelchPracticeAsked *asked, int argc, char **argv, int *status);

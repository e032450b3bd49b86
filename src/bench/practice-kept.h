/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice kept: the answers of learners and how far they are in lessons, as they stand in the practice log.
 * What can't be written waits, and is written with the next.
 */
#pragma once

#include "files/practice-log.h"

typedef struct _SpelchPracticeKept SpelchPracticeKept;

/* @log: where it is kept. Nothing is read yet. */
SpelchPracticeKept *spelch_practice_kept_new (GFile *log);

/* Tries a last time to write what waits. */
void spelch_practice_kept_free (SpelchPracticeKept *self);

/* These three give what is to be said of it: a sentence on what went wrong; "" where nothing is wrong any
 * more; NULL: nothing. Free with g_free(). */

/* Writes what waits and reads the log anew. */
char *spelch_practice_kept_look (SpelchPracticeKept *self);

char *spelch_practice_kept_add (SpelchPracticeKept *self, const SpelchAttempt *attempt);

/* Instead of the learner's place in that lesson; @changed: whether it is another. */
char *spelch_practice_kept_put_place (SpelchPracticeKept *self, const SpelchLessonPlace *place,
                                      bool *changed);

/* NULL where there is none. Until the next change. */
const SpelchLessonPlace *spelch_practice_kept_get_place (SpelchPracticeKept *self, const char *learner,
                                                         const char *lesson);

/* All answers, also those that wait: SpelchAttempt. Free with g_array_unref(). */
GArray *spelch_practice_kept_copy_attempts (SpelchPracticeKept *self);

/* How many answers wait. */
guint spelch_practice_kept_count_waiting (SpelchPracticeKept *self);

/* Whether all that a step of a lesson asks was ever answered. */
bool spelch_practice_kept_has_answered (SpelchPracticeKept *self, const char *learner,
                                        const SpelchStep *step);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice: what the window for it asks and hears, without any widget: who answers, by which seed numbers are
 * drawn, the question that is posed, what was answered, and how far a lesson is. An answer is kept at once;
 * one that can't be written is held and written with the next.
 */
#pragma once

#include "files/practice-data.h"
#include "files/practice-log.h"
#include "plan/posed.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* Short enough to be copied from a sheet by hand. */
#define SPELCH_SEED_MOST 999999

typedef enum
{
  SPELCH_STAGE_TELLING,  /* a lesson tells something before its question */
  SPELCH_STAGE_ASKED,    /* the question waits for its answer */
  SPELCH_STAGE_ANSWERED, /* the answer stands beside the result */
  SPELCH_STAGE_CLOSING,  /* a lesson's last words */
} SpelchStage;

#define SPELCH_TYPE_PRACTICE (spelch_practice_get_type ())
G_DECLARE_FINAL_TYPE (SpelchPractice, spelch_practice, SPELCH, PRACTICE, GObject)

/* Signals: "changed": another stage or question; "kept": the answers that are kept, or who answers; "said"
 * (const char *): what went wrong with keeping them, "" when nothing is wrong any more.
 * @constants must outlive it. @folder: of a person's own exercises; @log: where answers are kept. It begins
 * with the first exercise and a seed by chance. */
SpelchPractice *spelch_practice_new (const SpelchConstants *constants, const char *folder, GFile *log);

/* Owned by the practice: SpelchExercise, the easiest first; SpelchLesson; a sentence for each file of a
 * person's own that couldn't be read. */
const GPtrArray *spelch_practice_get_exercises (SpelchPractice *self);
const GPtrArray *spelch_practice_get_lessons (SpelchPractice *self);
const GPtrArray *spelch_practice_get_problems (SpelchPractice *self);

/* ---- Who answers ---- */

/* "" until a name is set. What it gives is owned by the practice. */
const char *spelch_practice_get_learner (SpelchPractice *self);

/* False, with a sentence, when answers can't be kept under that name; the one before holds then. */
bool spelch_practice_set_learner (SpelchPractice *self, const char *name, char **complaint);

/* Of this learner with an exercise. */
SpelchProgress spelch_practice_get_progress (SpelchPractice *self, const char *exercise);

/* Whether this learner has answered anything yet. */
bool spelch_practice_has_tried (SpelchPractice *self);

/* Whether this learner has answered every question of a lesson. */
bool spelch_practice_has_finished (SpelchPractice *self, const SpelchLesson *lesson);

/* How many exercises this learner answered right the last time. */
guint spelch_practice_count_right (SpelchPractice *self);

/* All answers that are kept, and those that still wait to be: SpelchAttempt. Free with g_array_unref(). */
GArray *spelch_practice_copy_attempts (SpelchPractice *self);

/* How many answers couldn't be written yet. */
guint spelch_practice_count_waiting (SpelchPractice *self);

/* Reads what is kept anew, and writes what waits: another window or program may have added to it. */
void spelch_practice_look (SpelchPractice *self);

/* ---- What is asked ---- */

guint32 spelch_practice_get_seed (SpelchPractice *self);

/* Draws the numbers of the same question anew. Up to SPELCH_SEED_MOST. */
void spelch_practice_set_seed (SpelchPractice *self, guint32 seed);
void spelch_practice_draw_others (SpelchPractice *self);

/* An exercise by itself; one that is unknown is left out. */
void spelch_practice_ask (SpelchPractice *self, const char *exercise);

/* A lesson from its beginning; that which is led through, with other numbers. */
void spelch_practice_begin_lesson (SpelchPractice *self, const SpelchLesson *lesson);
void spelch_practice_begin_again (SpelchPractice *self);

/* A lesson from where this learner left it, with the same numbers and what was answered; else from its
 * beginning. */
void spelch_practice_take_up_lesson (SpelchPractice *self, const SpelchLesson *lesson);

/* The step, from 1, at which this learner left a lesson that isn't finished; 0: none, or before anything was
 * done in it. */
guint spelch_practice_get_left_at (SpelchPractice *self, const SpelchLesson *lesson);

/* What this learner comes back to: the lesson that isn't finished, the first one who has answered nothing
 * yet, else the easiest exercise that wasn't tried. By what was read of the log last. */
void spelch_practice_begin (SpelchPractice *self);

SpelchStage spelch_practice_get_stage (SpelchPractice *self);

/* Never NULL but where there is no exercise at all. Owned by the practice until the next "changed". */
const SpelchPosed *spelch_practice_get_posed (SpelchPractice *self);

/* NULL outside a lesson; and its step, from 0: their number at the closing words. */
const SpelchLesson *spelch_practice_get_lesson (SpelchPractice *self);
guint spelch_practice_get_step (SpelchPractice *self);

/* ---- Answering ---- */

/* Takes an answer, a choice's code or a depth, of which a bare number is in @unit, and keeps it. False when
 * it isn't understood; then nothing changes. */
bool spelch_practice_answer (SpelchPractice *self, const char *answer, SpelchUnit unit);

/* What was answered to the question; NULL before. */
const SpelchGiven *spelch_practice_get_given (SpelchPractice *self);

/* The follow-up to the question that was answered, to tell what it changes; NULL when there is none to ask.
 */
const SpelchPosed *spelch_practice_get_follow_up (SpelchPractice *self);
void spelch_practice_ask_follow_up (SpelchPractice *self);

/* ---- On and back ---- */

/* The next stage of a lesson, after it what wasn't tried yet; else the next exercise. A question may
 * be passed over. */
bool spelch_practice_has_next (SpelchPractice *self);
void spelch_practice_next (SpelchPractice *self);
bool spelch_practice_has_back (SpelchPractice *self);
void spelch_practice_back (SpelchPractice *self);

G_END_DECLS

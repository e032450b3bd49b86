/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice question: the question that is posed with its drawing and choices, the answer beside the result,
 * and the buttons that lead on; of a lesson also what it tells between.
 */
#pragma once

#include "bench/practice.h"
#include "drawing/palette.h"
#include "plan/words.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_PRACTICE_QUESTION (spelch_practice_question_get_type ())
G_DECLARE_FINAL_TYPE (SpelchPracticeQuestion, spelch_practice_question, SPELCH, PRACTICE_QUESTION, GtkWidget)

SpelchPracticeQuestion *spelch_practice_question_new (SpelchPractice *practice,
                                                      const SpelchConstants *constants);

void spelch_practice_question_set_look (SpelchPracticeQuestion *self, SpelchLook look);
void spelch_practice_question_set_numbers (SpelchPracticeQuestion *self, const SpelchNumbers *numbers);

/* The button that Enter means now, for the window's default. */
GtkWidget *spelch_practice_question_get_default (SpelchPracticeQuestion *self);

/* The @i-th choice by its key; false where none is to be chosen. */
bool spelch_practice_question_choose (SpelchPracticeQuestion *self, guint i);

/* Takes back, or makes again, what was tried in the drawing. */
void spelch_practice_question_undo (SpelchPracticeQuestion *self);
void spelch_practice_question_redo (SpelchPracticeQuestion *self);

/* Puts the keyboard where the next thing is to be done. */
void spelch_practice_question_focus (SpelchPracticeQuestion *self);

G_END_DECLS

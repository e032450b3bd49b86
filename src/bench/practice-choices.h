/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice choices: what a learner answers with: one of the choices, lettered, or a depth that is typed or
 * comes from the drawing.
 */
#pragma once

#include "plan/posed.h"
#include "plan/words.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_PRACTICE_CHOICES (spelch_practice_choices_get_type ())
G_DECLARE_FINAL_TYPE (SpelchPracticeChoices, spelch_practice_choices, SPELCH, PRACTICE_CHOICES, GtkWidget)

/* Signals: "typed" (double): a depth, mm; "chosen": there is another answer now, or none. */
SpelchPracticeChoices *spelch_practice_choices_new (void);

/* Offers the choices of @posed, none of them chosen; numbers are read and written as @numbers says. */
void spelch_practice_choices_show (SpelchPracticeChoices *self, const SpelchPosed *posed,
                                   const SpelchNumbers *numbers);

/* The @i-th choice, as if it had been clicked; false when there is no such. */
bool spelch_practice_choices_choose (SpelchPracticeChoices *self, guint i);

/* The depth that the drawing was dragged to. */
void spelch_practice_choices_set_depth (SpelchPracticeChoices *self, double depth_mm);

/* The answer as spelch_posed_grade() reads it; NULL when there is none yet. Free with g_free(). */
char *spelch_practice_choices_get_answer (SpelchPracticeChoices *self);

/* What keeps it from being one, in a sentence; "" when nothing does. Free with g_free(). */
char *spelch_practice_choices_complaint (SpelchPracticeChoices *self);

void spelch_practice_choices_focus (SpelchPracticeChoices *self);

G_END_DECLS

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice result: whether the answer is right; what the learner said and what comes of it; what is right and
 * why, in plain words. The full reckoning behind it opens on demand.
 */
#pragma once

#include "plan/posed.h"
#include "plan/words.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_PRACTICE_RESULT (spelch_practice_result_get_type ())
G_DECLARE_FINAL_TYPE (SpelchPracticeResult, spelch_practice_result, SPELCH, PRACTICE_RESULT, GtkWidget)

SpelchPracticeResult *spelch_practice_result_new (void);

void spelch_practice_result_show (SpelchPracticeResult *self, const SpelchPosed *posed,
                                  const SpelchGiven *given, const SpelchNumbers *numbers);

G_END_DECLS

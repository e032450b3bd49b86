/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice result: what the learner said beside what comes out, whether that is right, and why, with this
 * case's numbers; the chains of reasons behind it open on demand.
 */
#pragma once

#include "bench/bench-session.h"
#include "plan/posed.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_PRACTICE_RESULT (spelch_practice_result_get_type ())
G_DECLARE_FINAL_TYPE (SpelchPracticeResult, spelch_practice_result, SPELCH, PRACTICE_RESULT, GtkWidget)

SpelchPracticeResult *spelch_practice_result_new (void);

/* @session: the part that was asked about, with the plan the reasons are of. */
void spelch_practice_result_show (SpelchPracticeResult *self, const SpelchPosed *posed,
                                  const SpelchGiven *given, SpelchSession *session,
                                  const SpelchNumbers *numbers);

G_END_DECLS

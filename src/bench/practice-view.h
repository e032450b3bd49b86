/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Practice view: the drawing of a question. Before it is answered, a picture that gives nothing away, or the
 * side view without what comes out, in which the depth that is asked for can be dragged; afterwards the side
 * view with windows, splinters and marks, to try things out in. It has a part of its own: nothing that is
 * done here touches the bench.
 */
#pragma once

#include "bench/bench-session.h"
#include "drawing/palette.h"
#include "plan/posed.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_PRACTICE_VIEW (spelch_practice_view_get_type ())
G_DECLARE_FINAL_TYPE (SpelchPracticeView, spelch_practice_view, SPELCH, PRACTICE_VIEW, GtkWidget)

/* Signal "dragged" (double): the learner moved the depth that is asked for, mm. */

SpelchPracticeView *spelch_practice_view_new (const SpelchConstants *constants);

SpelchSession *spelch_practice_view_get_session (SpelchPracticeView *self);
void spelch_practice_view_set_look (SpelchPracticeView *self, SpelchLook look);

/* Shows the question; @given: as it was answered, NULL before. @posed must stay until the next one is shown.
 */
void spelch_practice_view_show (SpelchPracticeView *self, const SpelchPosed *posed, const SpelchGiven *given);

/* Moves the bit to the depth that was typed. */
void spelch_practice_view_set_depth (SpelchPracticeView *self, double depth_mm);

G_END_DECLS

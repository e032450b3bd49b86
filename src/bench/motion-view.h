/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Motion view: shows a cut in slow motion and plays it. What stands still is kept as a picture; of what moves
 * only the parts that changed are repainted in a frame. Space plays and pauses, arrows step by teeth and
 * change the pass, while it has the focus.
 */
#pragma once

#include "bench/bench-session.h"
#include "bench/motion-clock.h"
#include "drawing/palette.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_MOTION_VIEW (spelch_motion_view_get_type ())
G_DECLARE_FINAL_TYPE (SpelchMotionView, spelch_motion_view, SPELCH, MOTION_VIEW, GtkWidget)

/* Signal "moved": another instant is shown, or it plays or pauses. */
SpelchMotionView *spelch_motion_view_new (void);

/* Shows what the session's cut is planned as now. Without a plan it shows nothing. */
void spelch_motion_view_show (SpelchMotionView *self, SpelchSession *session);
void spelch_motion_view_set_look (SpelchMotionView *self, SpelchLook look);

/* What is shown; NULL: nothing that moves. Owned by the view, valid until the next _show(). */
const SpelchMotion *spelch_motion_view_get_motion (SpelchMotionView *self);
const SpelchMotionClock *spelch_motion_view_get_clock (SpelchMotionView *self);

/* @teeth: below 0 back. @pass from 0; @turned: how far the bit has turned in it, rad. */
void spelch_motion_view_play (SpelchMotionView *self, bool playing);
void spelch_motion_view_step (SpelchMotionView *self, int teeth);
void spelch_motion_view_seek (SpelchMotionView *self, guint pass, double turned);

/* Of real time; 0: so that a tooth takes a second. */
void spelch_motion_view_set_ratio (SpelchMotionView *self, double ratio);

G_END_DECLS

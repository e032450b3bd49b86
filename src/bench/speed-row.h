/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Speed row: spindle speed or feed: its name, a pin when it is held by hand, and its value in a field that it
 * can be set in, in any unit. An emptied field follows the recommendation again. What can't be taken stays as
 * it was typed, with a sentence below it.
 */
#pragma once

#include "bench/bench-session.h"
#include "bench/edits.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_SPEED_ROW (spelch_speed_row_get_type ())
G_DECLARE_FINAL_TYPE (SpelchSpeedRow, spelch_speed_row, SPELCH, SPEED_ROW, GtkWidget)

/* Property "title". Signal "let-go": its pin was clicked, or the field emptied. */

/* @thing: SPELCH_HELD_SPEED or SPELCH_HELD_FEED. */
void spelch_speed_row_set_session (SpelchSpeedRow *self, SpelchSession *session, SpelchHeldThing thing);

/* Shows the session's plan, which there must be. */
void spelch_speed_row_follow (SpelchSpeedRow *self);

G_END_DECLS

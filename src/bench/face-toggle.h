/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Face toggle: lies over a face's name in the side view and says whether the edge there will be seen; a click
 * changes it. It draws nothing of its own but the focus.
 */
#pragma once

#include "bench/bench-session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_FACE_TOGGLE (spelch_face_toggle_get_type ())
G_DECLARE_FINAL_TYPE (SpelchFaceToggle, spelch_face_toggle, SPELCH, FACE_TOGGLE, GtkToggleButton)

/* Of the face that lies at @side; @session must outlive it. */
GtkWidget *spelch_face_toggle_new (SpelchSession *session, SpelchSide side);

G_END_DECLS

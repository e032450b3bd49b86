/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Side view: the drawing of the session's current cut, with a mark for each quantity. What didn't change is
 * neither drawn nor painted again. The bit can be dragged too, and another bit dropped here.
 */
#pragma once

#include "bench/quantity.h"
#include "drawing/palette.h"

G_BEGIN_DECLS

#define SPELCH_TYPE_SIDE_VIEW (spelch_side_view_get_type ())
G_DECLARE_FINAL_TYPE (SpelchSideView, spelch_side_view, SPELCH, SIDE_VIEW, GtkWidget)

/* Signal "bit-dropped" (const char *id): a bit was dropped onto the drawing. */

/* @quantities: as spelch_quantities_new() gives them. */
void spelch_side_view_set_session (SpelchSideView *self, SpelchSession *session, GListModel *quantities);
void spelch_side_view_set_look (SpelchSideView *self, SpelchLook look);

/* Marks of the passes only the shown one, beside the board; and tells nothing of clean depths. As of a
 * SpelchView, from the next scene on. */
void spelch_side_view_set_small (SpelchSideView *self, bool one_pass, bool without_windows);

/* Puts @corner into the corner of the drawing that is kept free for words about it. */
void spelch_side_view_set_corner (SpelchSideView *self, GtkWidget *corner);

G_END_DECLS

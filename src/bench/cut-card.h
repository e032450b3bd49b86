/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cut card: one cut of the part in the left column: a true section of the board with the cut taken out, its
 * name and one line about it.
 */
#pragma once

#include "bench/bench-session.h"
#include "drawing/palette.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_CUT_CARD (spelch_cut_card_get_type ())
G_DECLARE_FINAL_TYPE (SpelchCutCard, spelch_cut_card, SPELCH, CUT_CARD, GtkListBoxRow)

/* Shows cut @index of the session's part. */
void spelch_cut_card_follow (SpelchCutCard *self, SpelchSession *session, guint index,
                             const SpelchPalette *palette);

G_END_DECLS

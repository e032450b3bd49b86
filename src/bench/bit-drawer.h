/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bit drawer: the strip below the drawing with every bit, to one scale. A click accepts a bit for the cut,
 * moving the focus along tries them one after the other, Escape goes back to the accepted one.
 */
#pragma once

#include "bench/bench-session.h"
#include "drawing/palette.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_BIT_DRAWER (spelch_bit_drawer_get_type ())
G_DECLARE_FINAL_TYPE (SpelchBitDrawer, spelch_bit_drawer, SPELCH, BIT_DRAWER, GtkWidget)

/* Signal "remarked" (const char *): what is said about the bit that is tried; "" when none is. */

/* @session must outlive the drawer; once. */
void spelch_bit_drawer_set_session (SpelchBitDrawer *self, SpelchSession *session);
void spelch_bit_drawer_set_look (SpelchBitDrawer *self, SpelchLook look);

/* Accepts the bit with that id for the current cut, as a click on it would. */
void spelch_bit_drawer_accept (SpelchBitDrawer *self, const char *id);

G_END_DECLS

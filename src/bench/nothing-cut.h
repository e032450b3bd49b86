/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nothing cut: stands where the drawing would be while there is no plan to draw, because the part has no cut
 * yet or there is no bit for one, and says what to do about it.
 */
#pragma once

#include <gtk/gtk.h>
#include <stdbool.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_NOTHING_CUT (spelch_nothing_cut_get_type ())
G_DECLARE_FINAL_TYPE (SpelchNothingCut, spelch_nothing_cut, SPELCH, NOTHING_CUT, GtkWidget)

/* @any: the part has a cut, so that a bit is what is missing. */
void spelch_nothing_cut_show (SpelchNothingCut *self, bool any);

G_END_DECLS

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cut list: the left column: a card for each cut of the part; the selected one is looked at.
 */
#pragma once

#include "bench/bench-session.h"
#include "drawing/palette.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_CUT_LIST (spelch_cut_list_get_type ())
G_DECLARE_FINAL_TYPE (SpelchCutList, spelch_cut_list, SPELCH, CUT_LIST, GtkWidget)

/* @session must outlive the list; once. */
void spelch_cut_list_set_session (SpelchCutList *self, SpelchSession *session);
void spelch_cut_list_set_look (SpelchCutList *self, SpelchLook look);

G_END_DECLS

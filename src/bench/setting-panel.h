/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Setting panel: the words in the corner of the drawing: board and machine in a sentence, with menus to take
 * others; the pass shown; and turning the board over, with how the other way up would come out beside it.
 */
#pragma once

#include "bench/bench-session.h"
#include "bench/shelves.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_SETTING_PANEL (spelch_setting_panel_get_type ())
G_DECLARE_FINAL_TYPE (SpelchSettingPanel, spelch_setting_panel, SPELCH, SETTING_PANEL, GtkWidget)

/* The menus offer what lies on @shelves and isn't retired. */
SpelchSettingPanel *spelch_setting_panel_new (SpelchSession *session, SpelchShelves *shelves);

/* A button beside the board's name that leads to the boards; hidden unless shown. Owned by the panel. */
GtkWidget *spelch_setting_panel_get_own_board (SpelchSettingPanel *self);

G_END_DECLS

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cut editor: all that the person says about the cut looked at, as a form in the right-hand column, with a
 * dial for the direction of its path. The drawing beside it follows what is typed.
 */
#pragma once

#include "bench/bench-session.h"
#include "drawing/palette.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_CUT_EDITOR (spelch_cut_editor_get_type ())
G_DECLARE_FINAL_TYPE (SpelchCutEditor, spelch_cut_editor, SPELCH, CUT_EDITOR, GtkWidget)

/* Signal "done": nothing more is to be changed, or there is no cut any more. */

/* @session must outlive the editor; once. */
void spelch_cut_editor_set_session (SpelchCutEditor *self, SpelchSession *session);
void spelch_cut_editor_set_look (SpelchCutEditor *self, SpelchLook look);

/* Shows the cut looked at, with the focus in the field of @member ("name"). */
void spelch_cut_editor_begin (SpelchCutEditor *self, const char *member);

G_END_DECLS

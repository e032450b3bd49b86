/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Part editor: what is said of the part as a whole, as a form in the right-hand column: its name and size,
 * the edges accepted, how exactly it is made and how it is kept down.
 */
#pragma once

#include "bench/bench-session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_PART_EDITOR (spelch_part_editor_get_type ())
G_DECLARE_FINAL_TYPE (SpelchPartEditor, spelch_part_editor, SPELCH, PART_EDITOR, GtkWidget)

/* Signal "done": nothing more is to be changed. */

/* @session must outlive the editor; once. */
void spelch_part_editor_set_session (SpelchPartEditor *self, SpelchSession *session);

/* Shows the part, with the focus in the field of @member ("name"). */
void spelch_part_editor_begin (SpelchPartEditor *self, const char *member);

G_END_DECLS

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edit panel: the right-hand column while a cut or the part is changed: what is changed, a way back, and the
 * form, which scrolls.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_EDIT_PANEL (spelch_edit_panel_get_type ())
G_DECLARE_FINAL_TYPE (SpelchEditPanel, spelch_edit_panel, SPELCH, EDIT_PANEL, GtkWidget)

/* Signal "done": back to the plan, by the button or Escape. */
SpelchEditPanel *spelch_edit_panel_new (void);

void spelch_edit_panel_set_title (SpelchEditPanel *self, const char *title);
/* Takes the place of the form before; NULL: none. */
void spelch_edit_panel_set_form (SpelchEditPanel *self, GtkWidget *form);

G_END_DECLS

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Remark: a line over the foot of the drawing that is there only while there is something to say: what a
 * typed length reads as, what is wrong with it, which limit stopped a drag, why an edit was refused.
 */
#pragma once

#include <gtk/gtk.h>
#include <stdbool.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_REMARK (spelch_remark_get_type ())
G_DECLARE_FINAL_TYPE (SpelchRemark, spelch_remark, SPELCH, REMARK, GtkWidget)

/* Says @words; "" says nothing any more. @passing: only for a few seconds. */
void spelch_remark_say (SpelchRemark *self, const char *words, bool passing);

G_END_DECLS

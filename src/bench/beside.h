/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Beside: two widgets beside one another where there is room for both, else the second above the first.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_BESIDE (spelch_beside_get_type ())
G_DECLARE_FINAL_TYPE (SpelchBeside, spelch_beside, SPELCH, BESIDE, GtkWidget)

/* @first gets what @second, a column at the end of lines, leaves. */
GtkWidget *spelch_beside_new (GtkWidget *first, GtkWidget *second);

G_END_DECLS

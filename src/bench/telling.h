/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Telling: names and descriptions for assistive technology that follow soon after what is shown. Nobody can
 * be told of a text sixty times a second, and two dozen of them in each frame of a drag would keep the bus
 * busy.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Tells @text as the label or description (@property) of @widget within a tenth of a second; of texts that
 * follow each other faster only the last is told. */
void spelch_tell_soon (GtkWidget *widget, GtkAccessibleProperty property, const char *text);

G_END_DECLS

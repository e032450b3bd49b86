/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plate: holds a widget whose content is repainted as a whole. GTK repaints the whole window when more than
 * 30 rectangles differ between two frames; a column of numbers that all follow a drag would be that many. On
 * plates they are a few. A plate keeps its picture and draws anew only what differs from it.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_PLATE (spelch_plate_get_type ())
G_DECLARE_FINAL_TYPE (SpelchPlate, spelch_plate, SPELCH, PLATE, GtkWidget)

/* Property "child". */

G_END_DECLS

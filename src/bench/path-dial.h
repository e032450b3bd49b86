/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Path dial: the board from above, seen from face a, with its grain and the path of the cut as an arrow. The
 * arrow is dragged, or turned by keys: arrows by a degree, Page keys by 15, Home along the board, End across.
 * A slider for assistive technology, in degrees against the clock, whose name says how the path meets the
 * grain.
 */
#pragma once

#include "drawing/palette.h"
#include "shop/part.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_PATH_DIAL (spelch_path_dial_get_type ())
G_DECLARE_FINAL_TYPE (SpelchPathDial, spelch_path_dial, SPELCH, PATH_DIAL, GtkRange)

/* Signals: "turned" (degrees as double, done as gboolean: false while it is dragged); "dropped": the drag is
 * not to be. */
SpelchPathDial *spelch_path_dial_new (void);

/* Shows the path of @cut; hides where its path has no direction. */
void spelch_path_dial_show (SpelchPathDial *self, const SpelchPart *part, const SpelchCut *cut,
                            const SpelchPalette *palette);

G_END_DECLS

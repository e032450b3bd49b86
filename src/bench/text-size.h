/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Text size: how large a widget's text is, so that drawings grow with it.
 */
#pragma once

#include <gtk/gtk.h>

/* Size of the widget's font in pixels, at least 6. */
double spelch_text_pixels (GtkWidget *widget);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Text size: how large a widget's text is, so that drawings grow with it and use the same letters.
 */
#pragma once

#include "drawing/lettering.h"

#include <gtk/gtk.h>

/* Size of the widget's font in pixels, at least 6. */
double spelch_text_pixels (GtkWidget *widget);

/* The widget's text size against a drawing's body, 1 to 2. */
double spelch_text_factor (GtkWidget *widget);

/* Its font family; owned by the widget. */
const char *spelch_text_family (GtkWidget *widget);

/* Keeps *@lettering, which may be NULL, when it suits the widget's family and size, and makes it anew when
 * not. */
void spelch_text_keep_lettering (GtkWidget *widget, SpelchLettering **lettering);

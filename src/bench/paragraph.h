/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Paragraph: a label whose words go on in a new line where one is full, but no unit without its number, and
 * begin at the side that is read first.
 */
#pragma once

#include <gtk/gtk.h>

/* A GtkLabel of the style class @css_class. @words: NULL: none yet. */
GtkWidget *spelch_paragraph_new (const char *words, const char *css_class);

/* Gives such a label other words. */
void spelch_paragraph_set (GtkLabel *label, const char *words);

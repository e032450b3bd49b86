/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Word help: what the words of the trade mean that stand in a part of a window. A button lists those in sight
 * now, each with its sentence; the pointer over such a word gets it as a tooltip. Nothing is marked in the
 * text.
 */
#pragma once

#include <gtk/gtk.h>

/* Adds the words that @widget has drawn itself, as it looks now, to @text, a line each. */
typedef void (*SpelchWordsDrawn) (GtkWidget *widget, GString *text);

/* Lets a list know the words that @widget draws: its labels are looked at anyway. */
void spelch_word_help_set_drawn (GtkWidget *widget, SpelchWordsDrawn drawn);

/* Makes @button list the words in the labels and drawings of @shown that are in sight when it is pressed. */
void spelch_word_help_set (GtkMenuButton *button, GtkWidget *shown);

/* Tells the word under the pointer in any label within @shown. */
void spelch_word_help_add_tips (GtkWidget *shown);

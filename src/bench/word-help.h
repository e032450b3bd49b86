/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Word help: what the words of the trade mean that stand in a part of a window. A button lists those in sight
 * now, each with its sentence; the pointer over such a word gets it as a tooltip. Nothing is marked in the
 * text.
 */
#pragma once

#include <gtk/gtk.h>

/* Makes @button list the words in the labels of @shown that are in sight when it is pressed. */
void spelch_word_help_set (GtkMenuButton *button, GtkWidget *shown);

/* Tells the word under the pointer in any label within @shown. */
void spelch_word_help_add_tips (GtkWidget *shown);

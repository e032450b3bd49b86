/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Dialogue: the end of one over a window. Not every desktop gives the window the keyboard back by itself, and
 * one that isn't active takes keys but never notices that a field was left, so that what was typed there
 * isn't entered.
 */
#pragma once

#include <gtk/gtk.h>

/* Takes @dialogue away and turns to the window that it belonged to. */
void spelch_dialogue_end (GtkWindow *dialogue);

/* The same, for one that the desktop may have shown; drops the caller's reference. */
void spelch_dialogue_end_native (GtkNativeDialog *dialogue);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Quantity: one value that can be moved, as a mark in the drawing and an entry field beside it show it
 * together. Both share its GtkAdjustment (mm); every way of changing it ends in an edit of the session.
 */
#pragma once

#include "bench/bench-session.h"
#include "bench/quantity-rules.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_QUANTITY (spelch_quantity_get_type ())
G_DECLARE_FINAL_TYPE (SpelchQuantity, spelch_quantity, SPELCH, QUANTITY, GObject)

/* Signal "changed": its value, limits, words or whether it is held. */

/* Owned by the quantity; a reading is of the plan as it is now. */
SpelchQuantityId spelch_quantity_get_id (SpelchQuantity *self);
GtkAdjustment *spelch_quantity_get_adjustment (SpelchQuantity *self);
SpelchSession *spelch_quantity_get_session (SpelchQuantity *self);
const SpelchReading *spelch_quantity_get_reading (SpelchQuantity *self);

/* The pass it sets, from 1; 0: none. */
guint spelch_quantity_get_pass (SpelchQuantity *self);

/* "Pass 1, 6.0 mm, show face badly torn". Owned by the quantity. */
const char *spelch_quantity_get_label (SpelchQuantity *self);

/* What its mark says: "1 · 6.0 mm". Owned by the quantity. */
const char *spelch_quantity_get_pill (SpelchQuantity *self);

/* A drag: begin, move any number of times, then end, keeping it or not. What is moved is always the part as
 * it was when the drag began, so that going there and back leaves no trace. */
void spelch_quantity_begin (SpelchQuantity *self);
void spelch_quantity_end (SpelchQuantity *self, bool keep);

/* Moves to @mm, rounded to the grid of the unit shown and stopped at its limits; the limit is said. */
void spelch_quantity_move (SpelchQuantity *self, double mm);

/* Moves by @steps arrow steps, along the grid of the unit shown, or @pages page steps. */
void spelch_quantity_nudge (SpelchQuantity *self, int steps, int pages);

/* Takes a typed length as it was typed. False, with why in *complaint (free with g_free()), when it lies
 * beyond a limit. */
bool spelch_quantity_enter (SpelchQuantity *self, const SpelchLength *length, char **complaint);

/* Follows the recommendation again. */
void spelch_quantity_let_go (SpelchQuantity *self);

/* The quantities of the session's current cut, kept up to date: a list of SpelchQuantity in which one keeps
 * its object as long as it exists. Create it before the views that show it. A new reference. */
GListModel *spelch_quantities_new (SpelchSession *session);

G_END_DECLS

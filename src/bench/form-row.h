/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Form row: one field of a form: its name, what is typed or chosen, and under that either how the program
 * reads it or what is wrong with it.
 */
#pragma once

#include "bench/field.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_FORM_ROW (spelch_form_row_get_type ())
G_DECLARE_FINAL_TYPE (SpelchFormRow, spelch_form_row, SPELCH, FORM_ROW, GtkWidget)

/* Signals: "typed": the text changed by typing; "entered": Enter was pressed, the focus left, or something
 * was chosen. @field must stay. */
SpelchFormRow *spelch_form_row_new (const SpelchField *field);

const SpelchField *spelch_form_row_get_field (SpelchFormRow *self);

/* Writes what the member is now, unless @typed tells what was left unfinished. */
void spelch_form_row_show (SpelchFormRow *self, gconstpointer value, const char *typed,
                           const SpelchNumbers *numbers);

/* Owned by the row. */
const char *spelch_form_row_get_typed (SpelchFormRow *self);

/* Whether something else stands there than was shown. */
bool spelch_form_row_is_typed (SpelchFormRow *self);
guint spelch_form_row_get_choice (SpelchFormRow *self);

/* What there is to pick in a field of that kind, ended by NULL; shown with the next value. */
void spelch_form_row_set_picks (SpelchFormRow *self, const char *const *ids, const char *const *names);

/* What the choices in a field of that kind are called from now on, translated; ended by NULL. */
void spelch_form_row_set_choices (SpelchFormRow *self, const char *const *names);

/* The id of what is picked, or NULL when it isn't among what there is. Owned by the row. */
const char *spelch_form_row_get_pick (SpelchFormRow *self);

/* A remark under the field; a complaint marks it as wrong. NULL: none. */
void spelch_form_row_remark (SpelchFormRow *self, const char *words, bool complaint);

/* Makes the names of all rows in @group equally wide, so that their controls stand under one another. */
void spelch_form_row_align (SpelchFormRow *self, GtkSizeGroup *group);

/* Gives the focus to what is typed or chosen in. */
void spelch_form_row_focus (SpelchFormRow *self);

G_END_DECLS

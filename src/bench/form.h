/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Form: the fields of one value (a bit, a board, a machine, a cut), each with its name, what is typed, how
 * the program reads it while it is typed, and what is wrong with it, said beside it. What can't be taken
 * stays in its field until it is corrected, also while other values are looked at; it is never lost and never
 * kept.
 */
#pragma once

#include "bench/field.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_FORM (spelch_form_get_type ())
G_DECLARE_FINAL_TYPE (SpelchForm, spelch_form, SPELCH, FORM, GtkWidget)

/* What is wrong with a value, naming members, or NULL; @data as given to spelch_form_new(). g_free() it. */
typedef char *(*SpelchFormFault) (gconstpointer value, gpointer data);

/* Signals: "edited" (value as gpointer, name of the field as const char *): a value without fault was
 * entered; "drafted" (value as gpointer): what is typed so far would make this value, without fault;
 * "dropped": what was drafted is not to be: it was taken back, or left with a fault.
 * @fields (static) describe a value of @size bytes, which is copied with memcpy(). */
SpelchForm *spelch_form_new (const SpelchField *fields, guint n_fields, gsize size, SpelchFormFault fault,
                             gpointer data);

/* Shows @value, which what was typed before under the same @id completes. */
void spelch_form_show (SpelchForm *self, const char *id, gconstpointer value);

/* How numbers are written and read. */
void spelch_form_set_numbers (SpelchForm *self, const SpelchNumbers *numbers);

/* What there is to pick in the field of @member, ids and names, both ended by NULL; shown with the next
 * value. */
void spelch_form_set_picks (SpelchForm *self, const char *member, const char *const *ids,
                            const char *const *names);

/* What the choices in the field of @member are called from now on, as many as it has, translated; ended by
 * NULL. */
void spelch_form_set_choices (SpelchForm *self, const char *member, const char *const *names);

/* Puts @widget under the field of @member. */
void spelch_form_put_under (SpelchForm *self, const char *member, GtkWidget *widget);

/* Whether something stands in a field of the value shown that can't be taken. */
bool spelch_form_is_unfinished (SpelchForm *self);

/* Puts the focus into the field of @member. */
void spelch_form_focus (SpelchForm *self, const char *member);

G_END_DECLS

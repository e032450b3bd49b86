/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Length entry: a field for one quantity beside the drawing, in any unit and with either decimal sign. What
 * was typed stays as typed, also while it is wrong; what it reads as, or what is wrong with it, is given as a
 * remark for the row to show. A pin beside it shows that the value is held, and lets it go.
 */
#pragma once

#include "bench/quantity.h"

G_BEGIN_DECLS

#define SPELCH_TYPE_LENGTH_ENTRY (spelch_length_entry_get_type ())
G_DECLARE_FINAL_TYPE (SpelchLengthEntry, spelch_length_entry, SPELCH, LENGTH_ENTRY, GtkWidget)

/* Signal "remarked" (const char *): "= 15.875 mm" or a complaint; "" when there's nothing to remark. */

SpelchLengthEntry *spelch_length_entry_new (SpelchQuantity *quantity);

G_END_DECLS

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bit life: what a bit of the drawer has cut with the edge it has and with earlier ones, and what to do when
 * it was sharpened or replaced.
 */
#pragma once

#include "bench/shelves.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_BIT_LIFE (spelch_bit_life_get_type ())
G_DECLARE_FINAL_TYPE (SpelchBitLife, spelch_bit_life, SPELCH, BIT_LIFE, GtkWidget)

SpelchBitLife *spelch_bit_life_new (SpelchShelves *shelves);

/* Follows @bit, of which a copy is kept. */
void spelch_bit_life_show (SpelchBitLife *self, const SpelchBit *bit, const SpelchNumbers *numbers);

G_END_DECLS

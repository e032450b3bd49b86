/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bit tile: one bit in the drawer, drawn to the drawer's scale, with its name below and what speaks against
 * it above. A button; it can also be dragged onto the drawing.
 */
#pragma once

#include "drawing/palette.h"
#include "shop/bit.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_BIT_TILE (spelch_bit_tile_get_type ())
G_DECLARE_FINAL_TYPE (SpelchBitTile, spelch_bit_tile, SPELCH, BIT_TILE, GtkButton)

/* In pixels, and its words are cut short where they don't fit; -1: as its words ask for. */
void spelch_bit_tile_set_width (SpelchBitTile *self, int width);

SpelchBitTile *spelch_bit_tile_new (void);

/* The bit it shows, owned by the tile. Setting copies @bit; @palette must outlive the tile, @decimal_sign
 * is '.' or ','. */
const SpelchBit *spelch_bit_tile_get_bit (SpelchBitTile *self);
void spelch_bit_tile_set_bit (SpelchBitTile *self, const SpelchBit *bit, const SpelchPalette *palette,
                              char decimal_sign);

/* One or two words above it, and the reasons for and against it, a line each. */
void spelch_bit_tile_set_caption (SpelchBitTile *self, const char *caption, const char *reasons);

/* Its full name with what is said about it. Owned by the tile. */
const char *spelch_bit_tile_get_words (SpelchBitTile *self);

/* Whether the cut has accepted this bit. */
void spelch_bit_tile_set_accepted (SpelchBitTile *self, bool accepted);

/* Pixels for each millimetre, the height the pictures get, and how much shank is drawn. */
void spelch_bit_tile_set_scale (SpelchBitTile *self, double scale, int height, double shank_mm);

G_END_DECLS

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bit strip: a row of bits that may be thousands. A few dozen have tiles of their own as wide as their words
 * ask for. Of more, all have tiles of one width, and only those in sight and some beside them exist; they are
 * pushed along as the strip is, and empty room stands for the others.
 */
#pragma once

#include "bench/bit-tile.h"

typedef struct
{
  GtkScrolledWindow *scroller;
  GtkBox *tiles;
  GtkWidget *before, *after;                                      /* the empty room */
  SpelchBitTile *(*make) (gpointer data);                         /* a tile to be put into the strip */
  void (*show) (SpelchBitTile *tile, guint place, gpointer data); /* what stands at a place, in a tile */
  gpointer data;
  guint n;     /* bits */
  guint first; /* place of the first tile's */
  int width;   /* pixels from one to the next; 0: as wide as each asks for */
} SpelchBitStrip;

/* Once the rest of @strip is filled in: follows its scroller. */
void spelch_bit_strip_begin (SpelchBitStrip *strip);

/* Before the scroller goes. */
void spelch_bit_strip_end (SpelchBitStrip *strip);

/* It has @n bits; all tiles are shown anew. */
void spelch_bit_strip_set_count (SpelchBitStrip *strip, guint n);

/* Shows all tiles anew. */
void spelch_bit_strip_show (SpelchBitStrip *strip);

/* Brings the bit at @place into sight, when that is laid out already. */
void spelch_bit_strip_seek (SpelchBitStrip *strip, guint place);

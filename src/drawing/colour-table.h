/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Colour table: the colours that stand best for those of some pictures, for files that hold few. Found by
 * halving boxes of colours at their median (Heckbert 1982, SIGGRAPH 16:297; from memory).
 */
#pragma once

#include <cairo.h>
#include <glib.h>

#define SPELCH_TABLE_COLOURS 256

typedef struct _SpelchColourTable SpelchColourTable;

/* One that has counted nothing. */
SpelchColourTable *spelch_colour_table_new (void);
void spelch_colour_table_free (SpelchColourTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchColourTable, spelch_colour_table_free)

/* Counts the colours of an RGB24 picture in. */
void spelch_colour_table_count (SpelchColourTable *table, cairo_surface_t *picture);

/* Chooses the table's colours once all pictures are counted. */
void spelch_colour_table_choose (SpelchColourTable *table);

/* Colour @i of the table, 0 to 255 each. */
void spelch_colour_table_get (const SpelchColourTable *table, guint i, guint8 rgb[3]);

/* The nearest colour for each pixel of an RGB24 picture, row by row, into @indices (its width times its
 * height). */
void spelch_colour_table_index (SpelchColourTable *table, cairo_surface_t *picture, guint8 *indices);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Glyph: the small drawn signs of the window. A verdict is told by its sign and a word in ink, never by a
 * colour.
 */
#pragma once

#include "plan/plan.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum
{
  SPELCH_GLYPH_NONE,
  SPELCH_GLYPH_TICK,     /* clean */
  SPELCH_GLYPH_CROSS,    /* not right */
  SPELCH_GLYPH_FRAYED,   /* nearly clean, fuzzy: a low splinter */
  SPELCH_GLYPH_SPLINTER, /* torn */
  SPELCH_GLYPH_PIN,      /* held by hand */
  SPELCH_GLYPH_MORE,     /* there is more to open; points the way lines run */
  SPELCH_GLYPH_LESS,     /* it is open */
} SpelchGlyphKind;

#define SPELCH_TYPE_GLYPH (spelch_glyph_get_type ())
G_DECLARE_FINAL_TYPE (SpelchGlyph, spelch_glyph, SPELCH, GLYPH, GtkWidget)

void spelch_glyph_set_kind (SpelchGlyph *self, SpelchGlyphKind kind);

/* The sign for a grade: 0 none, 1 tick, 2 and 3 frayed, 4 and 5 splinter. */
SpelchGlyphKind spelch_glyph_of_grade (int grade);

/* The sign for a face as it is planned: that of its grade, but no tick where the plan must not be cut. */
SpelchGlyphKind spelch_glyph_of_edge (const SpelchPlan *plan, SpelchSide side);

/* Draws a sign into a square of @size at the origin with the source that is set. */
void spelch_glyph_draw (cairo_t *cr, SpelchGlyphKind kind, double size);

G_END_DECLS

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Splinter: how an arris looks by its grade. The size stands for the grade and nothing else: no published
 * work supports a predicted length. Local coordinates: the arris is (0, 0), x runs over the face away from
 * the kerf, y into the board.
 */
#pragma once

#include "drawing/palette.h"

#include <cairo.h>
#include <glib.h>

typedef enum
{
  SPELCH_ARRIS_WOOD,     /* fibres lifted out of the face */
  SPELCH_ARRIS_FUZZ,     /* fibreboard: fine hairs */
  SPELCH_ARRIS_LAMINATE, /* angular chips */
} SpelchArrisKind;

/* Draws an arris of grade 1 (a crisp line) to 5. The same @seed gives the same splinters. */
void spelch_splinter_draw (cairo_t *cr, SpelchArrisKind kind, int grade, guint seed,
                           const SpelchPalette *palette);

/* How far ink reaches from the arris: along the face, over the kerf, out of the face, into the board. */
void spelch_splinter_extent (int grade, double *along, double *over, double *out, double *in);

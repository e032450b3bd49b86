/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lettering: words set with Pango so that screen, paper and files agree: unhinted, sizes in picture units.
 * One lettering serves a whole scene, so that fonts are looked up once.
 */
#pragma once

#include "drawing/palette.h"

#include <pango/pangocairo.h>
#include <stdbool.h>

#define SPELCH_FAMILY "Inter, Cantarell, sans-serif"

typedef struct
{
  PangoContext *context;
  PangoFontDescription *font;
  double factor; /* text size relative to the sizes asked for */
} SpelchLettering;

/* @family NULL: SPELCH_FAMILY. Clear with spelch_lettering_clear(). */
void spelch_lettering_init (SpelchLettering *lettering, const char *family, double factor);
void spelch_lettering_clear (SpelchLettering *lettering);

typedef enum
{
  SPELCH_LETTERS_PLAIN,
  SPELCH_LETTERS_STRONG,
  SPELCH_LETTERS_TITLE, /* the first line strong, the rest plain */
} SpelchLetters;

/* Sets @text at @size (before the factor). @wrap: picture units to wrap at, 0 for none. Free with
 * g_object_unref(). */
PangoLayout *spelch_lettering_set (const SpelchLettering *lettering, const char *text, double size,
                                   SpelchLetters letters, double wrap, PangoAlignment align);

/* Size of a layout in picture units. */
void spelch_lettering_measure (PangoLayout *layout, double *width, double *height);

/* Draws @layout with its top left corner at (x, y). */
void spelch_lettering_draw (cairo_t *cr, PangoLayout *layout, double x, double y, const SpelchColour *colour);

/* cairo_set_source_rgba() for a colour. */
void spelch_colour_set (cairo_t *cr, const SpelchColour *colour, double alpha);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Lettering: words set with Pango so that screen, paper and files agree: unhinted, sizes in picture units.
 * One lettering serves a whole scene, so that fonts are looked up once, and may serve those that follow: it
 * remembers the words it has set, so that only those that change in a drag are set anew.
 */
#pragma once

#include "drawing/palette.h"

#include <pango/pangocairo.h>
#include <stdbool.h>

#define SPELCH_FAMILY "Inter, Cantarell, sans-serif"

typedef struct _SpelchLettering SpelchLettering;

/* @family NULL: SPELCH_FAMILY. @factor: text size relative to the sizes asked for. */
SpelchLettering *spelch_lettering_new (const char *family, double factor);
SpelchLettering *spelch_lettering_ref (SpelchLettering *lettering);
void spelch_lettering_unref (SpelchLettering *lettering);

/* Whether it sets words in this family and size. */
bool spelch_lettering_suits (const SpelchLettering *lettering, const char *family, double factor);

typedef enum
{
  SPELCH_LETTERS_PLAIN,
  SPELCH_LETTERS_STRONG,
  SPELCH_LETTERS_TITLE, /* the first line strong, the rest plain */
} SpelchLetters;

/* @text with each number kept on the line of its unit, by no-break spaces; where it is only looked at and not
 * taken as text, "mm/min" in one piece too, by joiners that nobody sees. Free with g_free(). */
char *spelch_lettering_keep_units (const char *text, bool looked_at);

/* @text at @size (before the factor). @wrap: picture units to wrap at, 0 for none. The layout may be another
 * label's too and must not be changed. Free with g_object_unref(). */
PangoLayout *spelch_lettering_set (SpelchLettering *lettering, const char *text, double size,
                                   SpelchLetters letters, double wrap, PangoAlignment align);

/* The width of the longest word of @text: what @wrap must be at least if no word is to be broken. */
double spelch_lettering_longest (SpelchLettering *lettering, const char *text, double size,
                                 SpelchLetters letters);

/* Leaves out what a font may do to neighbouring letters, for a layout whose text changes in every frame:
 * words arrive composed, and looking for alternates takes a third of the time of setting them. */
void spelch_lettering_plainly (PangoLayout *layout);

/* Size of a layout in picture units. */
void spelch_lettering_measure (PangoLayout *layout, double *width, double *height);

/* Draws @layout with its top left corner at (x, y). */
void spelch_lettering_draw (cairo_t *cr, PangoLayout *layout, double x, double y, const SpelchColour *colour);

/* A drawing that nobody sees: the words that are drawn on it are added to @text, which must outlive it, a
 * line each. Free with cairo_destroy(). */
cairo_t *spelch_lettering_gather (GString *text);

/* cairo_set_source_rgba() for a colour. */
void spelch_colour_set (cairo_t *cr, const SpelchColour *colour, double alpha);

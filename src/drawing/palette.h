/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Palette: the colours of a drawing, for a light or dark window, high contrast, or paper. Direction colours
 * tell up-shear from down-shear and never mark a verdict.
 */
#pragma once

typedef struct
{
  double r, g, b; /* 0 to 1, sRGB */
} SpelchColour;

typedef struct
{
  SpelchColour ground;            /* behind the drawing */
  SpelchColour ink;               /* text and outlines */
  SpelchColour ink_soft;          /* secondary text; 4.5 : 1 on ground */
  SpelchColour line_soft;         /* rules between things */
  SpelchColour up_ink, down_ink;  /* chevrons and words */
  SpelchColour up_edge, up_flute; /* land and flute in the up-shear zone */
  SpelchColour down_edge, down_flute;
  SpelchColour plain_edge, plain_flute; /* straight flutes */
  SpelchColour steel_dark, steel_light; /* shank */
  SpelchColour long_grain, long_grain_line;
  SpelchColour end_grain, end_grain_pore;
  SpelchColour fibreboard, fibreboard_speck;
  SpelchColour laminate;
  SpelchColour layer_line;
  SpelchColour rest, rest_speck; /* spoilboard, table, base */
  SpelchColour splinter;
  SpelchColour label_ground;             /* behind a label on the board */
  SpelchColour window_sure, window_just; /* bands of the depth rule */
} SpelchPalette;

typedef enum
{
  SPELCH_LOOK_LIGHT,
  SPELCH_LOOK_DARK,
  SPELCH_LOOK_HIGH_CONTRAST,
  SPELCH_LOOK_PAPER,
} SpelchLook;

/* Static. */
const SpelchPalette *spelch_palette (SpelchLook look);

/* WCAG 2.2 contrast ratio of two opaque colours, 1 to 21. */
double spelch_palette_contrast (SpelchColour a, SpelchColour b);

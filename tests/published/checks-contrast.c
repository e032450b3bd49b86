/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Checks of colours against WCAG 2.2.
 */
#include "published.h"

#include "drawing/palette.h"

#define WCAG "WCAG 2.2, contrast ratio (formula from memory; SC 1.4.3 and 1.4.11)"
#define OKABE                                                                                                \
  "colours of Okabe and Ito 2008, Color Universal Design; ratios worked apart from the formula of WCAG 2.2"

static SpelchColour
of_hex (int hex)
{
  return (SpelchColour){ (hex >> 16 & 255) / 255.0, (hex >> 8 & 255) / 255.0, (hex & 255) / 255.0 };
}

static double
contrast (double a, double b)
{
  return spelch_palette_contrast (of_hex ((int)a), of_hex ((int)b));
}

/* How many of the texts on the ground of a look fall short of 4.5 : 1. */
static double
texts_too_faint (double look, double unused)
{
  const SpelchPalette *p = spelch_palette ((SpelchLook)look);
  const SpelchColour texts[] = { p->ink, p->ink_soft, p->up_ink, p->down_ink };
  int faint = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    faint += spelch_palette_contrast (texts[i], p->ground) < 4.5;
  return faint + (spelch_palette_contrast (p->ink, p->label_ground) < 4.5);
}

#define ROW(name, hex, on_white, on_black)                                                                   \
  { name " on white", OKABE, PUBLISHED_MEMORY, on_white, 0.006, contrast, hex, 0xFFFFFF },                   \
  {                                                                                                          \
    name " on black", OKABE, PUBLISHED_MEMORY, on_black, 0.006, contrast, hex, 0                             \
  }

static const PublishedCheck CHECKS[] = {
  { "black on white", WCAG, PUBLISHED_MEMORY, 21, 1e-9, contrast, 0, 0xFFFFFF },
  { "white on black", WCAG, PUBLISHED_MEMORY, 21, 1e-9, contrast, 0xFFFFFF, 0 },
  { "a colour on itself", WCAG, PUBLISHED_IDENTITY, 1, 1e-9, contrast, 0x0072B2, 0x0072B2 },
  ROW ("blue", 0x0072B2, 5.19, 4.05),
  ROW ("vermillion", 0xD55E00, 3.87, 5.43),
  ROW ("bluish green", 0x009E73, 3.42, 6.14),
  ROW ("reddish purple", 0xCC79A7, 3.06, 6.86),
  ROW ("orange", 0xE69F00, 2.25, 9.32),
  ROW ("sky blue", 0x56B4E9, 2.31, 9.10),
  ROW ("grey", 0x999999, 2.85, 7.37),
  { "light look: texts under 4.5 : 1", WCAG, PUBLISHED_MEMORY, 0, 0, texts_too_faint, SPELCH_LOOK_LIGHT, 0 },
  { "dark look: texts under 4.5 : 1", WCAG, PUBLISHED_MEMORY, 0, 0, texts_too_faint, SPELCH_LOOK_DARK, 0 },
  { "high contrast: texts under 4.5 : 1", WCAG, PUBLISHED_MEMORY, 0, 0, texts_too_faint,
    SPELCH_LOOK_HIGH_CONTRAST, 0 },
  { "paper: texts under 4.5 : 1", WCAG, PUBLISHED_MEMORY, 0, 0, texts_too_faint, SPELCH_LOOK_PAPER, 0 },
};

const PublishedGroup PUBLISHED_CONTRAST = { "contrast", CHECKS, G_N_ELEMENTS (CHECKS) };

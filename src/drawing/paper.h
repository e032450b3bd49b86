/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Paper: the sizes that pages are laid out for.
 */
#pragma once

#include "shop/codes.h"

#define SPELCH_POINTS_PER_MM (72.0 / 25.4)

typedef enum
{
  SPELCH_PAPER_A4,     /* ISO 216: 210 by 297 mm */
  SPELCH_PAPER_LETTER, /* ANSI: 8 1/2 by 11 in */
} SpelchPaper;
extern const SpelchCodes SPELCH_PAPER_CODES; /* a4, letter */

double spelch_paper_width (SpelchPaper paper);  /* mm */
double spelch_paper_height (SpelchPaper paper); /* mm */

/* The same, pt. */
void spelch_paper_size (SpelchPaper paper, double *width, double *height);

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/paper.h"

#include "shop/length.h"

static const char *const PAPERS[] = { "a4", "letter" };
const SpelchCodes SPELCH_PAPER_CODES = { "paper", PAPERS, G_N_ELEMENTS (PAPERS) };

double
spelch_paper_width (SpelchPaper paper)
{
  return paper == SPELCH_PAPER_LETTER ? 8.5 * SPELCH_MM_PER_INCH : 210;
}

double
spelch_paper_height (SpelchPaper paper)
{
  return paper == SPELCH_PAPER_LETTER ? 11 * SPELCH_MM_PER_INCH : 297;
}

void
spelch_paper_size (SpelchPaper paper, double *width, double *height)
{
  *width = spelch_paper_width (paper) * SPELCH_POINTS_PER_MM;
  *height = spelch_paper_height (paper) * SPELCH_POINTS_PER_MM;
}

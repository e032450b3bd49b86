/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exercise sheet: questions to print, with room for the answers, or the answers to them with their reasons,
 * as many to a page as fit. Points on paper; nothing comes nearer to an edge than the margin, and no question
 * is torn over two pages or parted from its follow-up.
 */
#pragma once

#include "drawing/paper.h"
#include "plan/posed.h"
#include "plan/words-why.h"
#include "plan/words.h"

#include <cairo.h>

#define SPELCH_SHEET_MARGIN 42.0 /* pt, 15 mm */

typedef struct
{
  SpelchPaper paper;
  bool answers; /* else questions */
  guint32 seed; /* shown, so that the teacher can draw the same again */
  SpelchNumbers numbers;
  const char *const *languages; /* as g_get_language_names() gives them */
  const char *family;           /* of fonts; NULL: the program's own */
  guint only;                   /* draw just this page, from 1, and show none: for printing; 0: all of them */
} SpelchExerciseSheet;

/* For SpelchExerciseSheet.only: no page at all, to count them; then the context may be NULL. */
#define SPELCH_SHEET_COUNT G_MAXUINT

/* Draws @n questions in their order, a follow-up right after its own exercise, with a cairo_show_page() after
 * each page. Gives the number of pages. */
guint spelch_exercise_sheet_draw (cairo_t *cr, const SpelchExerciseSheet *sheet, SpelchPosed *const *posed,
                                  guint n);

/* The whole as a PDF, in memory; *pages, when not NULL, gets their number. */
GBytes *spelch_exercise_sheet_pdf (const SpelchExerciseSheet *sheet, SpelchPosed *const *posed, guint n,
                                   guint *pages);

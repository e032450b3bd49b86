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
  SpelchSourceOf source;        /* of the model's constants */
  const char *family;           /* of fonts; NULL: the program's own */
} SpelchExerciseSheet;

/* Draws @n questions in their order, a follow-up right after its own exercise, with a cairo_show_page() after
 * each page. Gives the number of pages. */
guint spelch_exercise_sheet_draw (cairo_t *cr, const SpelchExerciseSheet *sheet, SpelchPosed *const *posed,
                                  guint n);

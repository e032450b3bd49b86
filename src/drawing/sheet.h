/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bench sheet: the pages to work from at the machine: a cover with the order of the cuts, then a page for
 * each cut. Pages are laid out as boxes in millimetres of the paper and drawn afterwards, so that print, PDF,
 * SVG and PNG agree. Every number comes from the plan. A cut that must not be made says so across its page,
 * with the reason and without speed or feed.
 */
#pragma once

#include "drawing/paper.h"
#include "drawing/scene.h"
#include "plan/work.h"

#define SPELCH_SHEET_BAR_MM 50.0 /* length of the bar that checks the print's scale */

/* What the sheet is made of. Nothing is kept but @work and @constants, which must outlive the sheet. */
typedef struct
{
  const SpelchWork *work;
  const SpelchConstants *constants;
  SpelchNumbers numbers;
  SpelchPaper paper;
  const char *family;   /* of the letters; NULL: SPELCH_FAMILY */
  const char *file;     /* name of the part's file; "" when it has none */
  const char *revision; /* of what it says */
  const char *date;     /* of the sheet, as it is to be written */
} SpelchSheetOf;

typedef struct _SpelchSheet SpelchSheet;

/* Lays every page out. */
SpelchSheet *spelch_sheet_new (const SpelchSheetOf *of);
void spelch_sheet_free (SpelchSheet *sheet);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchSheet, spelch_sheet_free)

guint spelch_sheet_pages (const SpelchSheet *sheet);
SpelchPaper spelch_sheet_paper (const SpelchSheet *sheet);

/* The part's name for a cover, the cut's for its page: for an outline. Owned by the sheet. */
const char *spelch_sheet_title (const SpelchSheet *sheet, guint page);

/* Draws a page, from 0, in millimetres from its upper left corner: scale @cr before. */
void spelch_sheet_draw (const SpelchSheet *sheet, guint page, cairo_t *cr);

/* The part, its cuts' scales and numbers in a line or two for the file's own description. g_free() it. */
char *spelch_sheet_subject (const SpelchSheet *sheet);

typedef enum
{
  SPELCH_BOX_WORDS,
  SPELCH_BOX_RULE,    /* a hairline across its column */
  SPELCH_BOX_TICK,    /* an empty box to tick */
  SPELCH_BOX_BLANK,   /* a line to write on */
  SPELCH_BOX_VERDICT, /* a tick, or a splinter */
  SPELCH_BOX_SIDE_VIEW,
  SPELCH_BOX_WAY_UP,
  SPELCH_BOX_BAR,    /* the 50 mm to check */
  SPELCH_BOX_ACROSS, /* do not cut, across the page, over the others */
} SpelchBoxKind;

/* One thing on a page. */
typedef struct
{
  SpelchBoxKind kind;
  SpelchRect rect;   /* mm */
  const char *words; /* of WORDS and ACROSS; owned by the sheet */
} SpelchBox;

/* What stands on a page, from 0, and the @i-th of it: for tests. */
guint spelch_sheet_boxes (const SpelchSheet *sheet, guint page);
SpelchBox spelch_sheet_box (const SpelchSheet *sheet, guint page, guint i);

/* All that a page says, a line each, with what its picture of the way up tells, for people who can't see it.
 * g_free() it. */
char *spelch_sheet_words (const SpelchSheet *sheet, guint page);

/* The room that boxes keep to. */
SpelchRect spelch_sheet_room (const SpelchSheet *sheet);

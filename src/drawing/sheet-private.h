/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Inside of a bench sheet, shared by the files that lay its pages out and draw them. All in millimetres of
 * the paper, y down.
 */
#pragma once

#include "drawing/lettering.h"
#include "drawing/sheet.h"
#include "drawing/way-up.h"

/* Sizes of letters, mm: 2.65 mm are 7 1/2 points. */
#define SPELCH_SHEET_TITLE 6.2
#define SPELCH_SHEET_LEAD  3.5
#define SPELCH_SHEET_BODY  3.0
#define SPELCH_SHEET_SMALL 2.6

/* Widths of lines after ISO 128, the group of 0.35 mm. */
#define SPELCH_SHEET_WIDE   0.35
#define SPELCH_SHEET_NARROW 0.18

typedef struct
{
  SpelchBoxKind kind;
  SpelchRect rect;
  PangoLayout *layout; /* of WORDS and ACROSS */
  bool soft;
  int grade; /* of VERDICT */
} SpelchSheetItem;

/* The side view and what makes it true to scale. */
typedef struct
{
  SpelchScene *scene;
  double unit;  /* mm of paper to a unit of the scene */
  double ratio; /* mm of paper to a mm of the board */
} SpelchSheetView;

typedef struct
{
  char *title;
  GArray *items; /* SpelchSheetItem */
  SpelchSheetView view;
  SpelchWayUp *way_up;
} SpelchSheetPage;

struct _SpelchSheet
{
  const SpelchWork *work;
  const SpelchConstants *constants;
  SpelchNumbers numbers;
  SpelchPaper paper;
  char *family, *file, *revision, *date;
  const SpelchPalette *palette;
  SpelchLettering *lettering;
  GPtrArray *pages; /* SpelchSheetPage */
  guint covers;     /* how many of them come before the first cut's */
};

/* A page without anything on it. */
SpelchSheetPage *spelch_sheet_page_new (const char *title);

/* ---- Flow: a column that is filled from its top ---- */

typedef struct
{
  SpelchSheet *sheet;
  SpelchSheetPage *page;
  double x, y, width;
  double factor; /* of letters and gaps, 1 or less where much has to be said */
  bool begun;    /* something stands in it */
} SpelchFlow;

/* The height that @text takes when set. */
double spelch_flow_height (const SpelchFlow *flow, const char *text, double size, SpelchLetters letters,
                           double width);

/* Sets @text in a box of @width with its top at (x, y), aligned in it; gives its height. An empty one sets
 * nothing. */
double spelch_flow_put (const SpelchFlow *flow, const char *text, double size, SpelchLetters letters,
                        bool soft, double x, double y, double width, PangoAlignment align);

void spelch_flow_skip (SpelchFlow *flow, double height); /* times the factor */

/* A hairline over a heading. */
void spelch_flow_heading (SpelchFlow *flow, const char *text);

/* A paragraph as wide as the column. */
void spelch_flow_text (SpelchFlow *flow, const char *text, SpelchLetters letters, bool soft);

/* A name at the left and what it is at the right. Takes @value. */
void spelch_flow_row (SpelchFlow *flow, const char *name, char *value);

/* An empty box to tick and its question. */
void spelch_flow_tick (SpelchFlow *flow, const char *question);

/* A line to write on, after its name. */
void spelch_flow_blank (SpelchFlow *flow, const char *name);

/* Puts a box without words onto the page, where @rect says. */
void spelch_flow_item (const SpelchFlow *flow, SpelchBoxKind kind, SpelchRect rect);

/* ---- Pages ---- */

/* Head and foot; the room between them. */
double spelch_sheet_put_head (SpelchSheet *sheet, SpelchSheetPage *page, const char *over, const char *title,
                              const char *aside, const char *under);

/* Adds the cover, or covers when the cuts are many. */
void spelch_sheet_add_covers (SpelchSheet *sheet);

/* Adds the page of a task. */
void spelch_sheet_add_cut (SpelchSheet *sheet, guint task);

/* What a cut's page says: what is set, what is done to the board, and how the work is kept and watched. */
void spelch_sheet_tell_setting (SpelchFlow *flow, const SpelchTask *task);
void spelch_sheet_tell_board (SpelchFlow *flow, const SpelchTask *task);
void spelch_sheet_tell_work (SpelchFlow *flow, const SpelchTask *task);

/* The side view of a task at the largest scale of ISO 5455 that fits into @width by @most, and no higher than
 * it needs; *height gets how high. */
SpelchSheetView spelch_sheet_view_new (const SpelchSheet *sheet, const SpelchTask *task, double width,
                                       double most, double *height);
void spelch_sheet_view_clear (SpelchSheetView *view);

/* "2 : 1". g_free() it. */
char *spelch_sheet_ratio (const SpelchSheet *sheet, double ratio);

/* In millimetres, as spelch_sheet_draw(). */
void spelch_sheet_draw_items (const SpelchSheet *sheet, const SpelchSheetPage *page, cairo_t *cr);

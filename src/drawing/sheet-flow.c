/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet-private.h"

#define HEADING_OVER  2.4 /* between what stands before and the hairline */
#define HEADING_UNDER 1.1
#define ROW_GAP       0.9
#define TEXT_GAP      0.7
#define NAME_MOST     0.55 /* of a row, for the name at its left */
#define COLUMN_GAP    2.0
#define TICK          3.0
#define BLANK_HIGH    7.0

static PangoLayout *
set_words (const SpelchFlow *flow, const char *text, double size, SpelchLetters letters, double width,
           PangoAlignment align)
{
  g_autofree char *kept = spelch_lettering_keep_units (text, false);
  return spelch_lettering_set (flow->sheet->lettering, kept, size * flow->factor, letters, width, align);
}

void
spelch_flow_item (const SpelchFlow *flow, SpelchBoxKind kind, SpelchRect rect)
{
  SpelchSheetItem item = { .kind = kind, .rect = rect };
  g_array_append_val (flow->page->items, item);
}

double
spelch_flow_height (const SpelchFlow *flow, const char *text, double size, SpelchLetters letters,
                    double width)
{
  double wide, high;
  g_autoptr (PangoLayout) layout = set_words (flow, text, size, letters, width, PANGO_ALIGN_LEFT);
  spelch_lettering_measure (layout, &wide, &high);
  return high;
}

double
spelch_flow_put (const SpelchFlow *flow, const char *text, double size, SpelchLetters letters, bool soft,
                 double x, double y, double width, PangoAlignment align)
{
  if (text[0] == '\0')
    return 0;
  SpelchSheetItem item = { .kind = SPELCH_BOX_WORDS,
                           .layout = set_words (flow, text, size, letters, width, align),
                           .soft = soft };
  item.rect.y = y;
  spelch_lettering_measure (item.layout, &item.rect.width, &item.rect.height);
  double spare = MAX (width - item.rect.width, 0);
  item.rect.x = x + (align == PANGO_ALIGN_RIGHT ? spare : align == PANGO_ALIGN_CENTER ? spare / 2 : 0);
  g_array_append_val (flow->page->items, item);
  return item.rect.height;
}

void
spelch_flow_skip (SpelchFlow *flow, double height)
{
  flow->y += height * flow->factor;
}

void
spelch_flow_heading (SpelchFlow *flow, const char *text)
{
  if (flow->begun)
    {
      spelch_flow_skip (flow, HEADING_OVER);
      spelch_flow_item (flow, SPELCH_BOX_RULE, (SpelchRect){ flow->x, flow->y, flow->width, 0 });
      spelch_flow_skip (flow, HEADING_OVER * 0.7);
    }
  flow->begun = true;
  flow->y += spelch_flow_put (flow, text, SPELCH_SHEET_SMALL, SPELCH_LETTERS_STRONG, true, flow->x, flow->y,
                              flow->width, PANGO_ALIGN_LEFT);
  spelch_flow_skip (flow, HEADING_UNDER);
}

void
spelch_flow_text (SpelchFlow *flow, const char *text, SpelchLetters letters, bool soft)
{
  if (text[0] == '\0')
    return;
  flow->begun = true;
  flow->y += spelch_flow_put (flow, text, SPELCH_SHEET_BODY, letters, soft, flow->x, flow->y, flow->width,
                              PANGO_ALIGN_LEFT);
  spelch_flow_skip (flow, TEXT_GAP);
}

void
spelch_flow_row (SpelchFlow *flow, const char *name, char *value)
{
  double wide, high;
  g_autofree char *owned = value;
  g_autoptr (PangoLayout) layout
      = set_words (flow, name, SPELCH_SHEET_BODY, SPELCH_LETTERS_PLAIN, 0, PANGO_ALIGN_LEFT);
  spelch_lettering_measure (layout, &wide, &high);
  double left = MIN (wide + 0.1, NAME_MOST * flow->width);
  flow->begun = true;
  double first = spelch_flow_put (flow, name, SPELCH_SHEET_BODY, SPELCH_LETTERS_PLAIN, true, flow->x, flow->y,
                                  left, PANGO_ALIGN_LEFT);
  double second = spelch_flow_put (flow, owned, SPELCH_SHEET_BODY, SPELCH_LETTERS_STRONG, false,
                                   flow->x + left + COLUMN_GAP, flow->y, flow->width - left - COLUMN_GAP,
                                   PANGO_ALIGN_RIGHT);
  flow->y += MAX (first, second);
  spelch_flow_skip (flow, ROW_GAP);
}

void
spelch_flow_tick (SpelchFlow *flow, const char *question)
{
  double size = TICK * flow->factor, x = flow->x + size + COLUMN_GAP * 0.8;
  double high = spelch_flow_put (flow, question, SPELCH_SHEET_BODY, SPELCH_LETTERS_PLAIN, false, x, flow->y,
                                 flow->x + flow->width - x, PANGO_ALIGN_LEFT);
  flow->begun = true;
  spelch_flow_item (flow, SPELCH_BOX_TICK, (SpelchRect){ flow->x, flow->y + 0.3 * flow->factor, size, size });
  flow->y += MAX (high, size);
  spelch_flow_skip (flow, ROW_GAP);
}

void
spelch_flow_blank (SpelchFlow *flow, const char *name)
{
  double wide, high, line = flow->y + BLANK_HIGH * flow->factor;
  g_autoptr (PangoLayout) layout
      = set_words (flow, name, SPELCH_SHEET_BODY, SPELCH_LETTERS_PLAIN, 0, PANGO_ALIGN_LEFT);
  spelch_lettering_measure (layout, &wide, &high);
  wide = MIN (wide + 0.1, NAME_MOST * flow->width);
  g_autoptr (PangoLayout) wrapped
      = set_words (flow, name, SPELCH_SHEET_BODY, SPELCH_LETTERS_PLAIN, wide, PANGO_ALIGN_LEFT);
  double unused;
  spelch_lettering_measure (wrapped, &unused, &high);
  line = MAX (line, flow->y + high + 0.5);
  flow->begun = true;
  spelch_flow_put (flow, name, SPELCH_SHEET_BODY, SPELCH_LETTERS_PLAIN, true, flow->x, line - high, wide,
                   PANGO_ALIGN_LEFT);
  double from = flow->x + wide + COLUMN_GAP;
  spelch_flow_item (flow, SPELCH_BOX_BLANK, (SpelchRect){ from, line, flow->x + flow->width - from, 0 });
  flow->y = line;
}

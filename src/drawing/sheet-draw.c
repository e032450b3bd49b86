/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Drawing a page: hairlines, boxes to tick, lines to write on, the bar that checks the print's scale.
 */
#include "drawing/sheet-private.h"

#include <math.h>

#define BAR_TICK       1.6
#define ACROSS_OPACITY 0.16
#define ACROSS_ANGLE   (-M_PI / 3.4)

static void
draw_bar (cairo_t *cr, SpelchRect r)
{
  double y = r.y + r.height / 2;
  cairo_move_to (cr, r.x, y);
  cairo_line_to (cr, r.x + r.width, y);
  for (int cm = 0; cm <= 5; cm++)
    {
      double x = r.x + cm * 10, half = cm % 5 == 0 ? BAR_TICK : BAR_TICK * 0.6;
      cairo_move_to (cr, x, y - half);
      cairo_line_to (cr, x, y + half);
    }
  cairo_set_line_width (cr, SPELCH_SHEET_NARROW);
  cairo_stroke (cr);
}

static void
draw_tick (cairo_t *cr, double size)
{
  cairo_set_line_width (cr, 0.13 * size);
  cairo_move_to (cr, 0.10 * size, 0.55 * size);
  cairo_line_to (cr, 0.38 * size, 0.84 * size);
  cairo_line_to (cr, 0.92 * size, 0.16 * size);
  cairo_stroke (cr);
}

/* Fibres standing up from an edge, the more the worse. */
static void
draw_splinter (cairo_t *cr, double size, int grade)
{
  int fibres = CLAMP (grade, 2, 5);
  double step = 0.96 * size / fibres, foot = 0.9 * size;
  for (int i = 0; i < fibres; i++)
    {
      double x = 0.02 * size + i * step, top = foot - (0.2 + 0.1 * grade) * size * (i % 2 == 0 ? 0.7 : 1);
      cairo_move_to (cr, x, foot);
      cairo_line_to (cr, x + step * 0.62, top);
      cairo_line_to (cr, x + step * 0.92, foot);
    }
  cairo_move_to (cr, 0, foot);
  cairo_line_to (cr, size, foot);
  cairo_set_line_width (cr, 0.09 * size);
  cairo_stroke (cr);
}

static void
draw_verdict (cairo_t *cr, const SpelchSheetItem *item)
{
  cairo_save (cr);
  cairo_translate (cr, item->rect.x, item->rect.y);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  if (item->grade == 1)
    draw_tick (cr, item->rect.width);
  else
    draw_splinter (cr, item->rect.width, item->grade);
  cairo_restore (cr);
}

/* The words run up the page's diagonal, pale enough that what is under them can be read. */
static void
draw_across (const SpelchSheet *sheet, const SpelchSheetItem *item, cairo_t *cr)
{
  double width, height;
  SpelchRect r = item->rect;
  spelch_lettering_measure (item->layout, &width, &height);
  double c = cos (ACROSS_ANGLE), s = fabs (sin (ACROSS_ANGLE));
  double scale = MIN (r.width / (width * c + height * s), r.height / (width * s + height * c));
  cairo_save (cr);
  cairo_translate (cr, r.x + r.width / 2, r.y + r.height / 2);
  cairo_rotate (cr, ACROSS_ANGLE);
  cairo_scale (cr, scale, scale);
  cairo_translate (cr, -width / 2, -height / 2);
  spelch_colour_set (cr, &sheet->palette->ink, ACROSS_OPACITY);
  pango_cairo_show_layout (cr, item->layout);
  cairo_restore (cr);
}

static void
draw_side_view (const SpelchSheetPage *page, SpelchRect r, cairo_t *cr)
{
  cairo_save (cr);
  cairo_rectangle (cr, r.x, r.y, r.width, r.height);
  cairo_clip (cr);
  cairo_translate (cr, r.x, r.y);
  cairo_scale (cr, page->view.unit, page->view.unit);
  spelch_scene_draw (page->view.scene, cr);
  cairo_restore (cr);
}

static void
draw_item (const SpelchSheet *sheet, const SpelchSheetPage *page, const SpelchSheetItem *item, cairo_t *cr)
{
  const SpelchPalette *p = sheet->palette;
  SpelchRect r = item->rect;
  spelch_colour_set (cr, &p->ink, 1);
  switch (item->kind)
    {
    case SPELCH_BOX_WORDS:
      spelch_lettering_draw (cr, item->layout, r.x, r.y, item->soft ? &p->ink_soft : &p->ink);
      break;
    case SPELCH_BOX_RULE:
    case SPELCH_BOX_BLANK:
      spelch_colour_set (cr, item->kind == SPELCH_BOX_RULE ? &p->line_soft : &p->ink_soft, 1);
      cairo_move_to (cr, r.x, r.y);
      cairo_line_to (cr, r.x + r.width, r.y);
      cairo_set_line_width (cr, SPELCH_SHEET_NARROW);
      cairo_stroke (cr);
      break;
    case SPELCH_BOX_TICK:
      cairo_rectangle (cr, r.x, r.y, r.width, r.height);
      cairo_set_line_width (cr, SPELCH_SHEET_WIDE * 0.8);
      cairo_stroke (cr);
      break;
    case SPELCH_BOX_VERDICT:
      draw_verdict (cr, item);
      break;
    case SPELCH_BOX_SIDE_VIEW:
      draw_side_view (page, r, cr);
      break;
    case SPELCH_BOX_WAY_UP:
      spelch_way_up_draw (page->way_up, cr);
      break;
    case SPELCH_BOX_BAR:
      draw_bar (cr, r);
      break;
    case SPELCH_BOX_ACROSS:
    default:
      draw_across (sheet, item, cr);
      break;
    }
}

void
spelch_sheet_draw_items (const SpelchSheet *sheet, const SpelchSheetPage *page, cairo_t *cr)
{
  cairo_save (cr);
  spelch_colour_set (cr, &sheet->palette->ground, 1);
  cairo_paint (cr);
  for (guint i = 0; i < page->items->len; i++)
    draw_item (sheet, page, &g_array_index (page->items, SpelchSheetItem, i), cr);
  cairo_restore (cr);
}

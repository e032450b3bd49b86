/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing/sheet-private.h"

#include "plan/constants.h"

#include <glib/gi18n-lib.h>

#define MARGIN_LEFT   18.0 /* room for punched holes */
#define MARGIN_RIGHT  12.0
#define MARGIN_TOP    12.0
#define MARGIN_BOTTOM 10.0
#define FOOT          4.5 /* height of the foot's line */

SpelchRect
spelch_sheet_room (const SpelchSheet *sheet)
{
  return (SpelchRect){ MARGIN_LEFT, MARGIN_TOP,
                       spelch_paper_width (sheet->paper) - MARGIN_LEFT - MARGIN_RIGHT,
                       spelch_paper_height (sheet->paper) - MARGIN_TOP - MARGIN_BOTTOM };
}

/* ---- Pages ---- */

static void
clear_item (gpointer item)
{
  g_clear_object (&((SpelchSheetItem *)item)->layout);
}

SpelchSheetPage *
spelch_sheet_page_new (const char *title)
{
  SpelchSheetPage *page = g_new0 (SpelchSheetPage, 1);
  page->title = g_strdup (title);
  page->items = g_array_new (FALSE, TRUE, sizeof (SpelchSheetItem));
  g_array_set_clear_func (page->items, clear_item);
  return page;
}

static void
page_free (SpelchSheetPage *page)
{
  g_free (page->title);
  g_array_unref (page->items);
  spelch_sheet_view_clear (&page->view);
  g_clear_pointer (&page->way_up, spelch_way_up_free);
  g_free (page);
}

double
spelch_sheet_put_head (SpelchSheet *sheet, SpelchSheetPage *page, const char *over, const char *title,
                       const char *aside, const char *under)
{
  SpelchRect room = spelch_sheet_room (sheet);
  SpelchFlow flow = { sheet, page, room.x, room.y, room.width, 1, false };
  double aside_wide = 0.3 * room.width, first, second;
  first = spelch_flow_put (&flow, over, SPELCH_SHEET_BODY, SPELCH_LETTERS_PLAIN, true, flow.x, flow.y,
                           room.width - aside_wide - 4, PANGO_ALIGN_LEFT);
  second = spelch_flow_put (&flow, aside, SPELCH_SHEET_BODY, SPELCH_LETTERS_PLAIN, true,
                            room.x + room.width - aside_wide, flow.y, aside_wide, PANGO_ALIGN_RIGHT);
  flow.y += MAX (first, second) + 1.0;
  flow.y += spelch_flow_put (&flow, title, SPELCH_SHEET_TITLE, SPELCH_LETTERS_STRONG, false, flow.x, flow.y,
                             room.width, PANGO_ALIGN_LEFT)
            + 0.6;
  flow.y += spelch_flow_put (&flow, under, SPELCH_SHEET_LEAD, SPELCH_LETTERS_PLAIN, false, flow.x, flow.y,
                             room.width, PANGO_ALIGN_LEFT)
            + 2.2;
  spelch_flow_item (&flow, SPELCH_BOX_RULE, (SpelchRect){ room.x, flow.y, room.width, 0 });
  return flow.y + 3.2;
}

/* When all pages are known. */
static void
put_feet (SpelchSheet *sheet)
{
  SpelchRect room = spelch_sheet_room (sheet);
  double y = room.y + room.height - FOOT + 1, number = 0.2 * room.width;
  g_autofree char *made = g_strdup_printf (
      /* Translators: at the foot of a page: file, its revision, date, version of the model */
      _ ("%s, revision %s, %s. Reckoned by model %s."),
      sheet->file[0] != '\0' ? sheet->file : sheet->work->part->name, sheet->revision, sheet->date,
      SPELCH_MODEL_VERSION);
  for (guint i = 0; i < sheet->pages->len; i++)
    {
      SpelchFlow flow = { sheet, sheet->pages->pdata[i], room.x, y, room.width, 1, false };
      g_autofree char *page = g_strdup_printf (_ ("Page %u of %u"), i + 1, sheet->pages->len);
      double width = room.width - number - 4, size = SPELCH_SHEET_SMALL;
      /* A long name of a file stays on its line. */
      while (size > 0.8 && spelch_flow_height (&flow, made, size, SPELCH_LETTERS_PLAIN, width) > FOOT - 1)
        size *= 0.92;
      spelch_flow_put (&flow, made, size, SPELCH_LETTERS_PLAIN, true, room.x, y, width, PANGO_ALIGN_LEFT);
      spelch_flow_put (&flow, page, SPELCH_SHEET_SMALL, SPELCH_LETTERS_PLAIN, true,
                       room.x + room.width - number, y, number, PANGO_ALIGN_RIGHT);
    }
}

/* ---- Sheet ---- */

SpelchSheet *
spelch_sheet_new (const SpelchSheetOf *of)
{
  SpelchSheet *sheet = g_new0 (SpelchSheet, 1);
  sheet->work = of->work;
  sheet->constants = of->constants;
  sheet->numbers = of->numbers;
  sheet->paper = of->paper;
  sheet->family = g_strdup (of->family != NULL ? of->family : SPELCH_FAMILY);
  sheet->file = g_strdup (of->file);
  sheet->revision = g_strdup (of->revision);
  sheet->date = g_strdup (of->date);
  sheet->palette = spelch_palette (SPELCH_LOOK_PAPER);
  sheet->lettering = spelch_lettering_new (sheet->family, 1);
  sheet->pages = g_ptr_array_new_with_free_func ((GDestroyNotify)page_free);
  spelch_sheet_add_covers (sheet);
  for (guint i = 0; i < sheet->work->n; i++)
    spelch_sheet_add_cut (sheet, i);
  put_feet (sheet);
  return sheet;
}

void
spelch_sheet_free (SpelchSheet *sheet)
{
  g_ptr_array_unref (sheet->pages);
  spelch_lettering_unref (sheet->lettering);
  g_free (sheet->family);
  g_free (sheet->file);
  g_free (sheet->revision);
  g_free (sheet->date);
  g_free (sheet);
}

guint
spelch_sheet_pages (const SpelchSheet *sheet)
{
  return sheet->pages->len;
}

SpelchPaper
spelch_sheet_paper (const SpelchSheet *sheet)
{
  return sheet->paper;
}

static const SpelchSheetPage *
page_at (const SpelchSheet *sheet, guint page)
{
  return sheet->pages->pdata[page];
}

const char *
spelch_sheet_title (const SpelchSheet *sheet, guint page)
{
  g_return_val_if_fail (page < sheet->pages->len, "");
  return page_at (sheet, page)->title;
}

void
spelch_sheet_draw (const SpelchSheet *sheet, guint page, cairo_t *cr)
{
  g_return_if_fail (page < sheet->pages->len);
  spelch_sheet_draw_items (sheet, page_at (sheet, page), cr);
}

char *
spelch_sheet_subject (const SpelchSheet *sheet)
{
  g_autofree char *setting = spelch_words_setting (sheet->work->part, &sheet->numbers);
  return g_strdup_printf (_ ("Bench sheet: %s"), setting);
}

/* ---- Boxes ---- */

guint
spelch_sheet_boxes (const SpelchSheet *sheet, guint page)
{
  g_return_val_if_fail (page < sheet->pages->len, 0);
  return page_at (sheet, page)->items->len;
}

SpelchBox
spelch_sheet_box (const SpelchSheet *sheet, guint page, guint i)
{
  const SpelchSheetItem *item = &g_array_index (page_at (sheet, page)->items, SpelchSheetItem, i);
  return (SpelchBox){ item->kind, item->rect,
                      item->layout != NULL ? pango_layout_get_text (item->layout) : "" };
}

static void
add_way_up (GString *words, const SpelchWayUp *way_up)
{
  for (int kind = 0; kind < SPELCH_N_WAY_UPS; kind++)
    {
      SpelchRect unused;
      const char *said;
      if (spelch_way_up_label (way_up, (SpelchWayUpKind)kind, &unused, &said))
        g_string_append_printf (words, "%s\n", said);
    }
}

char *
spelch_sheet_words (const SpelchSheet *sheet, guint page)
{
  GString *words = g_string_new (NULL);
  for (guint i = 0; i < spelch_sheet_boxes (sheet, page); i++)
    {
      SpelchBox box = spelch_sheet_box (sheet, page, i);
      if (box.kind == SPELCH_BOX_WAY_UP)
        add_way_up (words, page_at (sheet, page)->way_up);
      else if (box.words[0] != '\0')
        g_string_append_printf (words, "%s\n", box.words);
    }
  return g_string_free (words, FALSE);
}

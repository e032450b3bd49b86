/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A cut's page: the side view, and beside it which way up and what is set on the machine; under it what is
 * done to the board, and how the work is kept; at the foot what came out. When much has to be said, letters
 * and gaps become smaller until it fits.
 */
#include "drawing/sheet-private.h"

#include <glib/gi18n-lib.h>

#define RIGHT_SHARE 0.345 /* of the page's upper half, for the machine */
#define GUTTER      8.0
#define VIEW_MOST   0.60 /* of the columns' height, for the side view */
#define VIEW_LEAST  0.30
#define VIEW_STEP   0.06
#define WAY_UP_HIGH 0.88 /* of its width */
#define BAR_HIGH    4.0
#define RESULT_HIGH 31.0
#define SMALLEST    0.62
#define SHRINK      0.96

/* Where the columns begin and what they may fill. */
typedef struct
{
  double top, bottom;
  double left, left_wide, right, right_wide;
} Columns;

static Columns
columns_of (const SpelchSheet *sheet, double top)
{
  SpelchRect room = spelch_sheet_room (sheet);
  Columns c = { .top = top, .bottom = room.y + room.height - RESULT_HIGH - 5, .left = room.x };
  c.right_wide = (room.width - GUTTER) * RIGHT_SHARE;
  c.left_wide = room.width - GUTTER - c.right_wide;
  c.right = room.x + room.width - c.right_wide;
  return c;
}

/* ---- Side view ---- */

static bool
is_torn (const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_edges; i++)
    if (plan->edges[i].stays && plan->edges[i].grade >= 2)
      return true;
  return false;
}

/* The bar is 50 mm in either unit, so that any rule will do. */
static char *
bar_words (const SpelchNumbers *numbers)
{
  const SpelchNumbers metric = { .unit = SPELCH_UNIT_MM, .decimal_sign = numbers->decimal_sign };
  g_autofree char *length = spelch_words_exactly (&metric, SPELCH_SHEET_BAR_MM);
  g_autofree char *inches = spelch_words_decimal (numbers, SPELCH_SHEET_BAR_MM / SPELCH_MM_PER_INCH, 2);
  g_autofree char *in = g_strdup_printf (_ ("%s in"), inches);
  return numbers->unit == SPELCH_UNIT_MM ? g_steal_pointer (&length)
                                         : g_strdup_printf ("%s (%s)", length, in);
}

static void
put_bar (SpelchFlow *flow, const SpelchTask *task)
{
  g_autofree char *ratio = spelch_sheet_ratio (flow->sheet, flow->page->view.ratio);
  g_autofree char *bar = bar_words (&flow->sheet->numbers);
  g_autofree char *scale = g_strdup_printf (
      /* Translators: %s is a ratio, "2 : 1", then the number of a pass */
      g_dngettext (GETTEXT_PACKAGE, "Scale %s, seen along the feed; the only pass",
                   "Scale %s, seen along the feed; pass 1 of %u", MAX (task->plan.n_passes, 1)),
      ratio, task->plan.n_passes);
  g_autofree char *about
      = is_torn (&task->plan)
            ? g_strdup_printf ("%s\n%s", scale, _ ("Splinters show the grade, not a length."))
            : g_strdup (scale);
  g_autofree char *check = g_strdup_printf (_ ("%s: check with a rule"), bar);
  double length = SPELCH_SHEET_BAR_MM, gap = 4, right = flow->x + flow->width;
  spelch_flow_item (flow, SPELCH_BOX_BAR, (SpelchRect){ right - length, flow->y, length, BAR_HIGH });
  double first = spelch_flow_put (flow, about, SPELCH_SHEET_SMALL, SPELCH_LETTERS_PLAIN, true, flow->x,
                                  flow->y + 0.6, flow->width - length - gap, PANGO_ALIGN_LEFT);
  double second = spelch_flow_put (flow, check, SPELCH_SHEET_SMALL, SPELCH_LETTERS_PLAIN, true,
                                   right - length, flow->y + BAR_HIGH + 0.2, length, PANGO_ALIGN_CENTER);
  flow->y += MAX (first + 0.6, BAR_HIGH + 0.2 + second);
  flow->begun = true;
}

static void
put_side_view (SpelchFlow *flow, const SpelchTask *task, double most)
{
  double height;
  spelch_sheet_view_clear (&flow->page->view);
  flow->page->view = spelch_sheet_view_new (flow->sheet, task, flow->width, most, &height);
  spelch_flow_item (flow, SPELCH_BOX_SIDE_VIEW, (SpelchRect){ flow->x, flow->y, flow->width, height });
  flow->y += height + 1.5;
  put_bar (flow, task);
}

static void
put_way_up (SpelchFlow *flow, const SpelchTask *task)
{
  SpelchRect rect = { flow->x, flow->y, flow->width, flow->width * WAY_UP_HIGH };
  spelch_flow_heading (flow, _ ("Which way up"));
  rect.y = flow->y;
  g_clear_pointer (&flow->page->way_up, spelch_way_up_free);
  flow->page->way_up = spelch_way_up_new (flow->sheet->work->part, &task->cut, &task->bit, &task->plan, rect,
                                          SPELCH_SHEET_SMALL, flow->sheet->lettering, flow->sheet->palette);
  spelch_flow_item (flow, SPELCH_BOX_WAY_UP, rect);
  flow->y += rect.height;
}

/* ---- What came out ---- */

static void
put_result (SpelchSheet *sheet, SpelchSheetPage *page, const SpelchTask *task)
{
  SpelchRect room = spelch_sheet_room (sheet);
  double top = room.y + room.height - RESULT_HIGH - 2, half = (room.width - GUTTER) / 2;
  SpelchFlow flow = { sheet, page, room.x, top, room.width, 1, false };
  spelch_flow_item (&flow, SPELCH_BOX_RULE, (SpelchRect){ room.x, top, room.width, 0 });
  spelch_flow_skip (&flow, 1.4);
  spelch_flow_heading (&flow, _ ("What came out"));
  SpelchFlow left = { sheet, page, room.x, flow.y - 2.2, half, 1, false };
  SpelchFlow right = { sheet, page, room.x + half + GUTTER, flow.y - 2.2, half, 1, false };
  bool far = task->has_bit && task->plan.through;
  spelch_flow_blank (&left, _ ("Edge on the motor side"));
  if (far)
    spelch_flow_blank (&left, _ ("Edge on the far side"));
  spelch_flow_blank (&left, _ ("Depth measured"));
  spelch_flow_blank (&right, _ ("Test strip looked at by"));
  spelch_flow_blank (&right, _ ("Cut by"));
  spelch_flow_blank (&right, _ ("Date, signature"));
}

/* ---- The page ---- */

static char *
head_aside (const SpelchSheet *sheet, guint task)
{
  return g_strdup_printf (_ ("Cut %u of %u"), task + 1, sheet->work->n);
}

static char *
head_under (const SpelchSheet *sheet, const SpelchTask *task)
{
  g_autofree char *line = spelch_words_cut (&task->cut, task->has_bit ? &task->plan : NULL, &sheet->numbers);
  g_autofree char *length = spelch_length_show_whole (&task->cut.length, sheet->numbers.unit,
                                                      sheet->numbers.inch_style, sheet->numbers.decimal_sign);
  /* How far round a hole is, nobody measures. */
  if (task->cut.kind == SPELCH_CUT_HOLE)
    return task->cut.quantity > 1 ? g_strdup_printf (
               g_dngettext (GETTEXT_PACKAGE, "%s; %u of them", "%s; %u of them", task->cut.quantity), line,
               task->cut.quantity)
                                  : g_steal_pointer (&line);
  if (spelch_cut_is_way_round (&task->cut))
    return task->cut.quantity > 1 ? g_strdup_printf (
               g_dngettext (GETTEXT_PACKAGE, "%s; %u of them, each %s all the way round",
                            "%s; %u of them, each %s all the way round", task->cut.quantity),
               line, task->cut.quantity, length)
                                  : g_strdup_printf (_ ("%s; %s all the way round"), line, length);
  if (task->cut.quantity > 1)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s; %u of them, each %s long",
                                         "%s; %u of them, each %s long", task->cut.quantity),
                            line, task->cut.quantity, length);
  return g_strdup_printf (_ ("%s; %s long"), line, length);
}

static void
put_across (SpelchSheet *sheet, SpelchSheetPage *page)
{
  SpelchSheetItem item = { .kind = SPELCH_BOX_ACROSS,
                           .rect = spelch_sheet_room (sheet),
                           .layout = spelch_lettering_set (sheet->lettering, _ ("DO NOT CUT"), 20,
                                                           SPELCH_LETTERS_STRONG, 0, PANGO_ALIGN_LEFT) };
  g_array_append_val (page->items, item);
}

/* How much is made of a page. */
typedef struct
{
  double factor; /* of letters and gaps */
  double view;   /* share of the columns' height, at most for the side view */
} Fit;

/* The drawing, and beside it what is set. */
static void
fill_top (SpelchSheet *sheet, SpelchSheetPage *page, const SpelchTask *task, const Columns *c, Fit fit,
          double *left_end, double *right_end)
{
  SpelchFlow left = { sheet, page, c->left, c->top, c->left_wide, fit.factor, false };
  SpelchFlow right = { sheet, page, c->right, c->top, c->right_wide, fit.factor, false };
  put_side_view (&left, task, (c->bottom - c->top) * fit.view);
  put_way_up (&right, task);
  spelch_sheet_tell_setting (&right, task);
  *left_end = left.y;
  *right_end = right.y;
}

/* Fills the page; gives how far it goes beyond the bottom, and whether a lower drawing would help. */
static double
fill (SpelchSheet *sheet, SpelchSheetPage *page, const SpelchTask *task, const Columns *c, Fit fit,
      bool *by_view)
{
  SpelchRect room = spelch_sheet_room (sheet);
  double half = (room.width - GUTTER) / 2, y = c->top, left_end = y, right_end = y;
  if (task->has_bit)
    {
      fill_top (sheet, page, task, c, fit, &left_end, &right_end);
      y = MAX (left_end, right_end) + 2.4 * fit.factor;
      SpelchFlow across = { sheet, page, room.x, y, room.width, fit.factor, false };
      spelch_flow_item (&across, SPELCH_BOX_RULE, (SpelchRect){ room.x, y, room.width, 0 });
      y += 1.7 * fit.factor;
    }
  SpelchFlow left = { sheet, page, room.x, y, half, fit.factor, false };
  SpelchFlow right = { sheet, page, room.x + half + GUTTER, y, half, fit.factor, false };
  spelch_sheet_tell_board (&left, task);
  spelch_sheet_tell_work (&right, task);
  *by_view = task->has_bit && left_end > right_end;
  return MAX (left.y, right.y) - c->bottom;
}

/* The side view gives way before the letters do. */
static void
fill_to_fit (SpelchSheet *sheet, SpelchSheetPage *page, const SpelchTask *task, const Columns *columns)
{
  Fit fit = { 1, VIEW_MOST };
  guint head = page->items->len;
  bool by_view = false;
  while (fill (sheet, page, task, columns, fit, &by_view) > 0 && fit.factor > SMALLEST)
    {
      g_array_set_size (page->items, head);
      if (by_view && fit.view > VIEW_LEAST)
        fit.view -= VIEW_STEP;
      else
        fit.factor *= SHRINK;
    }
}

void
spelch_sheet_add_cut (SpelchSheet *sheet, guint index)
{
  const SpelchTask *task = &sheet->work->tasks[index];
  SpelchSheetPage *page = spelch_sheet_page_new (task->cut.name);
  g_autofree char *aside = head_aside (sheet, index);
  g_autofree char *under = head_under (sheet, task);
  g_ptr_array_add (sheet->pages, page);
  double top = spelch_sheet_put_head (sheet, page, sheet->work->part->name, task->cut.name, aside, under);
  Columns columns = columns_of (sheet, top);
  fill_to_fit (sheet, page, task, &columns);
  put_result (sheet, page, task);
  if (spelch_task_stops (task))
    put_across (sheet, page);
}

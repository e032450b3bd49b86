/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The cover: part, board and machine, the order of the cuts with its changes of the bit, what may not be cut
 * or isn't checked, every caution, sign-off. A part with very many cuts has its order go on over further
 * pages.
 */
#include "drawing/sheet-private.h"

#include "plan/cautions.h"

#include <glib/gi18n-lib.h>

#define GUTTER     8.0
#define SIDE_SHARE 0.34 /* of the page, for board, machine and totals */
#define SIGN_HIGH  24.0
#define NUMBER     7.0
#define PAGE_WIDE  14.0
#define STEP_GAP   1.4
#define SMALL      0.8 /* before the order goes on over another page */
#define SMALLEST   0.6
#define SHRINK     0.96

/* ---- Order ---- */

static char *
bit_line (const SpelchTask *task)
{
  if (!task->has_bit)
    return g_strdup (_ ("no bit may cut it"));
  g_autofree char *bit
      = task->plan.scoring.bit[0] == '\0'
            ? g_strdup (task->bit.name)
            : g_strdup_printf (_ ("%s, scored first with %s"), task->bit.name, task->plan.scoring.name);
  return task->recommended ? g_strdup_printf (_ ("%s (recommended)"), bit) : g_steal_pointer (&bit);
}

/* The grade of a face, and whether it will do. */
static char *
grade_words (const SpelchTask *task, const SpelchPart *part, SpelchSide side)
{
  const SpelchEdge *edge = spelch_plan_worst (&task->plan, side);
  const char *grade
      = spelch_words_grade (edge != NULL ? edge->grade : 0, spelch_plan_facing (&task->plan, side));
  return spelch_plan_is_accepted (&task->plan, part, side) ? g_strdup (grade)
                                                           : g_strdup_printf (_ ("%s (not accepted)"), grade);
}

static char *
state_line (const SpelchTask *task, const SpelchPart *part)
{
  if (spelch_task_stops (task))
    return g_strdup (_ ("DO NOT CUT"));
  g_autofree char *time = spelch_words_time (task->plan.time_s);
  g_autofree char *motor = grade_words (task, part, SPELCH_SIDE_MOTOR);
  g_autofree char *far = grade_words (task, part, SPELCH_SIDE_FAR);
  if (spelch_plan_worst (&task->plan, SPELCH_SIDE_FAR) == NULL)
    return g_strdup_printf (_ ("%s; motor side %s"), time, motor);
  return g_strdup_printf (_ ("%s; motor side %s, far side %s"), time, motor, far);
}

/* What is done before a cut. */
static void
put_before (SpelchFlow *flow, const SpelchTask *task, bool first)
{
  if (task->has_bit && (task->changes || first))
    {
      g_autofree char *line
          = g_strdup_printf (first ? _ ("Put in: %s") : _ ("Change the bit: %s"),
                             task->plan.scoring.bit[0] != '\0' ? task->plan.scoring.name : task->bit.name);
      spelch_flow_text (flow, line, SPELCH_LETTERS_PLAIN, true);
    }
  if (task->turns)
    spelch_flow_text (flow, _ ("Turn the board over."), SPELCH_LETTERS_PLAIN, true);
}

/* The number of a task's page. */
static guint
page_of (const SpelchSheet *sheet, guint task)
{
  return sheet->covers + task + 1;
}

static void
put_step (SpelchFlow *flow, guint i, const SpelchTask *task)
{
  g_autofree char *number = g_strdup_printf ("%u", i + 1);
  g_autofree char *bit = bit_line (task);
  g_autofree char *state = state_line (task, flow->sheet->work->part);
  g_autofree char *page = g_strdup_printf (_ ("page %u"), page_of (flow->sheet, i));
  double number_wide = NUMBER * flow->factor, page_wide = PAGE_WIDE * flow->factor;
  double x = flow->x + number_wide, width = flow->width - number_wide - page_wide;
  put_before (flow, task, i == 0);
  spelch_flow_put (flow, number, SPELCH_SHEET_BODY, SPELCH_LETTERS_STRONG, false, flow->x, flow->y,
                   number_wide, PANGO_ALIGN_LEFT);
  spelch_flow_put (flow, page, SPELCH_SHEET_SMALL, SPELCH_LETTERS_PLAIN, true, x + width, flow->y, page_wide,
                   PANGO_ALIGN_RIGHT);
  flow->y += spelch_flow_put (flow, task->cut.name, SPELCH_SHEET_BODY, SPELCH_LETTERS_STRONG, false, x,
                              flow->y, width, PANGO_ALIGN_LEFT);
  flow->y += spelch_flow_put (flow, bit, SPELCH_SHEET_BODY, SPELCH_LETTERS_PLAIN, false, x, flow->y, width,
                              PANGO_ALIGN_LEFT);
  flow->y += spelch_flow_put (flow, state, SPELCH_SHEET_BODY,
                              spelch_task_stops (task) ? SPELCH_LETTERS_STRONG : SPELCH_LETTERS_PLAIN,
                              !spelch_task_stops (task), x, flow->y, width, PANGO_ALIGN_LEFT);
  spelch_flow_skip (flow, STEP_GAP);
  flow->begun = true;
}

/* ---- Board, machine, totals ---- */

static char *
size_words (const SpelchPart *part, const SpelchNumbers *numbers)
{
  g_autofree char *length
      = spelch_length_show_whole (&part->length, numbers->unit, numbers->inch_style, numbers->decimal_sign);
  g_autofree char *width
      = spelch_length_show_whole (&part->width, numbers->unit, numbers->inch_style, numbers->decimal_sign);
  return part->length.mm > 0 && part->width.mm > 0 ? g_strdup_printf ("%s × %s", length, width)
                                                   : g_strdup (_ ("not told"));
}

static void
put_facts (SpelchFlow *flow)
{
  const SpelchWork *work = flow->sheet->work;
  const SpelchPart *part = work->part;
  const SpelchNumbers *numbers = &flow->sheet->numbers;
  spelch_flow_heading (flow, _ ("Board"));
  spelch_flow_text (flow, part->board.name, SPELCH_LETTERS_STRONG, false);
  spelch_flow_row (flow, _ ("Thickness"),
                   spelch_words_exactly (numbers, spelch_board_thickness (&part->board)));
  spelch_flow_row (flow, _ ("Piece"), size_words (part, numbers));
  spelch_flow_heading (flow, _ ("Machine"));
  spelch_flow_text (flow, part->machine.name, SPELCH_LETTERS_STRONG, false);
  spelch_flow_row (flow, _ ("Zero"),
                   g_strdup (spelch_machine_datum (&part->machine) == SPELCH_DATUM_BED ? _ ("on the bed")
                                                                                       : _ ("on the face")));
  spelch_flow_heading (flow, _ ("In all"));
  spelch_flow_row (flow, _ ("Cuts"), g_strdup_printf ("%u", work->n));
  spelch_flow_row (flow, _ ("Changes of the bit"), g_strdup_printf ("%u", work->changes));
  spelch_flow_row (flow, _ ("Turning over"), g_strdup_printf ("%u", work->turns));
  spelch_flow_row (flow, _ ("Cutting time"), spelch_words_time (work->time_s));
}

/* ---- What isn't settled ---- */

static guint
questions_of (const SpelchTask *task)
{
  guint n = task->recommended;
  for (guint i = 0; task->has_bit && i < task->plan.n_stops; i++)
    n += task->plan.stops[i].kind >= SPELCH_ASK_SPEED_MARK;
  return n;
}

static void
add_pages (GString *list, guint from, guint to)
{
  if (from == 0)
    return;
  g_string_append_printf (list, "%s%u", list->len > 0 ? ", " : "", from);
  if (to > from)
    g_string_append_printf (list, "%s%u", to > from + 1 ? "–" : ", ", to);
}

/* The pages of the tasks that stop, or of those that have questions: "2, 5–8". */
static char *
pages_where (const SpelchSheet *sheet, bool stops, guint *n)
{
  GString *list = g_string_new (NULL);
  guint from = 0, to = 0;
  *n = 0;
  for (guint i = 0; i < sheet->work->n; i++)
    {
      const SpelchTask *task = &sheet->work->tasks[i];
      if (spelch_task_stops (task) != stops || (!stops && questions_of (task) == 0))
        continue;
      guint page = page_of (sheet, i);
      if (from == 0 || page != to + 1)
        {
          add_pages (list, from, to);
          from = page;
        }
      to = page;
      *n += 1;
    }
  add_pages (list, from, to);
  return g_string_free (list, FALSE);
}

static void
put_open (SpelchFlow *flow)
{
  guint stopped, asked;
  g_autofree char *stops = pages_where (flow->sheet, true, &stopped);
  g_autofree char *asks = pages_where (flow->sheet, false, &asked);
  if (stopped + asked == 0)
    return;
  spelch_flow_heading (flow, _ ("Before anything is cut"));
  g_autofree char *first = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Do not cut as planned: page %s.",
                                                         "Do not cut as planned: pages %s.", stopped),
                                            stops);
  g_autofree char *second = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Answer the questions: page %s.",
                                                          "Answer the questions: pages %s.", asked),
                                             asks);
  if (stopped > 0)
    spelch_flow_tick (flow, first);
  if (asked > 0)
    spelch_flow_tick (flow, second);
}

static void
put_cautions (SpelchFlow *flow)
{
  const SpelchSheet *sheet = flow->sheet;
  g_auto (GStrv) cautions = spelch_caution_all (sheet->work->part);
  g_autofree char *strip = spelch_caution_strip (sheet->work->part, &sheet->numbers);
  spelch_flow_heading (flow, _ ("Cautions"));
  spelch_flow_text (flow, strip, SPELCH_LETTERS_STRONG, false);
  for (guint i = 0; cautions[i] != NULL; i++)
    spelch_flow_text (flow, cautions[i], SPELCH_LETTERS_PLAIN, false);
  spelch_flow_text (flow, _ ("Forces, power and heat are estimates."), SPELCH_LETTERS_PLAIN, true);
}

/* ---- Pages ---- */

static void
put_sign_off (SpelchSheet *sheet, SpelchSheetPage *page)
{
  SpelchRect room = spelch_sheet_room (sheet);
  double top = room.y + room.height - SIGN_HIGH, half = (room.width - GUTTER) / 2;
  SpelchFlow left = { sheet, page, room.x, top, half, 1, false };
  SpelchFlow right = { sheet, page, room.x + half + GUTTER, top, half, 1, false };
  spelch_flow_item (&left, SPELCH_BOX_RULE, (SpelchRect){ room.x, top, room.width, 0 });
  left.y = right.y = top + 1.6;
  spelch_flow_blank (&left, _ ("Board measured"));
  spelch_flow_blank (&left, _ ("Remarks"));
  spelch_flow_blank (&right, _ ("Released by"));
  spelch_flow_blank (&right, _ ("Date, signature"));
}

static SpelchSheetPage *
begin_page (SpelchSheet *sheet, double *top)
{
  const SpelchPart *part = sheet->work->part;
  SpelchSheetPage *page = spelch_sheet_page_new (part->name);
  g_autofree char *setting = spelch_words_setting (part, &sheet->numbers);
  g_ptr_array_add (sheet->pages, page);
  *top = spelch_sheet_put_head (sheet, page, _ ("Bench sheet"), part->name, sheet->date, setting);
  return page;
}

static double
bottom_of (const SpelchSheet *sheet)
{
  SpelchRect room = spelch_sheet_room (sheet);
  return room.y + room.height - SIGN_HIGH - 3;
}

/* As many steps as fit above @bottom, from the one with index @from; gives the next. At least one. */
static guint
put_steps (SpelchFlow *flow, guint from, double bottom)
{
  guint i = from;
  for (; i < flow->sheet->work->n; i++)
    {
      guint before = flow->page->items->len;
      double y = flow->y;
      put_step (flow, i, &flow->sheet->work->tasks[i]);
      if (flow->y <= bottom || i == from)
        continue;
      g_array_set_size (flow->page->items, before);
      flow->y = y;
      break;
    }
  return i;
}

static void
begin_order (SpelchFlow *flow, bool goes_on)
{
  spelch_flow_heading (flow, goes_on ? _ ("Order of the cuts, continued")
                                     : _ ("Order of the cuts, with the fewest changes of the bit"));
}

static double
middle_of (const SpelchSheet *sheet)
{
  SpelchRect room = spelch_sheet_room (sheet);
  return room.y + room.height / 2;
}

/* What isn't the order. The cautions are long, and go under a short one, where their lines are. */
static double
put_rest (SpelchFlow *left, SpelchFlow *right, bool both)
{
  put_facts (right);
  put_open (right);
  put_cautions (both && (left->y < right->y || left->y < middle_of (left->sheet)) ? left : right);
  return MAX (left->y, right->y);
}

/* The first page; gives the first step that found no room on it. */
static guint
fill_first (SpelchSheet *sheet, SpelchSheetPage *page, double top, double factor, double *end)
{
  SpelchRect room = spelch_sheet_room (sheet);
  double side = (room.width - GUTTER) * SIDE_SHARE, wide = room.width - GUTTER - side;
  SpelchFlow left = { sheet, page, room.x, top, wide, factor, false };
  SpelchFlow right = { sheet, page, room.x + wide + GUTTER, top, side, factor, false };
  begin_order (&left, false);
  guint next = put_steps (&left, 0, bottom_of (sheet));
  *end = put_rest (&left, &right, next == sheet->work->n);
  return next;
}

static guint
add_first (SpelchSheet *sheet)
{
  double top, end;
  SpelchSheetPage *page = begin_page (sheet, &top);
  guint head = page->items->len, next;
  for (double factor = 1;; factor *= SHRINK)
    {
      next = fill_first (sheet, page, top, factor, &end);
      bool whole = next == sheet->work->n || factor < SMALL;
      if ((whole && end <= bottom_of (sheet)) || factor < SMALLEST)
        break;
      g_array_set_size (page->items, head);
    }
  put_sign_off (sheet, page);
  return next;
}

/* Two columns of further steps. */
static guint
add_further (SpelchSheet *sheet, guint next)
{
  double top;
  SpelchRect room = spelch_sheet_room (sheet);
  double half = (room.width - GUTTER) / 2, bottom = room.y + room.height - 8;
  SpelchSheetPage *page = begin_page (sheet, &top);
  SpelchFlow across = { sheet, page, room.x, top, room.width, SMALL, false };
  begin_order (&across, true);
  for (guint column = 0; column < 2 && next < sheet->work->n; column++)
    {
      SpelchFlow flow = { sheet, page, room.x + column * (half + GUTTER), across.y, half, SMALL, true };
      next = put_steps (&flow, next, bottom);
    }
  return next;
}

static void
lay_out (SpelchSheet *sheet)
{
  g_ptr_array_set_size (sheet->pages, 0);
  for (guint next = add_first (sheet); next < sheet->work->n;)
    next = add_further (sheet, next);
}

/* The pages of the cuts are counted after the covers, so those are laid out again when there are more. */
void
spelch_sheet_add_covers (SpelchSheet *sheet)
{
  do
    {
      sheet->covers = MAX (sheet->pages->len, 1);
      lay_out (sheet);
    }
  while (sheet->pages->len > sheet->covers);
}

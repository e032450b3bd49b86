/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What a cut's page says in words: edges, passes, setting out, open questions; bit, speed and feed, holding,
 * limits, wear, test strip, cautions. A plan that must not be cut tells why, and no more than what is safe to
 * know.
 */
#include "drawing/sheet-private.h"

#include "plan/cautions.h"
#include "plan/words-limits.h"
#include "plan/words-log.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define VERDICT_SIZE 3.0
#define ROWS_MOST    12 /* of a table of passes, before a second one stands beside it */
#define NUMBER_WIDE  7.0
#define PASS_WIDE    9.0
#define DEPTH_WIDE   27.0

static const SpelchNumbers *
numbers_of (const SpelchFlow *flow)
{
  return &flow->sheet->numbers;
}

/* ---- Why not, and what isn't known ---- */

static void
tell_stops (SpelchFlow *flow, const SpelchTask *task)
{
  spelch_flow_heading (flow, _ ("Do not cut"));
  if (!task->has_bit)
    spelch_flow_text (flow, _ ("No bit has been chosen, and none of those at hand may cut it."),
                      SPELCH_LETTERS_STRONG, false);
  for (guint i = 0; task->has_bit && i < task->plan.n_stops; i++)
    if (task->plan.stops[i].kind < SPELCH_ASK_SPEED_MARK)
      {
        g_autofree char *sentence = spelch_words_stop (&task->plan.stops[i], numbers_of (flow));
        spelch_flow_text (flow, sentence, SPELCH_LETTERS_STRONG, false);
      }
}

static void
tell_questions (SpelchFlow *flow, const SpelchTask *task)
{
  bool begun = false;
  for (guint i = 0; task->has_bit && i < task->plan.n_stops; i++)
    {
      const SpelchStop *stop = &task->plan.stops[i];
      if (stop->kind < SPELCH_ASK_SPEED_MARK)
        continue;
      if (!begun)
        spelch_flow_heading (flow, _ ("Not checked: answer before cutting"));
      begun = true;
      g_autofree char *sentence = spelch_words_stop (stop, numbers_of (flow));
      spelch_flow_tick (flow, sentence);
    }
  if (!task->recommended)
    return;
  if (!begun)
    spelch_flow_heading (flow, _ ("Not checked: answer before cutting"));
  spelch_flow_tick (flow, _ ("Is this the bit you take? It is recommended, not yet accepted."));
}

/* ---- Edges ---- */

static void
tell_edge (SpelchFlow *flow, const SpelchTask *task, SpelchSide side)
{
  const SpelchPlan *plan = &task->plan;
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  if (edge == NULL && !plan->through)
    return;
  g_autofree char *face = spelch_words_face (plan, &task->cut, side);
  g_autofree char *reason = spelch_words_edge_reason (plan, side, numbers_of (flow));
  const char *grade = spelch_words_grade (edge != NULL ? edge->grade : 0, spelch_plan_facing (plan, side));
  double size = VERDICT_SIZE * flow->factor, right = flow->x + flow->width, wide = 0.34 * flow->width;
  double first = spelch_flow_put (flow, face, SPELCH_SHEET_BODY, SPELCH_LETTERS_STRONG, false, flow->x,
                                  flow->y, flow->width - wide - size - 3, PANGO_ALIGN_LEFT);
  double second = spelch_flow_put (flow, grade, SPELCH_SHEET_BODY, SPELCH_LETTERS_STRONG, false, right - wide,
                                   flow->y, wide, PANGO_ALIGN_RIGHT);
  const SpelchSheetItem *word
      = &g_array_index (flow->page->items, SpelchSheetItem, flow->page->items->len - 1);
  if (edge != NULL)
    {
      SpelchSheetItem verdict
          = { .kind = SPELCH_BOX_VERDICT,
              .rect = { word->rect.x - size - 1.6, flow->y + 0.3 * flow->factor, size, size },
              .grade = edge->grade };
      g_array_append_val (flow->page->items, verdict);
    }
  flow->y += MAX (first, second) + 0.4 * flow->factor;
  spelch_flow_text (flow, reason, SPELCH_LETTERS_PLAIN, true);
}

/* ---- Passes ---- */

/* What the depths are counted from besides the near face, and how far above it the tip stands. */
static const char *
other_datum (const SpelchPlan *plan)
{
  return plan->machine == SPELCH_MACHINE_GANTRY ? _ ("above the bed") : _ ("to the far face");
}

static double
above_other (const SpelchTask *task, const SpelchPass *pass)
{
  double backer = task->plan.machine == SPELCH_MACHINE_GANTRY ? task->cut.backer.mm : 0;
  return task->plan.thickness + backer - pass->tip_mm;
}

/* Below zero the tip stands in what the board lies on, with a minus as it is printed. */
static char *
signed_length (const SpelchNumbers *numbers, double mm)
{
  g_autofree char *size = spelch_words_exactly (numbers, fabs (mm));
  return g_strdup_printf (mm < -0.004 ? "−%s" : "%s", size);
}

/* Beside another table there is room for a star alone. */
static char *
pass_name (const SpelchPlan *plan, guint i, bool narrow)
{
  const char *held = narrow ? "%u*" : _ ("%u, held");
  return g_strdup_printf (plan->passes[i].held ? held : "%u", i + 1);
}

typedef struct
{
  double x[4], width[4];
} Cells;

static void
put_cells (const SpelchFlow *flow, const Cells *cells, char *const texts[4], SpelchLetters letters, bool soft,
           double size, double *height)
{
  *height = 0;
  for (int i = 0; i < 4; i++)
    if (texts[i] != NULL)
      *height
          = fmax (*height, spelch_flow_put (flow, texts[i], size, letters, soft, cells->x[i], flow->y,
                                            cells->width[i], i == 0 ? PANGO_ALIGN_LEFT : PANGO_ALIGN_RIGHT));
}

static Cells
cells_from (double x, double width, bool narrow, bool with_allowance)
{
  double first = narrow ? NUMBER_WIDE : MIN (PASS_WIDE * 1.6, width * 0.26), gap = 2;
  int n = with_allowance ? 3 : 2;
  double each = MIN ((width - first) / n - gap, DEPTH_WIDE * 1.2);
  Cells cells = { { x }, { first } };
  for (int i = 1; i <= 3; i++)
    {
      cells.x[i] = cells.x[i - 1] + cells.width[i - 1] + gap;
      cells.width[i] = each;
    }
  return cells;
}

static bool
leaves_allowance (const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_passes; i++)
    if (plan->passes[i].side_allowance_mm > 0)
      return true;
  return false;
}

/* A table, or one of two side by side. */
typedef struct
{
  Cells cells;
  bool narrow, with_allowance;
} Table;

static void
put_pass (SpelchFlow *flow, const Table *table, const SpelchTask *task, guint i)
{
  const SpelchPass *pass = &task->plan.passes[i];
  double height;
  char *texts[4]
      = { pass_name (&task->plan, i, table->narrow), spelch_words_exactly (numbers_of (flow), pass->tip_mm),
          signed_length (numbers_of (flow), above_other (task, pass)), NULL };
  if (table->with_allowance)
    texts[3] = pass->finishing ? g_strdup (_ ("finishes"))
                               : spelch_words_exactly (numbers_of (flow), pass->side_allowance_mm);
  put_cells (flow, &table->cells, texts, SPELCH_LETTERS_STRONG, false, SPELCH_SHEET_BODY, &height);
  flow->y += height + 0.6 * flow->factor;
  for (int c = 0; c < 4; c++)
    g_free (texts[c]);
}

static void
put_table (SpelchFlow *flow, const Table *table, const SpelchTask *task, guint from, guint to)
{
  char *heads[4] = { (char *)_ ("Pass"), (char *)_ ("below the near face"), (char *)other_datum (&task->plan),
                     table->with_allowance ? (char *)_ ("left on") : NULL };
  double height;
  put_cells (flow, &table->cells, heads, SPELCH_LETTERS_PLAIN, true, SPELCH_SHEET_SMALL, &height);
  flow->y += height + 0.6 * flow->factor;
  for (guint i = from; i < to; i++)
    put_pass (flow, table, task, i);
}

static bool
any_held (const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_passes; i++)
    if (plan->passes[i].held)
      return true;
  return false;
}

static void
put_pass_table (SpelchFlow *flow, const SpelchTask *task)
{
  guint n = task->plan.n_passes, tables = n > ROWS_MOST ? 2 : 1, rows = (n + tables - 1) / tables;
  double top = flow->y, lowest = top, wide = flow->width / tables;
  Table table = { .narrow = tables > 1, .with_allowance = tables == 1 && leaves_allowance (&task->plan) };
  for (guint t = 0; t < tables; t++)
    {
      table.cells = cells_from (flow->x + t * wide, wide - (table.narrow ? 4 : 0), table.narrow,
                                table.with_allowance);
      flow->y = top;
      put_table (flow, &table, task, t * rows, MIN (n, (t + 1) * rows));
      lowest = fmax (lowest, flow->y);
    }
  flow->y = lowest;
  if (table.narrow && any_held (&task->plan))
    spelch_flow_text (flow, _ ("* held by hand"), SPELCH_LETTERS_PLAIN, true);
}

static void
tell_passes (SpelchFlow *flow, const SpelchTask *task)
{
  g_autofree char *plan_words = spelch_words_pass_plan (&task->plan, numbers_of (flow));
  spelch_flow_heading (flow, _ ("Passes: depth of the tip"));
  put_pass_table (flow, task);
  spelch_flow_text (flow, plan_words, SPELCH_LETTERS_PLAIN, true);
}

static void
tell_setting_out (SpelchFlow *flow, const SpelchTask *task)
{
  g_auto (GStrv) sentences
      = spelch_words_setting_out (&task->plan, flow->sheet->work->part, &task->cut, numbers_of (flow));
  if (sentences[0] == NULL)
    return;
  spelch_flow_heading (flow, _ ("Setting out"));
  for (guint i = 0; sentences[i] != NULL; i++)
    spelch_flow_text (flow, sentences[i], SPELCH_LETTERS_PLAIN, false);
}

void
spelch_sheet_tell_board (SpelchFlow *flow, const SpelchTask *task)
{
  bool stops = spelch_task_stops (task);
  if (stops)
    tell_stops (flow, task);
  tell_questions (flow, task);
  if (!task->has_bit)
    return;
  spelch_flow_heading (flow, _ ("Edges"));
  tell_edge (flow, task, SPELCH_SIDE_MOTOR);
  tell_edge (flow, task, SPELCH_SIDE_FAR);
  if (stops)
    return;
  tell_passes (flow, task);
  tell_setting_out (flow, task);
}

/* ---- Bit and machine ---- */

static void
tell_bit (SpelchFlow *flow, const SpelchTask *task)
{
  const SpelchNumbers *numbers = numbers_of (flow);
  const SpelchPlan *plan = &task->plan;
  spelch_flow_heading (flow, _ ("Bit"));
  spelch_flow_text (flow, task->bit.name, SPELCH_LETTERS_STRONG, false);
  if (task->bit.kind == SPELCH_BIT_COMPRESSION)
    spelch_flow_row (flow, _ ("Turn-over"), spelch_words_exactly (numbers, plan->flutes.turn_over));
  if (plan->n_passes == 0)
    return;
  spelch_flow_row (flow, _ ("Stick-out"), spelch_words_exactly (numbers, plan->stick_out_mm));
  spelch_flow_row (flow, _ ("In the collet"),
                   plan->in_collet_mm > 0 ? spelch_words_exactly (numbers, plan->in_collet_mm)
                                          : g_strdup (_ ("not known")));
  if (plan->scoring.bit[0] == '\0')
    return;
  g_autofree char *first = g_strdup_printf (_ ("Pass 1 with “%s”:"), plan->scoring.name);
  spelch_flow_text (flow, first, SPELCH_LETTERS_PLAIN, false);
  spelch_flow_row (flow, _ ("Stick-out"), spelch_words_exactly (numbers, plan->scoring.stick_out_mm));
  spelch_flow_row (flow, _ ("In the collet"),
                   plan->scoring.in_collet_mm > 0 ? spelch_words_exactly (numbers, plan->scoring.in_collet_mm)
                                                  : g_strdup (_ ("not known")));
}

/* 0: the machine has no dial, or its steps no such speed. */
static guint
dial_step (const SpelchMachine *machine, double rpm)
{
  for (guint i = 0; i < machine->n_steps; i++)
    if (fabs (machine->steps_rpm[i] - rpm) < 0.5)
      return i + 1;
  return 0;
}

static void
put_speed (SpelchFlow *flow, const char *name, double rpm)
{
  guint step = dial_step (&flow->sheet->work->part->machine, rpm);
  g_autofree char *count = spelch_words_count (rpm);
  g_autofree char *speed = g_strdup_printf (_ ("%s rpm"), count);
  spelch_flow_row (flow, name,
                   step > 0 ? g_strdup_printf (_ ("%s, dial step %u"), speed, step) : g_strdup (speed));
}

static void
tell_setting (SpelchFlow *flow, const SpelchTask *task)
{
  const SpelchNumbers *numbers = numbers_of (flow);
  const SpelchPlan *plan = &task->plan;
  g_autofree char *pace = spelch_words_pace (plan, numbers);
  const SpelchPass *first = &plan->passes[0];
  spelch_flow_heading (flow, _ ("Set the machine"));
  if (plan->scoring.bit[0] != '\0')
    {
      put_speed (flow, _ ("Spindle, pass 1"), first->speed_rpm);
      spelch_flow_row (flow, _ ("Feed, pass 1"), spelch_words_feed (numbers, first->feed_mm_min));
    }
  put_speed (flow, _ ("Spindle"), plan->speed_rpm);
  spelch_flow_row (flow, _ ("Feed"), spelch_words_feed (numbers, plan->feed_mm_min));
  if (pace[0] != '\0')
    spelch_flow_row (flow, _ ("By hand"), g_strdup (pace));
  if (plan->plunge_feed_mm_min > 0)
    spelch_flow_row (flow, _ ("Plunge feed"), spelch_words_feed (numbers, plan->plunge_feed_mm_min));
  spelch_flow_row (flow, _ ("Entry"), spelch_words_entry (plan, numbers));
  if (plan->bit_height_mm > 0)
    spelch_flow_row (flow, _ ("Bit above the table"), spelch_words_exactly (numbers, plan->bit_height_mm));
  spelch_flow_row (flow, _ ("Cutting time"), spelch_words_time (plan->time_s));
}

/* ---- Holding, limits, wear ---- */

static void
tell_holding (SpelchFlow *flow, const SpelchTask *task)
{
  const SpelchPart *part = flow->sheet->work->part;
  g_autofree char *seat = spelch_words_seat (&task->plan);
  g_autofree char *advice = spelch_words_seat_advice (&task->plan, part, numbers_of (flow));
  g_autofree char *tabs = spelch_words_tabs (&task->plan, numbers_of (flow));
  spelch_flow_heading (flow, _ ("On the board"));
  spelch_flow_text (flow, seat, SPELCH_LETTERS_STRONG, false);
  spelch_flow_text (flow, advice, SPELCH_LETTERS_PLAIN, true);
  spelch_flow_text (flow, tabs, SPELCH_LETTERS_PLAIN, true);
}

static void
tell_limit (SpelchFlow *flow, const SpelchTask *task)
{
  g_autofree char *limit = spelch_words_limit (&task->plan);
  g_autofree char *next = spelch_words_limit_next (&task->plan);
  g_autofree char *both = g_strdup_printf ("%s %s", limit, next);
  g_autofree char *held = spelch_words_speed_held (&task->plan);
  g_autofree char *slow = spelch_words_slow (&task->plan, numbers_of (flow));
  spelch_flow_heading (flow, _ ("What holds the feed back"));
  spelch_flow_text (flow, both, SPELCH_LETTERS_PLAIN, false);
  spelch_flow_text (flow, held, SPELCH_LETTERS_PLAIN, true);
  if (slow[0] != '\0')
    spelch_flow_text (flow, slow, SPELCH_LETTERS_STRONG, false);
}

static void
tell_wear (SpelchFlow *flow, const SpelchTask *task)
{
  double cut = spelch_wear_metres (&task->plan);
  g_autofree char *way = spelch_words_way (numbers_of (flow), task->bit.metres_cut + cut);
  g_autofree char *after = g_strdup_printf (_ ("After the cut the edge has cut %s."), way);
  g_autofree char *upkeep = spelch_words_upkeep (&task->plan, numbers_of (flow));
  spelch_flow_heading (flow, _ ("Wear"));
  spelch_flow_text (flow, after, SPELCH_LETTERS_PLAIN, false);
  spelch_flow_text (flow, upkeep, SPELCH_LETTERS_PLAIN, true);
}

static const char *
look_at (const SpelchPlan *plan)
{
  if (plan->through)
    return _ ("Look along both arrises against the light, and run a fingernail over the far one.");
  return _ ("Look along the arrises against the light, and measure the depth in the strip.");
}

static void
tell_before (SpelchFlow *flow, const SpelchTask *task, bool stops)
{
  const SpelchPart *part = flow->sheet->work->part;
  g_autofree char *strip = spelch_caution_strip (part, numbers_of (flow));
  g_autofree char *cautions = spelch_caution_words (part);
  g_auto (GStrv) beware = spelch_caution_plan (flow->sheet->constants, part, &task->plan);
  spelch_flow_heading (flow, _ ("Before the real piece"));
  if (!stops)
    {
      spelch_flow_tick (flow, strip);
      spelch_flow_text (flow, look_at (&task->plan), SPELCH_LETTERS_PLAIN, true);
      for (guint i = 0; beware[i] != NULL; i++)
        spelch_flow_text (flow, beware[i], SPELCH_LETTERS_STRONG, false);
    }
  spelch_flow_text (flow, cautions, SPELCH_LETTERS_PLAIN, true);
}

void
spelch_sheet_tell_setting (SpelchFlow *flow, const SpelchTask *task)
{
  tell_bit (flow, task);
  if (!spelch_task_stops (task))
    tell_setting (flow, task);
}

void
spelch_sheet_tell_work (SpelchFlow *flow, const SpelchTask *task)
{
  bool stops = spelch_task_stops (task);
  if (!stops)
    {
      tell_holding (flow, task);
      tell_limit (flow, task);
      if (task->plan.life_known)
        tell_wear (flow, task);
    }
  tell_before (flow, task, stops);
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/compare.h"

#include "plan/edges.h"

#include <math.h>
#include <string.h>

#define TIE     0.01 /* share: closer values count as alike */
#define STEP_MM 0.5  /* of a scan */
#define TURN_MM 0.01 /* to which it is known where a grade turns */
#define SAME_MM 0.005

static const char *const rows[] = { "motor-edge", "far-edge", "passes",  "speed", "feed", "time", "seat",
                                    "hold",       "power",    "rubbing", "room",  "wear", "cost" };
const SpelchCodes SPELCH_ROW_CODES = { "row", rows, G_N_ELEMENTS (rows) };
static const char *const standings[] = { "between", "best", "worst" };
const SpelchCodes SPELCH_STANDING_CODES = { "standing", standings, G_N_ELEMENTS (standings) };

/* ---- Values ---- */

static SpelchComparedValue
told (bool applies, double value)
{
  return (SpelchComparedValue){ .told = applies, .value = applies ? value : 0 };
}

static SpelchComparedValue
grade_of (const SpelchPlan *plan, SpelchSide side)
{
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  return told (edge != NULL, edge != NULL ? edge->grade : 0);
}

static SpelchComparedValue
value_of (const SpelchPlan *plan, SpelchRow row)
{
  bool fed = plan->feed_mm_min > 0;
  switch (row)
    {
    case SPELCH_ROW_MOTOR_EDGE:
      return grade_of (plan, SPELCH_SIDE_MOTOR);
    case SPELCH_ROW_FAR_EDGE:
      return grade_of (plan, SPELCH_SIDE_FAR);
    case SPELCH_ROW_PASSES:
      return told (plan->n_passes > 0, plan->n_passes);
    case SPELCH_ROW_SPEED:
      return told (fed, plan->speed_rpm);
    case SPELCH_ROW_FEED:
      return told (fed, plan->feed_mm_min);
    case SPELCH_ROW_TIME:
      return told (fed, plan->time_s);
    case SPELCH_ROW_SEAT:
      return told (fed && plan->n_seats > 0,
                   plan->seats[0].apart ? plan->seats[0].mean_n : -plan->seats[0].mean_n);
    case SPELCH_ROW_HOLD:
      return told (fed && plan->hold_factor > 0, plan->hold_factor);
    case SPELCH_ROW_POWER:
      return told (fed, plan->power_w.mid);
    case SPELCH_ROW_RUBBING:
      return told (fed, plan->rubbing_share);
    case SPELCH_ROW_ROOM:
      return told (fed, plan->chip_room);
    case SPELCH_ROW_WEAR:
      return told (fed && plan->life_known, plan->wear_share);
    case SPELCH_ROW_COST:
      return told (fed && plan->cost > 0, plan->cost);
    case SPELCH_N_ROWS:
    default:
      return told (false, 0);
    }
}

/* ---- Best and worst ---- */

bool
spelch_compared_may_be_cut (const SpelchCompared *one)
{
  return one->plan.verdict != SPELCH_VERDICT_DO_NOT_CUT;
}

static bool
alike (double a, double b)
{
  return fabs (a - b) <= TIE * fmax (fabs (a), fabs (b)) + 1e-9;
}

static void
rank_row (GArray *columns, SpelchRow row)
{
  double sign = row == SPELCH_ROW_FEED || row == SPELCH_ROW_HOLD ? -1 : 1;
  double least = HUGE_VAL, most = -HUGE_VAL;
  for (guint i = 0; i < columns->len; i++)
    {
      const SpelchCompared *one = &g_array_index (columns, SpelchCompared, i);
      if (!spelch_compared_may_be_cut (one) || !one->values[row].told)
        continue;
      least = fmin (least, sign * one->values[row].value);
      most = fmax (most, sign * one->values[row].value);
    }
  if (row == SPELCH_ROW_SPEED || least >= most || alike (least, most))
    return;
  for (guint i = 0; i < columns->len; i++)
    {
      SpelchCompared *one = &g_array_index (columns, SpelchCompared, i);
      SpelchComparedValue *value = &one->values[row];
      if (!spelch_compared_may_be_cut (one) || !value->told)
        continue;
      value->standing = alike (sign * value->value, least)  ? SPELCH_STANDING_BEST
                        : alike (sign * value->value, most) ? SPELCH_STANDING_WORST
                                                            : SPELCH_STANDING_BETWEEN;
    }
}

/* ---- Picking ---- */

static bool
is_picked (guint bit, const guint *picked, guint n)
{
  for (guint i = 0; i < n; i++)
    if (picked[i] == bit)
      return true;
  return false;
}

static bool
has_kind (const SpelchBit *bits, SpelchBitKind kind, const guint *picked, guint n)
{
  for (guint i = 0; i < n; i++)
    if (bits[picked[i]].kind == kind)
      return true;
  return false;
}

static int
find_accepted (const GPtrArray *ranking, const SpelchBit *bits, const SpelchCut *cut)
{
  for (guint i = 0; i < ranking->len; i++)
    {
      const SpelchChoice *choice = ranking->pdata[i];
      if (strcmp (bits[choice->bit].id, cut->bit) == 0)
        return (int)choice->bit;
    }
  return -1;
}

bool
spelch_compare_pick_next (const GPtrArray *ranking, const SpelchCut *cut, const guint *picked, guint n,
                          guint *next)
{
  for (guint i = 0; i < ranking->len; i++)
    {
      const SpelchChoice *choice = ranking->pdata[i];
      if (choice->way_up != cut->way_up || choice->pinned || is_picked (choice->bit, picked, n))
        continue;
      *next = choice->bit;
      return true;
    }
  return false;
}

guint
spelch_compare_pick (const GPtrArray *ranking, const SpelchBit *bits, const SpelchCut *cut,
                     guint picked[SPELCH_COMPARE_MOST])
{
  int accepted = find_accepted (ranking, bits, cut);
  guint n = 0;
  if (accepted >= 0)
    picked[n++] = (guint)accepted;
  for (guint i = 0; i < ranking->len && n < SPELCH_COMPARE_MOST; i++)
    {
      const SpelchChoice *choice = ranking->pdata[i];
      if (choice->way_up == cut->way_up && !choice->pinned
          && !has_kind (bits, bits[choice->bit].kind, picked, n))
        picked[n++] = choice->bit;
    }
  while (n < SPELCH_COMPARE_LEAST && spelch_compare_pick_next (ranking, cut, picked, n, &picked[n]))
    n++;
  return n;
}

/* ---- Planning ---- */

/* The passes of @plan, held; the last one is the cut's own depth. */
static void
hold_passes (SpelchCut *cut, const SpelchPlan *plan)
{
  cut->held.passes_held = true;
  cut->held.n_passes = plan->n_passes > 0 ? plan->n_passes - 1 : 0;
  for (guint i = 0; i < cut->held.n_passes; i++)
    cut->held.passes[i] = spelch_length_mm (plan->passes[i].tip_mm);
}

GArray *
spelch_compare (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                const SpelchBit *const *bits, guint n, bool tied)
{
  GArray *columns = g_array_sized_new (FALSE, TRUE, sizeof (SpelchCompared), n);
  g_array_set_size (columns, n);
  for (guint i = 0; i < n; i++)
    {
      SpelchCompared *one = &g_array_index (columns, SpelchCompared, i);
      one->bit = bits[i];
      one->cut = spelch_choose_cut (cut, bits[i], cut->way_up);
      if (tied && i > 0)
        hold_passes (&one->cut, &g_array_index (columns, SpelchCompared, 0).plan);
      spelch_plan_make (constants, part, &one->cut, one->bit, &one->plan);
      for (int row = 0; row < SPELCH_N_ROWS; row++)
        one->values[row] = value_of (&one->plan, (SpelchRow)row);
    }
  for (int row = 0; row < SPELCH_N_ROWS; row++)
    rank_row (columns, (SpelchRow)row);
  return columns;
}

bool
spelch_compared_follows (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                         const SpelchCompared *one)
{
  SpelchCut own = spelch_choose_cut (cut, one->bit, cut->way_up);
  SpelchPlan plan;
  spelch_plan_make (constants, part, &own, one->bit, &plan);
  if (plan.n_passes != one->plan.n_passes)
    return true;
  for (guint i = 0; i < plan.n_passes; i++)
    if (fabs (plan.passes[i].tip_mm - one->plan.passes[i].tip_mm) > SAME_MM)
      return true;
  return false;
}

bool
spelch_compare_tells (const GArray *columns, SpelchRow row)
{
  for (guint i = 0; i < columns->len; i++)
    if (g_array_index (columns, SpelchCompared, i).values[row].told)
      return true;
  return false;
}

bool
spelch_compared_keeps (const SpelchCompared *one, const SpelchPart *part, bool seen)
{
  int accepted = seen ? part->accepted_seen : part->accepted_hidden;
  return spelch_compared_may_be_cut (one) && spelch_edges_worst (one->plan.edges, seen) <= accepted;
}

/* ---- By depth ---- */

/* What is asked at every depth. */
typedef struct
{
  const SpelchConstants *constants;
  const SpelchPart *part;
  const SpelchCompared *one;
} Asked;

typedef struct
{
  guint8 motor, far;
} Grades;

static Grades
grades_at (const Asked *asked, double depth)
{
  SpelchCut cut = asked->one->cut;
  SpelchPlan tried;
  cut.held.passes_held = false;
  cut.held.n_passes = 1;
  cut.held.passes[0] = spelch_length_mm (depth);
  spelch_plan_make (asked->constants, asked->part, &cut, asked->one->bit, &tried);
  return (Grades){ (guint8)grade_of (&tried, SPELCH_SIDE_MOTOR).value,
                   (guint8)grade_of (&tried, SPELCH_SIDE_FAR).value };
}

static bool
same_grades (Grades a, Grades b)
{
  return a.motor == b.motor && a.far == b.far;
}

/* The least depth found over @low, whose grades are others, with the grades that @high has: by whole
 * hundredths, so that what is worked out from the bit's and the board's sizes is met. */
static double
turn_between (const Asked *asked, double low, double high, Grades wanted)
{
  int under = 0, over = (int)ceil ((high - low) / TURN_MM - 1e-6);
  while (over - under > 1)
    {
      int middle = (under + over) / 2;
      if (same_grades (grades_at (asked, low + middle * TURN_MM), wanted))
        over = middle;
      else
        under = middle;
    }
  return fmin (low + over * TURN_MM, high);
}

SpelchScan
spelch_compare_scan (const SpelchConstants *constants, const SpelchPart *part, const SpelchCompared *one)
{
  const SpelchPlan *plan = &one->plan;
  const Asked asked = { constants, part, one };
  double deepest = plan->n_passes > 0 ? plan->passes[plan->n_passes - 1].tip_mm : 0;
  SpelchScan scan = { .step_mm = fmax (STEP_MM, deepest / SPELCH_SCAN_MOST) };
  Grades before = { 0 };
  scan.n = (guint)fmin (floor (deepest / scan.step_mm + 1e-9), SPELCH_SCAN_MOST);
  for (guint i = 0; i < scan.n; i++)
    {
      double depth = scan.step_mm * (i + 1);
      Grades grades = grades_at (&asked, depth);
      scan.motor[i] = grades.motor;
      scan.far[i] = grades.far;
      if (i > 0 && !same_grades (grades, before))
        scan.turns[i] = turn_between (&asked, depth - scan.step_mm, depth, grades);
      before = grades;
    }
  return scan;
}

double
spelch_scan_from (const SpelchScan *scan, guint i)
{
  return scan->turns[i] > 0 ? scan->turns[i] : scan->step_mm * (i + 1);
}

double
spelch_scan_to (const SpelchScan *scan, guint i)
{
  bool turns = i + 1 < scan->n && scan->turns[i + 1] > 0;
  return turns ? fmax (scan->turns[i + 1] - TURN_MM, scan->step_mm * (i + 1)) : scan->step_mm * (i + 1);
}

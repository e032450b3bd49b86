/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What decides the answer to a question that is posed: the one thing that, taken away, would change it.
 */
#include "plan/posed-private.h"

#include <math.h>

/* ---- Edges ---- */

/* The grade of an edge without what one term adds. */
static int
grade_without (const SpelchEdge *edge, SpelchTermKind kind)
{
  int grade = 1;
  for (guint i = 0; i < edge->n_terms; i++)
    if (edge->terms[i].kind != kind)
      grade += edge->terms[i].points;
  return grade;
}

/* Whether a term by itself makes, or spares, a tear. */
static bool
turns (const SpelchEdge *edge, SpelchTermKind kind, int from)
{
  return spelch_edge_points (edge, kind) != 0
         && (edge->grade >= from) != (grade_without (edge, kind) >= from);
}

static bool
turns_over (const SpelchPlan *plan)
{
  return plan->bit_kind == SPELCH_BIT_COMPRESSION;
}

/* The grain decides by itself only in solid wood; of a ply or veneer it only adds to what the shear begins.
 */
static bool
decides_by (const SpelchPlan *plan, const SpelchEdge *edge, SpelchTermKind kind, int from)
{
  SpelchFacing facing = edge->side == SPELCH_SIDE_MOTOR ? plan->near_facing : plan->far_facing;
  bool of_shear = kind == SPELCH_TERM_GRAIN && facing == SPELCH_FACING_PLY;
  return turns (edge, kind, from) && !(of_shear && turns (edge, SPELCH_TERM_SHEAR, from));
}

/* What makes, or spares, an edge of @from or worse; NULL when nothing of it stands out. What is rarer goes
 * first: every edge has its shear. */
static const char *
decides_edge (const SpelchPlan *plan, const SpelchEdge *edge, int from)
{
  static const SpelchTermKind RARE[]
      = { SPELCH_TERM_BACKING, SPELCH_TERM_SCORED,      SPELCH_TERM_LOG,  SPELCH_TERM_WEAR,
          SPELCH_TERM_CHIP,    SPELCH_TERM_EXIT_CORNER, SPELCH_TERM_GRAIN };
  bool far = edge != NULL && edge->side == SPELCH_SIDE_FAR;
  if (edge == NULL || edge->load == SPELCH_LOAD_NOT_CUT)
    return NULL;
  if (edge->by_entry_mm > 0 && edge->line_grade < from)
    return "entry";
  for (guint i = 0; i < G_N_ELEMENTS (RARE); i++)
    if (decides_by (plan, edge, RARE[i], from))
      return spelch_code_of (&SPELCH_TERM_CODES, (int)RARE[i]);
  if (edge->grade < from)
    return NULL;
  return edge->load == SPELCH_LOAD_NEUTRAL ? "neutral"
         : turns_over (plan)               ? (far ? "turn-over-far" : "turn-over")
         : far                             ? "shear-far"
                                           : "shear";
}

/* Why neither face tears. */
static const char *
decides_whole (const SpelchPlan *plan)
{
  bool board = plan->near_facing == SPELCH_FACING_BOARD
               && (!plan->through || plan->far_facing == SPELCH_FACING_BOARD);
  return board ? "facing" : turns_over (plan) ? "pressed-in-both" : "pressed-in";
}

static const char *
decides_tears (const SpelchPosed *posed)
{
  const SpelchPlan *plan = &posed->plan;
  const SpelchEdge *motor = spelch_plan_worst (plan, SPELCH_SIDE_MOTOR);
  const SpelchEdge *far = spelch_plan_worst (plan, SPELCH_SIDE_FAR);
  const char *of_motor = decides_edge (plan, motor, SPELCH_TORN_FROM);
  const char *of_far = decides_edge (plan, far, SPELCH_TORN_FROM);
  bool motor_torn = spelch_posed_torn (plan, SPELCH_SIDE_MOTOR);
  bool far_torn = spelch_posed_torn (plan, SPELCH_SIDE_FAR);
  /* What spares a face decides where the other doesn't tear. */
  if (motor_torn && of_motor != NULL)
    return of_motor;
  if (far_torn && of_far != NULL)
    return of_far;
  return of_far != NULL ? of_far : of_motor != NULL ? of_motor : decides_whole (plan);
}

/* ---- Depths ---- */

static const char *
decides_first_pass (const SpelchPosed *posed)
{
  const SpelchPlan *plan = &posed->plan;
  const SpelchWindows *w = &plan->windows;
  int i = spelch_part_find_bit (posed->part, posed->part->cuts[0].bit);
  const SpelchBit *bit = &posed->part->bits[MAX (i, 0)];
  if (posed->right == 0)
    return plan->through ? "thickness" : "floor";
  if (*plan->scoring.bit != '\0')
    return "scored";
  const struct
  {
    const char *code;
    double mm;
  } shares[] = {
    { "face-layer", plan->near_layer },
    { "overlap", plan->flutes.overlap / 2 },
    { "sharpened", fabs (spelch_bit_up_shear_now (bit) - bit->up_shear.mm) },
    { "tolerance", w->nominal.first_pass.empty ? 0 : posed->depths.from - posed->just.from },
  };
  guint most = 0;
  for (guint s = 1; s < G_N_ELEMENTS (shares); s++)
    if (shares[s].mm > shares[most].mm)
      most = s;
  return shares[most].code;
}

/* ---- Bits and ways up ---- */

/* The stop, or what makes an edge worse than accepted, that keeps a plan from serving. */
static const char *
decides_against (const SpelchPart *part, const SpelchPlan *plan)
{
  for (guint i = 0; i < plan->n_stops; i++)
    if (plan->stops[i].kind < SPELCH_ASK_SPEED_MARK)
      return spelch_code_of (&SPELCH_STOP_CODES, (int)plan->stops[i].kind);
  for (int side = SPELCH_SIDE_MOTOR; side <= SPELCH_SIDE_FAR; side++)
    {
      const SpelchEdge *edge = spelch_plan_worst (plan, (SpelchSide)side);
      int accepted = edge == NULL ? 5 : edge->seen ? part->accepted_seen : part->accepted_hidden;
      const char *code
          = edge != NULL && edge->grade > accepted ? decides_edge (plan, edge, accepted + 1) : NULL;
      if (code != NULL)
        return code;
    }
  return NULL;
}

/* Against the strongest rival. */
static const char *
decides_bit (const SpelchPosed *posed)
{
  if (posed->ranking->len < 2)
    return "alone";
  const SpelchChoice *next = posed->ranking->pdata[1];
  const char *against = decides_against (posed->part, &next->plan);
  if (against != NULL)
    return against;
  return next->plan.deflection_mm > next->plan.deflection_limit_mm + 1e-6 ? "bends" : "slow";
}

static const char *
decides_way_up (const SpelchPosed *posed)
{
  bool serves = spelch_posed_serves (posed->part, &posed->plan);
  bool turned_serves = spelch_posed_serves (posed->part, &posed->turned);
  if (serves && turned_serves)
    return decides_tears (posed);
  const char *against = decides_against (posed->part, serves ? &posed->turned : &posed->plan);
  return against == NULL ? "verdict" : against;
}

/* ---- Holding ---- */

static const char *
decides_hold (const SpelchPosed *posed)
{
  const SpelchPlan *plan = &posed->plan;
  const char *gives = spelch_posed_gives (plan);
  if (gives == NULL)
    return "several";
  if (!g_str_equal (gives, SPELCH_ANSWER_STAYS))
    return gives;
  if (plan->tabs.count > 0 && plan->tabs.alone)
    return "tabs-hold";
  if (plan->machine != SPELCH_MACHINE_GANTRY)
    return plan->n_seats > 0 && plan->seats[0].apart ? "hands-hold" : "drawn-down";
  return posed->part->holding.method == SPELCH_HOLD_CLAMPS ? "clamps-hold" : "vacuum-holds";
}

const char *
spelch_posed_deciding (const SpelchPosed *posed)
{
  const SpelchLimit *binding = spelch_plan_binding (&posed->plan);
  switch (posed->exercise->asks)
    {
    case SPELCH_ASKS_FIRST_PASS:
      return decides_first_pass (posed);
    case SPELCH_ASKS_BIT:
      return decides_bit (posed);
    case SPELCH_ASKS_WAY_UP:
      return decides_way_up (posed);
    case SPELCH_ASKS_LIMIT:
      return binding == NULL ? "held" : spelch_code_of (&SPELCH_LIMIT_CODES, (int)binding->kind);
    case SPELCH_ASKS_HOLD:
      return decides_hold (posed);
    case SPELCH_ASKS_TEARS:
    case SPELCH_N_ASKS:
    default:
      return decides_tears (posed);
    }
}

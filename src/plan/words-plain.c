/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/words-plain.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define GRAVITY      9.81    /* m/s2 */
#define POUND_N      4.44822 /* the weight of a pound */
#define NEARLY_CLEAN 2       /* grade: hardly anything breaks out */

/* ---- Edges ---- */

/* What spoils an edge whichever way it is pulled or pressed; NULL where nothing does. */
static const char *
spoiler (const SpelchEdge *edge, SpelchFacing facing)
{
  if (spelch_edge_points (edge, SPELCH_TERM_WEAR) > 0)
    return facing == SPELCH_FACING_BOARD
               ? _ ("The edge of the bit is dull: it rubs where it should cut, and leaves the board fuzzy.")
               : _ ("The edge of the bit is dull: it tears at the fibres instead of cutting them.");
  if (spelch_edge_points (edge, SPELCH_TERM_CHIP) > 0)
    return _ ("At this feed each tooth takes so thick a chip that the wood splits ahead of it.");
  if (spelch_edge_points (edge, SPELCH_TERM_GRAIN) > 0)
    return _ ("The cut runs against the grain: the fibres split ahead of the tooth.");
  if (spelch_edge_points (edge, SPELCH_TERM_EXIT_CORNER) > 0)
    return _ ("The bit runs out across the grain over an edge with nothing behind it, and the last fibres "
              "break off.");
  return NULL;
}

static bool
turns_over (const SpelchPlan *plan)
{
  return plan->bit_kind == SPELCH_BIT_COMPRESSION;
}

/* Lifted off the motor side. */
static const char *
lifted (const SpelchPlan *plan, const SpelchEdge *edge)
{
  if (plan->near_facing == SPELCH_FACING_BOARD)
    return spoiler (edge, plan->near_facing) != NULL
               ? _ ("The bit pulls toward the motor and lifts this face.")
               : _ ("The bit pulls toward the motor, but this board has no plies and no grain that could "
                    "split off: little breaks out.");
  if (plan->near_facing == SPELCH_FACING_STRAIGHT)
    return spoiler (edge, plan->near_facing) != NULL
               ? _ ("The bit pulls toward the motor and lifts this face.")
               : _ ("The bit pulls toward the motor, but there is no thin ply to lift off, and solid wood "
                    "holds together: little breaks out.");
  if (turns_over (plan))
    return _ ("The part of the bit that pulls toward the motor still meets this face and lifts it off.");
  return plan->near_facing == SPELCH_FACING_LAMINATE
             ? _ ("The bit pulls toward the motor: it lifts the thin skin off, and the skin chips.")
             : _ ("The bit pulls toward the motor: it lifts the fibres of this face off, and nothing there "
                  "holds them.");
}

static const char *
neutral (SpelchFacing facing)
{
  switch (facing)
    {
    case SPELCH_FACING_BOARD:
      return _ (
          "A straight bit neither pulls nor pushes, and this board has no plies and no grain that could "
          "split off.");
    case SPELCH_FACING_STRAIGHT:
      return _ ("A straight bit neither pulls nor pushes, and solid wood has no thin ply that could break "
                "off.");
    case SPELCH_FACING_LAMINATE:
    case SPELCH_FACING_PLY:
    case SPELCH_N_FACINGS:
    default:
      return NULL;
    }
}

static const char *
motor_cause (const SpelchPlan *plan, const SpelchEdge *edge)
{
  if (edge->by_entry_mm > 0)
    return _ ("Where the bit goes in, its tip lifts this face.");
  switch (edge->load)
    {
    case SPELCH_LOAD_PULL_OUT:
      return lifted (plan, edge);
    case SPELCH_LOAD_NEUTRAL:
      if (neutral (plan->near_facing) != NULL)
        return neutral (plan->near_facing);
      return plan->near_facing == SPELCH_FACING_LAMINATE
                 ? _ ("A straight bit neither pulls nor pushes: nothing holds the thin skin while it is cut, "
                      "and "
                      "it chips.")
                 : _ ("A straight bit neither pulls nor pushes: nothing holds the fibres of this face while "
                      "they "
                      "are cut, and some bend away.");
    case SPELCH_LOAD_PRESS_IN:
    case SPELCH_LOAD_NOT_CUT:
    default:
      return turns_over (plan) ? _ (
                 "This face lies wholly above the part of the bit that pulls: there the bit pushes it into "
                 "the board, which holds it.")
                               : _ ("The bit pushes away from the motor: it pushes this face into the board, "
                                    "which holds it.");
    }
}

/* How what lies behind the far face holds fibres that are pushed out, or not pressed in. */
static const char *
behind (const SpelchPart *part, const SpelchPlan *plan, const SpelchEdge *edge)
{
  bool backed = spelch_edge_points (edge, SPELCH_TERM_BACKING) < 0;
  bool groove = plan->machine == SPELCH_MACHINE_GANTRY && part->cuts[0].backer.mm <= 0
                && part->machine.spoilboard == SPELCH_SPOILBOARD_CUT_HERE_BEFORE;
  if (backed)
    return edge->grade < NEARLY_CLEAN    ? _ ("What lies behind it holds it.")
           : edge->grade == NEARLY_CLEAN ? _ ("What lies behind it holds most of it.")
                                         : _ ("What lies behind it holds only part of it.");
  return groove ? spelch_words_plain_groove () : _ ("Nothing firm lies behind to hold it.");
}

static char *
far_cause (const SpelchPart *part, const SpelchPlan *plan, const SpelchEdge *edge)
{
  const char *first;
  switch (edge->load)
    {
    case SPELCH_LOAD_PRESS_IN:
    case SPELCH_LOAD_NOT_CUT:
      return g_strdup (
          turns_over (plan)
              ? _ ("Only the tip of the bit meets this face, and the tip pulls it into the board, which "
                   "holds it.")
              : _ ("The bit pulls toward the motor: it pulls this face into the board, which holds it."));
    case SPELCH_LOAD_NEUTRAL:
      if (neutral (plan->far_facing) != NULL)
        return g_strdup (neutral (plan->far_facing));
      first = _ ("A straight bit neither pulls this face into the board nor pushes it off.");
      break;
    case SPELCH_LOAD_PULL_OUT:
    default:
      first
          = turns_over (plan) ? _ (
                "The part of the bit that pushes away from the motor reaches this face and pushes it off.")
                              : _ ("The bit pushes away from the motor: it pushes this face off the board.");
    }
  return g_strdup_printf ("%s %s", first, behind (part, plan, edge));
}

char *
spelch_words_plain_edge (const SpelchPart *part, const SpelchPlan *plan, SpelchSide side)
{
  const SpelchEdge *edge = spelch_plan_worst (plan, side);
  if (edge == NULL)
    return g_strdup ("");
  SpelchFacing facing = side == SPELCH_SIDE_MOTOR ? plan->near_facing : plan->far_facing;
  bool of_shear = spelch_edge_points (edge, SPELCH_TERM_SHEAR) > 0;
  bool wears = spelch_edge_points (edge, SPELCH_TERM_WEAR) > 0;
  bool layered = facing == SPELCH_FACING_PLY || facing == SPELCH_FACING_LAMINATE;
  /* A ply that is pulled off is explained by that; grain and chips only add to it. */
  const char *spoils = of_shear && layered && !wears ? NULL : spoiler (edge, facing);
  g_autofree char *cause
      = side == SPELCH_SIDE_MOTOR ? g_strdup (motor_cause (plan, edge)) : far_cause (part, plan, edge);
  if (spoils == NULL)
    return g_steal_pointer (&cause);
  g_autofree char *besides = edge->grade <= NEARLY_CLEAN
                                 ? g_strdup_printf ("%s %s", spoils, _ ("Here that does little harm."))
                                 : g_strdup (spoils);
  return of_shear ? g_strdup_printf ("%s %s", cause, besides) : g_strdup (besides);
}

const char *
spelch_words_plain_groove (void)
{
  return _ ("Over the groove of an earlier cut nothing lies behind the fibres of the far face to hold them.");
}

/* ---- Limits ---- */

const char *
spelch_words_plain_limit (SpelchLimitKind kind, const SpelchPlan *plan)
{
  switch (kind)
    {
    case SPELCH_LIMIT_CHIP:
      return _ ("Each tooth bites off a chip, the thicker the quicker it is fed: the bites would be too "
                "thick for a bit of this width.");
    case SPELCH_LIMIT_EDGE:
      return _ (
          "The thicker chips of a quicker feed split the wood ahead of the tooth: the edge that is seen "
          "would come out rougher than is accepted.");
    case SPELCH_LIMIT_BENDING:
      if (spelch_plan_machine_gives (plan))
        return _ (
            "The wood would push so hard that the machine gives way and the bit leaves its line, and the "
            "cut comes out beside its mark.");
      return _ ("The wood would push the bit sideways so far that it bends off its line, and the cut comes "
                "out beside its mark.");
    case SPELCH_LIMIT_STRESS:
      return _ ("The wood would push the bit so hard sideways that it might break.");
    case SPELCH_LIMIT_POWER:
      return _ ("The motor couldn't keep the bit turning at its speed: it would labour and slow down.");
    case SPELCH_LIMIT_MACHINE:
      return plan->machine == SPELCH_MACHINE_GANTRY ? _ ("The machine can't move along any quicker.")
                                                    : _ ("Hands can't feed any quicker without jerking.");
    case SPELCH_LIMIT_HANDS:
      return _ ("The bit would push back harder than hands can hold.");
    case SPELCH_LIMIT_HOLDING:
      return _ ("The bit would push the piece harder than what holds it bears, and it would shift.");
    case SPELCH_LIMIT_ROOM:
      return _ ("The chips would fill the flutes quicker than they get out: they would pack, get hot and jam "
                "the bit.");
    case SPELCH_LIMIT_HEAT:
      return _ ("The wall of the cut would burn.");
    case SPELCH_N_LIMITS:
    default:
      return "";
    }
}

/* ---- Forces ---- */

char *
spelch_words_plain_weight (double newtons, const SpelchNumbers *numbers)
{
  bool pounds = numbers->unit == SPELCH_UNIT_INCH;
  double weight = newtons / (pounds ? POUND_N : GRAVITY);
  double step = weight >= 100 ? 10 : 1;
  g_autofree char *count = weight < 2 ? spelch_words_decimal (numbers, weight, 1)
                                      : spelch_words_count (round (weight / step) * step);
  return g_strdup_printf (pounds ? _ ("%s lb") : _ ("%s kg"), count);
}

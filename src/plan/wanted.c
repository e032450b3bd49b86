/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/wanted.h"

#include "plan/case.h"
#include "plan/choose.h"
#include "plan/edges.h"
#include "plan/windows.h"

#include <math.h>

/* Routers' bits commonly lie between these; no source. mm */
#define THINNEST 2.0
#define THICKEST 25.0
#define STEP     0.5

/* What such a bit commonly has; no source. */
#define EDGES     2
#define HELIX_DEG 30
#define UP_SHEAR  2.0 /* shortest, mm */

static const char *const CHANGES[] = { "nothing", "other-way", "backed", "other-way-and-backed" };
const SpelchCodes SPELCH_WANTED_CHANGE_CODES = { "change", CHANGES, G_N_ELEMENTS (CHANGES) };

/* The question, with a bit that is being made up. */
typedef struct
{
  const SpelchConstants *k;
  const SpelchPart *part;
  SpelchCut cut;
} Asked;

/* The collet of the bit's own size, else the next larger one, else the largest. */
static double
shank_for (const SpelchMachine *machine, double diameter)
{
  double larger = HUGE_VAL, largest = 0;
  for (guint i = 0; i < machine->n_collets; i++)
    {
      double collet = machine->collets[i].mm;
      if (collet >= diameter - 0.02)
        larger = fmin (larger, collet);
      largest = fmax (largest, collet);
    }
  return larger < HUGE_VAL ? larger : largest > 0 ? largest : diameter;
}

static double
tenth_above (double value)
{
  return ceil (value * 10 - 1e-6) / 10;
}

/* Cutting length that reaches the depth with the setting off as far as it may be. */
static double
length_for (const SpelchCase *c)
{
  SpelchUncertain off = spelch_case_uncertain (c, false);
  double deepest = c->through ? c->thickness + c->k->cuts_through + off.over_minus : c->floor_depth;
  return tenth_above (deepest + off.depth_plus);
}

static SpelchBit
make_up (const Asked *asked, SpelchBitKind kind, double diameter)
{
  const SpelchMachine *machine = &asked->part->machine;
  SpelchBit bit = { .id = "wanted",
                    .kind = kind,
                    .diameter = spelch_length_mm (diameter),
                    .shank = spelch_length_mm (shank_for (machine, diameter)),
                    .edges = EDGES,
                    .helix_deg = kind == SPELCH_BIT_STRAIGHT ? 0 : HELIX_DEG,
                    .end_cutting = true,
                    .max_rpm = machine->rpm_max,
                    .hand_feed = true,
                    .wear = SPELCH_WEAR_SHARP };
  SpelchCase c;
  spelch_case_prepare (&c, asked->k, asked->part, &asked->cut, &bit);
  double length = length_for (&c);
  double above = machine->base_thickness.mm + asked->k->clearance_base
                 + fmax (asked->k->collet_least, asked->k->collet_diameters * bit.shank.mm);
  bit.cutting_length = spelch_length_mm (length);
  bit.overall_length = spelch_length_mm (length + above);
  return bit;
}

static bool
serves (const Asked *asked, const SpelchBit *bit)
{
  SpelchPlan plan;
  spelch_plan_make (asked->k, asked->part, &asked->cut, bit, &plan);
  return plan.verdict != SPELCH_VERDICT_DO_NOT_CUT
         && spelch_edges_worst (plan.edges, true) <= asked->part->accepted_seen
         && spelch_edges_worst (plan.edges, false) <= asked->part->accepted_hidden
         && plan.deflection_mm <= plan.deflection_limit_mm + 1e-6;
}

/* Up-shear that keeps both faces whatever the tolerances; false when there is none. */
static bool
up_shear_for (const Asked *asked, const SpelchBit *bit, double *least, double *most)
{
  SpelchCase c;
  spelch_case_prepare (&c, asked->k, asked->part, &asked->cut, bit);
  SpelchWindows windows = spelch_windows_find (&c);
  *least = tenth_above (fmax (windows.needs_up_shear_from, UP_SHEAR));
  *most = floor (windows.needs_up_shear_to * 10 + 1e-6) / 10;
  return *most >= *least && *most < bit->cutting_length.mm;
}

/* A diameter serves when the up-shear lengths at both ends of the range do: the range of the widest, so that
 * one range goes with every diameter. */
static bool
diameter_serves (const Asked *asked, SpelchBitKind kind, double diameter, SpelchWantedKind *found)
{
  SpelchBit bit = make_up (asked, kind, diameter);
  found->cutting_length_least = fmax (found->cutting_length_least, bit.cutting_length.mm);
  if (kind != SPELCH_BIT_COMPRESSION)
    return serves (asked, &bit);
  if (!found->serves && !up_shear_for (asked, &bit, &found->up_shear_least, &found->up_shear_most))
    return false;
  bit.up_shear = spelch_length_mm (found->up_shear_least);
  if (!serves (asked, &bit))
    return false;
  bit.up_shear = spelch_length_mm (found->up_shear_most);
  return serves (asked, &bit);
}

static double
widest (const SpelchCut *cut)
{
  bool single_wall = spelch_cut_has_one_wall (cut);
  double most = THICKEST;
  if (!single_wall && spelch_cut_width (cut) > 0)
    most = fmin (most, spelch_cut_width (cut));
  if (cut->kind == SPELCH_CUT_POCKET)
    most = fmin (most, spelch_cut_pocket_across (cut));
  if (cut->corner_radius.mm > 0)
    most = fmin (most, 2 * cut->corner_radius.mm);
  return most;
}

/* From the widest diameter down, as far as one after the other serves. */
static SpelchWantedKind
find_kind (const Asked *asked, SpelchBitKind kind)
{
  SpelchWantedKind found = { .way_up = asked->cut.way_up };
  double diameter = widest (&asked->cut);
  while (diameter >= THINNEST)
    {
      SpelchWantedKind wider = found;
      bool does = diameter_serves (asked, kind, diameter, &wider);
      if (found.serves && !does)
        break;
      if (does)
        {
          found = wider;
          found.diameter_most = found.serves ? found.diameter_most : diameter;
          found.diameter_least = diameter;
          found.serves = true;
        }
      diameter = ceil (diameter / STEP - 1e-6) * STEP - STEP;
    }
  return found;
}

bool
spelch_wanted_serves (const SpelchWanted *wanted)
{
  for (int kind = 0; kind < SPELCH_N_BIT_KINDS; kind++)
    if (wanted->kinds[kind].serves)
      return true;
  return wanted->at_hand[0] != '\0';
}

/* Every kind, as the cut lies or else turned over. */
static SpelchWanted
find_kinds (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut)
{
  SpelchWanted wanted = { 0 };
  const SpelchBit none = { .id = "wanted" };
  const SpelchFace ways[] = { cut->way_up, spelch_face_other (cut->way_up) };
  for (guint way = 0; way < (cut->through ? 2 : 1) && !spelch_wanted_serves (&wanted); way++)
    for (int kind = 0; kind < SPELCH_N_BIT_KINDS; kind++)
      {
        Asked asked = { constants, part, spelch_choose_cut (cut, &none, ways[way]) };
        asked.cut.stick_out = spelch_length_mm (0);
        wanted.kinds[kind] = find_kind (&asked, (SpelchBitKind)kind);
      }
  return wanted;
}

/* ---- What may be changed ---- */

static bool
climbs_by_hand (const SpelchPart *part, const SpelchCut *cut)
{
  return part->machine.kind != SPELCH_MACHINE_GANTRY && spelch_cut_has_one_wall (cut)
         && cut->kept == SPELCH_WALL_RIGHT;
}

static bool
runs_out (const SpelchCut *cut)
{
  return cut->end == SPELCH_END_EDGE;
}

/* The same wall, passed from its other end. */
static void
turn_feed (SpelchCut *cut)
{
  SpelchEnd start = cut->start;
  cut->kept = cut->kept == SPELCH_WALL_RIGHT ? SPELCH_WALL_LEFT : SPELCH_WALL_RIGHT;
  cut->path_deg += cut->path_deg < 180 ? 180 : -180;
  cut->start = cut->end;
  cut->end = start;
}

static SpelchCut
change (const SpelchCut *cut, SpelchWantedChange what)
{
  SpelchCut changed = *cut;
  if (what == SPELCH_WANTED_OTHER_WAY || what == SPELCH_WANTED_OTHER_AND_BACKED)
    turn_feed (&changed);
  if (what == SPELCH_WANTED_BACKED || what == SPELCH_WANTED_OTHER_AND_BACKED)
    changed.end = SPELCH_END_BACKED;
  return changed;
}

static bool
applies (const SpelchPart *part, const SpelchCut *cut, SpelchWantedChange what)
{
  SpelchCut turned = change (cut, SPELCH_WANTED_OTHER_WAY);
  switch (what)
    {
    case SPELCH_WANTED_OTHER_WAY:
      return climbs_by_hand (part, cut);
    case SPELCH_WANTED_BACKED:
      return runs_out (cut) && !climbs_by_hand (part, cut);
    case SPELCH_WANTED_OTHER_AND_BACKED:
      return climbs_by_hand (part, cut) && runs_out (&turned);
    case SPELCH_WANTED_AS_IT_IS:
    default:
      return true;
    }
}

SpelchWanted
spelch_wanted_find (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut)
{
  for (int what = SPELCH_WANTED_AS_IT_IS; what <= SPELCH_WANTED_OTHER_AND_BACKED; what++)
    {
      SpelchCut changed = change (cut, (SpelchWantedChange)what);
      if (!applies (part, cut, (SpelchWantedChange)what))
        continue;
      SpelchWanted wanted = find_kinds (constants, part, &changed);
      wanted.change = (SpelchWantedChange)what;
      if (spelch_wanted_serves (&wanted))
        return wanted;
    }
  return (SpelchWanted){ 0 };
}

void
spelch_wanted_try (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                   const SpelchBit *bits, guint n_bits, SpelchWanted *wanted)
{
  if (spelch_wanted_serves (wanted))
    return;
  for (int what = SPELCH_WANTED_OTHER_WAY; what <= SPELCH_WANTED_OTHER_AND_BACKED; what++)
    {
      SpelchCut changed = change (cut, (SpelchWantedChange)what);
      if (!applies (part, cut, (SpelchWantedChange)what))
        continue;
      for (guint i = 0; i < n_bits; i++)
        {
          Asked asked = { constants, part, spelch_choose_cut (&changed, &bits[i], changed.way_up) };
          if (!serves (&asked, &bits[i]))
            continue;
          wanted->change = (SpelchWantedChange)what;
          g_strlcpy (wanted->at_hand, bits[i].name, sizeof wanted->at_hand);
          if (spelch_wanted_serves (wanted))
            return; /* else it has no name to tell */
        }
    }
}

bool
spelch_wanted_serves_as_it_is (const SpelchWanted *wanted)
{
  return spelch_wanted_serves (wanted) && wanted->change == SPELCH_WANTED_AS_IT_IS;
}

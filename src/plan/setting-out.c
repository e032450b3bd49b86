/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/setting-out.h"

#include <math.h>

/* Widths closer than this are the same. */
#define SAME_MM 0.005

static const char *const rounds[] = {
  [SPELCH_ROUND_ALONG] = "along",
  [SPELCH_ROUND_WITH_CLOCK] = "with-clock",
  [SPELCH_ROUND_AGAINST_CLOCK] = "against-clock",
};
const SpelchCodes SPELCH_ROUND_CODES = { "round", rounds, G_N_ELEMENTS (rounds) };

/* Tracks side by side that cover @width with a bit of @diameter, each overlapping the next by at least
 * @overlap of the diameter; 1 where the bit is as wide. */
static int
tracks_over (double width, double diameter, double overlap)
{
  double more = width - diameter;
  return more > SAME_MM ? 1 + (int)ceil (more / (diameter * (1 - overlap)) - 1e-9) : 1;
}

/* Left and right of the middle, with something between them that no track reaches. */
static bool
goes_round_a_core (const SpelchConstants *k, const SpelchCut *cut, double diameter)
{
  bool opening = cut->kind == SPELCH_CUT_POCKET || cut->kind == SPELCH_CUT_HOLE;
  return opening && cut->through && tracks_over (spelch_cut_width (cut), diameter, k->track_overlap) > 2;
}

int
spelch_setting_out_tracks_of (const SpelchConstants *constants, const SpelchCut *cut, double diameter)
{
  double width = fmax (spelch_cut_width (cut), diameter);
  return goes_round_a_core (constants, cut, diameter)
             ? 2
             : tracks_over (width, diameter, constants->track_overlap);
}

guint
spelch_setting_out_pecks (const SpelchConstants *constants, SpelchMachineKind machine, double diameter,
                          double depth)
{
  double share = machine == SPELCH_MACHINE_GANTRY ? constants->peck_depth : constants->stage_depth;
  return (guint)fmax (1, ceil (depth / (share * diameter) - 1e-9));
}

/* ---- Width ---- */

/* Whether the kerf all round leaves anything between its two sides. */
static bool
leaves_core (const SpelchCut *cut, double diameter)
{
  double narrow = spelch_cut_width (cut);
  if (cut->kind == SPELCH_CUT_POCKET && cut->length.mm > 0)
    narrow = fmin (narrow, spelch_cut_pocket_across (cut));
  return narrow > 2 * diameter + SAME_MM;
}

static void
lay_tracks (const SpelchConstants *k, const SpelchCut *cut, SpelchSettingOut *out)
{
  double width = spelch_cut_width (cut), d = out->diameter_mm;
  out->width_mm = width > 0 ? width : d;
  out->tracks = spelch_setting_out_tracks_of (k, cut, d);
  out->drops_out = goes_round_a_core (k, cut, d) && leaves_core (cut, d);
  if (out->tracks > 1 && !out->drops_out)
    {
      out->step_over_mm = (out->width_mm - d) / (out->tracks - 1);
      out->overlap_mm = d - out->step_over_mm;
    }
  if (spelch_cut_shape (cut->kind).pit)
    out->corner_mm = d / 2;
}

static void
fit (const SpelchCut *cut, SpelchSettingOut *out)
{
  double left = out->width_mm - out->diameter_mm;
  if (!cut->mating.told)
    return;
  out->fitted = true;
  out->left_mm = fabs (left) > SAME_MM ? left : 0;
  out->play_mm = out->diameter_mm - cut->mating.thickness.mm;
}

/* ---- Way ---- */

/* Two walls are gone along one after the other; on a table the fence takes care of that, always from right to
 * left. */
static bool
goes_round (const SpelchMachine *machine, const SpelchCut *cut, int tracks)
{
  if (spelch_cut_has_one_wall (cut))
    return cut->every_direction;
  if (spelch_cut_has_two_walls (cut))
    return tracks > 1 && machine->kind != SPELCH_MACHINE_TABLE;
  return cut->kind != SPELCH_CUT_HOLE || tracks > 1;
}

/* Conventional is with what stays left of the travel, seen from the motor: against the clock round a piece,
 * with it inside an opening. A motor below sees it the other way round. */
static void
find_way (const SpelchMachine *machine, const SpelchCut *cut, SpelchSettingOut *out)
{
  out->inside = !spelch_cut_has_one_wall (cut) && cut->kind != SPELCH_CUT_OUTLINE;
  if (!goes_round (machine, cut, out->tracks))
    return;
  bool climb = cut->kept == SPELCH_WALL_RIGHT, below = spelch_machine_motor_below (machine);
  bool with_clock = out->inside != climb;
  out->round = with_clock != below ? SPELCH_ROUND_WITH_CLOCK : SPELCH_ROUND_AGAINST_CLOCK;
}

/* ---- Guides ---- */

/* The narrowest bush that the bit and its chips get through. */
static double
find_bush (const SpelchConstants *k, const SpelchMachine *machine, double diameter)
{
  double best = 0;
  for (guint i = 0; i < machine->n_bushes; i++)
    {
      double bush = machine->bushes[i].mm;
      if (bush >= diameter + k->bush_spare && (best <= 0 || bush < best))
        best = bush;
    }
  return best;
}

static void
find_guides (const SpelchConstants *k, const SpelchMachine *machine, const SpelchCut *cut,
             const SpelchBit *bit, SpelchSettingOut *out)
{
  double half = out->diameter_mm / 2;
  bool straight = spelch_cut_has_one_wall (cut) ? !cut->every_direction : spelch_cut_has_two_walls (cut);
  bool by_hand = machine->kind == SPELCH_MACHINE_HAND, follows = bit->bearing != SPELCH_BEARING_NONE;
  if (by_hand && straight && machine->base_radius.mm > half)
    out->fence_offset_mm = machine->base_radius.mm - half;
  if (by_hand)
    out->bush_mm = find_bush (k, machine, out->diameter_mm);
  if (out->bush_mm > 0)
    out->bush_offset_mm = (out->bush_mm - out->diameter_mm) / 2;
  if (machine->kind != SPELCH_MACHINE_GANTRY && straight)
    out->guide_mm = cut->from_edge.mm;
  if (machine->kind == SPELCH_MACHINE_TABLE && straight && spelch_cut_has_one_wall (cut) && !follows)
    out->stands_out_mm = cut->through && out->tracks > 1 ? out->step_over_mm : out->width_mm;
}

double
spelch_setting_out_stands_out (const SpelchSettingOut *out, int i)
{
  if (out->stands_out_mm <= 0 || i == out->tracks - 1)
    return out->stands_out_mm;
  bool edge_goes = out->stands_out_mm < out->width_mm - SAME_MM;
  return i > 0 && edge_goes ? out->step_over_mm : out->diameter_mm + i * out->step_over_mm;
}

static void
find_pecks (const SpelchConstants *k, const SpelchMachine *machine, double straight_down,
            SpelchSettingOut *out)
{
  if (straight_down <= 0)
    return;
  out->pecks = spelch_setting_out_pecks (k, machine->kind, out->diameter_mm, straight_down);
  out->peck_mm = straight_down / out->pecks;
}

/* ---- Tabs ---- */

/* An outline as long as the way round the piece goes along its four sides; what else there is counts as one
 * stretch. */
static guint
find_sides (const SpelchPart *part, const SpelchCut *cut, double sides[SPELCH_TAB_SIDES])
{
  double length = part->length.mm, width = part->width.mm, way = spelch_cut_way (cut);
  bool rectangle = length > 0 && width > 0 && fabs (2 * (length + width) - way) <= 0.05 * way;
  if (cut->kind != SPELCH_CUT_OUTLINE || !rectangle)
    {
      sides[0] = way;
      return 1;
    }
  for (guint i = 0; i < SPELCH_TAB_SIDES; i++)
    sides[i] = (i % 2 == 0 ? length : width) * way / (2 * (length + width));
  return SPELCH_TAB_SIDES;
}

/* Each tab in turn goes to the side that has fewest for its length. */
static void
place_tabs (const SpelchPart *part, const SpelchCut *cut, SpelchSettingOut *out)
{
  if (!cut->through || cut->tabs.count == 0)
    return;
  guint n = find_sides (part, cut, out->side_mm);
  for (guint tab = 0; tab < cut->tabs.count; tab++)
    {
      guint neediest = 0;
      double most = 0;
      for (guint i = 0; i < n; i++)
        {
          double need = out->side_mm[i] / (2 * out->tabs_on[i] + 1);
          if (need > most + 1e-9)
            {
              most = need;
              neediest = i;
            }
        }
      out->tabs_on[neediest]++;
    }
}

guint
spelch_setting_out_tabs (const SpelchSettingOut *out)
{
  guint n = 0;
  for (guint i = 0; i < SPELCH_TAB_SIDES; i++)
    n += out->tabs_on[i];
  return n;
}

double
spelch_setting_out_tab (const SpelchSettingOut *out, guint i)
{
  double before = 0;
  for (guint side = 0; side < SPELCH_TAB_SIDES; side++)
    {
      if (i < out->tabs_on[side])
        return before + out->side_mm[side] * (i + 0.5) / out->tabs_on[side];
      i -= out->tabs_on[side];
      before += out->side_mm[side];
    }
  return before;
}

SpelchSettingOut
spelch_setting_out_find (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                         const SpelchBit *bit, double straight_down)
{
  double diameter = spelch_bit_diameter_now (bit);
  SpelchSettingOut out = { .diameter_mm = diameter, .ground_off_mm = fmax (bit->diameter.mm - diameter, 0) };
  lay_tracks (constants, cut, &out);
  fit (cut, &out);
  find_way (&part->machine, cut, &out);
  find_guides (constants, &part->machine, cut, bit, &out);
  find_pecks (constants, &part->machine, straight_down, &out);
  place_tabs (part, cut, &out);
  return out;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/loads.h"

#include "mechanics/chip-room.h"
#include "mechanics/chip.h"

#include <math.h>
#include <string.h>

bool
spelch_loads_is_panel (const SpelchCase *c)
{
  for (guint i = 0; i < c->board.n_layers; i++)
    if (!spelch_layer_is_solid (&c->board.layers[i]))
      return true;
  return false;
}

double
spelch_loads_band (const SpelchCase *c, double rpm)
{
  double part = spelch_loads_is_panel (c) ? c->k->band_panel : c->k->band_solid;
  bool slow = spelch_chip_cutting_speed (c->diameter, rpm) < c->k->slow_cutting;
  return slow ? fmax (part, c->k->band_slow) : part;
}

static double
mix (double from, double to, double share)
{
  return from + (to - from) * share;
}

static SpelchForcePair
mix_pair (SpelchForcePair from, SpelchForcePair to, double share)
{
  return (SpelchForcePair){ mix (from.a, to.a, share), mix (from.b, to.b, share) };
}

const SpelchDensity *
spelch_loads_species (const SpelchCase *c)
{
  const char *species = c->part->board.species;
  for (guint i = 0; species[0] != '\0' && i < c->k->n_densities; i++)
    if (strcmp (c->k->densities[i].id, species) == 0)
      return &c->k->densities[i];
  return NULL;
}

double
spelch_loads_density (const SpelchCase *c)
{
  const SpelchDensity *species = spelch_loads_species (c);
  if (c->part->board.density_kg_m3 > 0)
    return c->part->board.density_kg_m3;
  return species != NULL ? species->density_kg_m3 : 0;
}

/* The row for solid wood of this density, and how far it departs from the row's own. */
static double
density_scale (const SpelchCase *c, SpelchMaterial *material)
{
  double density = spelch_loads_density (c);
  if (density <= 0)
    return 1;
  if (*material == SPELCH_MATERIAL_HARDWOOD && density < c->k->density_hardwood_as_softwood)
    *material = SPELCH_MATERIAL_SOFTWOOD;
  double reference = *material == SPELCH_MATERIAL_HARDWOOD ? c->k->density_hardwood : c->k->density_softwood;
  return CLAMP (density / reference, 1 - c->k->density_band, 1 + c->k->density_band);
}

/* Edge and cutting constants of a layer as the cut meets it, the shop log's factor counted in. */
static SpelchForcePair
material_of (const SpelchCase *c, const SpelchLayer *layer, double engaged)
{
  SpelchMaterial material = layer->material;
  double scale = spelch_layer_is_solid (layer) ? density_scale (c, &material) : 1;
  const SpelchMaterialForce *row = &c->k->force[material];
  double share = engaged / c->diameter;
  SpelchForcePair by_path = row->slot;

  if (layer->grain == SPELCH_GRAIN_END)
    by_path = row->across;
  else if (!spelch_cut_every_direction (c->cut))
    {
      double path = spelch_angle_seen_from (c->cut->way_up, c->cut->path_deg);
      double sine = sin ((layer->grain_deg - path) * M_PI / 180);
      by_path = mix_pair (row->along, row->across, sine * sine);
    }
  SpelchForcePair pair = mix_pair (by_path, row->slot, CLAMP ((share - 0.25) / 0.25, 0, 1));
  double rake_deg = c->rake * 180 / M_PI;
  pair.a *= scale * c->force_factor;
  pair.b *= scale * c->force_factor * (1 - c->k->rake_slope * (rake_deg - c->k->rake_default));
  return pair;
}

/* A spoilboard that nobody said has a kerf here may be cut. */
static bool
may_cut_below (const SpelchCase *c)
{
  bool untold
      = c->machine->kind == SPELCH_MACHINE_GANTRY && c->machine->spoilboard == SPELCH_SPOILBOARD_UNTOLD;
  return spelch_case_backed (c) || untold;
}

/* What the tip cuts below the board: the backer, or a spoilboard without a kerf there. Both count as MDF; the
 * rest is air. The shop log's factor goes for it too, since readings take it in. */
static void
slice_below (const SpelchCase *c, const SpelchPass *pass, SpelchForceCase *force)
{
  const SpelchForcePair *mdf = &c->k->force[SPELCH_MATERIAL_MDF].slot;
  double over = pass->tip_mm - fmax (pass->from_mm, c->thickness);
  double thick = c->cut->backer.mm > 0 ? c->cut->backer.mm : HUGE_VAL;
  double s0 = fmax (pass->tip_mm - c->thickness - thick, 0);
  double a = mdf->a * c->force_factor,
         b = mdf->b * c->force_factor * (1 - c->k->rake_slope * (c->rake * 180 / M_PI - c->k->rake_default));
  if (may_cut_below (c) && over - s0 > 1e-9)
    force->slices[force->n_slices++] = (SpelchSlice){ s0, over, a, b };
}

/* Layers that the pass cuts as heights above the tip, from the tip up; neighbours of one material are one
 * slice. */
static void
slice (const SpelchCase *c, const SpelchPass *pass, double engaged, SpelchForceCase *force)
{
  double below = c->thickness;
  slice_below (c, pass, force);
  for (guint i = c->board.n_layers; i-- > 0;)
    {
      const SpelchLayer *layer = &c->board.layers[i];
      double above = i == 0 ? 0 : below - layer->thickness.mm;
      double s0 = fmax (0, pass->tip_mm - below), s1 = pass->tip_mm - fmax (above, pass->from_mm);
      below = above;
      if (s1 - s0 <= 1e-9)
        continue;
      SpelchForcePair pair = material_of (c, layer, engaged);
      SpelchSlice *last = force->n_slices > 0 ? &force->slices[force->n_slices - 1] : NULL;
      if (last != NULL && fabs (last->a - pair.a) < 1e-12 && fabs (last->b - pair.b) < 1e-12)
        last->s1 = s1;
      else
        force->slices[force->n_slices++] = (SpelchSlice){ s0, s1, pair.a, pair.b };
    }
}

/* How well chips leave, averaged over the height that cuts. */
static double
clearing_of (const SpelchCase *c, double height)
{
  const SpelchConstants *k = c->k;
  if (c->flutes.helix < SPELCH_NEUTRAL_HELIX_RAD)
    return k->clearing_straight;
  double up = CLAMP (c->flutes.turn_over, 0, height);
  return height > 0 ? (up * k->clearing_up + (height - up) * k->clearing_down) / height : k->clearing_up;
}

static double
flute_share (const SpelchCase *c, int edges)
{
  return edges <= 1 ? c->k->flute_share_1 : edges == 2 ? c->k->flute_share_2 : c->k->flute_share_3;
}

static double
bulking_of (const SpelchCase *c)
{
  SpelchMaterial core = c->board.layers[c->board.n_layers / 2].material;
  return core >= SPELCH_MATERIAL_PARTICLEBOARD ? c->k->bulking_board : c->k->bulking_wood;
}

/* @over: how far the tip is below the board; what lies there has no wall that anyone keeps. */
double
spelch_loads_least_room (const SpelchCase *c)
{
  int edges = spelch_flute_fewest_edges (&c->flutes);
  /* At no height do chips leave better than at the tip. */
  double clearing = clearing_of (c, 1e-6);
  if (c->engaged < c->diameter - 1e-9)
    return 0;
  return spelch_chip_room (bulking_of (c), c->engaged, 1, edges, c->diameter, flute_share (c, edges),
                           clearing);
}

static void
find_room_and_heat (const SpelchCase *c, double over, SpelchLoads *loads)
{
  int edges = spelch_flute_fewest_edges (&c->flutes);
  double share = flute_share (c, edges), bulking = bulking_of (c);
  double clearing = clearing_of (c, loads->height);
  bool closed = loads->engaged >= c->diameter - 1e-9;
  double up = CLAMP (c->flutes.turn_over, 0, loads->height);

  if (closed)
    loads->room_per_feed = fmax (
        spelch_chip_room (bulking, loads->engaged, 1, edges, c->diameter, share, clearing),
        spelch_chip_room_axial (bulking, up, loads->engaged, 1, edges, c->diameter, share, c->flutes.helix));
  for (int i = 0; i < loads->force.n_slices; i++)
    {
      double edge_force = c->blunting * loads->force.slices[i].a;
      if (loads->force.slices[i].s1 > over + 1e-9 && edge_force > loads->edge_force)
        {
          loads->edge_force = edge_force;
          loads->cutting_force = loads->force.slices[i].b;
        }
    }
  loads->heat_times_feed
      = spelch_wall_heat (loads->edge_force, spelch_chip_arc (c->diameter, loads->engaged), 1, clearing);
}

static void
find_bending (const SpelchCase *c, double stick_out, SpelchLoads *loads)
{
  bool carbide = c->bit->body_material == SPELCH_TOOL_CARBIDE;
  SpelchCantilever bit
      = { .stick_out = stick_out,
          .fluted = fmin (c->bit->cutting_length.mm, stick_out),
          .fluted_round = c->k->fluted_diameter * c->diameter,
          .shank = c->bit->neck.mm > 0 ? fmin (c->bit->neck.mm, c->bit->shank.mm) : c->bit->shank.mm,
          .modulus = carbide ? c->k->modulus_carbide : c->k->modulus_steel,
          .stiffness = c->machine->stiffness_n_mm };
  const SpelchForceCase *force = &loads->force;
  double middle = force->n_slices > 0 ? (force->slices[0].s0 + force->slices[force->n_slices - 1].s1) / 2 : 0;
  loads->give = spelch_bending_give (&bit, middle);
  loads->stress_per_n = spelch_bending_stress (&bit, middle);
}

/* In an inside corner a finishing pass cuts as in a slot. Where no radius is told, a pocket's or a mortise's
 * corners are as small as the bit leaves them. */
static double
finishing_engaged (const SpelchCase *c, const SpelchPass *pass)
{
  const SpelchCut *cut = c->cut;
  bool pit = spelch_cut_shape (cut->kind).pit;
  return pit || cut->corner_radius.mm > 0 ? c->diameter : fmin (pass->side_allowance_mm, c->diameter);
}

void
spelch_loads_find (const SpelchCase *c, const SpelchPass *pass, double stick_out, SpelchLoads *loads)
{
  bool one_wall = c->single_wall || pass->finishing;
  loads->room_per_feed = loads->edge_force = loads->cutting_force = 0;
  loads->height = pass->tip_mm - pass->from_mm;
  loads->above_bed = c->thickness - (pass->from_mm + fmin (pass->tip_mm, c->thickness)) / 2;
  loads->engaged = pass->finishing ? finishing_engaged (c, pass) : c->engaged;
  loads->force = (SpelchForceCase){ .flutes = c->flutes,
                                    .engaged = loads->engaged,
                                    .climb = one_wall && c->cut->kept == SPELCH_WALL_RIGHT,
                                    .blunting = c->blunting,
                                    .friction = c->k->friction,
                                    .rake = c->rake,
                                    .edge_radial_share = c->k->edge_radial_share,
                                    .lift_down_share = c->k->lift_down_share };
  slice (c, pass, loads->engaged, &loads->force);
  spelch_force_turn (&loads->force, &loads->turn);
  loads->blunter = c->k->blunting_dull / c->blunting;
  loads->harder = spelch_loads_is_panel (c) ? c->k->design_panel : c->k->design_solid;
  loads->standing = spelch_force_means (&loads->force, 0);
  SpelchForceMeans one = spelch_force_means (&loads->force, 1);
  loads->moving
      = (SpelchForceMeans){ one.tangential - loads->standing.tangential, one.axial - loads->standing.axial,
                            one.power_per_speed - loads->standing.power_per_speed };
  find_room_and_heat (c, pass->tip_mm - c->thickness, loads);
  find_bending (c, stick_out, loads);
}

/* A blunter edge multiplies what doesn't depend on the feed, harder wood everything; so the design load at a
 * feed is a multiple of today's load at a smaller one. */
SpelchForcePeaks
spelch_loads_design_peaks (const SpelchLoads *loads, double feed_per_tooth)
{
  double by = loads->blunter * loads->harder;
  SpelchForcePeaks peaks = spelch_force_peaks (&loads->turn, feed_per_tooth / loads->blunter);
  peaks.sideways_peak *= by;
  peaks.lift_peak *= by;
  peaks.press_peak *= by;
  return peaks;
}

double
spelch_loads_design_feed (const SpelchLoads *loads, double limit, double most)
{
  double blunter = loads->blunter;
  return blunter
         * spelch_force_feed_for_peak (&loads->turn, limit / (blunter * loads->harder), most / blunter);
}

/* Passes within a stack of one material are alike when their height is the same and none runs out of the
 * board. */
bool
spelch_loads_alike (const SpelchCase *c, const SpelchPass *one, const SpelchPass *other)
{
  const SpelchLayer *first = &c->board.layers[0];
  for (guint i = 1; i < c->board.n_layers; i++)
    if (c->board.layers[i].material != first->material || c->board.layers[i].grain != first->grain
        || (c->k->force[first->material].along.a != c->k->force[first->material].across.a
            && c->board.layers[i].grain_deg != first->grain_deg))
      return false;
  double over_one = fmax (one->tip_mm - c->thickness, 0), over_other = fmax (other->tip_mm - c->thickness, 0);
  return one->finishing == other->finishing && fabs (over_one - over_other) < 1e-9
         && fabs ((one->tip_mm - one->from_mm) - (other->tip_mm - other->from_mm)) < 1e-9;
}

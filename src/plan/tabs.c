/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/tabs.h"

#include "mechanics/holding.h"
#include "plan/hold.h"

#include <math.h>

/* Far more than any piece has. */
#define COUNT_MOST 1000

/* Shear along the grain: of the species, else by the density told, else by that of the group. */
static double
shear_of_solid (const SpelchCase *c, SpelchMaterial material)
{
  const SpelchConstants *k = c->k;
  const SpelchDensity *species = spelch_loads_species (c);
  bool hard = material == SPELCH_MATERIAL_HARDWOOD;
  double density = spelch_loads_density (c);
  if (species != NULL && species->shear_mpa > 0)
    return species->shear_mpa;
  if (density <= 0)
    density = hard ? k->density_hardwood : k->density_softwood;
  double gravity = density / 1120; /* dry wood, and 12 % of water */
  return hard ? k->shear_hardwood * pow (gravity, k->shear_hardwood_power)
              : k->shear_softwood * pow (gravity, k->shear_softwood_power);
}

static void
add_layer (const SpelchCase *c, const SpelchLayer *layer, double share, SpelchTabStrength *tabs)
{
  const SpelchConstants *k = c->k;
  bool board = layer->material >= SPELCH_MATERIAL_PARTICLEBOARD;
  double side = board                           ? k->tab_shear_board
                : spelch_layer_is_solid (layer) ? shear_of_solid (c, layer->material)
                                                : k->tab_shear_plywood;
  tabs->side += share * side;
  tabs->lift += share * (board ? k->tab_lift_board : k->tab_lift_wood);
}

/* A tab is what is left of the board at its far face: each layer bears with its share of the thickness. */
static SpelchTabStrength
strength_of (const SpelchCase *c)
{
  const SpelchTabs *told = &c->cut->tabs;
  double thickness = fmin (told->thickness.mm, c->thickness), left = thickness;
  SpelchTabStrength tabs
      = { .section = told->count * told->width.mm * thickness,
          .scatter = spelch_loads_is_panel (c) ? c->k->tab_scatter_panel : c->k->tab_scatter_solid };
  for (guint i = c->board.n_layers; i-- > 0 && left > 0;)
    {
      double height = i > 0 ? fmin (c->board.layers[i].thickness.mm, left) : left;
      add_layer (c, &c->board.layers[i], height / thickness, &tabs);
      left -= height;
    }
  return tabs;
}

/* The pass that asks most counts. */
static void
bear (const SpelchCase *c, const SpelchTabStrength *tabs, const SpelchForcePeaks *load, double part,
      SpelchTabHold *hold)
{
  double side = load->sideways_peak, lift = load->lift_peak;
  double asked = spelch_holding_tabs_load (tabs, side, lift);
  double at_worst = spelch_holding_tabs_load (tabs, side * (1 + part), lift * c->k->band_axial);
  bool first = hold->needed_n <= 0;
  if (asked <= 0)
    return;
  hold->needed_n = fmax (hold->needed_n, c->k->hold_factor * asked);
  hold->factor = c->k->hold_factor * hold->holds_n / hold->needed_n;
  hold->factor_worst = fmin (first ? HUGE_VAL : hold->factor_worst, hold->holds_n / at_worst);
}

static bool
reaches_tabs (const SpelchCase *c, const SpelchPlan *plan, guint i)
{
  return i + 1 == plan->n_passes || plan->passes[i].tip_mm > c->thickness - c->cut->tabs.thickness.mm + 1e-9;
}

/* Clamps hold the sheet, so that the piece hangs on its tabs; what a vacuum keeps on the bed, or screws, does
 * not. Where it isn't known how it is held that is asked for. */
static bool
stand_alone (const SpelchCase *c, const SpelchPlan *plan)
{
  switch (c->part->holding.method)
    {
    case SPELCH_HOLD_CLAMPS:
    case SPELCH_HOLD_HANDS:
      return true;
    case SPELCH_HOLD_VACUUM:
      return c->machine->kind != SPELCH_MACHINE_GANTRY
             || (plan->hold_factor > 0
                 && !spelch_hold_suffices (c, plan->hold_factor, plan->hold_factor_worst));
    case SPELCH_HOLD_SCREWS:
    case SPELCH_HOLD_UNTOLD:
    default:
      return false;
    }
}

void
spelch_tabs_find (const SpelchCase *c, const SpelchLoads *const *loads, double feed_per_tooth, double part,
                  SpelchPlan *plan)
{
  const SpelchTabs *told = &c->cut->tabs;
  SpelchTabHold *hold = &plan->tabs;
  if (told->count == 0 || !c->through || told->width.mm <= 0 || told->thickness.mm <= 0
      || feed_per_tooth <= 0)
    return;
  SpelchTabStrength tabs = strength_of (c);
  hold->count = told->count;
  hold->alone = stand_alone (c, plan);
  hold->width_mm = told->width.mm;
  hold->thickness_mm = fmin (told->thickness.mm, c->thickness);
  hold->holds_n = spelch_holding_tabs (&tabs, c->k->tab_quantile);
  for (guint i = 0; i < plan->n_passes; i++)
    if (reaches_tabs (c, plan, i))
      {
        SpelchForcePeaks load = spelch_loads_design_peaks (loads[i], feed_per_tooth);
        bear (c, &tabs, &load, part, hold);
      }
  double wanted = fmax (c->k->hold_factor, hold->factor_worst > 0 ? hold->factor / hold->factor_worst : 0);
  double growth = spelch_holding_tabs_growth (hold->factor, wanted);
  hold->needs_count = (guint)fmin (ceil (told->count * growth - 1e-9), COUNT_MOST);
  hold->needs_width_mm = told->width.mm * growth;
}

/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/upkeep.h"

#include "mechanics/chip.h"
#include "mechanics/wear.h"

#include <math.h>

/* Edge path of new, uncoated carbide in one material, m. */
static double
life_in (const SpelchConstants *k, SpelchMaterial material)
{
  switch (material)
    {
    case SPELCH_MATERIAL_SOFTWOOD:
      return k->life_softwood;
    case SPELCH_MATERIAL_HARDWOOD:
      return k->life_hardwood;
    case SPELCH_MATERIAL_BIRCH_PLY:
      return k->life_birch_ply;
    case SPELCH_MATERIAL_SOFTWOOD_PLY:
      return k->life_softwood_ply;
    case SPELCH_MATERIAL_PARTICLEBOARD:
      return k->life_particleboard;
    case SPELCH_MATERIAL_MDF:
      return k->life_mdf;
    case SPELCH_MATERIAL_LAMINATE:
    default:
      return k->life_laminate;
    }
}

/* The layer that wears an edge soonest decides: there the edge is gone while the rest still cuts. */
static double
life_of (const SpelchCase *c)
{
  double life = HUGE_VAL, above = 0;
  for (guint i = 0; i < c->board.n_layers && above < c->floor_depth; i++)
    {
      life = fmin (life, life_in (c->k, c->board.layers[i].material));
      above += c->board.layers[i].thickness.mm;
    }
  if (c->bit->edge_material != SPELCH_TOOL_CARBIDE)
    return life * c->k->life_hss;
  return c->bit->coated ? life * c->k->life_coated : life;
}

/* What is gone by the metres cut, as if they had been such as these, or by how the edge cuts today: the more
 * of the two. */
static double
gone (const SpelchCase *c, double life, double per_metre)
{
  const SpelchConstants *k = c->k;
  double by_edge = spelch_wear_by_blunting (c->blunting, k->blunting_new, k->blunting_sharp, k->blunting_dull,
                                            k->life_gone_sharp);
  return fmax (by_edge, spelch_wear_share (c->bit->metres_cut * per_metre, life));
}

void
spelch_upkeep_find (const SpelchCase *c, const SpelchLoads *const *loads, double feed_per_tooth,
                    const double *paths, SpelchPlan *plan)
{
  int edges = spelch_flute_fewest_edges (&c->flutes);
  double life = life_of (c), path = 0, most = 0;
  for (guint i = 0; i < plan->n_passes; i++)
    {
      double arc = spelch_chip_arc (c->diameter, loads[i]->engaged);
      double per_metre = spelch_wear_path (arc, edges, feed_per_tooth);
      most = fmax (most, per_metre);
      path += paths[i];
      plan->edge_path_m += paths[i] / 1000 * per_metre;
    }
  double mean = path > 0 ? plan->edge_path_m / path * 1000 : most;
  plan->life_known = mean > 0;
  plan->life_m_left = spelch_wear_left (life, gone (c, life, mean), mean);
  plan->wear_share = spelch_wear_share (plan->edge_path_m, life);
  plan->cost = plan->wear_share * fmax (c->bit->price, 0);
}

double
spelch_wear_metres (const SpelchPlan *plan)
{
  return (plan->path_mm - plan->scoring.path_mm) / 1000;
}

double
spelch_wear_metres_scoring (const SpelchPlan *plan)
{
  return plan->scoring.path_mm / 1000;
}

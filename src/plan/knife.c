/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "plan/knife.h"

static bool
is_of_fibres (SpelchTermKind term)
{
  return term == SPELCH_TERM_SHEAR || term == SPELCH_TERM_GRAIN || term == SPELCH_TERM_CHIP;
}

static bool
spares (const SpelchChoice *choice, const SpelchReason *reason)
{
  bool veneer = reason->side == SPELCH_SIDE_MOTOR ? choice->plan.near_is_veneer : choice->plan.far_is_veneer;
  return reason->kind == SPELCH_REASON_TEARS && reason->seen && veneer && is_of_fibres (reason->term);
}

SpelchKnife
spelch_knife_find (const SpelchPart *part, const GPtrArray *ranking)
{
  const SpelchChoice *best = spelch_choose_best (ranking);
  if (part->machine.kind == SPELCH_MACHINE_GANTRY || best == NULL || best->meets)
    return (SpelchKnife){ 0 };
  for (guint i = 0; i < best->n_reasons; i++)
    if (spares (best, &best->reasons[i]))
      {
        SpelchFace face = best->reasons[i].face;
        const SpelchLayer *layer = spelch_board_face_layer (&part->board, face);
        return (SpelchKnife){ true, best->reasons[i].side, face, layer->thickness.mm };
      }
  return (SpelchKnife){ 0 };
}

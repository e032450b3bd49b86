/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Order: the cuts of a part in an order that changes the bit as seldom as it can without costing any edge a
 * grade.
 */
#pragma once

#include "plan/choose.h"

typedef struct
{
  guint cut;                  /* index in the part */
  const SpelchChoice *choice; /* of that cut's ranking; NULL when no bit may cut it */
  bool changes; /* the bit is changed before it; and once more within it, when a second one scores */
  bool turns;   /* the board is turned over before it */
} SpelchStep;

typedef struct
{
  guint n;
  SpelchStep *steps; /* every cut once; those that no bit may cut come last */
  guint changes;     /* of the bit, the first one put in aside */
  guint turns;       /* of the board, from how the first cut has it */
  double time_s;     /* cutting, changes aside */
} SpelchOrder;

/* @rankings: one of spelch_choose_rank() for each cut of @part, over one list of @n_bits bits; they must
 * outlive the order. Outlines come after all else, since they set the piece free. The fewest changes are
 * found exactly for up to 64 cuts as long as the search stays small (a few hundred thousand trials), else a
 * bit that serves the most cuts is taken next; among orders with equally few changes a quick one is taken. */
SpelchOrder *spelch_order_find (const SpelchPart *part, GPtrArray *const *rankings, guint n_bits);

void spelch_order_free (SpelchOrder *order);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchOrder, spelch_order_free)

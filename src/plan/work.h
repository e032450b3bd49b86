/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Work: the cuts of a part in the order in which they are made, each with its bit and its plan. A cut keeps
 * the bit that was accepted for it; where none was, the one that makes for the fewest changes is recommended.
 */
#pragma once

#include "plan/conflict.h"
#include "plan/order.h"

typedef struct
{
  guint index;      /* of the cut in the part */
  SpelchCut cut;    /* as it is to be made */
  bool has_bit;     /* false: no bit may cut it; then bit, plan and conflict tell nothing */
  bool recommended; /* the bit was chosen here, not yet accepted */
  bool changes;     /* the bit is changed before it, the first one put in aside */
  bool turns;       /* the board is turned over before it */
  SpelchBit bit;
  SpelchPlan plan;
  SpelchConflict conflict;
} SpelchTask;

typedef struct
{
  SpelchPart *part; /* with every bit that is used */
  guint n;
  SpelchTask *tasks;
  guint changes, turns; /* of the bit, scoring included; of the board */
  double time_s;        /* cutting, changes aside */
} SpelchWork;

/* All cuts of @part, or those at the indices @cuts, -1 at the end; without an accepted bit they take one of
 * @bits. */
SpelchWork *spelch_work_find (const SpelchConstants *constants, const SpelchPart *part, const int *cuts,
                              const SpelchBit *bits, guint n_bits);

void spelch_work_free (SpelchWork *work);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchWork, spelch_work_free)

/* Whether a task must not be cut: its plan says so, or no bit may. */
bool spelch_task_stops (const SpelchTask *task);

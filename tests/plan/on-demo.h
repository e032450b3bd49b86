/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * On demo: the demo part's outline, to be planned with bits, boards and machines of the starter sets.
 */
#pragma once

#include "plan/plan.h"
#include "shop/log-entry.h"

typedef struct
{
  SpelchPart *part;
  SpelchCut *cut; /* the outline, or the cut taken since; nothing held */
  SpelchPlan plan;
} Demo;

/* For g_test_add(). */
void demo_set_up (Demo *demo, gconstpointer unused);
void demo_tear_down (Demo *demo, gconstpointer unused);

/* A bit of the starter set. */
const SpelchBit *demo_bit (const char *id);

void demo_take_cut (Demo *demo, const char *id);
/* As if the piece had been cut out before, and no waste were left round it. */
void demo_cut_out (Demo *demo);
void demo_take_board (Demo *demo, const char *id);
void demo_take_machine (Demo *demo, const char *id);
void demo_hold_first_pass (Demo *demo, double depth);

/* Plans the cut with a bit, or with that one of the starter set. */
void demo_plan_bit (Demo *demo, const SpelchBit *bit);
void demo_plan_with (Demo *demo, const char *id);

/* Of a shop log: an edge of a down-cut in birch plywood, face a toward the motor. */
SpelchLogEntry demo_entry (const char *date, SpelchFace face, int predicted, int grade);

/* The grade of the edge that speaks for a side. */
int demo_grade (const Demo *demo, SpelchSide side);

/* Whether the plan has that reason not to cut, or that question. */
bool demo_has_stop (const Demo *demo, SpelchStopKind kind);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Plan as JSON: the members other programs can rely on, described in docs/command-line.md. Codes are English
 * and never translated; what isn't computed is null.
 */
#pragma once

#include "plan/conflict.h"
#include "plan/plan.h"

/* A cut with its plan; no bit, no plan. */
typedef struct
{
  const SpelchCut *cut;
  const SpelchBit *bit;
  SpelchPlan plan;
  SpelchConflict conflict; /* of its limits, where they leave no feed */
} SpelchPlanned;

/* Free with g_free(). */
char *spelch_plan_json (const SpelchPart *part, const SpelchPlanned *planned, guint n);

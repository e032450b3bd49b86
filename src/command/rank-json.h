/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Ranking as JSON: the members other programs can rely on, described in docs/command-line.md.
 */
#pragma once

#include "plan/knife.h"
#include "plan/order.h"
#include "plan/wanted.h"

/* A cut with the choices for it. */
typedef struct
{
  const SpelchCut *cut;
  GPtrArray *ranking;
  bool looks; /* nothing in the list will do, so @wanted says what would */
  SpelchWanted wanted;
  SpelchKnife knife; /* and what a knife would spare */
} SpelchRanked;

/* @order may be NULL. Free with g_free(). */
char *spelch_rank_json (const SpelchPart *part, const SpelchBit *bits, const SpelchRanked *ranked, guint n,
                        const SpelchOrder *order);

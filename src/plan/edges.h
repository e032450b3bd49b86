/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Edges: how each arris comes out, 1 (clean) to 5 (badly torn). The grade is 1 plus the points of its terms:
 * an order with reasons, never a length of tear-out, since no published work supports one.
 */
#pragma once

#include "plan/case.h"

/* Grades the four arrises (motor-side left and right, far left and right; those of a wall that isn't there
 * stay uncut) into @edges for the given passes and the largest chip of the pass that decides, the last one.
 * @net_lift: the mean axial force raises the board, which undoes a backing. */
void spelch_edges_grade (const SpelchCase *c, const SpelchPass *passes, guint n_passes,
                         const SpelchEntry *entry, double chip_max, bool net_lift,
                         SpelchEdge edges[SPELCH_MAX_EDGES]);

/* The worst grade among the walls that stay: of the edges that are seen (or not seen); 0 when there is none.
 */
int spelch_edges_worst (const SpelchEdge edges[SPELCH_MAX_EDGES], bool seen);

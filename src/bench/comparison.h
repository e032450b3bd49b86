/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Comparison: the session's cut with two to four of its bits, as it stood when the comparison was made, with
 * all that is drawn and said of it. No widget is known here.
 */
#pragma once

#include "bench/bench-session.h"
#include "drawing/scene.h"
#include "plan/compare.h"

/* Which bits are compared, by id. Begins empty, and is filled when a comparison is made. */
typedef struct
{
  guint n;
  char ids[SPELCH_COMPARE_MOST][SPELCH_ID_SIZE];
} SpelchPicks;

/* @column shows the bit @id; the column that has it already takes the other's in exchange. */
void spelch_picks_put (SpelchPicks *picks, guint column, const char *id);

/* The bit of @column is no longer compared, unless too few would be left. */
void spelch_picks_take_away (SpelchPicks *picks, guint column);

/* The best bit that isn't compared yet is so too; false when there is no room or no other. */
bool spelch_picks_add (SpelchPicks *picks, SpelchSession *session);

/* Immutable and counted. */
typedef struct
{
  SpelchPart *part;
  SpelchCut cut; /* as the part has it */
  bool tied;     /* every bit at the depths of the first */
  SpelchBit bits[SPELCH_COMPARE_MOST];
  GArray *columns; /* SpelchCompared */
  SpelchScan scans[SPELCH_COMPARE_MOST];
  bool follows[SPELCH_COMPARE_MOST]; /* the tie gives it other depths than its own */
} SpelchComparison;

/* Leaves out of @picks what there is no longer, and picks anew where fewer than two are left. NULL when there
 * is no cut, or fewer than two bits for it. */
SpelchComparison *spelch_comparison_new (SpelchSession *session, SpelchPicks *picks, bool tied);
SpelchComparison *spelch_comparison_ref (SpelchComparison *self);
void spelch_comparison_unref (SpelchComparison *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchComparison, spelch_comparison_unref)

/* A column, from 0; owned by the comparison. */
const SpelchCompared *spelch_comparison_get (const SpelchComparison *self, guint column);

/* Whether the cut is made with the bit of @column, and at its depths, already. */
bool spelch_comparison_is_in_use (const SpelchComparison *self, guint column);

/* Lets the session's cut be made with the bit of @column as a step that can be undone. Depths that come from
 * the tie are held; else they are those recommended for the bit. */
void spelch_comparison_use (const SpelchComparison *self, guint column, SpelchSession *session);

/* The whole of it on a page. */
void spelch_comparison_draw (const SpelchComparison *self, cairo_t *cr, const SpelchView *view);

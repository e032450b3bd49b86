/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Part edits: later parts for changes to the list of cuts and to what is said of the part as a whole. Pure
 * functions; each gives a new part with a reference count of one.
 */
#pragma once

#include "shop/part.h"

/* A part with @board and @machine and nothing cut from it yet. */
SpelchPart *spelch_part_from_nothing (const char *name, const SpelchBoard *board,
                                      const SpelchMachine *machine);

/* A cut of @kind to begin with: fits the board, has no fault, and looks like what is most often made; its
 * maker changes it. Its id and name are free in @part. */
SpelchCut spelch_cut_start (const SpelchPart *part, SpelchCutKind kind);

/* Brings the sizes a cut begins with to whole 16ths of an inch, except those taken from the board or the
 * piece. */
void spelch_cut_round_to_inches (const SpelchPart *part, SpelchCut *cut);

/* @cut as one of another kind: what doesn't apply to that is dropped, what it needs begins as in
 * spelch_cut_start(). */
SpelchCut spelch_cut_of_kind (const SpelchPart *part, const SpelchCut *cut, SpelchCutKind kind);

/* By kind, marked with N_(), ended by NULL. */
extern const char *const SPELCH_CUT_KIND_NAMES[];

/* "Dado or groove", "Edge trim". Not to be freed. */
const char *spelch_cut_kind_name (SpelchCutKind kind);

/* @cut put in at @index (at the end when that is past it). */
SpelchPart *spelch_edit_add_cut (const SpelchPart *part, const SpelchCut *cut, guint index);

/* A copy of the cut right behind it, with an id and a name of its own. */
SpelchPart *spelch_edit_duplicate_cut (const SpelchPart *part, guint index);

/* Without the cut at @index, which must be there. */
SpelchPart *spelch_edit_delete_cut (const SpelchPart *part, guint index);

/* The cut taken from @from and put in so that it stands at @to. */
SpelchPart *spelch_edit_move_cut (const SpelchPart *part, guint from, guint to);

/* The cut replaced by @cut. */
SpelchPart *spelch_edit_cut (const SpelchPart *part, guint index, const SpelchCut *cut);

/* Whether the edge at @face will be seen, turned about. */
SpelchPart *spelch_edit_seen (const SpelchPart *part, guint index, SpelchFace face);

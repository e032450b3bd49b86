/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Log edits: later parts for what the shop log teaches, entries for what came out of a cut, and the wear of a
 * cut that is done. Pure functions; a part has a reference count of one.
 */
#pragma once

#include "plan/corrections.h"

/* How a part on the bench stands to what the log teaches. */
typedef enum
{
  SPELCH_LOG_OTHER_BOARD, /* the part is cut from another board */
  SPELCH_LOG_NOTHING,     /* nothing is learnt, and the part holds nothing */
  SPELCH_LOG_NOT_TAKEN,   /* the part holds nothing of it */
  SPELCH_LOG_OLD,         /* the part goes by something else than is learnt now */
  SPELCH_LOG_TAKEN,
  SPELCH_LOG_OFF, /* held, but switched off */
} SpelchLogState;

/* About the edges that a bit makes in a board. */
SpelchLogState spelch_log_state (const SpelchConstants *constants, const SpelchPart *part, const char *board,
                                 const SpelchBit *bit, const SpelchLogEntry *entries, guint n);

/* About how hard the board cuts. */
SpelchLogState spelch_log_state_of_forces (const SpelchPart *part, const char *board,
                                           const SpelchLogEntry *entries, guint n);

/* The part with what the log teaches about edges by @bit in its board, or about how hard its board cuts, in
 * place of what it held; switched on. */
SpelchPart *spelch_edit_take_edges (const SpelchConstants *constants, const SpelchPart *part,
                                    const SpelchBit *bit, const SpelchLogEntry *entries, guint n);
SpelchPart *spelch_edit_take_forces (const SpelchPart *part, const SpelchLogEntry *entries, guint n);

/* Both, where the part doesn't go by what the log says now; NULL when it does. What is switched off, and what
 * the log knows nothing of, stays. */
SpelchPart *spelch_edit_follow_log (const SpelchConstants *constants, const SpelchPart *part,
                                    const SpelchBit *bit, const SpelchLogEntry *entries, guint n);

/* The part with its correction about a board and a bit, or that of its forces, switched off or on; unchanged
 * when it has none. */
SpelchPart *spelch_edit_switch_edges (const SpelchPart *part, const char *board, const char *bit, bool off);
SpelchPart *spelch_edit_switch_forces (const SpelchPart *part, bool off);

/* What a person says of a cut. */
typedef struct
{
  SpelchPiece piece;
  guint came_out[2]; /* by SpelchSide: 0 not looked at, 1 as reckoned, else a grade and one */
  bool cuts[2];      /* by SpelchSide: whether there is such an edge */
  bool burnt, chattered, clogged, moved;
  double load_w; /* read at the spindle; 0: not read */
  char date[SPELCH_DATE_SIZE];
  char note[SPELCH_NOTE_SIZE];
} SpelchOutcome;

/* Nothing looked at yet, of the edges that @plan has. */
SpelchOutcome spelch_outcome_start (const SpelchPlan *plan, const char *date);

/* What is wrong with it, as a sentence naming the member, or NULL. Free with g_free(). */
char *spelch_outcome_fault (const SpelchOutcome *outcome);

/* The entries, without ids, for each edge that was looked at; @revision may be "". Gives how many, at most 2.
 * What was read at the spindle stands in the first of them. */
guint spelch_outcome_entries (const SpelchOutcome *outcome, const SpelchPart *part, const SpelchCut *cut,
                              const SpelchBit *bit, const SpelchPlan *plan, const char *revision,
                              SpelchLogEntry entries[2]);

/* The part with those metres on its own copies of both bits. A cut that hadn't accepted @bit does so. */
SpelchPart *spelch_edit_done (const SpelchPart *part, guint cut, const SpelchBit *bit,
                              const SpelchPlan *plan);

/* What a person says of an edge made new. */
typedef struct
{
  char date[SPELCH_DATE_SIZE];
  SpelchRenewalKind kind;
  SpelchLength diameter, up_shear; /* measured after sharpening; 0: as marked */
  bool compression;                /* the bit has an up-shear length */
  bool on_the_bench, in_part;      /* the part on the bench uses the bit, and is to know of it */
} SpelchRenewing;

/* @bit with that said of it. */
SpelchBit spelch_bit_renewed (const SpelchBit *bit, const SpelchRenewing *renewing);

/* What is wrong with saying that of @bit, as a sentence naming the member, or NULL. Free with g_free(). */
char *spelch_renewing_fault (const SpelchRenewing *renewing, const SpelchBit *bit);

/* The part with its own copy of the bit made new. */
SpelchPart *spelch_edit_renew (const SpelchPart *part, const char *bit, const SpelchRenewing *renewing);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bit ranking: what the drawer says about every bit for a cut, as the board lies. A drawer of thousands takes
 * seconds to rank, so that it is done beside the window.
 */
#pragma once

#include "bench/bench-session.h"

typedef struct
{
  guint n;
  const char **captions; /* a word or two; NULL: none */
  char **reasons;        /* for and against it, a line each; NULL: none */
  int best;              /* the first that may be cut; -1: none */
  int first;             /* the first of all; -1: none */
  bool served;           /* either way up a bit leaves the edges as accepted */
} SpelchBitRanking;

void spelch_bit_ranking_free (SpelchBitRanking *ranking);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchBitRanking, spelch_bit_ranking_free)

/* For the cut looked at in @session: at once where there are few bits, else in a thread. @done gets it, which
 * it owns, when it is ready, unless @cancellable has been cancelled; NULL when there is no cut. */
typedef void (*SpelchBitRankingDone) (SpelchBitRanking *ranking, gpointer data);
void spelch_bit_ranking_make (SpelchSession *session, GCancellable *cancellable, SpelchBitRankingDone done,
                              gpointer data);

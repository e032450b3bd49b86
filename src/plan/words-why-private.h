/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Chains of reasons in the making. Shared by the files on why only.
 */
#pragma once

#include "plan/words-why.h"

typedef struct
{
  const SpelchWhyCase *of;
  const SpelchNumbers *numbers;
  GPtrArray *list; /* of char * */
} SpelchChain;

/* Each takes @sentence, without its full stop. */
void spelch_chain_say (SpelchChain *chain, char *sentence); /* as it is, with its full stop */
void spelch_chain_add (SpelchChain *chain, SpelchEvidence evidence, char *sentence);

/* A sentence that tells the value of the constant with that id; ends with its class and source. */
void spelch_chain_constant (SpelchChain *chain, const char *id, char *sentence);

/* spelch_words_decimal() with the chain's numbers. Free with g_free(). */
char *spelch_chain_decimal (const SpelchChain *chain, double value, int decimals);

/* The share of a limit, 1 at the limit; 0 when it doesn't apply. */
double spelch_chain_share (const SpelchChain *chain, SpelchLimitKind kind);

/* What decides a limit: the constant behind it, and what it comes to here. */
void spelch_chain_limit (SpelchChain *chain, SpelchLimitKind kind);

/* What the shop log changes about the figure of that chain, and on what it stands; nothing where the figure
 * is the same without it, except of the feed. */
void spelch_chain_log (SpelchChain *chain, SpelchWhyKind kind);

/* The chains about the machine's setting, and those about the board and the bit. */
void spelch_chain_spindle (SpelchChain *chain);
void spelch_chain_feed (SpelchChain *chain);
void spelch_chain_binding (SpelchChain *chain);
void spelch_chain_chip (SpelchChain *chain);
void spelch_chain_entry (SpelchChain *chain);
void spelch_chain_passes (SpelchChain *chain);
void spelch_chain_time (SpelchChain *chain);
void spelch_chain_power (SpelchChain *chain);
void spelch_chain_bending (SpelchChain *chain);
void spelch_chain_room (SpelchChain *chain);
void spelch_chain_heat (SpelchChain *chain);
void spelch_chain_seat (SpelchChain *chain);
void spelch_chain_tabs (SpelchChain *chain);
void spelch_chain_wear (SpelchChain *chain);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words on why: the chain of reasons behind each number of a plan, in sentences with this case's numbers.
 * Each sentence that rests on something ends with its class of evidence; one about a constant of the model
 * tells its value and where it is from.
 */
#pragma once

#include "plan/conflict.h"
#include "plan/words.h"
#include "shop/log-entry.h"

typedef enum
{
  SPELCH_WHY_SPINDLE,
  SPELCH_WHY_FEED,
  SPELCH_WHY_BINDING, /* of the feed only the limit that sets it */
  SPELCH_WHY_CHIP,
  SPELCH_WHY_ENTRY,
  SPELCH_WHY_PASSES,
  SPELCH_WHY_TIME,
  SPELCH_WHY_POWER,
  SPELCH_WHY_BENDING,
  SPELCH_WHY_ROOM,
  SPELCH_WHY_HEAT,
  SPELCH_WHY_SEAT, /* lift or press, and what holds against it */
  SPELCH_WHY_TABS,
  SPELCH_WHY_WEAR,
  SPELCH_N_WHYS,
} SpelchWhyKind;

/* Source and class of evidence of a constant by its id, "Kops and Vo 1990 (analogy)"; NULL when unknown. */
typedef const char *(*SpelchSourceOf) (const char *id);

/* What is asked about: a plan and what it was made of. */
typedef struct
{
  const SpelchConstants *constants;
  SpelchSourceOf source;
  const SpelchPart *part;
  const SpelchCut *cut;
  const SpelchBit *bit;
  const SpelchPlan *plan;
  const SpelchConflict *conflict; /* NULL: not looked for */
  const SpelchLogEntry *entries;  /* of the shop log; NULL: not at hand */
  guint n_entries;
} SpelchWhyCase;

/* The chain behind a number, what decides first. A NULL-terminated array, never empty; free with
 * g_strfreev(). */
char **spelch_words_why (SpelchWhyKind kind, const SpelchWhyCase *of, const SpelchNumbers *numbers);

/* What the number is called: "Spindle speed". Not to be freed. */
const char *spelch_words_why_title (SpelchWhyKind kind);

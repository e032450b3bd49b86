/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cut fields: a cut and a part as their forms show them. What a cut holds only when it is told (a width or
 * the part that goes in; a pass plan, an entry) becomes a choice here, with "follows the recommendation"
 * among the answers, and each kind of cut has the fields it needs and no others. Pure values; the forms only
 * show them.
 */
#pragma once

#include "bench/field.h"
#include "shop/part.h"

/* A cut as it is filled in. A plain value. */
typedef struct
{
  SpelchCut cut;
  SpelchCutKind was; /* the kind it was of before it was filled in */
  guint width_by;    /* 0: a width; 1: the part that goes in */
  guint plan;        /* 0: as recommended; else 1 + SpelchPassPlan */
  guint entry;       /* 0: as recommended; else 1 + SpelchEntryKind */
  guint scorer;      /* 0: none; else 1 + index among the bits to choose from */
} SpelchCutDraft;

/* What there is to choose from, and the part that the cut belongs to. */
typedef struct
{
  SpelchPart *part; /* owned; NULL: none yet */
  guint index;      /* of the cut */
  guint n_bits;
  SpelchBit *bits; /* owned by whoever asks */
} SpelchCutChoices;

/* The cut as its form begins with it. */
SpelchCutDraft spelch_cut_draft (const SpelchCut *cut, const SpelchCutChoices *choices);

/* The cut that a draft comes to: members that its kind or the answers don't ask for are dropped. */
SpelchCut spelch_cut_drafted (const SpelchCutDraft *draft, const SpelchCutChoices *choices);

/* The part with its cut as drafted, and with the scoring bit among its bits. A reference count of one. */
SpelchPart *spelch_cut_drafted_part (const SpelchCutDraft *draft, const SpelchCutChoices *choices);

/* What is wrong with a draft, naming members of the fields below, or NULL. g_free() it. @choices:
 * SpelchCutChoices. */
char *spelch_cut_draft_fault (gconstpointer draft, gpointer choices);

/* The fields of a SpelchCutDraft. @scorers: names for the choice of the scoring bit, by value, ended by NULL;
 * must outlive the fields. *n gets their number. Free with g_free(). */
SpelchField *spelch_cut_fields (const char *const *scorers, guint *n);

/* A part as its form shows it, without board, machine, bits and cuts. */
typedef struct
{
  char name[SPELCH_NAME_SIZE];
  char note[512];
  SpelchLength length, width;
  guint accepted_seen, accepted_hidden; /* grade less 1 */
  SpelchTolerances tolerances;
  SpelchHolding holding;
  double area_cm2;
} SpelchPartDraft;

/* The part as its form begins with it. */
SpelchPartDraft spelch_part_draft (const SpelchPart *part);

/* @part as drafted. A reference count of one. */
SpelchPart *spelch_part_drafted (const SpelchPart *part, const SpelchPartDraft *draft);

/* @part: the SpelchPart ** it belongs to. */
char *spelch_part_draft_fault (gconstpointer draft, gpointer part);

extern const SpelchField SPELCH_PART_FIELDS[];
extern const guint SPELCH_N_PART_FIELDS;

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Field: one member of a value that a person may edit in a form: what it is called, how it is typed and where
 * it lies in the value. A table of them makes the form of a bit, a board, a machine or a cut.
 */
#pragma once

#include "plan/words.h"
#include "shop/length.h"

#include <glib.h>
#include <stdbool.h>

G_BEGIN_DECLS

typedef enum
{
  SPELCH_FIELD_HEADING, /* begins a group; has a label only */
  SPELCH_FIELD_TEXT,    /* char[size] */
  SPELCH_FIELD_LENGTH,  /* SpelchLength; any unit and fraction */
  SPELCH_FIELD_NUMBER,  /* double, in @unit */
  SPELCH_FIELD_WHOLE,   /* int or guint */
  SPELCH_FIELD_CHOICE,  /* an enumeration, by @choices */
  SPELCH_FIELD_FLAG,    /* bool */
  SPELCH_FIELD_PICK,    /* char[size]: the id of one of several things, which the form is told of */
  SPELCH_FIELD_NUMBERS, /* double[size], typed one after another: "8000 12 000 16 000" */
  SPELCH_FIELD_LENGTHS, /* SpelchLength[size], likewise: "1/4 in 8 mm" */
} SpelchFieldKind;

typedef struct
{
  SpelchFieldKind kind;
  const char *member; /* as sentences about faults name it; NULL for a heading */
  const char *label;  /* marked with N_() */
  gsize offset;
  gsize size;                 /* TEXT: of the member; NUMBERS, LENGTHS: how many there may be */
  gsize count;                /* NUMBERS, LENGTHS: offset of the guint that says how many there are */
  const char *unit;           /* NUMBER: shown after it, marked with N_(); may be NULL */
  const char *const *choices; /* CHOICE: names by value, marked with N_(), ended by NULL */
  const char *none;           /* what 0 means, shown in an empty field, marked with N_(): "not told" */
  const char *hint;           /* how to find the value out, marked with N_(); may be NULL */
  bool (*applies) (gconstpointer value);                    /* NULL: always */
  const char *(*name) (const char *kept);                   /* TEXT: as it is shown; NULL: as it is kept */
  void (*keep) (const char *typed, char *into, gsize size); /* TEXT: how it is kept; NULL: as typed */
  char *(*tell) (gconstpointer value); /* what is to be said beside it, or NULL; free with g_free() */
  bool is_past;                        /* TEXT of SPELCH_DATE_SIZE: a day, today at the latest */
} SpelchField;

/* What stands in the field for @value. Free with g_free(). */
char *spelch_field_write (const SpelchField *field, gconstpointer value, const SpelchNumbers *numbers);

/* Takes what was typed into @value. False, with a sentence, when it can't be read; @value is untouched then.
 * An empty field is 0 where @none is told. Not for CHOICE and FLAG. */
bool spelch_field_read (const SpelchField *field, const char *typed, const SpelchNumbers *numbers,
                        gpointer value, GError **error);

/* CHOICE and FLAG. */
guint spelch_field_choice (const SpelchField *field, gconstpointer value);
void spelch_field_choose (const SpelchField *field, guint choice, gpointer value);

/* What the typed words come to, in millimetres or as the day that is kept, "= 15.875 mm", "= 2026-05-31",
 * when that isn't what was typed; else NULL. Free with g_free(). */
char *spelch_field_reading (const SpelchField *field, const char *typed, const SpelchNumbers *numbers);

/* A sentence about a fault with the members of @fields called as the form calls them. @at, when not NULL,
 * gets the index of the member it is about, or -1. Free with g_free(). */
char *spelch_fields_say (const SpelchField *fields, guint n_fields, const char *fault, int *at);

G_END_DECLS

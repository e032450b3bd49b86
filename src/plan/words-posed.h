/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words on a question that is posed: the question, the facts it goes by, its answers, and why the right one
 * is right and another wrong, in sentences with this case's numbers. Newly allocated unless said otherwise;
 * free with g_free().
 */
#pragma once

#include "plan/posed.h"
#include "plan/words-why.h"
#include "plan/words.h"

/* A kind of question in a few words: "Which face tears?". Not to be freed. */
const char *spelch_words_asks (SpelchAsks asks);

/* The question in full. */
char *spelch_words_question (const SpelchPosed *posed, const SpelchNumbers *numbers);

/* What the teacher says before it, in the first of @languages there is (as g_get_language_names() gives
 * them), with the numbers drawn in the place of names in braces: "{thickness}". "" when nothing is said. Of a
 * follow-up, what is said before that. */
char *spelch_words_lead (const SpelchPosed *posed, const char *const *languages,
                         const SpelchNumbers *numbers);

/* Something that is given. */
typedef struct
{
  const char *label; /* "Bit"; not to be freed */
  char *value;       /* "compression, 6.35 mm across" */
} SpelchFact;

/* What one has to go by, most important first; nothing that gives the answer away. SpelchFact, freed with the
 * array by g_array_unref(). */
GArray *spelch_words_facts (const SpelchPosed *posed, const SpelchNumbers *numbers);

/* The one thing that a follow-up changes: "First pass: 9.0 mm instead of 6.0 mm."; "" without a follow-up. */
char *spelch_words_changed (const SpelchPosed *posed, const SpelchNumbers *numbers);

/* What can be drawn or changed, "First pass"; not to be freed. And its value, "9.0 mm". */
const char *spelch_words_change_name (SpelchChangeKind what);
char *spelch_words_change_value (const SpelchChange *change, const SpelchPart *part,
                                 const SpelchNumbers *numbers);

/* A bit by what it is: "compression bit, 6.35 mm across, 6.35 mm of up-shear". */
char *spelch_words_bit (const SpelchBit *bit, const SpelchNumbers *numbers);

/* The @i-th choice in words: "The show face, toward the motor". */
char *spelch_words_posed_choice (const SpelchPosed *posed, guint i, const SpelchNumbers *numbers);

/* An answer that was understood, and the right one, in words: "9.0 mm deep", "From 8.2 mm to 18.3 mm deep".
 */
char *spelch_words_given (const SpelchPosed *posed, const SpelchGiven *given, const SpelchNumbers *numbers);
char *spelch_words_posed_right (const SpelchPosed *posed, const SpelchNumbers *numbers);

/* Why the right answer is right: a sentence or a few, the most important first. @source: of the model's
 * constants. A NULL-terminated array; free with g_strfreev(). */
char **spelch_words_posed_why (const SpelchPosed *posed, SpelchSourceOf source, const SpelchNumbers *numbers);

/* Why an answer is wrong, in one or two sentences; "" when it is right or wasn't understood. */
char *spelch_words_posed_wrong (const SpelchPosed *posed, const SpelchGiven *given,
                                const SpelchNumbers *numbers);

/* What keeps an answer from being clear, by the code of spelch_posed_is_clear(). Not to be freed. */
const char *spelch_words_doubt (const char *doubt);

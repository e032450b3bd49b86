/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words on a question that is posed: the question, the facts it goes by, its answers, and why the right one
 * is right and what comes of another, in plain sentences with this case's numbers; the full reckoning apart.
 * Newly allocated unless said otherwise; free with g_free().
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

/* What that does at the machine, where a learner can't know it; "" elsewhere. Not to be freed. */
const char *spelch_words_changed_means (const SpelchPosed *posed);

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

/* What a choice means at the machine, in a plain sentence; "" where its words say all. Not to be freed. */
const char *spelch_words_posed_meaning (const SpelchPosed *posed, guint i);

/* Why the right answer is right, in a plain sentence or two; nothing in it advises what would change the
 * answer, since a follow-up may ask just that. A NULL-terminated array; free with g_strfreev(). */
char **spelch_words_posed_why (const SpelchPosed *posed, const SpelchNumbers *numbers);

/* What comes of an answer that is wrong, in one or two plain sentences of which none is among the reasons why
 * the right one is right; "" when it is right or wasn't understood. */
char *spelch_words_posed_wrong (const SpelchPosed *posed, const SpelchGiven *given,
                                const SpelchNumbers *numbers);

/* The full reckoning behind the right answer: this case's numbers, points, evidence and works cited, without
 * advice. @source: of the model's constants. A NULL-terminated array; free with g_strfreev(). */
char **spelch_words_posed_reckoning (const SpelchPosed *posed, SpelchSourceOf source,
                                     const SpelchNumbers *numbers);

/* What a press of so many newtons is like: "570 N press as much as a weight of about 58 kg." */
char *spelch_words_posed_press (double newtons, const SpelchNumbers *numbers);

/* What keeps an answer from being clear, by the code of spelch_posed_is_clear(). Not to be freed. */
const char *spelch_words_doubt (const char *doubt);

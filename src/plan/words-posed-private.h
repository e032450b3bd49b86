/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words on a question that is posed, inside: sentences that are gathered, and what is said of holding. Shared
 * by the files of this room only.
 */
#pragma once

#include "plan/words-posed.h"

/* Adds a sentence, which is taken; an empty one, or NULL, is left out. */
void spelch_words_say (GPtrArray *list, char *sentence);

/* Adds one to the last sentence rather than by itself; takes it. */
void spelch_words_say_on (GPtrArray *list, char *sentence);

/* The sentences one after the other; takes @list. */
char *spelch_words_joined (GPtrArray *list);

/* How the bit pushes the board off a router table, or draws it there. */
void spelch_words_why_seat (const SpelchPlan *plan, const SpelchNumbers *numbers, GPtrArray *list);

/* Why work stays put, or gives as it does; and what comes of an answer that is wrong. */
void spelch_words_why_hold (const SpelchPosed *posed, const SpelchNumbers *numbers, GPtrArray *list);
char *spelch_words_wrong_hold (const SpelchPosed *posed, const char *code);

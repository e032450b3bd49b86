/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Trade words: what the words of the trade mean, each in a sentence, in the language that is shown, and where
 * in a text they stand. The meanings define; none of them tells what a cut will do.
 */
#pragma once

#include <glib.h>

/* How many words there are. */
guint spelch_trade_words_count (void);

/* The @word-th as a dictionary has it, "tab"; free with g_free(). */
char *spelch_trade_word_name (guint word);

/* What it means, a sentence; not to be freed. */
const char *spelch_trade_word_meaning (guint word);

/* Where in a text a word stands, in bytes. */
typedef struct
{
  guint word;
  gsize from, to;
} SpelchTradeMention;

/* Every mention of a word in @text, in the order in which they stand; where one is within another, "feed" in
 * "feed per tooth", only the longer. Free with g_array_unref(). */
GArray *spelch_trade_words_find (const char *text);

/* The words that occur in @text, guint, each once, by where it stands first. Free with g_array_unref(). */
GArray *spelch_trade_words_in (const char *text);

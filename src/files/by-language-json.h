/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words by language as JSON: a text, or an object with a text for each language: {"en": "...", "de": "..."}.
 */
#pragma once

#include "files/json-fields.h"
#include "shop/by-language.h"

#define SPELCH_WORDS_SIZE 1024

/* Reads what is said into @words, which is empty; each text takes fewer than SPELCH_WORDS_SIZE bytes and
 * isn't empty. */
void spelch_by_language_read (SpelchFields *fields, const char *member, SpelchByLanguage *words);

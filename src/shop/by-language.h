/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * By language: words that a person wrote in one language or in several, as teachers write them in files.
 */
#pragma once

#include <glib.h>

#define SPELCH_LANGUAGE_SIZE  8 /* "de", "pt_BR" */
#define SPELCH_LANGUAGES_MOST 16

typedef struct
{
  char language[SPELCH_LANGUAGE_SIZE]; /* ISO 639, with a country or without; "": whatever is spoken */
  char *words;
} SpelchSaid;

typedef struct
{
  guint n; /* 0: nothing is said */
  SpelchSaid said[SPELCH_LANGUAGES_MOST];
} SpelchByLanguage;

void spelch_by_language_clear (SpelchByLanguage *words);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SpelchByLanguage, spelch_by_language_clear)

/* Adds a copy of @text; past SPELCH_LANGUAGES_MOST it is left out. */
void spelch_by_language_add (SpelchByLanguage *words, const char *language, const char *text);

/* What is said in the first of @languages there is, which g_get_language_names() gives; else what is said in
 * whatever language, in English, or first. "" when nothing is said. Owned by @words. */
const char *spelch_by_language (const SpelchByLanguage *words, const char *const *languages);

/* "de" and "pt_BR". */
gboolean spelch_language_is_code (const char *language);

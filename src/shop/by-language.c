/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/by-language.h"

#include <string.h>

void
spelch_by_language_clear (SpelchByLanguage *words)
{
  for (guint i = 0; i < words->n; i++)
    g_free (words->said[i].words);
  *words = (SpelchByLanguage){ 0 };
}

void
spelch_by_language_add (SpelchByLanguage *words, const char *language, const char *text)
{
  if (words->n == SPELCH_LANGUAGES_MOST)
    return;
  SpelchSaid *said = &words->said[words->n++];
  g_strlcpy (said->language, language, sizeof said->language);
  said->words = g_strdup (text);
}

static const char *
said_in (const SpelchByLanguage *words, const char *language)
{
  for (guint i = 0; i < words->n; i++)
    if (g_str_equal (words->said[i].language, language))
      return words->said[i].words;
  return NULL;
}

const char *
spelch_by_language (const SpelchByLanguage *words, const char *const *languages)
{
  const char *found = NULL;
  for (guint i = 0; found == NULL && languages[i] != NULL; i++)
    found = said_in (words, languages[i]);
  if (found == NULL)
    found = said_in (words, "");
  if (found == NULL)
    found = said_in (words, "en");
  return found != NULL ? found : words->n > 0 ? words->said[0].words : "";
}

gboolean
spelch_language_is_code (const char *language)
{
  return strlen (language) < SPELCH_LANGUAGE_SIZE
         && g_regex_match_simple ("^[a-z]{2,3}(_[A-Z]{2})?$", language, 0, 0);
}

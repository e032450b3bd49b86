/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/by-language-json.h"

#include <glib/gi18n-lib.h>

static void
read_one (SpelchFields *fields, const char *member, const char *language, SpelchByLanguage *words)
{
  char text[SPELCH_WORDS_SIZE] = " ";
  spelch_fields_text (fields, member, text, sizeof text);
  if (*text != '\0')
    spelch_by_language_add (words, language, text);
  else
    spelch_fields_refuse (fields, member, _ ("say something, or leave it out."));
}

static void
read_languages (SpelchFields *said, SpelchByLanguage *words)
{
  g_auto (GStrv) languages = spelch_fields_members (said);
  for (guint i = 0; languages[i] != NULL; i++)
    if (!spelch_language_is_code (languages[i]))
      spelch_fields_refuse (said, languages[i],
                            _ ("its name isn't the code of a language, such as en or de."));
    else if (words->n == SPELCH_LANGUAGES_MOST)
      spelch_fields_refuse (said, languages[i], _ ("there are too many languages."));
    else
      read_one (said, languages[i], languages[i], words);
}

void
spelch_by_language_read (SpelchFields *fields, const char *member, SpelchByLanguage *words)
{
  if (!spelch_fields_told (fields, member))
    return;
  if (spelch_fields_is_text (fields, member))
    {
      read_one (fields, member, "", words);
      return;
    }
  g_autoptr (SpelchFields) said = spelch_fields_object (fields, member);
  if (said != NULL)
    read_languages (said, words);
  if (said != NULL && words->n == 0)
    spelch_fields_refuse (fields, member, _ ("say something, or leave it out."));
}

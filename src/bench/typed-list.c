/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/typed-list.h"

#include <stdbool.h>
#include <string.h>

static bool
all_digits (const char *word)
{
  return word[0] != '\0' && word[strspn (word, "0123456789")] == '\0';
}

/* Of "12 000 000" the last group; of "12" all of it. */
static const char *
last_group (const char *sofar)
{
  const char *space = strrchr (sofar, ' ');
  return space == NULL ? sofar : space + 1;
}

static bool
is_group (const char *sofar, const char *word)
{
  bool grouped = strchr (sofar, ' ') != NULL;
  bool may_go_on = all_digits (last_group (sofar)) && strlen (last_group (sofar)) <= 3
                   && (!grouped || strlen (last_group (sofar)) == 3);
  gsize digits = strspn (word, "0123456789");
  return may_go_on && digits == 3 && (word[3] == '\0' || word[3] == '.' || word[3] == ',');
}

/* Whether @word goes on with the number that @sofar is. */
static bool
belongs (const char *sofar, const char *word)
{
  if (!g_ascii_isdigit (word[0]) && strchr ("+-.,", word[0]) == NULL)
    return true; /* a unit */
  if (strchr (word, '/') != NULL)
    return all_digits (sofar);
  return is_group (sofar, word);
}

static void
split_piece (const char *piece, GPtrArray *list)
{
  g_auto (GStrv) words = g_strsplit_set (piece, " \t\n", -1);
  g_autoptr (GString) sofar = g_string_new (NULL);
  for (guint i = 0; words[i] != NULL; i++)
    {
      if (words[i][0] == '\0')
        continue;
      if (sofar->len > 0 && !belongs (sofar->str, words[i]))
        {
          g_ptr_array_add (list, g_strdup (sofar->str));
          g_string_truncate (sofar, 0);
        }
      g_string_append_printf (sofar, "%s%s", sofar->len > 0 ? " " : "", words[i]);
    }
  if (sofar->len > 0)
    g_ptr_array_add (list, g_strdup (sofar->str));
}

/* Every kind of space as an ordinary one, and a comma before a space as a semicolon. */
static char *
plain (const char *typed)
{
  GString *text = g_string_new (NULL);
  for (const char *c = typed; *c != '\0'; c = g_utf8_next_char (c))
    {
      gunichar letter = g_utf8_get_char (c);
      bool after_comma = text->len > 0 && text->str[text->len - 1] == ',';
      if (!g_unichar_isspace (letter))
        g_string_append_unichar (text, letter);
      else if (after_comma)
        text->str[text->len - 1] = ';';
      else
        g_string_append_c (text, ' ');
    }
  return g_string_free (text, FALSE);
}

char **
spelch_typed_list_split (const char *typed)
{
  g_autofree char *text = plain (typed);
  g_auto (GStrv) pieces = g_strsplit (text, ";", -1);
  GPtrArray *list = g_ptr_array_new ();
  for (guint i = 0; pieces[i] != NULL; i++)
    split_piece (pieces[i], list);
  g_ptr_array_add (list, NULL);
  return (char **)g_ptr_array_free (list, FALSE);
}

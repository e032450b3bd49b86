/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/unread.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define LETTERS_MOST 40 /* of a member that is compared; the longest known has 22 */

static void
unread_free (gpointer data)
{
  SpelchUnread *unread = data;
  g_free (unread->at);
  g_free (unread->member);
  g_free (unread->nearest);
  g_free (unread->sentence);
  g_free (unread);
}

GPtrArray *
spelch_unread_list_new (void)
{
  return g_ptr_array_new_with_free_func (unread_free);
}

/* @member as it is compared: small letters, underscores. */
static char *
plain (const char *member)
{
  char *letters = g_ascii_strdown (member, -1);
  return g_strdelimit (letters, "- ", '_');
}

static guint
least (guint a, guint b, guint c)
{
  return MIN (MIN (a, b), c);
}

/* How many letters must be put in, left out, changed or swapped with the next to turn @a into @b: the
 * distance of optimal string alignment. Both of at most LETTERS_MOST letters. */
static guint
distance (const char *a, const char *b)
{
  guint cost[LETTERS_MOST + 1][LETTERS_MOST + 1];
  guint n = (guint)strlen (a), m = (guint)strlen (b);
  for (guint i = 0; i <= n; i++)
    for (guint j = 0; j <= m; j++)
      {
        if (i == 0 || j == 0)
          {
            cost[i][j] = i + j;
            continue;
          }
        cost[i][j] = least (cost[i - 1][j] + 1, cost[i][j - 1] + 1,
                            cost[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1));
        if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
          cost[i][j] = MIN (cost[i][j], cost[i - 2][j - 2] + 1);
      }
  return cost[n][m];
}

/* "helix" and "helix_deg". */
static bool
lacks_unit (const char *shorter, const char *longer)
{
  gsize n = strlen (shorter);
  return n > 0 && strncmp (shorter, longer, n) == 0 && longer[n] == '_';
}

/* How far apart, 0 when only a unit or the way of writing differs; G_MAXUINT when too far to be meant. A
 * third of the letters may be wrong, so that short names aren't taken for one another. */
static guint
apart (const char *member, const char *known)
{
  g_autofree char *a = plain (member);
  g_autofree char *b = plain (known);
  if (strlen (a) > LETTERS_MOST || strlen (b) > LETTERS_MOST)
    return G_MAXUINT;
  if (lacks_unit (a, b) || lacks_unit (b, a))
    return 0;
  guint letters = distance (a, b);
  return letters * 3 <= MIN (strlen (a), strlen (b)) ? letters : G_MAXUINT;
}

const char *
spelch_unread_nearest (const char *member, const GPtrArray *known)
{
  const char *nearest = NULL;
  guint best = G_MAXUINT;
  for (guint i = 0; i < known->len; i++)
    {
      const char *one = known->pdata[i];
      guint letters = apart (member, one);
      if (letters < best || (letters == best && nearest != NULL && strcmp (one, nearest) < 0))
        {
          nearest = one;
          best = letters;
        }
    }
  return nearest;
}

void
spelch_unread_add (GPtrArray *list, const char *at, const char *prefix, const char *member,
                   const GPtrArray *known)
{
  if (g_str_equal (member, "source") || g_str_equal (member, "note"))
    return;
  SpelchUnread *unread = g_new0 (SpelchUnread, 1);
  unread->at = g_strdup (at);
  unread->member = g_strdup (member);
  unread->nearest = g_strdup (spelch_unread_nearest (member, known));
  /* Translators: where it stands, and the names of members. */
  unread->sentence = unread->nearest != NULL
                         ? g_strdup_printf (_ ("%s%s is kept, not read; did you mean %s?"), prefix, member,
                                            unread->nearest)
                         : g_strdup_printf (_ ("%s%s is kept, not read."), prefix, member);
  g_ptr_array_add (list, unread);
}

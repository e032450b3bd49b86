/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/taking.h"

#include "bench/bench-window.h"
#include "bench/edits.h"
#include "bench/shelf-kind.h"
#include "files/part-file.h"

#include <glib/gi18n.h>

static SpelchPart *
with_bit (SpelchSession *session, const SpelchPart *part, const SpelchBit *bit)
{
  const SpelchBit *accepted = spelch_session_get_accepted (session);
  if (spelch_session_get_cut (session) == NULL)
    return NULL;
  if (accepted == NULL || !g_str_equal (accepted->id, bit->id))
    return spelch_edit_bit (part, spelch_session_get_cut_index (session), bit);
  SpelchPart *next = spelch_part_copy (part);
  spelch_part_put_bit (next, bit);
  return next;
}

/* The part with @item, or NULL where it has no place. */
static SpelchPart *
taken (SpelchSession *session, SpelchListKind kind, gconstpointer item)
{
  const SpelchPart *part = session == NULL ? NULL : spelch_session_get_part (session);
  if (part == NULL || item == NULL)
    return NULL;
  switch (kind)
    {
    case SPELCH_LIST_BITS:
      return with_bit (session, part, item);
    case SPELCH_LIST_BOARDS:
      return spelch_edit_board (part, item);
    case SPELCH_LIST_MACHINES:
      return spelch_edit_machine (part, item);
    case SPELCH_LIST_LOG:
    default:
      return NULL;
    }
}

/* Whether taking it would change anything: there is a part, and a cut for a bit, and its copy differs. */
static bool
changes_something (SpelchSession *session, SpelchListKind kind, gconstpointer item)
{
  g_autoptr (SpelchPart) next = taken (session, kind, item);
  if (next == NULL)
    return false;
  g_autofree char *before = spelch_part_to_json (spelch_session_get_part (session));
  g_autofree char *after = spelch_part_to_json (next);
  return !g_str_equal (before, after);
}

void
spelch_take (SpelchSession *session, SpelchListKind kind, gconstpointer item)
{
  SpelchPart *next = taken (session, kind, item);
  if (next == NULL)
    return;
  const char *format = kind == SPELCH_LIST_BITS ? _ ("choose “%s”") : _ ("change to “%s”");
  g_autofree char *name = g_strdup_printf (format, spelch_shelf_item_name (item));
  spelch_session_edit (session, next, name, NULL);
}

/* The bench that looks at @session comes to the fore, to show what became of it. */
static void
present_bench (GtkApplication *application, SpelchSession *session)
{
  for (GList *each = gtk_application_get_windows (application); each != NULL; each = each->next)
    if (SPELCH_IS_BENCH_WINDOW (each->data) && spelch_bench_window_get_session (each->data) == session)
      {
        gtk_window_present (each->data);
        return;
      }
}

const char *
spelch_take_to_bench (GtkApplication *application, SpelchShelves *shelves, SpelchListKind kind,
                      gconstpointer item)
{
  SpelchSession *session = spelch_shelves_get_session (shelves);
  if (session == NULL || spelch_session_get_part (session) == NULL)
    return _ ("There is no part on the bench to use it for. Open or begin one first.");
  if (kind == SPELCH_LIST_BITS && spelch_session_get_cut (session) == NULL)
    return _ ("The part has no cut yet to use a bit for. Add a cut first.");
  if (!changes_something (session, kind, item))
    return _ ("It is used already, just as it is here.");
  spelch_take (session, kind, item);
  present_bench (application, session);
  return NULL;
}

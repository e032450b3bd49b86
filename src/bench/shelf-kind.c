/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/shelf-kind.h"
#include "shop/board.h"
#include "shop/machine.h"

#include <string.h>

G_STATIC_ASSERT (G_STRUCT_OFFSET (SpelchBit, name) == SPELCH_ID_SIZE);
G_STATIC_ASSERT (G_STRUCT_OFFSET (SpelchBoard, name) == SPELCH_ID_SIZE);
G_STATIC_ASSERT (G_STRUCT_OFFSET (SpelchMachine, name) == SPELCH_ID_SIZE);

const SpelchShelfKind *
spelch_shelf_kind (SpelchListKind list)
{
  switch (list)
    {
    case SPELCH_LIST_BOARDS:
      return &SPELCH_SHELF_BOARDS;
    case SPELCH_LIST_MACHINES:
      return &SPELCH_SHELF_MACHINES;
    case SPELCH_LIST_LOG:
      return &SPELCH_SHELF_LOG;
    case SPELCH_LIST_BITS:
    default:
      return &SPELCH_SHELF_BITS;
    }
}

const char *
spelch_shelf_item_name (gconstpointer item)
{
  return (const char *)item + SPELCH_ID_SIZE;
}

void
spelch_shelf_item_call (const SpelchShelfKind *kind, gpointer item, const char *id, const char *name)
{
  g_autofree char *whole = g_utf8_substring (name, 0, MIN (g_utf8_strlen (name, -1), 30));
  bool fits = strlen (name) < SPELCH_NAME_SIZE;
  g_strlcpy (item, id, SPELCH_ID_SIZE);
  if (kind->known_as != NULL)
    return; /* there is no name to set */
  g_strlcpy ((char *)item + SPELCH_ID_SIZE, fits ? name : whole, SPELCH_NAME_SIZE);
}

char *
spelch_shelf_item_known_as (const SpelchShelfKind *kind, gconstpointer item)
{
  return kind->known_as != NULL ? kind->known_as (item) : g_strdup (spelch_shelf_item_name (item));
}

char *
spelch_shelf_item_title (const SpelchShelfKind *kind, gconstpointer item, SpelchShelves *shelves)
{
  return kind->title_of != NULL ? kind->title_of (item, shelves) : g_strdup (spelch_shelf_item_name (item));
}

bool
spelch_shelf_item_is_retired (const SpelchShelfKind *kind, gconstpointer item)
{
  return kind->retired > 0 && *(const bool *)((const char *)item + kind->retired);
}

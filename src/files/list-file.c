/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/list-file.h"

#include "files/bit-json.h"
#include "files/board-json.h"
#include "files/json-text.h"
#include "files/log-json.h"
#include "files/machine-json.h"
#include "files/part-file.h"
#include "files/unread.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

#define ITEMS_MOST 10000

/* An item begins with its id, whatever it is. */
G_STATIC_ASSERT (offsetof (SpelchBit, id) == 0);
G_STATIC_ASSERT (offsetof (SpelchBoard, id) == 0);
G_STATIC_ASSERT (offsetof (SpelchMachine, id) == 0);
G_STATIC_ASSERT (offsetof (SpelchLogEntry, id) == 0);

typedef struct
{
  const char *member;
  guint size;
  void (*append) (GArray *items, SpelchFields *fields);
  void (*write) (SpelchWriter *writer, gconstpointer item);
  char *(*fault) (gconstpointer item);
} ListKind;

static void
append_bit (GArray *items, SpelchFields *fields)
{
  SpelchBit bit = spelch_bit_read (fields);
  g_array_append_val (items, bit);
}

static void
append_board (GArray *items, SpelchFields *fields)
{
  SpelchBoard board = spelch_board_read (fields);
  g_array_append_val (items, board);
}

static void
append_machine (GArray *items, SpelchFields *fields)
{
  SpelchMachine machine = spelch_machine_read (fields);
  g_array_append_val (items, machine);
}

static void
append_entry (GArray *items, SpelchFields *fields)
{
  SpelchLogEntry entry = spelch_log_entry_read (fields);
  g_array_append_val (items, entry);
}

static void
write_bit (SpelchWriter *writer, gconstpointer item)
{
  spelch_bit_write (writer, item);
}

static void
write_board (SpelchWriter *writer, gconstpointer item)
{
  spelch_board_write (writer, item);
}

static void
write_machine (SpelchWriter *writer, gconstpointer item)
{
  spelch_machine_write (writer, item);
}

static void
write_entry (SpelchWriter *writer, gconstpointer item)
{
  spelch_log_entry_write (writer, item);
}

static char *
fault_of_bit (gconstpointer item)
{
  return spelch_bit_fault (item);
}

static char *
fault_of_board (gconstpointer item)
{
  return spelch_board_fault (item);
}

static char *
fault_of_machine (gconstpointer item)
{
  return spelch_machine_fault (item);
}

static char *
fault_of_entry (gconstpointer item)
{
  return spelch_log_entry_fault (item);
}

static const ListKind KINDS[] = {
  [SPELCH_LIST_BITS] = { "bits", sizeof (SpelchBit), append_bit, write_bit, fault_of_bit },
  [SPELCH_LIST_BOARDS] = { "boards", sizeof (SpelchBoard), append_board, write_board, fault_of_board },
  [SPELCH_LIST_MACHINES]
  = { "machines", sizeof (SpelchMachine), append_machine, write_machine, fault_of_machine },
  [SPELCH_LIST_LOG] = { "log", sizeof (SpelchLogEntry), append_entry, write_entry, fault_of_entry },
};

gsize
spelch_list_item_size (SpelchListKind kind)
{
  return KINDS[kind].size;
}

char *
spelch_list_item_fault (SpelchListKind kind, gconstpointer item)
{
  return KINDS[kind].fault (item);
}

const char *
spelch_list_member (SpelchListKind kind)
{
  return KINDS[kind].member;
}

bool
spelch_list_kind_of (JsonObject *root, SpelchListKind *kind)
{
  for (guint i = 0; i < G_N_ELEMENTS (KINDS); i++)
    if (json_object_has_member (root, KINDS[i].member))
      {
        *kind = (SpelchListKind)i;
        return !json_object_has_member (root, "id") && !json_object_has_member (root, "board");
      }
  return false;
}

static const char *
item_id (const GArray *items, guint size, guint i)
{
  return items->data + (gsize)size * i;
}

static void
check_item (const ListKind *kind, const GArray *items, guint i, GHashTable *ids, SpelchReading *reading)
{
  const char *id = item_id (items, kind->size, i);
  g_autofree char *fault = kind->fault (id);
  if (fault == NULL && !g_hash_table_add (ids, (gpointer)id))
    fault = g_strdup (_ ("id stands twice in the list."));
  if (fault != NULL)
    spelch_reading_fault (reading, g_strdup_printf (_ ("%s[%u] '%s': %s"), kind->member, i, id, fault));
}

static GArray *
read_items (const ListKind *kind, SpelchFields *fields, SpelchReading *reading)
{
  guint n = spelch_fields_count (fields, kind->member, ITEMS_MOST);
  GArray *items = g_array_sized_new (FALSE, TRUE, kind->size, n);
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < n && reading->error == NULL; i++)
    {
      g_autoptr (SpelchFields) item = spelch_fields_item (fields, kind->member, i);
      if (item == NULL)
        continue;
      kind->append (items, item);
      if (reading->error == NULL)
        check_item (kind, items, i, ids, reading);
    }
  return items;
}

static GArray *
read_list (const ListKind *kind, JsonNode *root, SpelchReading *reading)
{
  const char *const NEEDED[] = { "format_version", kind->member, NULL };
  g_autoptr (SpelchFields) fields = spelch_fields_root (reading, root);
  spelch_fields_need (fields, NEEDED);
  spelch_fields_format (fields, SPELCH_FORMAT_VERSION);
  return read_items (kind, fields, reading);
}

GArray *
spelch_list_from_json (SpelchListKind kind, const char *text, gsize length, const char *name,
                       GHashTable *unknown, GError **error)
{
  g_autoptr (JsonNode) root = spelch_json_parse (text, length, name, error);
  if (root == NULL)
    return NULL;
  SpelchReading reading = { .name = name, .unknown = unknown };
  g_autoptr (GArray) items = read_list (&KINDS[kind], root, &reading);
  if (reading.error == NULL)
    return g_steal_pointer (&items);
  g_propagate_error (error, reading.error);
  return NULL;
}

GPtrArray *
spelch_list_unread (SpelchListKind kind, const char *text, gsize length, const char *name)
{
  g_autoptr (JsonNode) root = spelch_json_parse (text, length, name, NULL);
  GPtrArray *unread = spelch_unread_list_new ();
  SpelchReading reading = { .name = name, .unread = unread };
  if (root != NULL)
    g_array_unref (read_list (&KINDS[kind], root, &reading));
  g_clear_error (&reading.error);
  return unread;
}

char *
spelch_list_to_json (SpelchListKind kind, const GArray *items, GHashTable *unknown)
{
  const ListKind *list = &KINDS[kind];
  SpelchWriter *writer = spelch_writer_new (unknown);
  spelch_writer_number (writer, "format_version", SPELCH_FORMAT_VERSION);
  spelch_writer_open_list (writer, list->member);
  for (guint i = 0; i < items->len; i++)
    {
      const char *item = item_id (items, list->size, i);
      spelch_writer_open_item (writer, item, false);
      list->write (writer, item);
      spelch_writer_close (writer);
    }
  spelch_writer_close (writer);
  return spelch_writer_end (writer);
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fuzzer of the lists (bit drawer, boards, machines, shop log): whatever bytes a file holds, it is refused in
 * a sentence that names it, or read, and then what is written of it reads back and is written the same again.
 */
#include "files/list-file.h"
#include "files/part-file.h"

#include <stddef.h>
#include <stdint.h>
#include <string.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

static void
check_read (SpelchListKind kind, const GArray *items, GHashTable *unknown)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *first = spelch_list_to_json (kind, items, unknown);
  g_autoptr (GHashTable) kept = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GArray) again = spelch_list_from_json (kind, first, strlen (first), "again", kept, &error);
  g_assert_no_error (error);
  g_autofree char *second = spelch_list_to_json (kind, again, kept);
  g_assert_cmpstr (first, ==, second);
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  for (int kind = SPELCH_LIST_BITS; kind <= SPELCH_LIST_LOG; kind++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (GHashTable) unknown = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
      g_autoptr (GArray) items = spelch_list_from_json ((SpelchListKind)kind, (const char *)data, size,
                                                        "fuzz.json", unknown, &error);
      g_assert_true ((items == NULL) == (error != NULL));
      if (items != NULL)
        check_read ((SpelchListKind)kind, items, unknown);
      else
        g_assert_true (g_utf8_validate (error->message, -1, NULL)
                       && g_str_has_prefix (error->message, "fuzz.json"));
    }
  return 0;
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fuzzer of the part file: whatever bytes a file holds, it is either refused in a sentence that names it, or
 * read as a part without a fault, and then written text reads back and is written the same again.
 */
#include "files/part-file.h"
#include "files/unread.h"

#include <stddef.h>
#include <stdint.h>
#include <string.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

static void
check_refused (const GError *error)
{
  g_assert_true (error->domain == SPELCH_FILE_ERROR);
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
  g_assert_true (g_str_has_prefix (error->message, "fuzz.spelch"));
}

/* What is left of a newer file is there to be looked at; writing it isn't asked for. */
static void
check_read (const SpelchPart *part)
{
  g_assert_null (spelch_part_fault (part));
  if (part->read_only)
    return;
  g_autoptr (GError) error = NULL;
  g_autofree char *first = spelch_part_to_json (part);
  g_autoptr (SpelchPart) again = spelch_part_from_json (first, strlen (first), "again", &error);
  g_assert_no_error (error);
  g_autofree char *second = spelch_part_to_json (again);
  g_assert_cmpstr (first, ==, second);
}

/* What isn't read can be told of any file. */
static void
check_unread (const uint8_t *data, size_t size)
{
  g_autoptr (GPtrArray) unread = spelch_part_unread ((const char *)data, size, "fuzz.spelch");
  for (guint i = 0; i < unread->len; i++)
    g_assert_true (g_utf8_validate (((const SpelchUnread *)unread->pdata[i])->sentence, -1, NULL));
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  check_unread (data, size);
  g_autoptr (GError) error = NULL;
  g_autoptr (SpelchPart) part = spelch_part_from_json ((const char *)data, size, "fuzz.spelch", &error);
  g_assert_true ((part == NULL) == (error != NULL));
  if (part != NULL)
    check_read (part);
  else
    check_refused (error);
  return 0;
}

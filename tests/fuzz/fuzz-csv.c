/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fuzzer of the table of bits: whatever bytes a file holds, every line is either read or told of, what is
 * read is without fault, and what is written of it reads back whole.
 */
#include "files/bit-csv.h"

#include <stddef.h>
#include <stdint.h>
#include <string.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autofree char *text = g_strndup ((const char *)data, size);
  g_autoptr (SpelchBitTable) table = spelch_bits_from_csv (text, strlen (text));
  g_assert_cmpuint (table->bits->len, <=, table->n_rows);
  g_assert_true (table->problems->len > 0 || table->bits->len == table->n_rows);
  for (guint i = 0; i < table->problems->len; i++)
    g_assert_true (g_utf8_validate (g_ptr_array_index (table->problems, i), -1, NULL));
  for (guint i = 0; i < table->bits->len; i++)
    {
      SpelchBit *bit = &g_array_index (table->bits, SpelchBit, i);
      if (bit->id[0] == '\0')
        g_snprintf (bit->id, sizeof bit->id, "made-%u-of-it", i);
      g_autofree char *fault = spelch_bit_fault (bit);
      g_assert_cmpstr (fault, ==, NULL);
    }
  for (int i = 0; i < 2; i++)
    {
      g_autofree char *written = spelch_bits_to_csv (table->bits, ",;"[i]);
      g_autoptr (SpelchBitTable) again = spelch_bits_from_csv (written, strlen (written));
      g_assert_cmpuint (again->bits->len, ==, table->bits->len);
      g_assert_cmpuint (again->problems->len, ==, 0);
    }
  return 0;
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Benchmark: reading a bit drawer of 10 000 bits, beside what json-glib alone takes to parse the same text;
 * and writing it. Both give the parsed tree back, which is a good part of the work; what the ratio is when
 * that is left out on json-glib's side is told too. At most 2.5 times is what is aimed at.
 */
#include "../processor-time.h"
#include "files/list-file.h"
#include "files/shop-data.h"

#include <json-glib/json-glib.h>
#include <string.h>

#define BITS 10000
#define RUNS 7

/* The starter set again and again, each under an id of its own. */
static GArray *
drawer_new (void)
{
  guint n;
  const SpelchBit *starter = spelch_shop_bits (&n);
  GArray *bits = g_array_new (FALSE, FALSE, sizeof (SpelchBit));
  for (guint i = 0; i < BITS; i++)
    {
      SpelchBit bit = starter[i % n];
      g_snprintf (bit.id, sizeof bit.id, "bit-%05u", i);
      g_array_append_val (bits, bit);
    }
  return bits;
}

/* *parsed: without giving the tree back. */
static double
time_parser (const char *text, gsize length, double *parsed)
{
  double start = processor_ms ();
  JsonParser *parser = json_parser_new ();
  g_assert_true (json_parser_load_from_data (parser, text, (gssize)length, NULL));
  *parsed = processor_ms () - start;
  g_object_unref (parser);
  return processor_ms () - start;
}

static double
time_reading (const char *text, gsize length)
{
  double start = processor_ms ();
  g_autoptr (GError) error = NULL;
  g_autoptr (GHashTable) unknown = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GArray) bits
      = spelch_list_from_json (SPELCH_LIST_BITS, text, length, "bits.json", unknown, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (bits->len, ==, BITS);
  return processor_ms () - start;
}

int
main (void)
{
  g_autoptr (GArray) bits = drawer_new ();
  double start = processor_ms ();
  g_autofree char *text = spelch_list_to_json (SPELCH_LIST_BITS, bits, NULL);
  double writing = processor_ms () - start, bare = G_MAXDOUBLE, reading = G_MAXDOUBLE;
  double parsing = G_MAXDOUBLE;
  gsize length = strlen (text);
  for (int run = 0; run < RUNS; run++)
    {
      double parsed;
      bare = MIN (bare, time_parser (text, length, &parsed));
      parsing = MIN (parsing, parsed);
      reading = MIN (reading, time_reading (text, length));
    }
  g_print ("%d bits, %.1f MB: json-glib alone %.0f ms (%.0f ms of it parsing), read %.0f ms, written %.0f ms "
           "(best of %d)\n",
           BITS, (double)length / 1e6, bare, parsing, reading, writing, RUNS);
  g_print (
      "reading takes %.2f times as long as json-glib alone (aimed at: 2.5 at most); %.2f times its parsing\n",
      reading / bare, reading / parsing);
  return 0;
}

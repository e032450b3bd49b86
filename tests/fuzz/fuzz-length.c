/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Fuzzer of the readers of what is typed: whatever the bytes, a length that is read is finite and in range,
 * shows as it was typed, and what is written of it reads back; a day that is read is one of ISO 8601, and
 * reads as itself.
 */
#include "shop/day.h"
#include "shop/length.h"

#include <math.h>
#include <stddef.h>
#include <stdint.h>

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

/* Written with the most decimals there are, a millimetre figure is right to half of its sixth decimal. */
static void
check_reads_back (double mm)
{
  g_autofree char *text = spelch_length_format (mm, SPELCH_UNIT_MM, SPELCH_INCH_DECIMAL, 6, ',');
  SpelchLength length;
  g_assert_true (spelch_length_parse (text, SPELCH_UNIT_INCH, &length, NULL));
  g_assert_true (fabs (length.mm - mm) <= 0.51e-6);
}

static void
check_shown (const SpelchLength *length, SpelchUnit unit)
{
  g_autofree char *shown = spelch_length_show (length, unit, SPELCH_INCH_FRACTION, '.');
  g_assert_cmpstr (shown, ==, length->typed);
}

static void
check_day (const char *typed)
{
  static const char *const EXAMPLES[] = { "31.05.2026", "31/05/2026", "2026-05-31" };
  for (guint i = 0; i < G_N_ELEMENTS (EXAMPLES); i++)
    {
      char day[SPELCH_DATE_SIZE], again[SPELCH_DATE_SIZE];
      if (!spelch_day_read (typed, EXAMPLES[i], day, NULL))
        continue;
      g_assert_true (spelch_day_read (day, EXAMPLES[i], again, NULL));
      g_assert_cmpstr (again, ==, day);
    }
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  if (size == 0)
    return 0;
  SpelchUnit unit = data[0] % 2 == 0 ? SPELCH_UNIT_MM : SPELCH_UNIT_INCH;
  g_autofree char *text = g_strndup ((const char *)data + 1, size - 1);
  SpelchLength length;
  g_autoptr (GError) error = NULL;
  check_day (text);
  if (!spelch_length_parse (text, unit, &length, &error))
    {
      g_assert_true (error->domain == SPELCH_LENGTH_ERROR && g_utf8_validate (error->message, -1, NULL));
      return 0;
    }
  g_assert_true (fabs (length.mm) <= 100000);
  check_shown (&length, unit);
  check_reads_back (length.mm);
  return 0;
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The decimal sign that goes with a language.
 */
#include "shop/decimal-sign.h"

#include <glib.h>
#include <locale.h>

static void
test_point (void)
{
  setlocale (LC_NUMERIC, "C");
  g_assert_cmpint (spelch_decimal_sign (), ==, '.');
}

static void
test_comma (void)
{
  if (setlocale (LC_NUMERIC, "de_DE.UTF-8") == NULL)
    {
      g_test_skip ("This machine has no German locale.");
      return;
    }
  g_assert_cmpint (spelch_decimal_sign (), ==, ',');
  setlocale (LC_NUMERIC, "C");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/decimal-sign/point", test_point);
  g_test_add_func ("/decimal-sign/comma", test_comma);
  return g_test_run ();
}

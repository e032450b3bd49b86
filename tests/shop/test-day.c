/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Days as people of each language type them; ISO 8601 everywhere; never a guess which number is the month.
 */
#include "shop/day.h"

#define GERMAN  "31.05.2026"
#define FRENCH  "31/05/2026"
#define ENGLISH "2026-05-31"

static void
reads (const char *typed, const char *example, const char *expected)
{
  char day[SPELCH_DATE_SIZE] = "untouched";
  g_autoptr (GError) error = NULL;
  g_assert_cmpint (spelch_day_read (typed, example, day, &error), ==, expected != NULL);
  g_assert_cmpstr (day, ==, expected != NULL ? expected : "untouched");
  if (expected != NULL)
    g_assert_no_error (error);
  else
    {
      g_assert_nonnull (strstr (error->message, typed));
      g_assert_nonnull (strstr (error->message, example));
    }
}

static void
test_everywhere (void)
{
  const char *examples[] = { GERMAN, FRENCH, ENGLISH };
  for (guint i = 0; i < G_N_ELEMENTS (examples); i++)
    {
      reads ("2026-11-26", examples[i], "2026-11-26");
      reads ("2024-02-29", examples[i], "2024-02-29");
      reads ("2026-02-29", examples[i], NULL);
      reads ("2026-13-01", examples[i], NULL);
      reads ("1826-11-26", examples[i], NULL);
      reads ("yesterday", examples[i], NULL);
      reads ("2026-11-26-", examples[i], NULL);
      reads ("", examples[i], NULL);
      reads ("2", examples[i], NULL);
      reads ("2026", examples[i], NULL);
      reads ("2026-", examples[i], NULL);
      reads ("2026-11", examples[i], NULL);
      reads ("2026-11-", examples[i], NULL);
      reads ("99999999999-11-26", examples[i], NULL);
    }
}

static void
test_by_language (void)
{
  reads ("26.11.2026", GERMAN, "2026-11-26");
  reads ("3.4.2026", GERMAN, "2026-04-03");
  reads ("31.02.2026", GERMAN, NULL);
  reads ("26.11.26", GERMAN, NULL);
  reads ("26/11/2026", GERMAN, NULL);
  reads ("26.11/2026", GERMAN, NULL);
  reads ("26/11/2026", FRENCH, "2026-11-26");
  reads ("3/4/2026", FRENCH, "2026-04-03");
  reads ("31/4/2026", FRENCH, NULL);
  reads ("2026/11/26", FRENCH, NULL);
}

/* 11/12 is November to one reader and December to another. */
static void
test_no_guess (void)
{
  reads ("11/12/2026", ENGLISH, NULL);
  reads ("26/11/2026", ENGLISH, NULL);
  reads ("26.11.2026", ENGLISH, NULL);
  reads ("2026.11.26", ENGLISH, NULL);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/day/everywhere", test_everywhere);
  g_test_add_func ("/day/by-language", test_by_language);
  g_test_add_func ("/day/no-guess", test_no_guess);
  return g_test_run ();
}

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Walks the published checks as tests; with --table prints them as a Markdown table instead.
 */
#include "published.h"

#include <math.h>
#include <stdio.h>

static const PublishedGroup *const GROUPS[] = {
  &PUBLISHED_CHIPS,  &PUBLISHED_FORCES,    &PUBLISHED_BENDING, &PUBLISHED_INTEGRALS, &PUBLISHED_SPECIES,
  &PUBLISHED_BOARDS, &PUBLISHED_CONSTANTS, &PUBLISHED_CUTS,    &PUBLISHED_UPKEEP,    &PUBLISHED_CONTRAST,
};

static const char *const KIND_NAMES[] = { "measured", "memory", "common practice", "identity" };

static void
check_one (gconstpointer data)
{
  const PublishedCheck *check = data;
  double ours = check->ours (check->x, check->y);
  g_test_message ("%s: %.6g, ours %.6g, within %.2g (%s: %s)", check->what, check->value, ours,
                  check->tolerance, KIND_NAMES[check->kind], check->source);
  g_assert_true (isfinite (ours));
  g_assert_cmpfloat (fabs (ours - check->value), <=, check->tolerance);
}

static void
print_row (const PublishedCheck *check)
{
  double ours = check->ours (check->x, check->y);
  g_autofree char *told = check->value == 0 && fabs (ours) <= check->tolerance
                              ? g_strdup ("agrees")
                              : g_strdup_printf ("%.6g", ours);
  printf ("| %s | %.6g | %s | %.2g | %s | %s |\n", check->what, check->value, told, check->tolerance,
          KIND_NAMES[check->kind], check->source);
}

static void
print_table (void)
{
  printf ("| check | value | ours | within | class | source |\n|---|---|---|---|---|---|\n");
  for (gsize i = 0; i < G_N_ELEMENTS (GROUPS); i++)
    for (gsize j = 0; j < GROUPS[i]->n; j++)
      print_row (&GROUPS[i]->checks[j]);
}

static void
add_tests (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (GROUPS); i++)
    for (gsize j = 0; j < GROUPS[i]->n; j++)
      {
        g_autofree char *path = g_strdup_printf ("/published/%s/%02" G_GSIZE_FORMAT, GROUPS[i]->name, j + 1);
        g_test_add_data_func (path, &GROUPS[i]->checks[j], check_one);
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  if (argc == 2 && g_str_equal (argv[1], "--table"))
    {
      print_table ();
      return 0;
    }
  add_tests ();
  return g_test_run ();
}

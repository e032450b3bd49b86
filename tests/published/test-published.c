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

/* Each prints its row of one table. */
static void
check_one (gconstpointer data)
{
  const PublishedCheck *check = data;
  double ours = check->ours (check->x, check->y);
  g_test_message ("| %s | %.6g | %.6g | %.2g | %s | %s |", check->source, check->value, ours,
                  check->tolerance, KIND_NAMES[check->kind], check->what);
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

/* At least 60 values beyond the species table; and how far each kind of source reaches. */
static void
count_them (void)
{
  guint by_kind[G_N_ELEMENTS (KIND_NAMES)] = { 0 }, beyond_species = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (GROUPS); i++)
    for (gsize j = 0; j < GROUPS[i]->n; j++)
      {
        by_kind[GROUPS[i]->checks[j].kind]++;
        beyond_species += GROUPS[i] != &PUBLISHED_SPECIES;
      }
  for (gsize kind = 0; kind < G_N_ELEMENTS (KIND_NAMES); kind++)
    g_test_message ("%u %s", by_kind[kind], KIND_NAMES[kind]);
  g_assert_cmpuint (beyond_species, >=, 60);
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
  g_test_message ("| source | value | ours | within | class | check |");
  add_tests ();
  g_test_add_func ("/published/count", count_them);
  return g_test_run ();
}

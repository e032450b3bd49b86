/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Woods by the names that people write; what the table doesn't have stays as it is.
 */
#include "files/species-names.h"

static void
finds (const char *typed, const char *id)
{
  const SpelchSpecies *species = spelch_species_find (typed);
  g_assert_cmpstr (species == NULL ? NULL : species->id, ==, id);
}

static void
test_species_found (void)
{
  finds ("white-oak", "white-oak");
  finds ("White Oak", "white-oak");
  finds (" white oak ", "white-oak");
  finds ("Quercus alba", "white-oak");
  finds ("Sugar maple (hard maple)", "sugar-maple");
  finds ("sugar maple", "sugar-maple");
  finds ("oak", NULL);
  finds ("maple", NULL);
  finds ("", NULL);
  finds ("Pseudotsuga menziesii", NULL); /* three rows have it */
  g_assert_cmpstr (spelch_species_name ("white-oak"), ==, "White oak");
  g_assert_cmpstr (spelch_species_name ("Bog Oak"), ==, "Bog Oak");
  g_assert_cmpstr (spelch_species_name (""), ==, "");
}

/* Each is told apart by its name, and is there for those who translate. */
static void
test_species_names (void)
{
  guint n = 0, n_names = 0;
  const SpelchSpecies *species = spelch_shop_species (&n);
  const char *const *names = spelch_species_names (&n_names);
  g_assert_cmpuint (n_names, ==, n);
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpstr (names[i], ==, species[i].name);
      finds (species[i].name, species[i].id);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/species-names/found", test_species_found);
  g_test_add_func ("/species-names/all", test_species_names);
  return g_test_run ();
}

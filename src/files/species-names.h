/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Species names: what the woods of the table of species are called. Boards keep a wood by its id in that
 * table; people read and write its name. What isn't in the table stays as it was written.
 */
#pragma once

#include "files/shop-data.h"

/* The row whose id is @id, or NULL. */
const SpelchSpecies *spelch_species_with_id (const char *id);

/* What a board's wood is called in the language that is spoken; @id itself where the table doesn't have it.
 * Owned by the library, or @id. */
const char *spelch_species_name (const char *id);

/* The row that @typed names: its id, or its English, Latin or spoken name, with or without what stands in
 * brackets behind it, in capitals or not. NULL where there is none, or more than one. */
const SpelchSpecies *spelch_species_find (const char *typed);

/* The English names as those who translate find them, each once; *n gets their number. */
const char *const *spelch_species_names (guint *n);

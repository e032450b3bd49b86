/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Shop data: the starter sets that come with the program (bits, boards, machines, species, the model's
 * constants, the demo part), kept as JSON in data/ and built into the library.
 */
#pragma once

#include "plan/constants.h"
#include "shop/part.h"

#include <gio/gio.h>

/* A row of the Wood Handbook's table; 0 where the table has no figure. */
typedef struct
{
  char id[SPELCH_ID_SIZE];
  char name[SPELCH_NAME_SIZE];
  char latin[SPELCH_NAME_SIZE];
  bool softwood;
  bool imported;
  double specific_gravity; /* oven-dry mass over volume at 12 % moisture */
  double modulus_gpa;
  double shear_mpa;
  double compression_mpa; /* across the grain */
  double tension_mpa;     /* across the grain */
  double hardness_n;
  char source[320];
} SpelchSpecies;

/* Each gives the whole set, read once and kept; the arrays belong to the library and must not be changed.
 * *n gets their number. These never fail: the data is checked when the program is built. */
const SpelchBit *spelch_shop_bits (guint *n);
const SpelchBoard *spelch_shop_boards (guint *n);
const SpelchMachine *spelch_shop_machines (guint *n);
const SpelchSpecies *spelch_shop_species (guint *n);
const SpelchConstants *spelch_shop_constants (void);

/* Source and evidence of a constant by its id in data/model.json ("heat-burns"); NULL when unknown. */
const char *spelch_shop_constant_source (const char *id);

/* The demo part. A new reference. */
SpelchPart *spelch_shop_demo (void);

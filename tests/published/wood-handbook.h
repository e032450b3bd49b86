/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Wood handbook: figures of the Wood Handbook's tables, typed here apart from data/species.json.
 */
#pragma once

#include <glib.h>

/* Metric row at 12 % moisture; 0 where the table has no figure, or where it wasn't typed here. */
typedef struct
{
  const char *name;
  double specific_gravity, modulus_gpa, shear_mpa, compression_mpa, tension_mpa, hardness_n;
} HandbookRow;
extern const HandbookRow HANDBOOK_DOMESTIC[]; /* Table 5-3a, all columns used here */
extern const gsize HANDBOOK_N_DOMESTIC;
extern const HandbookRow HANDBOOK_MORE[]; /* Table 5-3a, specific gravity and hardness only */
extern const gsize HANDBOOK_N_MORE;

/* Imported wood, Table 5-5a: specific gravity is of green volume there. */
typedef struct
{
  const char *name;
  double basic_gravity, modulus_gpa, shear_mpa, hardness_n;
} HandbookImported;
extern const HandbookImported HANDBOOK_IMPORTED[];
extern const gsize HANDBOOK_N_IMPORTED;

/* Inch-pound row, Table 5-3b: 1e6 psi, psi, lbf; 0 where not read. */
typedef struct
{
  const char *name;
  double modulus, compression, shear, tension, hardness;
} HandbookInchRow;
extern const HandbookInchRow HANDBOOK_INCH[];
extern const gsize HANDBOOK_N_INCH;

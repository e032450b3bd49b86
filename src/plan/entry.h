/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Entry: how the bit gets into the wood for the first pass, as machine, bit and cut allow.
 */
#pragma once

#include "plan/case.h"

/* The steepest ramp that the end of the bit allows, degrees: 90 for one that cuts at its centre, 0 when it
 * allows none or its end isn't told. */
double spelch_entry_steepest (const SpelchCase *c);

/* The way in for @first: the one that is held, else what the machine can do. */
SpelchEntry spelch_entry_find (const SpelchCase *c, const SpelchPass *first);

/* Whether a machine can make such an entry at all: only a gantry ramps or spirals, only on a table is the
 * work let down onto the bit. */
bool spelch_entry_suits (SpelchEntryKind entry, SpelchMachineKind machine);

/* True where the bit goes straight down with its end. */
bool spelch_entry_is_plunge (SpelchEntryKind entry);

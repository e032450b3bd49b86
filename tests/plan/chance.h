/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Chance: random parts, cuts and bits for properties that hold of every plan. The same seed gives the same
 * ones.
 */
#pragma once

#include "shop/part.h"

double chance_between (GRand *random, double from, double to);

/* The demo part on another board and machine of the starter sets, measured or not. */
SpelchPart *chance_part (GRand *random);

/* One of its cuts, nothing held. */
SpelchCut chance_cut (GRand *random, const SpelchPart *part);

/* A bit of the starter set in any state of wear. */
SpelchBit chance_bit (GRand *random);

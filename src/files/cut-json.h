/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Cut as JSON: the members of one cut of a part.
 */
#pragma once

#include "files/json-fields.h"
#include "files/json-writer.h"
#include "shop/cut.h"

/* Reads a cut's members, what isn't told at its default: an outline or trim is through; a path that closes on
 * itself (outline, pocket, mortise, hole) starts and ends inside, others at an edge. The caller asks
 * spelch_cut_fault() whether they fit. */
SpelchCut spelch_cut_read (SpelchFields *fields);

/* Writes a cut's members into the object that is open, without those at their default. */
void spelch_cut_write (SpelchWriter *writer, const SpelchCut *cut);

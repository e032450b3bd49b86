/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bit as JSON: the members of one bit, the same in a part, in the bit drawer and in the starter set.
 */
#pragma once

#include "files/json-fields.h"
#include "files/json-writer.h"
#include "shop/bit.h"

/* Reads a bit's members, what isn't told at its default. The caller asks spelch_bit_fault() whether they fit
 * together. */
SpelchBit spelch_bit_read (SpelchFields *fields);

/* Writes a bit's members into the object that is open, without those at their default. */
void spelch_bit_write (SpelchWriter *writer, const SpelchBit *bit);

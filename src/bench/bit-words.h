/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bit words: short and full names for a bit in the drawer.
 */
#pragma once

#include "shop/bit.h"

/* "6.35 compr.": fits under a small picture. Free with g_free(). */
char *spelch_bit_short_name (const SpelchBit *bit, char decimal_sign);

/* "Compression 6.35 mm (1/4 in), cuts 22 mm deep": always both sizes. Free with g_free(). */
char *spelch_bit_full_name (const SpelchBit *bit, char decimal_sign);

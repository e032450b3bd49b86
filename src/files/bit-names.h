/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Bit names: what kinds of bit, materials and the like are called where a bit is described, by their values:
 * marked for translation, each table ended by NULL.
 */
#pragma once

#include "shop/bit.h"

extern const char *const SPELCH_BIT_KIND_NAMES[SPELCH_N_BIT_KINDS + 1];
extern const char *const SPELCH_HAND_NAMES[3];
extern const char *const SPELCH_EDGE_MATERIAL_NAMES[3];
extern const char *const SPELCH_BODY_MATERIAL_NAMES[4];
extern const char *const SPELCH_BEARING_NAMES[4];
extern const char *const SPELCH_WEAR_NAMES[5];

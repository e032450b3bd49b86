/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "files/bit-names.h"

#include <glib/gi18n-lib.h>

const char *const SPELCH_BIT_KIND_NAMES[]
    = { N_ ("Straight"), N_ ("Up-cut"), N_ ("Down-cut"), N_ ("Compression"), NULL };
const char *const SPELCH_HAND_NAMES[] = { N_ ("Right-hand cut"), N_ ("Left-hand cut"), NULL };
const char *const SPELCH_EDGE_MATERIAL_NAMES[] = { N_ ("Carbide"), N_ ("High-speed steel"), NULL };
const char *const SPELCH_BODY_MATERIAL_NAMES[]
    = { N_ ("Carbide"), N_ ("High-speed steel"), N_ ("Plain steel, brazed edges"), NULL };
const char *const SPELCH_BEARING_NAMES[] = { N_ ("None"), N_ ("At the shank"), N_ ("At the tip"), NULL };
const char *const SPELCH_WEAR_NAMES[] = { N_ ("New"), N_ ("Sharp"), N_ ("Worn"), N_ ("Dull"), NULL };

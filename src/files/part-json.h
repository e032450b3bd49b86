/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Part as JSON: members of a part that stand in other files too.
 */
#pragma once

#include "files/json-fields.h"
#include "shop/part.h"

/* Reads what is decided for a whole part: its size, grades accepted, tolerances and holding. */
void spelch_part_read_decisions (SpelchFields *fields, SpelchPart *part);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The drawer that a command chooses from: the bits of the file it was told, or else the part's own bits and
 * those of the starter set that it has no copy of.
 */
#pragma once

#include "command/asked.h"

/* SpelchBit; g_array_unref() it. NULL with an error when the file can't be read. */
GArray *spelch_drawer_open (const SpelchAsked *asked, const SpelchPart *part, GError **error);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Day: a date without a time, as ISO 8601 writes it: days sort as they are written. People may type it the
 * way their language writes it.
 */
#pragma once

#include "shop/bit.h"

/* The day it is where this runs; all bytes of @day are set. */
void spelch_day_today (char day[SPELCH_DATE_SIZE]);

/* How the language of the program writes the 31st of May 2026: "31.05.2026"; as ISO 8601 does where days are
 * written in more than one order, as in English. Not to be freed. */
const char *spelch_day_example (void);

/* Reads @typed as ISO 8601 writes a day, or in the order and with the sign of @example, which is the 31st of
 * May 2026; leading noughts may be left out. Spaces around it don't count. All bytes of @day are set.
 * False, with a sentence (SPELCH_LENGTH_ERROR) that says how to write it, when it is no day of the years 1900
 * to 2999; @day is untouched then. */
bool spelch_day_read (const char *typed, const char *example, char day[SPELCH_DATE_SIZE], GError **error);

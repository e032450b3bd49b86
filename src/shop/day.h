/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Day: a date without a time, as ISO 8601 writes it: days sort as they are written.
 */
#pragma once

#include "shop/bit.h"

/* The day it is where this runs; all bytes of @day are set. */
void spelch_day_today (char day[SPELCH_DATE_SIZE]);

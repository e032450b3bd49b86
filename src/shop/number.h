/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Number: a figure that isn't a length, as people type it: with either decimal sign, groups set apart by
 * spaces and the unit behind it or not. What can be read in two ways is asked about, never guessed.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>

/* Reads @text, a figure in @unit ("rpm", "mm/min", "W"; NULL: none). Its unit, in English or translated, may
 * stand after it, or another one that people write in its place: "1.4 kW", "5 m/min".
 * "5,000" or "5.000" is refused where the figure is usually a whole one, a speed or a feed; elsewhere it is a
 * decimal, unless its sign isn't the @decimal_sign of the language. Always finite.
 * Errors: SPELCH_LENGTH_ERROR, with a sentence that says what to write. */
bool spelch_number_parse (const char *text, const char *unit, char decimal_sign, double *number,
                          GError **error);

/* Likewise how many of something there are: a whole number, a million at most. */
bool spelch_number_parse_whole (const char *text, char decimal_sign, int *whole, GError **error);

/* Where @text begins with one to three digits, one of the decimal @signs and exactly three digits, these may
 * be thousands: a sentence that says how to write either. NULL: there is no doubt. Free with g_free(). */
char *spelch_number_doubt (const char *text, const char *signs, char decimal_sign);

/* The sign that groups thousands where @decimal_sign is the decimal one. */
const char *spelch_number_other_sign (char decimal_sign);

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

/* False where @text begins with one to three digits, a decimal sign and exactly three digits, which may be
 * thousands: SPELCH_LENGTH_ERROR_AMBIGUOUS, with a sentence that says how to write either. Of what is
 * @counted, usually a whole number, with either sign; else only with the one that isn't the language's
 * @decimal_sign. */
bool spelch_number_is_plain (const char *text, bool counted, char decimal_sign, GError **error);

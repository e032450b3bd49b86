/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Decimal sign: which of the two a person's language writes. Numbers in files never ask.
 */
#pragma once

/* ',' or '.', as LC_NUMERIC says; '.' where it says something else. */
char spelch_decimal_sign (void);

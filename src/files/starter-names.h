/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Starter names: what the starter sets and the demo part are called in the language that is spoken. They
 * stand in data/ in English, and here once more for those who translate; the test of the shop's data holds
 * both together.
 */
#pragma once

#include <glib.h>

/* The English ones, each once; *n gets their number. */
const char *const *spelch_starter_names (guint *n);

/* Puts @name, of @size bytes, into the language that is spoken; left as it is where nobody has translated it,
 * or where it doesn't fit. */
void spelch_starter_name (char *name, gsize size);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Typed list: several numbers or lengths typed into one field, one after another.
 */
#pragma once

#include <glib.h>

/* The numbers in @typed, each with its unit. They are set apart by semicolons, by commas that a space
 * follows, or by spaces only; then digits in groups of three after one to three digits belong together
 * ("8000 12 000 16 000" is three numbers), a fraction belongs to the whole number before it ("1 1/4"), and a
 * unit to what it follows. Nothing is judged here. Free with g_strfreev(). */
char **spelch_typed_list_split (const char *typed);

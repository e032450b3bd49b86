/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Preferences: what a person chose for the program as a whole, kept in a key file in the configuration
 * folder. A file that is missing or spoilt means the defaults; nothing depends on it.
 */
#pragma once

#include "plan/words.h"

#include <glib.h>

typedef enum
{
  SPELCH_APPEARANCE_SYSTEM,
  SPELCH_APPEARANCE_LIGHT,
  SPELCH_APPEARANCE_DARK,
  SPELCH_APPEARANCE_HIGH_CONTRAST,
} SpelchAppearanceChoice;
extern const SpelchCodes SPELCH_APPEARANCE_CODES; /* system, light, dark, high-contrast */

typedef struct
{
  SpelchAppearanceChoice appearance;
  SpelchUnit unit;
  SpelchInchStyle inch_style;
} SpelchPreferences;

/* @folder: the program's configuration folder. */
SpelchPreferences spelch_preferences_load (const char *folder);

/* Failing to keep a preference is said on the log and does no harm. */
void spelch_preferences_save (const SpelchPreferences *preferences, const char *folder);

/* Numbers as preferred, with the decimal sign of the locale. */
SpelchNumbers spelch_preferences_numbers (const SpelchPreferences *preferences);

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Preferences: what a person chose for the program as a whole, kept in a key file in the configuration
 * folder. A file that is missing or spoilt means the defaults; nothing depends on it.
 */
#pragma once

#include "plan/words.h"
#include "shop/part.h"

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
  bool reduced_motion; /* also where the system doesn't ask for it */
  SpelchUnit unit;
  SpelchInchStyle inch_style;
  SpelchFeedUnit feed_unit;
  int accepted_seen, accepted_hidden; /* for new parts, 1 to 5 */
  SpelchTolerances tolerances;        /* for new parts, 0 to 5 mm */
  char learner[SPELCH_NAME_SIZE];     /* who answered in practice last; "": nobody yet */
  guint hints_done;                   /* how many of the first hints were followed or put away */
} SpelchPreferences;

/* @folder: the program's configuration folder. @trouble, when not NULL, gets a sentence about what was
 * spoilt there, or NULL. Free with g_free(). */
SpelchPreferences spelch_preferences_load (const char *folder, char **trouble);

/* Keeps them; the old file stays whole until the new one is. False, with a sentence, when that fails. */
bool spelch_preferences_save (const SpelchPreferences *preferences, const char *folder, GError **error);

/* Numbers as preferred, with the decimal sign of the locale. */
SpelchNumbers spelch_preferences_numbers (const SpelchPreferences *preferences);

/* Gives a new, not yet shared part the preferred grades and tolerances. */
void spelch_preferences_seed (const SpelchPreferences *preferences, SpelchPart *part);

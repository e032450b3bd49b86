/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Preferred: the preferences as they are now, one for all windows. A change is kept at once.
 */
#pragma once

#include "bench/preferences.h"

#include <gio/gio.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_PREFERRED (spelch_preferred_get_type ())
G_DECLARE_FINAL_TYPE (SpelchPreferred, spelch_preferred, SPELCH, PREFERRED, GObject)

/* Signals: "changed"; "said" (const char *): they can't be kept. @folder: the program's configuration
 * folder. */
SpelchPreferred *spelch_preferred_new (const char *folder);

/* As they are now; owned by this, and changed when others are set. Setting tells every window. */
const SpelchPreferences *spelch_preferred_get (SpelchPreferred *self);
void spelch_preferred_set (SpelchPreferred *self, const SpelchPreferences *preferences);

/* What was spoilt in the folder, as a sentence to say once, or NULL. Free with g_free(). */
char *spelch_preferred_take_trouble (SpelchPreferred *self);

/* Puts actions on @map that show and set single preferences: unit ("mm", "in"), inch-decimals (a switch),
 * appearance (its codes). */
void spelch_preferred_add_actions (SpelchPreferred *self, GActionMap *map);

G_END_DECLS

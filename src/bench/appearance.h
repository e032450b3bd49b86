/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Appearance: light, dark or high contrast, as chosen or as the system says. Gives the look for drawings and
 * dresses the window: one style sheet, its colours taken from the drawing's palette.
 */
#pragma once

#include "bench/preferences.h"
#include "drawing/palette.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_APPEARANCE (spelch_appearance_get_type ())
G_DECLARE_FINAL_TYPE (SpelchAppearance, spelch_appearance, SPELCH, APPEARANCE, GObject)

/* Signal "changed": another look. */
SpelchAppearance *spelch_appearance_new (GdkDisplay *display);

/* Dresses every window anew at once. The look is that of the system where it was chosen to follow that. */
void spelch_appearance_choose (SpelchAppearance *self, SpelchAppearanceChoice choice);
SpelchLook spelch_appearance_get_look (SpelchAppearance *self);

G_END_DECLS

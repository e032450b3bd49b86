/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Recent: the parts opened or saved lately, as the desktop remembers them.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Remembers @file, which holds a part called @name. */
void spelch_recent_add (GFile *file, const char *name);

/* A menu of them, newest first, that follows: each item activates app.open-recent with its URI. A new
 * reference. */
GMenuModel *spelch_recent_menu (void);

/* Forgets all of them. */
void spelch_recent_clear (void);

G_END_DECLS

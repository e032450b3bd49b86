/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Motion film: saves a pass in slow motion from a window: asks where to, makes picture by picture while the
 * window goes on, shows how far it is, can be stopped, and says what came of it.
 */
#pragma once

#include "bench/bench-session.h"
#include "drawing/palette.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SPELCH_TYPE_MOTION_FILM (spelch_motion_film_get_type ())
G_DECLARE_FINAL_TYPE (SpelchMotionFilm, spelch_motion_film, SPELCH, MOTION_FILM, GtkWidget)

/* A row for the window's foot; it shows nothing until something is saved. */
SpelchMotionFilm *spelch_motion_film_new (void);

/* Asks for a name and saves the session's cut as it is planned now. @pass from 0. @animation: an animation,
 * else a series of pictures. */
void spelch_motion_film_save (SpelchMotionFilm *self, SpelchSession *session, guint pass, SpelchLook look,
                              bool animation);

G_END_DECLS

/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Film: a pass in slow motion as a file to show elsewhere: an animated GIF, which browsers and slides play,
 * or a series of PNG pictures, NAME-001.png and so on. Made picture by picture, so that a window can go on
 * meanwhile and can stop it. Frames are those of the window: the same functions draw them.
 */
#pragma once

#include "drawing/scene.h"
#include "plan/motion.h"

#define SPELCH_FILM_ERROR (spelch_film_error_quark ())
GQuark spelch_film_error_quark (void);

typedef enum
{
  SPELCH_FILM_ERROR_INPUT, /* no such ending, nothing that moves, a size that is too large */
  SPELCH_FILM_ERROR_WRITE,
} SpelchFilmError;

#define SPELCH_FILM_GIF_PER_TOOTH 20 /* pictures for each tooth */
#define SPELCH_FILM_PNG_PER_TOOTH 4
#define SPELCH_FILM_MOST_PIXELS   16000000.0 /* of one picture */

typedef struct _SpelchFilm SpelchFilm;

/* Of all that is shown of @pass (from 0), one tooth a second. @path ends in .gif or .png; of @view the size,
 * look, text, family and numbers count. With @keep a series isn't begun where a picture of it is there
 * already. */
SpelchFilm *spelch_film_new (const SpelchConstants *constants, const SpelchPart *part, const SpelchCut *cut,
                             const SpelchBit *bit, const SpelchPlan *plan, guint pass, const SpelchView *view,
                             const char *path, bool keep, GError **error);
void spelch_film_free (SpelchFilm *film); /* an unfinished GIF leaves nothing behind */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchFilm, spelch_film_free)

/* How many pictures there will be, and how many are made. */
guint spelch_film_count (const SpelchFilm *film);
guint spelch_film_made (const SpelchFilm *film);

/* Makes the next picture; after the last one the file is written. False with an error when that fails. To be
 * called until spelch_film_is_done(). */
bool spelch_film_step (SpelchFilm *film, GError **error);
bool spelch_film_is_done (const SpelchFilm *film);

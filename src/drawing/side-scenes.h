/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Side scenes: the bits of a comparison in their boards, to one scale and with the boards level, a picture
 * for each.
 */
#pragma once

#include "drawing/scene.h"
#include "plan/compare.h"

typedef struct _SpelchSideScenes SpelchSideScenes;

/* Each as wide and high as @view, as large as all of them fit; of the rest of @view its look, numbers, family
 * and text count. Free with spelch_side_scenes_free(). */
SpelchSideScenes *spelch_side_scenes_new (const SpelchPart *part, const GArray *columns,
                                          const SpelchView *view);
void spelch_side_scenes_free (SpelchSideScenes *scenes);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SpelchSideScenes, spelch_side_scenes_free)

/* Draws that column's, from (0, 0) on. */
void spelch_side_scenes_draw (const SpelchSideScenes *scenes, guint column, cairo_t *cr);

/* That column's scene as it stands alone. Owned by the scenes. */
const SpelchScene *spelch_side_scenes_get (const SpelchSideScenes *scenes, guint column);

/* What to shift that scene down by for the boards to be level. */
double spelch_side_scenes_shift (const SpelchSideScenes *scenes, guint column);
